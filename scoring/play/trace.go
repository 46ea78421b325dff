package play

import "rouleau/sim"

// The trace: what is kept of every second for judging, charts and debriefs.

// Sample is the state of affairs at one second, truth included.
type Sample struct {
	Tick             int64
	BleedMLMin       float64
	PoolML           float64
	SuckMLMin        float64 // whole liquid to the reservoir
	SuckedML         float64 // so far, to the reservoir
	SuckedBloodML    float64 // shed blood in it so far
	ToReservoir      bool
	VacuumMmHg       float64
	DropsMin         float64
	DripML           float64 // so far, prime not counted
	PrimedML         float64
	ReservoirML      float64
	ReservoirHct     float64
	ClearML          float64
	FilterClotML     float64
	ReservoirClotML  float64
	FilterActivation float64
	FillFraction     float64 // true B/V
	Detector         float64
	PumpMode         sim.PumpMode
	FlowMLMin        float64
	ProductML        float64 // in all bags now
	WasteML          float64
	GivenML          float64
	GiveMLMin        float64
	HbGDL            float64
	Hct              float64
	BloodVolumeML    float64
	ShedML           float64
	HeartRate        float64
	PressureMmHg     float64
	DonorUnits       int
	LysedML          float64
}

func sampleOf(c *sim.Case, s *sim.State) Sample {
	product := 0.0
	for i := range s.Bags[:s.BagsUsed] {
		product += s.Bags[i].Fluid.VolumeML()
	}
	p, f, r := &s.Patient, &s.Field, &s.Reservoir
	return Sample{Tick: s.Tick, BleedMLMin: f.BleedMLMin, PoolML: f.Pool.VolumeML(), SuckMLMin: f.SuckRateMLMin, SuckedML: f.SuckedML,
		SuckedBloodML: f.SuckedBloodML, ToReservoir: s.Team.Route == sim.ToReservoir, VacuumMmHg: s.VacuumMmHg(c), DropsMin: s.Drip.DropsMin,
		DripML: s.Drip.DrippedML, PrimedML: s.Drip.PrimedML, ReservoirML: r.Blood.VolumeML(), ReservoirHct: r.Blood.Hct(), ClearML: r.ClearML,
		FilterClotML: s.Filter.Clot.VolumeML(), ReservoirClotML: r.Clot.VolumeML(), FilterActivation: s.Filter.Activation,
		FillFraction: s.Bowl.FillFraction(), Detector: s.Bowl.Detector.Mean(), PumpMode: s.Pump.Mode, FlowMLMin: s.Pump.FlowMLMin,
		ProductML: product, WasteML: s.Waste.Bag.VolumeML(), GivenML: s.Giving.GivenML,
		GiveMLMin: s.Giving.FlowMLMin, HbGDL: p.Blood.HbGPerDL(), Hct: p.Blood.Hct(), BloodVolumeML: p.Blood.VolumeML(), ShedML: p.ShedML,
		HeartRate: p.HeartRate, PressureMmHg: p.PressureMmHg, DonorUnits: p.DonorUnits, LysedML: s.Stores.LysedML}
}
