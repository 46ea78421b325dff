package sim

// Processing: rates, filling, washing, emptying, automatic steps, waste and lines.

func setting(least, most float64, set func(p *Pump, v float64)) rule {
	return rule{least: least, most: most, do: func(c *Case, s *State, a Action, h *Happened) { set(&s.Pump, a.Value) }}
}

func toggle(allowed func(r *Rules) bool, set func(p *Pump, on bool)) rule {
	return rule{least: 0, most: 1, whole: true,
		may: func(c *Case, s *State, a Action) Reason {
			return unless(allowed(&c.Rules) || a.Value == 0, "not_allowed_here")
		},
		do: func(c *Case, s *State, a Action, h *Happened) { set(&s.Pump, a.Value == 1) }}
}

func processRules() {
	rules[SetFillRate] = setting(pumpLeastMLMin, pumpMostMLMin, func(p *Pump, v float64) { p.FillMLMin = v })
	rules[SetWashRate] = setting(pumpLeastMLMin, pumpMostMLMin, func(p *Pump, v float64) { p.WashMLMin = v })
	rules[SetEmptyRate] = setting(pumpLeastMLMin, pumpMostMLMin, func(p *Pump, v float64) { p.EmptyMLMin = v })
	rules[SetWashVolume] = setting(0, 5000, func(p *Pump, v float64) { p.WashML = v })
	rules[AutoFillAt] = rule{least: 0, most: 3000,
		may: func(c *Case, s *State, a Action) Reason {
			return unless(c.Rules.AutoFill || a.Value == 0, "not_allowed_here")
		},
		do: func(c *Case, s *State, a Action, h *Happened) { s.Pump.AutoFillML = a.Value }}
	rules[AutoStop] = toggle(func(r *Rules) bool { return r.AutoStop }, func(p *Pump, on bool) { p.AutoStop = on })
	rules[AutoWash] = toggle(func(r *Rules) bool { return r.AutoWash }, func(p *Pump, on bool) { p.AutoWash = on })
	rules[AutoEmpty] = toggle(func(r *Rules) bool { return r.AutoEmpty }, func(p *Pump, on bool) { p.AutoEmpty = on })
	rules[Fill] = rule{may: mayFill, do: fill}
	rules[Wash] = rule{may: mayWash, do: wash}
	rules[Empty] = rule{may: mayEmpty, do: func(c *Case, s *State, a Action, h *Happened) {
		s.Pump.Mode = PumpEmpty
	}}
	rules[DrawBack] = rule{may: mayDrawBack, do: drawBack}
	rules[TopUp] = rule{may: mayTopUp, do: topUp}
	rules[SendBack] = rule{
		may: func(c *Case, s *State, a Action) Reason {
			return first(ready(s), unless(!s.Bowl.Spinning, "bowl_is_spinning"), unless(s.Bowl.BrakeUntil == 0, "bowl_is_braking"),
				unless(s.Bowl.ContentsML() > residualML+0.5, "bowl_is_empty"), unless(s.Bench.Connected[OutletLine], "connect_outlet_line_first"),
				unless(s.Bench.Open[OutletClamp], "open_outlet_clamp_first"),
				unless(s.Reservoir.Blood.VolumeML()+s.Bowl.ContentsML() < c.Faults.ReservoirML, "reservoir_is_full"))
		},
		do: func(c *Case, s *State, a Action, h *Happened) { s.Pump.Mode = PumpSendBack }}
	rules[StopPump] = rule{
		may: func(c *Case, s *State, a Action) Reason { return unless(s.Pump.Mode != PumpIdle, "pump_stands") },
		do: func(c *Case, s *State, a Action, h *Happened) {
			stopPump(s)
			if !a.Auto {
				s.Pump.PutOffTick = s.Tick + Ticks(byHandPauseS)
			}
		}}
	rules[StopAll] = rule{
		may: func(c *Case, s *State, a Action) Reason {
			return unless(s.Pump.Mode != PumpIdle || s.Bowl.Spinning, "everything_stands")
		},
		do: func(c *Case, s *State, a Action, h *Happened) {
			stopPump(s)
			stopBowl(s)
			if !a.Auto {
				s.Pump.PutOffTick = s.Tick + Ticks(byHandPauseS)
			}
		}}
	rules[ChangeWaste] = rule{handsS: 15,
		may: func(c *Case, s *State, a Action) Reason {
			return first(unless(s.Bench.Opened[ProcessingSet], "open_the_set_first"), unless(s.Pump.Mode == PumpIdle, "stop_the_pump_first"))
		},
		do: func(c *Case, s *State, a Action, h *Happened) {
			s.Waste.CarriedAwayML += s.Waste.Bag.VolumeML()
			moveAll(&s.Waste.Removed, &s.Waste.Bag)
		}}
	rules[ClearLine] = rule{handsS: 10,
		may: func(c *Case, s *State, a Action) Reason {
			return first(unless(s.Bench.Opened[ProcessingSet], "open_the_set_first"), unless(s.Pump.Mode == PumpIdle, "stop_the_pump_first"),
				unless(!s.Bench.TakenDown, "taken_down"), s.offPatient(s.BagsUsed-1))
		},
		do: func(c *Case, s *State, a Action, h *Happened) {
			s.Bowl.AirML = 0
			if bag := s.productBag(); bag != nil {
				bagIn(s, bag, s.Pump.LineFlaws.take(1), &s.Pump.Line)
			}
		}}
}

