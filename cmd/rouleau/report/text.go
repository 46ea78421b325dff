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
	d := r.Debrief
	g := &d.Own.Grade
	verdict := "report.line_not_passed"
	if g.Passed {
		verdict = "report.line_passed"
	}
	lines := []string{
		words.Say("report.line_case", d.Record.Scenario.Title, r.Attempt.Scenario.ID, r.Attempt.Scenario.Version, r.Attempt.Seed, r.Attempt.Operator),
		words.Say(verdict, g.Points, g.PassMark, d.GoodOwn.Grade.Points),
	}
	for i := range g.Critical {
		lines = append(lines, "- "+g.Critical[i].Reason)
	}
	gained := r.gained()
	if len(gained) == 0 {
		return append(lines, words.Say("report.line_nothing"))
	}
	lines = append(lines, words.Say("report.line_costs"))
	for i, c := range gained {
		if i == mostLines {
			lines = append(lines, words.Say("report.line_more", len(gained)-mostLines))
			break
		}
		lines = append(lines, "- "+r.sentence(c))
	}
	if left := d.Unexplained(r.Costs); len(left) > 0 {
		lines = append(lines, words.Say("report.line_unexplained", len(left), debrief.Lost(left)))
	}
	return append(lines, words.Say("report.feedback"))
}
