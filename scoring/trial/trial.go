// Package trial tries a case out before anybody is judged by it: what is suspicious about it shows only when it is played.
package trial

import (
	"fmt"
	"slices"

	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
	"rouleau/scoring"
	"rouleau/scoring/coach"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
)

const (
	mostSeeds  = 3        // a criterion that none of them lets anybody meet is hardly ever met
	playedForS = 8 * 3600 // as much time of a case as is played in all, so that a long one is looked at within a second too
)

// seedsOf are those that a case is tried with: of a very long one only the first.
func seedsOf(sc *scenarios.Scenario) []uint64 {
	var seeds []uint64
	for seed := uint64(1); seed <= uint64(min(max(playedForS/sc.Stops.Seconds, 1), mostSeeds)); seed++ {
		seeds = append(seeds, seed)
	}
	return seeds
}

// Suspect plays a case with the operators steady and idle, and a lesson to the letter, and tells what looks like a slip at
// its place in the file.
func Suspect(sc *scenarios.Scenario) yamlread.Faults {
	var file scenarios.File
	doc := yamlread.Read(sc.Name, sc.Source, &file)
	var steady, idle []scoring.Grade
	var yards []scoring.Yardstick
	try := &tries{sc: sc, doc: doc}
	runs := try.runs()
	for _, run := range runs {
		yards = append(yards, scoring.YardstickOf(run))
		steady = append(steady, scoring.Judge(sc, run, yards[len(yards)-1]))
	}
	short := func(c scoring.CriterionGrade) bool { return c.Points <= 0 }
	if slices.ContainsFunc(steady[0].Criteria, short) { // else every criterion is met by somebody already
		for i, yard := range yards {
			seed := uint64(i) + 1
			run := play.New(sc.Case(seed, false), seed)
			run.ToEnd(operators.Idle{})
			idle = append(idle, scoring.Judge(sc, run, yard))
		}
	}
	if n := passes(steady); n < len(steady) {
		doc.Fault("criteria", fmt.Sprintf("the competent operator steady passes %d of %d runs of this case%s", n, len(steady), why(steady)),
			"a case that a competent person passes")
	}
	waits(doc, sc, runs)
	for i := range sc.Criteria {
		unmet(doc, sc, i, steady, idle)
	}
	return append(coach.Suspect(sc), doc.Faults()...)
}

func passes(grades []scoring.Grade) int {
	n := 0
	for i := range grades {
		if grades[i].Passed {
			n++
		}
	}
	return n
}

// why gives the first reason of the first run that was not passed.
func why(grades []scoring.Grade) string {
	for i := range grades {
		if g := &grades[i]; !g.Passed && len(g.Reasons) > 0 {
			return " (" + g.Reasons[0] + ")"
		}
	}
	return ""
}

// unmet reports a criterion of which nobody gets a point.
func unmet(doc *yamlread.Doc, sc *scenarios.Scenario, i int, tried ...[]scoring.Grade) {
	for _, grades := range tried {
		for k := range grades {
			if grades[k].Criteria[i].Points > 0 {
				return
			}
		}
	}
	c := &tried[0][0].Criteria[i] // as steady did it
	if !c.Measured {
		doc.Fault(fmt.Sprintf("criteria[%d].measure", i), "there is never anything to measure: neither steady, a competent operator, nor somebody who does nothing gets a point",
			"another measure, or what gives occasion for this one")
		return
	}
	key := "least"
	if sc.Criteria[i].Least == nil || sc.Criteria[i].Most != nil && c.Value > *sc.Criteria[i].Most {
		key = "most"
	}
	doc.Fault(fmt.Sprintf("criteria[%d].%s", i, key), "no operator meets this: steady, a competent one, comes to "+scoring.ShowUnit(c.Value, c.Unit)+" and gets no point, nor does somebody who does nothing",
		"a target near what a competent person reaches, or a softer edge")
}
