package sim

// Product bags and giving: labelling, air, samples, handing over, the check of identity, the return.

// bagOf finds the bag an action is about, or why it cannot be used.
func (s *State) bagOf(a Action) (*ProductBag, Reason) {
	i, ok := a.On.bag()
	if !ok {
		return nil, "not_a_bag"
	}
	if i >= s.BagsUsed || !s.Bags[i].Hung {
		return nil, "no_such_bag"
	}
	if s.Bags[i].Discarded {
		return nil, "bag_is_discarded"
	}
	return &s.Bags[i], ""
}

// offPatient says why bag i cannot be worked on while it is connected to the patient.
func (s *State) offPatient(i int) Reason {
	if int(s.Giving.Bag) != i {
		return ""
	}
	if s.Giving.RateMLMin > 0 || s.Giving.Squeezing {
		return "bag_is_being_given"
	}
	if s.Giving.Joined { // the circuit runs on while nothing flows to the patient
		return ""
	}
	return "take_bag_off_patient_first"
}

// withBag makes a rule for an act on a product bag; filled asks for something in it.
func withBag(filled bool, more func(s *State, b *ProductBag, a Action) Reason, do func(s *State, b *ProductBag, a Action)) rule {
	return rule{
		may: func(c *Case, s *State, a Action) Reason {
			b, why := s.bagOf(a)
			if why != "" {
				return why
			}
			if filled && b.Fluid.VolumeML() < 1 {
				return "bag_is_empty"
			}
			if more != nil {
				return more(s, b, a)
			}
			return ""
		},
		do: func(c *Case, s *State, a Action, h *Happened) {
			b, _ := s.bagOf(a)
			do(s, b, a)
		}}
}

func (r rule) taking(seconds float64) rule { r.handsS = seconds; return r }

func (r rule) valued(least, most float64) rule {
	r.least, r.most, r.whole = least, most, true
	return r
}

func bagRules() {
	notGiven := func(s *State, b *ProductBag, a Action) Reason { return s.offPatient(int(a.On - FirstBag)) }
	rules[NewBag] = rule{handsS: 15, may: mayNewBag, do: func(c *Case, s *State, a Action, h *Happened) {
		s.partCircuit()
		s.Bags[s.BagsUsed].Hung = true
		s.BagsUsed++
		s.Bench.Open[SparePort] = false
	}}
	rules[MixBag] = withBag(true, nil, func(s *State, b *ProductBag, a Action) { b.MixedTick = s.Tick }).taking(10)
	rules[Label] = withBag(false, nil, func(s *State, b *ProductBag, a Action) {
		b.LabelBits = uint8(a.Value)
	}).taking(15).valued(0, LabelComplete)
	rules[ExpelAir] = withBag(false, notGiven, func(s *State, b *ProductBag, a Action) { b.AirML = 0 }).taking(10)
	rules[HandOver] = withBag(true, nil, func(s *State, b *ProductBag, a Action) {
		if b.HandedBits == 0 {
			b.HandedTick = s.Tick
		}
		b.HandedBits |= uint8(a.Value)
	}).taking(20).valued(1, HandoverComplete)
	rules[Identify] = withBag(true, func(s *State, b *ProductBag, a Action) Reason {
		return unless(a.Value == 1 || s.Team.ClinicianAt > 0 && s.Tick >= s.Team.ClinicianAt, "call_second_person")
	}, func(s *State, b *ProductBag, a Action) { b.Checkers = uint8(a.Value) }).taking(15).valued(1, 2)
	rules[Hook] = rule{least: 0, most: 1, whole: true, handsS: 15, may: mayHook, do: hook}
	rules[JoinCircuit] = rule{least: 0, most: 1, whole: true, handsS: 40, may: mayJoin, do: joinCircuit}
	rules[Unhook] = rule{handsS: 8,
		may: func(c *Case, s *State, a Action) Reason {
			return unless(s.Giving.Bag >= 0 || s.Giving.Pack >= 0, "connect_a_bag_first")
		},
		do: func(c *Case, s *State, a Action, h *Happened) {
			s.partCircuit()
			s.Giving.Bag, s.Giving.Pack, s.Giving.RateMLMin, s.Giving.Squeezing = -1, -1, 0, false
		}}
	rules[GiveRate] = rule{least: 0, most: gravityMostMLMin,
		may: func(c *Case, s *State, a Action) Reason {
			return unless(s.Giving.Bag >= 0 || s.Giving.Pack >= 0 || a.Value == 0, "connect_a_bag_first")
		},
		do: func(c *Case, s *State, a Action, h *Happened) { s.Giving.RateMLMin = a.Value }}
	rules[Squeeze] = rule{least: 0, most: 1, whole: true,
		may: func(c *Case, s *State, a Action) Reason {
			return unless(s.Giving.Bag >= 0 || a.Value == 0, "connect_a_bag_first")
		},
		do: func(c *Case, s *State, a Action, h *Happened) { s.Giving.Squeezing = a.Value == 1 }}
	rules[Watch] = rule{handsS: 5, do: watch}
	rules[Sample] = rule{handsS: 10, may: maySample, do: func(c *Case, s *State, a Action, h *Happened) {
		src, mixed := s.sampleSource(a.On)
		s.takeSample(c, a.On, src, mixed)
	}}
	rules[DiscardIt] = rule{handsS: 10, may: mayDiscard, do: discard}
}

