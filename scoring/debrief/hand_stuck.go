package debrief

import (
	"slices"

	"rouleau/scoring/play"
	"rouleau/sim"
)

// What keeps the work going in another course where the person's own acts would let it stand: the bag to be filled hangs on the
// patient, a bowl that had stuck flows here and nobody stops it, or more anticoagulant is used and the pack runs out.

const (
	lowDripML  = 60.0 // in the anticoagulant pack when the next one is hung, as steady does
	moreDripML = 20.0 // of anticoagulant than the person had used

	hooksSoon = 60 * sim.TicksPerSecond // a bag is connected so soon that the pump, running early, waits for it
	fillsOn   = 30 * sim.TicksPerSecond // from an air stop to filling on
)

// makesRoom hangs a fresh bag where the bowl cannot be emptied, nor air let out, into the one on the patient. It is the fresh bag
// that the person hung later, if there was one.
func (h *hand) makesRoom(r *play.Run, s *step, why sim.Reason) {
	if why == "clear_the_air_first" {
		why = sim.May(&r.Case, &r.State, sim.Action{Do: sim.ClearLine})
	} else if s.act.Do != sim.Empty {
		return
	}
	if (why == "take_bag_off_patient_first" || why == "bag_is_being_given") && !r.State.Giving.Joined {
		h.freshBag(r)
	}
}

// nothingToClear says whether the lines cannot be cleared because the bag hangs on the patient, and there is no air in them.
func (h *hand) nothingToClear(r *play.Run, s *step, why sim.Reason) bool {
	return s.act.Do == sim.ClearLine && (why == "take_bag_off_patient_first" || why == "bag_is_being_given") && r.State.Bowl.AirML < 1
}

// overfills says whether the bowl would be emptied into a bag that has no room for it, as the person's own had.
func (h *hand) overfills(r *play.Run, s *step) bool {
	st, own, most := &r.State, &h.rec.moments[s.own].seen, r.Case.Faults.BagCapacityML
	if s.act.Do != sim.Empty || st.Pump.Mode != sim.PumpIdle || st.BagsUsed == 0 || st.BagsUsed >= sim.MaxBags || st.Giving.Joined || own.BagsUsed == 0 {
		return false
	}
	bag, was := &st.Bags[st.BagsUsed-1], &own.Bags[own.BagsUsed-1]
	return bag.Fluid.VolumeML()+bag.AirML+st.Bowl.ContentsML() > most && was.ML+was.AirML+own.Pump.HeldML <= most
}

// freshBag hangs a fresh product bag.
func (h *hand) freshBag(r *play.Run) {
	if !h.byReflex(r, sim.Action{Do: sim.NewBag}) {
		return
	}
	for i := range h.queue[pumping] {
		if later := &h.queue[pumping][i]; later.act.Do == sim.NewBag && !later.done {
			later.done = true
			return
		}
	}
}

// stuck says whether the pump works here and stood against something at the same time in the person's own course, with nothing
// of the person's own to come for it.
func (h *hand) stuck(r *play.Run) bool {
	own := h.rec.at(r.State.Tick)
	p := &r.State.Pump
	return p.Mode != sim.PumpIdle && p.FlowMLMin > 0 && own.PumpMode == p.Mode && own.FlowMLMin <= 0 && len(h.queue[pumping]) == 0 && len(h.bowls) > 0
}

// finishes does with a bowl that had stuck what the person did with their last whole one.
func (h *hand) finishes(r *play.Run) {
	last := h.bowls[len(h.bowls)-1]
	for n, i := range last {
		if h.rec.moments[i].seen.Pump.Mode == r.State.Pump.Mode {
			h.again(r, pumping, last[n:], sim.NoPart)
			return
		}
	}
}

// keepsDripping hangs the next pack of anticoagulant where more was used than the person had used by then and the pack is nearly
// empty.
func (h *hand) keepsDripping(r *play.Run) {
	s := &r.State
	b, hook, own := &s.Bench, sim.AnticoagulantHook, h.rec.at(s.Tick)
	k := b.HookPack[hook]
	if k < 0 {
		k = h.drained
	}
	if k < 0 || b.TakenDown || s.Tick < b.HandsUntil || b.Packs[k].Fluid.VolumeML() >= lowDripML ||
		h.drained < 0 && s.Drip.DrippedML+s.Drip.PrimedML < own.DripML+own.PrimedML+moreDripML {
		return
	}
	next := -1
	for i := range r.Case.Packs {
		if p := &r.Case.Packs[i]; i != int(k) && p.Solution == r.Case.Packs[k].Solution && !p.Expired && !h.view(r).Bench.PackInStore[i] &&
			b.Packs[i].Fluid.VolumeML() >= lowDripML && (next < 0 || b.Packs[i].Fluid.VolumeML() > b.Packs[next].Fluid.VolumeML()) {
			next = i
		}
	}
	switch {
	case next < 0:
	case b.HookPack[hook] >= 0:
		if sim.May(&r.Case, s, sim.Action{Do: sim.Unhang, On: hook}) == "" {
			r.Do(sim.Action{Do: sim.Unhang, On: hook})
			h.drained, h.seenAt = k, -1
		}
	case sim.May(&r.Case, s, sim.Action{Do: sim.Hang, On: hook, Value: float64(next)}) == "":
		r.Do(sim.Action{Do: sim.Hang, On: hook, Value: float64(next)})
		h.drained, h.seenAt = -1, -1
	}
}

// needless says whether a bowl that the person filled on needs it no more: they had run out of blood, and here it was enough for a
// whole bowl; air had stopped their pump, and here it filled without a stop until there was no more; or the operation is over and
// hardly anything is left.
func (h *hand) needless(r *play.Run, own, v *sim.Seen, s *step) bool {
	if !own.Pump.CycleOpen {
		return false
	}
	tick := h.rec.Run.Actions[s.own].Tick
	if cy := cycle(r); cy != nil && cy.WashTick == 0 && cy.BedAtStop >= nearInterface && !own.Pump.Washed && h.rec.bedAt(tick).then < nearInterface-2*sameBed {
		return true
	}
	over := v.OperationOver && v.PoolML < 2*sameML && v.BasinML <= 0 && !v.Rinsing
	return h.rec.stoodAt(tick).since >= tick-fillsOn && v.ReservoirML < enoughShare*own.ReservoirML || over && v.ReservoirML < own.ReservoirML/3
}

// aheadWaits says whether a pump that runs ahead of the person's own times has to wait: they acted when the operation was over, or
// connected a bag before the act and would find the pump running here.
func (h *hand) aheadWaits(r *play.Run, s *step) bool {
	switch s.act.Do {
	case sim.Fill, sim.Wash, sim.Empty, sim.TopUp, sim.DrawBack:
	default:
		return false
	}
	if s.own >= 0 && h.rec.moments[s.own].seen.OperationOver && r.State.Tick < r.Case.EndTick {
		return true
	}
	for i := range h.queue[giving] {
		if g := &h.queue[giving][i]; !g.done && g.act.Do == sim.Hook && g.order < s.order && g.due <= r.State.Tick+hooksSoon {
			return true
		}
	}
	return false
}

// replacesFirst says whether the pump has to wait for a processing set that is to be replaced.
func (h *hand) replacesFirst(r *play.Run, s *step) bool {
	return (s.act.Do == sim.Fill || s.act.Do == sim.Wash || s.act.Do == sim.Empty) && slices.ContainsFunc(h.queue[apart], func(o step) bool {
		return !o.done && o.act.Do == sim.ReplaceSet && o.act.On == sim.ProcessingSet && o.due <= r.State.Tick
	})
}
