package operators

import "rouleau/sim"

// Steady over long hours: what runs short, what expires, what washed cells do not bring, and where air comes from.

// The same for long hours.
const (
	tellClottingML = 900.0  // washed blood given at which it tells: a little before the litre of Merkel et al.
	sendFromML     = 4000.0 // saline left on the bench at which it sends for more: about four bowlfuls
	drawnEmptyML   = 50.0   // in the reservoir: air comes from there
)

// sendsForFluid sends for what is in the store, in time or once there is nothing left to wash with.
func (o *Steady) sendsForFluid(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	short := v.SalineLeftML < sendFromML
	if !o.habits.LooksAhead {
		short = v.Bench.Opened[sim.ProcessingSet] && o.dry(v)
	}
	if !short || v.FluidSentFor || v.Bench.PackInStore == [sim.MaxPacks]bool{} || v.Bench.TakenDown {
		return false
	}
	return try(sim.Ask, sim.NoPart, float64(sim.SendForFluid))
}

// wasteIsFull says whether the waste bag is to be changed: before the next bowl, or once nothing flows any more.
func (o *Steady) wasteIsFull(v *sim.Seen) bool {
	if !o.habits.LooksAhead {
		return v.WasteML >= o.sheet.WasteML-50 // by its scale
	}
	return v.WasteML >= o.sheet.WasteML-wasteRoomML
}

// pastItsTime says whether a bag must not be given any more.
func (o *Steady) pastItsTime(v *sim.Seen, k int) bool {
	b := &v.Bags[k]
	return o.habits.MindsExpiry && o.sheet.LifeTicks > 0 && b.FirstTick > 0 && b.ML > 0 && v.Tick > b.FirstTick+o.sheet.LifeTicks-sim.TicksPerSecond
}

// tellOfClotting tells the anaesthetist that what runs in holds no plasma and no platelets.
func (o *Steady) tellOfClotting(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	return o.habits.FollowsUp && v.Giving.GivenML >= tellClottingML && !v.ClottingTold && try(sim.Ask, sim.NoPart, float64(sim.ThinnedClotting))
}

// air looks where it came from before it is let out.
func (o *Steady) air(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	if o.habits.ChecksBench && !o.airSought && v.ReservoirML > drawnEmptyML {
		o.airSought = try(sim.Inspect, sim.OutletLine, 0)
		return o.airSought
	}
	if o.habits.ChecksBench && v.Bench.FoundLoose[sim.OutletLine] {
		return try(sim.Connect, sim.OutletLine, 0)
	}
	if !try(sim.ClearLine, sim.NoPart, 0) {
		return false
	}
	o.airSought = false
	return true
}
