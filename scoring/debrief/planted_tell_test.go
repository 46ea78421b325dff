package debrief

import "rouleau/sim"

const minute = 60 * sim.TicksPerSecond

// leavesOut drops the n-th act that fits, n from 0.
func leavesOut(n int, fits func(a *sim.Action) bool) func(rec *Record) (Edit, bool) {
	return func(rec *Record) (Edit, bool) {
		all := rec.allOf(fits)
		if n >= len(all) {
			return Edit{}, false
		}
		return Edit{Drop: all[n : n+1]}, true
	}
}

// leavesAllOut drops every act that fits.
func leavesAllOut(fits func(a *sim.Action) bool) func(rec *Record) (Edit, bool) {
	return func(rec *Record) (Edit, bool) {
		all := rec.allOf(fits)
		return Edit{Drop: all}, len(all) > 0
	}
}

// changes does the n-th act that fits in another way.
func changes(n int, fits func(a *sim.Action) bool, how func(a *sim.Action)) func(rec *Record) (Edit, bool) {
	return func(rec *Record) (Edit, bool) {
		all := rec.allOf(fits)
		if n >= len(all) {
			return Edit{}, false
		}
		a := rec.Run.Actions[all[n]]
		how(&a)
		return Edit{Swap: []Swap{{all[n], a}}}, true
	}
}

func (rec *Record) allOf(fits func(a *sim.Action) bool) (all []int) {
	for i := range rec.Run.Actions {
		if fits(&rec.Run.Actions[i]) {
			all = append(all, i)
		}
	}
	return all
}

func otherWay(a *sim.Action)    { a.Value = 1 - a.Value }
func sixMinutes(a *sim.Action)  { a.Tick += 6 * minute }
func twiceAsMuch(a *sim.Action) { a.Value *= 2 }
func halfOfIt(a *sim.Action)    { a.Value = sim.HandoverVolume | sim.HandoverHct | sim.HandoverWashed }
func muchTooLate(a *sim.Action) { a.Tick += 90 * minute }

var plantedTelling = []planted{
	{"no warning asked for", "steady-oozing-spine", "warn_of_agent", leavesOut(0, asks(sim.TellMeWhen))},
	{"no warning of cement", "hip-revision-thin-feed", "warn_of_agent", leavesOut(0, asks(sim.TellMeWhen))},
	{"sucker back before it was clear", "steady-oozing-spine", "ask_clear", func(rec *Record) (Edit, bool) {
		away := rec.firstOf(routesTo(sim.ToDiscard))
		if away < 0 {
			return Edit{}, false
		}
		at := rec.Run.Actions[away].Tick + 3*minute
		return Edit{Add: []Add{{Act: act(at, sim.Route, sim.NoPart, float64(sim.ToReservoir))}}}, true
	}},
	{"a question left open", "sudden-brisk-bleeding", "answer", leavesOut(1, does(sim.Answer))},
	{"a wrong answer", "one-trouble-after-another", "answer", changes(1, does(sim.Answer), otherWay)},
	{"a late answer", "child-of-14-kg", "answer", changes(1, does(sim.Answer), sixMinutes)},
	{"a loss asked for and far off", "calcium-in-the-irrigation", "answer", changes(0, does(sim.EstimateLoss), twiceAsMuch)},
	{"a loss asked for and not told", "circuit-stays-connected", "answer", leavesOut(0, does(sim.EstimateLoss))},
	{"a bag not handed over", "child-of-14-kg", "hand_over", leavesOut(0, does(sim.HandOver))},
	{"half a handover", "caesarean-rhd-negative", "hand_over", changes(0, does(sim.HandOver), halfOfIt)},
	{"a circuit not handed over", "circuit-stays-connected", "hand_over", leavesAllOut(does(sim.HandOver))},
	{"infection not told", "infection-in-the-field", "tell_reason", leavesOut(0, asks(sim.InfectedField))},
	{"no heparin told late", "heparin-forbidden-citrate-at-hand", "tell_reason", changes(0, asks(sim.NoHeparin), muchTooLate)},
	{"clotting never told", "pelvis-loss-over-hours", "tell_clotting", leavesAllOut(asks(sim.ThinnedClotting))},
	{"no anti-D", "caesarean-rhd-negative", "anti_d", leavesOut(0, asks(sim.GiveAntiD))},
	{"the test too early", "caesarean-rhd-negative", "fetal_test", func(rec *Record) (Edit, bool) {
		all := rec.allOf(asks(sim.TestFetalBleed))
		return Edit{Drop: all, Add: []Add{{Act: act(20*minute, sim.Ask, sim.NoPart, float64(sim.TestFetalBleed))}}}, len(all) > 0
	}},
}
