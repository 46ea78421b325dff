package debrief

import (
	"rouleau/assets/words"
	"rouleau/sim"
)

// Looking at hooks and lines before they are used.

// checks are the parts that are looked at, and what counts as using each.
var checks = [...]struct {
	part sim.Part
	used func(a *sim.Action) bool
}{
	{sim.AnticoagulantHook, func(a *sim.Action) bool { return a.Do == sim.SetDrip && a.Value > 0 || a.Do == sim.Prime }},
	{sim.SuctionLine, routesTo(sim.ToReservoir)}, {sim.VacuumLine, routesTo(sim.ToReservoir)},
	{sim.WashHookA, does(sim.Wash)}, {sim.OutletLine, does(sim.Fill)}, {sim.ProductLine, does(sim.Empty)}, {sim.WasteLine, does(sim.Fill)},
}

// afterHanging is how long it takes to hang a pack and look at it.
const afterHanging = 20 * sim.TicksPerSecond

// findBenchCheck looks for each hook and line that was used without having been looked at since it was hung or connected. One of
// them is told of alone only where looking at it alone would have been worth something.
func findBenchCheck(f *finding) (all []Decision) {
	used := 0
	for _, c := range checks {
		use := f.first(0, c.used)
		if use < 0 {
			continue
		}
		if used++; !f.lookedAt(c.part, f.acts[use].Tick) {
			all = append(all, f.looksAt(c.part, use))
		}
	}
	if len(all) < 2 {
		return all
	}
	whole := some(all, words.Say("decision.bench_check_all", len(all)))
	n, cr := float64(used-len(all)), f.criterion("bench_checked_share")
	if cr != nil && cr.Share((n+1)/float64(used)) <= cr.Share(n/float64(used)) {
		return whole[:1]
	}
	return whole
}

// looksAt looks at a part after it was hung or connected and before it is used.
func (f *finding) looksAt(p sim.Part, use int) Decision {
	by := f.acts[use].Tick
	at, first := soonBefore(by), f.last(by+1, readies(p))
	if first >= 0 {
		at = f.acts[first].Tick + 1
	}
	looks := act(at, sim.Inspect, p, 0)
	d := Decision{Fault: LeftOut, Title: title("bench_check", LeftOut, partName(p), clock(at)), Tick: at, Done: -1}
	if hung := f.first(by, on(sim.Hang, p)); p == sim.AnticoagulantHook && f.rec.moments[use].seen.Bench.HookPack[p] < 0 && hung >= 0 {
		// the drip was turned on before anything hung there: it has to wait as well
		first = hung
		d.Tick = f.acts[hung].Tick + 1
		looks.Tick = d.Tick
		d.Fault, d.Done, d.Title = Late, by, title("bench_check", Late, clock(d.Tick), clock(by))
		d.Edit.Swap = []Swap{f.at(use, f.acts[hung].Tick+afterHanging)}
	}
	if first >= 0 && first+1 < len(f.acts) {
		d.Edit.First = []First{{first + 1, []sim.Action{looks}}} // next after it, whenever that comes to be
	} else {
		d.Edit.Add = []Add{{Act: looks}}
	}
	return d
}

// readies are the acts after which a part has to be looked at: hanging, connecting, or opening the set with which it came joined.
func readies(p sim.Part) func(a *sim.Action) bool {
	return func(a *sim.Action) bool {
		return a.On == p && (a.Do == sim.Hang || a.Do == sim.Connect) ||
			a.Do == sim.OpenSet && a.On == sim.ProcessingSet && (p == sim.ProductLine || p == sim.WasteLine)
	}
}

// lookedAt says whether a part was looked at after it was last hung or connected and not after a tick.
func (f *finding) lookedAt(p sim.Part, by int64) bool {
	looked := false
	for i := range f.acts {
		switch a := &f.acts[i]; {
		case a.Tick > by:
			return looked
		case a.On != p:
		case a.Do == sim.Inspect:
			looked = true
		case a.Do == sim.Hang || a.Do == sim.Connect:
			looked = false
		}
	}
	return looked
}
