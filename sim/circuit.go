package sim

// A circuit that stays connected: some patients take their own blood back only from a circuit that is never apart from them.
// A line filled with saline joins the product bag to the patient before any blood is in it, and stays.

func mayJoin(c *Case, s *State, a Action) Reason {
	return first(unless(s.Bench.Opened[ProcessingSet], "open_the_set_first"), unless(!s.Bench.TakenDown, "taken_down"),
		unless(s.productBag() != nil, "no_product_bag"), unless(!s.Giving.Joined, "circuit_is_joined"),
		unless(s.Giving.Bag < 0 && s.Giving.Pack < 0, "another_bag_is_connected"), unless(s.Pump.Mode == PumpIdle, "stop_the_pump_first"))
}

func joinCircuit(c *Case, s *State, a Action, h *Happened) {
	g := &s.Giving
	moveAll(&s.Waste.Removed, &g.Caught)
	g.Bag, g.Pack, g.RateMLMin, g.Squeezing = int8(s.BagsUsed-1), -1, 0, false
	g.Filter, g.Joined = a.Value == 1, true
}

// partCircuit notes that a joined circuit comes apart, whatever parts it.
func (s *State) partCircuit() {
	if s.Giving.Joined {
		s.Giving.Joined = false
		s.Conduct.Partings++
	}
}

// watchCircuit counts what is collected with the circuit joined, and marks product that has been apart from the patient.
func (s *State) watchCircuit(c *Case) {
	if !c.Patient.CircuitAsked {
		return
	}
	for i := range s.Bags[:s.BagsUsed] {
		b := &s.Bags[i]
		b.Parted = b.Parted || b.Fluid.VolumeML() > 0 && !(s.Giving.Joined && int(s.Giving.Bag) == i)
	}
}
