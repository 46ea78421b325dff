package debrief

import (
	"slices"
	"testing"

	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/sim"
)

// A criterion that lost points and has no moment of its own gets that of a decision which bears on it; others keep theirs.
func TestLostCriteriaGetAMoment(t *testing.T) {
	d, costs := lessonTold(t)
	own, judged := d.Own.Grade.Criteria, d.Record.judge(d.Record.Run, d.Yardstick)
	for i := range own { // as they were before anything was told
		own[i].Tick = judged.Criteria[i].Tick
	}
	was := slices.Clone(own)
	Tell(d, costs)
	placed := 0
	for i := range own {
		bears := func(c Cost) bool {
			return c.Decision.Tick == own[i].Tick && c.With.Grade.Criteria[i].Points > own[i].Points
		}
		switch now := own[i].Tick; {
		case was[i].Tick >= 0 && now != was[i].Tick:
			t.Errorf("%s is moved from %d to %d", own[i].Measure, was[i].Tick, now)
		case was[i].Tick < 0 && now >= 0 && !slices.ContainsFunc(costs, bears):
			t.Errorf("%s is placed at %s, where no decision bears on it", own[i].Measure, clock(now))
		case was[i].Tick < 0 && now >= 0:
			placed++
		}
		won := func(c Cost) bool { return c.With.Grade.Criteria[i].Points > own[i].Points+0.2 }
		if own[i].Tick < 0 && slices.ContainsFunc(costs, won) {
			t.Errorf("%s has no moment, though a decision bears on it", own[i].Measure)
		}
	}
	if placed == 0 {
		t.Errorf("no criterion is placed: this test wants another case")
	}
}

// Every error is placed at the tick at which it came to count: before it there was none of it.
func TestErrorsArePlacedWhereTheyCameToCount(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range [...][2]string{{"first-bowl", "forgetful-of-paper"}, {"steady-oozing-spine", "rule-bound"}, {"caesarean-rhd-negative", "inattentive"}} {
		d := New(played(t, c[0], c[1], 1))
		for _, k := range d.Own.Grade.Critical {
			seen[k.Name] = true
			if k.Tick < 0 || k.Tick > d.Record.lastTick {
				t.Errorf("%s by %s: %s is at %d", c[0], c[1], k.Name, k.Tick)
				continue
			}
			if i := slices.IndexFunc(scenarios.Criticals[:], func(r scenarios.Critical) bool { return r.Name == k.Name }); scenarios.Criticals[i].Told != scenarios.NoIncident {
				continue // the simulation says when it happened
			}
			for _, at := range [...]int64{k.Tick - 1, k.Tick} {
				s := d.Record.onFrom(d.Record.markBefore(at), func(s *sim.State) bool { return s.Tick >= at })
				if amount, from := scoring.CriticalAmount(k.Name, &s); (amount > from) != (at == k.Tick) {
					t.Errorf("%s by %s: at tick %d of %d there is %g of %s", c[0], c[1], at, k.Tick, amount, k.Name)
				}
			}
		}
	}
	if len(seen) < 2 {
		t.Errorf("only %v came about", seen)
	}
}
