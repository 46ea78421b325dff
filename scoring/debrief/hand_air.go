package debrief

import (
	"rouleau/scoring/play"
	"rouleau/sim"
)

// A bowl that fills in another course without the air that had stopped the person's own: what they did to go on is left out.

// goesOn says whether the person went on, by an act, with a filling that air had stopped.
func goesOn(own *sim.Seen, s *step) bool {
	return own.Pump.Mode == sim.PumpIdle && (s.act.Do == sim.ClearLine && own.Pump.AirML >= 1 || s.act.Do == sim.Fill && own.Pump.CycleOpen && !own.Pump.Washed)
}

// undisturbed says whether a bowl fills here, or is full, where air had stopped the person's own: what they did to go on is left out.
func (h *hand) undisturbed(r *play.Run, s *step) bool {
	if !goesOn(&h.rec.moments[s.own].seen, s) || r.State.Bowl.AirML >= 1 {
		return false
	}
	return r.State.Pump.Mode == sim.PumpFill || h.fullAlready(r, s)
}

// fullAlready says whether a bowl that filled here without a stop has become as full as the person's own did with all its stops, so
// that what they did to go on is left out at once.
func (h *hand) fullAlready(r *play.Run, s *step) bool {
	cy := cycle(r)
	if cy == nil || !goesOn(&h.rec.moments[s.own].seen, s) {
		return false
	}
	switch r.State.Pump.Mode {
	case sim.PumpIdle:
		if cy.DoneTick > 0 || cy.WashTick > 0 {
			return false
		}
		if tick := h.rec.Run.Actions[s.own].Tick; h.bed.tick != tick { // it is asked again each second
			h.bed = h.rec.bedAt(tick)
		}
		return cy.BedAtStop >= max(h.bed.then+2*sameBed, h.bed.last-sameBed)
	case sim.PumpFill:
		if h.rec.at(r.State.Tick).PumpMode == sim.PumpFill { // theirs fills too: the air has not come yet
			return false
		}
		for i := range h.queue[pumping] {
			if s := &h.queue[pumping][i]; s.own >= 0 && !goesOn(&h.rec.moments[s.own].seen, s) {
				return h.past(r, s)
			}
		}
	}
	return false
}

// cycle is the last bowl begun, nil for none.
func cycle(r *play.Run) *sim.Cycle {
	if r.State.CycleUsed == 0 {
		return nil
	}
	return &r.State.Cycles[r.State.CycleUsed-1]
}

const sameBed = 0.05 // of the bowl: two fillings that were stopped alike

// bed is how full the person's bowl had become by a tick, and how full it was when its filling was stopped for the last time.
type bed struct {
	tick       int64
	then, last float64
}

func (rec *Record) bedAt(tick int64) bed {
	b, from := bed{tick: tick}, tick
	for _, cy := range rec.Run.State.Cycles[:rec.Run.State.CycleUsed] {
		if cy.FillTick > 0 && cy.FillTick <= tick {
			from, b.last = cy.FillTick, cy.BedAtStop
		}
	}
	for t := from; t <= tick; t += sim.TicksPerSecond {
		b.then = max(b.then, rec.at(t).FillFraction)
	}
	b.then = max(b.then, rec.at(tick).FillFraction)
	return b
}
