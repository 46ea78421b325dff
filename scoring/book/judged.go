package book

import (
	"strconv"

	"rouleau/scoring/attempt"
	"rouleau/sim"
)

// What a record takes over from an attempt, and what only the assessor adds.

// Draft is the record of an attempt as far as the attempt goes. The assessor adds who, what was decided, and why.
func Draft(a *attempt.Attempt) *SignOff { return ofAttempt(a) }

func ofAttempt(a *attempt.Attempt) *SignOff {
	g := &a.Grade
	b := &SignOff{Scenario: Scenario{a.Scenario.ID, a.Scenario.Version, a.Scenario.SHA256}, Model: a.Model, Seed: strconv.FormatUint(a.Seed, 10), Mode: a.Mode, Played: a.When, LengthS: sim.Seconds(a.LengthTicks),
		Breaks: Breaks{a.Breaks.Interruptions, float64(a.Breaks.LetGoS), a.Breaks.TakenOver}, Points: float64(g.Points), PassMark: float64(g.PassMark), Passed: g.Passed, Number: 1,
		Earlier: []Earlier{}, Criteria: []Criterion{}, Critical: []Critical{}, Parts: []Part{}, Rated: []Rated{}, Training: []Training{}}
	for i := range g.Criteria {
		c := &g.Criteria[i]
		b.Criteria = append(b.Criteria, Criterion{Measure: c.Measure, Part: c.Part, Objective: c.Objective, Measured: c.Measured, Value: float64(c.Value), Unit: c.Unit,
			Target: c.Target, Points: float64(c.Points), Of: float64(c.Of), Reason: c.Reason, Source: c.Source, AtS: secondsOf(c.Tick)})
	}
	for i := range g.Critical {
		c := &g.Critical[i]
		b.Critical = append(b.Critical, Critical{Name: c.Name, Amount: float64(c.Amount), Reason: c.Reason, Mended: c.Mended, AtS: secondsOf(c.Tick)})
	}
	for i := range g.Parts {
		p := &g.Parts[i]
		b.Parts = append(b.Parts, Part{Part: p.Part, Points: float64(p.Points), Of: float64(p.Of), Floor: float64(p.Floor), Reached: p.Reached})
	}
	return b
}

func secondsOf(tick int64) float64 {
	if tick < 0 {
		return -1
	}
	return sim.Seconds(tick)
}
