package debrief

import (
	"rouleau/scoring/play"
	"rouleau/sim"
)

// Settings of the pump keep their place among its acts: what a person had set before a bowl is set before it here too, when the
// bowl comes sooner than in their own course.

// setsPump says whether an act is a setting of the pump, which holds until the next one.
func setsPump(v sim.Verb) bool {
	return v >= sim.SetFillRate && v <= sim.SetWashVolume || v >= sim.AutoFillAt && v <= sim.AutoEmpty
}

// setFirst does the settings that the person had made before an act of the pump and that have not come yet.
func (h *hand) setFirst(r *play.Run, s *step) {
	if s.own < 0 || r.State.Tick >= s.due || h.moved(s) {
		return
	}
	for i := range h.queue[apart] {
		if q := &h.queue[apart][i]; !q.done && q.own >= 0 && q.own < s.own && q.due > r.State.Tick && setsPump(q.act.Do) && !h.moved(q) {
			h.try(r, apart, q)
		}
	}
}
