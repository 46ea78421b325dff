// Package debrief asks of a case that was played what would have happened otherwise. It finds the decisions that may have
// mattered, plays the case again from each of them with that one alone put right and the person's own later acts after it, and
// says what it would have changed for product, patient and score. It knows no processors: who has several plays several at once.
// This file holds the record of what a person did.
package debrief

import (
	"errors"
	"fmt"
	"slices"

	"rouleau/assets/words"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// Record is a run with what could be seen when each act was done.
type Record struct {
	Scenario   *scenarios.Scenario
	Assessment bool
	Run        *play.Run
	moments    []moment // one for each of Run.Actions
	marks      []play.Mark
	lastTick   int64     // until which somebody played
	most       []float64 // the highest reading of the detector, by eye too, since the bowl began to fill; one a second
	stood      []stood   // one a second
}

// moment is what was the case just before an act.
type moment struct {
	seen  sim.Seen
	tally [sim.TallyItems]float64
	shed  float64 // mL so far
	hands int64   // until when the act kept the hands busy

	falsely bool // the act declared what had not happened
	clear   bool // the last answer after the act was that the field is clear
}

// stood is since when the pump stood, and after what.
type stood struct {
	since int64 // -1 while it turned
	after sim.PumpMode
}

// next is how it stands at a whole second, before the acts of its tick.
func (p stood) next(s *sim.State) stood {
	switch {
	case s.Pump.Mode != sim.PumpIdle:
		return stood{-1, s.Pump.Mode}
	case p.since < 0:
		return stood{s.Tick, p.after}
	}
	return p
}

const markEvery = 60 * sim.TicksPerSecond

// scenarioOf is the scenario that an attempt holds.
func scenarioOf(a *attempt.Attempt) (*scenarios.Scenario, error) {
	sc, faults := scenarios.Parse(a.Scenario.ID+".yaml", []byte(a.Scenario.Text))
	if err := faults.Err(); err != nil {
		return nil, fmt.Errorf("%s\n%w", words.Say("debrief.no_scenario"), err)
	}
	if a.Model != sim.ModelVersion {
		return nil, errors.New(words.Say("debrief.other_model", a.Model, sim.ModelVersion))
	}
	return sc, nil
}

// Of takes the record of an attempt by playing it again. An attempt that does not come out as it was recorded has none.
func Of(a *attempt.Attempt) (*Record, error) {
	sc, err := scenarioOf(a)
	if err != nil {
		return nil, err
	}
	rec := watch(sc, a.Actions, a.Seed, a.Assessment(), a.LengthTicks)
	last := &a.Checkpoints[len(a.Checkpoints)-1]
	if now := fmt.Sprintf("%016x", rec.Run.State.Hash()); now != last.Hash || len(rec.Run.Actions) != len(a.Actions) {
		return nil, errors.New(words.Say("debrief.not_the_same"))
	}
	return rec, nil
}

// OfRun takes the record of a run, finished or not.
func OfRun(sc *scenarios.Scenario, run *play.Run, assessment bool) *Record {
	return watch(sc, run.Actions, run.Seed, assessment, run.State.Tick)
}

// Good is what the operator steady does in the same case.
func (rec *Record) Good() *Record { return good(rec.Scenario, rec.Run.Seed, rec.Assessment) }

// GoodOf is what the operator steady does in the case of an attempt, which need not have been played again for that.
func GoodOf(a *attempt.Attempt) (*Record, error) {
	sc, err := scenarioOf(a)
	if err != nil {
		return nil, err
	}
	return good(sc, a.Seed, a.Assessment()), nil
}

func good(sc *scenarios.Scenario, seed uint64, assessment bool) *Record {
	run := play.New(sc.Case(seed, assessment), seed)
	run.ToEnd(operators.NewSteady(operators.SheetOf(sc, &run.Case)))
	return &Record{Scenario: sc, Assessment: assessment, Run: run, lastTick: run.State.Tick}
}

// watch plays acts again and looks on.
func watch(sc *scenarios.Scenario, acts []sim.Action, seed uint64, assessment bool, length int64) *Record {
	run := play.New(sc.Case(seed, assessment), seed)
	rec := &Record{Scenario: sc, Assessment: assessment, Run: run, lastTick: length}
	next, most, still := 0, 0.0, stood{}
	var seen sim.Seen
	look := func() {
		if run.State.Tick%markEvery == 0 {
			rec.marks = append(rec.marks, run.Mark())
		}
		if run.State.Tick%sim.TicksPerSecond == 0 {
			most = highest(most, &run.State)
			rec.most = append(rec.most, most)
			still = still.next(&run.State)
			rec.stood = append(rec.stood, still)
		}
	}
	if length == 0 { // ended on the case sheet: no tick passes, and what could be seen is still something
		look()
	}
	for !run.State.Ended && run.State.Tick < length {
		look()
		for next < len(acts) && acts[next].Tick <= run.State.Tick {
			rec.do(acts[next], &seen)
			next++
		}
		run.Step()
	}
	for ; next < len(acts) && !run.State.Ended; next++ { // at the very end, after which no tick passed
		rec.do(acts[next], &seen)
	}
	return rec
}

// highest keeps the highest reading of the detector while the bowl fills.
func highest(most float64, s *sim.State) float64 {
	if s.Pump.Mode != sim.PumpFill && s.Pump.Mode != sim.PumpTopUp || !s.Bowl.Spinning {
		return 0
	}
	return max(most, s.Bowl.Detector.Mean())
}

func (rec *Record) do(a sim.Action, seen *sim.Seen) {
	r := rec.Run
	sim.View(&r.Case, &r.State, seen)
	m := moment{seen: *seen, tally: sim.TallyTruth(&r.State), shed: r.State.Patient.ShedML}
	alarms := r.State.Conduct.FalseAlarms
	if r.Do(a) == "" {
		m.hands, m.falsely, m.clear = r.State.Bench.HandsUntil, r.State.Conduct.FalseAlarms > alarms, r.State.Team.FieldClear
		rec.moments = append(rec.moments, m)
	}
}

// markBefore is the latest mark that is not after a tick.
func (rec *Record) markBefore(tick int64) *play.Mark {
	i, _ := slices.BinarySearchFunc(rec.marks, tick+1, func(m play.Mark, t int64) int { return int(m.State.Tick - t) })
	return &rec.marks[max(0, i-1)]
}

// at is the sample of a tick; an empty one where no tick passed.
func (rec *Record) at(tick int64) *play.Sample {
	t := rec.Run.Trace
	if len(t) == 0 {
		return &play.Sample{}
	}
	return &t[min(max(0, int(tick/sim.TicksPerSecond)), len(t)-1)]
}

// stoodAt is how the pump stood at a tick.
func (rec *Record) stoodAt(tick int64) stood {
	return rec.stood[min(len(rec.stood)-1, max(0, int(tick/sim.TicksPerSecond)))]
}

// mostBy is the highest reading by a tick since the bowl began to fill.
func (rec *Record) mostBy(tick int64) float64 {
	return rec.most[min(len(rec.most)-1, max(0, int(tick/sim.TicksPerSecond)))]
}

// judge grades a run of the same case against what steady reached in it.
func (rec *Record) judge(run *play.Run, yard scoring.Yardstick) scoring.Grade {
	return scoring.Judge(rec.Scenario, run, yard)
}
