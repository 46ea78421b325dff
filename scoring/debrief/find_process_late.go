package debrief

import (
	"slices"

	"rouleau/assets/words"
	"rouleau/sim"
)

// Bowls that were begun late or early, and bowls that stood.

const (
	lateStart = 3 * 60 * sim.TicksPerSecond // later than there was enough for it
	longStand = 60 * sim.TicksPerSecond     // that a bowl stood in all between filling, washing and emptying
	atOnce    = 5 * sim.TicksPerSecond
)

// sooner brings what the person did with a bowl after a tick forward, and the return of the bag that it was the first to fill,
// though not before that was wanted.
func (f *finding) sooner(b *bowlful, tick, by int64) []Swap {
	acts := f.every(func(a *sim.Action) bool { // what was set while it was filled and washed belongs to it
		return a.Tick > max(tick, b.from) && a.Tick < b.until && (a.Do == sim.AutoStop || a.Do == sim.SetFillRate || a.Do == sim.SetWashRate || a.Do == sim.SetWashVolume)
	})
	swaps := f.moved(append(f.after(b.acts, tick), acts...), by)
	return append(swaps, f.returnSooner(b, by)...)
}

func (f *finding) returnSooner(b *bowlful, by int64) []Swap {
	if b.cy.Bag < 0 || f.filled(int(b.cy.Bag)) < b.from || f.filled(int(b.cy.Bag)) > b.until {
		return nil
	}
	bag := f.bags()[b.cy.Bag]
	before, ends := f.readied(&bag)
	before = f.after(before, b.until)
	if len(before) == 0 {
		return nil
	}
	slices.Sort(before)
	begun := f.acts[before[0]].Tick
	wanted := f.wantedFrom(begun)
	if wanted < 0 {
		return nil
	}
	by = min(by, begun-max(wanted, b.until-by))
	if by < slack {
		return nil
	}
	return f.moved(append(before, ends...), by)
}

// enoughAt is the first tick from one on at which there was enough in the reservoir for a bowl, -1 for never.
func (f *finding) enoughAt(from, until int64) int64 {
	start, last := f.startML(), float64(f.scale()*rightLastML)
	for t := from - from%sim.TicksPerSecond; t <= until; t += sim.TicksPerSecond {
		if s := f.rec.at(t); s.ReservoirML >= start || t >= f.c.EndTick && s.ReservoirML >= last && s.PoolML < 20 {
			return t
		}
	}
	return -1
}

// findBegunLate looks for bowls that were begun later than there was enough for them.
func findBegunLate(f *finding) []Decision {
	var all []Decision
	done := int64(0)
	for _, b := range f.bowlfuls() {
		from := done
		done = b.until
		if b.cy.FillTick == 0 || len(b.acts) == 0 || f.acts[b.acts[0]].Do != sim.Fill && f.acts[b.acts[0]].Do != sim.Mix {
			continue
		}
		at := f.enoughAt(from, b.from)
		if at < 0 {
			continue
		}
		swaps, ready := f.setUpFrom(at, b.from)
		by := b.from - max(at, ready, from+atOnce)
		if by < lateStart {
			continue
		}
		e := Edit{Swap: swaps}
		e.Swap = append(e.Swap, f.moved(f.mixesBefore(&b), by)...)
		e.Swap = append(e.Swap, f.sooner(&b, b.from-1, by)...)
		ml := f.rec.at(b.from - by).ReservoirML
		all = append(all, Decision{Fault: Late, Title: title("begun_late", Late, b.n, clock(b.from-by), ml, clock(b.from)), Tick: b.from - by, Done: b.from, Edit: e})
	}
	return some(all, words.Say("decision.begun_late_all", len(all)))
}

// mixesBefore are the mixings just before a bowl.
func (f *finding) mixesBefore(b *bowlful) []int {
	return f.every(func(a *sim.Action) bool { return a.Do == sim.Mix && a.Tick < b.from && a.Tick >= b.from-mixBefore })
}

// setUpFrom does what the person did to set processing up after a tick one thing soon after the other from there on, and says
// when it is done.
func (f *finding) setUpFrom(at, until int64) (swaps []Swap, ready int64) {
	opened := f.first(0, on(sim.OpenSet, sim.ProcessingSet))
	if opened < 0 {
		return nil, at
	}
	last := int64(-1)
	for _, k := range f.setUp(opened) {
		a := f.acts[k]
		if a.Tick < at || a.Tick >= until {
			continue
		}
		if last >= 0 {
			at += min(a.Tick-last, sim.TicksPerSecond+f.busy(last, k))
		}
		last = a.Tick
		swaps = append(swaps, f.at(k, min(at, a.Tick)))
	}
	if len(swaps) > 0 {
		at += f.busy(last, len(f.acts)) + sim.TicksPerSecond
	}
	return swaps, at
}

// busy is how long the hands were busy with what was done at a tick, before another act.
func (f *finding) busy(tick int64, before int) int64 {
	for k := before - 1; k >= 0; k-- {
		if f.acts[k].Tick == tick {
			return max(0, f.rec.moments[k].hands-tick)
		}
	}
	return 0
}

// findStood looks for bowls that stood filled and unwashed, washed and spinning, or braked and full.
func findStood(f *finding) []Decision {
	var all []Decision
	for _, b := range f.bowlfuls() {
		var swaps []Swap
		by := int64(0)
		idle := int64(-1) // since when the pump stood
		acted := int64(0) // when the last act was done
		last := b.cy.StopTick
		if last == 0 {
			continue
		}
		for t := last; t <= b.until; t += sim.TicksPerSecond {
			for _, k := range b.acts {
				a := f.acts[k]
				if a.Tick < t || a.Tick >= t+sim.TicksPerSecond || a.Tick <= last {
					continue
				}
				if wait := a.Tick - idle; idle >= 0 {
					least := atOnce
					if a.Do == sim.Empty {
						least = brakes
					}
					by += max(0, wait-int64(least))
				}
				idle, acted = -1, a.Tick
				a.Tick -= by
				swaps = append(swaps, Swap{k, a})
			}
			if f.rec.at(t).PumpMode != sim.PumpIdle { // a sample is taken after the acts of its tick
				idle = -1
			} else if idle < 0 {
				idle = max(t, acted)
			}
		}
		if by < longStand {
			continue
		}
		e := Edit{Swap: append(swaps, f.returnSooner(&b, by)...)}
		all = append(all, Decision{Fault: Late, Title: title("stood", Late, b.n, minutes(by)), Tick: last, Done: b.until, Edit: e})
	}
	return some(all, words.Say("decision.stood_all", len(all)))
}

// minutes is a length of time in whole minutes, one at least.
func minutes(ticks int64) int64 { return max(1, (ticks+30*sim.TicksPerSecond)/(60*sim.TicksPerSecond)) }
