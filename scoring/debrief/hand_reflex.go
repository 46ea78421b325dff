package debrief

import (
	"slices"

	"rouleau/scoring/play"
	"rouleau/sim"
)

// What anybody at the bench does without thinking when the other course brings what their own had not: air is let out, the bowl
// is stopped before it is emptied, an empty pack and a full waste bag are changed.

const (
	betweenReflexes = 30 * sim.TicksPerSecond
	wasteMoreML     = 300.0 // in the waste bag than the person had: it fills up sooner here
	wasteFullML     = 50.0  // short of full by its scale
	nearlyML        = 20.0  // short of a wash: it will do
	lowWashML       = 100.0 // in a pack: another one is hung
)

// reflex does what a refusal asks for.
func (h *hand) reflex(r *play.Run, why sim.Reason) {
	var a sim.Action
	switch why {
	case "clear_the_air_first":
		a.Do = sim.ClearLine
		if p := h.view(r).Pump; p.CycleOpen && !p.Washed {
			h.short = r.State.CycleUsed
		}
	case "bowl_is_spinning":
		a.Do = sim.StopAll
	default:
		return
	}
	h.byReflex(r, a)
}

// byReflex does an act if it can be done, and not again and again.
func (h *hand) byReflex(r *play.Run, a sim.Action) bool {
	if r.State.Tick < h.reflexAt || sim.May(&r.Case, &r.State, a) != "" {
		return false
	}
	r.Do(a)
	h.reflexAt, h.seenAt = r.State.Tick+betweenReflexes, -1
	return true
}

// supply changes what is empty or full here and was not in the person's own course.
func (h *hand) supply(r *play.Run) {
	s := &r.State
	if s.Tick < h.reflexAt || s.Bench.TakenDown || !s.Bench.Opened[sim.ProcessingSet] {
		return
	}
	full := s.Waste.Bag.VolumeML() >= r.Case.Faults.WasteCapacityML-wasteFullML
	full = full && (s.Waste.Bag.VolumeML() > h.had(s.Tick, func(t *play.Sample) float64 { return t.WasteML })+wasteMoreML || h.washedLess(r))
	switch {
	case full && s.Pump.Mode == sim.PumpIdle:
		h.byReflex(r, sim.Action{Do: sim.ChangeWaste})
	case full:
		h.waste = s.Pump.Mode
		h.byReflex(r, sim.Action{Do: sim.StopPump})
		h.reflexAt = 0 // the change follows at once
	case h.waste != sim.PumpIdle && s.Pump.Mode == sim.PumpIdle && s.Tick >= s.Bench.HandsUntil:
		verb := sim.Fill
		if h.waste == sim.PumpWash {
			verb = sim.Wash
		}
		h.waste = sim.PumpIdle
		h.byReflex(r, sim.Action{Do: verb})
	}
}

// washedLess says whether a wash stands against a full waste bag here before it has come as far as the person's own.
func (h *hand) washedLess(r *play.Run) bool {
	p, q := &r.State.Pump, h.queue[pumping]
	return p.Mode == sim.PumpWash && p.NoFlow && len(q) > 0 && q[0].own >= 0 && h.rec.moments[q[0].own].seen.Pump.WashedML > p.WashedML+wasteMoreML
}

// unsupplied says whether the person had enough wash fluid on the hook for a wash, and here another pack has to be hung first.
func (h *hand) unsupplied(r *play.Run, s *step) bool {
	own := &h.rec.moments[s.own].seen
	if k := own.Bench.HookPack[sim.WashHookA]; s.act.Do != sim.Wash || r.State.Pump.Mode != sim.PumpIdle || k < 0 || own.Bench.PackLeftML[k] < own.Pump.WashML-nearlyML {
		return false
	}
	if r.State.Bench.HookPack[sim.WashHookA] < 0 && slices.ContainsFunc(h.queue[apart], func(o step) bool {
		return !o.done && o.act.Do == sim.Hang && o.act.On == sim.WashHookA && o.due <= r.State.Tick+soon
	}) {
		return true // the person is about to hang it
	}
	return h.hangsFresh(r, r.State.Pump.WashML-nearlyML)
}

// hangsFresh hangs a fresh pack of wash fluid where less than so much is left; it says whether that is to be waited for.
func (h *hand) hangsFresh(r *play.Run, leastML float64) bool {
	b := &r.State.Bench
	k := b.HookPack[sim.WashHookA]
	if k < 0 {
		k = h.emptied
	}
	if k < 0 || b.HookPack[sim.WashHookA] >= 0 && b.Packs[k].Fluid.VolumeML() >= leastML {
		return false
	}
	fresh := h.packLike(r, int(k), b.Packs[k].Solution)
	if fresh < 0 {
		fresh = h.packLike(r, int(k), sim.Saline)
	}
	if fresh < 0 && b.HookPack[sim.WashHookA] < 0 && b.Packs[k].Fluid.VolumeML() >= lowWashML {
		fresh = int(k)
	}
	switch {
	case fresh < 0:
		return false
	case b.HookPack[sim.WashHookA] < 0:
		h.byReflex(r, sim.Action{Do: sim.Hang, On: sim.WashHookA, Value: float64(fresh)})
	case h.byReflex(r, sim.Action{Do: sim.Unhang, On: sim.WashHookA}):
		h.emptied, h.reflexAt = k, 0
	}
	return true
}

// washesOn goes on with a wash that stopped by itself here before it had come as far as the person's own.
func (h *hand) washesOn(r *play.Run, s *step) bool {
	own, v := &h.rec.moments[s.own].seen.Pump, &h.view(r).Pump
	if s.act.Do != sim.StopAll && s.act.Do != sim.Empty || own.Mode != sim.PumpIdle || !own.Washed || v.Mode != sim.PumpIdle || !v.CycleOpen || !v.Washed ||
		v.WashedML >= min(own.WashedML, v.WashML)-5*sameML || h.endedWash == r.State.CycleUsed || r.State.Tick-s.due >= linePatience || !h.minds(sim.Wash) {
		return false
	}
	switch {
	case h.hangsFresh(r, lowWashML):
	case !h.canWash(r):
		return false
	case v.AirML >= 1:
		if !h.byReflex(r, sim.Action{Do: sim.ClearLine}) {
			h.makesRoom(r, s, "clear_the_air_first")
		}
	default:
		return h.byReflex(r, sim.Action{Do: sim.Wash}) || r.State.Tick < h.reflexAt
	}
	return true
}

// canWash says whether something hangs to wash with.
func (h *hand) canWash(r *play.Run) bool {
	b := &r.State.Bench
	for _, hook := range [...]sim.Part{sim.WashHookA, sim.WashHookB} {
		if k := b.HookPack[hook]; k >= 0 && b.Packs[k].Fluid.VolumeML() >= lowWashML {
			return true
		}
	}
	return false
}

// packLike is a pack of a solution that is in date, at hand and much fuller than pack k; -1 where there is none.
func (h *hand) packLike(r *play.Run, k int, kind sim.Solution) int {
	b, v := &r.State.Bench, h.view(r)
	for i := range r.Case.Packs {
		hangs := i == k || slices.Contains(b.HookPack[:], int8(i))
		if b.Packs[i].Solution == kind && !hangs && !r.Case.Packs[i].Expired && !v.Bench.PackInStore[i] && b.Packs[i].Fluid.VolumeML() >= b.Packs[k].Fluid.VolumeML()+wasteMoreML {
			return i
		}
	}
	return -1
}
