package debrief

import (
	"rouleau/scoring/operators"
	"rouleau/sim"
)

// Part-filled bowls: filled on, waited for, or topped up from the product bag.

// findPartBowls looks for bowls that were washed part-filled for want of blood although more was to come.
func findPartBowls(f *finding) []Decision {
	var all []Decision
	bowls := f.bowlfuls()
	for i := range bowls {
		b := &bowls[i]
		if !f.partFilled(b) {
			continue
		}
		d := Decision{Fault: Needless, Tick: b.cy.WashTick, Done: b.cy.WashTick}
		next := i + 1
		switch {
		case next < len(bowls) && bowls[next].cy.StopTick > 0 && len(f.of(&bowls[next], sim.Fill)) > 0:
			for _, k := range f.after(b.acts, b.cy.StopTick) {
				if v := f.acts[k].Do; v != sim.ChangeWaste && v != sim.ClearLine && v != sim.Mix {
					d.Edit.Drop = append(d.Edit.Drop, k)
				}
			}
			for _, k := range f.stops(&bowls[next], sim.PumpFill) { // it goes on until the bowl is full
				d.Edit.Stops = append(d.Edit.Stops, StopAt{Own: k, Detector: atInterface})
			}
			d.Title = title("part_bowl", Needless, b.n, clock(b.cy.WashTick), 100*b.cy.BedAtStop)
		case b.cy.WashTick < f.c.EndTick && f.cameAfter(b.cy.StopTick) > fillOnFromML*f.scale():
			for _, k := range f.after(b.acts, b.cy.StopTick) {
				d.Edit.Drop = append(d.Edit.Drop, k)
			}
			d.Edit.Rule = f.bowls(b.cy.StopTick, atInterface)
			d.Title = title("part_bowl_waited", Needless, b.n, clock(b.cy.WashTick), 100*b.cy.BedAtStop)
		default:
			continue
		}
		all = append(all, d)
	}
	return all[:min(len(all), mostOfAKind)]
}

// partFilled says whether a bowl was washed part-filled, for want of blood, with no need.
func (f *finding) partFilled(b *bowlful) bool {
	cy := b.cy
	return cy.StopTick > 0 && cy.WashTick > 0 && cy.BedAtStop < partFull && !cy.Reprocessed && f.rec.at(cy.StopTick).ReservoirML <= 2*littleML*f.scale()
}

// cameAfter is what came into the reservoir after a tick.
func (f *finding) cameAfter(tick int64) float64 {
	return f.rec.at(f.rec.lastTick).SuckedML - f.rec.at(tick).SuckedML
}

// findBegunEarly looks for a habit of beginning bowls before there was enough for a full one. Put right, each is begun with
// enough, and all else with it is done as the person did it.
func findBegunEarly(f *finding) []Decision {
	start, early, least := f.startML(), 0, f.startML()
	first := -1
	for _, b := range f.bowlfuls() {
		had := f.rec.at(b.from - sim.TicksPerSecond).ReservoirML
		if b.cy.FillTick == 0 || b.from >= f.c.EndTick || b.cy.BedAtStop >= partFull || had > start*tooEarly {
			continue
		}
		early++
		least = min(least, had)
		if fills := f.of(&b, sim.Fill); first < 0 && len(fills) > 0 {
			first = fills[0]
		}
	}
	if early == 0 {
		return nil
	}
	if own := f.last(f.rec.lastTick, does(sim.AutoFillAt)); first < 0 && own >= 0 { // it was begun by itself
		t := f.acts[own].Tick
		return []Decision{{Fault: Late, Title: title("begun_early", Late, start, least), Tick: t, Done: t, Edit: Edit{Swap: []Swap{f.valued(own, start)}}}}
	}
	if first < 0 {
		return nil
	}
	from := f.acts[first].Tick
	e := Edit{Rule: f.bowls(from, f.usualStop()), Drop: f.bowlActs(from)}
	return []Decision{{Fault: Late, Title: title("begun_early", Late, start, least), Tick: from, Done: from, Edit: e}}
}

const tooEarly = 0.8 // of what a bowl should be begun with

// usualStop is the reading at which the person usually stopped a filling that had not run out of blood.
func (f *finding) usualStop() float64 {
	all, n := 0.0, 0.0
	for _, b := range f.bowlfuls() {
		for _, k := range f.stops(&b, sim.PumpFill) {
			if v := &f.rec.moments[k].seen; v.ReservoirML > littleML {
				all, n = all+v.Pump.Detector, n+1
			}
		}
	}
	if n == 0 {
		return atInterface
	}
	return min(atInterface, all/n)
}

// findNotToppedUp looks for a last bowl that stayed part-filled where it is the custom to top up from the product bag.
func findNotToppedUp(f *finding) []Decision {
	bowls := f.bowlfuls()
	if len(bowls) < 2 || !operators.SheetOf(f.sc, f.c).TopsUp {
		return nil
	}
	b := &bowls[len(bowls)-1]
	washes := f.of(b, sim.Wash)
	if !f.partFilled(b) || len(washes) == 0 || b.cy.Bag < 0 {
		return nil
	}
	v := &f.rec.moments[washes[0]].seen
	if k := v.BagsUsed - 1; k < 0 || v.Bags[k].ML < littleML || v.Bags[k].HandedBits != 0 || v.Bags[k].Discarded || v.Giving.Bag == int8(k) || !v.Pump.Spinning {
		return nil
	}
	t := f.acts[washes[0]].Tick
	e := Edit{First: []First{{washes[0], []sim.Action{act(t, sim.TopUp, sim.NoPart, 0)}}}, Rule: &Rule{From: t - t%sim.TicksPerSecond, Until: f.rec.lastTick, Act: stopsFull}}
	return []Decision{{Fault: LeftOut, Title: title("topped_up", LeftOut, b.n, clock(t)), Tick: t, Done: -1, Edit: e}}
}
