package debrief

import (
	"math"

	"rouleau/assets/words"
	"rouleau/scoring"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// How sure the cost of a decision is: the same acts, with and without the decision put right, in other drawings of the case. The
// patient, the wound and the bench are drawn anew; what comes when stays as it was, because the person's acts go by it.

// Other is another drawing of the case with the person's own acts in it.
type Other struct {
	c         sim.Case
	seed      uint64
	yardstick scoring.Yardstick
	own       Outcome
}

// apartSeeds keeps the seeds of other drawings away from those people type.
const apartSeeds = 1 << 40

// Other plays the person's acts in the n-th other drawing, n from 1.
func (d *Debrief) Other(n int) *Other {
	rec := d.Record
	o := &Other{seed: rec.Run.Seed + apartSeeds*uint64(n)}
	o.c = rec.Scenario.Case(o.seed, rec.Assessment)
	for i := range o.c.Phases {
		o.c.Phases[i].StartTick = rec.Run.Case.Phases[i].StartTick
	}
	for i := range o.c.Events {
		o.c.Events[i].At = rec.Run.Case.Events[i].At
	}
	o.c.EndTick, o.c.LastTick, o.c.StayTick = rec.Run.Case.EndTick, rec.Run.Case.LastTick, rec.Run.Case.StayTick
	good := play.New(o.c, o.seed)
	good.ToEnd(operators.NewSteady(operators.SheetOf(rec.Scenario, &o.c)))
	o.yardstick = scoring.YardstickOf(good)
	run := rec.elsewhere(o.c, o.seed, &Edit{})
	o.own = outcomeOf(run, scoring.Judge(rec.Scenario, run, o.yardstick))
	return o
}

// Again is what a decision would have gained in another drawing, in points.
func (d *Debrief) Again(i int, o *Other) float64 {
	run := d.Record.elsewhere(o.c, o.seed, &d.Decisions[i].Edit)
	with := outcomeOf(run, scoring.Judge(d.Record.Scenario, run, o.yardstick))
	return with.Grade.Points - o.own.Grade.Points
}

// Spread is how the gain in points differs from drawing to drawing, the person's own among them.
type Spread struct {
	Drawn       int // other drawings that were played
	Least, Most float64
}

// SpreadOf gathers gains.
func SpreadOf(own float64, others []float64) Spread {
	s := Spread{Drawn: len(others), Least: own, Most: own}
	for _, g := range others {
		s.Least, s.Most = min(s.Least, g), max(s.Most, g)
	}
	return s
}

// String says from where to where the points go.
func (s Spread) String() string {
	least, most := PointsText(s.Least), PointsText(s.Most)
	if least == most {
		return words.Say("told.range_one", least, s.Drawn+1)
	}
	return words.Say("told.range", least, most, s.Drawn+1)
}

// Unsure says whether the drawings do not agree: on the sign, or by more than half and two points [A].
func (s Spread) Unsure(points float64) bool {
	if s.Drawn == 0 {
		return false
	}
	wide := s.Most - s.Least
	return s.Least < -slightest && s.Most > slightest || wide > 2 && wide > math.Abs(points)/2
}
