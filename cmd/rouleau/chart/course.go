package chart

import (
	"math"

	"rouleau/assets/words"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// This file reads off a run what stands in bands and curves.

// Course is a run with what its trace does not tell: when each event of the scenario came, and what was in the wound.
type Course struct {
	Name  string
	Run   *play.Run
	Fired []int64                     // the tick of each event, -1 where it never came
	Wound [sim.MaxContaminants][]Span // by the contaminants of the case
	Other []Span                      // while the surgeon uses a second sucker
}

// CourseOf plays the acts of a run again and looks on.
func CourseOf(name string, run *play.Run) *Course {
	co := &Course{Name: name, Run: run, Fired: make([]int64, len(run.Case.Events))}
	for i := range co.Fired {
		co.Fired[i] = -1
	}
	seen := uint64(0)
	again := play.New(run.Case, run.Seed)
	again.Again(run.Actions, run.State.Tick, func(r *play.Run) {
		for i := range co.Fired {
			if bit := uint64(1) << i; r.State.Team.Fired&^seen&bit != 0 {
				co.Fired[i] = max(r.State.Tick-1, 0) // it came with the tick that has just passed
			}
		}
		seen = r.State.Team.Fired
		if r.State.Tick%sim.TicksPerSecond == 0 {
			co.look(&r.Case, &r.State)
		}
	})
	return co
}

// look notes what comes into the wound beside blood, and when a second sucker takes it.
func (co *Course) look(c *sim.Case, s *sim.State) {
	ph := phaseAt(c, s.Tick)
	for i := range c.Contaminants {
		text := ""
		if s.Field.Agent[i] || ph.ContaminantPerML[i] > 0 && ph.BleedMLMin > 0 {
			text = c.Contaminants[i].Name
		}
		co.Wound[i] = extend(co.Wound[i], sim.Seconds(s.Tick), text, Tint)
	}
	text := ""
	if s.Team.SecondInUse {
		text = words.Say("course.elsewhere")
	}
	co.Other = extend(co.Other, sim.Seconds(s.Tick), text, Hatch)
}

func phaseAt(c *sim.Case, tick int64) *sim.Phase {
	at := 0
	for i := range c.Phases {
		if c.Phases[i].StartTick <= tick {
			at = i
		}
	}
	return &c.Phases[at]
}

// extend lets the last stretch last on, or begins another where its text has changed. Without text there is none.
func extend(spans []Span, now float64, text string, fill Fill) []Span {
	if n := len(spans); n > 0 && spans[n-1].ToS >= now-1-epsilon && spans[n-1].Text == text {
		spans[n-1].ToS = now + 1
		return spans
	}
	if text == "" {
		return spans
	}
	return append(spans, Span{FromS: now, ToS: now + 1, Text: text, Fill: fill})
}

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
