package sim

// What follows for an RhD-negative mother: red cells of the child stay with her own through washing and come back to her, so
// she needs anti-D, and a test of how much of the child's blood she has ([M] national obstetric guidance). The test tells only
// once washed blood has run in.

// askAfterBirth answers a request for anti-D or for the test.
func askAfterBirth(c *Case, s *State, r Request, h *Happened) {
	t, tick := &s.Team, max(1, s.Tick)
	switch {
	case !c.Patient.RhDNegative:
		h.say(s.Tick, Anaesthetist, "is_not_negative")
	case r == GiveAntiD:
		if t.AntiDTick == 0 {
			t.AntiDTick = tick
		}
		h.say(s.Tick, Anaesthetist, "reads_back_anti_d")
	case s.Giving.GivenML < 1:
		h.say(s.Tick, Anaesthetist, "test_comes_later")
	default:
		if t.FetalTestTick == 0 {
			t.FetalTestTick = tick
		}
		h.say(s.Tick, Anaesthetist, "reads_back_test")
	}
}
