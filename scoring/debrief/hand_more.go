package debrief

import (
	"slices"

	"rouleau/scoring/play"
	"rouleau/sim"
)

// What is left over in the other course is worked off as the person worked: another bowl like their last whole one, another
// return like their last one. Only what the person had not left lying in their own course counts.

const (
	mostExtra   = 8
	excessShare = 0.5 // of a bowl's worth more than the person had at the same time
	excessML    = 30.0
	ahead       = 5 * 60 * sim.TicksPerSecond // nothing of the person's own comes in this time
)

// bowls are the acts of each whole bowl of the person, from the filling to the emptying.
func (rec *Record) bowls() (all [][]int) {
	var now []int
	for i := range rec.Run.Actions {
		a, v := &rec.Run.Actions[i], &rec.moments[i].seen
		if rec.lineOf(&step{act: *a, own: i}) != pumping {
			continue
		}
		if a.Do == sim.Fill && !v.Pump.CycleOpen {
			now = []int{i}
			continue
		}
		if now == nil {
			continue
		}
		now = append(now, i)
		if a.Do == sim.Empty {
			all = append(all, now)
			now = nil
		}
	}
	return all
}

// returns are the acts of each return: what is done to the bag, its hooking and how fast it ran.
func (rec *Record) returns() (all [][]int) {
	for i := range rec.Run.Actions {
		hooked := &rec.Run.Actions[i]
		if _, bag := bagOf(hooked.On); hooked.Do != sim.Hook || !bag {
			continue
		}
		var acts []int
		ran := false
		for k := range rec.Run.Actions {
			a := &rec.Run.Actions[k]
			switch {
			case k < i && a.On == hooked.On && (a.Do == sim.Label || a.Do == sim.ExpelAir || a.Do == sim.HandOver || a.Do == sim.Identify), k == i:
				acts = append(acts, k)
			case k > i && a.Do == sim.Hook:
			case k > i && a.Do == sim.GiveRate && rec.moments[k].seen.Giving.Bag == int8(hooked.On-sim.FirstBag):
				acts = append(acts, k)
				ran = ran || a.Value > 0
			}
		}
		if ran {
			all = append(all, acts)
		}
	}
	return all
}

// free says whether nothing of the person's own in a line is near. Clearing the lines keeps nobody from anything.
func (h *hand) free(r *play.Run, l line) bool {
	for i := range h.queue[l] {
		if s := &h.queue[l][i]; s.act.Do != sim.ClearLine {
			return s.due > r.State.Tick+ahead
		}
	}
	return true
}

// more begins another bowl, or another return, where there is something for it.
func (h *hand) more(r *play.Run) {
	if h.extra >= mostExtra || r.State.Bench.TakenDown && len(h.returns) == 0 {
		return
	}
	switch {
	case h.stuck(r):
		h.finishes(r)
	case h.bowlIsDue(r):
		h.again(r, pumping, h.inOneGo(h.bowlToCopy(r.State.Tick >= r.Case.EndTick)), sim.NoPart)
	case r.State.Tick >= r.Case.EndTick && len(h.queue[giving]) == 0:
		if k := h.bagToReturn(r); k >= 0 {
			h.again(r, giving, h.returns[len(h.returns)-1], sim.Bag(k))
		}
	}
}

// bowlIsDue says whether the person, who worked off less, would begin another bowl here.
func (h *hand) bowlIsDue(r *play.Run) bool {
	s := &r.State
	if len(h.bowls) == 0 || h.extra >= mostExtra || s.Pump.Mode != sim.PumpIdle || s.Bench.TakenDown || !h.free(r, pumping) || h.leaves(r, pumping) ||
		!h.canWash(r) {
		return false
	}
	if cy := cycle(r); cy != nil && cy.DoneTick == 0 {
		return false
	}
	over := s.Tick >= r.Case.EndTick
	least := float64(h.bowlScale(r) * h.beginsAt(over))
	worth := least
	if over { // then less is worth a bowl too
		worth = min(least, float64(rightLastML*scaleOf(s)))
	}
	ml := s.Reservoir.Blood.VolumeML()
	return ml >= worth && ml-h.had(s.Tick, func(t *play.Sample) float64 { return t.ReservoirML }) >= float64(excessShare*least)
}

// had is what the person had at the same time. A second earlier counts too: a sample is taken after the acts of its tick.
func (h *hand) had(tick int64, of func(t *play.Sample) float64) float64 {
	return max(of(h.rec.at(tick)), of(h.rec.at(tick-sim.TicksPerSecond)))
}

