package sim

// Deciding and preparing the bench.

func startBench(c *Case, s *State) {
	b := &s.Bench
	b.HookPack = [WashHookB + 1]int8{-1, -1, -1, -1}
	for i := range c.Packs {
		spec := &c.Packs[i]
		b.Packs[i] = Pack{Fluid: spec.Solution.Of(spec.VolumeML), Solution: spec.Solution}
		if spec.On.isHook() {
			b.HookPack[spec.On] = int8(i)
			b.Packs[i].Used = true
		}
	}
	b.Open = c.Faults.OpenClamps
	b.Loose = c.Faults.LooseLines
	b.VacuumSource, b.Power = true, true
	b.VacuumPlugged = !c.Faults.NoVacuum
	s.Giving.Bag, s.Giving.Pack = -1, -1
	s.Pump = Pump{FillMLMin: startFillMLMin, WashMLMin: startWashMLMin, EmptyMLMin: startEmptyMLMin, WashML: startWashML}
	s.Bowl.Detector.Offset = c.Faults.DetectorOffset
	s.Reservoir.MixedTick = -1
	s.Conduct.EstimateML = -1
	s.Conduct.findings(c)
	for i := range s.Bags {
		s.Bags[i].MixedTick = -1
	}
}

func prepareRules() {
	rules[Decide] = rule{least: 1, most: float64(decisionCount) - 1, whole: true,
		may: func(c *Case, s *State, a Action) Reason {
			return first(unless(!s.Bench.Opened[ProcessingSet] || Decision(a.Value) == SetUpToProcess, "processing_set_is_open"),
				unless(!s.Bench.Opened[CollectionSet] || Decision(a.Value) != DoNotSalvage, "collection_set_is_open"))
		},
		do: func(c *Case, s *State, a Action, h *Happened) {
			s.Bench.Decision = Decision(a.Value)
		}}
	rules[ChooseAnticoagulant] = rule{least: 1, most: float64(solutionCount) - 1, whole: true,
		may: func(c *Case, s *State, a Action) Reason {
			return unless(Solution(a.Value).Anticoagulant(), "not_an_anticoagulant")
		},
		do: func(c *Case, s *State, a Action, h *Happened) { s.Bench.Anticoagulant = Solution(a.Value) }}
	rules[ChooseBowl] = rule{least: 1, most: float64(bowlKindCount) - 1, whole: true,
		may: func(c *Case, s *State, a Action) Reason {
			return unless(!s.Bench.Opened[ProcessingSet], "processing_set_is_open")
		},
		do: func(c *Case, s *State, a Action, h *Happened) { s.Bench.Bowl = BowlKind(a.Value) }}
	rules[OpenSet] = rule{handsS: 45, may: mayOpen, do: openSet}
	rules[ReplaceSet] = rule{handsS: 90, may: mayReplace, do: replaceSet}
	rules[Inspect] = rule{handsS: 3, may: func(c *Case, s *State, a Action) Reason { return unless(a.On != NoPart, "name_a_part") }, do: inspect}
	rules[Hang] = rule{least: 0, most: MaxPacks - 1, whole: true, handsS: 12, may: mayHang,
		do: func(c *Case, s *State, a Action, h *Happened) {
			s.Bench.HookPack[a.On] = int8(a.Value)
			s.Bench.Packs[int(a.Value)].Used = true
			s.Bench.Inspected[a.On] = false
		}}
	rules[Unhang] = rule{handsS: 5,
		may: func(c *Case, s *State, a Action) Reason {
			if !a.On.isHook() {
				return "not_a_hook"
			}
			k := s.Bench.HookPack[a.On]
			return first(unless(k >= 0, "hook_is_empty"), unless(s.Giving.Pack < 0 || k != s.Giving.Pack, "take_bag_off_patient_first"))
		},
		do: func(c *Case, s *State, a Action, h *Happened) { s.Bench.HookPack[a.On] = -1 }}
	rules[Clamp] = rule{least: 0, most: 1, whole: true,
		may: func(c *Case, s *State, a Action) Reason { return unless(a.On.isClamp(), "not_a_clamp") },
		do:  func(c *Case, s *State, a Action, h *Happened) { s.Bench.Open[a.On] = a.Value == 1 }}
	rules[Connect] = rule{handsS: 6, may: mayConnect, do: connect}
	rules[TestVacuum] = rule{handsS: 8,
		may: func(c *Case, s *State, a Action) Reason {
			return unless(s.Bench.Connected[VacuumLine], "connect_vacuum_line_first")
		},
		do: func(c *Case, s *State, a Action, h *Happened) {
			s.Bench.VacuumTested, s.Bench.VacuumPlugged, s.Bench.Loose[VacuumLine] = true, true, false
		}}
	rules[Prime] = rule{least: 1, most: 500, may: mayPrime,
		do: func(c *Case, s *State, a Action, h *Happened) { s.Drip.PrimeLeftML = a.Value }}
}

