package scoring

import "rouleau/sim"

// Measures of circuits: blood protected from clotting, a circuit to be kept connected, the blood of a pump, and what
// washing leaves of either anticoagulant.

// Strength of the anticoagulant in the reservoir at the usual dose, against which what is left is set: the middle of 3.9 to 5.0
// IU/mL and of 14 to 20 mmol/L (derived from UKCSAG Technical Factsheet 2).
const (
	heparinStrengthIUML  = 4.5
	citrateStrengthMmolL = 17.0
)

func protectedBlood(j *judged) found {
	if j.s.Field.SuckedBloodML < 1 {
		return absent()
	}
	return shareOf(j.s.Conduct.ProtectedML, j.s.Field.SuckedBloodML)
}

func protectedAfterProtamine(j *judged) found {
	at := j.s.Patient.ProtamineTick
	switch {
	case j.s.Field.SuckedBloodML < 1:
		return absent()
	case at == 0:
		return none()
	case j.s.Conduct.AfterProtamineML < 1:
		return absent() // the bleeding goes on; that none of it was collected shows nothing
	}
	f := shareOf(j.s.Conduct.AfterProtectedML, j.s.Conduct.AfterProtamineML)
	f.tick = at
	return f
}

func heparinAfterProtamine(j *judged) found {
	switch {
	case j.s.Giving.GivenML < 1:
		return absent()
	case j.s.Patient.ProtamineTick == 0:
		return none()
	}
	return valueAt(j.s.Conduct.HeparinAfterIU, j.s.Patient.ProtamineTick)
}

func pumpBloodTaken(j *judged) found {
	taken, offered := j.s.Field.PumpBloodML, j.s.Team.PumpOfferTick
	if offered == 0 {
		return none()
	}
	f := shareOf(taken, taken+j.s.Stores.Circuit.VolumeML())
	f.tick = offered
	return f
}

func circuitJoined(j *judged) found {
	if j.s.Field.SuckedBloodML < 1 {
		return absent()
	}
	return shareOf(j.s.Conduct.JoinedBloodML, j.s.Field.SuckedBloodML)
}

func circuitPartings(j *judged) found {
	joined := j.firstDone(does(sim.JoinCircuit))
	if joined < 0 {
		return absent()
	}
	return value(float64(j.s.Conduct.Partings))
}

// cellsWasted is what was collected and went to the waste bag, the floor or away, the rest in taken-down parts included.
func cellsWasted(j *judged) found {
	if j.s.Field.SuckedCellsML < 1 || j.s.Giving.GivenML < 1 {
		return absent()
	}
	w := &j.s.Waste
	return shareOf(w.Bag.CellsML+w.Removed.CellsML+j.s.Field.Floor.CellsML, j.s.Field.SuckedCellsML)
}

// residualAnticoagulant judges whichever was used, so that neither choice earns the points of the other for nothing.
func residualAnticoagulant(j *judged) found {
	heparin, citrate := residualHeparin(j), residualCitrate(j)
	if heparin.standing != measured && citrate.standing != measured {
		return absent() // nothing in a bag, or collected with neither
	}
	return value(max(heparin.value/heparinStrengthIUML, citrate.value/citrateStrengthMmolL))
}

func misreadStops(j *judged) found {
	all, good, at := 0.0, 0.0, int64(-1)
	for i := range j.cycles() {
		cy := &j.s.Cycles[i]
		if cy.StopTick == 0 || max(cy.MisreadAtStop, -cy.MisreadAtStop) <= sim.MisreadSeen {
			continue
		}
		all++
		if !cy.StoppedByItself {
			good++
		} else if at < 0 {
			at = cy.StopTick
		}
	}
	switch {
	case j.s.CycleUsed == 0:
		return absent()
	case all == 0:
		return none()
	}
	f := shareOf(good, all)
	f.tick = at
	return f
}
