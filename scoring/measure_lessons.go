package scoring

import "rouleau/sim"

// Measures that one kind of case needs: brisk bleeding, part-filled bowls, small patients, births.

// bloodWithoutDrip is the blood that was collected while no anticoagulant ran.
func bloodWithoutDrip(j *judged) found {
	tr := j.run.Trace
	if j.s.Field.SuckedBloodML < 1 {
		return absent()
	}
	ml, at := 0.0, int64(-1)
	for i := 1; i < len(tr); i++ {
		blood := tr[i].SuckedBloodML - tr[i-1].SuckedBloodML
		ran := tr[i].DripML + tr[i].PrimedML - tr[i-1].DripML - tr[i-1].PrimedML
		if blood > 0 && ran <= 0 {
			if ml += blood; at < 0 {
				at = tr[i].Tick
			}
		}
	}
	return valueAt(ml, at)
}

func reservoirPeak(j *judged) found {
	if j.s.Field.SuckedML == 0 {
		return absent()
	}
	most, at := 0.0, int64(-1)
	for _, t := range j.run.Trace {
		if v := t.ReservoirML + t.ReservoirClotML; v > most {
			most, at = v, t.Tick
		}
	}
	f := shareOf(most, j.c.Faults.ReservoirML)
	f.tick = at
	return f
}

// thinnestProduct is the thinnest bowl that was given to a bag.
func thinnestProduct(j *judged) found {
	thinnest, at := -1.0, int64(-1)
	j.emptied(func(cy *sim.Cycle) {
		if h := cy.ProductCellsML / cy.ProductML; thinnest < 0 || h < thinnest {
			thinnest, at = h, cy.DoneTick
		}
	})
	if thinnest < 0 {
		return absent()
	}
	return valueAt(thinnest, at)
}

func giveRate(j *judged) found {
	if j.s.Giving.GivenML < 1 {
		return absent()
	}
	most, at := 0.0, int64(-1)
	for _, t := range j.run.Trace {
		if t.GiveMLMin > most {
			most, at = t.GiveMLMin, t.Tick
		}
	}
	return valueAt(most, at)
}

// secondSuckerAsked judges only who collects: the theatre's own suction needs no second one.
func secondSuckerAsked(j *judged) found {
	if !hasAgent(j) {
		return none()
	}
	if j.s.Field.SuckedML == 0 {
		return absent()
	}
	came := int64(-1)
	if ticks := j.agentTicks(); len(ticks) > 0 {
		came = ticks[0]
	}
	by := came
	if by < 0 {
		by = j.s.Tick
	}
	f := yesNo(j.secondSucker(by))
	f.tick = came
	return f
}

// antiDAsked and fetalTestAsked ask for what follows when a mother had washed blood.
func antiDAsked(j *judged) found { return j.followsBirth(j.s.Team.AntiDTick) }

func fetalTestAsked(j *judged) found { return j.followsBirth(j.s.Team.FetalTestTick) }

func (j *judged) followsBirth(tick int64) found {
	switch {
	case !j.c.Patient.RhDNegative:
		return none()
	case j.s.Giving.GivenML < 1:
		return absent()
	}
	f := yesNo(tick > 0)
	if tick > 0 {
		f.tick = tick
	}
	return f
}
