package sim

// Recording: incidents, estimates, notes, the closing tally, taking down, ending.

func recordRules() {
	rules[Declare] = rule{least: 0, most: float64(incidentCount) - 1, whole: true,
		do: func(c *Case, s *State, a Action, h *Happened) {
			s.Conduct.causes(s) // an alarm that came on since they were last noted is reason enough
			s.Conduct.tell(Incident(a.Value), s.Tick)
		}}
	rules[EstimateLoss] = rule{least: 0, most: 30000,
		do: func(c *Case, s *State, a Action, h *Happened) {
			k := &s.Conduct
			k.EstimateML, k.EstimateTick, k.EstimateTruthML = a.Value, s.Tick, s.Patient.ShedML
			if i := s.Team.openOf(EventAskLoss); i >= 0 {
				q := &s.Team.Questions[i]
				q.AnsweredTick, q.Value, q.Right = max(1, s.Tick), a.Value, s.Patient.ShedML
			}
		}}
	rules[Note] = rule{do: func(c *Case, s *State, a Action, h *Happened) {}} // its words are in the log
	rules[Reconcile] = rule{least: 0, most: 100000,
		may: func(c *Case, s *State, a Action) Reason {
			return first(unless(a.Item < uint8(TallyItems), "no_such_tally_line"), unless(s.Tick >= c.EndTick, "tally_comes_last"))
		},
		do: func(c *Case, s *State, a Action, h *Happened) {
			s.Tally[a.Item] = Reconciled{Written: true, ML: a.Value}
		}}
	rules[TakeDown] = rule{handsS: 60,
		may: func(c *Case, s *State, a Action) Reason {
			return first(unless(s.Bench.Opened[CollectionSet], "open_the_set_first"), unless(!s.Bench.TakenDown, "taken_down"), unless(s.Pump.Mode == PumpIdle && !s.Bowl.Spinning, "stop_the_bowl_first"))
		},
		do: func(c *Case, s *State, a Action, h *Happened) {
			b := &s.Bench
			b.TakenDown, b.TakenDownTick = true, s.Tick
			s.Team.Route = ToDiscard
			throwAwayRest(s)
			for clamp := DripClamp; clamp <= SparePort; clamp++ {
				b.Open[clamp] = false
			}
		}}
	rules[EndCase] = rule{
		may: func(c *Case, s *State, a Action) Reason {
			return first(unless(s.Tick >= c.EndTick || s.Bench.Decision == DoNotSalvage, "operation_goes_on"),
				unless(s.Tick >= min(c.StayTick, c.EndTick), "team_wants_you_here"),
				unless(s.Giving.Bag < 0 || s.Giving.RateMLMin == 0, "bag_is_being_given"))
		},
		do: func(c *Case, s *State, a Action, h *Happened) { s.Ended = true }}
}

// throwAwayRest throws away what is left in filter, reservoir and bowl when they are taken down.
func throwAwayRest(s *State) {
	rest := s.Bowl.asFluid()
	for _, f := range [...]*Fluid{&rest, &s.Reservoir.Blood, &s.Reservoir.Clot, &s.Filter.Content, &s.Filter.Clot, &s.Pump.Line} {
		s.Waste.DiscardedML += f.VolumeML()
		moveAll(&s.Waste.Removed, f)
	}
	s.Reservoir.ClearML, s.Pump.LineFlaws = 0, Flaws{}
}

// TallyTruth is what each line of the closing tally should say, from the bags, packs and scales, mL.
func TallyTruth(s *State) [TallyItems]float64 {
	var t [TallyItems]float64
	t[TallyCollected] = s.Reservoir.TakenInML
	t[TallyAnticoagulant] = s.Drip.DrippedML + s.Drip.PrimedML
	t[TallyIrrigation] = s.Field.IrrigationML
	for i := range s.Cycles[:s.CycleUsed] {
		cy := &s.Cycles[i]
		t[TallyProcessed] += cy.FeedML
		for _, ml := range cy.WashBy {
			t[TallyWash] += ml
		}
	}
	for i := range s.Bags[:s.BagsUsed] {
		t[TallyProduct] += s.Bags[i].CameML
	}
	t[TallyWaste] = s.Waste.Bag.VolumeML() + s.Waste.CarriedAwayML
	t[TallyReturned] = s.Giving.GivenML
	t[TallyDiscarded] = s.Waste.DiscardedML
	return t
}
