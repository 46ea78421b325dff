package debrief

import "rouleau/sim"

// writes is a line of the tally.
func writes(item sim.TallyItem) func(a *sim.Action) bool {
	return func(a *sim.Action) bool { return a.Do == sim.Reconcile && sim.TallyItem(a.Item) == item }
}

func tells(i sim.Incident) func(a *sim.Action) bool {
	return func(a *sim.Action) bool { return a.Do == sim.Declare && sim.Incident(a.Value) == i }
}

// lastFigure is the estimate that stands at the end, after all that were asked for.
func lastFigure(how func(a *sim.Action)) func(rec *Record) (Edit, bool) {
	return func(rec *Record) (Edit, bool) {
		all := rec.allOf(does(sim.EstimateLoss))
		if len(all) == 0 {
			return Edit{}, false
		}
		return changes(len(all)-1, does(sim.EstimateLoss), how)(rec)
	}
}

var plantedRecording = []planted{
	{"the last estimate far off", "steady-oozing-spine", "last_loss", lastFigure(twiceAsMuch)},
	{"no estimate at all", "heparin-forbidden-citrate-at-hand", "last_loss", func(rec *Record) (Edit, bool) {
		all := rec.allOf(does(sim.EstimateLoss))
		return Edit{Drop: all[min(1, len(all)):]}, len(all) > 1
	}},
	{"no tally", "detector-misled-by-fat", "tally", leavesAllOut(does(sim.Reconcile))},
	{"a line of the tally far off", "caesarean-rhd-negative", "tally", changes(0, writes(sim.TallyWash), func(a *sim.Action) { a.Value = 0 })},
	{"three lines missing", "sudden-brisk-bleeding", "tally", leavesAllOut(func(a *sim.Action) bool { return a.Do == sim.Reconcile && a.Item < 3 })},
	{"a reaction kept back", "one-trouble-after-another", "declare", leavesAllOut(tells(sim.IncidentReaction))},
	{"lost power kept back", "one-trouble-after-another", "declare", leavesAllOut(tells(sim.IncidentEquipment))},
	{"a false alarm", "first-bowl", "false_alarm", func(rec *Record) (Edit, bool) {
		return Edit{Add: []Add{{Act: act(6*minute, sim.Declare, sim.NoPart, float64(sim.IncidentClot))}}}, true
	}},
	{"a wrong pack kept back", "bench-left-by-a-colleague", "wrong_pack_told", leavesAllOut(tells(sim.IncidentWrongFluid))},
	{"no note of the decision", "salvage-declined", "note", leavesAllOut(does(sim.Note))},
	{"a note of one word", "infection-in-the-field", "note", changes(0, does(sim.Note), func(a *sim.Action) { a.Text = "No." })},
}
