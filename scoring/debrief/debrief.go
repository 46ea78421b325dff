package debrief

import (
	"cmp"
	"slices"

	"rouleau/scoring"
	"rouleau/scoring/play"
)

// The debrief of one record: the person's own outcome, that of a good run, and what each decision cost.

// Debrief is what is known before any decision has been played otherwise.
type Debrief struct {
	Record    *Record
	Good      *Record // the same case played by steady
	Yardstick scoring.Yardstick
	Own       Outcome
	GoodOwn   Outcome // of the good run
	Decisions []Decision
}

// Cost is what one decision cost: what would have come of the case with it put right.
type Cost struct {
	Decision Decision
	Place    int // of the decision among those of the debrief
	With     Outcome
	Points   float64 // more than the person's own
	Gain     float64 // that orders the list, see gain
	Spread   Spread
}

// New finds the decisions of a record.
func New(rec *Record) *Debrief { return Against(rec, rec.Good()) }

// Against is the same, where the good run has been played.
func Against(rec, good *Record) *Debrief {
	d := &Debrief{Record: rec, Good: good}
	d.Yardstick = scoring.YardstickOf(d.Good.Run)
	d.Own = outcomeOf(rec.Run, rec.judge(rec.Run, d.Yardstick))
	d.GoodOwn = outcomeOf(d.Good.Run, rec.judge(d.Good.Run, d.Yardstick))
	d.placeErrors()
	d.Decisions = d.find()
	return d
}

// Course plays the case with a decision put right.
func (d *Debrief) Course(i int) *play.Run { return d.Record.fork(&d.Decisions[i].Edit) }

// Play plays the case with a decision put right and says what it would have changed. It only reads d, so that several can be
// played at once.
func (d *Debrief) Play(i int) Cost {
	run := d.Course(i)
	c := Cost{Decision: d.Decisions[i], Place: i, With: outcomeOf(run, d.Record.judge(run, d.Yardstick))}
	c.Points = c.With.Grade.Points - d.Own.Grade.Points
	c.Gain = gain(&d.Own, &c.With)
	return c
}

// Rank puts costs in order: what would have gained most first, what would have made things worse last. Ties go by time.
func Rank(costs []Cost) {
	slices.SortStableFunc(costs, func(a, b Cost) int {
		switch {
		case a.Gain > b.Gain:
			return -1
		case a.Gain < b.Gain:
			return 1
		}
		return int(a.Decision.Tick - b.Decision.Tick)
	})
}

// Leading are the places, in costs that are not in order yet, of those that would have gained most: at most so many, and only
// those that change at least so many points either way.
func Leading(costs []Cost, most int, points float64) []int {
	places := make([]int, len(costs))
	for i := range places {
		places[i] = i
	}
	slices.SortStableFunc(places, func(a, b int) int { return cmp.Compare(costs[b].Gain, costs[a].Gain) })
	places = slices.DeleteFunc(places, func(i int) bool { return max(costs[i].Points, -costs[i].Points) < points })
	return places[:min(most, len(places))]
}

// Mattered says whether putting a decision right would have changed anything worth telling.
func (c *Cost) Mattered() bool { return c.Gain > slightest || c.Gain < -slightest }
