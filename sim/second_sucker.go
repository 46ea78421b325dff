package sim

// A second sucker on the theatre's own suction: where it is the custom of a hospital, the surgeon takes with it what must not
// be collected, and the salvage line stays out of the wound meanwhile.

// changeSucker lets the surgeon take up the second sucker while something that must be diverted is in the wound, and go back
// to the first one when the field is clear.
func changeSucker(c *Case, s *State, h *Happened) {
	t := &s.Team
	if !t.SecondSucker {
		return
	}
	about := s.agentAbout(c)
	switch {
	case about && !t.SecondInUse:
		t.SecondInUse = true
		h.say(s.Tick, Surgeon, "takes_second")
	case !about && t.SecondInUse:
		t.SecondInUse, t.AgentSaid, t.FieldClear = false, false, true
		h.say(s.Tick, Surgeon, "back_to_first")
	}
}

const bodyFluidPotassium = 4.0 // mmol/L [M] as in plasma

// bodyFluid is ml of a liquid of the body that is not blood, as salty as plasma [A].
func bodyFluid(ml float64) Fluid {
	f := Fluid{Liquid: Liquid{ML: ml}}
	f.In[Tonicity] = plasmaMOsmPerL * ml / 1000
	f.In[Potassium] = bodyFluidPotassium * ml / 1000
	return f
}
