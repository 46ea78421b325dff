package debrief

import "rouleau/sim"

// What is said about something that must not be collected: before it comes, and before the sucker goes back.

const (
	warnBefore  = 2 * 60 * sim.TicksPerSecond  // a warning is asked for so long before the agent comes at the latest [A]
	askAgain    = 90 * sim.TicksPerSecond      // between two questions whether the field is clear, as steady asks
	clearsAfter = 10 * 60 * sim.TicksPerSecond // after the agent was last heard of the field is clear [A]
)

// agents are the ticks at which something that must be diverted was announced.
func (rec *Record) agents() (ticks []int64) {
	for i := range rec.Run.Log {
		o := &rec.Run.Log[i]
		for k := range rec.Run.Case.Events {
			if e := &rec.Run.Case.Events[k]; o.Kind == sim.Said && o.Line >= 0 && e.Kind == sim.EventAgentOn && e.Line == o.Line {
				ticks = append(ticks, o.Tick)
			}
		}
	}
	return ticks
}

// findWarn looks for an agent that came without anybody having been asked to tell beforehand. It is asked for when collecting
// begins, as steady does, or earlier where the agent comes soon.
func findWarn(f *finding) []Decision {
	agents := f.rec.agents()
	if len(agents) == 0 {
		return nil
	}
	at := max(0, agents[0]-warnBefore)
	if i := f.first(0, routesTo(sim.ToReservoir)); i >= 0 {
		at = min(at, f.acts[i].Tick)
	}
	if i := f.first(agents[0], asks(sim.TellMeWhen)); i >= 0 {
		right := f.acts[i]
		right.Tick = at
		return []Decision{{Fault: Late, Title: title("warn_of_agent", Late, clock(at), clock(f.acts[i].Tick)), Tick: at, Done: f.acts[i].Tick, Edit: Edit{Swap: []Swap{{i, right}}}}}
	}
	return []Decision{{Fault: LeftOut, Title: title("warn_of_agent", LeftOut, clock(at)), Tick: at, Done: -1, Edit: saying(at, sim.Ask, float64(sim.TellMeWhen))}}
}

func routesTo(d sim.Destination) func(a *sim.Action) bool {
	return func(a *sim.Action) bool { return a.Do == sim.Route && sim.Destination(a.Value) == d }
}

// findAskClear looks for each agent after which the sucker went back before the surgeon had said that the field is clear, or
// nobody ever asked. Whether it was led away at all is a decision in collecting.
func findAskClear(f *finding) (all []Decision) {
	agents, second := f.rec.agents(), f.first(0, asks(sim.SecondSucker))
	for n, t := range agents {
		next := f.rec.lastTick
		if n+1 < len(agents) {
			next = agents[n+1]
		}
		clear := f.rec.heard(t, "field_is_clear", "back_to_first")
		away := f.first(t, routesTo(sim.ToDiscard))
		led := !f.rec.at(t).ToReservoir || away >= 0 && f.acts[away].Tick < next
		if !led || second >= 0 && f.acts[second].Tick <= t || f.rec.Run.State.Field.SuckedML == 0 {
			continue
		}
		from := t
		if f.rec.at(t).ToReservoir {
			from = f.acts[away].Tick
		}
		switch back := f.first(from, routesTo(sim.ToReservoir)); {
		case back >= 0 && (clear < 0 || clear > f.acts[back].Tick):
			all = append(all, f.waitForClear(back, min(next, max(clear, f.heardOf(t, next))+clearsAfter)))
		case back < 0 && clear < 0:
			at := f.inTime(f.heardOf(t, next) + soonSaid)
			rule := &Rule{From: at, Until: at + clearsAfter, Act: func(v *sim.Seen, do func(sim.Action) sim.Reason) { askIfClear(v, at, do) }}
			all = append(all, Decision{Fault: Late, Title: title("ask_clear", Late, clock(at)), Tick: at, Done: -1, Edit: Edit{Rule: rule}})
		}
	}
	return all
}

// heardOf is when the last was heard of an agent before a tick: that it comes, or that it is not used any more.
func (f *finding) heardOf(t, before int64) int64 {
	last := t
	for i := range f.c.Events {
		if e := &f.c.Events[i]; e.Kind == sim.EventAgentOff && e.At > t && e.At < before {
			last = max(last, e.At)
		}
	}
	return last
}

// askIfClear asks, and again after a while, as long as nobody said that the field is clear.
func askIfClear(v *sim.Seen, from int64, do func(sim.Action) sim.Reason) {
	if v.AgentSaid && (v.Tick-from)%askAgain == 0 {
		do(sim.Action{Do: sim.Ask, Value: float64(sim.IsAgentGone)})
	}
}

// waitForClear keeps the sucker away, asking, until the surgeon has said that the field is clear.
func (f *finding) waitForClear(back int, until int64) Decision {
	from := f.acts[back].Tick
	e := Edit{Rule: &Rule{From: from - from%sim.TicksPerSecond, Until: until, Act: func(v *sim.Seen, do func(sim.Action) sim.Reason) {
		askIfClear(v, from-from%sim.TicksPerSecond, do)
		if !v.AgentSaid && v.Route == sim.ToDiscard {
			do(sim.Action{Do: sim.Route, Value: float64(sim.ToReservoir)})
		}
	}}}
	last := sim.ToReservoir
	for i := back; i < len(f.acts) && f.acts[i].Tick < until; i++ {
		if f.acts[i].Do == sim.Route {
			e.Drop, last = append(e.Drop, i), sim.Destination(f.acts[i].Value)
		}
	}
	e.Add = []Add{{Act: act(until, sim.Route, sim.NoPart, float64(last))}} // from then on as the person had it
	return Decision{Fault: LeftOut, Title: title("ask_clear", LeftOut, clock(from)), Tick: from, Done: from, Edit: e}
}
