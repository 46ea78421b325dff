// Recorded attempts: shown again from their start, or opened at their result.

package app

import (
	"errors"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/session"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/sim"
)

// recording is an attempt that is shown, and the name of the file it came from.
type recording struct {
	*attempt.Attempt
	from string
}

// watchFile shows the attempt of a file again.
func (a *App) watchFile(path string) error {
	r, err := readAttempt(path)
	if err != nil {
		return err
	}
	return a.watch(&recording{r, path})
}

// readAttempt reads an attempt in which there is something to watch.
func readAttempt(path string) (*attempt.Attempt, error) {
	r, err := attempt.Load(path)
	if err == nil && len(r.Actions) == 0 {
		err = errors.New(words.Say("app.nothing_done", path))
	}
	if err != nil {
		return nil, err
	}
	return r, nil
}

func (a *App) watch(r *recording) error {
	sc, faults := scenarios.Parse(r.Scenario.ID, []byte(r.Scenario.Text))
	if err := faults.Err(); err != nil {
		return err
	}
	acts := append([]sim.Action{}, r.Actions...) // never nil: what is shown must not be taken for a case that is played
	a.sit(sc, session.Options{Seed: r.Seed, Watch: acts, WatchEnd: r.LengthTicks, WatchFrom: r.from})
	a.begun.recorded = r
	a.begun.session.Do([]bench.Act{{Do: bench.GoOn}, {Do: bench.GoOn}})
	if r.Model != sim.ModelVersion {
		a.notice(words.Say("app.other_model", r.Model, sim.ModelVersion))
	}
	return nil
}

// resultOfFile opens the result page of an attempt.
func (a *App) resultOfFile(path string) error {
	r, err := attempt.Load(path)
	if err != nil {
		return err
	}
	return a.result(&recording{r, path})
}

// result plays the acts of an attempt to their end, for charts and log, and shows the grade that its file holds.
func (a *App) result(r *recording) error {
	if err := a.watch(r); err != nil {
		return err
	}
	s := a.begun.session
	for !s.Run.State.Ended && s.Run.State.Tick < r.LengthTicks {
		s.Tick()
	}
	s.Refresh()
	s.Do([]bench.Act{{Do: bench.Finish}})
	s.View.Screen = bench.Graded // also where the attempt was left before its end, or nothing was done in it
	s.View.Result = session.ResultOf(gradeOf(&r.Grade))
	s.View.Result.SavedAs = r.from
	return nil
}

// gradeOf is a grade of a file in the terms of a judge.
func gradeOf(g *attempt.Grade) *scoring.Grade {
	to := &scoring.Grade{Passed: g.Passed, Points: float64(g.Points), PassMark: float64(g.PassMark), Reasons: g.Reasons}
	for _, c := range g.Critical {
		to.Critical = append(to.Critical, scoring.Critical{Name: c.Name, Amount: float64(c.Amount), Reason: c.Reason, Mended: c.Mended, Tick: c.Tick})
	}
	for _, p := range g.Parts {
		to.Parts = append(to.Parts, scoring.PartGrade{Part: p.Part, Title: p.Title, Points: float64(p.Points), Of: float64(p.Of), Floor: float64(p.Floor), Reached: p.Reached})
	}
	for _, c := range g.Criteria {
		to.Criteria = append(to.Criteria, scoring.CriterionGrade{Measure: c.Measure, Part: c.Part, Objective: c.Objective, Value: float64(c.Value), Unit: c.Unit,
			Meaning: c.Meaning, Measured: c.Measured, Target: c.Target, Points: float64(c.Points), Of: float64(c.Of), Reason: c.Reason, Source: c.Source, Tick: c.Tick})
	}
	return to
}
