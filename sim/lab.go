package sim

// Samples and the laboratory: an answer takes minutes, and is only as good as the sample.

const (
	sampleML       = 2.0  // [A]
	labHctError    = 0.01 // sd of a measured haematocrit [A]
	labSmallError  = 0.03 // relative sd of the other values [A]
	labHeparinStep = 0.05 // [A] IU/mL, the least that is reported
)

// Sampled is one sample and its answer.
type Sampled struct {
	Of             Part
	TakenTick      int64
	ReadyTick      int64
	Told           bool
	Mixed          bool
	Hct            float64
	HbGDL          float64
	FreeHbGL       float64 // of the supernatant
	PotassiumMmolL float64
	ProteinGL      float64
	HeparinIUPerML float64
	IonisedCalcium float64
}

// Lab holds the samples.
type Lab struct {
	Samples [MaxSamples]Sampled
	Count   int
}

// takeSample takes a little of src and measures it; mixed is false for a bag that had settled.
func (s *State) takeSample(c *Case, part Part, src *Fluid, mixed bool) {
	sm := &s.Lab.Samples[s.Lab.Count]
	s.Lab.Count++
	hct := src.Hct()
	if !mixed {
		hct = min(packingLimit, hct*unmixedSample)
	}
	err := func(v float64) float64 { return v * max(0, 1+float64(labSmallError*s.normal())) }
	*sm = Sampled{Of: part, TakenTick: s.Tick, ReadyTick: s.Tick + c.Faults.LabTicks, Mixed: mixed}
	sm.Hct = clamp(hct+float64(labHctError*s.normal()), 0, 1)
	scale := 1.0
	if h := src.Hct(); h > 0 {
		scale = sm.Hct / h
	}
	sm.HbGDL = src.HbGPerDL() * scale
	sm.FreeHbGL = err(src.PerL(FreeHb))
	sm.PotassiumMmolL = err(src.PerL(Potassium))
	sm.ProteinGL = err(src.PerL(Protein))
	sm.HeparinIUPerML = err(src.PerML(Heparin))
	if sm.HeparinIUPerML < labHeparinStep {
		sm.HeparinIUPerML = 0
	}
	sm.IonisedCalcium = err(IonisedCalcium(src.PerL(Calcium), src.PerL(Citrate), src.PerL(Protein)))
	move(&s.Stores.Samples, src, sampleML)
}

// laboratory reports what is ready, and the anaesthetist takes gases of the patient.
func laboratory(c *Case, s *State, h *Happened) {
	for i := range s.Lab.Samples[:s.Lab.Count] {
		sm := &s.Lab.Samples[i]
		if !sm.Told && s.Tick >= sm.ReadyTick {
			sm.Told = true
			h.add(Occurrence{Tick: s.Tick, Kind: Said, Who: Laboratory, Key: "sample_ready", Line: -1, Value: sm.Hct, Act: Action{On: sm.Of}})
		}
	}
	observe(s, h)
	p := &s.Patient
	if s.Tick >= p.NextGasTick {
		p.NextGasTick = s.Tick + gasEveryTicks
		p.LastGas = Gas{Tick: s.Tick,
			HbGDL:          p.Blood.HbGPerDL() + float64(0.15*s.normal()),
			Hct:            clamp(p.Blood.Hct()+float64(0.005*s.normal()), 0, 1),
			IonisedCalcium: p.IonisedCalcium(), PotassiumMmolL: p.Blood.PerL(Potassium)}
		h.sayValue(s.Tick, Anaesthetist, "gas", p.LastGas.HbGDL)
	}
}

// observe lets the anaesthetist say, once each, what returned potassium, citrate and free haemoglobin do to the patient.
func observe(s *State, h *Happened) {
	if s.Tick%TicksPerSecond != 0 {
		return
	}
	p := &s.Patient
	for i, sign := range [...]struct {
		there bool
		key   string
	}{
		{p.HaemoglobinuriaGL() > 0, "urine_is_dark"},
		{p.Blood.PerL(Potassium) > rhythmPotassium, "rhythm_changes"},
		{p.IonisedCalcium() < rhythmCalcium, "calcium_is_low"},
	} {
		if bit := uint8(1) << i; sign.there && p.Told&bit == 0 {
			p.Told |= bit
			h.say(s.Tick, Anaesthetist, sign.key)
		}
	}
}
