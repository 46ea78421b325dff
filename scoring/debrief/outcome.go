package debrief

import (
	"slices"

	"rouleau/scoring"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// What came of a run, in the few figures by which two runs of one case are compared.

// Outcome is what came of a run.
type Outcome struct {
	Grade       scoring.Grade
	Critical    []string // names of what points never make up for, mended slips left out
	Bowls       int      // that went into a bag
	ProductML   float64  // washed blood that came into bags
	GivenML     float64
	GivenCells  float64 // mL of red cells given back
	Recovery    float64 // as scoring.Recovered
	MostClotML  float64
	LowestHbGDL float64 // of the patient
	EndHbGDL    float64
	DonorUnits  int
	EndTick     int64
}

func outcomeOf(run *play.Run, g scoring.Grade) Outcome {
	s := &run.State
	o := Outcome{Grade: g, ProductML: sim.TallyTruth(s)[sim.TallyProduct], GivenML: s.Giving.GivenML, GivenCells: s.Giving.GivenCells,
		Recovery: scoring.Recovered(s), LowestHbGDL: s.Patient.LowestHbGDL, EndHbGDL: s.Patient.Blood.HbGPerDL(), DonorUnits: s.Patient.DonorUnits, EndTick: s.Tick}
	for _, c := range g.Critical {
		if !c.Mended {
			o.Critical = append(o.Critical, c.Name)
		}
	}
	for i := range s.Cycles[:s.CycleUsed] {
		if cy := &s.Cycles[i]; cy.Bag >= 0 && cy.ProductML > 1 {
			o.Bowls++
		}
	}
	for i := range run.Trace {
		o.MostClotML = max(o.MostClotML, run.Trace[i].FilterClotML+run.Trace[i].ReservoirClotML)
	}
	return o
}

// Weights by which unlike gains are put in one order [A]: what points never make up for stands before all points, a unit of
// donor blood or a gram of haemoglobin counts as a few points. They order the list and are shown nowhere as figures.
const (
	criticalWeight = 100.0
	passWeight     = 5.0
	unitWeight     = 3.0
	hbWeight       = 2.0  // per g/dL of the lowest
	recoveryWeight = 20.0 // per whole
	slightest      = 0.05 // below this nothing was gained or lost
)

// gain is how much better another outcome is than the person's own, in that order.
func gain(own, other *Outcome) float64 {
	g := other.Grade.Points - own.Grade.Points
	g += float64(criticalWeight * float64(len(own.Critical)-len(other.Critical)))
	g += float64(passWeight * (number(other.Grade.Passed) - number(own.Grade.Passed)))
	return g + gainOfCells(own, other)
}

// gainOfCells is the part of it that the patient has of the cells, points apart.
func gainOfCells(own, other *Outcome) float64 {
	g := float64(unitWeight * float64(own.DonorUnits-other.DonorUnits))
	g += float64(hbWeight * (other.LowestHbGDL - own.LowestHbGDL))
	return g + float64(recoveryWeight*(other.Recovery-own.Recovery))
}

func number(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}

// Freed are the names of what points never make up for that another outcome has not, and Brought those it has anew.
func Freed(own, other *Outcome) (freed, brought []string) {
	for _, c := range own.Critical {
		if !slices.Contains(other.Critical, c) {
			freed = append(freed, c)
		}
	}
	for _, c := range other.Critical {
		if !slices.Contains(own.Critical, c) {
			brought = append(brought, c)
		}
	}
	return freed, brought
}
