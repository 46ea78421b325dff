// This file tests what the rules say of operators, and that they say nothing of those they cannot judge.
package study

import (
	"strings"
	"testing"

	"rouleau/scoring/operators"
	"rouleau/scoring/study"
)

// as gives the second of the planted operators another file.
func as(t *testing.T, who []*operators.Operator, table *study.Table, shows string) {
	t.Helper()
	o, faults := operators.Parse("own.yaml", []byte("format: 1\nname: own\nfailing: One of somebody's own.\n"+shows))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	who[1] = o
	for i := range table.Rows {
		if table.Rows[i].Operator == "hasty" {
			table.Rows[i].Operator = "own"
		}
	}
}

// passing makes both others lose everything; who is not idle passes all the same.
func passing(r *study.Row) {
	r.Criteria = make([]float64, len(r.Criteria))
	r.Passed = r.Operator != idle
}

// An operator that does not say what its failing shows is not judged, and the rules claim nothing about it.
func TestWithoutShowsNothingIsClaimed(t *testing.T) {
	sc, who, table := planted(t, 10, passing)
	as(t, who, table, "")
	f := Of(sc, who, table)
	if broken := f.Broken(); len(broken) > 0 {
		t.Errorf("%q", broken)
	}
	said := f.NotJudged()
	if len(said) != 1 || !strings.HasPrefix(said[0], "not judged: own, which passes 100.0 % of its runs. Its file does not say") {
		t.Errorf("%q", said)
	}
	v := f.Verdict()
	if strings.Contains(v, "failing matters") || strings.Contains(v, "what comes back") || !strings.Contains(v, "doing nothing never passes") {
		t.Errorf("the verdict claims what was not looked at: %s", v)
	}
	if text := html(t, f); !strings.Contains(text, "<li>not judged: own") {
		t.Error("the page does not say it")
	}
}

// With a failing that shows in little of the case it is not judged either; with one that shows in much it breaks a rule, and is
// told what its failing costs and what to change.
func TestPassingWithAFailing(t *testing.T) {
	sc, who, table := planted(t, 10, passing)
	as(t, who, table, "shows: [tally_error]\n")
	f := Of(sc, who, table)
	if said := f.NotJudged(); len(f.Broken()) > 0 || len(said) != 1 || !strings.Contains(said[0], "puts at stake no objective") {
		t.Errorf("%q, %q", said, f.Broken())
	}
	sc, who, table = planted(t, 10, func(r *study.Row) {
		passing(r)
		if r.Operator == "hasty" {
			r.Criteria[1] = 0.5 // half of the second criterion is lost, and all of the first
			r.Points = 80
		}
	})
	as(t, who, table, "shows: ["+sc.Criteria[0].Measure+", "+sc.Criteria[1].Measure+"]\n")
	for i := range sc.Criteria {
		sc.Criteria[i].Objective = sc.Objectives[1].ID
	}
	sc.Criteria[0].Objective, sc.Criteria[1].Objective = sc.Objectives[0].ID, sc.Objectives[0].ID
	sc.Criteria[0].Points, sc.Criteria[1].Points = 2, 4
	f = Of(sc, who, table)
	if broken := f.Broken(); len(broken) != 1 || len(f.NotJudged()) > 0 || !strings.Contains(broken[0], "costs it 4.0 points: "+table.Criteria[0]+" 2.0 of 2, "+table.Criteria[1]+" 2.0 of 4. It comes to 80.0 points on the mean, and 75 pass") {
		t.Errorf("%q, %q", broken, f.NotJudged())
	}
}

// Criteria that part only who does nothing are told of in one line; with nobody else playing that says nothing, and is not told.
func TestPartedByIdleAloneIsOneLine(t *testing.T) {
	sc, who, table := planted(t, 10, func(r *study.Row) {
		if r.Operator == idle {
			r.Criteria = make([]float64, len(r.Criteria))
		}
	})
	f := Of(sc, who, table)
	if len(f.Warnings) != 1 || !strings.HasPrefix(f.Warnings[0], "only who does nothing at all is told from steady by: "+table.Criteria[0]+", ") || !strings.Contains(f.Warnings[0], " more. ") {
		t.Errorf("%q", f.Warnings)
	}
	f = Of(sc, []*operators.Operator{who[0], who[2]}, table)
	if len(f.Warnings) > 0 || len(f.Broken()) > 0 {
		t.Errorf("%q, %q", f.Warnings, f.Broken())
	}
}

// The page begins with the verdict in plain words; how its figures are made comes last.
func TestThePageBeginsWithTheVerdict(t *testing.T) {
	text := full(t)
	verdict, first, methods, last := strings.Index(text, "the rules"), strings.Index(text, "<h2>"), strings.Index(text, "DeLong"), strings.LastIndex(text, "<h2>")
	if verdict < 0 || verdict > first || methods < last || strings.Contains(text[:first], "jackknife") {
		t.Errorf("verdict at %d, first head at %d, methods at %d, last head at %d", verdict, first, methods, last)
	}
}

// Both sources of what comes back stand once above the table of all cases, not once a case.
func TestTheTableNamesSourcesOnce(t *testing.T) {
	sc, who, table := planted(t, 10, passing)
	table.Rows = append(table.Rows, unrinsed(table)...)
	f := Of(sc, who, table)
	var b strings.Builder
	WriteTable(&b, "1..10", []Entry{{Figures: f}, {Figures: f}})
	if text := b.String(); strings.Count(text, "Waters") != 1 || strings.Count(text, "Haynes") != 1 || strings.Count(text, "came from swabs") != 2 || strings.Index(text, "Haynes") > strings.Index(text, "###") {
		t.Error(text)
	}
}
