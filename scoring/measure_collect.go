package scoring

import "rouleau/sim"

// Measures of collecting.

const (
	ratioWindowS    = 180  // over which drip and blood are set against each other
	leastPer100     = 12.0 // mL of anticoagulant in 100 mL of blood; 15 [S] less the reading of a drip
	mostPer100      = 25.0 // more wastes washing, unless the roller is at the least rate
	leastRateDrops  = 75.0 // about one a second [S] UKCSAG education workbook: no fault however little bleeds
	vacuumLeastMmHg = 80.0
	vacuumMostMmHg  = 150.0 // [S] UKCSAG Factsheet 3
)

// AnticoagulantRange is how much anticoagulant 100 mL of blood should meet, in mL.
func AnticoagulantRange() (least, most float64) { return leastPer100, mostPer100 }

// anticoagulantInRange is the share of the collected blood that met enough anticoagulant, and not far too much.
func anticoagulantInRange(j *judged) found {
	tr := j.run.Trace
	good, all, worst := 0.0, 0.0, int64(-1)
	for i := 1; i < len(tr); i++ {
		blood := tr[i].SuckedBloodML - tr[i-1].SuckedBloodML
		if blood <= 0 {
			continue
		}
		all += blood
		from := max(0, i-ratioWindowS)
		per100 := 100 * (tr[i].DripML - tr[from].DripML) / (tr[i].SuckedBloodML - tr[from].SuckedBloodML)
		withPrime := 100 * (tr[i].DripML + tr[i].PrimedML) / tr[i].SuckedBloodML
		early := tr[i].SuckedBloodML < 200 // the prime still serves
		enough := per100 >= leastPer100 || early && withPrime >= leastPer100
		if enough && (per100 <= mostPer100 || early || tr[i].DropsMin <= leastRateDrops) {
			good += blood
		} else if worst < 0 {
			worst = tr[i].Tick
		}
	}
	if all < 1 {
		return absent()
	}
	f := shareOf(good, all)
	f.tick = worst
	return f
}

func anticoagulantPer100(j *judged) found {
	blood := j.s.Field.SuckedBloodML
	if blood < 1 {
		return absent()
	}
	return value(100 * (j.s.Drip.DrippedML + j.s.Drip.PrimedML) / blood)
}

func vacuumInRange(j *judged) found {
	good, all := 0.0, 0.0
	for _, t := range j.run.Trace {
		if t.SuckMLMin <= 0 {
			continue
		}
		all++
		if t.VacuumMmHg >= vacuumLeastMmHg && t.VacuumMmHg <= vacuumMostMmHg {
			good++
		}
	}
	if all == 0 {
		return absent()
	}
	return shareOf(good, all)
}

func agentCollected(j *judged) found {
	if !hasAgent(j) {
		return none()
	}
	if j.s.Field.SuckedML == 0 {
		return absent()
	}
	if j.s.Conduct.Met[sim.IncidentContaminant] == 0 {
		return value(j.s.Conduct.DivertMissedML) // nothing happened, so there is no moment
	}
	return valueAt(j.s.Conduct.DivertMissedML, j.s.Conduct.Met[sim.IncidentContaminant])
}

// hasAgent says whether something that must be diverted came into the wound.
func hasAgent(j *judged) bool {
	for i := range j.c.Events {
		e := &j.c.Events[i]
		if e.Kind == sim.EventAgentOn && j.s.Team.Fired&(1<<i) != 0 && j.c.Contaminants[int(e.Value)].MustDivert {
			return true
		}
	}
	for i := range j.c.Phases {
		for k := range j.c.Contaminants {
			if j.c.Contaminants[k].MustDivert && j.c.Phases[i].ContaminantPerML[k] > 0 {
				return true
			}
		}
	}
	return false
}

// clot is the most clot that filter and reservoir held at once.
func clot(j *judged) found {
	if j.s.Field.SuckedML == 0 {
		return absent()
	}
	most, at := 0.0, int64(-1)
	for _, t := range j.run.Trace {
		if v := t.FilterClotML + t.ReservoirClotML; v > most && !(j.s.Bench.TakenDown && t.Tick > j.s.Bench.TakenDownTick) {
			most, at = v, t.Tick
		}
	}
	return valueAt(most, at)
}

func worstClearLayer(j *judged) found {
	if j.s.CycleUsed == 0 {
		return absent()
	}
	worst, at := 0.0, int64(-1)
	for i := range j.cycles() {
		if cy := &j.s.Cycles[i]; cy.ClearShare >= worst && cy.FillTick > 0 {
			worst, at = cy.ClearShare, cy.FillTick
		}
	}
	return valueAt(worst, at)
}

func swabsRinsed(j *judged) found {
	if j.s.Field.SuckedML == 0 {
		return absent()
	}
	return value(float64(j.s.Team.RinseTimes))
}

func suctionLysis(j *judged) found {
	if j.s.Field.SuckedCellsML < 1 {
		return absent()
	}
	return shareOf(j.s.Field.SuckedLysedML, j.s.Field.SuckedCellsML)
}
