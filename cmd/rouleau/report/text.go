package report

import (
	"rouleau/assets/words"
	"rouleau/scoring/debrief"
)

// The debrief in a few lines, for a terminal.

// mostLines is how many decisions a terminal is told.
const mostLines = 8

// Lines are the verdict and what the decisions cost, each line a paragraph of its own. Lines that belong under the one before
// begin with a dash.
func (r *Report) Lines() []string {
	d, a := r.Debrief, r.Attempt
	g := r.grade()
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
	gained := r.gained()
	if len(gained) == 0 {
		lines = append(lines, words.Say("report.line_nothing"))
	} else {
		lines = append(lines, words.Say("report.line_costs"))
	}
	for i, c := range gained {
		if i == mostLines {
			lines = append(lines, words.Say("report.line_more", len(gained)-mostLines))
			break
		}
		lines = append(lines, "- "+r.sentence(c))
	}
	if worse := r.worse(); len(worse) > 0 {
		lines = append(lines, words.Say("report.line_better"), "- "+r.sentence(worse[0]))
		if len(worse) > 1 {
			lines = append(lines, words.Say("report.line_more", len(worse)-1))
		}
	}
	if left := d.Unexplained(r.Costs); len(left) > 0 {
		lines = append(lines, words.Say("report.unexplained", count(len(left), "report.criterion_one", "report.criteria"), score(debrief.Lost(left))))
	}
	return append(lines, words.Say("report.feedback"))
}

// opening is the verdict in a sentence, beside that of steady.
func (r *Report) opening() string {
	g, good := r.grade(), score(r.Debrief.GoodOwn.Grade.Points)
	switch {
	case r.scenario().Lesson():
		return words.Say("report.opening_lesson", score(g.Points), good)
	case g.Passed:
		return words.Say("report.opening_passed", score(g.Points), score(g.PassMark), good)
	}
	return words.Say("report.opening_not_passed", score(g.Points), score(g.PassMark), good)
}

// count is a number of things with their name.
func count(n int, one, more string) string {
	if n == 1 {
		return words.Say(one)
	}
	return words.Say(more, n)
}

// cut is a list for reading: what is beyond so many is a number.
func cut[T any](all []T, most int) (kept []T, more string) {
	if len(all) <= most {
		return all, ""
	}
	return all[:most], words.Say("report.line_more", len(all)-most)
}
