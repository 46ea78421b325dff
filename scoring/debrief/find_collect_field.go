package debrief

import (
	"rouleau/assets/words"
	"rouleau/sim"
)

// The wound: letting blood pool, having swabs rinsed.

const (
	rinseFromML  = 150.0                    // in the swabs since they were last rinsed, as steady asks
	rinseRestML  = 60.0                     // the same at the end
	rinseTakes   = 150 * sim.TicksPerSecond // rinsing, and sucking the basin up
	rinsedShare  = 0.7                      // of what swabs hold comes out, as the bench is built
	rinseLeastML = 150.0                    // of saline at least, the same
	poolsLate    = 60 * sim.TicksPerSecond  // after the first blood somebody was asked late [A]
)

// findPool looks for blood that was sucked as it came and could have been let pool.
func findPool(f *finding) []Decision {
	sucks := f.sucks()
	if sucks < 0 || f.rec.firstBlood() >= f.rec.lastTick {
		return nil
	}
	at := f.acts[sucks].Tick
	pools, skims := f.first(0, asks(sim.LetItPool)), f.every(asks(sim.SkimAsYouGo))
	switch {
	case len(skims) > 0 && f.acts[skims[0]].Tick > at:
		done := f.acts[skims[0]].Tick
		return []Decision{{Fault: Needless, Title: title("pool", Needless, clock(done)), Tick: done, Done: done, Edit: Edit{Drop: skims}}}
	case pools < 0:
		return []Decision{{Fault: LeftOut, Title: title("pool", LeftOut, clock(at)), Tick: at, Done: -1, Edit: saying(at, sim.Ask, float64(sim.LetItPool))}}
	case f.acts[pools].Tick > max(at, f.rec.firstBlood())+poolsLate:
		done := f.acts[pools].Tick
		return []Decision{{Fault: Late, Title: title("pool", Late, clock(at), clock(done)), Tick: at, Done: done, Edit: Edit{Swap: []Swap{f.at(pools, at)}}}}
	}
	return nil
}

// findSwabs looks for swabs that were not rinsed, or not as often as they had taken up enough.
func findSwabs(f *finding) []Decision {
	if f.sucks() < 0 && f.rec.at(0).SuckedML <= 0 && !f.rec.at(0).ToReservoir {
		return nil
	}
	own, more := len(f.every(asks(sim.RinseSwabs))), f.moreRinses()
	if len(more) == 0 || own > 0 && !f.short("swabs_rinsed") {
		return nil
	}
	d := Decision{Fault: LeftOut, Tick: more[0], Done: -1}
	for _, t := range more {
		d.Edit.Add = append(d.Edit.Add, Add{Act: act(t, sim.Ask, sim.NoPart, float64(sim.RinseSwabs))})
	}
	last := more[len(more)-1]
	if i := f.first(last, func(a *sim.Action) bool { return a.Do == sim.TakeDown || begins(a) }); i >= 0 && f.acts[i].Tick < last+rinseTakes && last >= f.c.EndTick {
		for k := i; k < len(f.acts); k++ { // what was rinsed out is first to be sucked up
			d.Edit.Swap = append(d.Edit.Swap, f.at(k, f.acts[k].Tick+rinseTakes))
		}
	}
	switch {
	case len(more) == 1:
		d.Title = title("swabs", LeftOut, clock(more[0]))
	case own == 0:
		d.Title = words.Say("decision.swabs_each", rinseFromML, len(more))
	default:
		d.Fault, d.Title = Late, title("swabs", Late, rinseFromML, own+len(more), own)
	}
	return []Decision{d}
}

// moreRinses are the times, beside the person's own, at which the swabs had taken up enough to be rinsed: by their weight, which
// is what bleeding left in them, less what rinsing wrings out.
func (f *finding) moreRinses() (more []int64) {
	own := f.every(asks(sim.RinseSwabs))
	held, rest, shed := 0.0, 0.0, 0.0
	until := f.tookDown()
	for i := range f.rec.Run.Trace {
		t := &f.rec.Run.Trace[i]
		held += float64(f.phaseAt(t.Tick).SwabShare * (t.ShedML - shed))
		shed = t.ShedML
		if t.Tick >= until {
			break
		}
		full := held-rest >= rinseFromML && t.ToReservoir || t.Tick > f.c.EndTick+soonSaid && held-rest > rinseRestML
		mine := len(own) > 0 && f.acts[own[0]].Tick <= t.Tick
		if mine {
			own = own[1:]
		} else if full && (len(more) == 0 || t.Tick-more[len(more)-1] >= rinseTakes) {
			more = append(more, t.Tick)
		} else {
			continue
		}
		held = float64((1 - rinsedShare) * (held + max(rinseLeastML, held)))
		rest = held
	}
	return more
}

// phaseAt is the phase of the operation at a tick.
func (f *finding) phaseAt(tick int64) *sim.Phase {
	i := len(f.c.Phases) - 1
	for i > 0 && f.c.Phases[i].StartTick > tick {
		i--
	}
	return &f.c.Phases[i]
}
