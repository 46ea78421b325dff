package debrief

import (
	"rouleau/assets/words"
	"rouleau/sim"
)

// Where fillings were stopped: past the interface, short of it, or by a detector that was misled.

const (
	leastBed = 0.86 // of a bowl, and
	mostBed  = 0.97 // as most scenarios ask for it
)

// stopsFull stops a filling at the interface, and before the reservoir runs dry.
func stopsFull(v *sim.Seen, do func(sim.Action) sim.Reason) {
	m := v.Pump.Mode
	if (m == sim.PumpFill || m == sim.PumpTopUp) && reading(v) > atInterface || m == sim.PumpFill && v.ReservoirML < dryML {
		do(sim.Action{Do: sim.StopPump})
	}
}

// findOverfilled looks for fillings that went on past the interface, where cells go to waste.
func findOverfilled(f *finding) []Decision {
	most := f.most("fill_stop_fraction", mostBed)
	var all []Decision
	bowls := f.bowlfuls()
	for i := range bowls {
		b := &bowls[i]
		at := f.full(b.from, b.until)
		if b.cy.BedAtStop <= most || at < 0 {
			continue
		}
		d := Decision{Fault: Late, Tick: at, Done: b.cy.StopTick, Edit: f.stopsAt(bowls, i, at)}
		d.Title = title("overfilled", Late, b.n, clock(at), clock(b.cy.StopTick))
		if len(f.after(f.of(b, sim.Fill), at)) > 0 {
			d.Fault, d.Title = Needless, title("overfilled", Needless, b.n, clock(at), clock(b.cy.StopTick))
		}
		all = append(all, d)
	}
	return f.filledAs(all, words.Say("decision.overfilled_all", len(all)))
}

// stopsAt stops a bowl's filling when it is full, and lets what the person did with it afterwards follow as soon as then.
func (f *finding) stopsAt(bowls []bowlful, i int, at int64) Edit {
	b := &bowls[i]
	e := Edit{Rule: &Rule{From: b.from, Until: f.nextFrom(bowls, i), Act: stopsFull}}
	last := b.cy.StopTick
	for _, k := range b.acts {
		switch a := &f.acts[k]; {
		case a.Tick < at || a.Tick > last:
		case a.Do == sim.Fill || a.Do == sim.Mix || a.Do == sim.TopUp:
			e.Drop = append(e.Drop, k)
		case a.Do == sim.StopPump || a.Do == sim.ClearLine:
			e.Drop = append(e.Drop, k)
		}
	}
	if by := last - at; by > slack {
		e.Swap = f.sooner(b, last, by)
	}
	return e
}

// nextFrom is when the next bowl is begun, the end after the last.
func (f *finding) nextFrom(bowls []bowlful, i int) int64 {
	if i+1 < len(bowls) {
		return bowls[i+1].from
	}
	return f.rec.lastTick
}

// filledAs puts one decision about all fillings before those about each, with one rule for the whole time.
func (f *finding) filledAs(all []Decision, text string) []Decision {
	if len(all) < 2 {
		return all
	}
	all = some(all, text)
	whole := &all[0]
	whole.Edit.Rule = &Rule{From: all[1].Edit.Rule.From, Until: f.rec.lastTick, Act: all[1].Edit.Rule.Act}
	return all
}

// findFilledShort looks for fillings that were stopped by hand short of the interface while there was blood to fill on with.
func findFilledShort(f *finding) []Decision {
	least := f.least("fill_stop_fraction", leastBed)
	var all []Decision
	bowls := f.bowlfuls()
	for i := range bowls {
		b := &bowls[i]
		stops := f.stops(b, sim.PumpFill)
		if b.cy.BedAtStop >= least || b.cy.StopTick == 0 || b.cy.StoppedByItself || len(stops) == 0 || b.cy.WashTick == 0 && b.cy.Bag < 0 {
			continue
		}
		last := stops[len(stops)-1]
		if f.rec.moments[last].seen.ReservoirML <= littleML {
			continue // there was nothing left: another decision
		}
		e := Edit{Drop: stops, Rule: &Rule{From: b.from, Until: f.nextFrom(bowls, i), Act: stopsFull}}
		for _, k := range f.of(b, sim.Fill) {
			if f.acts[k].Tick > f.acts[stops[0]].Tick {
				e.Drop = append(e.Drop, k) // it only went on with what had been stopped
			}
		}
		t := f.acts[last].Tick
		all = append(all, Decision{Fault: Late, Title: title("filled_short", Late, b.n, clock(t), 100*b.cy.BedAtStop), Tick: t, Done: t, Edit: e})
	}
	return f.filledAs(all, words.Say("decision.filled_short_all", len(all)))
}

// findMisread looks for fillings that were left to the automatic stop while the detector was misled.
func findMisread(f *finding) []Decision {
	var all []Decision
	bowls := f.bowlfuls()
	for i := range bowls {
		b := &bowls[i]
		off := b.cy.MisreadAtStop
		if !b.cy.StoppedByItself || off <= sim.MisreadSeen && off >= -sim.MisreadSeen || b.cy.StopTick == 0 {
			continue
		}
		next := f.nextFrom(bowls, i)
		e := Edit{Add: []Add{{Act: act(max(0, b.from-1), sim.AutoStop, sim.NoPart, 0)}}, Rule: &Rule{From: b.from, Until: next, Act: stopsByEye}}
		if i+1 < len(bowls) {
			e.Add = append(e.Add, Add{Act: act(next-1, sim.AutoStop, sim.NoPart, 1)}) // the next is as it was
		}
		for _, k := range f.of(b, sim.Fill) {
			if f.acts[k].Tick > b.from && f.acts[k].Tick < b.cy.StopTick {
				e.Drop = append(e.Drop, k)
			}
		}
		d := Decision{Fault: Wrong, Title: title("misread", Wrong, b.n, clock(b.cy.StopTick)), Tick: b.from, Done: b.cy.StopTick, Edit: e}
		all = append(all, d)
	}
	if len(all) < 2 {
		return all
	}
	first := all[0].Edit.Add[0]
	all = f.filledAs(all, words.Say("decision.misread_all", len(all)))
	all[0].Edit.Add = []Add{first}
	for _, k := range f.every(func(a *sim.Action) bool { return a.Do == sim.AutoStop && a.Value == 1 && a.Tick >= first.Act.Tick }) {
		all[0].Edit.Drop = append(all[0].Edit.Drop, k)
	}
	return all
}

// stopsByEye stops a filling when the bed is seen to reach the interface.
func stopsByEye(v *sim.Seen, do func(sim.Action) sim.Reason) {
	m := v.Pump.Mode
	if (m == sim.PumpFill || m == sim.PumpTopUp) && v.Pump.BedByEye > atInterface || m == sim.PumpFill && v.ReservoirML < dryML {
		do(sim.Action{Do: sim.StopPump})
	}
}