func mayOpen(c *Case, s *State, a Action) Reason {
	b := &s.Bench
	switch a.On {
	case CollectionSet:
		return first(unless(b.Decision >= CollectOnly, "decide_first"), unless(!b.Opened[CollectionSet], "set_is_open"))
	case ProcessingSet:
		return first(unless(b.Decision == SetUpToProcess, "decide_to_process_first"), unless(!b.Opened[ProcessingSet], "set_is_open"),
			unless(b.Bowl != NoBowl, "choose_bowl_first"))
	}
	return "not_a_set"
}

func openSet(c *Case, s *State, a Action, h *Happened) {
	b := &s.Bench
	b.Opened[a.On], b.OpenedTick[a.On] = true, s.Tick
	if a.On == ProcessingSet {
		s.Bowl.Kind = b.Bowl
		s.Bags[0].Hung = true
		s.BagsUsed = 1
		// the tubes come joined to bowl and bags; the outlet line is the trainee's to connect
		b.Connected[ProductLine], b.Connected[WasteLine] = true, true
	}
}

func mayReplace(c *Case, s *State, a Action) Reason {
	b := &s.Bench
	if a.On != CollectionSet && a.On != ProcessingSet {
		return "not_a_set"
	}
	return first(unless(b.Opened[a.On], "set_is_not_open"), unless(!s.Bowl.Spinning || a.On != ProcessingSet, "bowl_is_spinning"),
		unless(s.Pump.Mode == PumpIdle || a.On != ProcessingSet, "stop_the_pump_first"))
}

// replaceSet throws a set away with what is in it and opens a fresh one.
func replaceSet(c *Case, s *State, a Action, h *Happened) {
	b := &s.Bench
	b.Breached[a.On] = false
	if a.On == CollectionSet {
		r := &s.Reservoir
		for _, f := range [...]*Fluid{&s.Filter.Content, &s.Filter.Clot, &r.Blood, &r.Clot, &s.Drip.Line} {
			s.Waste.DiscardedML += f.VolumeML()
			moveAll(&s.Waste.Removed, f)
		}
		s.Filter.Activation, s.Filter.LysedShare, s.Filter.Haemostat = 0, 0, 0
		*r = Reservoir{MixedTick: -1, TakenInML: r.TakenInML}
		b.Connected[SuctionLine], b.Connected[VacuumLine], b.Connected[OutletLine] = false, false, false
		return
	}
	s.partCircuit()
	contents := s.Bowl.asFluid()
	s.Waste.DiscardedML += contents.VolumeML() + s.Pump.Line.VolumeML()
	moveAll(&s.Waste.Removed, &contents)
	moveAll(&s.Waste.Removed, &s.Bowl.Fragments)
	moveAll(&s.Waste.Removed, &s.Pump.Line)
	s.Pump.LineFlaws = Flaws{}
	offset := s.Bowl.Detector.Offset
	s.Bowl = Bowl{Kind: s.Bowl.Kind}
	s.Bowl.Detector.Offset = offset
	s.Pump.FirstAir = false
	b.Connected[OutletLine] = false
	b.Loose[ProductLine], b.Loose[OutletLine] = false, false
	if cy := s.cycle(); cy != nil && cy.DoneTick == 0 {
		cy.DoneTick, cy.Bag = max(1, s.Tick), -1
	}
}

