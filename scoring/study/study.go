// Package study plays a case with several operators and keeps of each run what a study needs: one row of figures. It plays one
// seed after another and knows no processors; who has several plays several seeds at once.
package study

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"

	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// Row is one run.
type Row struct {
	Case       string // what was played, see Identity
	Seed       uint64
	Operator   string
	Digest     string // of the operator's file
	Passed     bool
	Points     float64 // of 100
	Parts      []float64
	Criteria   []float64 // share of the points of each criterion, 0 to 1
	Critical   []string  // what is never made up for, slips that were mended left out
	Recovery   float64   // as scoring.Recovered says
	LengthS    float64
	DonorUnits int
}

// steadyName is the operator whose run is the yardstick for all.
const steadyName = "steady"

// Identity says what was played, so that rows of different cases, models or modes are never put together.
func Identity(sc *scenarios.Scenario, assessment bool) string {
	mode := "practice"
	if assessment {
		mode = "assessment"
	}
	sum := sha256.Sum256([]byte(sc.Hash()))
	return fmt.Sprintf("%s %d %s model %s %s", sc.ID, sc.Version, hex.EncodeToString(sum[:6]), sim.ModelVersion, mode)
}

// Columns are the names of the criteria: the measure, with a number behind it where a case uses it twice.
func Columns(sc *scenarios.Scenario) []string {
	var names []string
	for i := range sc.Criteria {
		name := sc.Criteria[i].Measure
		for n := 2; slices.Contains(names, name); n++ {
			name = fmt.Sprintf("%s_%d", sc.Criteria[i].Measure, n)
		}
		names = append(names, name)
	}
	return names
}

// Play plays one seed with each operator. Steady plays once, whether it is among them or not: it is the yardstick.
func Play(sc *scenarios.Scenario, seed uint64, who []*operators.Operator, assessment bool) []Row {
	c := sc.Case(seed, assessment)
	sheet := operators.SheetOf(sc, &c)
	steady := play.New(c, seed)
	steady.ToEnd(operators.NewSteady(sheet))
	yard := scoring.YardstickOf(steady)
	rows := make([]Row, 0, len(who))
	for _, o := range who {
		run := steady
		if o.Name != steadyName {
			run = play.New(c, seed)
			run.ToEnd(o.Play(sheet))
		}
		rows = append(rows, row(sc, run, o, scoring.Judge(sc, run, yard), assessment))
	}
	return rows
}

// row keeps the figures of a run.
func row(sc *scenarios.Scenario, run *play.Run, who *operators.Operator, g scoring.Grade, assessment bool) Row {
	s := &run.State
	r := Row{Case: Identity(sc, assessment), Seed: run.Seed, Operator: who.Name, Digest: who.Digest, Passed: g.Passed, Points: g.Points, LengthS: sim.Seconds(s.Tick), DonorUnits: s.Patient.DonorUnits, Recovery: scoring.Recovered(s)}
	for _, p := range g.Parts {
		r.Parts = append(r.Parts, p.Points)
	}
	for _, c := range g.Criteria {
		r.Criteria = append(r.Criteria, c.Points/c.Of)
	}
	for _, c := range g.Critical {
		if !c.Mended {
			r.Critical = append(r.Critical, c.Name)
		}
	}
	return r
}
