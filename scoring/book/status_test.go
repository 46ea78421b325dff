package book_test

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"rouleau/scoring/book"
	"rouleau/scoring/book/booktest"
)

func standing(t *testing.T, b *booktest.Bench, who, today string) book.Standing {
	t.Helper()
	at, err := time.Parse("2006-01-02", today)
	if err != nil {
		t.Fatal(err)
	}
	for _, st := range b.Status(b.Plan(), at) {
		if st.Learner == who && st.Competency.Name == "salvage" {
			return st
		}
	}
	t.Fatalf("%s has no standing", who)
	return book.Standing{}
}

func TestWhoIsDueAndWhy(t *testing.T) {
	b, _, e := full(t)
	if st := standing(t, b, booktest.Trainee, "2031-06-01"); !st.Shown || st.Due || st.Cases != 1 || st.Until.Format("2006-01-02") != "2034-05-14" {
		t.Error(st.String())
	}
	if st := standing(t, b, booktest.Trainee, "2031-05-12"); st.Shown || !st.Due { // before it was shown
		t.Error(st.String())
	}
	if st := standing(t, b, booktest.Trainee, "2032-05-20"); !st.Due || !strings.Contains(strings.Join(st.Why, ";"), "nothing in 12 months, the last on 2031-05-14") {
		t.Error(st.String())
	}
	if st := standing(t, b, booktest.Trainee, "2034-05-15"); !st.Due || !slices.Contains(st.Why, "it held until 2034-05-14") {
		t.Error(st.String())
	}
	other := standing(t, b, booktest.Other, "2031-06-01")
	if other.Shown || !other.Due || len(other.Missing) != 4 || !strings.Contains(strings.Join(other.Why, ";"), "an incident on 2031-05-11: a near miss") {
		t.Error(other.String())
	}
	b.Must(t, &book.Event{By: booktest.Admin, What: book.EventEquipment, Date: "2031-07-01", Reason: "another bench"}, nil, booktest.Admin)
	if st := standing(t, b, booktest.Trainee, "2031-07-02"); st.Shown || !st.Due || !strings.Contains(strings.Join(st.Why, ";"), "new equipment on 2031-07-01") || st.Cases != 1 {
		t.Error(st.String())
	}
	// on the day of an event the order in the book decides
	b.Must(t, &book.Event{Learner: booktest.Trainee, By: booktest.First, What: book.EventIncident, Date: "2031-05-14", Reason: "a clotted filter"}, nil, booktest.First)
	if st := standing(t, b, booktest.Trainee, "2031-05-20"); st.Shown || !st.Due {
		t.Error(st.String())
	}
	again := booktest.SignOff(t, file(t), booktest.Trainee, booktest.First)
	again.Rated = []book.Rated{{"handover", 3, "", ""}, {"asepsis", 3, "", ""}}
	b.Must(t, again, file(t), booktest.First)
	if st := standing(t, b, booktest.Trainee, "2031-05-20"); !st.Shown || st.Due {
		t.Error(st.String())
	}
	b.Must(t, &book.Void{Of: e["case"].Leaf.ID, Learner: booktest.Trainee, Assessor: booktest.Second, Reason: "counted twice"}, nil, booktest.Second)
	if st := standing(t, b, booktest.Trainee, "2031-06-01"); st.Shown || st.Cases != 0 {
		t.Error(st.String())
	}
}

// A case that is to be passed twice is passed with two seeds, and again after what asks for it.
func TestACaseIsPassedTwiceWithTwoSeeds(t *testing.T) {
	b, _, _ := full(t)
	b.Must(t, &book.PlanText{By: booktest.Admin, YAML: `format: 1
department: D-1
competencies:
  - {name: salvage, title: Collecting, scenarios: [{id: short-and-brisk, passes: 2}], after: [equipment]}
`}, nil, booktest.Admin)
	want := func(today, missing string) {
		t.Helper()
		if st := standing(t, b, booktest.Trainee, today); strings.Join(st.Missing, ";") != missing || st.Shown != (missing == "") {
			t.Errorf("%s: %s, want %q", today, st.String(), missing)
		}
	}
	pass := func(seed string, change func(s *book.SignOff)) {
		s := booktest.SignOff(t, file(t), booktest.Trainee, booktest.First)
		s.Seed = seed
		change(s)
		b.Must(t, s, file(t), booktest.First)
	}
	same := func(*book.SignOff) {}
	want("2031-06-01", "case short-and-brisk signed off 1 times of 2")
	pass("7", same)
	pass("8", func(s *book.SignOff) { s.Outcome, s.Override = book.NotYet, "helped" })
	pass("9", func(s *book.SignOff) { s.Scenario.ID = "another" })
	pass("10", func(s *book.SignOff) { s.Learner = booktest.Other })
	want("2031-06-01", "case short-and-brisk signed off 1 times of 2")
	pass("8", same)
	want("2031-06-01", "")
	want("2031-05-13", "case short-and-brisk signed off 0 times of 2") // a day before all of it
	b.Must(t, &book.Event{By: booktest.Admin, What: book.EventEquipment, Date: "2031-05-20", Reason: "another bench"}, nil, booktest.Admin)
	want("2031-06-01", "case short-and-brisk signed off 0 times of 2")
	b.Must(t, &book.Event{By: booktest.Admin, What: book.EventAway, Date: "2031-05-25", Reason: "the plan does not ask for it"}, nil, booktest.Admin)
	pass("11", func(s *book.SignOff) { s.Date = "2031-05-21T10:00:00Z" })
	want("2031-06-01", "case short-and-brisk signed off 1 times of 2")
}

