package study

import (
	"bytes"
	"cmp"
	"encoding/csv"
	"slices"
	"strconv"
	"strings"

	"rouleau/scenarios"
	"rouleau/scoring/attempt"
	"rouleau/scoring/cells"
	"rouleau/scoring/operators"
	"rouleau/scoring/study"
)

// This file writes the results of people as CSV, from saved attempts, as ReadCohort reads them.

// Collected says what became of the attempts that were given.
type Collected struct {
	CSV      []byte
	Lines    int // attempts written
	People   int
	Practice int // left out: practice, where it was not asked for
	Programs int // left out: played by an operator of the library
	Begun    int // left out: begun by another attempt that was shown
	Open     int // not written, and counted among the attempts of their person: not played to the end
	Twice    int // the same attempt once more
	Nameless int // left out: nobody's name or number stands in it
}

// CollectCohort writes a line for each attempt at a case. A person is who played, as the attempt says; attempts of one person
// are numbered by the time at which they were saved. Of a person who broke the first one off, the next is no first attempt, so
// what was not played to its end is counted and has no line.
func CollectCohort(sc *scenarios.Scenario, attempts []*attempt.Attempt, practice bool) (Collected, error) {
	var out Collected
	kept, seals := []*attempt.Attempt{}, map[string]bool{}
	for _, a := range attempts {
		switch {
		case seals[a.Seal]:
			out.Twice++
		case a.Breaks.TakenOver:
			out.Begun++
		case slices.Contains(operators.Library(), a.Operator):
			out.Programs++
		case personOf(a) == "":
			out.Nameless++
		case !a.Assessment() && !practice:
			out.Practice++
		default:
			kept = append(kept, a)
		}
		seals[a.Seal] = true
	}
	slices.SortFunc(kept, func(a, b *attempt.Attempt) int { // times are all written alike, in UTC
		return cmp.Or(strings.Compare(personOf(a), personOf(b)), strings.Compare(a.When, b.When), strings.Compare(a.Seal, b.Seal))
	})
	var text bytes.Buffer
	w := csv.NewWriter(&text)
	w.Write(append([]string{"person", "attempt", "passed", "points", criticalColumn}, study.Columns(sc)...))
	who, number := "", 0
	for _, a := range kept {
		if number++; personOf(a) != who {
			who, number = personOf(a), 1
			out.People++
		}
		if !a.Ended {
			out.Open++
			continue
		}
		out.Lines++
		w.Write(lineOf(a, number))
	}
	w.Flush()
	out.CSV = text.Bytes()
	return out, w.Error()
}

// personOf is the name or number by which somebody played.
func personOf(a *attempt.Attempt) string { return strings.TrimSpace(a.Operator) }

// lineOf writes the grade that an attempt holds.
func lineOf(a *attempt.Attempt, number int) []string {
	g := &a.Grade
	var critical []string
	for _, c := range g.Critical {
		if !c.Mended {
			critical = append(critical, c.Name)
		}
	}
	digits := func(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }
	line := []string{cells.Text(personOf(a)), strconv.Itoa(number), strconv.FormatBool(g.Passed), digits(float64(g.Points)), strings.Join(critical, " ")}
	for _, c := range g.Criteria {
		line = append(line, digits(float64(c.Points)/float64(c.Of)))
	}
	return line
}
