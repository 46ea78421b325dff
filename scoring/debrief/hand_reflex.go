package debrief

import (
	"rouleau/scoring/play"
	"rouleau/sim"
)

// What anybody at the bench does without thinking when the other course brings what their own had not: air is let out, the bowl
// is stopped before it is emptied, an empty pack and a full waste bag are changed.

const (
	betweenReflexes = 30 * sim.TicksPerSecond
	wasteMoreML     = 300.0 // in the waste bag than the person had: it fills up sooner here
	wasteFullML     = 50.0  // short of full by its scale
)

// reflex does what a refusal asks for.
func (h *hand) reflex(r *play.Run, why sim.Reason) {
	var a sim.Action
	switch why {
	case "clear_the_air_first":
		a.Do = sim.ClearLine
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
	own := h.rec.at(s.Tick)
	switch full := s.Waste.Bag.VolumeML() >= r.Case.Faults.WasteCapacityML-wasteFullML; {
	case full && s.Waste.Bag.VolumeML() > own.WasteML+wasteMoreML && s.Pump.Mode == sim.PumpIdle:
		h.byReflex(r, sim.Action{Do: sim.ChangeWaste})
	case full && s.Waste.Bag.VolumeML() > own.WasteML+wasteMoreML:
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
	case s.Pump.Mode == sim.PumpWash && s.Pump.NoFlow && s.Alarms.On[sim.AlarmWashEmpty]:
		h.freshPack(r)
	}
}

// freshPack hangs another pack of what hung on the first wash hook, where there is one on the bench.
func (h *hand) freshPack(r *play.Run) {
	b := &r.State.Bench
	k := b.HookPack[sim.WashHookA]
	if k < 0 {
		k = h.emptied
	}
	for i := range r.Case.Packs {
		if k < 0 || i == int(k) || b.Packs[i].Solution != b.Packs[k].Solution || r.Case.Packs[i].Expired || b.Packs[i].Fluid.VolumeML() < wasteMoreML {
			continue
		}
		hang := sim.Action{Do: sim.Hang, On: sim.WashHookA, Value: float64(i)}
		if b.HookPack[sim.WashHookA] < 0 {
			if h.byReflex(r, hang) {
				return
			}
			continue
		}
		if h.byReflex(r, sim.Action{Do: sim.Unhang, On: sim.WashHookA}) {
			h.emptied, h.reflexAt = k, 0
		}
		return
	}
}
