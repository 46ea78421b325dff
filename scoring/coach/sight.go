// Package coach helps a trainee in practice: it tells which situations are the case from what a person at the bench can see,
// leads through the steps of a guided lesson, and can play a lesson as literally as it is written. It is deterministic, so
// that window and command line say the same at the same tick. This file holds what it looks at.
package coach

import (
	"math"

	"rouleau/scenarios"
	"rouleau/sim"
)

// Sight is what a trainee can see, with what a glance back adds to it.
type Sight struct {
	Seen        *sim.Seen
	DripPer100  float64 // mL of anticoagulant for each 100 mL of blood lately; not a number where too little came
	UnwatchedS  float64 // since somebody last looked at the patient
	ReservoirML float64 // what the reservoir holds when full
}

// Value reads something by its name of scenarios.Visibles; not a number where there is nothing to read.
func (s *Sight) Value(name string) float64 {
	v := s.Seen
	p := &v.Pump
	switch name {
	case "pool_ml":
		return v.PoolML
	case "swabs_ml":
		return v.SwabsML
	case "bleeding_ml_min":
		return v.BriskMLMin
	case "anticoagulant_left_ml":
		return s.left(sim.AnticoagulantHook)
	case "wash_left_ml":
		return s.left(sim.WashHookA, sim.WashHookB)
	case "detector":
		return p.Detector
	case "bed_by_eye":
		return p.BedByEye
	case "bowl_ml":
		return p.HeldML
	case "bowl_spins":
		return yesNo(p.Spinning || p.Braking)
	case "fed_ml":
		return p.FedML
	case "washed_ml":
		return p.WashedML
	case "effluent_red":
		return p.EffluentRed
	case "effluent_ml_min":
		return p.EffluentMLMin
	case "waste_ml":
		return v.WasteML
	}
	return s.collected(name)
}

// collected are the readings of reservoir, drip and vacuum.
func (s *Sight) collected(name string) float64 {
	v := s.Seen
	switch name {
	case "reservoir_ml":
		return v.ReservoirML
	case "clear_ml":
		return v.ClearML
	case "clear_share":
		if v.ReservoirML <= 0 {
			return 0
		}
		return v.ClearML / v.ReservoirML
	case "clot_ml":
		return v.ClotML
	case "taken_in_ml":
		return v.TakenInML
	case "filling_ml_min":
		return v.FillingMLMin
	case "primed_ml":
		return v.PrimedML
	case "drip_ml":
		return v.DripML
	case "drops_min":
		return v.DropsMin
	case "drip_per_100_ml":
		return s.DripPer100
	case "vacuum_mmhg":
		return v.VacuumMmHg
	}
	return s.given(name)
}

// given are the readings of bags and patient.
func (s *Sight) given(name string) float64 {
	v := s.Seen
	switch name {
	case "bag_ml", "bag_air_ml":
		if v.BagsUsed == 0 {
			return 0
		}
		if name == "bag_ml" {
			return v.Bags[v.BagsUsed-1].ML
		}
		return v.Bags[v.BagsUsed-1].AirML
	case "clinician_here":
		return yesNo(v.ClinicianHere)
	case "giving_ml_min":
		return v.Giving.FlowMLMin
	case "given_ml":
		return v.Giving.GivenML
	case "heart_rate":
		return v.HeartRate
	case "pressure_mmhg":
		return v.PressureMmHg
	}
	return s.sampled(name)
}

// sampled are the readings of the newest sample that the laboratory has answered.
func (s *Sight) sampled(name string) float64 {
	v := s.Seen
	answered, newest := 0, -1
	for i := range v.Samples[:v.SampleCount] {
		if v.Samples[i].Told {
			answered, newest = answered+1, i
		}
	}
	switch {
	case name == "samples_answered":
		return float64(answered)
	case newest < 0:
		return math.NaN()
	}
	sample := &v.Samples[newest]
	switch name {
	case "sample_hct":
		return sample.Hct
	case "sample_heparin_iu_ml":
		return sample.HeparinIUPerML
	case "sample_protein_g_l":
		return sample.ProteinGL
	case "sample_free_hb_g_l":
		return sample.FreeHbGL
	case "sample_calcium_mmol_l":
		return sample.IonisedCalcium
	}
	return math.NaN()
}

// left is what hooks have left between them.
func (s *Sight) left(hooks ...sim.Part) float64 {
	sum := 0.0
	for _, h := range hooks {
		if i := s.Seen.Bench.HookPack[h]; i >= 0 {
			sum += s.Seen.Bench.PackLeftML[i]
		}
	}
	return sum
}

func yesNo(is bool) float64 {
	if is {
		return 1
	}
	return 0
}

// reads says whether a reading has come to what is waited for.
func (s *Sight) reads(u *scenarios.UntilReads) bool {
	x := s.Value(u.What)
	return (u.AtLeast != nil || u.AtMost != nil) && (u.AtLeast == nil || x >= *u.AtLeast) && (u.AtMost == nil || x <= *u.AtMost)
}
