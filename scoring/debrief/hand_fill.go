package debrief

import (
	"rouleau/scoring/coach"
	"rouleau/sim"
)

// Where a filling is stopped in another course: at the reading, or by the bed that can be seen, at which the person stopped theirs.

const (
	atInterface   = 0.93 // where a filling should stop, as the bench stops it
	nearInterface = 0.91 // and where it comes near enough that nobody fills on [A]
	eyeStep       = 0.02 // to which the bed is read by eye
	ignored       = 0.04 // past the interface up to which a reading was let go on: nobody stops so late by it [A]
)

// byEye says whether the person went by the bed and not by the detector: where a reading stood above the bed, they let it go on past
// the interface more often than they stopped at it.
func (rec *Record) byEye() bool {
	past, at := 0, 0
	for i := range rec.Run.Actions {
		a, v := &rec.Run.Actions[i], &rec.moments[i].seen.Pump
		if a.Do != sim.StopPump || v.Mode != sim.PumpFill && v.Mode != sim.PumpTopUp {
			continue
		}
		switch most := rec.mostBy(a.Tick); {
		case most <= v.BedByEye+coach.DetectorPartsBy || most < atInterface:
		case most > atInterface+ignored:
			past++
		case rec.moments[i].seen.ReservoirML > 2*sameML: // and not for want of blood
			at++
		}
	}
	return past > at
}

// filled says whether a filling has come to where the person stopped it: at a reading, or by the bed. Where they had stopped for want
// of blood it goes on, with more blood here, until the bowl is full.
func (h *hand) filled(own, v *sim.Seen, stop *StopAt) bool {
	switch {
	case v.ReservoirML <= 2*sameML: // before it runs dry
		return true
	case stop != nil:
		return v.Pump.Detector >= stop.Detector
	case own.ReservoirML <= 2*sameML:
		return h.isFull(v) && v.Pump.Detector >= own.Pump.Detector
	case h.byEye:
		return v.Pump.BedByEye >= own.Pump.BedByEye
	}
	return v.Pump.Detector >= own.Pump.Detector && v.Pump.BedByEye >= own.Pump.BedByEye-eyeStep
}

// isFull says whether the bowl is full, by what the person goes by.
func (h *hand) isFull(v *sim.Seen) bool {
	if h.byEye {
		return v.Pump.BedByEye >= atInterface
	}
	return v.Pump.Detector >= atInterface
}
