package operators

import (
	"rouleau/scoring/coach"
	"rouleau/sim"
)

// Steady and its eyes: where the detector and the bed that can be seen through the bowl's wall part, it goes by the bed.

// reading is how full the bowl is: by the detector, or by eye once the detector was found to err.
func (o *Steady) reading(v *sim.Seen) float64 {
	p := &v.Pump
	if !o.habits.ByEye {
		return p.Detector
	}
	if coach.DetectorParts(p) {
		o.doubts = true
	}
	if o.doubts {
		return p.BedByEye
	}
	return p.Detector
}

// stopsFilling stops at the interface, and takes the stop away from a detector that errs.
func (o *Steady) stopsFilling(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) {
	full := o.reading(v) > o.habits.FillsTo
	if o.doubts && v.Pump.AutoStop {
		try(sim.AutoStop, sim.NoPart, 0)
	}
	if (v.Pump.Mode == sim.PumpFill || v.Pump.Mode == sim.PumpTopUp) && full {
		try(sim.StopPump, sim.NoPart, 0)
	}
}
