package debrief

import (
	"slices"

	"rouleau/scoring/play"
	"rouleau/sim"
)

// Care that a person took in their own course, they take here too, also where a bag or a bowl has come to it by another way: a bowl
// is not emptied unwashed, and a bag not connected without label, check of identity, or with air in it.

const layered = 0.08 // of the reservoir: a clear layer from which a person who mixes does it [A]

// minds says whether the edit leaves alone what the person does with a verb.
func (h *hand) minds(verb sim.Verb) bool {
	acts := h.rec.Run.Actions
	for _, i := range h.edit.Drop {
		if acts[i].Do == verb {
			return false
		}
	}
	for _, s := range h.edit.Swap {
		if acts[s.Own].Do == verb && s.Act.Value != acts[s.Own].Value {
			return false
		}
	}
	return true
}

// unwashed says whether the person had washed what they stop or empty here and it has not been washed. Then it is washed first.
func (h *hand) unwashed(r *play.Run, s *step) bool {
	own, v := &h.rec.moments[s.own].seen.Pump, h.view(r)
	if s.act.Do != sim.Empty && s.act.Do != sim.StopAll || own.Mode != sim.PumpIdle || !own.CycleOpen || !own.Washed || !v.Pump.CycleOpen || v.Pump.Washed || !v.Pump.Filled ||
		v.Pump.Mode != sim.PumpIdle || !h.minds(sim.Wash) {
		return false
	}
	return h.byReflex(r, sim.Action{Do: sim.Wash}) || v.Pump.Spinning && !h.hopeless(r, sim.May(&r.Case, &r.State, sim.Action{Do: sim.Wash}))
}

// endsFilling stops a filling before the reservoir runs dry, where the person's own course did not come to that; and one that the hand went
// on with when the bowl is full.
func (h *hand) endsFilling(r *play.Run) {
	s := &r.State
	if s.Pump.Mode != sim.PumpFill {
		return
	}
	if h.filledOn == s.CycleUsed && h.isFull(h.view(r)) {
		h.reflexAt = 0
		if h.byReflex(r, sim.Action{Do: sim.StopPump}) {
			h.fullAgain = s.CycleUsed
		}
		return
	}
	if s.Reservoir.Blood.VolumeML() >= dryML {
		return
	}
	if own := h.rec.at(s.Tick); own.PumpMode != sim.PumpFill || own.ReservoirML > 2*dryML {
		h.reflexAt = 0
		h.byReflex(r, sim.Action{Do: sim.StopPump})
		h.short = s.CycleUsed
	}
}

// unmixed says whether a clear layer stands here on what is to be filled, as did not on the person's own, and they mixed at other
// times. Then it is mixed first.
func (h *hand) unmixed(r *play.Run, s *step) bool {
	own, v := &h.rec.moments[s.own].seen, h.view(r)
	if s.act.Do != sim.Fill || v.Pump.Mode != sim.PumpIdle || !h.mixes() || !h.minds(sim.Mix) {
		return false
	}
	if v.Mixing && !own.Mixing {
		return true
	}
	return layer(v) > layered && layer(v) > 2*layer(own) && v.ReservoirML > dryML && h.byReflex(r, sim.Action{Do: sim.Mix})
}

// layer is the clear layer as a share of what is in the reservoir.
func layer(v *sim.Seen) float64 { return v.ClearML / max(sameML, v.ReservoirML) }

// mixes says whether the person ever mixed the reservoir.
func (h *hand) mixes() bool {
	return slices.ContainsFunc(h.rec.Run.Actions, func(a sim.Action) bool { return a.Do == sim.Mix })
}

// stopsDry says whether a filling is stopped here for want of blood.
func (h *hand) stopsDry(r *play.Run, s *step) bool {
	return s.own >= 0 && s.act.Do == sim.StopPump && r.State.Pump.Mode == sim.PumpFill && h.view(r).ReservoirML <= 2*sameML
}

