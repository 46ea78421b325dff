package debrief

import (
	"testing"

	"rouleau/scoring"
	"rouleau/sim"
)

// gained plays the first decision of an aspect and gives what a measure had and has with it put right.
func gained(t *testing.T, rec *Record, aspect, measure string) (own, with scoring.CriterionGrade) {
	t.Helper()
	d := New(rec)
	for i := range d.Decisions {
		if d.Decisions[i].Aspect != aspect {
			continue
		}
		c := d.Play(i)
		for k := range c.With.Grade.Criteria {
			if c.With.Grade.Criteria[k].Measure == measure {
				return d.Own.Grade.Criteria[k], c.With.Grade.Criteria[k]
			}
		}
	}
	t.Fatalf("no decision %s that bears on %s among %d", aspect, measure, len(d.Decisions))
	return own, with
}

// planted plays a case with a fault in the run of steady.
func plantedIn(t *testing.T, scenario string, seed uint64, plant func(rec *Record) (Edit, bool)) *Record {
	t.Helper()
	base := steadyRecord(t, scenario, seed)
	e, ok := plant(base)
	if !ok {
		t.Fatalf("no occasion in %s", scenario)
	}
	return OfRun(base.Scenario, base.fork(&e), false)
}

// Who never sent for saline runs dry hours before the end. That the hooks stay empty then is a run of the planted fault that no
// act of theirs mends; what sending in time is worth by itself is known all the same.
func TestSendingForFluidIsFoundWhereNobodySent(t *testing.T) {
	rec := plantedIn(t, "pelvis-loss-over-hours", 1, leavesAllOut(asks(sim.SendForFluid)))
	own, with := gained(t, rec, "send_for_fluid", "saline_left_when_sent_for_ml")
	if own.Points != 0 || with.Points != with.Of || with.Value < 3000 || with.Value > 4000 {
		t.Errorf("%.1f points at first, with it put right %.1f of %.1f for %.0f mL", own.Points, with.Points, with.Of, with.Value)
	}
}

// A loss is worked out from what can be read within 15 % of the truth, in every case and with rinsed swabs.
func TestTheLossThatCanBeReadIsNearTheTruth(t *testing.T) {
	for _, name := range []string{"steady-oozing-spine", "caesarean-rhd-negative", "calcium-in-the-irrigation", "heparin-pump-and-protamine", "sudden-brisk-bleeding"} {
		rec := played(t, name, "steady", 5)
		f := &finding{rec: rec, c: &rec.Run.Case, acts: rec.Run.Actions}
		rinses, n := f.rinses(), 0
		for _, i := range f.every(does(sim.EstimateLoss)) {
			n++
			if read, truth := lossRead(&rec.moments[i].seen, rinses), rec.moments[i].shed; apartShare(read, truth) > 0.15 {
				t.Errorf("%s at %s: %.0f mL read after %d rinses, %.0f mL shed", name, clock(f.acts[i].Tick), read, len(rinses), truth)
			}
		}
		if n == 0 {
			t.Errorf("%s: no estimate", name)
		}
	}
}

// What is seen at a moment between two marks is what was seen there when the act of that moment was done.
func TestTheBenchIsSeenAgainAsItWas(t *testing.T) {
	rec := played(t, "one-trouble-after-another", "inattentive", 2)
	for i, a := range rec.Run.Actions {
		if i > 0 && rec.Run.Actions[i-1].Tick == a.Tick {
			continue // the act before it in the same tick has changed what is seen
		}
		if v := rec.seenAt(a.Tick); *v != rec.moments[i].seen {
			t.Fatalf("act %d at %s: seen otherwise", i, clock(a.Tick))
		}
	}
}

// Each answer that was left out finds its own question though older ones stand open.
func TestAnAnswerFindsItsQuestion(t *testing.T) {
	rec := played(t, "one-trouble-after-another", "forgetful-of-paper", 3)
	d := New(rec)
	right := 0
	for i := range d.Decisions {
		dec := &d.Decisions[i]
		if dec.Aspect != "answer" || len(dec.Edit.Add) == 0 || dec.Edit.Add[0].Act.Do != sim.Answer || dec.Edit.Add[0].Act.Tick != dec.Edit.Add[len(dec.Edit.Add)-1].Act.Tick {
			continue
		}
		run := d.Course(i)
		for k := range run.State.Team.Questions[:run.State.Team.QuestionCount] {
			if q := &run.State.Team.Questions[k]; q.Kind == sim.EventAsk && q.AnsweredTick == dec.Tick && q.Value == q.Right && !late(q, q.AnsweredTick) {
				right++
			}
		}
	}
	if right != 3 {
		t.Errorf("%d of 3 questions answered rightly and in time, each alone", right)
	}
}
