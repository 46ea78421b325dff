// This file tests the CSV of people that is made from attempts.
package study

import (
	"strings"
	"testing"

	"rouleau/scoring/attempt"
	"rouleau/scoring/study"
)

// saved is an attempt with what the CSV takes from it.
func saved(t *testing.T, who, when, seal string, change func(a *attempt.Attempt)) *attempt.Attempt {
	t.Helper()
	sc, _, _ := planted(t, 0, nil)
	a := &attempt.Attempt{Operator: who, When: when, Seal: seal, Mode: attempt.Assessment, Ended: true}
	a.Grade.Passed, a.Grade.Points = true, 80
	a.Grade.Critical = []attempt.Critical{{Name: "air_given"}, {Name: "clot_given", Mended: true}}
	for i := range sc.Criteria {
		a.Grade.Criteria = append(a.Grade.Criteria, attempt.CriterionGrade{Points: 1, Of: attempt.Exact(sc.Criteria[i].Points)})
	}
	if change != nil {
		change(a)
	}
	return a
}

func TestAttemptsBecomeACohort(t *testing.T) {
	sc, who, table := planted(t, 3, func(r *study.Row) {})
	all := []*attempt.Attempt{
		saved(t, "=P2", "2031-05-14T11:00:00Z", "c", func(a *attempt.Attempt) { a.Grade.Passed = false }),
		saved(t, "P1", "2031-05-14T12:00:00Z", "b", nil),
		saved(t, "P1", "2031-05-14T09:00:00Z", "a", nil),
		saved(t, "P1", "2031-05-14T09:00:00Z", "a", nil),
		saved(t, "P1", "2031-05-14T08:00:00Z", "d", func(a *attempt.Attempt) { a.Mode = attempt.Practice }),
		saved(t, "P3", "2031-05-14T08:00:00Z", "e", func(a *attempt.Attempt) { a.Ended = false }),
		saved(t, "P3", "2031-05-14T09:00:00Z", "f", nil),
		saved(t, "steady", "2031-05-14T09:00:00Z", "g", nil),
		saved(t, " ", "2031-05-14T09:00:00Z", "h", nil),
		saved(t, "P4", "2031-05-14T09:00:00Z", "i", func(a *attempt.Attempt) { a.Breaks.TakenOver = true }),
	}
	c, err := CollectCohort(sc, all, false)
	if err != nil {
		t.Fatal(err)
	}
	if c.Lines != 4 || c.People != 3 || c.Practice != 1 || c.Programs != 1 || c.Open != 1 || c.Begun != 1 || c.Twice != 1 || c.Nameless != 1 {
		t.Errorf("%+v", c)
	}
	var begins []string
	for line := range strings.Lines(string(c.CSV)) {
		begins = append(begins, strings.Join(strings.Split(line, ",")[:5], ","))
	}
	want := "person,attempt,passed,points,critical '=P2,1,false,80,air_given P1,1,true,80,air_given P1,2,true,80,air_given P3,2,true,80,air_given"
	if got := strings.Join(begins, " "); got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
	f := Of(sc, who, table) // what was written is what is read
	if err := f.ReadCohort("people.csv", strings.NewReader(string(c.CSV)), table); err != nil || f.Cohort.N != 2 || f.Cohort.Later != 2 {
		t.Errorf("%v, %+v", err, f.Cohort)
	}
	if c, err := CollectCohort(sc, all, true); err != nil || c.Lines != 5 || !strings.Contains(string(c.CSV), "P1,3,true") {
		t.Errorf("with practice: %v, %+v", err, c)
	}
}
