package debrief

import (
	"rouleau/scoring/play"
	"rouleau/sim"
)

// What is said and told in another course. What must not be collected takes longer or shorter to leave the wound there: who led
// the sucker back because the surgeon had said that the field is clear waits for that, and who asked until it was clear goes on
// asking. What did not happen there is not declared.

const clearAgain = 15 * sim.TicksPerSecond // between two questions whether the field is clear [A]

// bidesClear says whether an act belongs to waiting for a clear field.
func bidesClear(a *sim.Action) bool {
	return a.Do == sim.Route && sim.Destination(a.Value) == sim.ToReservoir || a.Do == sim.Ask && sim.Request(a.Value) == sim.IsAgentGone
}

// notClear says whether the person led the sucker back to a field that was said to be clear, and here it is not yet.
func (h *hand) notClear(r *play.Run, s *step) bool {
	return s.own >= 0 && s.act.Do == sim.Route && bidesClear(&s.act) && !h.rec.moments[s.own].seen.AgentSaid && h.view(r).AgentSaid
}

// asksIfClear asks for a person who waits for a clear field, where the surgeon was not asked to tell by himself.
func (h *hand) asksIfClear(r *play.Run) {
	if r.State.Team.TellMe || r.State.Tick < h.askedAt+askAgain {
		return
	}
	r.Do(sim.Action{Do: sim.Ask, Value: float64(sim.IsAgentGone)})
	h.askedAt, h.seenAt = r.State.Tick, -1
}

// askedInVain says whether the person was told that the field is clear when they asked, and here it is not.
func (h *hand) askedInVain(r *play.Run, s *step) bool {
	return s.own >= 0 && s.act.Do == sim.Ask && bidesClear(&s.act) && h.rec.moments[s.own].clear && !r.State.Team.FieldClear
}

// uncaused says whether the person declared something for which there was cause, and here there is none.
func (h *hand) uncaused(r *play.Run, s *step) bool {
	if s.own < 0 || s.act.Do != sim.Declare || h.rec.moments[s.own].falsely {
		return false
	}
	k, i := &r.State.Conduct, sim.Incident(s.act.Value)
	return k.Met[i] == 0 && !k.Cause[i]
}

// owns declares what happened here: as soon after it as the person did when it happened to them, or soon where it did not, if they
// hid nothing of its kind.
func (h *hand) owns(r *play.Run) {
	k, own := &r.State.Conduct, &h.rec.Run.State.Conduct
	for _, i := range [...]sim.Incident{sim.IncidentBreach, sim.IncidentAir, sim.IncidentReaction} {
		after := ownsAfter
		if own.Met[i] > 0 {
			after = own.Told[i] - own.Met[i] + sim.TicksPerSecond
		}
		if k.Met[i] > 0 && k.Told[i] == 0 && after > 0 && r.State.Tick >= k.Met[i]+after && h.minds(sim.Declare) {
			r.Do(sim.Action{Do: sim.Declare, Value: float64(i)})
			h.seenAt = -1
		}
	}
}

const ownsAfter int64 = 60 * sim.TicksPerSecond // [A]
