package debrief

import (
	"cmp"
	"slices"

	"rouleau/scoring/play"
	"rouleau/sim"
)

// A bowl that leaks in another course: it is stopped, and mended, as the person did it with theirs.

const (
	leakSoon    = 10 * sim.TicksPerSecond     // after the alarm anybody stops it [A]
	leakMending = 5 * 60 * sim.TicksPerSecond // from stopping a leaking bowl to the last of what mended it
)

// leaks stops a bowl that leaks as soon after the alarm as the person did, where theirs stood at the time or began to leak at
// another one, and brings what they did to mend it forward.
func (h *hand) leaks(r *play.Run) {
	s := &r.State
	if !s.Alarms.On[sim.AlarmLeak] || !s.Bowl.Spinning {
		return
	}
	if h.leakAct == 0 {
		h.leakAct, h.leakAfter = h.rec.stopsLeak()
	}
	if h.leakAfter < 0 || s.Tick <= s.Alarms.Since[sim.AlarmLeak]+h.leakAfter+sim.TicksPerSecond || sim.May(&r.Case, s, sim.Action{Do: sim.StopAll}) != "" {
		return
	}
	r.Do(sim.Action{Do: sim.StopAll})
	h.seenAt = -1
	if h.leakAct < 0 {
		return
	}
	stopped := h.rec.Run.Actions[h.leakAct].Tick
	by := stopped - s.Tick
	for i := range h.queue[apart] {
		o := &h.queue[apart][i]
		if mends := o.act.Do == sim.ReplaceSet || o.act.Do == sim.Connect || o.act.Do == sim.Clamp; mends && o.own > h.leakAct && o.due <= stopped+leakMending && by > 0 {
			o.due -= by
		}
	}
	slices.SortStableFunc(h.queue[apart], func(a, b step) int { return cmp.Compare(a.due, b.due) })
}

// stopsLeak is the person's first act against a leaking bowl, which need not have turned, and how long after the alarm it came.
// Where theirs never leaked it is -1, and anybody stops it soon; where they did nothing the time is -1 too.
func (rec *Record) stopsLeak() (own int, after int64) {
	since := int64(-1)
	for i := range rec.Run.Log {
		if o := &rec.Run.Log[i]; o.Kind == sim.Alarmed && o.Key == sim.AlarmLeak.String() {
			since = o.Tick
			break
		}
	}
	if since < 0 {
		return -1, leakSoon
	}
	for i := range rec.Run.Actions {
		if a := &rec.Run.Actions[i]; a.Tick >= since && (a.Do == sim.StopAll || a.Do == sim.Clamp || a.Do == sim.ReplaceSet) {
			return i, a.Tick - since
		}
	}
	return -1, -1
}
