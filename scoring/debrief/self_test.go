package debrief

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
)

// graded is a grade of a case of the library in which each criterion got a share of its points.
func graded(t *testing.T, name string, share func(c *scenarios.Criterion) float64) (*scenarios.Scenario, *scoring.Grade) {
	t.Helper()
	sc, err := scenarios.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	g := &scoring.Grade{}
	for i := range sc.Criteria {
		c := &sc.Criteria[i]
		g.Criteria = append(g.Criteria, scoring.CriterionGrade{Measure: c.Measure, Part: c.Part, Objective: c.Objective, Of: c.Points,
			Points: c.Points * share(c), Measured: true})
	}
	return sc, g
}

// row is the row of an objective.
func row(t *testing.T, rows []Beside, id string) *Beside {
	t.Helper()
	at := slices.IndexFunc(rows, func(b Beside) bool { return b.Objective.ID == id })
	if at < 0 {
		t.Fatalf("there is no row of %s", id)
	}
	return &rows[at]
}

func everyMark(sc *scenarios.Scenario, m attempt.Mark) *attempt.Self {
	s := &attempt.Self{}
	for _, o := range attempt.Objectives(sc) {
		s.Marks = append(s.Marks, attempt.ObjectiveMark{Objective: o.ID, Mark: m})
	}
	return s
}

func TestLevelsAtTheirEdges(t *testing.T) {
	for _, k := range []struct {
		share float64
		want  Level
	}{{1, IsMet}, {0.9, IsMet}, {0.899, PartlyMet}, {0.4, PartlyMet}, {0.399, NotMet}, {0, NotMet}} {
		sc, g := graded(t, "steady-oozing-spine", func(*scenarios.Criterion) float64 { return k.share })
		for _, b := range SideBySide(sc, g, nil) {
			if b.Measured != k.want {
				t.Errorf("%s with %g of its points (%g of %g) is %v, want %v", b.Objective.ID, k.share, b.Points, b.Of, b.Measured, k.want)
			}
		}
	}
}

// One criterion off among many takes an objective below a level by its weight, not by being off.
func TestAnObjectiveIsMeasuredByAllItsCriteria(t *testing.T) {
	sc, g := graded(t, "steady-oozing-spine", func(c *scenarios.Criterion) float64 {
		if c.Measure == "label_complete_share" {
			return 0
		}
		return 1
	})
	b := row(t, SideBySide(sc, g, nil), "safe_return")
	of, lost := 0.0, 0.0
	for _, c := range sc.Criteria {
		if c.Objective == "safe_return" {
			of += c.Points
			if c.Measure == "label_complete_share" {
				lost = c.Points
			}
		}
	}
	if lost == 0 || b.Of != of || b.Points != of-lost || b.Measured != levelOf(of-lost, of, true) || b.PartTitle != "Returning" {
		t.Errorf("%+v, want %g of %g", b, of-lost, of)
	}
}

func TestHowMarkAndMeasureStand(t *testing.T) {
	want := map[attempt.Mark][4]Apart{ // not met, partly met, met, nothing to judge
		attempt.NotMarked:    {NoMark, NoMark, NoMark, NoMark},
		attempt.WentWell:     {SeenBetter, SeenBetter, Agree, Agree},
		attempt.WentPartly:   {SeenBetter, Agree, SeenWorse, SeenWorse},
		attempt.NotWell:      {Agree, SeenWorse, SeenWorse, SeenWorse},
		attempt.DidNotComeUp: {CameUpUnseen, CameUpUnseen, CameUpUnseen, Agree},
	}
	if len(want) != int(attempt.MarkCount) {
		t.Fatalf("%d marks are looked at, there are %d", len(want), attempt.MarkCount)
	}
	for m, apart := range want {
		for l := NotMet; l <= NothingToJudge; l++ {
			if got := Compare(m, l); got != apart[l] {
				t.Errorf("%v where it was %v: %v, want %v", m, l, got, apart[l])
			}
		}
	}
}

