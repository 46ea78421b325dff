package operators

import (
	"rouleau/scoring/coach"
	"rouleau/sim"
)

// Steady and circuits: one that must stay connected to the patient, the pump that the patient was on, and calcium in the
// irrigation that uses up citrate.

// calciumDrops are the drops a minute that calcium in the irrigation asks for beside those for the blood.
func (o *Steady) calciumDrops(v *sim.Seen) float64 {
	if o.anticoagulant() != sim.CitrateSolution || v.IrrigationFluid != sim.BalancedCrystalloid {
		return 0
	}
	return float64(20 * coach.CitratePerIrrigation * v.IrrigationMLMin)
}

// circuits joins bag and patient before the first blood where that is asked for, and takes over the blood of a pump.
func (o *Steady) circuits(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	b := &v.Bench
	if b.TakenDown || o.prepared < collecting {
		return false
	}
	if v.CircuitAsked && b.Opened[sim.ProcessingSet] && !v.Giving.Joined && v.Giving.Bag < 0 {
		return try(sim.JoinCircuit, sim.NoPart, number(o.habits.UsesFilter))
	}
	return v.PumpOffered && !v.PumpRuns && v.PumpBloodML == 0 && try(sim.TakePumpBlood, sim.NoPart, 0)
}

// emptyJoined empties the bowl into a bag that is one circuit with the patient. While it runs in, nothing is emptied.
func (o *Steady) emptyJoined(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	switch {
	case !o.emptiesNext(v):
		return false
	case v.Giving.RateMLMin > 0:
		return try(sim.GiveRate, sim.NoPart, 0)
	}
	return try(sim.Empty, sim.NoPart, 0)
}

// emptiesNext says whether a washed bowlful waits for a joined bag that has room for it.
func (o *Steady) emptiesNext(v *sim.Seen) bool {
	p := &v.Pump
	if !v.Giving.Joined || !p.CycleOpen || !p.Washed || p.WashedML < p.WashML-1 {
		return false
	}
	b := &v.Bags[v.BagsUsed-1]
	return b.ML+b.AirML+p.HeldML <= o.sheet.BagML
}
