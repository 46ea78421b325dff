package debrief

import (
	"slices"

	"rouleau/scoring/play"
	"rouleau/sim"
)

// When an act of a line of work has its moment: what the person went by.

const (
	soon        = 15 * sim.TicksPerSecond // between acts of a line that has fallen behind, at most [A]
	sameML      = 10.0                    // a scale reads so, or less: empty
	enoughShare = 0.85                    // of the blood the person began a bowl with is enough to begin it
	fillWaits   = 10 * 60 * sim.TicksPerSecond
	stopWaits   = 5 * 60 * sim.TicksPerSecond
	byNoise     = 0.01 // that a reading passes by chance
)

// begins says whether an act begins a bowl, whose time does not hang on how the last one went.
func begins(a *sim.Action) bool { return a.Do == sim.Fill || a.Do == sim.Mix }

// isDue says whether the first step of a line has come: at its own time, moved with the line, or when what it ends is past the
// point at which the person ended it.
func (h *hand) isDue(r *play.Run, l line, s *step) bool {
	due, lag := s.due, h.lag[l]
	if l == pumping && s.own >= 0 && waitsForPump(&s.act) {
		if early := h.early(s); early > 0 {
			lag = min(lag, -early)
		}
	}
	switch {
	case s.own < 0 || lag == 0:
	case lag > 0 && l == giving && h.whileItRan(s):
		due = s.due + lag
	case lag > 0:
		due = max(s.due, min(s.due+lag, h.lastDone[l]+min(s.due-h.lastDue[l], soon)))
	case l == pumping && (!begins(&s.act) || h.oneAfterTheOther(r, s)):
		due = s.due + lag
	}
	if l == giving && s.own >= 0 && r.State.Tick%sim.TicksPerSecond == 0 && h.ranOut(r, s) {
		return true
	}
	if l == pumping && r.State.Tick < s.due && h.aheadWaits(r, s) {
		return false
	}
	if l == pumping && s.own >= 0 && r.State.Tick%sim.TicksPerSecond == 0 && (begins(&s.act) && h.fuller(r, s) || h.fullAlready(r, s)) {
		return true
	}
	return r.State.Tick >= due || l == pumping && s.own >= 0 && (h.stoppedAlready(s) || r.State.Tick%sim.TicksPerSecond == 0 && h.past(r, s))
}

// oneAfterTheOther says whether the person began a bowl as soon as the last one was through, and here it can be begun with as much.
func (h *hand) oneAfterTheOther(r *play.Run, s *step) bool {
	return s.due-h.lastDue[pumping] <= rightAfter && r.State.Reservoir.Blood.VolumeML() >= h.asMuch(r, s)
}

const rightAfter = 60 * sim.TicksPerSecond // [A]

// fuller says whether a bowl is begun sooner because the reservoir holds more than in the person's own course, and as much as when
// they began it.
func (h *hand) fuller(r *play.Run, s *step) bool {
	if r.State.Pump.Mode != sim.PumpIdle || h.moved(s) || h.leaves(r, pumping) {
		return false
	}
	ml, least := r.State.Reservoir.Blood.VolumeML(), h.asMuch(r, s)
	return ml >= least && ml-h.had(r.State.Tick, func(t *play.Sample) float64 { return t.ReservoirML }) >= float64(h.bowlScale(r)*fullerML)
}

const fullerML = 100.0 // in the reservoir that somebody notices [A]

// asMuch is what the person began a bowl with, for the bowl here.
func (h *hand) asMuch(r *play.Run, s *step) float64 {
	return float64(h.bowlScale(r) * h.rec.moments[s.own].seen.ReservoirML)
}

// whileItRan says whether the person slowed, stopped or took away a bag that ran in: how long it ran is not cut short.
func (h *hand) whileItRan(s *step) bool {
	return (s.act.Do == sim.GiveRate || s.act.Do == sim.Unhook) && h.rec.moments[s.own].seen.Giving.RateMLMin > 0
}

// waitsForPump says whether an act is done because the pump has come to the end of something.
func waitsForPump(a *sim.Action) bool {
	return a.Do == sim.Wash || a.Do == sim.StopAll || a.Do == sim.Empty || a.Do == sim.SendBack
}

// moved says whether the edit has an act done at another time than the person did it.
func (h *hand) moved(s *step) bool { return s.order >= 0 && s.due != h.rec.Run.Actions[s.own].Tick }

// early is by how much sooner than in the person's own course the pump stopped by itself, or was stopped, before an act that
// waited for it. An act that is done once more goes by the time that it has here; one that the edit moves is done when it says.
func (h *hand) early(s *step) int64 {
	done := h.rec.Run.Actions[s.own].Tick
	if h.moved(s) {
		return 0
	}
	was := h.rec.stoodAt(done)
	if was.since < 0 || h.still.since < 0 || was.after != h.still.after {
		return 0
	}
	return max(0, was.since+s.due-done-h.still.since)
}

