package debrief

import (
	"rouleau/assets/words"
	"rouleau/sim"
)

// Questions of the team: each that was not answered, late, or wrongly is a decision.

// answeredBy says, for each question of the team, which of the person's acts answered it, -1 for none. An act answers the oldest
// open question of its kind.
func (f *finding) answeredBy() []int {
	team := &f.rec.Run.State.Team
	by := make([]int, team.QuestionCount)
	for i := range by {
		by[i] = -1
	}
	for k := range f.acts {
		kind := sim.EventAsk
		switch f.acts[k].Do {
		case sim.Answer:
		case sim.EstimateLoss:
			kind = sim.EventAskLoss
		default:
			continue
		}
		for i := range by {
			if q := &team.Questions[i]; q.Kind == kind && by[i] < 0 && q.AskedTick < f.acts[k].Tick {
				by[i] = k
				break
			}
		}
	}
	return by
}

// late says whether an answer came too late.
func late(q *sim.Question, tick int64) bool { return q.DueTick > q.AskedTick && tick > q.DueTick }

// findAnswers looks at each question that was asked.
func findAnswers(f *finding) []Decision {
	by, team := f.answeredBy(), &f.rec.Run.State.Team
	var rinses []rinsed
	var all []Decision
	for i := range by {
		q := &team.Questions[i]
		switch q.Kind {
		case sim.EventAsk:
			all = f.yesOrNo(all, q, by[i])
		case sim.EventAskLoss:
			if rinses == nil {
				rinses = f.rinses()
			}
			all = f.askedLoss(all, q, by[i], rinses)
		}
	}
	if len(all) < 2 {
		return all
	}
	all = some(all, words.Say("decision.answer_all", len(all)))
	answerOlderToo(all[1:])
	return all
}

// yesOrNo adds what should have been done about a question for a yes or a no that act k answered, -1 for none.
func (f *finding) yesOrNo(all []Decision, q *sim.Question, k int) []Decision {
	at, who := f.inTime(q.AskedTick+soonSaid), words.Say("speaker."+q.Who.String())
	switch {
	case k < 0:
		return append(all, Decision{Fault: LeftOut, Title: title("answer", LeftOut, answerText(q.Right), who, clock(q.AskedTick)), Tick: at, Done: -1,
			Edit: Edit{Add: []Add{{Act: act(at, sim.Answer, sim.NoPart, q.Right), PatienceS: 1}}}})
	case f.acts[k].Value != q.Right:
		right := f.acts[k]
		right.Value = q.Right
		if late(q, right.Tick) {
			right.Tick = at
		}
		return append(all, Decision{Fault: Wrong, Title: title("answer", Wrong, answerText(q.Right), answerText(f.acts[k].Value), who, clock(q.AskedTick)),
			Tick: right.Tick, Done: f.acts[k].Tick, Edit: Edit{Swap: []Swap{{k, right}}}})
	case late(q, f.acts[k].Tick):
		right := f.acts[k]
		right.Tick = at
		return append(all, Decision{Fault: Late, Title: title("answer", Late, who, clock(at), clock(f.acts[k].Tick)), Tick: at, Done: f.acts[k].Tick,
			Edit: Edit{Swap: []Swap{{k, right}}}})
	}
	return all
}

// askedLoss does so for a question for the loss. A figure that was given late stands as well.
func (f *finding) askedLoss(all []Decision, q *sim.Question, k int, rinses []rinsed) []Decision {
	at := f.inTime(q.AskedTick + soonSaid)
	switch {
	case k >= 0 && !late(q, f.acts[k].Tick) && apartShare(f.acts[k].Value, q.Right) <= lossRight:
		return all
	case k >= 0 && !late(q, f.acts[k].Tick):
		return append(all, f.otherFigure(k, rinses))
	}
	ml := lossRead(f.rec.seenAt(at), rinses)
	d := Decision{Fault: LeftOut, Title: title("answer_loss", LeftOut, ml, clock(q.AskedTick)), Tick: at, Done: -1, Edit: saying(at, sim.EstimateLoss, ml)}
	if k >= 0 {
		d.Fault, d.Done, d.Title = Late, f.acts[k].Tick, title("answer_loss", Late, ml, clock(at), clock(f.acts[k].Tick))
	}
	return append(all, d)
}

// answerOlderToo lets each answer that was left out find its question: the oldest is answered first, so those that were left
// open before it are answered too, too late to count.
func answerOlderToo(all []Decision) {
	var open []Add
	for i := range all {
		e := &all[i].Edit
		if all[i].Fault != LeftOut || e.Add[0].Act.Do != sim.Answer {
			continue
		}
		mine := e.Add[0]
		e.Add = nil
		for _, a := range open {
			a.Act.Tick = mine.Act.Tick
			e.Add = append(e.Add, a)
		}
		e.Add, open = append(e.Add, mine), append(open, mine)
	}
}

func answerText(v float64) string {
	if v == 1 {
		return words.Say("decision.yes")
	}
	return words.Say("decision.no")
}