// ready gives what stands in the way of any use of the pump.
func ready(s *State) Reason {
	b := &s.Bench
	return first(unless(b.Opened[ProcessingSet], "open_the_set_first"), unless(b.Power, "no_power"), unless(!b.TakenDown, "taken_down"),
		unless(s.Pump.Mode == PumpIdle, "stop_the_pump_first"), unless(s.Bowl.AirML < airStopsML, "clear_the_air_first"))
}

func mayFill(c *Case, s *State, a Action) Reason {
	return first(ready(s), unless(s.Bench.Connected[OutletLine], "connect_outlet_line_first"), unless(s.Bowl.BrakeUntil == 0, "bowl_is_braking"),
		unless(s.Reservoir.Blood.VolumeML() >= 1, "reservoir_is_empty"),
		unless(s.CycleUsed < MaxCycles || s.Cycles[MaxCycles-1].DoneTick == 0, "no_more_cycles"),
		unless(!s.washedAlready(), "empty_the_bowl_first"))
}

// washedAlready says whether the bowl holds cells that have been washed: new blood would soil them.
func (s *State) washedAlready() bool {
	cy := s.cycle()
	return cy != nil && cy.DoneTick == 0 && cy.WashTick > 0 && cy.WashML > 0
}

// begin opens the record of a new bowlful unless one is under way.
func begin(s *State) *Cycle {
	if cy := s.cycle(); cy != nil && cy.DoneTick == 0 {
		return cy
	}
	s.CycleUsed++
	cy := s.cycle()
	*cy = Cycle{Bag: -1}
	return cy
}

func fill(c *Case, s *State, a Action, h *Happened) {
	cy := begin(s)
	p, r := &s.Pump, &s.Reservoir
	if cy.FillTick == 0 {
		cy.FillTick = max(1, s.Tick)
		cy.FeedHct = r.Blood.Hct()
	}
	cy.ClearShare = max(cy.ClearShare, r.ClearML/r.Blood.VolumeML())
	if (s.Bench.Breached[ProcessingSet] || s.Reservoir.Breached) && s.Bench.BreachKnown {
		s.Bench.BreachUsed = true
	}
	cy.StopTick = 0
	p.Mode = PumpFill
	s.Bowl.Spinning = true
}

func mayWash(c *Case, s *State, a Action) Reason {
	return first(ready(s), unless(s.Bowl.BrakeUntil == 0, "bowl_is_braking"), unless(s.Bowl.CellsML > 1, "bowl_is_empty"),
		unless(s.Pump.WashML > 0, "set_a_wash_volume_first"),
		unless(s.CycleUsed < MaxCycles || s.Cycles[MaxCycles-1].DoneTick == 0, "no_more_cycles"))
}

func wash(c *Case, s *State, a Action, h *Happened) {
	cy := begin(s)
	cy.WashTick = max(1, s.Tick)
	s.Pump.WashedML = 0
	s.Pump.Mode = PumpWash
	s.Bowl.Spinning = true
}

// stopPump stops the pump and notes where a fill stood.
func stopPump(s *State) {
	p := &s.Pump
	if cy := s.cycle(); cy != nil && (p.Mode == PumpFill || p.Mode == PumpTopUp) {
		cy.StopTick = max(1, s.Tick)
		cy.BedAtStop = max(cy.BedAtStop, s.Bowl.FillFraction())
		cy.MisreadAtStop, cy.StoppedByItself = s.Bowl.Detector.Misread, false
	}
	p.Mode = PumpIdle
}

func mayEmpty(c *Case, s *State, a Action) Reason {
	bag := s.productBag()
	why := first(ready(s), unless(!s.Bowl.Spinning, "bowl_is_spinning"), unless(s.Bowl.BrakeUntil == 0, "bowl_is_braking"),
		unless(s.Bowl.ContentsML() > residualML+0.5, "bowl_is_empty"), unless(bag != nil, "no_product_bag"))
	if why != "" {
		return why
	}
	return s.offPatient(s.BagsUsed - 1)
}

func mayDrawBack(c *Case, s *State, a Action) Reason {
	bag := s.productBag()
	why := first(ready(s), unless(!s.Bowl.Spinning, "bowl_is_spinning"), unless(s.Bowl.BrakeUntil == 0, "bowl_is_braking"),
		unless(bag != nil, "no_product_bag"), unless(s.CycleUsed < MaxCycles, "no_more_cycles"))
	if why != "" {
		return why
	}
	return first(unless(bag.Fluid.VolumeML() > 1, "bag_is_empty"), s.offPatient(s.BagsUsed-1),
		unless(s.Bowl.ContentsML() < s.Bowl.Shape().VolumeML-1, "bowl_is_full"))
}

func drawBack(c *Case, s *State, a Action, h *Happened) {
	cy := begin(s)
	cy.Reprocessed = true
	cy.WashML, cy.WashTick, cy.WashBy = 0, 0, [solutionCount]float64{} // what comes back is to be washed anew
	s.Pump.DrawBag = int8(s.BagsUsed - 1)
	s.Pump.Mode = PumpDrawBack
}
