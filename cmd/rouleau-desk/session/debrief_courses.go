// Two courses of a case in the terms of the window's charts. What they differ in, and its scales, are those of the page.

package session

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau/chart"
	"rouleau/scoring/debrief"
	"rouleau/scoring/play"
)

// decisionCourses plays a case with a decision put right and sets it over the person's own.
func decisionCourses(d *debrief.Debrief, place int) *bench.Courses {
	own, other := d.Record.Run, d.Course(place)
	c := coursesOf(own, other, words.Say("report.right"))
	if tick := parting(own, other); tick >= 0 {
		c.Part = momentOf(tick)
	}
	return c
}

// coursesOf sets another course over the person's own.
func coursesOf(own, other *play.Run, name string) *bench.Courses {
	c := &bench.Courses{Names: [2]string{words.Say("report.own"), name}}
	ch := chart.Beside("", &chart.Course{Name: c.Names[0], Run: own}, &chart.Course{Name: name, Run: other}, math.NaN())
	c.EndS, c.Differ, c.Lanes = ch.EndS, ch.Differ(), make([]bench.CourseLane, len(ch.Lanes))
	for i := range ch.Lanes {
		from, to := &ch.Lanes[i], &c.Lanes[i]
		to.Name, to.Unit, to.Digits, to.Least, to.Most = from.Name, from.Unit, from.Digits, from.Least, from.Most
		for k := range to.Values {
			for _, v := range from.Curves[k].Values {
				to.Values[k].Add(v)
			}
		}
		for _, z := range from.Zones {
			c.Targets = append(c.Targets, ui.ChartZone{Lane: i, From: z.From, To: z.To, Label: z.Label})
		}
	}
	for i, row := range ch.Rows {
		c.Rows = append(c.Rows, row.Name)
		for _, s := range row.Spans {
			c.Bars = append(c.Bars, ui.ChartBand{From: s.FromS, To: s.ToS, Label: s.Text, Row: i, Fill: s.Fill})
		}
	}
	return c
}

// parting is the tick of the first act by which two courses of one case differ, -1 where there is none.
func parting(own, other *play.Run) int64 {
	a, b := own.Actions, other.Actions
	for i := range max(len(a), len(b)) {
		switch {
		case i >= len(a):
			return b[i].Tick
		case i >= len(b):
			return a[i].Tick
		case a[i] != b[i]:
			return min(a[i].Tick, b[i].Tick)
		}
	}
	if own.State.Tick != other.State.Tick {
		return min(own.State.Tick, other.State.Tick)
	}
	return -1
}
