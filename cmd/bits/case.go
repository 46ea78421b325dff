package main

import (
	"fmt"
	"math"
	"os"

	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
)

// Two whole cases of the library played by steady: the state's hash each ten minutes and at the end, and every grade.

const (
	theCase   = "steady-oozing-spine"
	tenMinute = 10 * 60 * 20 // ticks
)

func wholeCases(tell func(name string, bits uint64)) {
	sc, err := scenarios.Open(theCase)
	if err != nil {
		fmt.Fprintf(os.Stderr, "bits: %v\n", err)
		os.Exit(3)
	}
	for seed := uint64(1); seed <= 2; seed++ {
		run := play.New(sc.Case(seed, true), seed)
		run.ToEnd(operators.NewSteady(operators.SheetOf(sc, &run.Case)))
		again := play.New(run.Case, seed)
		again.Again(run.Actions, run.State.Tick, func(r *play.Run) {
			if r.State.Tick%tenMinute == 0 {
				tell(fmt.Sprintf("seed %d state at tick %d", seed, r.State.Tick), r.State.Hash())
			}
		})
		tell(fmt.Sprintf("seed %d state at the end", seed), run.State.Hash())
		g := scoring.Judge(sc, run, scoring.PlayYardstick(sc, seed, true))
		for _, c := range g.Criteria {
			tell(fmt.Sprintf("seed %d %s value", seed, c.Measure), math.Float64bits(c.Value))
			tell(fmt.Sprintf("seed %d %s points", seed, c.Measure), math.Float64bits(c.Points))
		}
		tell(fmt.Sprintf("seed %d points", seed), math.Float64bits(g.Points))
	}
}
