package scoring

import "rouleau/sim"

// Measures of processing.

const (
	partBowl      = 0.80 // of the bowl: a bed that was stopped below this was not a full one
	interfaceAt   = 0.93 // where filling should stop, as the bowl is built
	littleBloodML = 60.0 // left in the reservoir: there was no more to fill with
)

// partly says whether a bowlful was part-filled, and whether for want of blood at the end of the operation.
func (j *judged) partly(cy *sim.Cycle) (part, justified bool) {
	if cy.BedAtStop >= partBowl || cy.StopTick == 0 {
		return false, false
	}
	return true, j.at(cy.StopTick).ReservoirML <= littleBloodML && cy.WashTick >= j.c.EndTick
}

// fillStop is the bowl furthest from the interface, so that a short one and an overfilled one cannot make up for each other.
func fillStop(j *judged) found {
	worst := none()
	far := -1.0
	for i := range j.cycles() {
		cy := &j.s.Cycles[i]
		if part, justified := j.partly(cy); cy.StopTick == 0 || unused(cy) || part && justified {
			continue
		}
		if d := max(cy.BedAtStop-interfaceAt, interfaceAt-cy.BedAtStop); d > far {
			far, worst = d, valueAt(cy.BedAtStop, cy.StopTick)
		}
	}
	if far < 0 {
		return j.nothingProcessed()
	}
	return worst
}

// unused says whether a bowlful went back to the reservoir, or away, neither washed nor bagged.
func unused(cy *sim.Cycle) bool { return cy.WashTick == 0 && cy.Bag < 0 }

// nothingProcessed is what a measure of bowls finds without any: no occasion if there were only justified part bowls.
func (j *judged) nothingProcessed() found {
	for i := range j.cycles() {
		if part, justified := j.partly(&j.s.Cycles[i]); part && justified {
			return none()
		}
	}
	return absent()
}

func partBowlsJustified(j *judged) found {
	all, good, at := 0.0, 0.0, int64(-1)
	for i := range j.cycles() {
		cy := &j.s.Cycles[i]
		if part, justified := j.partly(cy); part && !unused(cy) {
			all++
			if justified || cy.Reprocessed {
				good++
			} else {
				at = cy.StopTick
			}
		}
	}
	switch {
	case j.s.CycleUsed == 0:
		return absent()
	case all == 0:
		return none()
	}
	return found{value: good / all, tick: at}
}

// emptied calls visit for every bowlful that went into a bag.
func (j *judged) emptied(visit func(cy *sim.Cycle)) {
	for i := range j.cycles() {
		if cy := &j.s.Cycles[i]; cy.Bag >= 0 && cy.ProductML > 1 {
			visit(cy)
		}
	}
}

func washVolumes(j *judged) found {
	least, at := -1.0, int64(-1)
	j.emptied(func(cy *sim.Cycle) {
		if v := cy.WashML / j.s.Bowl.Shape().VolumeML; least < 0 || v < least {
			least, at = v, cy.WashTick
		}
	})
	if least < 0 {
		return absent()
	}
	return valueAt(least, at)
}

func highestRate(j *judged, rate func(cy *sim.Cycle) float64) found {
	most := 0.0
	for i := range j.cycles() {
		most = max(most, rate(&j.s.Cycles[i]))
	}
	if most == 0 {
		return absent()
	}
	return value(most)
}

func productHct(j *judged) found {
	cells, ml := 0.0, 0.0
	j.emptied(func(cy *sim.Cycle) {
		if part, justified := j.partly(cy); !(part && justified) {
			cells, ml = cells+cy.ProductCellsML, ml+cy.ProductML
		}
	})
	if ml == 0 {
		return j.nothingProcessed()
	}
	return shareOf(cells, ml)
}

// perLiquid sums an amount over all products and divides it by their liquid, per mL.
func (j *judged) perLiquid(amount func(cy *sim.Cycle) float64) (float64, bool) {
	sum, liquid := 0.0, 0.0
	j.emptied(func(cy *sim.Cycle) {
		sum, liquid = sum+amount(cy), liquid+cy.ProductML-cy.ProductCellsML
	})
	if liquid <= 0 {
		return 0, false
	}
	return sum / liquid, true
}

func productFreeHb(j *judged) found {
	v, ok := j.perLiquid(func(cy *sim.Cycle) float64 { return cy.FreeHbG })
	if !ok {
		return absent()
	}
	return value(1000 * v)
}

func residualProtein(j *judged) found {
	v, ok := j.perLiquid(func(cy *sim.Cycle) float64 { return cy.ProteinG })
	if !ok {
		return absent()
	}
	return value(1000 * v)
}

// residual is what is left of an agent per mL of product; nothing to judge where none was fed.
func residual(j *judged, amounts func(cy *sim.Cycle) (fed, kept float64)) found {
	fed, kept, ml := 0.0, 0.0, 0.0
	j.emptied(func(cy *sim.Cycle) {
		f, k := amounts(cy)
		fed, kept, ml = fed+f, kept+k, ml+cy.ProductML
	})
	switch {
	case ml == 0:
		return absent()
	case fed <= 0:
		return none()
	}
	return value(kept / ml)
}

func residualHeparin(j *judged) found {
	return residual(j, func(cy *sim.Cycle) (float64, float64) { return cy.FeedHeparinIU, cy.HeparinIU })
}

func residualCitrate(j *judged) found {
	return residual(j, func(cy *sim.Cycle) (float64, float64) { return 1000 * cy.FeedCitrate, 1000 * cy.CitrateMmol })
}

func residualPotassium(j *judged) found {
	v, ok := j.perLiquid(func(cy *sim.Cycle) float64 { return cy.Potassium })
	if !ok {
		return absent()
	}
	return value(1000 * v)
}

// removal is the share of what was fed that did not reach the product.
func removal(j *judged, amounts func(cy *sim.Cycle) (fed, kept float64)) found {
	fed, kept := 0.0, 0.0
	j.emptied(func(cy *sim.Cycle) {
		f, k := amounts(cy)
		fed, kept = fed+f, kept+k
	})
	if fed <= 0 {
		return absent()
	}
	return value(max(0, 1-kept/fed))
}

// anticoagulantRemoval is that of the agent that was fed; of the worse one when both were.
func anticoagulantRemoval(j *judged) found {
	heparin := removal(j, func(cy *sim.Cycle) (float64, float64) { return cy.FeedHeparinIU, cy.HeparinIU })
	citrate := removal(j, func(cy *sim.Cycle) (float64, float64) { return cy.FeedCitrate, cy.CitrateMmol })
	if heparin.standing == missing || citrate.standing == measured && citrate.value < heparin.value {
		return citrate
	}
	return heparin
}

// Recovered is what was given back of the red cells that left the patient, shed or into a pump's circuit. All that can be given
// back came from there, so that it is never more than 1; a cell that is shed twice counts twice on both sides.
func Recovered(s *sim.State) float64 {
	left := s.Patient.ShedCellsML + s.Patient.OnPumpCellsML
	if left <= 0 {
		return 0
	}
	return s.Giving.GivenCells / left
}

func recovery(j *judged) found { return value(Recovered(j.s)) }

func recoveryAgainst(j *judged) found {
	if j.yard.Recovery <= 0 {
		return none()
	}
	return value(Recovered(j.s) / j.yard.Recovery)
}