// unfilled says whether a bowl that the person washed full is part-filled here because the blood ran out or air stopped the pump.
// It is filled on when there is more, and washed as it is when nothing more comes.
func (h *hand) unfilled(r *play.Run, s *step) bool {
	own, v := &h.rec.moments[s.own].seen, h.view(r)
	if s.act.Do != sim.Wash || own.Pump.BedByEye < partFull || v.Pump.BedByEye >= min(partFull+eyeStep, own.Pump.BedByEye) || h.short != r.State.CycleUsed || h.fullAgain == r.State.CycleUsed || v.Pump.Mode != sim.PumpIdle ||
		v.OperationOver || r.State.Tick-s.due >= 2*fillWaits {
		return false
	}
	if v.ReservoirML >= float64(fillOnFromML*scaleOf(&r.State)) {
		next := sim.Fill
		switch {
		case v.Mixing:
			return true
		case r.State.Bowl.AirML >= 1:
			next = sim.ClearLine
		case h.mixes() && layer(v) > layered:
			next = sim.Mix
		}
		switch did := h.byReflex(r, sim.Action{Do: next}); {
		case next != sim.Fill:
			h.reflexAt = 0 // the filling follows at once
		case did:
			h.filledOn = r.State.CycleUsed
		}
	}
	return true
}

// noCells says whether there is nothing to speak of in a bowl that the person emptied washed, and that could not be washed for that.
func (h *hand) noCells(r *play.Run, own, v *sim.Seen, s *step) bool {
	return s.act.Do == sim.Empty && own.Pump.Washed && !v.Pump.Washed && r.State.Bowl.CellsML <= 1
}

// doneAlready says whether a bowl that the person filled on, or washed, has been washed to the end here, or emptied.
func (h *hand) doneAlready(own, v *sim.Seen, s *step) bool {
	if (s.act.Do == sim.Wash || s.act.Do == sim.Empty) && own.Pump.CycleOpen && !v.Pump.CycleOpen && v.Pump.Mode == sim.PumpIdle {
		return true
	}
	if s.act.Do != sim.Fill && s.act.Do != sim.Wash || !own.Pump.CycleOpen || own.Pump.Washed || v.Pump.Mode != sim.PumpIdle {
		return false
	}
	return v.Pump.CycleOpen && v.Pump.Washed && v.Pump.WashedML >= v.Pump.WashML-1
}

// forNothing says whether there is hardly any blood for a bowl that is to be begun, and none to come. The whole bowl is left out.
func (h *hand) forNothing(r *play.Run, own, v *sim.Seen) bool {
	if own.Pump.CycleOpen || !v.OperationOver || v.PoolML >= 2*sameML || v.BasinML > 0 || v.Rinsing ||
		v.ReservoirML >= own.ReservoirML/3 && (v.ReservoirML >= rightLastML/2*scaleOf(&r.State) || v.ReservoirML >= enoughShare*own.ReservoirML) {
		return false
	}
	q := h.queue[pumping]
	for i := range q {
		if s := &q[i]; i > 0 && s.own >= 0 && (begins(&s.act) && !h.rec.moments[s.own].seen.Pump.CycleOpen || s.act.Do == sim.ClearLine) {
			break
		}
		q[i].done = true
	}
	return true
}

