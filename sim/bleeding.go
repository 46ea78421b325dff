package sim

// Bleeding, what dilution does to it, pulse and pressure, and the blood of others.

// bleedFactor is how much faster the patient bleeds for want of fibrinogen or platelets, or for heparin.
func bleedFactor(p *Patient) float64 {
	fibrinogen := clamp(1-p.Blood.PerL(Fibrinogen)/fibrinogenFloorGL, 0, 1)
	platelets := 0.0
	if v := p.Blood.VolumeML(); v > 0 {
		platelets = clamp(1-1000*p.Blood.In[Platelets]/v/plateletFloorG9L, 0, 1)
	}
	heparin := clamp(p.Blood.PerML(Heparin)-heparinBleedsAbove, 0, 1)
	return 1 + float64(bleedingRise*max(fibrinogen, platelets)) + float64(bleedingRise*heparin)
}

// bleed lets one tick of bleeding and irrigation reach pool, swabs and drapes.
func bleed(c *Case, s *State) {
	p, f := &s.Patient, &s.Field
	ph := phaseAt(c, s.Tick)
	if s.Tick%TicksPerSecond == 0 {
		p.BleedFactor = bleedFactor(p)
	}
	rate := ph.BleedMLMin * p.BleedFactor
	if s.Tick < s.Team.OozeUntil {
		rate = float64(rate * oozeFactor)
	}
	f.BleedMLMin = rate
	if ml := float64(rate / 60 * tickS); ml > 0 && p.Blood.VolumeML() > 500 {
		cells := p.Blood.CellsML
		toSwabs, toDrapes := float64(ml*ph.SwabShare), float64(ml*ph.DrapeShare)
		move(&f.Swabs, &p.Blood, toSwabs)
		move(&f.Drapes, &p.Blood, toDrapes)
		toPool := ml - toSwabs - toDrapes
		pooled := f.Pool.CellsML
		move(&f.Pool, &p.Blood, toPool)
		f.LysedShare = joinedShare(f.LysedShare, pooled, 0, f.Pool.CellsML-pooled)
		lyse(&f.Pool, float64(ph.LysedShare*(f.Pool.CellsML-pooled)), &s.Stores.LysedML)
		f.BloodML += toPool
		p.ShedML += ml
		p.ShedCellsML += cells - p.Blood.CellsML
		contaminate(c, s, ph, toPool)
	}
	f.IrrigationRateMLMin = 0
	if ph.IrrigationMLMin > 0 && !s.Team.IrrigationHeld {
		f.IrrigationRateMLMin = ph.IrrigationMLMin
		f.IrrigationML += move(&f.Pool, &s.Stores.Irrigation[ph.Irrigation], ph.IrrigationMLMin/60*tickS)
	}
	if ph.BodyFluidMLMin > 0 {
		f.BodyFluidML += move(&f.Pool, &s.Stores.BodyFluid, ph.BodyFluidMLMin/60*tickS)
	}
	lyseOsmotic(&f.Pool, &f.LysedShare, &s.Stores.LysedML, tickS)
}

// contaminate lets what the phase and the agents in use bring come into the pool with ml of blood.
func contaminate(c *Case, s *State, ph *Phase, ml float64) {
	for i := range c.Contaminants {
		spec := &c.Contaminants[i]
		perML := ph.ContaminantPerML[i]
		if s.Field.Agent[i] {
			perML = max(perML, spec.AgentPerML)
		}
		if perML <= 0 {
			continue
		}
		amount := float64(perML * ml)
		bound := float64(amount * spec.BoundShare)
		pool, source := &s.Field.Pool, &s.Stores.Syringe
		pool.Bound[i] += bound
		source.Bound[i] -= bound
		pool.In[int(Dissolved0)+i] += amount - bound
		source.In[int(Dissolved0)+i] -= amount - bound
	}
	if fat := float64(ph.FatMLPerML * ml); fat > 0 {
		s.Field.Pool.In[Fat] += fat
		s.Stores.Syringe.In[Fat] -= fat
	}
}

