package play

import (
	"slices"

	"rouleau/sim"
)

// Going back to a moment of a run, so that what comes after it can be played otherwise without playing again what came before.

// Mark is a moment of a run before the acts of its tick: the state, and how much had been kept by then.
type Mark struct {
	State               sim.State
	actions, log, trace int
}

// Acts is how many acts had been accepted by then.
func (m *Mark) Acts() int { return m.actions }

// Mark remembers this moment.
func (r *Run) Mark() Mark {
	return Mark{State: r.State, actions: len(r.Actions), log: len(r.Log), trace: len(r.Trace)}
}

// From begins another run at a moment of this one. What was kept until then is shared and not written to by either.
func (r *Run) From(m *Mark) *Run {
	return &Run{Case: r.Case, Seed: r.Seed, State: m.State, Actions: slices.Clip(r.Actions[:m.actions]), Log: slices.Clip(r.Log[:m.log]),
		Trace: slices.Clip(r.Trace[:m.trace])}
}
