package debrief

import (
	"slices"

	"rouleau/assets/words"
	"rouleau/sim"
)

// A bench that was left wrong before the case: packs, clamps, lines and the regulator. All of it can be found by looking and
// testing before it does harm.

// findBench looks for all of it, and at it as one: some cases ask for a bench that was put right altogether.
func findBench(f *finding) []Decision {
	all := slices.Concat(f.hungPacks(), f.openClamps(), f.looseLines())
	if f.c.Faults.NoVacuum {
		all = append(all, f.testsVacuum()...)
	}
	slices.SortStableFunc(all, func(a, b Decision) int { return int(a.Tick - b.Tick) })
	return some(all, words.Say("decision.bench_all", len(all)))
}

// hungPacks are packs that somebody had hung where they must not hang and that were not taken down before they ran.
func (f *finding) hungPacks() (all []Decision) {
	for i := range f.c.Packs {
		hook := f.c.Packs[i].On
		if hook == sim.NoPart || !f.c.WrongOn(i, hook) && f.allowed(i, hook) {
			continue
		}
		down := f.first(0, on(sim.Unhang, hook))
		if down >= 0 && !f.drawn(i) {
			continue
		}
		k := f.packFor(hook, 0, i)
		if k < 0 {
			continue
		}
		used := f.usedFrom(hook)
		if used >= f.rec.lastTick {
			continue
		}
		at := soonBefore(used)
		d := Decision{Fault: LeftOut, Tick: at, Done: -1, Edit: Edit{Add: []Add{
			{Act: act(at, sim.Unhang, hook, 0)}, {Act: act(at, sim.Hang, hook, float64(k))}}}}
		wrong, right := f.nameOf(i, hook), solutionName(f.c.Packs[k].Solution)
		if down >= 0 {
			d.Fault, d.Done = Late, f.acts[down].Tick
			d.Title = words.Say("decision.hung_pack_late", wrong, partName(hook), right, clock(at), clock(d.Done))
		} else {
			d.Title = words.Say("decision.hung_pack_left_out", wrong, partName(hook), right, clock(at))
		}
		all = append(all, d)
	}
	return all
}

// usedFrom is when something that hangs on a hook begins to be used.
func (f *finding) usedFrom(hook sim.Part) int64 {
	if hook == sim.AnticoagulantHook {
		return min(f.tickOf(f.first(0, does(sim.Prime))), f.tickOf(f.sucks()), f.firstSucked())
	}
	return f.tickOf(f.first(0, does(sim.Fill)))
}

// openClamps are clamps that were left open and that nobody closed before something ran out of them.
func (f *finding) openClamps() (all []Decision) {
	for p := sim.DripClamp; p <= sim.SparePort; p++ {
		if !f.c.Faults.OpenClamps[p] || p == sim.DripClamp || p == sim.WashClampA {
			continue
		}
		harm := f.tickOf(f.first(0, does(sim.Fill)))
		if p == sim.OutletClamp {
			harm = f.usedFrom(sim.AnticoagulantHook)
		}
		shut := f.first(0, func(a *sim.Action) bool { return a.Do == sim.Clamp && a.On == p && a.Value == 0 })
		if shut >= 0 && f.acts[shut].Tick <= harm || harm >= f.rec.lastTick {
			continue
		}
		at := soonBefore(harm)
		d := Decision{Fault: LeftOut, Title: words.Say("decision.clamp_left_out", partName(p), clock(at)), Tick: at, Done: -1,
			Edit: Edit{Add: []Add{{Act: act(at, sim.Clamp, p, 0)}}}}
		if shut >= 0 {
			d.Fault, d.Done = Late, f.acts[shut].Tick
			d.Title = words.Say("decision.clamp_late", partName(p), clock(at), clock(d.Done))
		}
		if fill := f.first(0, does(sim.Fill)); p == sim.OutletClamp && fill >= 0 {
			// whoever took it for closed would open it to fill; the person had no need to
			opens := func(a *sim.Action) bool { return a.Do == sim.Clamp && a.On == p && a.Value == 1 }
			if f.last(f.acts[fill].Tick+1, opens) < 0 {
				d.Edit.First = []First{{fill, []sim.Action{act(0, sim.Clamp, p, 1)}}}
			}
		}
		all = append(all, d)
	}
	return all
}

