package debrief

import (
	"rouleau/scoring/play"
	"rouleau/sim"
)

// Playing the case again from the moment at which one decision is put right.

// fork plays the case with an edit, from where it begins, to the end that the person's acts lead to.
func (rec *Record) fork(e *Edit) *play.Run {
	m := rec.markBefore(e.begins(rec))
	run := rec.Run.From(m)
	rec.follow(run, newHand(rec, e, m.Acts()))
	return run
}

// elsewhere plays the person's acts with an edit in another drawing of the same case, from the start.
func (rec *Record) elsewhere(c sim.Case, seed uint64, e *Edit) *play.Run {
	run := play.New(c, seed)
	rec.follow(run, newHand(rec, e, 0))
	return run
}

// follow lets the hand play a run to its end. A run that the person left unfinished goes no further than they went.
func (rec *Record) follow(run *play.Run, h *hand) {
	for !run.State.Ended && (rec.Run.State.Ended || run.State.Tick < rec.lastTick) {
		h.tick(run)
		run.Step()
	}
	if !run.State.Ended {
		h.tick(run)
	}
}
