package debrief

import (
	"flag"
	"testing"

	"rouleau/scoring"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
)

// Known faults are planted in the run of steady, one at a time. The debrief of the run that results, which is told nothing of it,
// must put the planted one first, with the sign and the size of its cost right: what steady had lost by it.

var seeds = flag.Int("seeds", 2, "seeds that each planted fault is tried with")

// planted is a known fault.
type planted struct {
	name     string
	scenario string
	aspect   string                         // that must come first
	plant    func(rec *Record) (Edit, bool) // false where this seed gives no occasion
}

// most of what a size may be off by: points, and as a share of the truth.
const (
	offPoints = 1.0
	offShare  = 0.25
)

var plantedAll = [][]planted{
	plantedPreparing, plantedProcessing,
	plantedReturning,
	plantedTelling,
	plantedRecording,
}

func steadyRecord(t testing.TB, name string, seed uint64) *Record {
	t.Helper()
	sc := opened(t, name)
	run := play.New(sc.Case(seed, false), seed)
	run.ToEnd(operators.NewSteady(operators.SheetOf(sc, &run.Case)))
	return OfRun(sc, run, false)
}

func TestPlantedFaultComesFirst(t *testing.T) {
	tried, found, sized := 0, 0, 0
	for _, group := range plantedAll {
		for _, p := range group {
			t.Run(p.name, func(t *testing.T) {
				for seed := uint64(1); seed <= uint64(*seeds); seed++ {
					base := steadyRecord(t, p.scenario, seed)
					e, ok := p.plant(base)
					if !ok {
						t.Logf("seed %d: no occasion", seed)
						continue
					}
					rec := OfRun(base.Scenario, base.fork(&e), false)
					d := New(rec)
					truth := d.Yardstick
					was := outcomeOf(base.Run, scoring.Judge(base.Scenario, base.Run, truth))
					lost, lostGain := was.Grade.Points-d.Own.Grade.Points, gain(&d.Own, &was)
					if lostGain <= slightest {
						t.Logf("seed %d: the fault did no harm", seed)
						continue
					}
					var costs []Cost
					for i := range d.Decisions {
						costs = append(costs, d.Play(i))
					}
					Rank(costs)
					tried++
					if len(costs) == 0 || costs[0].Decision.Aspect != p.aspect || costs[0].Gain <= 0 {
						t.Errorf("seed %d: lost %.2f points (%.1f by weight); first is not %s", seed, lost, lostGain, p.aspect)
						for i := range min(3, len(costs)) {
							t.Logf("  %+.2f points, %+.1f: %s", costs[i].Points, costs[i].Gain, costs[i].Decision.Title)
						}
						continue
					}
					found++
					if off := costs[0].Points - lost; max(off, -off) > max(offPoints, offShare*lost) {
						t.Errorf("seed %d: lost %.2f points, said to be %.2f: %s", seed, lost, costs[0].Points, costs[0].Decision.Title)
						for i := range was.Grade.Criteria {
							a, b, c := &was.Grade.Criteria[i], &d.Own.Grade.Criteria[i], &costs[0].With.Grade.Criteria[i]
							if a.Points != c.Points {
								t.Logf("  %s: %.2f at first, %.2f with the fault, %.2f put right", a.Measure, a.Points, b.Points, c.Points)
							}
						}
						continue
					}
					sized++
				}
			})
		}
	}
	t.Logf("%d tried, %d first and right in sign, %d right in size", tried, found, sized)
}
