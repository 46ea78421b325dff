package debrief

import (
	"slices"

	"rouleau/assets/words"
	"rouleau/sim"
)

// Bags that were given late, never, or past their time.

const (
	lateGiven  = 4 * 60 * sim.TicksPerSecond // from being wanted and ready until it runs: making ready takes two to three minutes
	bagActs    = 25 * sim.TicksPerSecond     // between two acts on a bag, at most
	beforeTime = 5 * 60 * sim.TicksPerSecond
)

// findGivenLate looks for bags that could have been given earlier than they were.
func findGivenLate(f *finding) []Decision {
	var all []Decision
	for _, b := range f.bags() {
		if !f.gave(&b) || b.start < 0 || f.filled(b.k) < 0 {
			continue
		}
		begun := f.acts[b.start].Tick
		wanted := f.wantedFrom(begun)
		if wanted < 0 {
			continue
		}
		from := max(wanted, f.filled(b.k)) + soonSaid
		before, ends := f.readied(&b)
		e := f.givenFrom(&b, before, ends, from)
		start := e.Swap[len(before)-1].Act.Tick
		if begun-start < lateGiven {
			continue
		}
		if joined := f.rec.moments[b.start].seen.Giving.Joined; joined || f.filledOn(&b, from) {
			e = f.givenTwice(&b, from, !joined)
		}
		all = append(all, Decision{Fault: Late, Title: title("given_late", Late, b.name, clock(start), clock(begun)), Tick: start, Done: begun, Edit: e})
	}
	if overlap(all) {
		return all[:min(len(all), mostOfAKind)]
	}
	return withRules(all, words.Say("decision.given_late_all", len(all)))
}

// givenFrom does all that makes a bag ready, and its return, from a tick on and one soon after the other. What else has to go
// into a bag then goes into a fresh one.
func (f *finding) givenFrom(b *bagged, before, ends []int, from int64) (e Edit) {
	slices.Sort(before)
	at, last := from, int64(0)
	for n, k := range before {
		a := f.acts[k]
		if n > 0 {
			at += min(a.Tick-last, bagActs)
		}
		last = a.Tick
		a.Tick = min(a.Tick, at)
		e.Swap = append(e.Swap, Swap{k, a})
	}
	by := f.acts[b.start].Tick - e.Swap[len(before)-1].Act.Tick
	e.Swap = append(e.Swap, f.moved(ends, by)...)
	e.Rule = &Rule{From: from - from%sim.TicksPerSecond, Until: f.rec.lastTick, Act: stopsBeforeEmpty}
	started := e.Swap[len(before)-1].Act.Tick
	more := f.first(started, does(sim.Empty))
	if f.seenBy(started).BagsUsed-1 == b.k && more >= 0 {
		fresh := f.first(f.acts[b.start].Tick, does(sim.NewBag))
		if fresh >= 0 && f.rec.moments[fresh].seen.BagsUsed-1 == b.k {
			e.Swap = append(e.Swap, f.at(fresh, started+atOnce))
		} else {
			e.Add = append(e.Add, Add{Act: act(started+atOnce, sim.NewBag, sim.NoPart, 0), PatienceS: 600})
		}
	}
	return e
}

// filledOn says whether another bowl went into a bag after a tick, before it was given.
func (f *finding) filledOn(b *bagged, tick int64) bool {
	k := f.first(tick, does(sim.Empty))
	return k >= 0 && f.acts[k].Tick < f.acts[b.start].Tick && f.rec.moments[k].seen.BagsUsed-1 == b.k
}

// givenTwice gives what is in a bag as soon as it is wanted. What comes later goes into a fresh bag, and with that the person
// does what they did with the bag; in a circuit that stays joined it goes into the same one, and is given as they gave it.
func (f *finding) givenTwice(b *bagged, from int64, fresh bool) (e Edit) {
	way := f.asBefore(b, b.k)
	way.fresh = fresh
	e.Rule = &Rule{From: from - from%sim.TicksPerSecond, Until: f.rec.lastTick, Act: way.act}
	for i := 0; fresh && i < len(f.acts); i++ {
		a := f.acts[i]
		if k, bag := bagOf(a.On); bag && k >= b.k && k+1 < sim.MaxBags && a.Tick > from {
			a.On++
			e.Swap = append(e.Swap, Swap{i, a})
		}
	}
	return e
}

