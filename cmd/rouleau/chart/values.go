package chart

import (
	"math"
	"slices"

	"rouleau/assets/words"
	"rouleau/scoring"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// This file reads off a course what stands in bands and curves.

// spans makes stretches of what a trace says at each second.
func (co *Course) spans(say func(t *play.Sample) (string, Fill)) (spans []Span) {
	for i := range co.Run.Trace {
		text, fill := say(&co.Run.Trace[i])
		spans = extend(spans, sim.Seconds(co.Run.Trace[i].Tick), text, fill)
	}
	return spans
}

func sucker(t *play.Sample) (string, Fill) {
	if t.ToReservoir {
		return words.Say("course.to_reservoir"), Plain
	}
	return words.Say("course.elsewhere"), Hatch
}

func pump(t *play.Sample) (string, Fill) {
	switch t.PumpMode {
	case sim.PumpFill:
		return words.Say("chart.fill"), Dark
	case sim.PumpWash:
		return words.Say("chart.wash"), Hatch
	case sim.PumpEmpty:
		return words.Say("chart.empty"), Tint
	case sim.PumpDrawBack, sim.PumpSendBack, sim.PumpTopUp:
		return words.Say("chart.back"), Plain
	}
	return "", Plain
}

func given(t *play.Sample) (string, Fill) {
	if t.GiveMLMin > 0 {
		return words.Say("chart.given"), Plain
	}
	return "", Plain
}

// values is one value a second.
func (co *Course) values(of func(t *play.Sample) float64) []float64 {
	v := make([]float64, len(co.Run.Trace))
	for i := range co.Run.Trace {
		v[i] = of(&co.Run.Trace[i])
	}
	return v
}

// of is values as a lane asks for them.
func of(value func(t *play.Sample) float64) func(*Course) []float64 {
	return func(co *Course) []float64 { return co.values(value) }
}

// glanced is one value a second of what is not in the trace.
func (co *Course) glanced(of func(g *glance) float64) []float64 {
	v := make([]float64, len(co.glances))
	for i := range co.glances {
		v[i] = of(&co.glances[i])
	}
	return v
}

const (
	dripS        = 300  // over which anticoagulant and blood are compared, as the charts of the window do
	leastBloodML = 25.0 // in them: less says nothing
)

// per100 is the anticoagulant for each 100 mL of blood over the last minutes, prime left out.
func (co *Course) per100() []float64 {
	tr := co.Run.Trace
	v := make([]float64, len(tr))
	for i := range tr {
		from := max(0, i-dripS)
		drip, blood := tr[i].DripML-tr[from].DripML, tr[i].SuckedBloodML-tr[from].SuckedBloodML
		v[i] = math.NaN()
		if blood >= leastBloodML {
			v[i] = 100 * drip / blood
		}
	}
	return v
}

// dripLane is the lane of it, on the scale that the window has for it: it reaches to 40, and as far as the values do up to the
// most that is drawn.
func dripLane(name string, values ...[]float64) Lane {
	const usual, half, most = 40, 50, 100
	low, high := scoring.AnticoagulantRange()
	lane := Lane{Name: words.Say(name), Unit: "mL", Digits: 1, Most: usual, Zones: []Zone{{low, high, words.Say("course.range", low, high)}}}
	for _, v := range slices.Concat(values...) {
		switch v = orLeast(v, 0); {
		case v > half:
			lane.Most = most
		case v > usual:
			lane.Most = max(lane.Most, half)
		}
	}
	return lane
}

// anything says whether there is anything to draw.
func anything(values []float64) bool {
	for _, v := range values {
		if v > epsilon {
			return true
		}
	}
	return false
}

func endS(co *Course) float64 { return sim.Seconds(co.Run.State.Tick) }
