package chart

import (
	"math"

	"rouleau/assets/words"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// This file holds a course: a run, and what was seen while it was played that its trace does not tell.

// Course is a run with what its trace does not tell: when each event of the scenario came, what was in the wound, what pump and
// detector showed. Where two courses are only set beside each other, a name and a run are enough.
type Course struct {
	Name  string
	Run   *play.Run
	Fired []int64                     // the tick of each event, -1 where it never came
	Wound [sim.MaxContaminants][]Span // by the contaminants of the case
	Other []Span                      // while the surgeon uses a second sucker

	glances []glance // one a second, as the trace has it
}

// glance is what could be read at one second and is not in the trace. What could not be read is not a number.
type glance struct {
	detector   float64 // the mean of the last second, while the bowl spins
	washedML   float64 // of the bowlful under way
	irrigation float64 // mL/min
}

// Watcher looks on while a run is played, or played again for another purpose, so that no further play is needed for a chart.
type Watcher struct {
	co   Course
	seen uint64 // events that have come
}

// Watch begins to look on.
func Watch(name string, c *sim.Case) *Watcher {
	w := &Watcher{co: Course{Name: name, Fired: make([]int64, len(c.Events))}}
	for i := range w.co.Fired {
		w.co.Fired[i] = -1
	}
	return w
}

// Tick is to be called before each tick passes, as [play.Run.Again] calls what it is given.
func (w *Watcher) Tick(r *play.Run) {
	w.events(&r.State)
	if r.State.Tick%sim.TicksPerSecond == 0 && !r.State.Ended {
		w.co.look(&r.Case, &r.State)
	}
}

// events notes which events have come with the tick that has just passed.
func (w *Watcher) events(s *sim.State) {
	fresh := s.Team.Fired &^ w.seen
	for i := range w.co.Fired {
		if fresh&(uint64(1)<<i) != 0 {
			w.co.Fired[i] = max(s.Tick-1, 0)
		}
	}
	w.seen = s.Team.Fired
}

// Course is what was seen, of a run that has ended.
func (w *Watcher) Course(run *play.Run) *Course {
	w.events(&run.State)
	co := w.co
	co.Run = run
	return &co
}

// CourseOf plays the acts of a run again and looks on.
func CourseOf(name string, run *play.Run) *Course {
	w := Watch(name, &run.Case)
	again := play.New(run.Case, run.Seed)
	again.Again(run.Actions, run.State.Tick, w.Tick)
	return w.Course(run)
}

// look notes what comes into the wound beside blood, when a second sucker takes it, and what the bench shows.
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
	g := glance{detector: math.NaN(), washedML: math.NaN(), irrigation: s.Field.IrrigationRateMLMin}
	if mean := s.Bowl.Detector.Mean(); s.Bowl.Spinning && mean > 0 {
		g.detector = mean
	}
	if n := s.CycleUsed; n > 0 && s.Cycles[n-1].DoneTick == 0 && s.Cycles[n-1].WashTick > 0 {
		g.washedML = s.Pump.WashedML
	}
	co.glances = append(co.glances, g)
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
