package chart

import (
	"math"
	"strconv"

	"rouleau/assets/words"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// This file lays out one case as several have played it: which rows and lanes there are, in which order.

// Of is the chart of courses of one case, the same draw for all. Rows and lanes in which nothing happens are left out.
// The most clot that a criterion allows is given where there is one, and NaN where there is none.
func Of(title string, courses []*Course, mostClotML float64, moments []Moments) *Chart {
	c := &courses[0].Run.Case
	b := &builder{courses: courses, ch: &Chart{Title: title, Moments: moments, EndS: sim.Seconds(c.LastTick), form: wholeSheet}}
	b.bands(c)
	b.lanes(c, mostClotML)
	return b.ch
}

type builder struct {
	courses []*Course
	ch      *Chart
}

// named is the name of a row or a curve of one of the courses.
func (b *builder) named(name string, co *Course) string {
	if len(b.courses) == 1 {
		return name
	}
	return words.Say("course.of", name, co.Name)
}

func (b *builder) bands(c *sim.Case) {
	b.ch.Rows = append(b.ch.Rows, phases(c, b.ch.EndS))
	for i := range c.Contaminants {
		b.row(words.Say("course.wound", c.Contaminants[i].Name), b.courses[0].Wound[i])
	}
	for _, co := range b.courses {
		if b.collects(co) {
			b.row(b.named(words.Say("course.sucker"), co), co.spans(sucker))
		}
		b.row(b.named(words.Say("course.second_sucker"), co), co.Other)
		b.row(b.named(words.Say("course.bowl"), co), co.spans(pump))
		b.row(b.named(words.Say("course.given"), co), co.spans(given))
	}
}

// phases are those of surgery that begin before a time, with their numbers.
func phases(c *sim.Case, endS float64) Row {
	row := Row{Name: words.Say("course.phase")}
	for i := range c.Phases {
		from, to := sim.Seconds(c.Phases[i].StartTick), endS
		if i+1 < len(c.Phases) {
			to = min(sim.Seconds(c.Phases[i+1].StartTick), endS)
		}
		if number := strconv.Itoa(i + 1); from < to {
			row.Spans = append(row.Spans, Span{FromS: from, ToS: to, Text: number + " " + c.Phases[i].Name, Short: number})
		}
	}
	return row
}

func (b *builder) row(name string, spans []Span) {
	if len(spans) > 0 {
		b.ch.Rows = append(b.ch.Rows, Row{Name: name, Spans: spans})
	}
}

// collects says whether anything was ever sucked to the reservoir.
func (b *builder) collects(co *Course) bool {
	n := len(co.Run.Trace)
	return n > 0 && co.Run.Trace[n-1].SuckedML > 0
}

func (b *builder) lanes(c *sim.Case, mostClotML float64) {
	b.lane(Lane{Name: words.Say("course.bleeding"), Unit: "mL/min"}, of(func(t *play.Sample) float64 { return t.BleedMLMin }))
	b.drawn(c)
	b.lane(Lane{Name: words.Say("course.reservoir"), Unit: "mL"}, of(func(t *play.Sample) float64 { return t.ReservoirML }))
	var drips [][]float64
	for _, co := range b.courses {
		drips = append(drips, co.per100())
	}
	b.lane(dripLane("course.per_100", drips...), (*Course).per100)
	clot := Lane{Name: words.Say("course.clot"), Unit: "mL", Digits: 1}
	if !math.IsNaN(mostClotML) {
		clot.Zones = []Zone{{mostClotML, mostClotML, words.Say("course.most", mostClotML)}}
	}
	b.lane(clot, of(func(t *play.Sample) float64 { return t.FilterClotML + t.ReservoirClotML }))
	b.lane(Lane{Name: words.Say("course.product"), Unit: "mL"}, of(func(t *play.Sample) float64 { return t.ProductML }))
	b.lane(Lane{Name: words.Say("course.given_ml"), Unit: "mL"}, of(func(t *play.Sample) float64 { return t.GivenML }))
	b.haemoglobin(c)
}

// lane adds a lane with a curve for each course in which there is something to draw.
func (b *builder) lane(lane Lane, of func(*Course) []float64) {
	for i, co := range b.courses {
		if v := of(co); anything(v) {
			lane.Curves = append(lane.Curves, Curve{Name: b.named(lane.Name, co), Values: v, Look: i})
		}
	}
	if len(lane.Curves) > 0 {
		b.ch.Lanes = append(b.ch.Lanes, lane)
	}
}

// Looks of curves that no course has.
const (
	irrigationLook = 2
	bodyFluidLook  = 3
)

// drawn adds what runs into the wound beside blood, which is the same whoever acts.
func (b *builder) drawn(c *sim.Case) {
	lane := Lane{Name: words.Say("course.irrigation"), Unit: "mL/min"}
	n := int(sim.Seconds(c.LastTick)) + 1
	add := func(name string, look int, of func(*sim.Phase) float64) {
		v := make([]float64, n)
		for i := range v {
			v[i] = of(phaseAt(c, int64(i)*sim.TicksPerSecond))
		}
		if anything(v) {
			lane.Curves = append(lane.Curves, Curve{Name: name, Values: v, Look: look})
		}
	}
	add(lane.Name, irrigationLook, func(p *sim.Phase) float64 { return p.IrrigationMLMin })
	add(words.Say("course.body_fluid"), bodyFluidLook, func(p *sim.Phase) float64 { return p.BodyFluidMLMin })
	if len(lane.Curves) > 0 {
		b.ch.Lanes = append(b.ch.Lanes, lane)
	}
}

// haemoglobin is the last lane, and a high one: what comes of it all for the patient. Its scale does not begin at nothing.
func (b *builder) haemoglobin(c *sim.Case) {
	trigger := c.Patient.TransfusionHbGDL
	least, most := trigger, trigger
	for _, co := range b.courses {
		for i := range co.Run.Trace {
			least, most = min(least, co.Run.Trace[i].HbGDL), max(most, co.Run.Trace[i].HbGDL)
		}
	}
	b.lane(Lane{Name: words.Say("course.hb"), Unit: "g/dL", Digits: 1, tall: 2 * laneH, Least: max(math.Floor(least-0.5), 0), Most: math.Ceil(most + 0.3),
		Zones: []Zone{{trigger, trigger, words.Say("course.trigger", trigger)}}}, of(func(t *play.Sample) float64 { return t.HbGDL }))
}
