// Recorded attempts: shown again from their start, opened at their result, or tried again from one of their moments.

package app

import (
	"errors"
	"strconv"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/session"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/scoring/debrief"
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
	w := r.watched()
	a.sit(sc, session.Options{Seed: r.Seed, Watch: w, WatchSelf: r.Self})
	a.begun.recorded = r
	a.begun.session.Do([]bench.Act{{Do: bench.GoOn}, {Do: bench.GoOn}})
	if w.Parts != "" {
		a.notice(w.Parts)
	}
	return nil
}

// watched is what of a recording it takes to watch it and to try again from its moments.
func (r *recording) watched() *session.Recorded {
	w := &session.Recorded{Acts: r.Actions, End: r.LengthTicks, From: r.from, Record: func() (*debrief.Record, error) { return debrief.Of(r.Attempt) }}
	if r.Model != sim.ModelVersion {
		w.Stale, w.Parts = words.Say("app.stale", r.Model), words.Say("app.other_model", r.Model, sim.ModelVersion)
	}
	if !r.Sealed() {
		w.Heed = words.Say("report.not_sealed")
	}
	for i := range r.Checkpoints {
		p := &r.Checkpoints[i]
		if is, err := strconv.ParseUint(p.Hash, 16, 64); err == nil { // not all of them have one
			w.Hashes = append(w.Hashes, session.Hash{Tick: p.Tick, Is: is})
		}
	}
	return w
}

// tryFrom plays on, as practice, from a moment of the past attempt that is on the screen. Where that cannot be, it is said, and
// all stays as it was.
func (a *App) tryFrom(atS int) {
	b := a.begun
	r := b.session.Recorded()
	if r == nil {
		return
	}
	next := playing{scenario: b.scenario, path: b.path, journal: a.newJournal(b.scenario, b.session.Run.Seed, false)}
	var err error
	next.session, err = session.TryFrom(b.scenario, r, sim.Ticks(float64(atS)), a.options(session.Options{Seed: b.session.Run.Seed}, next.journal))
	if err != nil {
		a.notice(err.Error())
		return
	}
	b.session.Close()
	a.begun = next
	if b.session.View.Screen == bench.Graded {
		a.desk = a.desk.Again()
	}
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
	s.View.Interrupted, s.View.TakenOver = r.Breaks.Interruptions, r.Breaks.TakenOver
	s.View.Screen = bench.Graded // also where the attempt was left before its end, or nothing was done in it
	grade := gradeOf(&r.Grade)
	s.View.Result = session.ResultOf(grade)
	s.View.Result.Self = session.SelfOf(a.begun.scenario, grade, r.Self)
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