// stoppedAlready says whether the pump has stopped by itself what the person stopped by hand.
func (h *hand) stoppedAlready(s *step) bool {
	mode := h.rec.moments[s.own].seen.Pump.Mode
	return s.act.Do == sim.StopPump && mode != sim.PumpIdle && h.still.since >= 0 && h.still.after == mode
}

// past says whether filling or washing has gone further than it had when the person ended it.
func (h *hand) past(r *play.Run, s *step) bool {
	own := &h.rec.moments[s.own].seen
	if own.Pump.Mode != r.State.Pump.Mode {
		return false
	}
	v := h.view(r)
	switch own.Pump.Mode {
	case sim.PumpFill, sim.PumpTopUp:
		if s.stop != nil {
			return v.Pump.Detector >= s.stop.Detector
		}
		return v.Pump.Detector > h.rec.mostBy(h.rec.Run.Actions[s.own].Tick)+byNoise
	case sim.PumpWash:
		if s.stop != nil {
			return v.Pump.WashedML >= s.stop.WashedML
		}
		return v.Pump.WashedML > own.Pump.WashedML+sameML
	}
	return false
}

// ready says whether what an act waits for is so, or, with moot, that there is nothing left for it to do.
func (h *hand) ready(r *play.Run, l line, s *step) (ready, moot bool) {
	if s.own < 0 {
		return true, false
	}
	if h.notClear(r, s) {
		h.asksIfClear(r)
		return false, false
	}
	if r.State.Tick < s.again || h.uncaused(r, s) || h.unasked(r, s) {
		return false, false
	}
	switch l {
	case pumping:
		if h.overfills(r, s) {
			h.freshBag(r)
			return false, false
		}
		if h.replacesFirst(r, s) {
			return false, false
		}
		return h.pumpReady(r, s)
	case giving:
		return h.giveReady(r, s), false
	case closing:
		return h.closeReady(r, s), false
	}
	return h.hangReady(r, s), h.stillFull(r, s) || h.freshHangs(r, s)
}

// stillFull says whether the person threw an empty bag away, and here it holds washed blood.
func (h *hand) stillFull(r *play.Run, s *step) bool {
	k, bag := bagOf(s.act.On)
	if s.act.Do != sim.DiscardIt || !bag || k >= r.State.BagsUsed {
		return false
	}
	own := &h.rec.moments[s.own].seen.Bags[k]
	b := &r.State.Bags[k]
	return own.GivenML > 0 && own.ML <= 2*sameML && b.Fluid.VolumeML() > 4*sameML && b.GivenML <= 0
}

// freshHangs says whether the person took an empty pack of wash fluid down, and here a fresh one hangs already.
func (h *hand) freshHangs(r *play.Run, s *step) bool {
	if s.act.Do != sim.Unhang || s.act.On == sim.AnticoagulantHook {
		return false
	}
	own, b := &h.rec.moments[s.own].seen.Bench, &r.State.Bench
	was, k := own.HookPack[s.act.On], b.HookPack[s.act.On]
	return was >= 0 && k >= 0 && own.PackLeftML[was] < lowWashML && b.Packs[k].Fluid.VolumeML() > own.PackLeftML[was]+wasteMoreML
}

// hangReady says whether a pack can be changed: none is taken down in the middle of a wash unless it is empty or the person did so
// with one that was not, and none is hung before the last one has been taken down.
func (h *hand) hangReady(r *play.Run, s *step) bool {
	switch s.act.Do {
	case sim.Unhang:
		own, k := &h.rec.moments[s.own].seen, r.State.Bench.HookPack[s.act.On]
		was := own.Bench.HookPack[s.act.On]
		return s.act.On == sim.AnticoagulantHook || r.State.Pump.Mode != sim.PumpWash || own.Pump.Mode == sim.PumpWash && was >= 0 && own.Bench.PackLeftML[was] > 2*sameML ||
			k >= 0 && r.State.Bench.Packs[k].Fluid.VolumeML() < sameML
	case sim.Hang:
		return !slices.ContainsFunc(h.queue[apart], func(o step) bool {
			return !o.done && o.act.Do == sim.Unhang && o.act.On == s.act.On && o.order < s.order
		})
	}
	return true
}

