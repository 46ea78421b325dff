package attempt

import "rouleau/sim"

// The quantities that are kept at every checkpoint: enough to say in plain words where two runs part. Units stand in the
// names.

type quantity struct {
	name string
	of   func(s *sim.State) float64
}

var quantities = [...]quantity{
	{"patient_shed_ml", func(s *sim.State) float64 { return s.Patient.ShedML }},
	{"patient_blood_ml", func(s *sim.State) float64 { return s.Patient.Blood.VolumeML() }},
	{"patient_hct", func(s *sim.State) float64 { return s.Patient.Blood.Hct() }},
	{"patient_heart_rate_per_min", func(s *sim.State) float64 { return s.Patient.HeartRate }},
	{"donor_units", func(s *sim.State) float64 { return float64(s.Patient.DonorUnits) }},
	{"pool_ml", func(s *sim.State) float64 { return s.Field.Pool.VolumeML() }},
	{"swabs_ml", func(s *sim.State) float64 { return s.Field.Swabs.VolumeML() }},
	{"floor_ml", func(s *sim.State) float64 { return s.Field.Floor.VolumeML() }},
	{"sucked_ml", func(s *sim.State) float64 { return s.Field.SuckedML }},
	{"drip_ml", func(s *sim.State) float64 { return s.Drip.DrippedML }},
	{"filter_activation", func(s *sim.State) float64 { return s.Filter.Activation }},
	{"filter_clot_ml", func(s *sim.State) float64 { return s.Filter.Clot.VolumeML() }},
	{"reservoir_ml", func(s *sim.State) float64 { return s.Reservoir.Blood.VolumeML() }},
	{"reservoir_hct", func(s *sim.State) float64 { return s.Reservoir.Blood.Hct() }},
	{"reservoir_clear_layer_ml", func(s *sim.State) float64 { return s.Reservoir.ClearML }},
	{"reservoir_clot_ml", func(s *sim.State) float64 { return s.Reservoir.Clot.VolumeML() }},
	{"bowl_cells_ml", func(s *sim.State) float64 { return s.Bowl.CellsML }},
	{"bowl_packing", func(s *sim.State) float64 { return s.Bowl.Packing }},
	{"bowl_clear_ml", func(s *sim.State) float64 { return s.Bowl.Clear.ML }},
	{"pump_flow_ml_min", func(s *sim.State) float64 { return s.Pump.FlowMLMin }},
	{"detector", func(s *sim.State) float64 { return s.Bowl.Detector.Mean() }},
	{"waste_ml", func(s *sim.State) float64 { return s.Waste.Bag.VolumeML() }},
	{"product_ml", func(s *sim.State) float64 {
		return bagged(s, func(b *sim.ProductBag) float64 { return b.Fluid.VolumeML() })
	}},
	{"product_cells_ml", func(s *sim.State) float64 {
		return bagged(s, func(b *sim.ProductBag) float64 { return b.Fluid.CellsML })
	}},
	{"given_ml", func(s *sim.State) float64 { return s.Giving.GivenML }},
	{"lysed_ml", func(s *sim.State) float64 { return s.Stores.LysedML }},
}

// bagged sums something over the product bags.
func bagged(s *sim.State, of func(b *sim.ProductBag) float64) float64 {
	sum := 0.0
	for i := range s.Bags {
		sum += of(&s.Bags[i])
	}
	return sum
}
