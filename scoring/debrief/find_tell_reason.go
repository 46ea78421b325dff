package debrief

import (
	"rouleau/assets/words"
	"rouleau/sim"
)

// What the team has to be told without having asked: why nothing is collected, that clotting is thinned out, that fluid runs
// short, and what an RhD-negative mother needs.

// Marks at which these are told, as steady does it.
const (
	tellAtML     = 900.0  // washed blood given
	sendAtML     = 4000.0 // saline left
	sendAheadML  = 1000.0 // above what the case asks for: a wash or two
	runsInML     = 5.0    // washed blood given: so much a scale shows
	beforeBlood  = 30 * sim.TicksPerSecond
	leastTelling = 500.0 // washed blood given before which the anaesthetist has nothing to act on
)

// findTellReason looks for a reason that the team was not told, or told only when it bled. It is told when it was decided. Where
// something else was decided than what the reason calls for, it is decided rightly and told.
func findTellReason(f *finding) []Decision {
	why, found := sim.PatientDeclines, false
	for r := sim.PatientDeclines; r <= sim.NoHeparin; r++ {
		if r.String() == f.sc.Right.Tell {
			why, found = r, true
		}
	}
	if !found {
		return nil
	}
	at := f.rec.firstBlood() - beforeBlood
	if i := f.first(0, does(sim.Decide)); i >= 0 {
		at = min(at, f.acts[i].Tick+soonSaid)
	}
	at = f.inTime(at)
	d := Decision{Fault: LeftOut, Title: title("tell_reason", LeftOut, clock(at)), Tick: at, Done: -1, Edit: saying(at, sim.Ask, float64(why))}
	told := f.first(0, asks(why))
	switch noHeparin := why == sim.NoHeparin; {
	case told >= 0:
		right := f.acts[told]
		right.Tick = at
		d.Fault, d.Done, d.Edit = Late, f.acts[told].Tick, Edit{Swap: []Swap{{told, right}}}
		d.Title = title("tell_reason", Late, clock(at), clock(d.Done))
		if noHeparin {
			d.Title = title("tell_no_heparin", Late, clock(at), clock(d.Done))
		}
	case noHeparin:
		d.Title = title("tell_no_heparin", LeftOut, clock(at))
	}
	if decided := f.every(does(sim.Decide)); why != sim.NoHeparin && len(decided) > 0 && f.rec.Run.State.Bench.Decision != f.sc.Right.RightDecision() {
		right, first := f.sc.Right.RightDecision(), f.acts[decided[0]]
		d.Edit.Swap = append(d.Edit.Swap, Swap{decided[0], act(first.Tick, sim.Decide, sim.NoPart, float64(right))})
		d.Edit.Drop = decided[1:]
		d.Fault, d.Title = Wrong, title("tell_reason", Wrong, words.Say("decision."+right.String()), words.Say("decision."+sim.Decision(first.Value).String()), clock(first.Tick))
	}
	return []Decision{d}
}

// findTellClotting looks for washed blood that ran in, much of it, before the anaesthetist was told what it does not bring.
func findTellClotting(f *finding) []Decision {
	want := tellAtML
	if cr := f.criterion("clotting_told_after_ml"); cr != nil && cr.Most != nil {
		want = max(leastTelling, min(want, *cr.Most-runsInML))
	}
	at := f.rec.given(want)
	if at < 0 {
		return nil // never so much: that was lost elsewhere
	}
	at = f.inTime(at + sim.TicksPerSecond)
	k := &f.rec.Run.State.Team.Clotting
	i := f.first(k.ToldTick, asks(sim.ThinnedClotting))
	if k.ToldTick == 0 || i < 0 {
		return []Decision{{Fault: LeftOut, Title: title("tell_clotting", LeftOut, clock(at), want), Tick: at, Done: -1, Edit: saying(at, sim.Ask, float64(sim.ThinnedClotting))}}
	}
	right := f.acts[i]
	right.Tick = at
	return []Decision{{Fault: Late, Title: title("tell_clotting", Late, clock(at), want, k.ToldAtML), Tick: at, Done: k.ToldTick, Edit: Edit{Swap: []Swap{{i, right}}}}}
}

// findSendForFluid looks for the minute in which the saline on the bench had come down to where steady sends for more.
func findSendForFluid(f *finding) []Decision {
	want := sendAtML
	if cr := f.criterion("saline_left_when_sent_for_ml"); cr != nil && cr.Least != nil {
		want = max(want, *cr.Least+sendAheadML)
	}
	var v sim.Seen
	for i := range f.rec.marks {
		sim.View(f.c, &f.rec.marks[i].State, &v)
		if v.SalineLeftML >= want || v.Tick >= f.rec.lastTick {
			continue
		}
		at := max(v.Tick, f.rec.decided())
		if i := f.first(0, asks(sim.SendForFluid)); i >= 0 {
			if f.acts[i].Tick <= at {
				return nil
			}
			right := f.acts[i]
			right.Tick = at
			return []Decision{{Fault: Late, Title: title("send_for_fluid", Late, clock(at), v.SalineLeftML, clock(f.acts[i].Tick)), Tick: at, Done: f.acts[i].Tick, Edit: Edit{Swap: []Swap{{i, right}}}}}
		}
		return []Decision{{Fault: LeftOut, Title: title("send_for_fluid", LeftOut, clock(at), v.SalineLeftML), Tick: at, Done: -1, Edit: saying(at, sim.Ask, float64(sim.SendForFluid))}}
	}
	return nil
}

// decided is when it was first decided what to do, 0 for never.
func (rec *Record) decided() int64 {
	for i := range rec.Run.Actions {
		if rec.Run.Actions[i].Do == sim.Decide {
			return rec.Run.Actions[i].Tick
		}
	}
	return 0
}

// findAntiD and findFetalTest look for what follows when washed blood of an RhD-negative mother had run in.
func findAntiD(f *finding) []Decision {
	at := f.rec.given(runsInML)
	if at < 0 {
		return nil
	}
	at = f.inTime(at + soonSaid)
	return []Decision{{Fault: LeftOut, Title: title("anti_d", LeftOut, clock(at)), Tick: at, Done: -1, Edit: saying(at, sim.Ask, float64(sim.GiveAntiD))}}
}

func findFetalTest(f *finding) []Decision {
	at := f.rec.given(runsInML)
	if at < 0 {
		return nil
	}
	at = f.inTime(at + soonSaid)
	d := Decision{Fault: LeftOut, Title: title("fetal_test", LeftOut, clock(at)), Tick: at, Done: -1, Edit: saying(at, sim.Ask, float64(sim.TestFetalBleed))}
	if i := f.first(0, asks(sim.TestFetalBleed)); i >= 0 { // before any of it had run in
		d.Fault, d.Done, d.Title = Late, f.acts[i].Tick, title("fetal_test", Late, clock(at), clock(f.acts[i].Tick))
	}
	return []Decision{d}
}
