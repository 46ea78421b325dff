package report

import (
	"strings"

	"rouleau/assets/words"
	"rouleau/scoring/debrief"
)

// The debrief in a few lines, for a terminal.

// mostLines is how many decisions a terminal is told.
const mostLines = 8

// Lines are the verdict and what the decisions cost, each line a paragraph of its own. Lines that belong under the one before
// begin with a dash.
func (r *Report) Lines() []string {
	a, g := r.Attempt, r.grade()
	lines := []string{words.Say("report.line_case", r.scenario().Title, a.Scenario.ID, a.Scenario.Version, a.Seed, who(a))}
	lines = append(lines, r.warnings()...)
	lines = append(lines, r.opening())
	for i := range g.Critical {
		lines = append(lines, "- "+critical(&g.Critical[i]))
	}
	if a.Self != nil {
		var apart []debrief.Apart
		for _, b := range debrief.SideBySide(r.scenario(), g, a.Self) {
			apart = append(apart, b.Apart)
		}
		lines = append(lines, words.Say("report.line_self", debrief.SumUp(apart)))
	}
	gained, better := r.Told.Of(debrief.Gained), r.Told.Of(debrief.Better)
	if len(gained) == 0 {
		lines = append(lines, words.Say("report.line_nothing"))
	} else {
		lines = append(lines, strings.TrimSpace(words.Say("report.line_costs")+" "+r.Told.Scaled))
	}
	kept, more := cut(gained, mostLines)
	for i := range kept {
		lines = append(lines, "- "+inLine(&kept[i]))
	}
	if more != "" {
		lines = append(lines, more)
	}
	if len(better) > 0 {
		lines = append(lines, words.Say("report.line_better"), "- "+inLine(&better[0]))
		if _, more := cut(better, 1); more != "" {
			lines = append(lines, more)
		}
	}
	if text := r.unexplained(); text != "" {
		lines = append(lines, text)
	}
	return append(lines, words.Say("report.feedback"))
}

// opening is the verdict in a sentence, beside that of steady.
func (r *Report) opening() string {
	g, good := r.grade(), debrief.Score(r.Debrief.GoodOwn.Grade.Points)
	switch {
	case r.scenario().Lesson():
		return words.Say("report.opening_lesson", debrief.Score(g.Points), good)
	case g.Passed:
		return words.Say("report.opening_passed", debrief.Score(g.Points), debrief.Score(g.PassMark), good)
	}
	return words.Say("report.opening_not_passed", debrief.Score(g.Points), debrief.Score(g.PassMark), good)
}

// count is a number of things with their name.
func count(n int, one, more string) string {
	if n == 1 {
		return words.Say(one)
	}
	return words.Say(more, n)
}

// cut is a list for a terminal: of what is beyond so many it says how many there are, and where they stand.
func cut[T any](all []T, most int) (kept []T, more string) {
	if kept = all[:min(most, len(all))]; len(kept) < len(all) {
		more = words.Say("report.line_more", len(all)-len(kept))
	}
	return kept, more
}
