package debrief

import "rouleau/sim"

// Each product bag with what the person did to it, and when it was wanted.

// bagged is one product bag of the person's own course.
type bagged struct {
	k     int   // from 0
	acts  []int // that made it ready: turned over, sample, label, air, handed over, identity, and calling a second person for it
	hooks []int // that connected it to the patient
	rates []int // how fast it ran
	ends  []int // that stopped it or took it off
	start int   // of rates, the first that let it run; -1 for none
	name  int   // as people count: the first is 1
}

// bags are all bags that were hung.
func (f *finding) bags() []bagged {
	all := make([]bagged, f.rec.Run.State.BagsUsed)
	called := -1
	for k := range all {
		all[k] = bagged{k: k, start: -1, name: k + 1}
	}
	for i := range f.acts {
		a, g := &f.acts[i], f.rec.moments[i].seen.Giving.Bag
		if a.Do == sim.Ask && sim.Request(a.Value) == sim.ClinicianComes {
			called = i
		}
		if k, ok := bagOf(a.On); ok && k < len(all) {
			b := &all[k]
			switch a.Do {
			case sim.Identify:
				if called >= 0 {
					b.acts, called = append(b.acts, called), -1
				}
				b.acts = append(b.acts, i)
			case sim.MixBag, sim.Sample, sim.Label, sim.ExpelAir, sim.HandOver:
				b.acts = append(b.acts, i)
			case sim.Hook:
				b.hooks = append(b.hooks, i)
			}
		}
		if g < 0 || int(g) >= len(all) {
			continue
		}
		b := &all[g]
		switch {
		case a.Do == sim.GiveRate && a.Value > 0:
			if b.start < 0 {
				b.start = i
			}
			b.rates = append(b.rates, i)
		case a.Do == sim.GiveRate || a.Do == sim.Unhook:
			b.ends = append(b.ends, i)
		}
	}
	return all
}

// hook is the act that connected a bag before it first ran, -1 where it never ran or hung in a circuit.
func (f *finding) hook(b *bagged) int {
	last := -1
	for _, k := range b.hooks {
		if b.start < 0 || k < b.start {
			last = k
		}
	}
	return last
}

// made says whether a bag was ever given from.
func (f *finding) gave(b *bagged) bool { return f.rec.Run.State.Bags[b.k].GivenML >= 1 }

// wantedFrom is since when washed blood was wanted at a tick: asked for and not come yet, or the operation over; -1 for not.
func (f *finding) wantedFrom(tick int64) int64 {
	t := &f.rec.Run.State.Team
	for i := range t.Questions[:t.QuestionCount] {
		q := &t.Questions[i]
		if q.Kind == sim.EventRequestBlood && q.AskedTick <= tick && (q.AnsweredTick == 0 || q.AnsweredTick >= tick) {
			return q.AskedTick
		}
	}
	if tick >= f.c.EndTick {
		return f.c.EndTick
	}
	return -1
}

// filled is when the first product came into a bag; -1 for never.
func (f *finding) filled(k int) int64 {
	if t := f.rec.Run.State.Bags[k].FirstTick; t > 0 {
		return t
	}
	return -1
}

// readied are a bag's acts from the first to the one that let it run, and those that ended that, in the order of time.
func (f *finding) readied(b *bagged) (before, ends []int) {
	if b.start < 0 {
		return nil, nil
	}
	begun := f.acts[b.start].Tick
	for _, group := range [][]int{b.acts, b.hooks} {
		for _, k := range group {
			if f.acts[k].Tick <= begun {
				before = append(before, k)
			}
		}
	}
	return append(before, b.start), b.ends
}
