package sim

// Systemic anticoagulation around a pump that the patient is on for a while: its circuit, what is left in it, and whether
// blood meets enough anticoagulant before and after protamine.

const (
	pumpBloodMLMin = 400.0 // [A] how fast the blood of a pump's circuit runs in
	protectedBelow = 0.1   // [A] freedom to clot up to which blood counts as protected: about that at an ionised calcium of 0.34 mmol/L, just above where nothing clots ([S] James & Roche 2004: 0.33)
)

// goOnPump joins the patient to a circuit filled with ml of crystalloid: that goes in, and the mixture takes its place.
func (s *State) goOnPump(ml float64) {
	in := move(&s.Patient.Blood, &s.Stores.Infusion, ml)
	cells := s.Patient.Blood.CellsML
	move(&s.Stores.Circuit, &s.Patient.Blood, in)
	s.Patient.OnPumpCellsML += cells - s.Patient.Blood.CellsML
}

// pumpOffered says whether the blood of the pump stands ready to be taken.
func (s *State) pumpOffered() bool {
	t := &s.Team
	return t.PumpOfferTick > 0 && (s.Tick < t.PumpOfferEnds || t.PumpRuns) && s.Stores.Circuit.VolumeML() >= 1
}

func mayTakePump(c *Case, s *State, a Action) Reason {
	return first(unless(s.pumpOffered(), "no_pump_blood"), unless(!s.Team.PumpRuns, "pump_blood_runs"),
		unless(s.Bench.Opened[CollectionSet], "open_the_set_first"), unless(!s.Bench.TakenDown, "taken_down"))
}

// runPumpBlood lets the blood of the pump's circuit run in with what the sucker brings, while there is room for it.
func (s *State) runPumpBlood(c *Case, line *Fluid) {
	if !s.Team.PumpRuns {
		return
	}
	if s.Bench.TakenDown || s.Stores.Circuit.VolumeML() < 1 {
		s.Team.PumpRuns = false
		return
	}
	if s.Reservoir.Blood.VolumeML()+s.Reservoir.Clot.VolumeML() < c.Faults.ReservoirML {
		s.Field.PumpBloodML += move(line, &s.Stores.Circuit, pumpBloodMLMin/60*tickS)
	}
}

// countProtected counts shed blood by whether the newest of it, in the filter, is kept from clotting, and by circuit.
func (s *State) countProtected(bloodML float64) {
	if bloodML <= 0 {
		return
	}
	k := &s.Conduct
	protected := clottingOf(&s.Filter.Content.Liquid, 1) <= protectedBelow
	if protected {
		k.ProtectedML += bloodML
	}
	if s.Patient.ProtamineTick > 0 {
		k.AfterProtamineML += bloodML
		if protected {
			k.AfterProtectedML += bloodML
		}
	}
	if s.Giving.Joined {
		k.JoinedBloodML += bloodML
	}
}
