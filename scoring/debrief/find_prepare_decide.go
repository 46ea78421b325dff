package debrief

import (
	"rouleau/assets/words"
	"rouleau/sim"
)

// Deciding whether to collect: rightly, in time, with the others, and with the sets left closed where nothing is to be collected.

// findDecision looks for a decision that was wrong, late, or never made. Where it kept the person from working at all, nothing of
// their own can follow, and steady works on.
func findDecision(f *finding) []Decision {
	right, decided := f.sc.Right.RightDecision(), f.every(does(sim.Decide))
	now := f.rec.Run.State.Bench.Decision
	if now == right {
		if late := len(decided) - 1; late >= 0 && f.short("decided_in_time") {
			return []Decision{f.decidesSooner(decided[late])}
		}
		return nil
	}
	d := Decision{Fault: LeftOut, Tick: soonBefore(f.rec.firstBlood()), Done: -1}
	if len(decided) > 0 {
		d.Fault, d.Tick, d.Done = Wrong, f.acts[decided[0]].Tick, f.acts[decided[0]].Tick
	}
	name := words.Say("decision." + right.String())
	works := right != sim.DoNotSalvage && (now == sim.Undecided || now == sim.DoNotSalvage)
	switch {
	case works && d.Fault == LeftOut:
		d.Tick, d.Edit = 0, Edit{Good: 1}
		d.Title = words.Say("decision.decision_worked", name)
	case works:
		d.Edit = Edit{Drop: decided, Good: max(1, d.Tick)}
		d.Title = words.Say("decision.decision_changed", name, clock(d.Tick), words.Say("decision."+now.String()))
	case d.Fault == LeftOut:
		d.Edit = Edit{Add: []Add{{Act: act(d.Tick, sim.Decide, sim.NoPart, float64(right))}}}
		d.Title = title("decision", LeftOut, name, clock(d.Tick))
	default:
		d.Edit = Edit{Swap: []Swap{f.valued(decided[0], float64(right))}, Drop: decided[1:]}
		d.Title = title("decision", Wrong, name, clock(d.Tick), words.Say("decision."+now.String()))
		if right == sim.SetUpToProcess { // what was collected is processed: of that nothing is the person's own
			if t := f.filledTo(opensAtML); t > 0 {
				d.Edit.Good = t
				d.Title = words.Say("decision.decision_went_on", name, clock(d.Tick), words.Say("decision."+now.String()), clock(t))
			}
		}
	}
	return []Decision{d}
}

// decidesSooner decides once the sheet has been read.
func (f *finding) decidesSooner(own int) Decision {
	at := soonBefore(f.rec.firstBlood())
	at = min(at, readsSheet)
	return Decision{Fault: Late, Title: title("decision", Late, clock(at), clock(f.acts[own].Tick)), Tick: at, Done: f.acts[own].Tick, Edit: Edit{Swap: []Swap{f.at(own, at)}}}
}

// filledTo is the first tick at which so much was in the reservoir, -1 for never.
func (f *finding) filledTo(ml float64) int64 {
	for i := range f.rec.Run.Trace {
		if f.rec.Run.Trace[i].ReservoirML >= ml {
			return f.rec.Run.Trace[i].Tick
		}
	}
	return -1
}

// findTogether looks for a decision that was taken, or a set opened, without surgeon and anaesthetist having been asked.
func findTogether(f *finding) []Decision {
	by := f.rec.firstBlood()
	for _, i := range [...]int{f.first(0, does(sim.Decide)), f.first(0, does(sim.OpenSet))} {
		if i >= 0 {
			by = min(by, f.acts[i].Tick)
		}
	}
	at := min(by, readsSheet)
	d := Decision{Fault: LeftOut, Title: title("together", LeftOut, clock(at)), Tick: at, Done: -1, Edit: saying(at, sim.Ask, float64(sim.DecideTogether))}
	if i := f.first(0, asks(sim.DecideTogether)); i >= 0 {
		d.Fault, d.Done, d.Edit = Late, f.acts[i].Tick, Edit{Swap: []Swap{f.at(i, at)}}
		d.Title = title("together", Late, clock(at), clock(d.Done))
	}
	return []Decision{d}
}

// findSets looks for sterile sets that were opened for nothing.
func findSets(f *finding) []Decision {
	right := f.sc.Right.RightDecision()
	if right == sim.SetUpToProcess {
		return nil
	}
	opened := f.every(func(a *sim.Action) bool {
		return a.Do == sim.OpenSet && (right == sim.DoNotSalvage || a.On == sim.ProcessingSet)
	})
	if len(opened) == 0 {
		return nil
	}
	first := f.acts[opened[0]]
	text := words.Say("decision.sets_both")
	if len(opened) == 1 {
		text = title("sets", Needless, partName(first.On), clock(first.Tick))
	}
	return []Decision{{Fault: Needless, Title: text, Tick: first.Tick, Done: first.Tick, Edit: Edit{Drop: opened}}}
}
