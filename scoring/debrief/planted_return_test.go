package debrief

import (
	"slices"

	"rouleau/sim"
)

var plantedReturning = []planted{
	{"no label", "steady-oozing-spine", "label", leavesOut(0, does(sim.Label))},
	{"half a label", "caesarean-rhd-negative", "label", changes(0, does(sim.Label), func(a *sim.Action) { a.Value = sim.LabelName | sim.LabelNumber })},
	{"one person checks", "steady-oozing-spine", "identity", changes(0, does(sim.Identify), func(a *sim.Action) { a.Value = 1 })},
	{"nobody checks", "hip-revision-thin-feed", "identity", leavesOut(0, does(sim.Identify))},
	{"no filter", "caesarean-rhd-negative", "filter", changes(0, does(sim.Hook), func(a *sim.Action) { a.Value = 0 })},
	{"air left in", "steady-oozing-spine", "air_out", leavesAllOut(does(sim.ExpelAir))},
	{"bag pressed", "steady-oozing-spine", "squeezed", presses},
	{"anticoagulant connected", "steady-oozing-spine", "wrong_pack_given", connectsPack},
	{"too fast for a child", "child-of-14-kg", "give_rate", givesAt(60)},
	{"nobody watched", "steady-oozing-spine", "watching", leavesAllOut(does(sim.Watch))},
	{"nobody watched for hours", "pelvis-loss-over-hours", "watching", leavesAllOut(does(sim.Watch))},
	{"given into the reaction", "one-trouble-after-another", "reaction", givesOn},
	{"first bag late", "steady-oozing-spine", "given_late", bagLater(0, 25*minute)},
	{"first bag late for a mother", "caesarean-rhd-negative", "given_late", bagLater(0, 15*minute)},
	{"first bag never", "steady-oozing-spine", "never_given", neverGives(0)},
	{"past its time", "pelvis-loss-over-hours", "expired", givesExpired},
}

// presses squeezes the first bag for a minute while it runs.
func presses(rec *Record) (Edit, bool) {
	i := rec.firstOf(func(a *sim.Action) bool { return a.Do == sim.GiveRate && a.Value > 0 })
	if i < 0 {
		return Edit{}, false
	}
	t := rec.Run.Actions[i].Tick + minute/2
	bag := sim.Bag(int(rec.moments[i].seen.Giving.Bag))
	return Edit{Add: []Add{{Act: act(t, sim.Squeeze, bag, 1)}, {Act: act(t+20*sim.TicksPerSecond, sim.Squeeze, bag, 0)}}}, true
}

// connectsPack connects the anticoagulant to the patient for a minute, while no bag is connected.
func connectsPack(rec *Record) (Edit, bool) {
	f := rec.finder()
	hook := rec.firstOf(does(sim.Hook))
	if hook < 0 {
		return Edit{}, false
	}
	t := f.quiet(20*minute, rec.Run.Actions[hook].Tick-4*minute, 90)
	return Edit{Add: []Add{{Act: act(t, sim.Hook, sim.AnticoagulantHook, 0)}, {Act: act(t+15*sim.TicksPerSecond, sim.GiveRate, sim.NoPart, 30)},
		{Act: act(t+minute, sim.GiveRate, sim.NoPart, 0)}, {Act: act(t+minute+1, sim.Unhook, sim.NoPart, 0)}}}, t > 0
}

// givesAt gives every bag at another rate.
func givesAt(rate float64) func(rec *Record) (Edit, bool) {
	return func(rec *Record) (e Edit, ok bool) {
		for _, i := range rec.allOf(func(a *sim.Action) bool { return a.Do == sim.GiveRate && a.Value > 0 }) {
			a := rec.Run.Actions[i]
			a.Value = rate
			e.Swap = append(e.Swap, Swap{i, a})
		}
		return e, len(e.Swap) > 0
	}
}

// givesOn stops a bag that is reacted to a minute and a half late.
func givesOn(rec *Record) (Edit, bool) {
	for i := range rec.Run.Log {
		if o := &rec.Run.Log[i]; o.Kind == sim.Alarmed && o.Key == sim.AlarmReaction.String() {
			f := rec.finder()
			k := f.first(o.Tick, func(a *sim.Action) bool { return a.Do == sim.GiveRate && a.Value == 0 })
			if k < 0 {
				return Edit{}, false
			}
			return Edit{Swap: f.moved([]int{k}, -3*minute/2)}, true
		}
	}
	return Edit{}, false
}

// ofBag are the acts that give a bag, from 0.
func (rec *Record) ofBag(k int) []int {
	f := rec.finder()
	bags := f.bags()
	if k >= len(bags) {
		return nil
	}
	before, ends := f.readied(&bags[k])
	return slices.DeleteFunc(append(before, ends...), func(i int) bool { return f.acts[i].Do == sim.Ask })
}

// bagLater gives a bag later.
func bagLater(k int, by int64) func(rec *Record) (Edit, bool) {
	return func(rec *Record) (Edit, bool) {
		f := rec.finder()
		acts := rec.ofBag(k)
		return Edit{Swap: f.moved(acts, -by)}, len(acts) > 0
	}
}

// neverGives leaves a bag lying.
func neverGives(k int) func(rec *Record) (Edit, bool) {
	return func(rec *Record) (Edit, bool) {
		acts := rec.ofBag(k)
		return Edit{Drop: acts, Rule: rec.onlyOwn(giving)}, len(acts) > 0
	}
}

// givesExpired gives the first bag minutes after its time.
func givesExpired(rec *Record) (Edit, bool) {
	acts := rec.ofBag(0)
	over := rec.Run.State.Bags[0].FirstTick + rec.Run.Case.Faults.ExpiryTicks + 5*minute
	if len(acts) == 0 || over > rec.Run.Case.EndTick {
		return Edit{}, false
	}
	f := rec.finder()
	return Edit{Swap: f.moved(acts, rec.Run.Actions[acts[0]].Tick-over), Drop: f.every(on(sim.DiscardIt, sim.Bag(0)))}, true
}
