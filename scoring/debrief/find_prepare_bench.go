package debrief

import (
	"rouleau/assets/words"
	"rouleau/sim"
)

// A bench that was left wrong before the case: packs, clamps, lines and the regulator. All of it can be found by looking and
// testing before it does harm.

// findHungPacks looks for packs that somebody had hung where they must not hang and that were not taken down before they ran.
func findHungPacks(f *finding) (all []Decision) {
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
		at := soonBefore(f.usedFrom(hook))
		d := Decision{Fault: LeftOut, Tick: at, Done: -1, Edit: Edit{Add: []Add{
			{Act: act(at, sim.Unhang, hook, 0)}, {Act: act(at, sim.Hang, hook, float64(k))}}}}
		wrong, right := f.nameOf(i, hook), solutionName(f.c.Packs[k].Solution)
		if down >= 0 {
			d.Fault, d.Done = Late, f.acts[down].Tick
			d.Title = title("hung_pack", Late, wrong, partName(hook), right, clock(at), clock(d.Done))
		} else {
			d.Title = title("hung_pack", LeftOut, wrong, partName(hook), right, clock(at))
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

// findClamps looks for clamps that were left open and that nobody closed before something ran out of them.
func findClamps(f *finding) (all []Decision) {
	for p := sim.DripClamp; p <= sim.SparePort; p++ {
		if !f.c.Faults.OpenClamps[p] || p == sim.DripClamp || p == sim.WashClampA {
			continue
		}
		harm := f.tickOf(f.first(0, does(sim.Fill)))
		if p == sim.OutletClamp {
			harm = f.usedFrom(sim.AnticoagulantHook)
		}
		shut := f.first(0, func(a *sim.Action) bool { return a.Do == sim.Clamp && a.On == p && a.Value == 0 })
		if shut >= 0 && f.acts[shut].Tick <= harm {
			continue
		}
		at := soonBefore(harm)
		d := Decision{Fault: LeftOut, Title: title("clamp", LeftOut, partName(p), clock(at)), Tick: at, Done: -1,
			Edit: Edit{Add: []Add{{Act: act(at, sim.Clamp, p, 0)}}}}
		if shut >= 0 {
			d.Fault, d.Done = Late, f.acts[shut].Tick
			d.Title = title("clamp", Late, partName(p), clock(at), clock(d.Done))
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

// findLines looks for lines that were only put on, or worked loose, and that nobody looked at before they were used.
func findLines(f *finding) (all []Decision) {
	for p := sim.VacuumLine; p <= sim.WasteLine; p++ {
		loose, harm := int64(-1), f.tickOf(f.first(0, does(sim.Fill)))
		if f.c.Faults.LooseLines[p] {
			loose = 0
		}
		for i := range f.c.Events {
			if e := &f.c.Events[i]; e.Kind == sim.EventLineLoose && sim.Part(e.Value) == p {
				loose, harm = e.At, f.tickOf(f.first(e.At, does(sim.Fill)))
			}
		}
		switch p {
		case sim.SuctionLine, sim.VacuumLine:
			harm = f.usedFrom(sim.AnticoagulantHook)
		case sim.ProductLine:
			harm = f.tickOf(f.first(0, does(sim.Empty)))
		}
		mended := f.first(max(0, loose), func(a *sim.Action) bool {
			return a.Do == sim.Connect && a.On == p || a.Do == sim.TestVacuum && p == sim.VacuumLine
		})
		if loose < 0 || harm >= f.rec.lastTick || mended >= 0 && f.acts[mended].Tick <= harm {
			continue
		}
		at := max(loose+soonSaid, soonBefore(harm))
		if loose > 0 {
			at = loose + soonSaid // it was said that somebody had been in the lines
		}
		d := Decision{Fault: LeftOut, Title: title("line", LeftOut, partName(p), clock(at)), Tick: at, Done: -1,
			Edit: Edit{Add: []Add{{Act: act(at, sim.Inspect, p, 0)}, {Act: act(at, sim.Connect, p, 0)}}}}
		if mended >= 0 {
			d.Fault, d.Done = Late, f.acts[mended].Tick
			d.Title = title("line", Late, partName(p), clock(at), clock(d.Done))
		}
		all = append(all, d)
	}
	return all
}

// findVacuumTest looks for suction that was begun before its vacuum was tested.
func findVacuumTest(f *finding) []Decision {
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
