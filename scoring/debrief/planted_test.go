package debrief

import (
	"flag"
	"sync"
	"testing"

	"rouleau/scoring"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
)

// Known faults are planted in the run of steady, one at a time. The debrief of the run that results, which is told nothing of it,
// must put the planted one first, with the sign and the size of its cost right: what steady had lost by it.

var seeds = flag.Int("seeds", 1, "seeds that each planted fault is tried with")

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
	plantedPreparing,
	plantedCollecting,
	plantedProcessing,
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

// tally counts over the seeds of all faults.
type tally struct {
	lock                      sync.Mutex
	tried, first, sized, idle int
}

// share of the planted faults that must come first, and of those whose cost must be right.
const enough = 0.95

func TestPlantedFaultComesFirst(t *testing.T) {
	var all tally
	t.Run("faults", func(t *testing.T) {
		for _, group := range plantedAll {
			for _, p := range group {
				t.Run(p.name, func(t *testing.T) {
					t.Parallel()
					var own tally
					for seed := uint64(1); seed <= uint64(*seeds); seed++ {
						p.try(t, seed, &own)
					}
					all.lock.Lock()
					defer all.lock.Unlock()
					all.tried, all.first, all.sized, all.idle = all.tried+own.tried, all.first+own.first, all.sized+own.sized, all.idle+own.idle
					t.Logf("%s: of %d seeds %d tried, %d first and right in sign, %d right in size", p.name, *seeds, own.tried, own.first, own.sized)
				})
			}
		}
	})
	t.Logf("%d tried (%d more gave no occasion or did no harm): %d first and right in sign, %d of them right in size", all.tried, all.idle, all.first, all.sized)
	if float64(all.first) < float64(enough*float64(all.tried)) {
		t.Errorf("%d of %d come first: too few", all.first, all.tried)
	}
	if float64(all.sized) < float64(enough*float64(all.first)) {
		t.Errorf("%d of %d are right in size: too few", all.sized, all.first)
	}
	if all.tried < 20 {
		t.Errorf("only %d were tried", all.tried)
	}
}

// try plants the fault in one seed.
func (p *planted) try(t *testing.T, seed uint64, k *tally) {
	base := steadyRecord(t, p.scenario, seed)
	e, ok := p.plant(base)
	if !ok {
		k.idle++
		t.Logf("seed %d: no occasion", seed)
		return
	}
	rec := OfRun(base.Scenario, base.fork(&e), false)
	d := New(rec)
	was := outcomeOf(base.Run, scoring.Judge(base.Scenario, base.Run, d.Yardstick))
	lost, lostGain := was.Grade.Points-d.Own.Grade.Points, gain(&d.Own, &was)
	if lostGain <= slightest {
		k.idle++
		t.Logf("seed %d: the fault did no harm", seed)
		return
	}
	var costs []Cost
	for i := range d.Decisions {
		costs = append(costs, d.Play(i))
	}
	Rank(costs)
	k.tried++
	if len(costs) == 0 || costs[0].Decision.Aspect != p.aspect || costs[0].Gain <= 0 {
		t.Logf("seed %d: NOT FIRST: lost %.2f points (%.1f by weight)", seed, lost, lostGain)
		for i := range min(3, len(costs)) {
			t.Logf("  %+.2f points, %+.1f: %s", costs[i].Points, costs[i].Gain, costs[i].Decision.Title)
		}
		return
	}
	k.first++
	if off := costs[0].Points - lost; max(off, -off) > max(offPoints, offShare*lost) {
		t.Logf("seed %d: NOT RIGHT IN SIZE: lost %.2f points, said to be %.2f: %s", seed, lost, costs[0].Points, costs[0].Decision.Title)
		for i := range was.Grade.Criteria {
			a, b, c := &was.Grade.Criteria[i], &d.Own.Grade.Criteria[i], &costs[0].With.Grade.Criteria[i]
			if a.Points != c.Points {
				t.Logf("  %s: %.2f at first, %.2f with the fault, %.2f put right", a.Measure, a.Points, b.Points, c.Points)
			}
		}
		return
	}
	k.sized++
}
