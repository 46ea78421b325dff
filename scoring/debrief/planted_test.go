package debrief

import (
	"flag"
	"fmt"
	"slices"
	"sync"
	"testing"

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

// tally counts over the seeds of one fault.
type tally struct {
	lock                      sync.Mutex
	tried, first, sized, idle int
}

// What came of planting a fault once.
type came uint8

const (
	idle     came = iota // it found no occasion, or did no harm
	notFirst             // or with the wrong sign
	notSized
	right
)

func (k *tally) add(c came) {
	k.lock.Lock()
	defer k.lock.Unlock()
	for _, n := range []struct {
		on    *int
		count bool
	}{{&k.idle, c == idle}, {&k.tried, c > idle}, {&k.first, c > notFirst}, {&k.sized, c == right}} {
		if n.count {
			*n.on++
		}
	}
}

// share of the planted faults that must come first, with the sign and the size of their cost right.
const enough = 0.95

func TestPlantedFaultComesFirst(t *testing.T) {
	tallies, scenarios := map[string]*tally{}, map[string][]planted{} // all faults of a case are planted in one run of steady
	for _, p := range slices.Concat(plantedAll...) {
		tallies[p.name], scenarios[p.scenario] = &tally{}, append(scenarios[p.scenario], p)
	}
	t.Run("faults", func(t *testing.T) {
		for seed := uint64(1); seed <= uint64(*seeds); seed++ {
			for name, faults := range scenarios {
				t.Run(fmt.Sprintf("%s, seed %d", name, seed), func(t *testing.T) {
					t.Parallel()
					base := steadyRecord(t, name, seed)
					for _, p := range faults {
						tallies[p.name].add(p.try(t, base))
					}
				})
			}
		}
	})
	var all tally
	for _, p := range slices.Concat(plantedAll...) {
		own := tallies[p.name]
		all.tried, all.first, all.sized, all.idle = all.tried+own.tried, all.first+own.first, all.sized+own.sized, all.idle+own.idle
		t.Logf("%s: of %d seeds %d tried, %d first and right in sign, %d right in size too", p.name, *seeds, own.tried, own.first, own.sized)
	}
	t.Logf("%d tried (%d more gave no occasion or did no harm): %d first and right in sign, %d of them right in size", all.tried, all.idle, all.first, all.sized)
	if float64(all.sized) < float64(enough*float64(all.tried)) {
		t.Errorf("%d of %d come first with sign and size right: too few", all.sized, all.tried)
	}
	if all.tried < 20 {
		t.Errorf("only %d were tried", all.tried)
	}
}

// try plants the fault in a run of steady.
func (p *planted) try(t *testing.T, base *Record) came {
	seed := base.Run.Seed
	e, ok := p.plant(base)
	if !ok {
		t.Logf("%s, seed %d: no occasion", p.name, seed)
		return idle
	}
	rec := OfRun(base.Scenario, base.fork(&e), false)
	d := Against(rec, base)
	lost, lostGain := d.GoodOwn.Grade.Points-d.Own.Grade.Points, gain(&d.Own, &d.GoodOwn)
	if lostGain <= slightest {
		t.Logf("%s, seed %d: the fault did no harm", p.name, seed)
		return idle
	}
	var costs []Cost
	for i := range d.Decisions {
		costs = append(costs, d.Play(i))
	}
	Rank(costs)
	if len(costs) == 0 || costs[0].Decision.Aspect != p.aspect || costs[0].Gain <= 0 {
		t.Logf("%s, seed %d: NOT FIRST: lost %.2f points (%.1f by weight)", p.name, seed, lost, lostGain)
		for i := range min(3, len(costs)) {
			t.Logf("  %+.2f points, %+.1f: %s", costs[i].Points, costs[i].Gain, costs[i].Decision.Title)
		}
		return notFirst
	}
	if off := costs[0].Points - lost; max(off, -off) > max(offPoints, offShare*lost) {
		t.Logf("%s, seed %d: NOT RIGHT IN SIZE: lost %.2f points, said to be %.2f: %s", p.name, seed, lost, costs[0].Points, costs[0].Decision.Title)
		for i := range d.GoodOwn.Grade.Criteria {
			a, b, c := &d.GoodOwn.Grade.Criteria[i], &d.Own.Grade.Criteria[i], &costs[0].With.Grade.Criteria[i]
			if a.Points != c.Points {
				t.Logf("  %s: %.2f at first, %.2f with the fault, %.2f put right", a.Measure, a.Points, b.Points, c.Points)
			}
		}
		return notSized
	}
	return right
}