// findNeverGiven looks for washed blood that was left in bags at the end.
func findNeverGiven(f *finding) []Decision {
	var all []Decision
	s := &f.rec.Run.State
	bags := f.bags()
	for i := range bags {
		b := &s.Bags[i]
		left := b.Fluid.VolumeML()
		if b.Discarded || left < excessML || !f.sound(i, f.rec.lastTick) {
			continue
		}
		from := max(f.wantedNext(b.FirstTick), b.FirstTick) + soonSaid
		if from >= f.rec.lastTick {
			continue
		}
		e := f.gives(i, from)
		all = append(all, Decision{Fault: LeftOut, Title: title("never_given", LeftOut, i+1, clock(from), left), Tick: from, Done: -1, Edit: e})
	}
	return all
}

// wantedNext is from when on, at a tick or after it, washed blood was wanted.
func (f *finding) wantedNext(tick int64) int64 {
	wanted := max(f.c.EndTick, tick)
	if f.wantedFrom(tick) >= 0 {
		wanted = tick
	}
	t := &f.rec.Run.State.Team
	for i := range t.Questions[:t.QuestionCount] {
		if q := &t.Questions[i]; q.Kind == sim.EventRequestBlood && q.AskedTick >= tick {
			wanted = min(wanted, q.AskedTick)
		}
	}
	return wanted
}

// gives gives a bag from a tick on, as the person gave the last one that they gave, or as steady does.
func (f *finding) gives(k int, from int64) Edit {
	bags := f.bags()
	way := f.rightly(k)
	for n := range bags {
		if bags[n].start >= 0 && f.gave(&bags[n]) {
			way = f.asBefore(&bags[n], k)
		}
	}
	way.resumes = f.gave(&bags[k])
	e := Edit{Rule: &Rule{From: from - from%sim.TicksPerSecond, Until: f.c.LastTick, Act: way.act, Waits: way.waits, Does: giving}}
	e.Drop = slices.Concat(f.after(bags[k].acts, from), f.after(bags[k].hooks, from))
	return e
}

// findExpired looks for bags that were given after they had expired.
func findExpired(f *finding) []Decision {
	var all []Decision
	life := f.c.Faults.ExpiryTicks
	for _, b := range f.bags() {
		if !f.gave(&b) || b.start < 0 || f.filled(b.k) < 0 {
			continue
		}
		over := f.filled(b.k) + life
		begun := f.acts[b.start].Tick
		stopped := f.rec.lastTick
		if len(b.ends) > 0 {
			stopped = f.acts[b.ends[len(b.ends)-1]].Tick
		}
		if stopped <= over {
			continue
		}
		d := Decision{Fault: Needless, Tick: max(over, 0), Done: begun, Title: title("expired", Needless, b.name, clock(over))}
		d.Edit.Rule = &Rule{From: over - 2*sim.TicksPerSecond, Until: f.rec.lastTick, Act: func(v *sim.Seen, do func(sim.Action) sim.Reason) { throwsAway(b.k, v, do) }}
		for _, k := range slices.Concat(b.rates, b.hooks) {
			if f.acts[k].Tick >= over {
				d.Edit.Drop = append(d.Edit.Drop, k)
			}
		}
		d.Edit.Rule.From -= d.Edit.Rule.From % sim.TicksPerSecond
		if len(all) >= mostOfAKind-1 {
			break
		}
		all = append(all, d)
		from := f.wantedNext(f.filled(b.k)) + soonSaid // the oldest bag is given first
		if latest := over - beforeTime - int64(f.rec.at(begun).ProductML/rightGiveMLMin*60*sim.TicksPerSecond); from > latest {
			from = latest
		}
		if begun > over && from > f.filled(b.k) {
			before, ends := f.readied(&b)
			e := f.givenFrom(&b, before, ends, from)
			start := e.Swap[len(before)-1].Act.Tick
			all = append(all, Decision{Fault: Late, Title: title("expired", Late, b.name, clock(start), clock(over), clock(begun)), Tick: start, Done: begun, Edit: e})
		}
	}
	return all
}

// throwsAway stops a bag and throws it away.
func throwsAway(k int, v *sim.Seen, do func(sim.Action) sim.Reason) {
	if k >= v.BagsUsed || v.Bags[k].Discarded || v.Bags[k].ML <= 0 {
		return
	}
	if int(v.Giving.Bag) == k && v.Giving.RateMLMin > 0 {
		do(sim.Action{Do: sim.GiveRate})
	}
	if !v.HandsBusy {
		do(sim.Action{Do: sim.DiscardIt, On: sim.Bag(k)})
	}
}
