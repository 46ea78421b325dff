package debrief

import (
	"strings"
	"testing"

	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

func opened(t testing.TB, name string) *scenarios.Scenario {
	t.Helper()
	sc, err := scenarios.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	return sc
}

// firstOf is the first of the acts that fits, -1 for none.
func (rec *Record) firstOf(fits func(a *sim.Action) bool) int {
	for i := range rec.Run.Actions {
		if fits(&rec.Run.Actions[i]) {
			return i
		}
	}
	return -1
}

// played is a case played by an operator of the library.
func played(t testing.TB, name, operator string, seed uint64) *Record {
	t.Helper()
	sc := opened(t, name)
	who, err := operators.Open(operator)
	if err != nil {
		t.Fatal(err)
	}
	run := play.New(sc.Case(seed, true), seed)
	run.ToEnd(who.Play(operators.SheetOf(sc, &run.Case)))
	return OfRun(sc, run, true)
}

// A fork that changes nothing is the same run to the bit, whoever played and from wherever it begins.
func TestAForkThatChangesNothingIsTheSameRun(t *testing.T) {
	names := []string{"steady-oozing-spine", "one-trouble-after-another", "circuit-stays-connected", "sudden-brisk-bleeding"}
	if *everyCase {
		names = scenarios.Library()
	}
	for _, name := range names {
		for _, who := range []string{"steady", "hasty", "inattentive", "rule-bound"} {
			rec := played(t, name, who, 3)
			for _, tick := range []int64{0, 20 * 60 * sim.TicksPerSecond, 50 * 60 * sim.TicksPerSecond} {
				e := &Edit{Rule: &Rule{From: tick, Until: tick, Act: nil}}
				run := rec.fork(e)
				if run.State.Hash() != rec.Run.State.Hash() || len(run.Actions) != len(rec.Run.Actions) {
					t.Errorf("%s by %s from %d: %d acts instead of %d, ended at %d instead of %d", name, who, tick, len(run.Actions), len(rec.Run.Actions), run.State.Tick, rec.Run.State.Tick)
					for i := range run.Actions {
						if i >= len(rec.Run.Actions) || run.Actions[i] != rec.Run.Actions[i] {
							t.Logf("parts at act %d: %+v", i, run.Actions[i])
							break
						}
					}
				}
			}
		}
	}
}

// A small thing that matters to nobody leaves the points nearly as they were: the hand brings nothing of its own.
func TestAForkThatHardlyChangesAnything(t *testing.T) {
	for _, name := range []string{"steady-oozing-spine", "one-trouble-after-another", "sudden-brisk-bleeding", "pelvis-loss-over-hours"} {
		for _, who := range []string{"steady", "hasty", "inattentive", "overcautious"} {
			rec := played(t, name, who, 5)
			yard := scoring.YardstickOf(rec.Good().Run)
			own := rec.judge(rec.Run, yard)
			for _, min := range []int64{5, 25, 45} {
				run := rec.fork(&Edit{Add: []Add{{Act: sim.Action{Tick: min * 60 * sim.TicksPerSecond, Do: sim.Inspect, On: sim.PatientPart}}}})
				got := rec.judge(run, yard)
				t.Logf("%s by %s at %d min: %.1f, %.1f; acts %d, %d; end %d, %d", name, who, min, own.Points, got.Points, len(rec.Run.Actions), len(run.Actions), rec.Run.State.Tick, run.State.Tick)
				if d := got.Points - own.Points; d > 0.5 || d < -0.5 {
					for i := range own.Criteria {
						if a, b := &own.Criteria[i], &got.Criteria[i]; a.Points != b.Points {
							t.Errorf("%s by %s at %d min, %s: %.1f for %g instead of %.1f for %g", name, who, min, a.Measure, b.Points, b.Value, a.Points, a.Value)
						}
					}
				}
			}
		}
	}
}

// A case that ends on its sheet, before any time has passed, has a debrief too.
func TestACaseThatEndsOnItsSheet(t *testing.T) {
	for _, name := range []string{"steady-oozing-spine", "infection-in-the-field", "first-bowl"} {
		sc := opened(t, name)
		run := play.New(sc.Case(1, false), 1)
		run.Do(sim.Action{Do: sim.Decide, Value: float64(sim.DoNotSalvage)})
		run.Do(sim.Action{Do: sim.EndCase})
		d := New(OfRun(sc, run, false))
		var costs []Cost
		for i := range d.Decisions {
			costs = append(costs, d.Play(i))
		}
		Rank(costs)
		if len(Questions(d, costs)) == 0 || len(d.Own.Grade.Criteria) == 0 {
			t.Errorf("%s: nothing is said", name)
		}
	}
}

// A part that nobody touched is not touched in another course either, in which the lines are only connected at another time.
func TestAForkBringsNoIllLuck(t *testing.T) {
	text, met := strings.Replace(string(opened(t, "steady-oozing-spine").Source), "touch_chance: 0.02", "touch_chance: 0.4", 1), 0
	sc, faults := scenarios.Parse("steady-oozing-spine.yaml", []byte(text))
	if err := faults.Err(); err != nil {
		t.Fatal(err)
	}
	for seed := uint64(1); seed <= 16; seed++ {
		run := play.New(sc.Case(seed, false), seed)
		run.ToEnd(operators.NewSteady(operators.SheetOf(sc, &run.Case)))
		rec := OfRun(sc, run, false)
		if rec.untouched() {
			met++
			e := Edit{Swap: []Swap{ // before the first blood gas, which draws too
				{Own: rec.firstOf(on(sim.OpenSet, sim.ProcessingSet)), Act: act(12*minute, sim.OpenSet, sim.ProcessingSet, 0)},
				{Own: rec.firstOf(on(sim.Connect, sim.OutletLine)), Act: act(14*minute, sim.Connect, sim.OutletLine, 0)},
			}}
			if other := (&Record{Run: rec.fork(&e)}); !other.untouched() {
				t.Errorf("seed %d: a part is touched that was not", seed)
			}
		}
	}
	if met < 4 {
		t.Errorf("only %d runs were without a touch", met)
	}
}
