package debrief

import (
	"slices"
	"testing"

	"rouleau/scoring/play"
	"rouleau/sim"
	"rouleau/sim/guarded"
)

// Known faults in deciding and preparing, and how faults are planted.

var plantedPreparing = []planted{
	{"no prime", "steady-oozing-spine", "prime", leavesAllOut(does(sim.Prime))},
	{"too little prime", "sudden-brisk-bleeding", "prime", otherwise(does(sim.Prime), 40)},
	{"decides to collect from one who declines", "salvage-declined", "decision", otherwise(does(sim.Decide), float64(sim.SetUpToProcess))},
	{"decides late", "infection-in-the-field", "decision", func(rec *Record) (Edit, bool) {
		late, ok := inMinute(does(sim.Decide), 13)(rec)
		note, _ := inMinute(does(sim.Note), 13)(rec)
		return Edit{Swap: append(late.Swap, note.Swap...)}, ok
	}},
	{"decides alone", "infection-in-the-field", "together", leavesAllOut(asks(sim.DecideTogether))},
	{"water stays on the hook", "bench-left-by-a-colleague", "bench", leavesFirstOut(on(sim.Unhang, sim.WashHookA), on(sim.Hang, sim.WashHookA))},
	{"outlet stays open", "bench-left-by-a-colleague", "bench", leavesAllOut(func(a *sim.Action) bool { return a.Do == sim.Clamp && a.On == sim.OutletClamp && a.Value == 0 })},
	{"heparin stays on the hook", "heparin-forbidden-citrate-at-hand", "bench", leavesFirstOut(on(sim.Unhang, sim.AnticoagulantHook), on(sim.Hang, sim.AnticoagulantHook))},
	{"vacuum untested", "steady-oozing-spine", "vacuum_test", leavesAllOut(does(sim.TestVacuum))},
	{"lines trodden on", "one-trouble-after-another", "loosened", leavesAllOut(within(either(on(sim.Inspect, sim.OutletLine), on(sim.Connect, sim.OutletLine)), 30, 55))},
	{"heparin for one who must not have it", "calcium-in-the-irrigation", "anticoagulant", otherwise(on(sim.Hang, sim.AnticoagulantHook), 0)},
	{"saline past its date", "steady-oozing-spine", "fluid", otherwise(on(sim.Hang, sim.WashHookA), 3)},
	{"standard bowl for a child", "child-of-14-kg", "bowl", otherwise(does(sim.ChooseBowl), float64(sim.StandardBowl))},
	{"small bowl for an adult", "steady-oozing-spine", "bowl", otherwise(does(sim.ChooseBowl), float64(sim.SmallBowl))},
	{"nothing looked at", "steady-oozing-spine", "bench_check", leavesAllOut(does(sim.Inspect))},
	{"processing set opened at once", "steady-oozing-spine", "processing_set", inMinute(on(sim.OpenSet, sim.ProcessingSet), 4)},
}

// A set is touched in one run of fifty, so the seeds are looked for in which it is.
func TestATouchedSetThatIsUsedComesFirst(t *testing.T) {
	p := planted{"a touched set is used", "steady-oozing-spine", "breach", leavesAllOut(does(sim.ReplaceSet))}
	c := opened(t, p.scenario).Case(1, false)
	var k tally
	for seed := uint64(1); k.tried < 3 && seed < 1000; seed++ {
		run := play.New(c, seed)
		run.Step() // begins the case
		if guarded.Uniform(run.State.Chance.Uint64()) < c.Faults.TouchChance {
			k.add(p.try(t, steadyRecord(t, p.scenario, seed)))
		}
	}
	if k.tried < 3 || k.first < 3 || k.sized < 3 {
		t.Errorf("of 3 seeds %d tried, %d first, %d right in size", k.tried, k.first, k.sized)
	}
}

// either fits what one of these fits.
func either(any ...func(a *sim.Action) bool) func(a *sim.Action) bool {
	return func(a *sim.Action) bool {
		return slices.ContainsFunc(any, func(fits func(a *sim.Action) bool) bool { return fits(a) })
	}
}

// leavesFirstOut drops the first act that fits each of these.
func leavesFirstOut(each ...func(a *sim.Action) bool) func(rec *Record) (Edit, bool) {
	return func(rec *Record) (e Edit, ok bool) {
		for _, fits := range each {
			if i := rec.firstOf(fits); i >= 0 {
				e.Drop = append(e.Drop, i)
			}
		}
		return e, len(e.Drop) == len(each)
	}
}

// otherwise does the first act that fits with another value.
func otherwise(fits func(a *sim.Action) bool, value float64) func(rec *Record) (Edit, bool) {
	return changes(0, fits, func(a *sim.Action) { a.Value = value })
}

// inMinute does the first act that fits at another time.
func inMinute(fits func(a *sim.Action) bool, n int64) func(rec *Record) (Edit, bool) {
	return changes(0, fits, func(a *sim.Action) { a.Tick = n * minute })
}

// within fits what another fits between two minutes.
func within(fits func(a *sim.Action) bool, from, to int64) func(a *sim.Action) bool {
	return func(a *sim.Action) bool { return a.Tick >= from*minute && a.Tick < to*minute && fits(a) }
}