func (h *hand) pumpReady(r *play.Run, s *step) (ready, moot bool) {
	own, v := &h.rec.moments[s.own].seen, h.view(r)
	if h.waste != sim.PumpIdle || h.unwashed(r, s) || h.washesOn(r, s) || h.unfilled(r, s) || h.unmixed(r, s) || h.unsupplied(r, s) {
		return false, false
	}
	if h.doneAlready(own, v, s) || freshAlready(own, v, s) || h.undisturbed(r, s) || h.noCells(r, own, v, s) {
		return false, true
	}
	stops := s.act.Do == sim.StopPump || s.act.Do == sim.StopAll
	if own.Pump.Mode == sim.PumpIdle {
		switch {
		case stops:
			return v.Pump.Mode == sim.PumpIdle, v.Pump.Mode == sim.PumpIdle && !v.Pump.Spinning
		case s.act.Do == sim.Fill && v.Pump.Mode == sim.PumpIdle && h.forNothing(r, own, v):
			return false, true
		case s.act.Do == sim.Fill && v.Pump.Mode == sim.PumpIdle && h.needless(r, own, v, s):
			return false, true
		case s.act.Do == sim.Fill:
			return v.Pump.Mode == sim.PumpIdle && (h.moved(s) || h.enough(own, v, r.State.Tick-s.due)), false
		}
		return v.Pump.Mode == sim.PumpIdle, false
	}
	if v.Pump.Mode != own.Pump.Mode {
		return v.Pump.Mode == sim.PumpIdle, stops && v.Pump.Mode == sim.PumpIdle && !(s.act.Do == sim.StopAll && v.Pump.Spinning)
	}
	late := r.State.Tick-s.due-max(0, h.lag[pumping]) >= stopWaits || v.Pump.NoFlow && !own.Pump.NoFlow
	switch own.Pump.Mode {
	case sim.PumpFill, sim.PumpTopUp:
		return late || h.filled(own, v, s.stop), false
	case sim.PumpWash:
		want := own.Pump.WashedML
		if s.stop != nil {
			want = s.stop.WashedML
		}
		return late || v.Pump.WashedML >= min(want, v.Pump.WashML)-1, false
	case sim.PumpEmpty:
		return late || v.Pump.HeldML <= own.Pump.HeldML, false
	}
	return true, false
}

// enough says whether there is blood for a bowl as the person began it.
func (h *hand) enough(own, v *sim.Seen, waited int64) bool {
	return v.ReservoirML >= enoughShare*own.ReservoirML || waited >= fillWaits || v.OperationOver
}

func (h *hand) giveReady(r *play.Run, s *step) bool {
	own, v := &h.rec.moments[s.own].seen, h.view(r)
	ends := s.act.Do == sim.Unhook || s.act.Do == sim.GiveRate && s.act.Value == 0
	if g, now := own.Giving.Bag, v.Giving.Bag; ends && g >= 0 && own.Bags[g].ML <= sameML && now >= 0 && v.Giving.FlowMLMin > 0 {
		return v.Bags[now].ML <= max(own.Bags[g].ML, sameML/2) || r.State.Tick-s.due >= stopWaits*4
	}
	if k, ok := bagOf(s.act.On); ok && h.fills(r) {
		if own.Bags[k].ML > sameML && v.Bags[k].ML <= 0 && r.State.Tick-s.due < 2*fillWaits {
			s.until = max(s.until, r.State.Tick+patience)
			return false // there is nothing in it yet
		}
		want := own.Bags[k].ML / 2
		if s.due < h.rec.Run.Actions[s.own].Tick { // it is done sooner than then, with what there is
			want = min(want, sameML)
		}
		if v.Bags[k].ML < want && r.State.Tick-s.due < fillWaits {
			return false
		}
	}
	return !h.unready(r, s)
}

// fills says whether anything may still come into a bag.
func (h *hand) fills(r *play.Run) bool { return len(h.queue[pumping]) > 0 || h.leaves(r, pumping) }

// bagOf is the product bag that a part is.
func bagOf(p sim.Part) (int, bool) {
	return int(p) - int(sim.FirstBag), p >= sim.FirstBag && int(p) < int(sim.FirstBag)+sim.MaxBags
}

func (h *hand) closeReady(r *play.Run, s *step) bool {
	if rule := h.rule(r); rule != nil && rule.Waits != nil && rule.Waits(h.view(r)) {
		return false
	}
	open := func(l line) bool { return len(h.queue[l]) > 0 && h.queue[l][0].order < s.order }
	switch s.act.Do {
	case sim.TakeDown:
		return !open(pumping) && r.State.Pump.Mode == h.rec.moments[s.own].seen.Pump.Mode && !h.bowlIsDue(r) && !h.emptiesFirst(r, s)
	case sim.EndCase:
		return !open(pumping) && !open(giving) && h.bagToReturn(r) < 0 && (r.State.Giving.FlowMLMin <= 0 || h.rec.moments[s.own].seen.Giving.FlowMLMin > 0)
	}
	return true
}
