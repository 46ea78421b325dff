package sim

// What washed cells do not bring: plasma and platelets. An anaesthetist who is told in time orders them while the blood still
// clots; one who is not told orders them when the wound begins to ooze everywhere. Either way they take time to thaw.

const (
	tellFromML          = 500.0  // [A] washed blood given before which there is nothing to tell
	nextDoseML          = 1000.0 // washed blood that asks for another dose [S] Merkel et al.: from 1 to 2 L on
	oozesFromFactor     = 1.05   // [A] bleeding that an anaesthetist sees for want of clotting
	plasmaMLPerKg       = 15.0   // [M] a usual dose
	plasmaMLMin         = 60.0   // [A] how fast it runs in
	plasmaProteinGL     = 58.0   // [M]
	plasmaFibrinogenGL  = 2.5    // [M]
	plasmaCitrateMmolL  = 17.0   // [M] of the donor's bag, diluted
	plasmaCalciumMmolL  = 2.0    // [M]
	calciumWithMmolL    = 6.8    // the anaesthetist gives 10 mL of calcium chloride with each litre, against its citrate [P]
	plasmaPotassiumMmol = 3.8    // [M] per L
	plateletsInDoseG9   = 250.0  // 10^9, one adult dose with each dose of plasma [M]
	plateletDoseKg      = 70.0   // [A] for whom an adult dose is meant
	mostDoses           = 16
)

// Clotting is plasma and platelets on their way.
type Clotting struct {
	ToldTick int64   // when the anaesthetist was told, 0 for never
	ToldAtML float64 // washed blood that had been given then
	DueTick  int64   // when the ordered dose is thawed, 0 for none
	LeftML   float64 // of the dose that runs in
	Doses    int     // ordered so far
	AtML     float64 // washed blood that had been given at the last order
}

// plasmaDoseML is one dose for this patient.
func (p *PatientSpec) plasmaDoseML() float64 { return plasmaMLPerKg * p.WeightKg }

// donorPlasma is what the blood bank holds of plasma and platelets for a patient.
func donorPlasma(p *PatientSpec) Fluid {
	ml := float64(mostDoses * p.plasmaDoseML())
	f := Fluid{Liquid: Liquid{ML: ml}}
	f.In[Protein] = plasmaProteinGL * ml / 1000
	f.In[Fibrinogen] = plasmaFibrinogenGL * ml / 1000
	f.In[Citrate] = plasmaCitrateMmolL * ml / 1000
	f.In[Calcium] = (plasmaCalciumMmolL + calciumWithMmolL) * ml / 1000
	f.In[Potassium] = plasmaPotassiumMmol * ml / 1000
	f.In[Tonicity] = plasmaMOsmPerL * ml / 1000
	f.In[Platelets] = mostDoses * plateletsInDoseG9 * p.WeightKg / plateletDoseKg
	return f
}

// tellOfClotting answers the trainee who says that clotting is being thinned out.
func tellOfClotting(c *Case, s *State, h *Happened) {
	k := &s.Team.Clotting
	switch {
	case s.Giving.GivenML < tellFromML:
		h.sayValue(s.Tick, Anaesthetist, "clotting_later", s.Giving.GivenML)
		return
	case k.ToldTick == 0:
		k.ToldTick, k.ToldAtML = max(1, s.Tick), s.Giving.GivenML
	}
	h.sayValue(s.Tick, Anaesthetist, "reads_back_clotting", s.Giving.GivenML)
}

// clottingProducts orders plasma and platelets and lets them run in. A case without a time to thaw has none.
func clottingProducts(c *Case, s *State, h *Happened) {
	k, p := &s.Team.Clotting, &s.Patient
	if c.Patient.ThawTicks <= 0 {
		return
	}
	if k.LeftML > 0 {
		if k.LeftML -= move(&p.Blood, &s.Stores.Plasma, min(k.LeftML, plasmaMLMin/60*tickS)); k.LeftML < 1e-9 {
			k.LeftML = 0
		}
		return
	}
	if s.Tick%TicksPerSecond != 0 || s.Ended {
		return
	}
	oozes := p.BleedFactor >= oozesFromFactor
	switch {
	case k.DueTick > 0 && s.Tick >= k.DueTick:
		k.DueTick, k.LeftML = 0, c.Patient.plasmaDoseML()
		h.say(s.Tick, Anaesthetist, "gives_plasma")
	case k.DueTick > 0 || k.Doses >= mostDoses:
	case k.ToldTick > 0 && (k.Doses == 0 || s.Giving.GivenML-k.AtML >= nextDoseML):
		k.order(c, s)
	case k.ToldTick == 0 && oozes && k.Doses == 0:
		h.say(s.Tick, Anaesthetist, "oozes_everywhere")
		k.order(c, s)
	case oozes && k.Doses > 0:
		k.order(c, s)
	}
}

func (k *Clotting) order(c *Case, s *State) {
	k.DueTick, k.AtML = s.Tick+c.Patient.ThawTicks, s.Giving.GivenML
	k.Doses++
}