// An error that points do not make good counts as not met, whatever the points; one that was mended leaves it partly met.
func TestAnErrorCountsOnItsObjective(t *testing.T) {
	all := func(*scenarios.Criterion) float64 { return 1 }
	sc, g := graded(t, "steady-oozing-spine", all)
	g.Critical = []scoring.Critical{{Name: "not_identified", Reason: "given unchecked"}}
	rows := SideBySide(sc, g, everyMark(sc, attempt.WentWell))
	b := row(t, rows, "safe_return")
	if b.Measured != NotMet || b.Apart != SeenBetter || !slices.Equal(b.Errors, []string{"given unchecked"}) {
		t.Errorf("with an error it is %v, %v, %v", b.Measured, b.Apart, b.Errors)
	}
	for i := range rows {
		if r := &rows[i]; r.Objective.ID != "safe_return" && (r.Measured != IsMet || len(r.Errors) > 0) {
			t.Errorf("the error counts on %s too", r.Objective.ID)
		}
	}
	g.Critical[0].Mended = true
	if b := row(t, SideBySide(sc, g, nil), "safe_return"); b.Measured != PartlyMet || len(b.Errors) != 1 {
		t.Errorf("with a mended slip it is %v", b.Measured)
	}
	g.Critical[0].Mended = false
	g.Critical = append(g.Critical, scoring.Critical{Name: "not_identified", Reason: "again", Mended: true})
	if b := row(t, SideBySide(sc, g, nil), "safe_return"); b.Measured != NotMet || len(b.Errors) != 2 {
		t.Errorf("a mended slip after an error makes it %v", b.Measured)
	}
}

// Each error that points never make good has an objective that it counts on, in every case that grades that part of the work.
func TestEveryErrorHasItsObjective(t *testing.T) {
	if len(concerns) != len(scenarios.Criticals) {
		t.Errorf("%d errors are known here, there are %d", len(concerns), len(scenarios.Criticals))
	}
	for _, k := range scenarios.Criticals {
		c, ok := concerns[k.Name]
		if !ok {
			t.Errorf("%s counts on nothing", k.Name)
		}
		for _, m := range c.measures {
			if _, ok := scenarios.MeasureNamed(m); !ok {
				t.Errorf("%s: there is no measure %s", k.Name, m)
			}
		}
		for _, name := range scenarios.Library() {
			sc, g := graded(t, name, func(*scenarios.Criterion) float64 { return 1 })
			rows := SideBySide(sc, g, nil)
			part := slices.ContainsFunc(rows, func(b Beside) bool { return b.Objective.Part == c.part })
			at := concerned(rows, g, k.Name)
			if part && at < 0 {
				t.Errorf("%s: %s counts on no objective", name, k.Name)
			}
			if at >= 0 && slices.ContainsFunc(g.Criteria, func(x scoring.CriterionGrade) bool { return len(c.measures) > 0 && x.Measure == c.measures[0] }) {
				first := slices.IndexFunc(g.Criteria, func(x scoring.CriterionGrade) bool { return x.Measure == c.measures[0] })
				if rows[at].Objective.ID != g.Criteria[first].Objective {
					t.Errorf("%s: %s counts on %s", name, k.Name, rows[at].Objective.ID)
				}
			}
		}
	}
}

// What the case gave no occasion for is neither well nor badly done; what was left undone without reason is.
func TestNothingToJudge(t *testing.T) {
	sc, g := graded(t, "steady-oozing-spine", func(*scenarios.Criterion) float64 { return 1 })
	for i := range g.Criteria {
		if g.Criteria[i].Objective == "safe_return" {
			g.Criteria[i].Measured = false
		}
	}
	rows := SideBySide(sc, g, everyMark(sc, attempt.DidNotComeUp))
	if b := row(t, rows, "safe_return"); b.Measured != NothingToJudge || b.Apart != Agree {
		t.Errorf("%v, %v", b.Measured, b.Apart)
	}
	if b := row(t, rows, "match_the_drip"); b.Apart != CameUpUnseen {
		t.Errorf("what was judged and is marked as not come up: %v", b.Apart)
	}
	for i := range g.Criteria {
		if g.Criteria[i].Objective == "safe_return" {
			g.Criteria[i].Points = 0
		}
	}
	if b := row(t, SideBySide(sc, g, nil), "safe_return"); b.Measured != NotMet {
		t.Errorf("left undone it is %v", b.Measured)
	}
}

