// Package play runs one case: it feeds actions to the model tick by tick and keeps what a judge and a debrief need, the
// actions, the log and a trace once a second. Window, command line and tests all play through it.
package play

import "rouleau/sim"

// Run is one case being played or played to its end.
type Run struct {
	Case    sim.Case
	Seed    uint64
	State   sim.State
	Actions []sim.Action     // accepted ones, by hand and automatic operators alike; automatic steps of the bench are not in it
	Log     []sim.Occurrence // everything that happened, refusals too
	Trace   []Sample         // one a second, the first at tick 0

	happened sim.Happened
}

// New begins a run at tick 0.
func New(c sim.Case, seed uint64) *Run {
	seconds := int(c.LastTick/sim.TicksPerSecond) + 2
	r := &Run{Case: c, Seed: seed, Trace: make([]Sample, 0, seconds), Log: make([]sim.Occurrence, 0, 1024), Actions: make([]sim.Action, 0, 256)}
	r.State = sim.Start(&r.Case, seed)
	return r
}

// Do applies an action before the next tick and says why not when it is refused.
func (r *Run) Do(a sim.Action) sim.Reason {
	a.Tick, a.Auto = r.State.Tick, false
	why := sim.Apply(&r.Case, &r.State, a, &r.happened)
	if why == "" {
		r.Actions = append(r.Actions, a)
	}
	r.drain()
	return why
}

// Step lets one tick pass. After the end nothing passes and nothing is noted, so that a run and its replay have the same trace
// whether the case was ended by hand or by the clock.
func (r *Run) Step() {
	if r.State.Ended {
		return
	}
	if r.State.Tick%sim.TicksPerSecond == 0 {
		r.Trace = append(r.Trace, sampleOf(&r.Case, &r.State))
	}
	sim.Step(&r.Case, &r.State, &r.happened)
	r.drain()
}

// drain takes over what happened.
func (r *Run) drain() {
	if len(r.happened.List) > 0 {
		r.Log = append(r.Log, r.happened.List...)
		r.happened.List = r.happened.List[:0]
	}
}

// Actor decides what to do once a second, from what a person at the bench can see.
type Actor interface {
	Act(seen *sim.Seen, do func(sim.Action) sim.Reason)
}

// ToEnd lets an actor play the run to its end.
func (r *Run) ToEnd(who Actor) {
	var seen sim.Seen
	for !r.State.Ended {
		if r.State.Tick%sim.TicksPerSecond == 0 {
			sim.View(&r.Case, &r.State, &seen)
			who.Act(&seen, r.Do)
		}
		r.Step()
	}
}

// Again plays recorded actions to the end of the recorded run, calling each at every tick before it passes; each may be nil.
func (r *Run) Again(actions []sim.Action, lastTick int64, each func(*Run)) {
	next := 0
	for !r.State.Ended && r.State.Tick <= lastTick {
		for next < len(actions) && actions[next].Tick <= r.State.Tick {
			r.Do(actions[next])
			next++
		}
		if each != nil {
			each(r)
		}
		r.Step()
	}
}
