package group

import (
	"math"
	"slices"
	"testing"

	"rouleau/scoring/attempt"
	"rouleau/scoring/debrief"
)

var (
	dripLate  = kind{"drip", debrief.Late}
	labelGone = kind{"label", debrief.LeftOut}
	bowlWrong = kind{"bowl", debrief.Wrong}
)

// one is an attempt of a person, in a month of 2031, with what it came to.
func one(person, number int, month string, points float64, passed bool, all ...found) *entry {
	return &entry{attempt: &attempt.Attempt{When: "2031-" + month + "-10T08:00:00Z"}, person: person, number: number,
		facts: facts{points: points, passed: passed, critical: !passed, found: all}}
}

func cost(k kind, points, gain float64, critical bool, title string) found {
	return found{k, points, gain, critical, title}
}

// small is a class of four people with eight attempts, small enough to count by hand.
func small() []*entry {
	return []*entry{
		one(0, 1, "03", 50, false, cost(dripLate, 10, 10, false, "ten"), cost(labelGone, 4, 104, true, "label ten")),
		one(1, 1, "03", 60, false, cost(dripLate, 6, 6, false, "six")),
		one(2, 1, "03", 70, true, cost(dripLate, 2, 2, false, ""), cost(bowlWrong, 9, 9, false, "bowl")),
		one(3, 1, "04", 80, true),
		one(0, 2, "04", 90, true, cost(dripLate, 4, 4, false, "four")),
		one(1, 2, "04", 58, false, cost(labelGone, 5, 5, false, "label five")),
		one(2, 2, "05", 70.04, true, cost(labelGone, 6, 106, true, "label six")),
		one(0, 3, "05", 95, true),
	}
}

func near(a, b float64) bool { return math.Abs(a-b) < 1e-9 }

// Each figure beside the sum that was done by hand.
func TestFiguresAreThoseOfPaperAndPencil(t *testing.T) {
	f := figuresOf(small(), LeastPeople)
	// points in order: 50 58 60 70 70.04 80 90 95; sum 573.04; quartiles at places 1.75, 3.5, 5.25 of 0 to 7
	want := part{attempts: 8, people: 4, passed: 5, critical: guarded{hidden: true}} // critical were two people's attempts
	if got := f.all; got.attempts != want.attempts || got.people != want.people || got.passed != want.passed || got.critical != want.critical {
		t.Errorf("of all: %+v", got)
	}
	if s := f.all.points; !near(s.mean, 71.63) || !near(s.low, 59.5) || !near(s.middle, 70.02) || !near(s.high, 82.5) {
		t.Errorf("points: %+v", s)
	}
	if len(f.kinds) != 2 || f.unnamed != 1 {
		t.Fatalf("kinds: %+v, unnamed %d; the bowl is one person's own", f.kinds, f.unnamed)
	}
	// labels: gains 104 + 5 + 106 = 215 stand before the 22 of the drip, though it cost fewer points
	if k := f.kinds[0]; k.kind != labelGone || k.attempts != 3 || k.people != 3 || !k.critical.hidden || !near(k.points.mean, 5) || !near(k.points.middle, 5) || !near(k.each, 15.0/8) || !near(k.gain, 215) {
		t.Errorf("labels: %+v", k)
	}
	if k := f.kinds[1]; k.kind != dripLate || k.attempts != 4 || k.people != 3 || k.critical != (guarded{}) || !near(k.points.mean, 5.5) || !near(k.points.middle, 5) || !near(k.each, 22.0/8) {
		t.Errorf("drip: %+v", k)
	}
	// nearest to the middle of 5 are six and four; six was first. What has no title is no example.
	if e := f.kinds[1].example; e != (example{"six", 1, 1}) {
		t.Errorf("example: %+v", e)
	}
	if e := f.kinds[0].example; e != (example{"label five", 1, 2}) {
		t.Errorf("example: %+v", e)
	}
}

// Of those who came again, person 0 went from 50 to 95, 1 from 60 to 58, 2 from 70 to 70.04, which looks the same.
func TestTheSamePeopleAreComparedWithThemselves(t *testing.T) {
	a := figuresOf(small(), LeastPeople).again
	if a.people != 3 || a.more != 1 || a.fewer != 1 || math.Abs(a.change.middle-0.04) > 1e-9 {
		t.Errorf("%+v", a)
	}
	if !slices.Equal(a.first, []int{1, 3}) || !slices.Equal(a.last, []int{2, 0}) {
		t.Errorf("labels and drip the first time %v, the last time %v", a.first, a.last)
	}
	two := slices.DeleteFunc(small(), func(e *entry) bool { return e.person == 2 && e.number == 2 })
	if a := figuresOf(two, LeastPeople).again; a.people != 0 || a.more != 0 || a.first != nil {
		t.Errorf("two people are compared: %+v", a)
	}
	if a := figuresOf(two, 1).again; a.people != 2 {
		t.Errorf("where it was asked for they are not: %+v", a)
	}
}