// In every case of the library the rows are its graded objectives once each, part after part, and hold all its points.
func TestRowsAreTheObjectivesInTheOrderOfTheWork(t *testing.T) {
	order := func(part string) int {
		return slices.IndexFunc(scenarios.Parts[:], func(p scenarios.Part) bool { return p.Name == part })
	}
	for _, name := range scenarios.Library() {
		sc, g := graded(t, name, func(*scenarios.Criterion) float64 { return 1 })
		of, last, seen := 0.0, 0, map[string]bool{}
		for _, b := range SideBySide(sc, g, nil) {
			if at := order(b.Objective.Part); at < last {
				t.Errorf("%s: %s comes after a later part", name, b.Objective.ID)
			} else {
				last = at
			}
			if seen[b.Objective.ID] || b.Of <= 0 || b.PartTitle == "" {
				t.Errorf("%s: %+v", name, b)
			}
			seen[b.Objective.ID] = true
			of += b.Of
		}
		if want := pointsOf(sc); of < want-1e-9 || of > want+1e-9 {
			t.Errorf("%s: the rows hold %g points of %g", name, of, want)
		}
	}
}

func pointsOf(sc *scenarios.Scenario) (sum float64) {
	for _, c := range sc.Criteria {
		sum += c.Points
	}
	return sum
}

// A played case: the same twice, and what steady did is nearly all met.
func TestSideBySideOfAPlayedCase(t *testing.T) {
	sc, err := scenarios.Open("steady-oozing-spine")
	if err != nil {
		t.Fatal(err)
	}
	run := play.New(sc.Case(3, true), 3)
	run.ToEnd(operators.NewSteady(operators.SheetOf(sc, &run.Case)))
	g := scoring.Judge(sc, run, scoring.YardstickOf(run))
	self := everyMark(sc, attempt.WentWell)
	rows := SideBySide(sc, &g, self)
	if !reflect.DeepEqual(rows, SideBySide(sc, &g, self)) {
		t.Error("twice the same gives two answers")
	}
	sum, met := 0.0, 0
	for _, b := range rows {
		sum += b.Points
		if b.Apart == Agree {
			met++
		}
	}
	if sum < g.Points-1e-9 || sum > g.Points+1e-9 || met < len(rows)-2 {
		t.Errorf("%g of %g points, %d of %d objectives met", sum, g.Points, met, len(rows))
	}
}

func TestOneLineOverAll(t *testing.T) {
	rows := func(agree, better, worse, unseen, none int) (all []Apart) {
		for a, n := range map[Apart]int{Agree: agree, SeenBetter: better, SeenWorse: worse, CameUpUnseen: unseen, NoMark: none} {
			all = append(all, slices.Repeat([]Apart{a}, n)...)
		}
		return all
	}
	for want, all := range map[string][]Apart{
		"7 of 12 as measured, 3 seen better than they were, 2 seen worse": rows(7, 3, 2, 0, 0),
		"12 of 12 as measured": rows(12, 0, 0, 0, 0),
		"0 of 4 as measured, 1 seen better than it was, 1 seen worse, 2 came up unnoticed, 3 not marked": rows(0, 1, 1, 2, 3),
		"The objectives were not marked before the verdict.":                                             rows(0, 0, 0, 0, 5),
	} {
		if got := SumUp(all); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestMarksAndLevelsHaveWords(t *testing.T) {
	said := map[string]bool{}
	for m := range attempt.MarkCount {
		said[MarkWords(m)] = true
	}
	for l := NotMet; l <= NothingToJudge; l++ {
		said[l.String()] = true
	}
	for a := Agree; a <= CameUpUnseen; a++ {
		said[a.String()] = true
	}
	if want := int(attempt.MarkCount) + 4 + 4; len(said) != want {
		t.Errorf("%d different words, want %d: %v", len(said), want, said)
	}
	for w := range said {
		if w == "" || strings.Contains(w, "‹") {
			t.Errorf("%q", w)
		}
	}
}
