// From a finished run to the result page: judged, saved, and put into the page's own terms.

package session

import (
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/scoring/debrief"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// Grader judges a run and saves it under a path; an empty path saves nothing. When is the time the attempt is stamped with.
func Grader(sc *scenarios.Scenario, assessment bool, operator, path string, when func() time.Time) func(*play.Run, attempt.Breaks) bench.Result {
	return func(run *play.Run, breaks attempt.Breaks) bench.Result {
		grade := scoring.Judge(sc, run, scoring.PlayYardstick(sc, run.Seed, assessment))
		r := ResultOf(&grade)
		r.Self = SelfOf(sc, &grade, nil)
		if path == "" {
			return r
		}
		a := attempt.Of(sc, run, grade, attempt.By{Operator: operator, When: when(), Mode: attempt.ModeOf(assessment), Breaks: breaks})
		if err := a.Save(path); err != nil {
			r.Fault = err.Error()
			return r
		}
		r.SavedAs = path
		return r
	}
}

// ResultOf puts a grade into the terms of the result page.
func ResultOf(g *scoring.Grade) bench.Result {
	r := bench.Result{Graded: true, Pass: g.Passed, Total: g.Points, Reasons: g.Reasons}
	if of := g.Of(); of > 0 && of < 100 {
		r.Scaled = words.Say("report.scaled", debrief.Score(of))
	}
	for _, k := range g.Critical {
		r.Criticals = append(r.Criticals, bench.CriticalResult{Name: k.Reason, Mended: k.Mended, Moment: momentOf(k.Tick)})
	}
	for _, p := range g.Parts {
		if p.Of <= 0 { // a lesson leaves it out
			continue
		}
		part := bench.PartResult{Name: p.Title, Points: p.Points, Of: p.Of, FloorShare: p.Floor / p.Of}
		for i := range g.Criteria {
			if c := &g.Criteria[i]; c.Part == p.Part {
				part.Rows = append(part.Rows, criterionOf(c))
			}
		}
		r.Parts = append(r.Parts, part)
	}
	return r
}

func criterionOf(c *scoring.CriterionGrade) bench.CriterionResult {
	measured := ""
	if c.Measured {
		measured = scoring.ShowUnit(c.Value, c.Unit)
	}
	return bench.CriterionResult{Name: c.Meaning, Measured: measured, Target: c.Target, Points: c.Points, Of: c.Of, Reason: c.Reason, Source: c.Source,
		Moment: momentOf(c.Tick)}
}

// placed gives rows of a result that have no moment that of the same row of another.
func placed(to, from *bench.Result) {
	for i := range min(len(to.Criticals), len(from.Criticals)) {
		if k, other := &to.Criticals[i], &from.Criticals[i]; !k.Moment.Is && k.Name == other.Name {
			k.Moment = other.Moment
		}
	}
	for i := range min(len(to.Parts), len(from.Parts)) {
		rows, others := to.Parts[i].Rows, from.Parts[i].Rows
		for n := range min(len(rows), len(others)) {
			if k := &rows[n]; !k.Moment.Is && k.Name == others[n].Name {
				k.Moment = others[n].Moment
			}
		}
	}
}

func momentOf(tick int64) bench.Moment {
	return bench.Moment{Is: tick >= 0, S: sim.Seconds(max(tick, 0))}
}
