package debrief

import (
	"rouleau/assets/words"
	"rouleau/sim"
)

// What is done to a bag before it may be given: label, identity, filter, air.

// before is the act before which a bag has to be ready, -1 where it was never given: its hooking, or what let it run.
func (f *finding) before(b *bagged) int {
	if !f.gave(b) {
		return -1
	}
	if k := f.hook(b); k >= 0 {
		return k
	}
	return b.start
}

// does is the last of a bag's acts of a kind before another act, -1 for none.
func (f *finding) lastOn(b *bagged, v sim.Verb, before int) int {
	last := -1
	for _, k := range b.acts {
		if f.acts[k].Do == v && k < before {
			last = k
		}
	}
	return last
}

// findLabels looks for bags that were given without a complete label.
func findLabels(f *finding) []Decision {
	var all []Decision
	bags := f.bags()
	for i := range bags {
		b := &bags[i]
		hook := f.before(b)
		if hook < 0 || f.rec.moments[b.start].seen.Bags[b.k].LabelBits == sim.LabelComplete {
			continue
		}
		t := f.acts[hook].Tick
		if own := f.lastOn(b, sim.Label, b.start); own >= 0 {
			all = append(all, Decision{Fault: Wrong, Title: title("label", Wrong, b.name), Tick: f.acts[own].Tick, Done: f.acts[own].Tick,
				Edit: Edit{Swap: []Swap{f.valued(own, sim.LabelComplete)}}})
			continue
		}
		d := Decision{Fault: LeftOut, Title: title("label", LeftOut, b.name, clock(t)), Tick: t, Done: -1}
		for _, k := range b.acts {
			if f.acts[k].Do == sim.Label { // it came too late
				d.Fault, d.Done, d.Title = Late, f.acts[k].Tick, title("label", Late, b.name, clock(f.acts[k].Tick))
				d.Edit.Drop = append(d.Edit.Drop, k)
			}
		}
		d.Edit = f.readyFirst(d.Edit, b, hook, act(t, sim.Label, sim.Bag(b.k), sim.LabelComplete), 15)
		all = append(all, d)
	}
	return some(all, words.Say("decision.label_all", len(all)))
}

// readyFirst does something to a bag before it is hooked, where the hands were free since there is something in it, or else just
// before the hooking, which waits for it.
func (f *finding) readyFirst(e Edit, b *bagged, hook int, a sim.Action, seconds float64) Edit {
	if from := f.filled(b.k); from >= 0 {
		if at := f.quiet(max(from, f.acts[hook].Tick-10*60*sim.TicksPerSecond), f.acts[hook].Tick, seconds); at >= 0 {
			a.Tick = at
			e.Add = append(e.Add, Add{Act: a})
			return e
		}
	}
	e.First = append(e.First, First{hook, []sim.Action{a}})
	return e
}

// findIdentity looks for bags that were given before two people had checked who they were for.
func findIdentity(f *finding) []Decision {
	var all []Decision
	bags := f.bags()
	for i := range bags {
		b := &bags[i]
		hook := f.before(b)
		if hook < 0 || f.rec.moments[b.start].seen.Bags[b.k].Checkers >= 2 {
			continue
		}
		t := f.acts[hook].Tick
		d := Decision{Fault: LeftOut, Title: title("identity", LeftOut, b.name, clock(t)), Tick: t, Done: -1}
		before := hook
		var first []sim.Action
		own := f.lastOn(b, sim.Identify, b.start)
		if own >= 0 {
			d.Fault, d.Done, d.Title = Wrong, f.acts[own].Tick, title("identity", Wrong, b.name, clock(f.acts[own].Tick))
			d.Edit.Swap = []Swap{f.valued(own, 2)}
			before = own
		}
		if v := &f.rec.moments[before].seen; !v.ClinicianCalled {
			at := f.acts[before].Tick - sim.Ticks(callsBeforeS)
			if from := f.filled(b.k); from >= 0 && at > from {
				d.Edit.Add = append(d.Edit.Add, Add{Act: act(at, sim.Ask, sim.NoPart, float64(sim.ClinicianComes))})
			} else {
				first = append(first, act(t, sim.Ask, sim.NoPart, float64(sim.ClinicianComes)))
			}
		}
		if own < 0 {
			first = append(first, act(t, sim.Identify, sim.Bag(b.k), 2))
		}
		if len(first) > 0 {
			d.Edit.First = append(d.Edit.First, First{before, first})
		}
		all = append(all, d)
	}
	return some(all, words.Say("decision.identity_all", len(all)))
}

const callsBeforeS = 40.0 // a second person needs half a minute to come

// findFilters looks for bags that were given without a filter.
func findFilters(f *finding) []Decision {
	var all []Decision
	joins := f.every(does(sim.JoinCircuit))
	bags := f.bags()
	for i := range bags {
		b := &bags[i]
		if !f.gave(b) || b.start < 0 || f.rec.moments[b.start].seen.Giving.Filter {
			continue
		}
		hooks := b.hooks
		if f.hook(b) < 0 {
			hooks = joins
		}
		d := Decision{Fault: Wrong, Title: title("filter", Wrong, b.name)}
		for _, k := range hooks {
			if f.acts[k].Value == 0 {
				d.Edit.Swap = append(d.Edit.Swap, f.valued(k, 1))
				d.Tick, d.Done = f.acts[k].Tick, f.acts[k].Tick
			}
		}
		if len(d.Edit.Swap) > 0 {
			all = append(all, d)
		}
	}
	return some(all, words.Say("decision.filter_all", len(all)))
}

// findAirOut looks for bags that had air in them when they began to run.
func findAirOut(f *finding) []Decision {
	var all []Decision
	bags := f.bags()
	for i := range bags {
		b := &bags[i]
		hook := f.before(b)
		if hook < 0 || f.rec.moments[b.start].seen.Bags[b.k].AirML <= 0 {
			continue
		}
		t := f.acts[hook].Tick
		e := Edit{First: []First{{hook, []sim.Action{act(t, sim.ExpelAir, sim.Bag(b.k), 0)}}}}
		all = append(all, Decision{Fault: LeftOut, Title: title("air_out", LeftOut, b.name, clock(t)), Tick: t, Done: -1, Edit: e})
	}
	return some(all, words.Say("decision.air_out_all", len(all)))
}