// unready says whether a bag lacks what the person's own had when they connected it. Then that is done first.
func (h *hand) unready(r *play.Run, s *step) bool {
	k, bag := bagOf(s.act.On)
	if s.act.Do != sim.Hook || !bag {
		return false
	}
	was, on := bagOf(h.rec.Run.Actions[s.own].On)
	if !on {
		return false
	}
	own, v := &h.rec.moments[s.own].seen.Bags[was], h.view(r)
	now := &v.Bags[k]
	var a sim.Action
	switch {
	case now.ML <= 0:
		return false
	case now.LabelBits != own.LabelBits && own.LabelBits == sim.LabelComplete && h.minds(sim.Label):
		a = sim.Action{Do: sim.Label, On: s.act.On, Value: sim.LabelComplete}
	case now.AirML > 0 && own.AirML <= 0 && h.minds(sim.ExpelAir):
		a = sim.Action{Do: sim.ExpelAir, On: s.act.On}
	case now.Checkers < own.Checkers && own.Checkers > 1 && !v.ClinicianCalled && h.minds(sim.Identify):
		a = sim.Action{Do: sim.Ask, Value: float64(sim.ClinicianComes)}
	case now.Checkers < own.Checkers && h.minds(sim.Identify):
		a = sim.Action{Do: sim.Identify, On: s.act.On, Value: float64(own.Checkers)}
	default:
		return false
	}
	if h.byReflex(r, a) {
		h.reflexAt = 0 // the next follows at once
	}
	return true
}

// freshAlready says whether the person hung a fresh bag when there was something in the last one, and here there is nothing in it.
func freshAlready(own, v *sim.Seen, s *step) bool {
	return s.act.Do == sim.NewBag && own.BagsUsed > 0 && v.BagsUsed > 0 && own.Bags[own.BagsUsed-1].CameML > sameML && v.Bags[v.BagsUsed-1].CameML <= 0
}

// emptiesFirst empties a bowl that stands washed here, where the person's own was empty when they took everything down.
func (h *hand) emptiesFirst(r *play.Run, s *step) bool {
	own, v := &h.rec.moments[s.own].seen.Pump, h.view(r)
	if own.CycleOpen || own.Spinning || !v.Pump.CycleOpen || !v.Pump.Washed || r.State.Tick-s.due >= linePatience {
		return false
	}
	next := sim.Empty
	if v.Pump.Spinning {
		next = sim.StopAll
	}
	h.byReflex(r, sim.Action{Do: next})
	return true
}

// hardlyWashed says whether a bowl that the person emptied washed could not be washed here. It goes back to the reservoir.
func (h *hand) hardlyWashed(r *play.Run, s *step) bool {
	own, v := &h.rec.moments[s.own].seen.Pump, h.view(r)
	bowl := r.State.Bowl.Shape().VolumeML
	return s.act.Do == sim.Empty && own.CycleOpen && own.WashedML >= bowl && v.Pump.CycleOpen && v.Pump.WashedML < bowl && h.minds(sim.Wash)
}

// reacts stops what runs into a reaction that comes at another time than in the person's own course, where they stopped it too.
func (h *hand) reacts(r *play.Run) {
	if r.State.Giving.RateMLMin <= 0 {
		return
	}
	v := h.view(r)
	if !v.Reacting || h.rec.Run.State.Conduct.ReactionGivenML > mostReactedML || h.rec.reactedAt(v.Tick) {
		return
	}
	r.Do(sim.Action{Do: sim.GiveRate})
	h.seenAt = -1
}

const mostReactedML = 25.0 // given into a reaction: a brief slip

// reactedAt says whether the monitor showed a reaction at a tick of the person's own course.
func (rec *Record) reactedAt(tick int64) bool {
	on := false
	for i := range rec.Run.Log {
		o := &rec.Run.Log[i]
		if o.Tick > tick {
			break
		}
		if o.Key == sim.AlarmReaction.String() && (o.Kind == sim.Alarmed || o.Kind == sim.Calmed) {
			on = o.Kind == sim.Alarmed
		}
	}
	return on
}

// ranOut says whether the bag that runs is emptier than the person let theirs become before they stopped it.
func (h *hand) ranOut(r *play.Run, s *step) bool {
	own, now := &h.rec.moments[s.own].seen, r.State.Giving.Bag
	if g := own.Giving.Bag; now < 0 || r.State.Giving.RateMLMin <= 0 || s.act.Do != sim.Unhook && (s.act.Do != sim.GiveRate || s.act.Value > 0) || g < 0 || own.Bags[g].ML > sameML {
		return false
	} else if v := h.view(r); v.Bags[now].ML < own.Bags[g].ML {
		return true
	}
	return false
}
