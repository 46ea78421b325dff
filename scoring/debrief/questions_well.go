package debrief

import (
	"slices"

	"rouleau/assets/words"
	"rouleau/scoring"
	"rouleau/scoring/operators"
	"rouleau/sim"
)

// One thing that went well: a criterion fully met that others often miss, asked about at an act of the person's own.

// did is what a person did that bears on a measure.
type did struct {
	measure string
	fits    func(a *sim.Action) bool
	key     string
}

var dids = [...]did{
	{"anticoagulant_in_range_share", does(sim.SetDrip), "questions.anticoagulant_in_range_share"},
	{"vacuum_in_range_share", does(sim.SetVacuum), "questions.vacuum_in_range_share"},
	{"vacuum_tested", does(sim.TestVacuum), "questions.vacuum_tested"},
	{"primed_before_blood_ml", does(sim.Prime), "questions.primed_before_blood_ml"},
	{"bench_checked_share", does(sim.Inspect), "questions.bench_checked_share"},
	{"decision_right", does(sim.Decide), "questions.decision_right"},
	{"processing_set_opened_at_ml", on(sim.OpenSet, sim.ProcessingSet), "questions.processing_set_opened_at_ml"},
	{"swabs_rinsed", asks(sim.RinseSwabs), "questions.swabs_rinsed"},
	{"worst_clear_layer_share", does(sim.Mix), "questions.worst_clear_layer_share"},
	{"wash_bowl_volumes", does(sim.Wash), "questions.wash_bowl_volumes"},
	{"agent_collected_ml", routesTo(sim.ToDiscard), "questions.agent_collected_ml"},
	{"warned_of_agent", asks(sim.TellMeWhen), "questions.warned_of_agent"},
	{"asked_about_agent", asks(sim.IsAgentGone), "questions.asked_about_agent"},
	{"second_sucker_asked", asks(sim.SecondSucker), "questions.second_sucker_asked"},
	{"asked_together", asks(sim.DecideTogether), "questions.asked_together"},
	{"anti_d_asked", asks(sim.GiveAntiD), "questions.anti_d_asked"},
	{"fetal_test_asked", asks(sim.TestFetalBleed), "questions.fetal_test_asked"},
	{"clotting_told_after_ml", asks(sim.ThinnedClotting), "questions.clotting_told_after_ml"},
	{"saline_left_when_sent_for_ml", asks(sim.SendForFluid), "questions.saline_left_when_sent_for_ml"},
	{"request_to_bedside_min", runs, "questions.request_to_bedside_min"},
	{"watched_times", does(sim.Watch), "questions.watched_times"},
	{"label_complete_share", does(sim.Label), "questions.label_complete_share"},
	{"air_expelled_share", does(sim.ExpelAir), "questions.air_expelled_share"},
	{"identity_checked_share", does(sim.Identify), "questions.identity_checked_share"},
	{"handover_complete_share", does(sim.HandOver), "questions.handover_complete_share"},
	{"questions_answered_share", does(sim.Answer), "questions.questions_answered_share"},
	{"loss_estimate_error", does(sim.EstimateLoss), "questions.loss_estimate_error"},
	{"tally_error", does(sim.Reconcile), "questions.tally_error"},
	{"tally_lines_written", does(sim.Reconcile), "questions.tally_lines_written"},
	{"incidents_declared_share", does(sim.Declare), "questions.incidents_declared_share"},
	{"wrong_pack_told", does(sim.Declare), "questions.wrong_pack_told"},
	{"decision_noted", does(sim.Note), "questions.decision_noted"},
	{"reason_told", tellsReason, "questions.reason_told"},
}

func runs(a *sim.Action) bool { return a.Do == sim.GiveRate && a.Value > 0 }

func tellsReason(a *sim.Action) bool {
	return a.Do == sim.Ask && sim.Request(a.Value) >= sim.PatientDeclines && sim.Request(a.Value) <= sim.NoHeparin
}

// missed counts, for each of dids, the operators with a failing in whom the measure shows it.
func missed() (n [len(dids)]int) {
	for _, name := range operators.Library() {
		o, err := operators.Open(name)
		for i := range dids {
			if err == nil && slices.Contains(o.Shows, dids[i].measure) {
				n[i]++
			}
		}
	}
	return n
}

// well asks about the criterion that most of them miss, and of several such about the one with the most points.
func (t *talk) well() {
	n := missed()
	best, at, most, points, part := -1, -1, 0, 0.0, ""
	for i := range dids {
		k := slices.IndexFunc(t.d.Own.Grade.Criteria, func(c scoring.CriterionGrade) bool {
			return c.Measure == dids[i].measure && c.Measured && c.Points > c.Of-slightest
		})
		if k < 0 {
			continue
		}
		own := t.ownMoment(&dids[i])
		if c := &t.d.Own.Grade.Criteria[k]; own >= 0 && (best < 0 || n[i] > most || n[i] == most && c.Of > points) {
			best, at, most, points, part = i, own, n[i], c.Of, c.Part
		}
	}
	if best < 0 {
		return
	}
	tick := t.rec.Run.Actions[at].Tick
	t.ask(tick, words.Say("questions.you_did", clock(tick), words.Say(dids[best].key), seen(t.rec.seenAt(tick), part))+t.said(tick), "questions.what_helped")
}

// ownMoment is the first of the person's acts that has to do with a measure, of a setting the one that raised it most; -1 for none.
func (t *talk) ownMoment(d *did) int {
	at, before, most := -1, 0.0, 0.0
	for i, a := range t.rec.Run.Actions {
		if !d.fits(&a) {
			continue
		}
		rose := a.Value - before
		if before = a.Value; !t.near(a.Tick) && !t.doubted(i) && (at < 0 || a.Do == sim.SetDrip && rose > most) {
			at, most = i, rose
		}
	}
	return at
}

// outcry are the alarms that stand because an act has not been done yet.
var outcry = map[sim.Verb][]sim.Alarm{
	sim.SetDrip: {sim.AlarmNoDrip, sim.AlarmClot}, sim.Prime: {sim.AlarmNoDrip, sim.AlarmClot}, sim.SetVacuum: {sim.AlarmNoVacuum}, sim.TestVacuum: {sim.AlarmNoVacuum},
	sim.Mix: {sim.AlarmLayered}, sim.Watch: {sim.AlarmReaction}, sim.ExpelAir: {sim.AlarmAir, sim.AlarmBagEmpty},
}

// doubted says whether one of the person's acts came late, was wrong or needless as far as any decision that was looked at tells,
// whatever it cost, or answered an alarm.
func (t *talk) doubted(i int) bool {
	a := &t.rec.Run.Actions[i]
	for k := range t.d.Decisions {
		if d := &t.d.Decisions[k]; d.Fault != LeftOut && d.Done == a.Tick {
			return true
		}
	}
	on := &t.rec.moments[i].seen.Alarms
	return slices.ContainsFunc(outcry[a.Do], func(alarm sim.Alarm) bool { return on[alarm] })
}
