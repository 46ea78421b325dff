package debrief

import (
	"rouleau/assets/words"
	"rouleau/sim"
)

// Mixing the reservoir before it is drawn from.

const (
	rightClearShare = 0.10                        // of the reservoir: more has settled
	mixesS          = 15.0                        // that mixing takes
	mixBefore       = 5 * 60 * sim.TicksPerSecond // the earliest: what was mixed before that has settled again
)

// findMixing looks for bowls that were filled from a reservoir that had settled.
func findMixing(f *finding) []Decision {
	most := f.most("worst_clear_layer_share", rightClearShare)
	var all []Decision
	for _, b := range f.bowlfuls() {
		if b.cy.ClearShare <= most || b.cy.FillTick == 0 {
			continue
		}
		d := Decision{Fault: LeftOut, Tick: b.cy.FillTick, Done: -1}
		fills := f.of(&b, sim.Fill)
		worst := 0.0
		for _, k := range fills {
			v := &f.rec.moments[k].seen
			if share := v.ClearML / max(1, v.ReservoirML); share > most/2 {
				f.mixFirst(&d.Edit, k)
				worst = max(worst, v.ClearML)
			}
		}
		if len(d.Edit.Add) == 0 { // it began by itself
			at := max(0, b.cy.FillTick-sim.Ticks(mixesS+1))
			d.Edit.Add = []Add{{Act: act(at, sim.Mix, sim.NoPart, 0)}}
			worst = f.rec.at(b.cy.FillTick).ClearML
		}
		d.Tick = d.Edit.Add[0].Act.Tick
		d.Title = title("mixing", LeftOut, b.n, clock(b.cy.FillTick), worst)
		all = append(all, d)
	}
	return some(all, words.Say("decision.mixing_all", len(all)))
}

// mixFirst mixes before a filling while the hands are free, or else lets the filling wait for it.
func (f *finding) mixFirst(e *Edit, fill int) {
	a := f.acts[fill]
	until := a.Tick - sim.TicksPerSecond
	if at := f.quiet(max(0, until-mixBefore), until, mixesS); at >= 0 {
		e.Add = append(e.Add, Add{Act: act(at, sim.Mix, sim.NoPart, 0)})
		return
	}
	e.Add = append(e.Add, Add{Act: act(a.Tick, sim.Mix, sim.NoPart, 0)})
	e.Swap = append(e.Swap, f.moved([]int{fill}, -sim.Ticks(mixesS+1))...)
}
