package debrief

import (
	"rouleau/assets/words"
	"rouleau/sim"
)

// Anticoagulant that did not come although the drip was set, vacuum that was too high, too low or not there, and a bench that was
// not ready when the first blood came.

const (
	flowGap     = 10 * sim.TicksPerSecond
	lowPackML   = 60.0 // left in the pack when steady hangs the next one
	leastMmHg   = 80.0 // as the vacuum is judged
	mostMmHg    = 150.0
	setsUpIn    = 5 * 60 * sim.TicksPerSecond // in which a bench is set up
	readyAgain  = 30 * sim.TicksPerSecond     // a bench that was ready so long after the first blood was ready in time [A]
	packRunsOut = 60 * sim.TicksPerSecond     // before a pack is empty its scale tells [A]
)

// findDripFlow looks for times in which blood was collected, the drip was set, and nothing came: a closed clamp, an empty pack or
// an empty hook.
func findDripFlow(f *finding) (all []Decision) {
	tr := f.rec.Run.Trace
	dry := f.stretches(flowGap, dripLeastML, func(i int) int {
		if t := &tr[i]; i == 0 || !t.ToReservoir || t.VacuumMmHg <= 0 || t.DropsMin <= 0 || t.DripML+t.PrimedML > tr[i-1].DripML+tr[i-1].PrimedML {
			return 0
		}
		return closed
	})
	for _, s := range mostBlood(dry, mostOfAKind) {
		if d, ok := f.letsItDrip(&s); ok {
			all = append(all, d)
		}
	}
	return all
}

// letsItDrip does before a dry stretch what ended it, or should have.
func (f *finding) letsItDrip(s *stretch) (d Decision, ok bool) {
	v, hook := f.seenBy(s.from+1), sim.AnticoagulantHook
	k := v.Bench.HookPack[hook]
	opens := f.first(s.from, func(a *sim.Action) bool { return a.Do == sim.Clamp && a.On == sim.DripClamp && a.Value == 1 })
	hangs := f.first(s.from, on(sim.Hang, hook))
	d = Decision{Fault: LeftOut, Tick: s.from, Done: -1}
	switch {
	case k >= 0 && v.Bench.PackLeftML[k] >= lowPackML && !v.Bench.Open[sim.DripClamp]:
		if opens < 0 {
			d.Title = words.Say("decision.drip_clamp_left_out", clock(d.Tick))
			d.Edit.Add = []Add{{Act: act(d.Tick, sim.Clamp, sim.DripClamp, 1)}}
			return d, true
		}
		d.Fault, d.Done, d.Edit.Swap = Late, f.acts[opens].Tick, []Swap{f.at(opens, d.Tick)}
		d.Title = words.Say("decision.drip_clamp_late", clock(d.Tick), clock(d.Done))
		return d, true
	case k >= 0 && v.Bench.PackLeftML[k] >= lowPackML: // it hangs and is open: what hangs is another matter
		return d, false
	}
	d.Tick = max(0, s.from-packRunsOut)
	downs := f.last(f.tickOf(hangs)+1, on(sim.Unhang, hook))
	if hangs < 0 {
		next := f.packFor(hook, s.from, int(k))
		if next < 0 {
			return d, false
		}
		d.Title = title("drip_flow", LeftOut, solutionName(f.c.Packs[next].Solution), clock(d.Tick))
		d.Edit.Add = []Add{{Act: act(d.Tick, sim.Unhang, hook, 0)}, {Act: act(d.Tick, sim.Hang, hook, float64(next))}}
		return d, true
	}
	d.Fault, d.Done = Late, f.acts[hangs].Tick
	d.Title = title("drip_flow", Late, solutionName(f.c.Packs[int(f.acts[hangs].Value)].Solution), clock(d.Tick), clock(d.Done))
	d.Edit.Swap = []Swap{f.at(hangs, d.Tick)}
	if downs >= 0 && f.acts[downs].Tick >= d.Tick {
		d.Edit.Swap = append([]Swap{f.at(downs, d.Tick)}, d.Edit.Swap...)
	}
	return d, true
}

