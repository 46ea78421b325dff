package debrief

import (
	"slices"

	"rouleau/scoring/play"
	"rouleau/sim"
)

// Playing the case again from the moment at which one decision is put right.

// fork plays the case with an edit, from where it begins, to the end that the person's acts lead to.
func (rec *Record) fork(e *Edit) *play.Run {
	m := rec.markBefore(e.begins(rec))
	run := rec.Run.From(m)
	if rec.untouched() {
		run.Case.Faults.TouchChance = 0
	}
	rec.follow(run, newHand(rec, e, m.Acts()))
	return run
}

// elsewhere plays the person's acts with an edit in another drawing of the same case, from the start.
func (rec *Record) elsewhere(c sim.Case, seed uint64, e *Edit) *play.Run {
	c.Faults.TouchChance = 0
	run := play.New(c, seed)
	rec.follow(run, newHand(rec, e, 0))
	return run
}

// untouched says whether no sterile part was touched by chance while the person connected it. Then none is touched in another course
// either: such luck says nothing about the decision. Where one was touched, connecting it at another time draws anew.
func (rec *Record) untouched() bool {
	connected := map[int64]bool{}
	for i := range rec.Run.Actions {
		if a := &rec.Run.Actions[i]; a.Do == sim.Connect {
			connected[a.Tick] = true
		}
	}
	return !slices.ContainsFunc(rec.Run.Log, func(o sim.Occurrence) bool { return o.Kind == sim.Came && o.Key == "touched" && connected[o.Tick] })
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