// An assessor may set an earlier date for a case; a supervised case since then does not put it off.
func TestTheDateThatAnAssessorSetHolds(t *testing.T) {
	b, _, _ := full(t)
	until := func(want string) {
		t.Helper()
		if st := standing(t, b, booktest.Trainee, "2031-06-15"); !st.Shown || st.Until.Format("2006-01-02") != want {
			t.Errorf("%s, want until %s", st.String(), want)
		}
	}
	until("2034-05-14")
	b.Must(t, &book.Case{Learner: booktest.Trainee, Assessor: booktest.First, Competency: "salvage", Date: "2031-06-10"}, nil, booktest.First)
	until("2034-05-14")
	s := booktest.SignOff(t, file(t), booktest.Trainee, booktest.First)
	s.Date, s.Due = "2031-06-11T10:00:00Z", "2040-01-01" // no later than the plan has it
	s.Rated = []book.Rated{{"handover", 3, "", ""}, {"asepsis", 3, "", ""}}
	newer := b.Must(t, s, file(t), booktest.First)
	until("2034-06-11")
	b.Must(t, &book.Void{Of: newer.Leaf.ID, Learner: booktest.Trainee, Assessor: booktest.First, Reason: "mistaken"}, nil, booktest.First)
	until("2034-05-14")
	s = booktest.SignOff(t, file(t), booktest.Other, booktest.First)
	s.Due = "2031-06-01"
	b.Must(t, s, file(t), booktest.First)
	until("2034-05-14") // that is another learner's
	c, _, e := full(t)
	s = booktest.SignOff(t, file(t), booktest.Trainee, booktest.First)
	s.Due, s.Supersedes, s.Rated = "2031-12-01", e["signoff"].Leaf.ID, []book.Rated{{"handover", 3, "", ""}, {"asepsis", 3, "", ""}}
	c.Must(t, s, file(t), booktest.First)
	if st := standing(t, c, booktest.Trainee, "2031-12-02"); !st.Shown || !st.Due || !slices.Contains(st.Why, "it held until 2031-12-01") {
		t.Error(st.String())
	}
}

// Lots, operators and incidents of a practice case are kept to practise keeping them: no real incident comes of one.
func TestATrainingIncidentIsNoIncident(t *testing.T) {
	b, _, _ := full(t)
	before := standing(t, b, booktest.Trainee, "2031-06-01")
	s := booktest.SignOff(t, file(t), booktest.Trainee, booktest.First)
	s.Rated = []book.Rated{{"handover", 3, "", ""}, {"asepsis", 3, "", ""}}
	s.Training = []book.Training{{book.TrainingIncident, "a clotted filter"}, {book.TrainingOperator, "T-12"}}
	b.Must(t, s, file(t), booktest.First)
	if st := standing(t, b, booktest.Trainee, "2031-06-01"); !st.Shown || st.Due || st.String() != before.String() {
		t.Error(st.String())
	}
}