// By number: four people the first time, three the second, one the third, who is joined. By month: three in each of March and
// April; the two of May are joined.
func TestPartsHaveEnoughPeople(t *testing.T) {
	f := figuresOf(small(), LeastPeople)
	type shape struct{ from, to, attempts, people, passed, label, drip int }
	shapes := func(parts []part) (all []shape) {
		for _, p := range parts {
			all = append(all, shape{p.from, p.to, p.attempts, p.people, p.passed, p.occurred[0], p.occurred[1]})
		}
		return all
	}
	if got := shapes(f.numbers); !slices.Equal(got, []shape{{1, 1, 4, 4, 2, 1, 3}, {2, 3, 4, 3, 3, 2, 1}}) {
		t.Errorf("by number: %+v", got)
	}
	march := 2031*12 + 2
	if got := shapes(f.months); !slices.Equal(got, []shape{{march, march, 3, 3, 1, 1, 3}, {march + 1, march + 2, 5, 4, 4, 2, 1}}) {
		t.Errorf("by month: %+v", got)
	}
	if got := figuresOf(small(), 1); len(got.numbers) != 3 || len(got.months) != 3 || len(got.kinds) != 3 || got.unnamed != 0 {
		t.Errorf("where it was asked for: %d numbers, %d months, %d kinds", len(got.numbers), len(got.months), len(got.kinds))
	}
}

// However attempts lie, no part has too few people unless all together have, and every attempt is in one part.
func TestNoPartTellsOnAnybody(t *testing.T) {
	state := uint64(1)
	draw := func(n int) int {
		state = state*6364136223846793005 + 1442695040888963407
		return int(state >> 33 % uint64(n))
	}
	for range 2000 {
		var entries []*entry
		counted := map[int]int{}
		for range 3 + draw(30) {
			who := draw(7)
			counted[who]++
			entries = append(entries, one(who, counted[who], []string{"01", "02", "03", "04", "05", "06", "07", "08", "09", "11"}[draw(10)], float64(draw(101)), draw(2) == 0))
		}
		if peopleOf(entries) < LeastPeople {
			continue
		}
		f := figuresOf(entries, LeastPeople)
		for _, parts := range [][]part{f.numbers, f.months} {
			sum := 0
			for i, p := range parts {
				sum += p.attempts
				if p.people < LeastPeople || i > 0 && p.from <= parts[i-1].to {
					t.Fatalf("%+v", parts)
				}
			}
			if sum != len(entries) || len(parts) > mostParts {
				t.Fatalf("%d attempts in %d parts, of %d", sum, len(parts), len(entries))
			}
		}
	}
}

// Of several decisions of a kind the costliest counts, and any of them can have been critical.
func TestTheCostliestOfAKindCounts(t *testing.T) {
	own := &debrief.Outcome{Critical: []string{"unlabelled_given"}}
	own.Grade.Points = 60
	better := func(k kind, title string, points, gain float64, freed bool) debrief.Cost {
		c := debrief.Cost{Decision: debrief.Decision{Aspect: k.aspect, Fault: k.fault, Title: title}, Points: points, Gain: gain}
		if !freed {
			c.With.Critical = own.Critical
		}
		return c
	}
	a := &attempt.Attempt{Grade: attempt.Grade{Points: 60}}
	f := factsOf(a, own, []debrief.Cost{better(labelGone, "one bag", 1, 1, true), better(labelGone, "all bags", 3, 3, false), better(dripLate, "worse", -4, -4, false),
		better(bowlWrong, "nothing", 0, 0.01, false), better(dripLate, "drip", 2, 2, false)})
	want := []found{{labelGone, 3, 3, true, "all bags"}, {dripLate, 2, 2, false, "drip"}}
	if !slices.Equal(f.found, want) || f.points != 60 || !f.critical || f.regraded {
		t.Errorf("%+v", f)
	}
	a.Grade.Points = 61
	if !factsOf(a, own, nil).regraded {
		t.Error("a grade that comes out otherwise is not noticed")
	}
}

// What fewer people had is told by part of the work, where that makes as many people; of it there is no example.
func TestRareKindsAreTakenTogether(t *testing.T) {
	rare := func(aspect string) kind { return kind{aspect, debrief.Wrong} }
	entries := []*entry{
		one(0, 1, "03", 50, false, cost(rare("vacuum"), 3, 3, false, "vacuum"), cost(rare("route"), 1, 101, true, "route")),
		one(1, 1, "03", 60, false, cost(rare("route"), 6, 106, true, "route")),
		one(2, 1, "03", 70, false, cost(rare("swabs"), 9, 109, true, "swabs"), cost(rare("label"), 2, 2, false, "label")),
		one(3, 1, "04", 80, true, cost(rare("filter"), 2, 2, false, "filter")),
	}
	f := figuresOf(entries, LeastPeople)
	if len(f.kinds) != 1 || f.unnamed != 5 {
		t.Fatalf("%+v, unnamed %d", f.kinds, f.unnamed)
	}
	// the costliest of each attempt: 1 (gain 101), 6 and 9
	k := f.kinds[0]
	if k.name() != "other decisions in collecting" || k.attempts != 3 || k.people != 3 || k.critical != (guarded{attempts: 3}) || !near(k.points.mean, 16.0/3) || !near(k.each, 4) || k.example != (example{}) || k.faultText() != "" {
		t.Errorf("%+v", k)
	}
	if f.all.occurred[0] != 3 {
		t.Errorf("it occurred %d times", f.all.occurred[0])
	}
	if got := figuresOf(entries, 1); len(got.kinds) != 5 || got.unnamed != 0 || slices.ContainsFunc(got.kinds, func(k kindFigures) bool { return k.together() }) {
		t.Errorf("where it was asked for: %+v", got.kinds)
	}
}

// Every kind of decision belongs to the part of the work in which its finder stands.
func TestEveryKindHasItsWork(t *testing.T) {
	for name, want := range map[string]debrief.Work{"decision": debrief.Preparing, "drip": debrief.Collecting, "wash_volume": debrief.Processing, "filter": debrief.Returning, "answer": debrief.Telling, "note": debrief.Telling} {
		if got := debrief.WorkOf(name); got != want {
			t.Errorf("%s belongs to %d, want %d", name, got, want)
		}
	}
}