// findVacuum looks for each setting of the vacuum that was out of range while the sucker led to the reservoir.
func findVacuum(f *finding) (all []Decision) {
	sucks, sets := f.sucks(), f.every(does(sim.SetVacuum))
	if sucks < 0 {
		return nil
	}
	if v := &f.rec.moments[sucks].seen; v.VacuumSetMmHg <= 0 && f.acts[sucks].Do == sim.Route {
		at := f.acts[sucks].Tick
		if i := f.first(at, does(sim.SetVacuum)); i >= 0 && f.acts[i].Tick > at+soonSaid {
			return []Decision{{Fault: Late, Title: title("vacuum", Late, f.acts[i].Value, clock(at), clock(f.acts[i].Tick)), Tick: at, Done: f.acts[i].Tick, Edit: Edit{Swap: []Swap{f.at(i, at)}}}}
		} else if i < 0 {
			return []Decision{{Fault: LeftOut, Title: title("vacuum", LeftOut, rightMmHg, clock(at)), Tick: at, Done: -1, Edit: Edit{Add: []Add{{Act: act(at, sim.SetVacuum, sim.NoPart, rightMmHg)}}}}}
		}
	}
	for _, i := range sets {
		a := f.acts[i]
		if a.Value >= leastMmHg && a.Value <= mostMmHg || f.sucksTo(a.Tick, f.tickOf(f.first(a.Tick+1, does(sim.SetVacuum)))) < dripLeastML {
			continue
		}
		all = append(all, Decision{Fault: Wrong, Title: title("vacuum", Wrong, rightMmHg, a.Value, clock(a.Tick)), Tick: a.Tick, Done: a.Tick, Edit: Edit{Swap: []Swap{f.valued(i, rightMmHg)}}})
	}
	return some(all, words.Say("decision.vacuum_all", rightMmHg))
}

// sucksTo is what the sucker brought to the reservoir between two ticks.
func (f *finding) sucksTo(from, to int64) float64 {
	return f.rec.at(to).SuckedML - f.rec.at(from).SuckedML
}

// findReady looks for a sucker that was led to the reservoir only after the bleeding had begun.
func findReady(f *finding) []Decision {
	blood, sucks := f.rec.firstBlood(), f.sucks()
	if f.rec.at(0).ToReservoir {
		return nil
	}
	if sucks < 0 {
		return f.neverReady(blood)
	}
	done := f.acts[sucks].Tick
	if done <= blood+readyAgain || f.rec.at(done).ShedML < awayLeastML {
		return nil
	}
	by := soonBefore(blood)
	d := Decision{Fault: Late, Tick: by, Done: done}
	ready := int64(0) // since when the sucker could have been led there
	for i := range f.acts[:sucks] {
		if v := &f.rec.moments[i].seen; !v.Bench.Opened[sim.CollectionSet] || !v.Bench.Connected[sim.SuctionLine] || !v.Bench.Connected[sim.VacuumLine] {
			ready = f.acts[i].Tick + 1
		}
	}
	if ready <= blood {
		d.Tick = max(ready, by)
		d.Edit.Swap = []Swap{f.at(sucks, d.Tick)}
		d.Title = title("ready", Late, clock(d.Tick), clock(done))
		return []Decision{d}
	}
	// all that made the bench ready has to come sooner
	for i := 0; i <= sucks; i++ {
		if a := &f.acts[i]; a.Do != sim.Answer && a.Do != sim.EstimateLoss && a.Do != sim.Note && a.Do != sim.Declare && a.Do != sim.Ask {
			d.Edit.Swap = append(d.Edit.Swap, f.at(i, int64(float64(a.Tick)*float64(by)/float64(done))))
		}
	}
	d.Title = words.Say("decision.ready_bench", clock(by), clock(done))
	return []Decision{d}
}

// neverReady lets steady set up and collect where the person was to, and never led the sucker to the reservoir.
func (f *finding) neverReady(blood int64) []Decision {
	decided := f.rec.Run.State.Bench.Decision
	if right := f.sc.Right.RightDecision(); decided != right || right == sim.DoNotSalvage || blood >= f.rec.lastTick {
		return nil
	}
	at := max(1, blood-setsUpIn)
	return []Decision{{Fault: LeftOut, Title: title("ready", LeftOut, clock(at)), Tick: at, Done: -1, Edit: Edit{Good: at}}}
}
