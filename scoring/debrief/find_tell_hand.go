package debrief

import (
	"math/bits"

	"rouleau/assets/words"
	"rouleau/sim"
)

// What is said when a bag is handed over.

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
			at := f.acts[i].Tick
			all = append(all, Decision{Fault: LeftOut, Title: title("hand_over", LeftOut, k+1, clock(at)), Tick: at, Done: -1,
				Edit: Edit{First: []First{{i, []sim.Action{act(at, sim.HandOver, sim.Bag(k), sim.HandoverComplete)}}}}})
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
