package operators

import "rouleau/sim"

// Steady and the wound: swabs, and the estimate of the loss.

// swabs has them rinsed when they hold enough.
func (o *Steady) swabs(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	if v.AgentSaid && o.habits.Diverts || !o.habits.RinsesSwabs || v.Rinsing || v.Bench.TakenDown || v.Route != sim.ToReservoir {
		return false
	}
	fresh := v.SwabsML - o.swabRest
	if fresh < rinseFromML && !(v.OperationOver && fresh > 60) {
		return false
	}
	before := v.SwabsML
	if !try(sim.Ask, sim.NoPart, float64(sim.RinseSwabs)) {
		return false
	}
	o.swabBlood += before - o.swabRest
	o.rinsing = true
	return true
}

// keepCount notes what the rinse brought, so that it is not taken for blood.
func (o *Steady) keepCount(v *sim.Seen) {
	if o.rinsing && !v.Rinsing && v.BasinML > 0 {
		o.rinsing = false
		o.basin += v.BasinML
		o.swabRest = v.SwabsML
	}
}

// lossML estimates the blood lost: what was collected and thrown away less what was added, and what the swabs weigh.
func (o *Steady) lossML(v *sim.Seen) float64 {
	liquid := v.TakenInML - v.PumpBloodML + inFilterAndLineML - v.DripML - o.basin - v.BodyFluidML + v.CanisterML + v.PoolML - v.IrrigationML
	swabs := o.swabBlood
	if !o.rinsing {
		swabs += v.SwabsML - o.swabRest
		liquid += v.BasinML // rinse that was counted as such, still to be sucked up
	}
	const drapes = 0.95 // a little is always lost to the drapes
	return max(0, float64(int64((liquid+swabs)/drapes/10+0.5))*10)
}
