package debrief

import (
	"math/bits"

	"rouleau/assets/words"
	"rouleau/sim"
)

// What is said when a bag is handed over.

const handOverTakes = 20 * sim.TicksPerSecond // as the hands are busy with it

// findHandOver looks at each bag that ran into the patient without having been handed over in full.
func findHandOver(f *finding) (all []Decision) {
	s := &f.rec.Run.State
	for k := range s.BagsUsed {
		b := &s.Bags[k]
		if b.GivenML < 1 || b.HandedBits == sim.HandoverComplete {
			continue
		}
		if said := f.every(on(sim.HandOver, sim.Bag(k))); len(said) > 0 {
			i := said[len(said)-1]
			right := f.acts[i]
			right.Value = sim.HandoverComplete
			all = append(all, Decision{Fault: Wrong, Title: title("hand_over", Wrong, sim.HandoverFieldCount, bits.OnesCount8(b.HandedBits), k+1, clock(right.Tick)),
				Tick: right.Tick, Done: right.Tick, Edit: Edit{Swap: []Swap{{i, right}}}})
			continue
		}
		if i := f.beforeGiving(k); i >= 0 {
			at, e := f.acts[i].Tick, Edit{}
			if free := f.handsFree(f.lastCame(k, at), at, handOverTakes); free >= 0 {
				e.Add = []Add{{Act: act(free, sim.HandOver, sim.Bag(k), sim.HandoverComplete)}}
			} else {
				e.First = []First{{i, []sim.Action{act(at, sim.HandOver, sim.Bag(k), sim.HandoverComplete)}}}
			}
			all = append(all, Decision{Fault: LeftOut, Title: title("hand_over", LeftOut, k+1, clock(at)), Tick: at, Done: -1, Edit: e})
		}
	}
	return some(all, words.Say("decision.hand_over_all", len(all)))
}

// beforeGiving is the act with which bag k was brought to the patient: it was connected, or let run where the circuit is joined.
func (f *finding) beforeGiving(k int) int {
	if i := f.first(0, on(sim.Hook, sim.Bag(k))); i >= 0 {
		return i
	}
	for i := range f.acts {
		if a := &f.acts[i]; a.Do == sim.GiveRate && a.Value > 0 && int(f.rec.moments[i].seen.Giving.Bag) == k {
			return i
		}
	}
	return -1
}

// lastCame is when the last of a bag's content had come before a tick.
func (f *finding) lastCame(k int, before int64) int64 {
	s, last := &f.rec.Run.State, before
	for i := range s.Cycles[:s.CycleUsed] {
		if cy := &s.Cycles[i]; int(cy.Bag) == k && cy.DoneTick > 0 && cy.DoneTick < before {
			last = cy.DoneTick
		}
	}
	return last
}

// handsFree is the start of the last time between two ticks in which the person's hands were free for so long, -1 for none.
func (f *finding) handsFree(from, until, ticks int64) int64 {
	free, busy := int64(-1), from
	for i := range f.acts {
		tick := f.acts[i].Tick
		if i > 0 {
			busy = max(busy, f.rec.moments[i-1].hands)
		}
		if tick = min(tick, until); tick-busy >= ticks {
			free = tick - ticks
		}
		if tick >= until {
			break
		}
	}
	return free
}