func mayNewBag(c *Case, s *State, a Action) Reason {
	return first(unless(s.Bench.Opened[ProcessingSet], "open_the_set_first"), unless(s.Pump.Mode == PumpIdle, "stop_the_pump_first"),
		unless(s.BagsUsed < MaxBags, "no_more_bags"))
}

func mayHook(c *Case, s *State, a Action) Reason {
	if a.On == AnticoagulantHook { // possible, and wrong
		return first(unless(s.Bench.HookPack[a.On] >= 0, "hook_is_empty"), unless(s.Giving.Bag < 0, "another_bag_is_connected"))
	}
	b, why := s.bagOf(a)
	if why != "" {
		return why
	}
	return first(unless(b.Fluid.VolumeML() >= 1, "bag_is_empty"),
		unless(s.Giving.Bag < 0 || s.Giving.RateMLMin == 0 && !s.Giving.Squeezing, "another_bag_is_connected"),
		unless(s.Pump.Mode == PumpIdle || s.productBag() != b, "stop_the_pump_first"))
}

func hook(c *Case, s *State, a Action, h *Happened) {
	g := &s.Giving
	s.partCircuit()
	g.Filter = a.Value == 1
	moveAll(&s.Waste.Removed, &g.Caught) // every bag has a new giving set
	g.RateMLMin, g.Squeezing = 0, false
	if i, ok := a.On.bag(); ok {
		g.Bag, g.Pack = int8(i), -1
		return
	}
	g.Bag, g.Pack = -1, s.Bench.HookPack[a.On]
}

// watch looks at the patient; a reaction going on is seen.
func watch(c *Case, s *State, a Action, h *Happened) {
	if s.Giving.FlowMLMin > 0 {
		s.Conduct.WatchedTimes++
	}
	key := "patient_looks_well"
	if s.Patient.Reaction {
		key = "patient_reacts"
	}
	h.say(s.Tick, Anaesthetist, key)
}

// sampleSource is the fluid a sample of a part would come from, and whether it is mixed.
func (s *State) sampleSource(on Part) (*Fluid, bool) {
	if i, ok := on.bag(); ok && i < s.BagsUsed {
		b := &s.Bags[i]
		return &b.Fluid, b.MixedTick >= 0 && s.Tick <= b.MixedTick+Ticks(bagSettlesS)
	}
	switch on {
	case ReservoirPart:
		return &s.Reservoir.Blood, s.Reservoir.ClearML < 0.05*s.Reservoir.Blood.VolumeML()
	case PatientPart:
		return &s.Patient.Blood, true
	}
	return nil, false
}

func maySample(c *Case, s *State, a Action) Reason {
	src, _ := s.sampleSource(a.On)
	if src == nil {
		return "cannot_be_sampled"
	}
	return first(unless(src.VolumeML() >= 2*sampleML, "too_little_to_sample"), unless(s.Lab.Count < MaxSamples, "no_more_samples"))
}

func mayDiscard(c *Case, s *State, a Action) Reason {
	if a.On == ReservoirPart {
		return first(unless(s.Bench.Opened[CollectionSet], "open_the_set_first"), unless(s.Pump.Mode == PumpIdle, "stop_the_pump_first"))
	}
	b, why := s.bagOf(a)
	if why != "" {
		return why
	}
	return first(unless(s.Giving.Bag != int8(a.On-FirstBag) || s.Giving.RateMLMin == 0 && !s.Giving.Squeezing, "bag_is_being_given"),
		unless(s.productBag() != b || s.Pump.Mode == PumpIdle, "stop_the_pump_first"))
}

func discard(c *Case, s *State, a Action, h *Happened) {
	if a.On == ReservoirPart {
		for _, f := range [...]*Fluid{&s.Reservoir.Blood, &s.Reservoir.Clot, &s.Filter.Content, &s.Filter.Clot} {
			s.Waste.DiscardedML += f.VolumeML()
			moveAll(&s.Waste.Removed, f)
		}
		s.Reservoir.ClearML, s.Reservoir.Activation, s.Reservoir.Breached = 0, 0, false
		s.Filter.Activation, s.Filter.Haemostat = 0, 0
		return
	}
	i, _ := a.On.bag()
	b := &s.Bags[i]
	b.Discarded, b.Flaws = true, Flaws{}
	s.Waste.DiscardedML += b.Fluid.VolumeML()
	moveAll(&s.Waste.Removed, &b.Fluid)
	moveAll(&s.Waste.Removed, &b.Fragments)
	if s.Giving.Bag == int8(i) {
		s.partCircuit()
		s.Giving.Bag = -1
	}
}
