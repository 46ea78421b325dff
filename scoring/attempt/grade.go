package attempt

import "rouleau/scoring"

// A grade as files and --json hold it.

// Grade is a grade with the names of the file format.
type Grade struct {
	Passed   bool             `json:"passed"`
	Points   Exact            `json:"points"`
	PassMark Exact            `json:"pass_mark"`
	Reasons  []string         `json:"reasons"`
	Critical []Critical       `json:"critical"`
	Parts    []PartGrade      `json:"parts"`
	Criteria []CriterionGrade `json:"criteria"`
}

// PartGrade is the grade of one part of the work.
type PartGrade struct {
	Part    string `json:"part"`
	Title   string `json:"title"`
	Points  Exact  `json:"points"`
	Of      Exact  `json:"of"`
	Floor   Exact  `json:"floor"`
	Reached bool   `json:"reached"`
}

// CriterionGrade is the grade of one criterion.
type CriterionGrade struct {
	Measure   string `json:"measure"`
	Part      string `json:"part"`
	Objective string `json:"objective"`
	Value     Exact  `json:"value"`
	Unit      string `json:"unit"`
	Meaning   string `json:"meaning"`
	Measured  bool   `json:"measured"`
	Target    string `json:"target"`
	Points    Exact  `json:"points"`
	Of        Exact  `json:"of"`
	Reason    string `json:"reason"`
	Source    string `json:"source"`
	Tick      int64  `json:"tick"`
}

// Critical is what no points make up for.
type Critical struct {
	Name   string `json:"name"`
	Amount Exact  `json:"amount"`
	Reason string `json:"reason"`
	Mended bool   `json:"mended"`
	Tick   int64  `json:"tick"`
}

// GradeOf gives a grade the names of the file format.
func GradeOf(g scoring.Grade) Grade { return gradeOf(&g) }

func gradeOf(g *scoring.Grade) Grade {
	to := Grade{Passed: g.Passed, Points: Exact(g.Points), PassMark: Exact(g.PassMark), Reasons: append([]string{}, g.Reasons...),
		Critical: make([]Critical, len(g.Critical)), Parts: make([]PartGrade, len(g.Parts)), Criteria: make([]CriterionGrade, len(g.Criteria))}
	for i, c := range g.Critical {
		to.Critical[i] = Critical{Name: c.Name, Amount: Exact(c.Amount), Reason: c.Reason, Mended: c.Mended, Tick: c.Tick}
	}
	for i, p := range g.Parts {
		to.Parts[i] = PartGrade{Part: p.Part, Title: p.Title, Points: Exact(p.Points), Of: Exact(p.Of), Floor: Exact(p.Floor), Reached: p.Reached}
	}
	for i, c := range g.Criteria {
		to.Criteria[i] = CriterionGrade{Measure: c.Measure, Part: c.Part, Objective: c.Objective, Value: Exact(c.Value), Unit: c.Unit,
			Meaning: c.Meaning, Measured: c.Measured, Target: c.Target, Points: Exact(c.Points), Of: Exact(c.Of), Reason: c.Reason,
			Source: c.Source, Tick: c.Tick}
	}
	return to
}
