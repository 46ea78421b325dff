package sim

// Collecting: drip, vacuum, where the sucker leads, talking with the team, mixing.

// MaxDropsMin is the fastest the roller lets drip.
const MaxDropsMin = 600

func collectRules() {
	rules[SetDrip] = rule{least: 0, most: MaxDropsMin,
		do: func(c *Case, s *State, a Action, h *Happened) { s.Drip.DropsMin = a.Value }}
	rules[SetVacuum] = rule{least: 0, most: 400,
		do: func(c *Case, s *State, a Action, h *Happened) { s.Team.VacuumMmHg = a.Value }}
	rules[Route] = rule{least: 0, most: 1, whole: true,
		may: func(c *Case, s *State, a Action) Reason {
			b := &s.Bench
			if Destination(a.Value) == ToDiscard {
				return ""
			}
			return first(unless(b.Opened[CollectionSet], "open_the_set_first"), unless(b.Connected[SuctionLine], "connect_suction_line_first"),
				unless(!b.TakenDown, "taken_down"))
		},
		do: func(c *Case, s *State, a Action, h *Happened) { s.Team.Route = Destination(a.Value) }}
	rules[Ask] = rule{least: 0, most: float64(requestCount) - 1, whole: true,
		may: func(c *Case, s *State, a Action) Reason {
			if Request(a.Value) == RinseSwabs {
				return first(unless(s.Field.Swabs.VolumeML() >= s.Field.RinsedRestML+20, "no_swabs_to_rinse"), unless(s.Team.RinseUntil == 0, "swabs_are_being_rinsed"))
			}
			return ""
		},
		do: func(c *Case, s *State, a Action, h *Happened) { request(c, s, Request(a.Value), h) }}
	rules[Answer] = rule{least: 0, most: 1, whole: true,
		may: func(c *Case, s *State, a Action) Reason {
			if s.Team.openOf(EventAsk) >= 0 {
				return ""
			}
			return first(unless(s.Team.openOf(EventAskLoss) < 0, "give_an_estimate"), "nobody_asked")
		},
		do: func(c *Case, s *State, a Action, h *Happened) {
			q := &s.Team.Questions[s.Team.openOf(EventAsk)]
			q.AnsweredTick, q.Value = max(1, s.Tick), a.Value
		}}
	rules[TakePumpBlood] = rule{handsS: 15, may: mayTakePump,
		do: func(c *Case, s *State, a Action, h *Happened) { s.Team.PumpRuns = true }}
	rules[Mix] = rule{handsS: mixTimeS,
		may: func(c *Case, s *State, a Action) Reason {
			return first(unless(s.Bench.Opened[CollectionSet], "open_the_set_first"), unless(s.Reservoir.Blood.VolumeML() >= 20, "reservoir_is_empty"))
		},
		do: func(c *Case, s *State, a Action, h *Happened) {
			s.Reservoir.MixUntil = s.Tick + Ticks(mixTimeS)
			s.Reservoir.MixedTick = s.Reservoir.MixUntil
		}}
}