// looseLines are lines that were only put on, and that nobody looked at before they were used.
func (f *finding) looseLines() (all []Decision) {
	for p := sim.VacuumLine; p <= sim.WasteLine; p++ {
		if f.c.Faults.LooseLines[p] {
			all = append(all, f.firmly(p, soonBefore(f.runsFrom(p, 0)), 0)...)
		}
	}
	return all
}

// findLoosened looks for lines that worked loose in the middle of the case and were used so. Somebody said that the lines had been
// touched.
func findLoosened(f *finding) (all []Decision) {
	for i := range f.c.Events {
		if e := &f.c.Events[i]; e.Kind == sim.EventLineLoose && e.When == sim.AtTime {
			all = append(all, f.firmly(sim.Part(e.Value), e.At+soonSaid, e.At)...)
		}
	}
	return all
}

// runsFrom is when something runs through a line from a tick on, the end where nothing does.
func (f *finding) runsFrom(line sim.Part, from int64) int64 {
	switch line {
	case sim.SuctionLine, sim.VacuumLine:
		return f.usedFrom(sim.AnticoagulantHook)
	case sim.ProductLine:
		return f.tickOf(f.first(from, does(sim.Empty)))
	}
	return f.tickOf(f.first(from, does(sim.Fill)))
}

// firmly looks at a line that is loose and connects it, where the person did not before something ran through it.
func (f *finding) firmly(line sim.Part, at, since int64) []Decision {
	harm := f.runsFrom(line, since)
	mended := f.first(since, func(a *sim.Action) bool {
		return a.Do == sim.Connect && a.On == line || a.Do == sim.TestVacuum && line == sim.VacuumLine
	})
	if harm >= f.rec.lastTick || mended >= 0 && f.acts[mended].Tick <= harm {
		return nil
	}
	d := Decision{Fault: LeftOut, Title: words.Say("decision.line_left_out", partName(line), clock(at)), Tick: at, Done: -1,
		Edit: Edit{Add: []Add{{Act: act(at, sim.Inspect, line, 0)}, {Act: act(at, sim.Connect, line, 0)}}}}
	if mended >= 0 {
		d.Fault, d.Done = Late, f.acts[mended].Tick
		d.Title = words.Say("decision.line_late", partName(line), clock(at), clock(d.Done))
	}
	return []Decision{d}
}

// findVacuumTest looks for suction that was begun before its vacuum was tested, where that is all: a missing vacuum is a fault of
// the bench.
func findVacuumTest(f *finding) []Decision {
	if f.c.Faults.NoVacuum {
		return nil
	}
	return f.testsVacuum()
}

// testsVacuum tests the vacuum before the first suction.
func (f *finding) testsVacuum() []Decision {
	by := min(f.tickOf(f.sucks()), f.tickOf(f.first(0, does(sim.Prime))))
	test := f.first(0, does(sim.TestVacuum))
	if by >= f.rec.lastTick || test >= 0 && f.acts[test].Tick <= by {
		return nil
	}
	at := soonBefore(by)
	if i := f.last(by, on(sim.Connect, sim.VacuumLine)); i >= 0 {
		at = f.acts[i].Tick + 1
	}
	d := Decision{Fault: LeftOut, Title: title("vacuum_test", LeftOut, clock(at)), Tick: at, Done: -1, Edit: Edit{Add: []Add{{Act: act(at, sim.TestVacuum, sim.NoPart, 0)}}}}
	if test >= 0 {
		d.Fault, d.Done, d.Edit = Late, f.acts[test].Tick, Edit{Swap: []Swap{f.at(test, at)}}
		d.Title = title("vacuum_test", Late, clock(at), clock(d.Done))
	}
	return []Decision{d}
}

// nameOf is a pack as people would say what is wrong with it.
func (f *finding) nameOf(pack int, hook sim.Part) string {
	p := &f.c.Packs[pack]
	if p.Expired && f.fits(p.Solution, hook) {
		return words.Say("decision.out_of_date", solutionName(p.Solution))
	}
	return solutionName(p.Solution)
}
