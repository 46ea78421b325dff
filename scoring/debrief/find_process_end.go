package debrief

import (
	"rouleau/assets/words"
	"rouleau/scenarios"
	"rouleau/sim"
)

// What was lost or left lying: thrown away, left in the reservoir or the bowl, never processed at all.

const (
	bedHct     = 0.7  // of the bed in a bowl, as a rule of thumb
	worthShare = 0.08 // of a bowl in red cells: less is not worth another bowl [A]
	thinShare  = 0.25 // and where a thin product counts
)

// findDiscarded looks for blood that was thrown away without need.
func findDiscarded(f *finding) []Decision {
	var all []Decision
	for _, i := range f.every(does(sim.DiscardIt)) {
		a, v := f.acts[i], &f.rec.moments[i].seen
		k, bag := bagOf(a.On)
		switch {
		case bag && k < v.BagsUsed && v.Bags[k].ML >= littleML/2 && f.sound(k, a.Tick):
			d := Decision{Fault: Needless, Title: title("discarded", Needless, k+1, clock(a.Tick), v.Bags[k].ML), Tick: a.Tick, Done: a.Tick}
			d.Edit = f.gives(k, f.wantedNext(a.Tick)+soonSaid)
			d.Edit.Drop = append(d.Edit.Drop, i)
			all = append(all, d)
		case a.On == sim.ReservoirPart && v.ReservoirML >= f.scale()*rightLastML && f.rec.Run.State.Conduct.DivertMissedML <= scenarios.ConcealedML:
			all = append(all, Decision{Fault: Needless, Title: title("discarded_reservoir", Needless, clock(a.Tick), v.ReservoirML), Tick: a.Tick, Done: a.Tick, Edit: Edit{Drop: []int{i}}})
		}
	}
	return all
}

// sound says whether nothing spoke against giving a bag at a tick.
func (f *finding) sound(k int, tick int64) bool {
	s := &f.rec.Run.State
	b := &s.Bags[k]
	if b.Reacted || f.tainted(b) || f.c.Faults.ExpiryTicks > 0 && tick > b.FirstTick+f.c.Faults.ExpiryTicks {
		return false
	}
	for i := range s.Cycles[:s.CycleUsed] {
		if cy := &s.Cycles[i]; int(cy.Bag) == k && cy.WashML < f.bowlML() {
			return false
		}
	}
	return true
}

// tainted says whether a bag holds more than it may of what had to be kept away, or held it when it was thrown away.
func (f *finding) tainted(b *sim.ProductBag) bool {
	v := b.Fluid.VolumeML()
	if v < 1 {
		return f.rec.Run.State.Conduct.DivertMissedML > scenarios.ConcealedML
	}
	for i := range f.c.Contaminants {
		if limit := f.c.Contaminants[i].LimitPerML; limit > 0 && b.Fluid.Contaminant(i)/v > limit {
			return true
		}
	}
	return false
}

// findLeftOver looks for what was left in reservoir or bowl when the bench was taken down, or at the end.
func findLeftOver(f *finding) []Decision {
	s := &f.rec.Run.State
	if !s.Bench.Opened[sim.ProcessingSet] || s.CycleUsed == 0 {
		return nil
	}
	end := min(f.tickOf(f.first(f.c.EndTick, does(sim.TakeDown))), f.rec.lastTick-sim.TicksPerSecond)
	if end < f.c.EndTick {
		return nil // the person did not get so far
	}
	bowls := f.bowlfuls()
	last := &bowls[len(bowls)-1]
	inBowl := last.cy.DoneTick == 0 || last.cy.DoneTick > end
	left := f.rec.at(end - sim.TicksPerSecond).ReservoirML
	cells := float64(left * f.rec.at(end-sim.TicksPerSecond).ReservoirHct)
	if inBowl {
		cells += float64(f.bowlML() * f.rec.at(end-sim.TicksPerSecond).FillFraction * bedHct)
	}
	worth := worthShare
	if f.criterion("thinnest_product_hct") != nil {
		worth = thinShare
	}
	if !inBowl && left < f.scale()*rightLastML || cells < worth*f.bowlML() {
		return nil
	}
	from := f.c.EndTick
	for _, b := range bowls {
		if b.cy.DoneTick > 0 && b.cy.DoneTick < end {
			from = max(from, b.cy.DoneTick+1)
		}
	}
	if from+f.oneMore() > f.c.LastTick {
		return nil // there was no time for it
	}
	e := Edit{Rule: f.bowls(from, atInterface)}
	d := Decision{Fault: LeftOut, Tick: from, Done: -1, Edit: e, Title: title("left_over", LeftOut, left)}
	if inBowl {
		d.Title = title("left_over_bowl", LeftOut, last.n)
		if left >= f.scale()*rightLastML {
			d.Title = title("left_over_both", LeftOut, last.n, left)
		}
		d.Edit.Drop = f.after(last.acts, from)
	}
	if f.rec.Run.State.Giving.GivenML < 1 { // and nobody would give it
		d.Title = words.Say("decision.left_over_given", d.Title)
		f.givesAfter(d.Edit.Rule)
	}
	return []Decision{d}
}

// givesAfter lets a rule that works bowls off give the last bag afterwards.
func (f *finding) givesAfter(rule *Rule) {
	work, waits, gives := rule.Act, rule.Waits, f.rightly(0)
	rule.Act = func(v *sim.Seen, do func(sim.Action) sim.Reason) {
		work(v, do)
		if way := gives; !waits(v) && v.BagsUsed > 0 {
			way.bag = v.BagsUsed - 1
			way.act(v, do)
		}
	}
	rule.Waits = func(v *sim.Seen) bool {
		way := gives
		way.bag = v.BagsUsed - 1
		return waits(v) || way.bag >= 0 && way.waits(v)
	}
}

// oneMore is how long another bowl takes, as the person had the pump set, with its return and the tidy end.
func (f *finding) oneMore() int64 {
	p := &f.rec.Run.State.Pump
	min := p.WashML/max(1, p.WashMLMin) + 2*f.bowlML()/max(1, p.FillMLMin) + f.bowlML()/f.giveML()
	return int64(min*60*sim.TicksPerSecond) + 2*endsIn
}

// findNeverProcessed looks for a processing set that was opened and never filled although there was enough for a bowl.
func findNeverProcessed(f *finding) []Decision {
	opened := f.first(0, on(sim.OpenSet, sim.ProcessingSet))
	if f.rec.Run.State.CycleUsed > 0 || opened < 0 {
		return nil
	}
	at := f.enoughAt(f.acts[opened].Tick, f.rec.lastTick)
	if at < 0 {
		return nil
	}
	return []Decision{{Fault: LeftOut, Title: title("never_processed", LeftOut, clock(at)), Tick: at, Done: -1, Edit: Edit{Good: max(1, at)}}}
}