// bowlScale is the bowl here against the person's own.
func (h *hand) bowlScale(r *play.Run) float64 {
	own, here := h.rec.Run.State.Bowl.Shape().VolumeML, r.State.Bowl.Shape().VolumeML
	if own <= 0 || here <= 0 {
		return 1
	}
	return here / own
}

// beginsAt is the volume at which the person began bowls; at the end the least of them.
func (h *hand) beginsAt(over bool) float64 {
	var began []float64
	for _, b := range h.bowls {
		began = append(began, h.rec.at(h.rec.Run.Actions[b[0]].Tick).ReservoirML)
	}
	slices.Sort(began)
	if over {
		return began[0]
	}
	return began[len(began)/2]
}

// bagToReturn is the fullest bag, where more is left in bags than the person had in them at the same time; -1 for none.
func (h *hand) bagToReturn(r *play.Run) int {
	s := &r.State
	if len(h.returns) == 0 || h.leaves(r, giving) || h.extra >= mostExtra || s.Giving.RateMLMin > 0 || s.Pump.Mode == sim.PumpEmpty || len(h.queue[pumping]) > 0 && s.Tick < r.Case.EndTick {
		return -1
	}
	fullest, held, all := -1, excessML, 0.0
	for k := range s.Bags[:s.BagsUsed] {
		ml := s.Bags[k].Fluid.VolumeML()
		all += ml
		if !s.Bags[k].Discarded && ml >= held {
			fullest, held = k, ml
		}
	}
	if all-h.had(s.Tick, func(t *play.Sample) float64 { return t.ProductML }) < excessML {
		return -1 // the person left as much lying
	}
	return fullest
}

// again puts acts of the person at the head of a line once more, as fast after each other as then.
func (h *hand) again(r *play.Run, l line, acts []int, on sim.Part) {
	h.extra++
	var steps []step
	first := h.rec.Run.Actions[acts[0]].Tick
	shift := r.State.Tick - first
	for n, i := range acts {
		a := h.rec.Run.Actions[i]
		if n > 0 {
			gap := a.Tick - h.rec.Run.Actions[acts[n-1]].Tick
			if l == giving {
				shift -= max(0, gap-soon) // nobody waits again for what the person waited for then
			}
		}
		if on != sim.NoPart {
			if _, bag := bagOf(a.On); bag {
				a.On = on
			}
			if h.hasAlready(r, &a) {
				continue
			}
		}
		if a.Do == sim.Empty && int(r.State.Giving.Bag) == r.State.BagsUsed-1 && !r.State.Giving.Joined {
			steps = append(steps, step{act: sim.Action{Do: sim.NewBag}, own: -1, due: a.Tick + shift, until: a.Tick + shift + linePatience, order: -1})
		}
		a.Tick += shift
		steps = append(steps, step{act: a, own: i, due: a.Tick, until: a.Tick + linePatience, order: -1})
	}
	h.lag[l] = 0
	h.queue[l] = append(steps, h.queue[l]...)
}

// bowlToCopy are the acts of a bowl of the person's to be done once more: of their last one when the operation is over, and until
// then of the last one that they washed full, if there was one.
func (h *hand) bowlToCopy(over bool) []int {
	last := h.bowls[len(h.bowls)-1]
	if over {
		return last
	}
	for n := len(h.bowls) - 1; n >= 0; n-- {
		if slices.ContainsFunc(h.bowls[n], func(i int) bool {
			return h.rec.Run.Actions[i].Do == sim.Wash && h.rec.moments[i].seen.Pump.BedByEye >= partFull
		}) {
			return h.bowls[n]
		}
	}
	return last
}

// inOneGo leaves out of the acts of a bowl what came between its first filling and its last one: the person waited for blood then.
// The first filling goes by the time of the last one.
func (h *hand) inOneGo(acts []int) []int {
	for n := len(acts) - 1; n > 0; n-- {
		if h.rec.Run.Actions[acts[n]].Do == sim.Fill {
			return acts[n:]
		}
	}
	return acts
}

// hasAlready says whether a bag has had what an act does to it.
func (h *hand) hasAlready(r *play.Run, a *sim.Action) bool {
	k, bag := bagOf(a.On)
	if !bag || k >= r.State.BagsUsed {
		return false
	}
	b := &r.State.Bags[k]
	switch a.Do {
	case sim.Label:
		return b.LabelBits == uint8(a.Value)
	case sim.HandOver:
		return b.HandedBits == uint8(a.Value)
	case sim.Identify:
		return b.Checkers >= uint8(a.Value)
	case sim.Hook:
		return int(r.State.Giving.Bag) == k
	}
	return false
}
