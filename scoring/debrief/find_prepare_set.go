package debrief

import (
	"rouleau/sim"
)

// When the processing set is opened, and the breach of a set.

const (
	opensAtML = 450.0 // in the reservoir, as steady opens the processing set
	safelyML  = 20.0  // over the least that a criterion asks for, by the scale

	fillsLately = 3 * 60 * sim.TicksPerSecond // over which one sees how fast the reservoir fills [A]
)

// scaled turns a volume that is meant for a standard bowl, with its prime in it, into one for the chosen bowl, as steady does.
func (f *finding) scaled(ml float64) float64 { return scaledBy(f.scale(), ml) }

func scaledBy(scale, ml float64) float64 {
	if scale < 1 {
		return rightPrimeML/2 + float64(scale*(ml-rightPrimeML))
	}
	return ml
}

// findProcessingSet looks for a processing set that was opened before a bowl was in sight, long after, or never.
func findProcessingSet(f *finding) []Decision {
	if f.rec.Run.State.Bench.Decision != sim.SetUpToProcess {
		return nil
	}
	right := f.filledTo(f.scaled(opensAtML))
	own := f.first(0, on(sim.OpenSet, sim.ProcessingSet))
	if own < 0 {
		if right < 0 || f.rec.Run.State.Bench.Opened[sim.ProcessingSet] {
			return nil
		}
		return []Decision{{Fault: LeftOut, Title: title("processing_set", LeftOut, clock(right)), Tick: right, Done: -1, Edit: Edit{Good: right}}}
	}
	cr := f.criterion("processing_set_opened_at_ml")
	if cr == nil || !f.short("processing_set_opened_at_ml") {
		return nil
	}
	had, done := f.rec.at(f.acts[own].Tick).ReservoirML, f.acts[own].Tick
	d, ml := Decision{Fault: Late, Done: done}, 0.0
	switch {
	case cr.Least != nil && had < *cr.Least:
		ml = *cr.Least + safelyML
		d.Tick = f.wouldFillTo(ml, f.first(done, does(sim.Fill)))
	case right >= 0 && right < done:
		d.Tick, ml = right, f.rec.at(right).ReservoirML
	default:
		return nil
	}
	if d.Tick < 0 || d.Tick >= f.rec.lastTick { // there never was so much
		return nil
	}
	was, at := done, d.Tick
	for _, i := range f.setUp(own) {
		if a := f.acts[i].Tick; d.Tick > done { // what came long after the opening still comes when it did
			at = max(a, at+min(a-was, sim.TicksPerSecond+f.busy(was, i)))
			was = a
		} else {
			at = a + d.Tick - done
		}
		d.Edit.Swap = append(d.Edit.Swap, f.at(i, at))
	}
	d.Title = title("processing_set", Late, clock(d.Tick), ml, clock(done), had)
	return []Decision{d}
}

// wouldFillTo is when so much would have been in the reservoir had the person not begun to fill, by how it filled until then.
func (f *finding) wouldFillTo(ml float64, fill int) int64 {
	t := f.filledTo(ml)
	if fill < 0 || t >= 0 && t <= f.acts[fill].Tick {
		return t
	}
	begun := f.acts[fill].Tick
	was, now := f.rec.at(begun-fillsLately).ReservoirML, f.rec.at(begun).ReservoirML
	if now <= was {
		return -1
	}
	return begun + int64(float64(fillsLately)*(ml-now)/(now-was))
}

// setUp are the acts with which the processing set was opened and made ready for the first bowl.
func (f *finding) setUp(opened int) (all []int) {
	for i := opened; i < len(f.acts) && f.acts[i].Do != sim.Fill; i++ {
		a := &f.acts[i]
		ready := a.On == sim.OutletLine || a.On == sim.ProductLine || a.On == sim.WasteLine || a.On == sim.OutletClamp || a.On == sim.WashHookA || a.On == sim.WashHookB
		if i == opened || ready && (a.Do == sim.Connect || a.Do == sim.Inspect || a.Do == sim.Hang || a.Do == sim.Unhang || a.Do == sim.Clamp) || a.Do == sim.JoinCircuit {
			all = append(all, i)
		}
	}
	return all
}

// findBreach looks for a set that was touched and used all the same.
func findBreach(f *finding) (all []Decision) {
	for i := range f.rec.Run.Log {
		o := &f.rec.Run.Log[i]
		set := o.Act.On
		if o.Kind != sim.Came || o.Key != "touched" || len(all) == mostOfAKind {
			continue
		}
		if k := f.first(o.Tick, on(sim.ReplaceSet, set)); k >= 0 && !f.rec.Run.State.Bench.BreachUsed {
			continue
		}
		from := o.Tick + soonSaid
		from += -from % sim.TicksPerSecond
		d := Decision{Fault: LeftOut, Title: title("breach", LeftOut, partName(set), clock(from)), Tick: from, Done: -1}
		d.Edit.Rule = &Rule{From: from, Until: f.rec.lastTick, Act: func(v *sim.Seen, do func(sim.Action) sim.Reason) { f.replaces(set, v, do) }}
		all = append(all, d)
	}
	return all
}

// replaces throws a set that was touched away and joins the fresh one as the old one was joined.
func (f *finding) replaces(set sim.Part, v *sim.Seen, do func(sim.Action) sim.Reason) {
	b, own := &v.Bench, f.seenBy(v.Tick+1)
	try := func(verb sim.Verb, on sim.Part, value float64) bool {
		return do(sim.Action{Do: verb, On: on, Value: value}) == ""
	}
	switch {
	case v.HandsBusy || b.TakenDown:
	case b.Breached[set]:
		if b.Open[sim.OutletClamp] && v.Pump.Mode == sim.PumpIdle && !v.Pump.Spinning {
			try(sim.Clamp, sim.OutletClamp, 0)
		}
		try(sim.ReplaceSet, set, 0)
	default:
		for _, line := range [...]sim.Part{sim.SuctionLine, sim.VacuumLine, sim.OutletLine} {
			if own.Bench.Connected[line] && !b.Connected[line] && try(sim.Connect, line, 0) {
				return
			}
		}
		if own.Bench.Open[sim.OutletClamp] && !b.Open[sim.OutletClamp] && b.Connected[sim.OutletLine] {
			try(sim.Clamp, sim.OutletClamp, 1)
		}
	}
}
