package scoring

import (
	"slices"

	"rouleau/sim"
)

// The measure of what was wrong with the bench from the start: mended before it did harm?

// benchFaultsMended is the share of the faults of the bench that were put right in time.
func benchFaultsMended(j *judged) found {
	all, good, worst := 0.0, 0.0, int64(-1)
	fault := func(mended bool, harm int64) {
		all++
		if mended {
			good++
		} else if worst < 0 {
			worst = harm
		}
	}
	for i := range j.c.Packs {
		if hook := j.c.Packs[i].On; hook != sim.NoPart && j.c.WrongOn(i, hook) {
			drawn := j.c.Packs[i].VolumeML - j.s.Bench.Packs[i].Fluid.VolumeML()
			fault(drawn < 1 && j.firstDone(on(sim.Unhang, hook)) >= 0, -1)
		}
	}
	sucks, fills := j.earliest(routesIn, does(sim.Prime)), j.earliest(does(sim.Fill))
	for _, f := range [...]struct {
		part sim.Part
		harm int64 // from then on it does harm
	}{
		{sim.OutletClamp, sucks}, {sim.WashClampB, fills}, {sim.WasteDrain, fills}, {sim.SparePort, fills},
	} {
		if j.c.Faults.OpenClamps[f.part] {
			fault(j.doneBy(f.harm, func(a *sim.Action) bool { return a.Do == sim.Clamp && a.On == f.part && a.Value == 0 }), f.harm)
		}
	}
	for _, f := range [...]struct {
		part sim.Part
		harm int64
	}{
		{sim.SuctionLine, sucks}, {sim.VacuumLine, sucks}, {sim.OutletLine, fills}, {sim.WasteLine, fills}, {sim.ProductLine, j.earliest(does(sim.Empty))},
	} {
		if j.c.Faults.LooseLines[f.part] {
			fault(j.doneBy(f.harm, on(sim.Connect, f.part)) || f.part == sim.VacuumLine && j.doneBy(f.harm, does(sim.TestVacuum)), f.harm)
		}
	}
	if j.c.Faults.NoVacuum {
		fault(j.doneBy(sucks, does(sim.TestVacuum)), sucks)
	}
	if all == 0 {
		return none()
	}
	f := shareOf(good, all)
	f.tick = worst
	return f
}

// wrongPackTold asks whether somebody was told of a wrong pack that hung there, harm or no harm.
func wrongPackTold(j *judged) found {
	for i := range j.c.Packs {
		if hook := j.c.Packs[i].On; hook != sim.NoPart && j.c.WrongOn(i, hook) {
			at := j.firstDone(func(a *sim.Action) bool {
				return a.Do == sim.Declare && sim.Incident(a.Value) == sim.IncidentWrongFluid
			})
			f := yesNo(at >= 0)
			f.tick = at
			return f
		}
	}
	return none()
}

func on(v sim.Verb, part sim.Part) func(a *sim.Action) bool {
	return func(a *sim.Action) bool { return a.Do == v && a.On == part }
}

// earliest is the first tick at which one of these was done, -1 for never.
func (j *judged) earliest(any ...func(a *sim.Action) bool) int64 {
	return j.firstDone(func(a *sim.Action) bool {
		return slices.ContainsFunc(any, func(f func(*sim.Action) bool) bool { return f(a) })
	})
}

// doneBy says whether something was done, and not after a tick; -1 sets no limit.
func (j *judged) doneBy(limit int64, fits func(a *sim.Action) bool) bool {
	at := j.firstDone(fits)
	return at >= 0 && (limit < 0 || at <= limit)
}
