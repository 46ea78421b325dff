package debrief

import (
	"slices"

	"rouleau/scoring"
	"rouleau/sim"
)

// Moments for what a judge, who looks at the end of a run, can name no moment for: an error turns on the tick at which it came to
// count, a criterion on the decision that would have brought most of the points that it lost.

// placeErrors gives errors their moment.
func (d *Debrief) placeErrors() {
	for i := range d.Own.Grade.Critical {
		if c := &d.Own.Grade.Critical[i]; c.Tick < 0 {
			c.Tick = d.Record.cameTo(c.Name)
		}
	}
}

// cameTo is the tick at which something that points never make up for came to count, for the last time where it did not at every
// time after the first; -1 for never.
func (rec *Record) cameTo(name string) int64 {
	counts := func(s *sim.State) bool {
		amount, from := scoring.CriticalAmount(name, s)
		return amount > from
	}
	if !counts(&rec.Run.State) {
		return -1
	}
	for i := range slices.Backward(rec.marks) {
		if m := &rec.marks[i]; !counts(&m.State) {
			s := rec.onFrom(m, counts)
			return min(s.Tick, rec.lastTick)
		}
	}
	return 0
}

// placeCriteria gives criteria that lost points their moment.
func (d *Debrief) placeCriteria(costs []Cost) {
	own := d.Own.Grade.Criteria
	for i := range own {
		if own[i].Tick >= 0 || own[i].Points >= own[i].Of-slightest {
			continue
		}
		most := 0.0
		for k := range costs {
			if won := costs[k].With.Grade.Criteria[i].Points - own[i].Points; won > most+slightest {
				most, own[i].Tick = won, costs[k].Decision.Tick
			}
		}
	}
}
