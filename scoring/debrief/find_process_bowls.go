package debrief

import (
	"rouleau/scoring/coach"
	"rouleau/sim"
)

// The bowlfuls of a record, each with the person's acts on it, and what several finders of processing want to know.

// As steady does it, where a scenario has no criterion; common practice.
const (
	rightStartML = 900.0 // in the reservoir when a standard bowl is begun, the prime among it
	rightLastML  = 120.0 // once the operation is over: less is not worth a bowl
	fillOnFromML = 150.0 // of the same: from here a part-filled bowl is filled on
	partFull     = 0.80  // of a bowl: below it is part-filled
	dryML        = 15.0  // in the reservoir: filling is stopped before it runs dry
	littleML     = 60.0  // left in the reservoir: there was no more to fill with
	slack        = 20 * sim.TicksPerSecond
	brakes       = 20 * sim.TicksPerSecond // from stopping the bowl until it stands, and a little more
)

// bowlful is one bowlful of the person's own course.
type bowlful struct {
	n           int // as people count: the first is 1
	cy          *sim.Cycle
	from, until int64 // begun, and emptied or given up
	acts        []int // the person's own in that time, on bowl and pump
}

// bowlfuls are all that were begun.
func (f *finding) bowlfuls() []bowlful {
	s := &f.rec.Run.State
	all := make([]bowlful, s.CycleUsed)
	done := int64(0)
	for i := range all {
		cy := &s.Cycles[i]
		b := bowlful{n: i + 1, cy: cy, from: done + 1, until: f.rec.lastTick}
		if cy.FillTick > 0 {
			b.from = cy.FillTick
		}
		if cy.DoneTick > 0 {
			b.until = cy.DoneTick
		}
		for k := range f.acts {
			if t := f.acts[k].Tick; t >= b.from && t <= b.until && f.rec.lineOf(&step{act: f.acts[k], own: k}) == pumping {
				b.acts = append(b.acts, k)
			}
		}
		done, all[i] = b.until, b
	}
	return all
}

// of are the bowl's acts of a kind.
func (f *finding) of(b *bowlful, v sim.Verb) (all []int) {
	for _, k := range b.acts {
		if f.acts[k].Do == v {
			all = append(all, k)
		}
	}
	return all
}

// stops are the acts that ended a filling, or a wash, of the bowl.
func (f *finding) stops(b *bowlful, mode sim.PumpMode) (all []int) {
	for _, k := range b.acts {
		if v := f.acts[k].Do; (v == sim.StopPump || v == sim.StopAll) && f.rec.moments[k].seen.Pump.Mode == mode {
			all = append(all, k)
		}
	}
	return all
}

// bowlML is the volume of the chosen bowl, 0 where none was ever opened.
func (f *finding) bowlML() float64 { return f.rec.Run.State.Bowl.Shape().VolumeML }

// startML is what should be in the reservoir when a bowl is begun.
func (f *finding) startML() float64 { return f.scaled(rightStartML) }

// least is the least that a criterion asks for, as it is usual where there is none.
func (f *finding) least(measure string, usual float64) float64 {
	if cr := f.criterion(measure); cr != nil && cr.Least != nil {
		return *cr.Least
	}
	return usual
}

// most is the most that a criterion allows, as it is usual where there is none.
func (f *finding) most(measure string, usual float64) float64 {
	if cr := f.criterion(measure); cr != nil && cr.Most != nil {
		return *cr.Most
	}
	return usual
}

// reading is how full the bowl is: by the detector, or by eye where the two part.
func reading(v *sim.Seen) float64 {
	if coach.DetectorParts(&v.Pump) {
		return v.Pump.BedByEye
	}
	return v.Pump.Detector
}

// full is the first second of a time in which a filling bowl read full, -1 for never.
func (f *finding) full(from, until int64) int64 {
	for t := from - from%sim.TicksPerSecond; t < until; t += sim.TicksPerSecond {
		s := f.rec.at(t)
		if s.PumpMode != sim.PumpFill && s.PumpMode != sim.PumpTopUp {
			continue
		}
		at := s.Detector
		if off := at - s.FillFraction; off > detectorOff || off < -detectorOff {
			at = s.FillFraction // as an eye sees it through the wall
		}
		if at > atInterface {
			return t
		}
	}
	return -1
}

const detectorOff = 0.06 // detector and eye this far apart are no chance any more, as the coach has it

// quiet is the last moment in a time at which the hands were free for so many seconds, -1 for none.
func (f *finding) quiet(from, until int64, seconds float64) int64 {
	need := sim.Ticks(seconds) + sim.TicksPerSecond
	end := until
	for i := len(f.acts) - 1; i >= 0 && end-need >= from; i-- {
		a, busy := f.acts[i].Tick, f.rec.moments[i].hands
		if busy <= a || a >= until { // it needs no hands, or comes later
			continue
		}
		if busy <= end-need {
			break
		}
		end = min(end, a)
	}
	if end-need < from {
		return -1
	}
	return end - need
}

// moved are acts done earlier by so many ticks, later with a negative number.
func (f *finding) moved(acts []int, by int64) (all []Swap) {
	for _, k := range acts {
		a := f.acts[k]
		a.Tick = max(0, a.Tick-by)
		all = append(all, Swap{k, a})
	}
	return all
}

// after are those of some acts that come after a tick.
func (f *finding) after(acts []int, tick int64) (all []int) {
	for _, k := range acts {
		if f.acts[k].Tick > tick {
			all = append(all, k)
		}
	}
	return all
}
