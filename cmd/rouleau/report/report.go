// Package report makes the debrief of an attempt for people: a page, the same as PDF, and a few lines for a terminal. It calls
// itself feedback, for a talk that a person leads. This file holds what a report is made of.
package report

import (
	"context"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/forks"
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

// gained are the decisions that would have made things better, in order.
func (r *Report) gained() (all []*debrief.Cost) {
	for i := range r.Costs {
		if c := &r.Costs[i]; c.Mattered() && c.Gain > 0 {
			all = append(all, c)
		}
	}
	return all
}

// worse are those that would have made things worse, the worst first: what the person did instead was the better way.
func (r *Report) worse() (all []*debrief.Cost) {
	for i := len(r.Costs) - 1; i >= 0; i-- {
		if c := &r.Costs[i]; c.Mattered() && c.Gain < 0 {
			all = append(all, c)
		}
	}
	return all
}

// same are those that would have changed nothing worth telling.
func (r *Report) same() (all []*debrief.Cost) {
	for i := range r.Costs {
		if c := &r.Costs[i]; !c.Mattered() {
			all = append(all, c)
		}
	}
	return all
}

// sentence is a decision with what it would have changed: "opening the drip at 0:12:40 instead of 0:17:05: no clot, +11 points".
func (r *Report) sentence(c *debrief.Cost) string {
	changes := debrief.Changes(&r.Debrief.Own, &c.With)
	if len(changes) == 0 {
		return words.Say("report.no_change", c.Decision.Title)
	}
	text := words.Say("report.sentence", c.Decision.Title, strings.Join(changes, ", "))
	if c.Spread.Unsure(c.Points) {
		text += " " + words.Say("report.unsure", c.Spread.Drawn, debrief.PointsText(c.Spread.Least), debrief.PointsText(c.Spread.Most))
	}
	return text
}
