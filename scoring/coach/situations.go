// Situations: what hints and lessons mean by their names, from what a person at the bench can see.

package coach

import "rouleau/sim"

// Marks from which a situation is worth a hint; assumptions, meant to come a little before harm is done.
const (
	hintPrimeML       = 150.0
	hintDripLow       = 12.0 // mL per 100 mL of blood
	hintDripHigh      = 28.0
	hintClearShare    = 0.15
	hintClearFromML   = 200.0 // less in the reservoir is not worth mixing
	hintSwabsML       = 150.0
	hintReservoirML   = 800.0
	hintDetector      = 0.85
	hintPartBowl      = 0.80
	hintFullShare     = 0.85
	hintPackML        = 100.0
	hintUnwatchedS    = 120.0
	hintFirstBloodsML = 60.0
)

// Holds says whether a situation named by the scenario format is the case.
func (s *Sight) Holds(when string) bool {
	v := s.Seen
	p := &v.Pump
	switch when {
	case "undecided":
		return v.Bench.Decision == sim.Undecided
	case "not_primed":
		preparing := v.Bench.Opened[sim.CollectionSet] || v.Bench.Decision == sim.CollectOnly || v.Bench.Decision == sim.SetUpToProcess
		return preparing && v.PrimedML < hintPrimeML && v.TakenInML-v.DripML < hintFirstBloodsML
	case "drip_behind":
		return s.DripPer100 < hintDripLow
	case "drip_far_ahead":
		return s.DripPer100 > hintDripHigh
	case "clear_layer":
		return v.ReservoirML > hintClearFromML && v.ClearML > hintClearShare*v.ReservoirML
	case "agent_in_field":
		return v.AgentSaid && v.Route == sim.ToReservoir && !v.SecondSucker
	case "swabs_full":
		return v.SwabsML >= hintSwabsML && !v.Rinsing
	case "reservoir_ready":
		return v.ReservoirML >= hintReservoirML && !p.CycleOpen
	case "bowl_nearly_full":
		return p.Mode == sim.PumpFill && p.Detector > hintDetector
	case "detector_doubtful":
		return DetectorParts(p)
	case "part_bowl":
		return p.CycleOpen && p.Filled && !p.Washed && p.Mode == sim.PumpIdle && p.Spinning && p.Detector < hintPartBowl
	case "filled_not_washed":
		return p.CycleOpen && p.Filled && !p.Washed && p.Mode == sim.PumpIdle
	case "washed_not_emptied":
		return p.CycleOpen && p.Washed && p.Mode == sim.PumpIdle
	case "reservoir_nearly_full":
		return v.ReservoirML > hintFullShare*s.ReservoirML
	case "operation_over":
		return v.OperationOver
	}
	return s.holdsAboutCircuits(when) || s.holdsAboutPeople(when) || s.holdsInTrouble(when)
}

// holdsAboutCircuits are the situations of calcium against citrate, of a circuit to be kept connected, and of a pump.
func (s *Sight) holdsAboutCircuits(when string) bool {
	v := s.Seen
	switch when {
	case "citrate_outrun":
		return v.Bench.Anticoagulant == sim.CitrateSolution && v.IrrigationMLMin > 0 && v.IrrigationFluid == sim.BalancedCrystalloid &&
			v.Route == sim.ToReservoir && v.DripMLMin < CitrateForMLMin(v)
	case "circuit_open":
		return v.CircuitAsked && v.Bench.Opened[sim.CollectionSet] && !v.Bench.TakenDown && !v.Giving.Joined
	case "pump_blood_waits":
		return v.PumpOffered && !v.PumpRuns
	case "protamine_given":
		return v.ProtamineGiven && v.Route == sim.ToReservoir && s.DripPer100 < hintDripLow
	}
	return false
}

// What citrate solution has to bind, mL for each 100 mL: 15 for blood ([S] UKCSAG Factsheet 2: 15 to 20), 5 for irrigation with
// 2 mmol/L of calcium (derived from the equilibrium in the model: with less the ionised calcium stays over 0.33 mmol/L).
const (
	citratePerBlood      = 0.15
	CitratePerIrrigation = 0.05
)

// DetectorPartsBy is how far detector and eye are apart when that is no chance any more, as a share of the bowl [A].
const DetectorPartsBy = 0.06

// DetectorParts says whether, while the bowl fills, the detector reads something else than an eye sees through the wall.
func DetectorParts(p *sim.SeenPump) bool {
	return p.Mode == sim.PumpFill && p.EffluentMLMin > 0 && max(p.Detector-p.BedByEye, p.BedByEye-p.Detector) > DetectorPartsBy
}

// CitrateForMLMin is the drip of citrate solution, mL/min, that bleeding and calcium in the irrigation ask for by eye.
func CitrateForMLMin(v *sim.Seen) float64 {
	return float64(citratePerBlood*v.BriskMLMin) + float64(CitratePerIrrigation*v.IrrigationMLMin)
}

// holdsAboutPeople are the situations about bags, packs, patient and team.
func (s *Sight) holdsAboutPeople(when string) bool {
	v := s.Seen
	switch when {
	case "not_labelled":
		for i := range v.Bags[:v.BagsUsed] {
			if b := &v.Bags[i]; b.ML > 0 && !b.Discarded && b.LabelBits != sim.LabelComplete {
				return true
			}
		}
	case "reason_untold":
		return v.Bench.Decision == sim.DoNotSalvage && !v.ReasonTold
	case "anti_d_due":
		return v.RhDNegative && v.Giving.GivenML > 0 && !(v.AntiDAsked && v.FetalTestAsked)
	case "blood_wanted":
		return v.BloodWantedTick >= 0
	case "giving_unwatched":
		return v.Giving.FlowMLMin > 0 && s.UnwatchedS > hintUnwatchedS
	case "question_open":
		return v.OpenQuestion == sim.EventAsk || v.OpenQuestion == sim.EventAskLoss
	case "pack_nearly_empty":
		for hook := sim.AnticoagulantHook; hook <= sim.WashHookB; hook++ {
			if i := v.Bench.HookPack[hook]; i >= 0 && v.Bench.PackLeftML[i] < hintPackML {
				return true
			}
		}
	}
	return false
}
