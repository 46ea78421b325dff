package main

import (
	"os"
	"strconv"

	"github.com/rogpeppe/go-internal/testscript"

	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// What scripts need that no command does: an attempt that was left before its end, and marks of one's own in an attempt.

// leave FROM TO SECONDS makes an attempt that did the same as another and was left then.
func leave(ts *testscript.TestScript, _ bool, args []string) {
	a, sc := readAttempt(ts, args[0])
	seconds, err := strconv.ParseInt(args[2], 10, 64)
	ts.Check(err)
	run := play.New(sc.Case(a.Seed, a.Assessment()), a.Seed)
	run.Again(a.Actions, seconds*sim.TicksPerSecond-1, nil)
	g := scoring.Judge(sc, run, scoring.PlayYardstick(sc, a.Seed, a.Assessment()))
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), attempt.Of(sc, run, g, attempt.By{Operator: a.Operator, Mode: a.Mode}).Encode(), 0o600))
}

// selfmark FILE marks every objective of an attempt as one that went well, as the window does before it shows the verdict.
func selfmark(ts *testscript.TestScript, _ bool, args []string) {
	_, sc := readAttempt(ts, args[0])
	var s attempt.Self
	for _, o := range attempt.Objectives(sc) {
		s.Marks = append(s.Marks, attempt.ObjectiveMark{Objective: o.ID, Mark: attempt.WentWell})
	}
	ts.Check(attempt.KeepSelf(ts.MkAbs(args[0]), s))
}

func readAttempt(ts *testscript.TestScript, name string) (*attempt.Attempt, *scenarios.Scenario) {
	a, err := attempt.Load(ts.MkAbs(name))
	ts.Check(err)
	sc, faults := scenarios.Parse(a.Scenario.ID+".yaml", []byte(a.Scenario.Text))
	ts.Check(faults.Err())
	return a, sc
}