// phaseAt is the phase of the operation at a tick.
func phaseAt(c *Case, tick int64) *Phase {
	i := len(c.Phases) - 1
	for i > 0 && c.Phases[i].StartTick > tick {
		i--
	}
	return &c.Phases[i]
}

// Classes of blood loss by share of the blood volume, with the heart rate that goes with them [M] ATLS manual, 10th ed.;
// under anaesthesia the answer is blunted [A].
const (
	anaesthesiaBlunting = 0.6 // [A]
	rhythmPotassium     = 6.5 // mmol/L above which the heart slows [M]
	rhythmCalcium       = 0.9 // mmol/L ionised below which pressure falls [M]
)

// vitals sets heart rate and mean pressure from the deficit, ionised calcium, potassium and a reaction. They inform; they
// are not scored.
func vitals(c *Case, p *Patient) {
	lost := clamp(1-p.Blood.VolumeML()/c.Patient.BloodVolumeML, 0, 0.6)
	rise := 0.0
	switch {
	case lost < 0.15:
		rise = float64(lost / 0.15 * 15)
	case lost < 0.30:
		rise = 15 + float64((lost-0.15)/0.15*25)
	default:
		rise = 40 + float64(min(1, (lost-0.30)/0.10)*30)
	}
	fall := float64(max(0, lost-0.10) * 120)
	if p.Reaction {
		rise, fall = rise+25, fall+20
	}
	if ca := p.IonisedCalcium(); ca < rhythmCalcium {
		fall += float64((rhythmCalcium - ca) * 60)
	}
	if k := p.Blood.PerL(Potassium); k > rhythmPotassium {
		rise -= float64((k - rhythmPotassium) * 20) // the heart slows
		fall += float64((k - rhythmPotassium) * 15)
	}
	p.HeartRate = c.Patient.HeartRate + float64(anaesthesiaBlunting*rise)
	p.PressureMmHg = max(20, c.Patient.MeanPressureMmHg-fall)
}

// IonisedCalcium of the patient's plasma, mmol/L.
func (p *Patient) IonisedCalcium() float64 {
	return IonisedCalcium(p.Blood.PerL(Calcium), p.Blood.PerL(Citrate), p.Blood.PerL(Protein))
}

// HaemoglobinuriaGL is free plasma haemoglobin beyond what haptoglobin binds, g/L of plasma.
func (p *Patient) HaemoglobinuriaGL() float64 { return max(0, p.Blood.PerL(FreeHb)-haptoglobinGL) }

// donorBlood lets the anaesthetist order and give donor cells: below the trigger, when no washed blood is offered within
// the scenario's patience.
func donorBlood(c *Case, s *State, h *Happened) {
	p := &s.Patient
	if p.DonorLeftML > 0 {
		p.DonorLeftML -= move(&p.Blood, &s.Stores.Donor, min(p.DonorLeftML, donorMLMin/60*tickS))
		if p.DonorLeftML < 1e-9 {
			p.DonorLeftML = 0
		}
		return
	}
	if c.Patient.DonorRefused || s.Tick%TicksPerSecond != 0 {
		return
	}
	if p.Blood.HbGPerDL() >= c.Patient.TransfusionHbGDL {
		p.DonorWantedTick = -1
		return
	}
	if s.washedBloodOffered(c.Patient.PatienceTicks) {
		p.DonorWantedTick = s.Tick
		return
	}
	if p.DonorWantedTick < 0 {
		p.DonorWantedTick = s.Tick
		h.say(s.Tick, Anaesthetist, "wants_blood")
	}
	if s.Tick-p.DonorWantedTick >= c.Patient.PatienceTicks {
		p.DonorUnits++
		p.DonorLeftML = donorUnitML
		p.DonorWantedTick = s.Tick + Ticks(60*donorUnitML/donorMLMin)
		h.say(s.Tick, Anaesthetist, "gives_donor_unit")
	}
}
