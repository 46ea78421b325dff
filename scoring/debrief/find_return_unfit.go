package debrief

import (
	"rouleau/assets/words"
	"rouleau/sim"
)

// Bags that should not have been given at all.

// findUnfitGiven looks for bags from which something was given that points never make up for: thrown away instead.
func findUnfitGiven(f *finding) []Decision {
	var all []Decision
	for _, b := range f.bags() {
		if !f.gave(&b) || b.start < 0 || !f.unfit(b.k) {
			continue
		}
		t := f.acts[b.start].Tick
		if k := f.hook(&b); k >= 0 {
			t = f.acts[k].Tick
		}
		t -= t % sim.TicksPerSecond
		d := Decision{Fault: Needless, Title: title("unfit_given", Needless, b.name, clock(t)), Tick: t, Done: t}
		d.Edit.Rule = &Rule{From: t, Until: f.rec.lastTick, Act: func(v *sim.Seen, do func(sim.Action) sim.Reason) { throwsAway(b.k, v, do) }}
		for _, k := range append(append([]int{}, b.hooks...), b.rates...) {
			if f.acts[k].Tick >= t {
				d.Edit.Drop = append(d.Edit.Drop, k)
			}
		}
		all = append(all, d)
	}
	return withRules(all, words.Say("decision.unfit_given_all", len(all)))
}

// unfit says whether something about a bag could be known that spoke against giving it: hardly washed, washed with the wrong
// fluid, red with free haemoglobin, from a soiled set, or collected with something that had to be kept away.
func (f *finding) unfit(k int) bool {
	s := &f.rec.Run.State
	for i := range s.Cycles[:s.CycleUsed] {
		cy := &s.Cycles[i]
		if int(cy.Bag) != k || cy.ProductML <= 0 {
			continue
		}
		wrong := 0.0
		for sol, ml := range cy.WashBy {
			if !sim.Solution(sol).FitToWash() {
				wrong += ml
			}
		}
		liquid := max(1, cy.ProductML-cy.ProductCellsML)
		if cy.WashML < f.bowlML() || wrong > 1 || 1000*cy.FreeHbG/liquid > 4 {
			return true
		}
	}
	c := &s.Conduct
	return c.ContaminatedGivenML > 0 || c.BreachedGivenML > 0
}