// inspect looks at a part and puts right nothing: it brings to light.
func inspect(c *Case, s *State, a Action, h *Happened) {
	b := &s.Bench
	b.Inspected[a.On], b.Unseen[a.On] = true, false
	key := "looks_in_order"
	switch {
	case a.On.isHook() && b.HookPack[a.On] < 0:
		key = "hook_hangs_empty"
	case a.On.isHook() && c.Packs[b.HookPack[a.On]].Expired:
		key = "pack_is_expired"
	case a.On.isHook():
		key = "pack_is_" + b.Packs[b.HookPack[a.On]].Solution.String()
	case a.On.isClamp() && b.Open[a.On]:
		key = "clamp_is_open"
	case a.On.isClamp():
		key = "clamp_is_closed"
	case a.On.isLine() && !b.Connected[a.On]:
		key = "line_is_not_connected"
	case a.On.isLine() && b.Loose[a.On]:
		key = "line_is_loose"
	case (a.On == CollectionSet || a.On == ProcessingSet) && b.Breached[a.On]:
		key = "set_is_not_sterile"
	}
	h.add(Occurrence{Tick: s.Tick, Kind: Came, Who: Bench, Key: key, Line: -1, Act: a})
}

func mayHang(c *Case, s *State, a Action) Reason {
	i := int(a.Value)
	if !a.On.isHook() {
		return "not_a_hook"
	}
	if i >= len(c.Packs) {
		return "no_such_pack"
	}
	for hook := AnticoagulantHook; hook <= WashHookB; hook++ {
		if s.Bench.HookPack[hook] == int8(i) {
			return "pack_hangs_already"
		}
	}
	return first(unless(!s.inStore(c, i), "pack_is_in_store"), unless(s.Bench.HookPack[a.On] < 0, "hook_is_taken"), unless(s.Bench.Packs[i].Fluid.VolumeML() > 0, "pack_is_empty"))
}

func mayConnect(c *Case, s *State, a Action) Reason {
	b := &s.Bench
	if !a.On.isLine() {
		return "not_a_line"
	}
	needs := CollectionSet
	if a.On == ProductLine || a.On == WasteLine || a.On == OutletLine {
		needs = ProcessingSet
	}
	return first(unless(b.Opened[needs], "open_the_set_first"), unless(a.On != OutletLine || b.Opened[CollectionSet], "open_the_set_first"),
		unless(!b.Connected[a.On] || b.foundLoose(int(a.On)), "line_is_connected")) // a refusal must not tell what only a look can
}

func connect(c *Case, s *State, a Action, h *Happened) {
	b := &s.Bench
	again := b.Connected[a.On]
	b.Connected[a.On] = true
	if again {
		b.Loose[a.On], b.Unseen[a.On] = false, false
		return
	}
	if set := setOf(a.On); a.On != VacuumLine && s.uniform() < c.Faults.TouchChance {
		s.breach(set, h)
	}
}

// setOf is the sterile set that a line belongs to.
func setOf(line Part) Part {
	if line == SuctionLine || line == VacuumLine {
		return CollectionSet
	}
	return ProcessingSet
}

func mayPrime(c *Case, s *State, a Action) Reason {
	b := &s.Bench
	return first(unless(b.Opened[CollectionSet], "open_the_set_first"), unless(b.HookPack[AnticoagulantHook] >= 0, "hang_anticoagulant_first"),
		unless(b.Open[DripClamp], "open_drip_clamp_first"), unless(s.Drip.PrimeLeftML <= 0, "prime_is_running"),
		unless(s.VacuumMmHg(c) > 0, "needs_vacuum"))
}
