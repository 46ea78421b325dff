package sim

// The decision about salvage as it is talked over with the team, and what speaks against the bench before anything has run.

// decideTogether lets surgeon and anaesthetist say what they think of collecting here.
func decideTogether(c *Case, s *State, h *Happened) {
	s.Team.Together = true
	if c.TogetherLine > 0 {
		h.add(Occurrence{Tick: s.Tick, Kind: Said, Who: Surgeon, Line: c.TogetherLine - 1})
		return
	}
	h.say(s.Tick, Surgeon, "leaves_it_to_the_sheet")
}

// tellReason lets the anaesthetist read back why nothing is collected, or what must be kept away.
func tellReason(s *State, r Request, h *Happened) {
	s.Team.ReasonTold = true
	switch r {
	case PatientDeclines:
		h.say(s.Tick, Anaesthetist, "reads_back_patient_declines")
	case InfectedField:
		h.say(s.Tick, Anaesthetist, "reads_back_infected_field")
	case NoHeparin:
		h.say(s.Tick, Anaesthetist, "reads_back_no_heparin")
	}
}

// WrongOn says whether a pack must not hang on a hook: past its date, of the wrong kind, or heparin where that is forbidden.
func (c *Case) WrongOn(pack int, hook Part) bool {
	p := &c.Packs[pack]
	switch {
	case p.Expired:
		return true
	case hook != AnticoagulantHook:
		return !p.Solution.FitToWash()
	}
	return !p.Solution.Anticoagulant() || p.Solution == HeparinSolution && c.Patient.HeparinForbidden
}

// findings notes what was wrong with the bench before the case, so that telling of it is no false alarm.
func (k *Conduct) findings(c *Case) {
	for i := range c.Packs {
		if hook := c.Packs[i].On; hook.isHook() && c.WrongOn(i, hook) {
			k.Cause[IncidentWrongFluid] = true
		}
	}
	if c.Faults.NoVacuum {
		k.Cause[IncidentEquipment] = true
	}
}
