package debrief

import (
	"strings"

	"rouleau/scenarios"
	"rouleau/sim"
)

// Where the sucker leads: away while something that must not be collected is in the wound, back when the field is clear, and to
// the reservoir all other time.

const (
	comesBack   = 60 * sim.TicksPerSecond // after the surgeon said that the field is clear the sucker is back [A]
	awayLeastML = 20.0                    // shed meanwhile: less is not worth telling [A]
)

// findRoute looks at each agent, and at each time in which the sucker led away without one.
func findRoute(f *finding) (all []Decision) {
	agents := f.rec.agents()
	for n, t := range agents {
		next := f.rec.lastTick
		if n+1 < len(agents) {
			next = agents[n+1]
		}
		if f.hasSecondSucker(t) {
			continue
		}
		all = append(all, f.atAgent(t, next)...)
	}
	all = append(all, f.awayForNothing()...)
	return all[:min(len(all), mostOfAKind)]
}

// hasSecondSucker says whether a second sucker had been asked for by a tick.
func (f *finding) hasSecondSucker(by int64) bool {
	i := f.first(0, asks(sim.SecondSucker))
	return i >= 0 && f.acts[i].Tick <= by
}

// atAgent looks whether the sucker was led away when an agent was announced, and came back when the field was clear.
func (f *finding) atAgent(t, next int64) (all []Decision) {
	from := t + soonSaid
	from -= from % sim.TicksPerSecond
	gone := f.heardOf(t, next)
	clear := f.rec.heard(t, "field_is_clear", "back_to_first")
	if clear < 0 || clear > next {
		clear = gone + askAgain
	}
	in := f.rec.at(t).ToReservoir
	away := f.first(t, routesTo(sim.ToDiscard))
	switch {
	case !in:
	case away < 0 || f.acts[away].Tick >= min(next, clear):
		if f.sucksTo(from, min(next, clear)) < awayLeastML/2 {
			return nil
		}
		rule := &Rule{From: from, Until: min(next, gone+clearsAfter), Act: func(v *sim.Seen, do func(sim.Action) sim.Reason) { leadsAway(v, from, do) }}
		d := Decision{Fault: LeftOut, Title: title("route", LeftOut, clock(from)), Tick: from, Done: -1, Edit: Edit{Rule: rule}}
		d.Edit.Drop = f.within(&stretch{from: from, to: rule.Until}, does(sim.Route))
		return []Decision{d}
	case f.sucksTo(from, f.acts[away].Tick) >= dripLeastML:
		done := f.acts[away].Tick
		all = append(all, Decision{Fault: Late, Title: title("route", Late, clock(from), clock(done)), Tick: from, Done: done, Edit: Edit{Swap: []Swap{f.at(away, from)}}})
	}
	if in && away < 0 || f.rec.at(t).SuckedML <= 0 { // never away, or never on the reservoir
		return all
	}
	left := t // since when it led away
	if in {
		left = f.acts[away].Tick
	}
	back := f.first(left, routesTo(sim.ToReservoir))
	by := max(left, clear) + soonSaid
	by += -by % sim.TicksPerSecond
	if until := min(next, f.tickOf(back), f.tookDown()); until > by+comesBack && f.rec.at(until).ShedML-f.rec.at(by).ShedML >= awayLeastML {
		d := Decision{Fault: Late, Tick: by, Done: f.tickOf(back)}
		if back < 0 || f.acts[back].Tick >= until {
			d.Fault, d.Done, d.Title = LeftOut, -1, title("back", LeftOut, clock(by))
		} else {
			d.Title = title("back", Late, clock(by), clock(d.Done))
			d.Edit.Drop = []int{back}
		}
		d.Edit.Rule = &Rule{From: by, Until: until, Act: func(v *sim.Seen, do func(sim.Action) sim.Reason) { leadsBack(v, by, do) }}
		d.Edit.Add = []Add{{Act: act(until, sim.Route, sim.NoPart, float64(sim.ToReservoir))}}
		if d.Fault == LeftOut {
			d.Edit.Add = nil
		}
		all = append(all, d)
	}
	return all
}

// leadsAway leads the sucker away while an agent is about, asks whether it is gone, and leads it back.
func leadsAway(v *sim.Seen, from int64, do func(sim.Action) sim.Reason) {
	if v.AgentSaid && v.Route == sim.ToReservoir && !v.SecondSucker {
		do(sim.Action{Do: sim.Route, Value: float64(sim.ToDiscard)})
		return
	}
	if v.Tick > from {
		askIfClear(v, from, do)
	}
	leadsBack(v, from, do)
}

// leadsBack asks whether the field is clear, where nobody has said so, and leads the sucker back.
func leadsBack(v *sim.Seen, from int64, do func(sim.Action) sim.Reason) {
	askIfClear(v, from, do)
	if !v.AgentSaid && v.Route == sim.ToDiscard {
		do(sim.Action{Do: sim.Route, Value: float64(sim.ToReservoir)})
	}
}

// tookDown is when the bench was taken down or the case was over.
func (f *finding) tookDown() int64 { return f.tickOf(f.first(0, does(sim.TakeDown))) }

// awayForNothing looks for times in which the sucker was led away though nothing was in the wound that must not be collected.
func (f *finding) awayForNothing() (all []Decision) {
	for _, i := range f.every(routesTo(sim.ToDiscard)) {
		v := &f.rec.moments[i].seen
		back := f.first(f.acts[i].Tick, routesTo(sim.ToReservoir))
		until := min(f.tickOf(back), f.tookDown())
		if v.AgentSaid || v.Route != sim.ToReservoir || v.Bench.TakenDown || f.rec.at(until).ShedML-f.rec.at(f.acts[i].Tick).ShedML < awayLeastML || f.comesSoon(f.acts[i].Tick, until) {
			continue
		}
		all = append(all, Decision{Fault: Needless, Title: title("route", Needless, clock(f.acts[i].Tick), clock(until)), Tick: f.acts[i].Tick, Done: f.acts[i].Tick, Edit: Edit{Drop: []int{i}}})
	}
	return all
}

// comesSoon says whether an agent was announced in a time.
func (f *finding) comesSoon(from, to int64) bool {
	for _, t := range f.rec.agents() {
		if t >= from && t < to {
			return true
		}
	}
	return false
}

// findSecondSucker looks for a second sucker that the custom of the hospital offers and that was asked for late or never.
func findSecondSucker(f *finding) []Decision {
	custom := false
	for _, line := range f.sc.Story.LocalPolicy {
		custom = custom || strings.Contains(strings.ToLower(line), scenarios.PolicySecondSucker)
	}
	agents := f.rec.agents()
	if !custom || len(agents) == 0 || f.hasSecondSucker(agents[0]) {
		return nil
	}
	at := max(0, agents[0]-warnBefore)
	if i := f.sucks(); i >= 0 {
		at = min(at, f.acts[i].Tick)
	}
	if i := f.first(0, asks(sim.SecondSucker)); i >= 0 {
		done := f.acts[i].Tick
		return []Decision{{Fault: Late, Title: title("second_sucker", Late, clock(at), clock(done)), Tick: at, Done: done, Edit: Edit{Swap: []Swap{f.at(i, at)}}}}
	}
	return []Decision{{Fault: LeftOut, Title: title("second_sucker", LeftOut, clock(at)), Tick: at, Done: -1, Edit: saying(at, sim.Ask, float64(sim.SecondSucker))}}
}
