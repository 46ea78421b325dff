// Package report makes the debrief of an attempt for people: a page, the same as PDF, and a few lines for a terminal. It calls
// itself feedback, for a talk that a person leads. This file holds what a report is made of.
package report

import (
	"context"
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
	Told    *debrief.Told
	Draws   int // other drawings of the case in which the costliest decisions were played too
}

// Of plays the debrief of an attempt.
func Of(ctx context.Context, a *attempt.Attempt, plan forks.Plan) (*Report, error) {
	d, err := forks.Begin(a)
	if err != nil {
		return nil, err
	}
	r := &Report{Attempt: a, Debrief: d, Draws: plan.Draws}
	costs, err := forks.Costs(ctx, r.Debrief, plan)
	if err != nil {
		return nil, err
	}
	r.Told = debrief.Tell(r.Debrief, costs)
	return r, nil
}

func (r *Report) scenario() *scenarios.Scenario { return r.Debrief.Record.Scenario }

func (r *Report) grade() *scoring.Grade { return &r.Debrief.Own.Grade }

// inLine is a decision with what it would have changed: "opening the drip at 0:12:40 instead of 0:17:05: no clot, +11 points".
func inLine(l *debrief.Line) string {
	changes := l.Changes
	if l.Points != debrief.PointsText(0) {
		changes = slices.Concat(changes, []string{words.Say("told.points", l.Points)})
	}
	text := words.Say("report.sentence", l.Cost.Decision.Title, strings.Join(changes, ", "))
	if l.Unsure {
		text += " (" + words.Say("report.unsure", l.Sure) + ")"
	}
	return text
}

// warnings are what whoever reads a verdict has to know first.
func (r *Report) warnings() (all []string) {
	a, g := r.Attempt, r.grade()
	if !a.Ended {
		all = append(all, words.Say("report.unfinished", at(a.LengthTicks)))
	}
	if !a.Sealed() {
		all = append(all, words.Say("report.not_sealed"))
	}
	if r.Debrief.Own.Regraded(float64(a.Grade.Points), a.Grade.Passed) {
		all = append(all, words.Say("report.other_grade", r.verdict(float64(a.Grade.Points), a.Grade.Passed), r.verdict(g.Points, g.Passed)))
	}
	return all
}

// verdict is points with pass or not, in a word.
func (r *Report) verdict(points float64, passed bool) string {
	switch {
	case r.scenario().Lesson():
		return words.Say("report.verdict_lesson", debrief.Score(points))
	case passed:
		return words.Say("report.verdict_passed", debrief.Score(points))
	}
	return words.Say("report.verdict_not_passed", debrief.Score(points))
}
