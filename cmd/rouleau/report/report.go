// Package report makes the debrief of an attempt for people: a page, the same as PDF, and a few lines for a terminal. It calls
// itself feedback, for a talk that a person leads. This file holds what a report is made of.
package report

import (
	"cmp"
	"context"
	"math"
	"slices"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/forks"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/scoring/debrief"
)

// Report is a debrief that has been played.
type Report struct {
	Attempt *attempt.Attempt
	Debrief *debrief.Debrief
	Costs   []debrief.Cost // in order
	Draws   int            // other drawings of the case in which the costliest decisions were played too
}

// Of plays the debrief of an attempt.
func Of(ctx context.Context, a *attempt.Attempt, plan forks.Plan) (*Report, error) {
	rec, err := debrief.Of(a)
	if err != nil {
		return nil, err
	}
	r := &Report{Attempt: a, Debrief: debrief.New(rec), Draws: plan.Draws}
	r.Costs, err = forks.Costs(ctx, r.Debrief, plan)
	return r, err
}

func (r *Report) scenario() *scenarios.Scenario { return r.Debrief.Record.Scenario }

func (r *Report) grade() *scoring.Grade { return &r.Debrief.Own.Grade }

// gained are the decisions that would have made things better, in order.
func (r *Report) gained() (all []*debrief.Cost) {
	for i := range r.Costs {
		if c := &r.Costs[i]; r.tells(c) && c.Gain > 0 {
			all = append(all, c)
		}
	}
	return all
}

// worse are those that would have made things worse, the worst first: what the person did instead was the better way.
func (r *Report) worse() (all []*debrief.Cost) {
	for i := len(r.Costs) - 1; i >= 0; i-- {
		if c := &r.Costs[i]; r.tells(c) && c.Gain < 0 {
			all = append(all, c)
		}
	}
	return all
}

// same are those that would have changed nothing worth telling, in the order of time.
func (r *Report) same() (all []*debrief.Cost) {
	for i := range r.Costs {
		if c := &r.Costs[i]; !r.tells(c) {
			all = append(all, c)
		}
	}
	slices.SortStableFunc(all, func(a, b *debrief.Cost) int { return cmp.Compare(a.Decision.Tick, b.Decision.Tick) })
	return all
}

// tells says whether there is anything to tell of what a decision put right would have changed.
func (r *Report) tells(c *debrief.Cost) bool {
	return c.Mattered() && (len(r.changes(c)) > 0 || gain(c.Points) != "0")
}

// changes says what a decision put right would have changed, points left out. Nobody passes or fails a lesson.
func (r *Report) changes(c *debrief.Cost) []string {
	return slices.DeleteFunc(debrief.Changes(&r.Debrief.Own, &c.With), func(text string) bool {
		return text == words.Say("changes.points", debrief.PointsText(c.Points)) ||
			r.scenario().Lesson() && (text == words.Say("changes.passed") || text == words.Say("changes.not_passed"))
	})
}

// sentence is a decision with what it would have changed: "opening the drip at 0:12:40 instead of 0:17:05: no clot, +11 points".
func (r *Report) sentence(c *debrief.Cost) string {
	changes := r.changes(c)
	if g := gain(c.Points); g != "0" {
		changes = append(changes, words.Say("changes.points", g))
	}
	text := words.Say("report.sentence", c.Decision.Title, strings.Join(changes, ", "))
	if c.Spread.Unsure(c.Points) {
		text += " (" + words.Say("report.unsure", spread(c)) + ")"
	}
	return text
}

// slightest is the difference in points below which none is told: it would be shown as nothing.
const slightest = 0.05

// spread says how far the gain in points hangs on the drawing of the case; nothing where it was played in this one only.
func spread(c *debrief.Cost) string {
	if c.Spread.Drawn == 0 {
		return ""
	}
	least, most := gain(c.Spread.Least), gain(c.Spread.Most)
	if least == most {
		return words.Say("report.range_one", least, c.Spread.Drawn)
	}
	return words.Say("report.range", least, most, c.Spread.Drawn)
}

// gain is a difference in points with its sign.
func gain(points float64) string {
	if points < slightest && points > -slightest {
		return "0"
	}
	return debrief.PointsText(points)
}

// score is points, rounded down so that nothing looks better than it is.
func score(points float64) string { return scoring.Show(math.Floor(10*points+1e-6) / 10) }

// warnings are what whoever reads a verdict has to know first.
func (r *Report) warnings() (all []string) {
	a, g := r.Attempt, r.grade()
	if !a.Ended {
		all = append(all, words.Say("report.unfinished", at(a.LengthTicks)))
	}
	if !a.Sealed() {
		all = append(all, words.Say("report.not_sealed"))
	}
	if d := float64(a.Grade.Points) - g.Points; a.Grade.Passed != g.Passed || math.Abs(d) > slightest {
		all = append(all, words.Say("report.other_grade", r.verdict(float64(a.Grade.Points), a.Grade.Passed), r.verdict(g.Points, g.Passed)))
	}
	return all
}

// verdict is points with pass or not, in a word.
func (r *Report) verdict(points float64, passed bool) string {
	switch {
	case r.scenario().Lesson():
		return words.Say("report.verdict_lesson", score(points))
	case passed:
		return words.Say("report.verdict_passed", score(points))
	}
	return words.Say("report.verdict_not_passed", score(points))
}
