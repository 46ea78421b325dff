package sim

// The filter, the reservoir and the patient on their own, through the same steps as in a case. They serve `rouleau calc` and
// the checks against reference values.

// FilterTrial feeds the filter steadily with blood and a drip.
type FilterTrial struct {
	BloodMLMin, Hct, ProteinGL, CalciumMmolL float64
	DropsMin                                 float64
	Agent                                    Solution
	Primed                                   bool
	Minutes                                  float64
}

// FilterResult describes the filter's content.
type FilterResult struct{ Hct, ProteinGL, HeparinIUPerML, CitrateMmolL, Activation, ClotML float64 }

func plainBlood(ml, hct, protein, calcium, heparinIUPerML, citrate float64) Fluid {
	cells := float64(ml * hct)
	f := Fluid{CellsML: cells, Liquid: Liquid{ML: ml - cells}}
	l := f.ML / 1000
	f.In[Protein] = protein * l
	f.In[Calcium] = calcium * l
	f.In[Heparin] = heparinIUPerML * f.ML
	f.In[Citrate] = citrate * l
	f.In[Tonicity] = plasmaMOsmPerL * l
	return f
}

// TryFilter runs a trial with steps of one tick.
func TryFilter(t FilterTrial) FilterResult {
	var f Filter
	missing := 0.0 // of the drip, until its line is full
	if t.Primed {
		f.Content = t.Agent.Of(filterML)
	} else {
		f.Content = plainBlood(filterML, t.Hct, t.ProteinGL, t.CalciumMmolL, 0, 0)
		missing = dripLineML
	}
	for range Ticks(60 * t.Minutes) {
		in := plainBlood(float64(t.BloodMLMin/60*tickS), t.Hct, t.ProteinGL, t.CalciumMmolL, 0, 0)
		drop := float64(t.DropsMin / dropsPerML / 60 * tickS)
		if missing > 0 {
			missing -= drop
			drop = max(0, -missing)
		}
		agent := t.Agent.Of(drop)
		moveAll(&in, &agent)
		var out Fluid
		stepFilter(&f, &in, &out, 0, tickS)
	}
	c := &f.Content
	return FilterResult{c.Hct(), c.PerL(Protein), c.PerML(Heparin), c.PerL(Citrate), f.Activation, f.Clot.VolumeML()}
}

// ReservoirTrial lets a mixed reservoir stand, or fill, for a while.
type ReservoirTrial struct {
	VolumeML, Hct, ProteinGL, HeparinIUPerML, CitrateMmolL, CalciumMmolL float64
	ESRMMPerH, Seconds, InflowMLMin, InflowActivation                    float64
	MixAtS                                                               []float64
}

// ReservoirResult describes it after that.
type ReservoirResult struct {
	VolumeML, ClearML, OutletHct, Activation, ClotML, OutletMLMin, IonisedCalcium float64
}

// TryReservoir runs a trial with steps of one tick.
func TryReservoir(t ReservoirTrial) ReservoirResult {
	blood := func(ml float64) Fluid {
		return plainBlood(ml, t.Hct, t.ProteinGL, t.CalciumMmolL, t.HeparinIUPerML, t.CitrateMmolL)
	}
	r := Reservoir{Blood: blood(t.VolumeML)}
	for tick := range Ticks(t.Seconds) {
		mixing := false
		for _, at := range t.MixAtS {
			mixing = mixing || tick >= Ticks(at) && tick < Ticks(at+mixTimeS)
		}
		in := blood(float64(t.InflowMLMin / 60 * tickS))
		stepReservoir(&r, &in, t.InflowActivation, t.ESRMMPerH, tickS, mixing)
	}
	b := &r.Blood
	return ReservoirResult{b.VolumeML(), r.ClearML, r.OutletHct(), r.Activation, r.Clot.VolumeML(),
		outletLimitMLMin(r.Clot.VolumeML()), IonisedCalcium(b.PerL(Calcium), b.PerL(Citrate), b.PerL(Protein))}
}

// PatientTrial bleeds a patient steadily.
type PatientTrial struct {
	BloodVolumeML, Hct, Minutes, BleedMLMin float64
	Replacement                             string // none, colloid or crystalloid
}

// PatientResult describes the patient after that.
type PatientResult struct{ Hct, BloodVolumeML, InterstitialExcessML, ProteinGL, InfusedML, UrineML float64 }

// TryPatient runs a trial with steps of one tick.
func TryPatient(t PatientTrial) PatientResult {
	p := Patient{Blood: plainBlood(t.BloodVolumeML, t.Hct, normalProteinGPerL, 2.4, 0, 0)}
	p.InterstitialStartML = 15000
	p.Interstitium.ML = p.InterstitialStartML
	store := Saline.Of(100000)
	full := store.ML
	var shed Fluid
	for range Ticks(60 * t.Minutes) {
		move(&shed, &p.Blood, t.BleedMLMin/60*tickS)
		rate := 0.0
		switch t.Replacement {
		case "colloid":
			rate = t.BleedMLMin
		case "crystalloid":
			rate = crystalloidMLMin(p.Blood.VolumeML(), t.BloodVolumeML)
		}
		stepPatient(&p, &store, t.BloodVolumeML, rate, tickS, t.Replacement != "colloid")
	}
	return PatientResult{p.Blood.Hct(), p.Blood.VolumeML(), p.Interstitium.ML - p.InterstitialStartML, p.Blood.PerL(Protein),
		full - store.ML, p.Urine.VolumeML()}
}