func TestASupersededRecordNoLongerCounts(t *testing.T) {
	b, _, e := full(t)
	s := booktest.SignOff(t, file(t), booktest.Trainee, booktest.Second)
	s.Outcome, s.Override, s.Supersedes = book.NotYet, "the label was written by somebody else", e["signoff"].Leaf.ID
	newer := b.Must(t, s, file(t), booktest.Second)
	if st := standing(t, b, booktest.Trainee, "2031-06-01"); st.Shown {
		t.Error(st.String())
	}
	// deleting the newer one must not bring the older one back
	forget := &book.Forget{Of: newer.Leaf.ID, By: booktest.Admin, Reason: "on wish"}
	if _, err := b.Write(forget, nil, b.Keys[booktest.Admin]); err == nil || !strings.Contains(err.Error(), "which would count again: make that one void or delete it first") {
		t.Error(err)
	}
	again := *s
	if _, err := b.Write(&again, file(t), b.Keys[booktest.Second]); err == nil || !strings.Contains(err.Error(), "not in force any more") {
		t.Error(err)
	}
	b.Must(t, &book.Void{Of: e["signoff"].Leaf.ID, Learner: booktest.Trainee, Assessor: booktest.Second, Reason: "mistaken"}, nil, booktest.Second)
	b.Must(t, forget, nil, booktest.Admin)
	read, err := book.Open(b.Store, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	if st := standing(t, &booktest.Bench{Book: read}, booktest.Trainee, "2031-06-01"); st.Shown {
		t.Error(st.String())
	}
}

// The worked example of many textbooks: 20 yes-yes, 15 no-no, 5 and 10 apart in 50, kappa 0.4.
func TestKappa(t *testing.T) {
	var pairs [][2]int
	add := func(n, a, b int) {
		for range n {
			pairs = append(pairs, [2]int{a, b})
		}
	}
	add(20, 2, 2)
	add(5, 2, 1)
	add(10, 1, 2)
	add(15, 1, 1)
	if a := book.Agree(pairs); math.Abs(a.Kappa-0.4) > 1e-12 || a.Same != 35 || !a.Computed {
		t.Errorf("%+v", a)
	}
	if a := book.Agree([][2]int{{2, 2}, {2, 2}}); a.Computed || a.Same != 2 {
		t.Errorf("%+v: with one level throughout there is no kappa", a)
	}
	if a := book.Agree([][2]int{{1, 2}}); a.Computed || a.Items != 1 {
		t.Errorf("%+v: one item is too little", a)
	}
	if a := book.Agree([][2]int{{1, 2}, {2, 1}}); math.Abs(a.Kappa+1) > 1e-12 {
		t.Errorf("%+v", a)
	}
	b, _, e := full(t)
	if a := b.Agreement(e["signoff"].Leaf.ID); a.Items != 2 || a.Same != 1 {
		t.Errorf("%+v", a)
	}
}

// Second ratings are compared of one record or of all, and only while both the rating and what it rates are in force.
func TestAgreementIsOfWhatIsInForce(t *testing.T) {
	b, _, e := full(t)
	s := booktest.SignOff(t, file(t), booktest.Other, booktest.Second)
	s.Rated = []book.Rated{{"handover", 1, "", ""}, {"honesty", 2, "", ""}}
	other := b.Must(t, s, file(t), booktest.Second)
	second := b.Must(t, &book.Rating{Of: other.Leaf.ID, Learner: booktest.Other, Assessor: booktest.First, Rated: []book.Rated{{"handover", 1, "", ""}, {"asepsis", 3, "", ""}}}, nil, booktest.First)
	want := func(name, id string, items, same, ratings int) {
		t.Helper()
		if a := b.Agreement(id); a.Items != items || a.Same != same {
			t.Errorf("%s: %+v, want %d of %d", name, a, same, items)
		}
		if id != "" && len(b.Ratings(id)) != ratings {
			t.Errorf("%s: %d ratings, want %d", name, len(b.Ratings(id)), ratings)
		}
	}
	id := e["signoff"].Leaf.ID
	want("all", "", 3, 2, 0)
	want("the first", id, 2, 1, 1)
	want("the second", other.Leaf.ID, 1, 1, 1)
	want("none", second.Leaf.ID, 0, 0, 0)
	b.Must(t, &book.Void{Of: second.Leaf.ID, Learner: booktest.Other, Assessor: booktest.First, Reason: "mistaken"}, nil, booktest.First)
	want("all but a void one", "", 2, 1, 0)
	want("the void one", other.Leaf.ID, 0, 0, 0)
	b.Must(t, &book.Forget{Of: id, By: booktest.Admin, Reason: "on wish"}, nil, booktest.Admin)
	want("nothing is left", "", 0, 0, 0)
}

func TestAPlanTellsAllThatIsWrongWithIt(t *testing.T) {
	_, err := book.ReadPlan("plan.yaml", []byte(`format: 1
department: D-1
items:
  - {name: a, title: something, anchors: [low, high], needs: 3}
competencies:
  - {name: c, title: something, items: [b], after: [holiday]}
  - {name: c, title: another thing}
`))
	if err == nil {
		t.Fatal("nothing is wrong with it")
	}
	for _, want := range []string{"plan.yaml:4", "not so many anchors", "no item of this name", "this is no event", "a competency of this name", "nothing shows this competency"} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("%q is not told in\n%v", want, err)
		}
	}
}

func TestAPlanWithoutItemsHasTheStandingOnes(t *testing.T) {
	text := `format: 1
department: D-1
competencies:
  - {name: salvage, title: something, items: [asepsis, closed_loop, handover, honesty]}
`
	p, err := book.ReadPlan("plan.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	for _, it := range p.Items {
		if len(it.Anchors) != 4 || it.Needs != 3 || strings.Contains(it.Title+strings.Join(it.Anchors, ""), "‹") {
			t.Errorf("%+v", it)
		}
	}
	if len(p.Items) != 4 {
		t.Errorf("%d items", len(p.Items))
	}
	b, m, _ := full(t)
	if got := b.Items(); len(got) != 2 || got[0].Anchors[1] != "notices and mends" {
		t.Errorf("the items of the plan in force are %+v", got)
	}
	if got := book.NewState(m.Name).Items(); len(got) != 4 || got[3].Name != "honesty" {
		t.Errorf("without a plan there are %+v", got)
	}
}
