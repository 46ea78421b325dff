package debrief

import "rouleau/sim"

// A small closed loop that gives one bag: label, air, handed over, checked, with a filter, all as the person did it with a bag
// that they gave, or as steady does it.

// giveWay is how a bag is given. It holds nothing that changes.
type giveWay struct {
	bag      int
	label    uint8 // fields written
	handed   uint8 // and said
	checkers uint8
	air      bool // is let out
	filter   float64
	rate     float64 // mL/min
	watches  bool
	resumes  bool // something of it has been given before
	fresh    bool // more is to come, into a fresh bag
}

// rightly is how steady gives a bag.
func (f *finding) rightly(k int) giveWay {
	return giveWay{bag: k, label: sim.LabelComplete, handed: sim.HandoverComplete, checkers: 2, air: true, filter: 1, rate: f.giveML(), watches: true}
}

// asBefore is how the person gave a bag, for another bag or another time.
func (f *finding) asBefore(b *bagged, k int) giveWay {
	v := &f.rec.moments[b.start].seen
	return giveWay{bag: k, label: v.Bags[b.k].LabelBits, handed: v.Bags[b.k].HandedBits, checkers: v.Bags[b.k].Checkers, air: v.Bags[b.k].AirML <= 0,
		filter: number(v.Giving.Filter), rate: f.acts[b.start].Value}
}

// act does the next thing that the bag needs.
func (w giveWay) act(v *sim.Seen, do func(sim.Action) sim.Reason) {
	g := &v.Giving
	if w.bag >= v.BagsUsed {
		return
	}
	b, on := &v.Bags[w.bag], sim.Bag(w.bag)
	try := func(verb sim.Verb, on sim.Part, value float64) { do(sim.Action{Do: verb, On: on, Value: value}) }
	if int(g.Bag) == w.bag && g.RateMLMin > 0 {
		if b.ML <= emptyML || v.Reacting {
			try(sim.GiveRate, sim.NoPart, 0)
			return
		}
		if w.watches {
			watches(v, do)
		}
		return
	}
	if w.stopped(v) {
		return
	}
	if b.Discarded || b.ML <= emptyML || v.HandsBusy || g.Bag >= 0 && g.RateMLMin > 0 || v.Reacting {
		return
	}
	switch {
	case b.LabelBits != w.label:
		try(sim.Label, on, float64(w.label))
	case w.air && b.AirML > 0:
		try(sim.ExpelAir, on, 0)
	case b.HandedBits != w.handed && w.handed != 0:
		try(sim.HandOver, on, float64(w.handed))
	case b.Checkers < w.checkers && w.checkers > 1 && !v.ClinicianCalled:
		try(sim.Ask, sim.NoPart, float64(sim.ClinicianComes))
	case b.Checkers < w.checkers:
		if v.ClinicianHere || w.checkers == 1 {
			try(sim.Identify, on, float64(w.checkers))
		}
	case w.fresh && w.bag == v.BagsUsed-1 && v.Pump.Mode == sim.PumpIdle:
		try(sim.NewBag, sim.NoPart, 0)
	case int(g.Bag) != w.bag && w.bag == v.BagsUsed-1 && v.Pump.NoFlow:
		try(sim.StopPump, sim.NoPart, 0) // nothing comes of it, and the bag cannot be taken while it turns
	case int(g.Bag) != w.bag:
		try(sim.Hook, on, w.filter)
	default:
		try(sim.GiveRate, sim.NoPart, w.rate)
	}
}

// waits says whether the end has to wait for the bag.
func (w giveWay) waits(v *sim.Seen) bool {
	return w.bag < v.BagsUsed && !v.Bags[w.bag].Discarded && v.Bags[w.bag].ML > emptyML && !w.stopped(v)
}

// stopped says whether somebody stopped the bag before it was empty, for a reaction perhaps.
func (w giveWay) stopped(v *sim.Seen) bool {
	return v.Bags[w.bag].GivenML > 0 && !w.resumes && (int(v.Giving.Bag) != w.bag || v.Giving.RateMLMin <= 0)
}
