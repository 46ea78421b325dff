package debrief

import (
	"rouleau/assets/words"
	"rouleau/sim"
)

// While a bag runs: how fast, watched, stopped in time, not pressed.

const (
	rightGiveMLMin = 100.0 // as steady gives; common practice
	childGiveMLKg  = 1.0   // mL/min for each kg of a child, as steady does it
	childKg        = 40.0
	emptyML        = 5.0 // in a bag: it is stopped before it runs empty
	watchEvery     = 60 * sim.TicksPerSecond
)

// giveML is how fast a bag should run.
func (f *finding) giveML() float64 {
	want := rightGiveMLMin
	if kg := f.c.Patient.WeightKg; kg < childKg {
		want = min(want, float64(childGiveMLKg*kg))
	}
	return min(want, f.most("give_rate_ml_min", want))
}

// findGiveRate looks for bags that ran too fast, or so slowly that the patient had to wait.
func findGiveRate(f *finding) []Decision {
	want := f.giveML()
	most := f.most("give_rate_ml_min", sim.MaxDropsMin)
	var all []Decision
	for _, b := range f.bags() {
		d := Decision{Fault: Wrong}
		for _, k := range b.rates {
			a := f.acts[k]
			if a.Value <= most && a.Value >= muchTooSlow*want {
				continue
			}
			if len(d.Edit.Swap) == 0 {
				d.Tick, d.Done, d.Title = a.Tick, a.Tick, title("give_rate", Wrong, b.name, want, a.Value)
			}
			d.Edit.Swap = append(d.Edit.Swap, f.valued(k, want))
		}
		if len(d.Edit.Swap) > 0 {
			if d.Edit.Swap[0].Act.Value > f.acts[d.Edit.Swap[0].Own].Value { // it runs empty sooner
				d.Edit.Rule = &Rule{From: d.Tick - d.Tick%sim.TicksPerSecond, Until: f.rec.lastTick, Act: stopsBeforeEmpty}
			}
			all = append(all, d)
		}
	}
	return withRules(all, words.Say("decision.give_rate_all", want))
}

// stopsBeforeEmpty closes the roller before a bag runs empty.
func stopsBeforeEmpty(v *sim.Seen, do func(sim.Action) sim.Reason) {
	if g := v.Giving.Bag; g >= 0 && v.Giving.RateMLMin > 0 && v.Bags[g].ML <= emptyML {
		do(sim.Action{Do: sim.GiveRate})
	}
}

// findRanEmpty looks for bags that ran empty with the roller open.
func findRanEmpty(f *finding) []Decision {
	var all []Decision
	for i := range f.rec.Run.Log {
		o := &f.rec.Run.Log[i]
		if o.Kind != sim.Alarmed || o.Key != sim.AlarmBagEmpty.String() || len(all) == mostOfAKind {
			continue
		}
		v := f.seenBy(o.Tick)
		if v.Giving.Bag < 0 {
			continue
		}
		from := max(0, o.Tick-60*sim.TicksPerSecond)
		until := f.rec.lastTick
		if k := f.first(o.Tick, func(a *sim.Action) bool { return a.Do == sim.Unhook || a.Do == sim.Hook || a.Do == sim.GiveRate }); k >= 0 {
			until = f.acts[k].Tick
		}
		all = append(all, Decision{Fault: Late, Title: title("ran_empty", Late, v.Giving.Bag+1, clock(o.Tick)), Tick: o.Tick, Done: until,
			Edit: Edit{Rule: &Rule{From: from - from%sim.TicksPerSecond, Until: until, Act: stopsBeforeEmpty}}})
	}
	return all
}

// findSqueezed looks for bags that were pressed while they ran in.
func findSqueezed(f *finding) []Decision {
	var e Edit
	at := int64(-1)
	for _, i := range f.every(does(sim.Squeeze)) {
		if f.acts[i].Value == 1 && at < 0 {
			at = f.acts[i].Tick
		}
		e.Drop = append(e.Drop, i)
	}
	if at < 0 {
		return nil
	}
	return []Decision{{Fault: Needless, Title: title("squeezed", Needless, clock(at)), Tick: at, Done: at, Edit: e}}
}

