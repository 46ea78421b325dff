package debrief

import (
	"math"
	"slices"

	"rouleau/assets/words"
	"rouleau/scoring"
	"rouleau/scoring/coach"
	"rouleau/sim"
)

// The drip of anticoagulant against what the wound gives.

const (
	dropsPerML  = 20.0 // as the bench is built
	aimsPer100  = 17.0 // mL of anticoagulant for 100 mL of blood, as steady aims; [S] 15 to 20, UKCSAG Factsheet 2
	reaches     = 0.75 // of the bleeding by eye comes to the sucker, as steady reckons
	leastDrip   = 60.0 // drops/min [S] one a second at least, UKCSAG education workbook
	fastDrip    = 75.0 // up to which no drip is too fast, as it is judged
	dripGap     = 60 * sim.TicksPerSecond
	dripLeastML = 10.0                   // of blood: what was collected besides is too little to tell of [A]
	idleML      = 30.0                   // of anticoagulant run in for nothing: less is not worth telling [A]
	reactsIn    = 5 * sim.TicksPerSecond // to what is seen in the wound [A]
)

// what may be the matter with the drip
const (
	_ = iota
	tooSlow
	tooFast
	closed
	forNothing // while nothing was sucked up through the line
)

// dropsFor are the drops a minute that bleeding by eye and calcium in the irrigation ask for.
func (f *finding) dropsFor(briskMLMin, irrigationMLMin float64, fluid, anticoagulant sim.Solution) float64 {
	drops := float64(dropsPerML * aimsPer100 / 100 * reaches * briskMLMin)
	if anticoagulant == sim.CitrateSolution && fluid == sim.BalancedCrystalloid {
		drops += float64(dropsPerML * coach.CitratePerIrrigation * irrigationMLMin)
	}
	return drops
}

// dropsForAt is the same at a second of the trace.
func (f *finding) dropsForAt(i int) float64 {
	t := &f.rec.Run.Trace[i]
	ph := f.phaseAt(t.Tick)
	return f.dropsFor(sim.Briskness(t.BleedMLMin), ph.IrrigationMLMin, ph.Irrigation, f.rec.Run.State.Bench.Anticoagulant)
}

// dripIs says whether the drip was too slow or too fast for what the wound gave in a second.
func (f *finding) dripIs(i int) int {
	t := &f.rec.Run.Trace[i]
	least, most := scoring.AnticoagulantRange()
	need := f.dropsForAt(i)
	switch {
	case !t.ToReservoir || t.VacuumMmHg <= 0 || t.BleedMLMin <= 0 && (t.DropsMin > 0 || t.SuckedBloodML <= 0):
		return 0
	case t.DropsMin <= 0:
		return closed
	case t.DropsMin < need*least/aimsPer100:
		return tooSlow
	case t.DropsMin > max(fastDrip, need*most/aimsPer100):
		return tooFast
	}
	return 0
}

// ranForNothing are the times in which the drip ran while the sucker led elsewhere.
func (f *finding) ranForNothing() []stretch {
	began := f.tickOf(f.sucks()) // before it nothing has been led away
	all := f.stretches(dripGap, 0, func(i int) int {
		if t := &f.rec.Run.Trace[i]; t.Tick > began && !t.ToReservoir && t.DripML > f.rec.Run.Trace[i-1].DripML {
			return forNothing
		}
		return 0
	})
	for i := range all {
		all[i].blood = f.rec.at(all[i].to).DripML - f.rec.at(all[i].from).DripML // by which they are weighed, of anticoagulant here
	}
	return mostBlood(slices.DeleteFunc(all, func(s stretch) bool { return s.blood < idleML }), mostOfAKind-1)
}

// findDrip looks for each time in which the drip did not follow the bleeding, for all of them as one, and for a drip that ran for
// nothing.
func findDrip(f *finding) (all []Decision) {
	bad := mostBlood(f.stretches(dripGap, dripLeastML, f.dripIs), mostOfAKind-1)
	for _, s := range bad {
		all = append(all, f.followsIn(s))
	}
	if len(bad) > 1 {
		whole := stretch{from: bad[0].from, to: bad[len(bad)-1].to}
		d := f.followsIn(whole)
		d.Fault, d.Title = Wrong, words.Say("decision.drip_all", clock(d.Tick), clock(whole.to))
		all = append(all, d)
	}
	for _, s := range f.ranForNothing() {
		all = append(all, f.followsIn(s))
	}
	return all
}

// followsIn lets the drip follow the bleeding in a stretch; after it the person's own setting stands again.
func (f *finding) followsIn(s stretch) Decision {
	s.from += reactsIn
	s.from -= s.from % sim.TicksPerSecond
	d := Decision{Tick: s.from, Done: -1}
	d.Edit.Drop = f.within(&s, does(sim.SetDrip))
	d.Edit.Rule = &Rule{From: s.from, Until: s.to, Act: f.follows}
	d.Edit.Add = []Add{{Act: act(s.to, sim.SetDrip, sim.NoPart, f.rec.at(s.to).DropsMin)}}
	want, had, n := 0.0, 0.0, 0.0
	for i := int(s.from / sim.TicksPerSecond); i < int(s.to/sim.TicksPerSecond) && i < len(f.rec.Run.Trace); i++ {
		want, had, n = want+max(leastDrip, f.dropsForAt(i)), had+f.rec.Run.Trace[i].DropsMin, n+1
	}
	want, had = float64(math.Round(want/n/10)*10), float64(math.Round(had/n/5)*5)
	then := f.first(s.to-sim.TicksPerSecond, does(sim.SetDrip)) // whether the person saw it in the end
	mended := then >= 0 && f.acts[then].Tick <= s.to+sim.TicksPerSecond
	if d.Fault = LeftOut; mended {
		d.Fault, d.Done = Late, f.acts[then].Tick
	}
	switch {
	case s.kind == forNothing:
		d.Title = words.Say("decision.drip_for_nothing", clock(s.from), clock(s.to), had)
	case s.kind == closed && mended && f.last(s.from, func(a *sim.Action) bool { return a.Do == sim.SetDrip && a.Value > 0 }) < 0:
		d.Title = title("drip", Late, clock(s.from), clock(d.Done))
	case s.kind == closed:
		d.Title = words.Say("decision.drip_kept_open", want, clock(s.from), clock(s.to))
	case s.kind == tooSlow && mended:
		d.Title = words.Say("decision.drip_raised_late", want, clock(s.from), clock(d.Done))
	case s.kind == tooSlow:
		d.Title = words.Say("decision.drip_raised", want, had, clock(s.from), clock(s.to))
	case mended:
		d.Title = words.Say("decision.drip_lowered_late", want, clock(s.from), clock(d.Done))
	default:
		d.Title = words.Say("decision.drip_lowered", want, had, clock(s.from), clock(s.to))
	}
	return d
}

// follows sets the drip as steady does.
func (f *finding) follows(v *sim.Seen, do func(sim.Action) sim.Reason) {
	hung := sim.NoSolution
	if k := v.Bench.HookPack[sim.AnticoagulantHook]; k >= 0 {
		hung = f.c.Packs[k].Solution
	}
	drops := min(sim.MaxDropsMin, max(leastDrip, f.dropsFor(v.BriskMLMin, v.IrrigationMLMin, v.IrrigationFluid, hung)))
	if v.Route != sim.ToReservoir || v.SecondInUse {
		drops = 0 // nothing is sucked through the line
	}
	if drops != v.DropsMin {
		do(sim.Action{Do: sim.SetDrip, Value: drops})
	}
}
