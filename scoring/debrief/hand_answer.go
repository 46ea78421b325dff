package debrief

import (
	"cmp"
	"slices"

	"rouleau/scoring/play"
	"rouleau/sim"
)

// What goes by something else in another course. Some questions come with the first product or the first blood given, and so at
// another time: who answered one answers it here too, as long after it was asked as then. Who looked at the patient while blood ran
// in looks here too while it runs in.

// answered is the question that one of the person's acts answered, nil where there is none or where the act is done at another time.
func (rec *Record) answered(s *step) *sim.Question {
	kind := sim.EventAsk
	switch s.act.Do {
	case sim.Answer:
	case sim.EstimateLoss:
		kind = sim.EventAskLoss
	default:
		return nil
	}
	t, at := &rec.Run.State.Team, rec.Run.Actions[s.own].Tick
	if s.act.Tick != at {
		return nil
	}
	for i := range t.Questions[:t.QuestionCount] {
		if q := &t.Questions[i]; q.Kind == kind && q.AnsweredTick == max(1, at) {
			return q
		}
	}
	return nil
}

// asked is the same question here, nil where it has not been asked.
func asked(r *play.Run, own *sim.Question) *sim.Question {
	t := &r.State.Team
	for i := range t.Questions[:t.QuestionCount] {
		if q := &t.Questions[i]; q.Kind == own.Kind && q.Line == own.Line {
			return q
		}
	}
	return nil
}

// listen moves answers to where their questions are, and looks at the patient to when blood runs in.
func (h *hand) listen(r *play.Run) {
	moved := false
	q := h.queue[apart]
	for i := range q {
		s := &q[i]
		from, here := int64(0), int64(-1)
		switch {
		case s.done || s.own < 0:
		case s.asked != nil:
			if q := asked(r, s.asked); q != nil {
				from, here = s.asked.AskedTick, q.AskedTick
			}
		case s.ran > 0:
			from, here = h.rec.Run.Actions[s.ran-1].Tick, h.doneAt[s.ran-1]
		}
		if here < 0 {
			continue
		}
		due := here + h.rec.Run.Actions[s.own].Tick - from
		moved = moved || due != s.due
		s.due, s.until = due, due+patience
	}
	if moved {
		slices.SortStableFunc(q, func(a, b step) int { return cmp.Compare(a.due, b.due) })
	}
}

// unasked says whether an act waits for something to be asked, or for the first washed blood to run in.
func (h *hand) unasked(r *play.Run, s *step) bool {
	if s.asked != nil {
		return asked(r, s.asked) == nil
	}
	if s.ran > 0 {
		return h.doneAt[s.ran-1] < 0
	}
	return s.own >= 0 && afterGiving(&s.act) && h.rec.moments[s.own].seen.Giving.GivenML > 0 && h.view(r).Giving.GivenML <= 0
}

// afterGiving says whether something is asked for because washed blood has run in.
func afterGiving(a *sim.Action) bool {
	return a.Do == sim.Ask && (sim.Request(a.Value) == sim.GiveAntiD || sim.Request(a.Value) == sim.TestFetalBleed)
}

// letRun is the person's act that let the blood run in during which they did another, -1 for none.
func (rec *Record) letRun(own int) int {
	if rec.Run.Actions[own].Do != sim.Watch || rec.moments[own].seen.Giving.FlowMLMin <= 0 {
		return -1
	}
	for i := own; i >= 0; i-- {
		if a := &rec.Run.Actions[i]; a.Do == sim.GiveRate && a.Value > 0 {
			return i
		}
	}
	return -1
}
