package sim

// Topping up: a bowl that was part-filled for want of blood is filled to the interface with washed cells from the product
// bag, and everything in it is washed together.

func mayTopUp(c *Case, s *State, a Action) Reason {
	bag := s.productBag()
	why := first(ready(s), unless(s.Bowl.BrakeUntil == 0, "bowl_is_braking"), unless(bag != nil, "no_product_bag"))
	if why != "" {
		return why
	}
	cy := s.cycle()
	return first(unless(cy != nil && cy.DoneTick == 0 && s.Bowl.CellsML > 1, "fill_the_bowl_first"), unless(!s.washedAlready(), "empty_the_bowl_first"),
		unless(bag.Fluid.VolumeML() > 1, "bag_is_empty"), s.offPatient(s.BagsUsed-1))
}

func topUp(c *Case, s *State, a Action, h *Happened) {
	cy := s.cycle()
	cy.Reprocessed, cy.StopTick = true, 0
	s.Pump.DrawBag = int8(s.BagsUsed - 1)
	s.Pump.Mode = PumpTopUp
	s.Bowl.Spinning = true
}

// pumpTopUp draws from the product bag into the spinning bowl, as a fill draws from the reservoir.
func pumpTopUp(s *State, h *Happened) {
	p, bag := &s.Pump, &s.Bags[s.Pump.DrawBag]
	before := bag.Fluid.VolumeML()
	if before <= 1e-9 {
		stopPump(s)
		h.act(s.Tick, "bag_drawn_empty", s.Bowl.ContentsML())
		turn(s, &Fluid{}, flowNone)
		return
	}
	var in Fluid
	ml := move(&in, &bag.Fluid, p.FillMLMin/60*tickS)
	s.drawnBack(bag, ml/before, ml/bag.CameML)
	bag.CameML -= ml
	p.FlowMLMin = ml / tickS * 60
	cy := s.cycle()
	cy.FillMLMin = max(cy.FillMLMin, p.FillMLMin)
	turn(s, &in, flowFeed)
}