// findPackGiven looks for a pack of anticoagulant that was hooked to the patient.
func findPackGiven(f *finding) []Decision {
	hook := f.first(0, on(sim.Hook, sim.AnticoagulantHook))
	if hook < 0 {
		return nil
	}
	e := Edit{Drop: []int{hook}}
	for k := hook + 1; k < len(f.acts); k++ {
		a := &f.acts[k]
		if a.Do == sim.Hook && a.On != sim.AnticoagulantHook {
			break
		}
		if a.Do == sim.GiveRate || a.Do == sim.Unhook || a.Do == sim.Hook {
			e.Drop = append(e.Drop, k)
		}
	}
	t := f.acts[hook].Tick
	return []Decision{{Fault: Needless, Title: title("wrong_pack_given", Needless, clock(t)), Tick: t, Done: t, Edit: e}}
}

// findWatching looks for washed blood that ran in while nobody looked at the patient.
func findWatching(f *finding) []Decision {
	from, until := int64(-1), int64(0)
	for i := range f.rec.Run.Trace {
		if s := &f.rec.Run.Trace[i]; s.GiveMLMin > 0 {
			if from < 0 {
				from = s.Tick
			}
			until = s.Tick
		}
	}
	if from < 0 {
		return nil
	}
	looked := 0
	for _, k := range f.every(does(sim.Watch)) {
		if f.rec.moments[k].seen.Giving.FlowMLMin > 0 {
			looked++
		}
	}
	e := Edit{Rule: &Rule{From: from - from%sim.TicksPerSecond, Until: f.rec.lastTick, Act: watches}}
	if looked == 0 {
		return []Decision{{Fault: LeftOut, Title: title("watching", LeftOut, clock(from), clock(until)), Tick: from, Done: -1, Edit: e}}
	}
	return []Decision{{Fault: Late, Title: title("watching", Late, clock(from), clock(until)), Tick: from, Done: from, Edit: e}}
}

// watches looks at the patient each minute in which blood runs in, when the hands are free.
func watches(v *sim.Seen, do func(sim.Action) sim.Reason) {
	if v.Giving.FlowMLMin > 0 && v.Tick%watchEvery < 20*sim.TicksPerSecond && v.Tick%(10*sim.TicksPerSecond) == 0 && !v.HandsBusy {
		do(sim.Action{Do: sim.Watch, On: sim.PatientPart})
	}
}

// findReaction looks for blood that ran on into a reaction which the monitor showed.
func findReaction(f *finding) []Decision {
	at := int64(-1)
	for i := range f.rec.Run.Log {
		if o := &f.rec.Run.Log[i]; o.Kind == sim.Alarmed && o.Key == sim.AlarmReaction.String() {
			at = o.Tick
			break
		}
	}
	if at < 0 {
		return nil
	}
	v := f.seenBy(at)
	if v.Giving.Bag < 0 {
		return nil
	}
	k := int(v.Giving.Bag)
	until := at + 30*60*sim.TicksPerSecond
	d := Decision{Fault: Late, Tick: at + sim.TicksPerSecond, Done: -1}
	for i := range f.acts { // the bag is not given any more
		a := &f.acts[i]
		if a.Tick < at {
			continue
		}
		g := f.rec.moments[i].seen.Giving.Bag
		switch {
		case a.Do == sim.GiveRate && a.Value == 0 && int(g) == k || a.Do == sim.Unhook && int(g) == k || a.Do == sim.DiscardIt && a.On == sim.Bag(k):
			if d.Done < 0 {
				d.Done = a.Tick
			}
		case a.Do == sim.GiveRate && int(g) == k || a.Do == sim.Hook && a.On == sim.Bag(k):
			d.Edit.Drop = append(d.Edit.Drop, i)
		}
	}
	d.Edit.Rule = &Rule{From: at - at%sim.TicksPerSecond, Until: until, Act: stopsAtReaction}
	d.Title = title("reaction", Late, k+1, clock(d.Tick))
	if f.first(at, on(sim.DiscardIt, sim.Bag(k))) < 0 {
		d.Edit.Add = []Add{{Act: act(at+slack, sim.DiscardIt, sim.Bag(k), 0), PatienceS: 300}}
	}
	if d.Done < 0 {
		d.Fault, d.Title = LeftOut, title("reaction", LeftOut, k+1, clock(d.Tick))
	}
	return []Decision{d}
}

// stopsAtReaction stops what runs in when the monitor shows a reaction.
func stopsAtReaction(v *sim.Seen, do func(sim.Action) sim.Reason) {
	if v.Reacting && v.Giving.RateMLMin > 0 {
		do(sim.Action{Do: sim.GiveRate})
	}
}
