// Package scoring judges a finished run: it measures, grades against the scenario's criteria, and looks for what no points
// make up for.
package scoring

// Grade is the verdict on one run.
type Grade struct {
	Points   float64 // of 100
	PassMark float64
	Passed   bool
	Parts    []PartGrade
	Criteria []CriterionGrade
	Critical []Critical // what is never made up for; any of them fails the run
	Reasons  []string   // why it passed or failed, in plain words
}

// Of is how many points all parts have together: less than 100 where a case leaves parts out.
func (g *Grade) Of() (of float64) {
	for i := range g.Parts {
		of += g.Parts[i].Of
	}
	return of
}

// PartGrade sums one part.
type PartGrade struct {
	Part    string // as scenarios.Parts names it
	Title   string
	Points  float64
	Of      float64
	Floor   float64 // points below which the whole is failed
	Reached bool
}

// CriterionGrade is one criterion with its evidence.
type CriterionGrade struct {
	Measure   string
	Part      string
	Objective string
	Value     float64
	Unit      string
	Meaning   string // of the measure
	Measured  bool   // false when there was nothing to measure; then the points are given or not as Reason says
	Target    string // in words
	Points    float64
	Of        float64
	Reason    string
	Source    string
	Tick      int64 // the moment it turns on, -1 for none
}

// Critical is an act or omission that points never make up for.
type Critical struct {
	Name   string
	Amount float64 // mL, s or IU as the reason says
	Reason string
	Mended bool // a brief slip that was stopped, told and mended: told, but not fatal
	Tick   int64
}
