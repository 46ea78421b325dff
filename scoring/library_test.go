package scoring

import (
	"testing"

	"rouleau/scenarios"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
)

// Every case of the library as an assessment: who works well passes, who does nothing does not.
func TestSteadyPassesEveryCaseAndIdleNone(t *testing.T) {
	for _, name := range scenarios.Library() {
		sc, err := scenarios.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		if sc.Lesson() {
			continue // for practice only
		}
		for seed := uint64(1); seed <= 2; seed++ {
			run := play.New(sc.Case(seed, true), seed)
			run.ToEnd(operators.NewSteady(operators.SheetOf(sc, &run.Case)))
			yard := YardstickOf(run)
			if g := Judge(sc, run, yard); !g.Passed || g.Points < 90 {
				t.Errorf("%s, seed %d: steady has %.1f points: %v", name, seed, g.Points, g.Reasons)
			}
			idle := play.New(sc.Case(seed, true), seed)
			idle.ToEnd(operators.Idle{})
			if g := Judge(sc, idle, yard); g.Passed || g.Points > 5 {
				t.Errorf("%s, seed %d: idle has %.1f points", name, seed, g.Points)
			}
		}
	}
}
