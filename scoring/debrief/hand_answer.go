package debrief

import (
	"cmp"
	"slices"

	"rouleau/scoring/play"
	"rouleau/sim"
)

// Questions in another course: some come with the first product or the first blood given, and so at another time. Who answered a
// question answers it here too, as long after it was asked as then.

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

// listen moves answers to where their questions are.
func (h *hand) listen(r *play.Run) {
	moved := false
	q := h.queue[apart]
	for i := range q {
		s := &q[i]
		if s.asked == nil || s.done {
			continue
		}
		if here := asked(r, s.asked); here != nil {
			due := here.AskedTick + h.rec.Run.Actions[s.own].Tick - s.asked.AskedTick
			moved = moved || due != s.due
			s.due, s.until = due, due+patience
		}
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
	return s.own >= 0 && afterGiving(&s.act) && h.rec.moments[s.own].seen.Giving.GivenML > 0 && h.view(r).Giving.GivenML <= 0
}

// afterGiving says whether something is asked for because washed blood has run in.
func afterGiving(a *sim.Action) bool {
	return a.Do == sim.Ask && (sim.Request(a.Value) == sim.GiveAntiD || sim.Request(a.Value) == sim.TestFetalBleed)
}
