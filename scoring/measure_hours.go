package scoring

import "rouleau/sim"

// Measures of very large losses and of trouble: telling of clotting, sending for fluid, a pump that stands, air, a reaction.

// clottingTold is the washed blood that had been given when the anaesthetist was told that clotting is thinned. Who never told,
// also for want of washed blood, has not met it: a case with this criterion gives occasion.
func clottingTold(j *judged) found {
	k := &j.s.Team.Clotting
	if k.ToldTick == 0 {
		return absent()
	}
	return valueAt(k.ToldAtML, k.ToldTick)
}

// fluidSentFor is the saline that was left on the bench when somebody was sent for more.
func fluidSentFor(j *judged) found {
	f := &j.s.Team.Fetching
	if f.Tick == 0 {
		return absent()
	}
	return valueAt(f.LeftML, f.Tick)
}

func pumpBlocked(j *judged) found {
	if j.s.CycleUsed == 0 {
		return absent()
	}
	return value(sim.Seconds(j.s.Conduct.BlockedTicks))
}

func fedLoose(j *judged) found {
	if j.s.CycleUsed == 0 {
		return absent()
	}
	return value(j.s.Conduct.LooseFedML)
}

// givenInReaction judges where a reaction came; without washed blood none could come.
func givenInReaction(j *judged) found {
	switch {
	case j.s.Giving.GivenML < 1:
		return absent()
	case j.s.Conduct.Met[sim.IncidentReaction] == 0:
		return none()
	}
	return valueAt(j.s.Conduct.ReactionGivenML, j.s.Conduct.Met[sim.IncidentReaction])
}
