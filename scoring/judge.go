package scoring

import (
	"math"
	"slices"

	"rouleau/assets/words"
	"rouleau/scenarios"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// From a finished run to its grade.

// Yardstick is what the operator steady reaches on the same seed.
type Yardstick struct {
	Recovery    float64 // as Recovered says
	LowestHbGDL float64
	DonorUnits  int
}

// PlayYardstick lets steady play the same case.
func PlayYardstick(sc *scenarios.Scenario, seed uint64, assessment bool) Yardstick {
	run := play.New(sc.Case(seed, assessment), seed)
	run.ToEnd(operators.NewSteady(operators.SheetOf(sc, &run.Case)))
	return YardstickOf(run)
}

// YardstickOf takes the yardstick from a finished run of steady.
func YardstickOf(run *play.Run) Yardstick {
	s := &run.State
	return Yardstick{Recovery: Recovered(s), LowestHbGDL: s.Patient.LowestHbGDL, DonorUnits: s.Patient.DonorUnits}
}

// Judge grades a finished run. The same run and yardstick give the same bits everywhere.
func Judge(sc *scenarios.Scenario, run *play.Run, yard Yardstick) Grade {
	j := &judged{sc: sc, run: run, yard: yard, c: &run.Case, s: &run.State}
	g := Grade{PassMark: sc.Pass.MarkPercent, Critical: criticals(j)}
	for _, p := range scenarios.Parts {
		if !sc.Grades(p.Name) {
			p.Points = 0
		}
		g.Parts = append(g.Parts, PartGrade{Part: p.Name, Title: p.Title, Of: p.Points, Floor: p.Points * sc.Pass.FloorPercent / 100})
	}
	for i := range sc.Criteria {
		cg := grade(j, &sc.Criteria[i])
		g.Criteria = append(g.Criteria, cg)
		for k := range g.Parts {
			if g.Parts[k].Part == cg.Part {
				g.Parts[k].Points += cg.Points
			}
		}
	}
	g.Passed = true
	for k := range g.Parts {
		p := &g.Parts[k]
		g.Points += p.Points
		p.Reached = p.Points >= p.Floor-1e-9
		if !p.Reached {
			g.fail(words.Say("verdict.part_below_floor", p.Title, tenths(p.Points), p.Of, p.Floor))
		}
	}
	if of := g.Of(); of > 0 && of < 100 { // a case that leaves parts out
		g.Points = g.Points * 100 / of
	}
	if g.Points < g.PassMark {
		g.fail(words.Say("verdict.below_mark", tenths(g.Points), g.PassMark))
	}
	for _, c := range g.Critical {
		if !c.Mended {
			g.fail(c.Reason)
		}
	}
	if g.Passed {
		g.Reasons = append(g.Reasons, words.Say("verdict.passed", g.Points, g.PassMark))
	}
	return g
}

func (g *Grade) fail(why string) {
	g.Passed = false
	g.Reasons = append(g.Reasons, why)
}

// grade measures one criterion and gives its points.
func grade(j *judged, cr *scenarios.Criterion) CriterionGrade {
	m, _ := scenarios.MeasureNamed(cr.Measure)
	f := found{standing: missing, tick: -1}
	if measure := measures[cr.Measure]; measure != nil {
		f = measure(j)
	}
	if j.rightlyLeft(cr, f.standing) {
		f.standing = nothingToJudge
	}
	if bad(f.value) {
		f = absent()
	}
	cg := CriterionGrade{Measure: cr.Measure, Part: cr.Part, Objective: cr.Objective, Unit: m.Unit, Meaning: m.Meaning, Of: cr.Points,
		Target: target(cr, m), Source: cr.Source, Tick: f.tick, Measured: f.standing == measured}
	share := 0.0
	key := "reason.missing"
	switch f.standing {
	case nothingToJudge:
		share, key = 1, "reason.nothing"
	case measured:
		cg.Value = f.value
		share = cr.Share(f.value)
		switch {
		case share >= 1:
			key = "reason.met"
		case share > 0:
			key = "reason.near"
		default:
			key = "reason.off"
		}
	}
	cg.Points = cr.Points * share
	cg.Reason = words.Say(key) + " " + cr.Note
	return cg
}

// ofProcessing are measures outside processing and returning that only processed blood can meet.
var ofProcessing = [...]string{"bowl_right", "processing_set_opened_at_ml", "worst_clear_layer_share", "handover_complete_share"}

// rightlyLeft says whether what a criterion asks for was left undone because that was the right decision.
func (j *judged) rightlyLeft(cr *scenarios.Criterion, s standing) bool {
	right := j.sc.Right.RightDecision()
	if j.s.Bench.Decision != right || right == sim.SetUpToProcess {
		return false
	}
	if right == sim.DoNotSalvage {
		return s == missing
	}
	return cr.Part == "processing" || cr.Part == "returning" || slices.Contains(ofProcessing[:], cr.Measure)
}

// target puts the band of a criterion in words.
func target(cr *scenarios.Criterion, m scenarios.Measure) string {
	switch {
	case m.Unit == scenarios.YesNo:
		return words.Say("target.yes")
	case cr.Least != nil && cr.Most != nil:
		return words.Say("target.between", Show(*cr.Least), ShowUnit(*cr.Most, m.Unit))
	case cr.Least != nil:
		return words.Say("target.least", ShowUnit(*cr.Least, m.Unit))
	case cr.Most != nil:
		return words.Say("target.most", ShowUnit(*cr.Most, m.Unit))
	}
	return words.Say("target.none")
}

// tenths rounds points down to what is shown of them, so that 5.97 does not read as the 6 that was needed.
func tenths(points float64) float64 { return math.Floor(float64(10*points)+1e-9) / 10 }
