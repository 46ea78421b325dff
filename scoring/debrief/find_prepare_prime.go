package debrief

import (
	"rouleau/sim"
)

// Anticoagulant on the filter before the first blood.

const (
	rightPrimeML = 200.0 // as steady primes; common practice, 100 to 200 mL; half of it where the bowl is a small one
	primeMLMin   = 600.0 // at which a prime runs in, as the bench is built
	rightMmHg    = 120.0 // as steady sets the vacuum; [S] 100 to 150, UKCSAG Factsheet 3
)

// scale is the chosen bowl against a standard one.
func (f *finding) scale() float64 { return scaleOf(&f.rec.Run.State) }

func scaleOf(s *sim.State) float64 {
	if ml := s.Bench.Bowl.Shape().VolumeML; ml > 0 {
		return ml / sim.StandardBowl.Shape().VolumeML
	}
	return 1
}

// primeML is what should be primed.
func (f *finding) primeML() float64 {
	want := rightPrimeML
	if f.scale() < 1 {
		want = float64(want / 2)
	}
	if cr := f.criterion("primed_before_blood_ml"); cr != nil && cr.Least != nil {
		want = max(want, *cr.Least)
	}
	return want
}

// findPrime looks for a prime that was left out, too small, or too late for the first blood.
func findPrime(f *finding) []Decision {
	blood, want := f.firstSucked(), f.primeML()
	had := f.rec.at(blood).PrimedML
	if blood >= f.rec.lastTick || had >= want-1 {
		return nil
	}
	runs := int64(want / primeMLMin * 60 * sim.TicksPerSecond)
	early, late := f.last(blood+1, does(sim.Prime)), f.first(blood+1, does(sim.Prime))
	if early >= 0 && f.acts[early].Value <= had+1 {
		more := f.valued(early, min(500, f.acts[early].Value+want-had))
		return []Decision{{Fault: Wrong, Title: title("prime", Wrong, want, had), Tick: more.Act.Tick, Done: more.Act.Tick, Edit: Edit{Swap: []Swap{more}}}}
	}
	at, edit := f.readyToPrime(blood - runs - soonSaid)
	if own := max(early, late); own >= 0 {
		if early >= 0 {
			own = early
		}
		right := f.at(own, at)
		right.Act.Value = want
		edit.Swap = append(edit.Swap, right)
		return []Decision{{Fault: Late, Title: title("prime", Late, want, clock(at), clock(f.acts[own].Tick)), Tick: at, Done: f.acts[own].Tick, Edit: edit}}
	}
	edit.Add = append(edit.Add, Add{Act: act(at, sim.Prime, sim.NoPart, want)})
	return []Decision{{Fault: LeftOut, Title: title("prime", LeftOut, want), Tick: at, Done: -1, Edit: edit}}
}

// readyToPrime is the first tick at which the person's bench had all that a prime needs, and what has to be done first where
// something was missing by then.
func (f *finding) readyToPrime(by int64) (at int64, first Edit) {
	at = f.rec.lastTick
	for i := range f.acts {
		if v := &f.rec.moments[i].seen; i > 0 && v.Bench.Opened[sim.CollectionSet] && v.Bench.Connected[sim.SuctionLine] && v.Bench.Connected[sim.VacuumLine] &&
			v.Bench.HookPack[sim.AnticoagulantHook] >= 0 {
			at = f.acts[i-1].Tick + 1
			break
		}
	}
	at = max(0, min(at, by))
	v := f.seenBy(at + 1)
	add := func(do sim.Verb, on sim.Part, value float64) {
		first.Add = append(first.Add, Add{Act: act(at, do, on, value)})
	}
	if hung := f.first(at, on(sim.Hang, sim.AnticoagulantHook)); v.Bench.HookPack[sim.AnticoagulantHook] < 0 && hung >= 0 {
		first.Swap = append(first.Swap, f.at(hung, at))
	}
	if !v.Bench.Open[sim.DripClamp] {
		add(sim.Clamp, sim.DripClamp, 1)
	}
	if v.VacuumSetMmHg <= 0 {
		add(sim.SetVacuum, sim.NoPart, rightMmHg)
	}
	if !v.Bench.VacuumTested && v.VacuumSetMmHg > 0 && v.VacuumMmHg <= 0 {
		add(sim.TestVacuum, sim.NoPart, 0) // the gauge shows none
	}
	return at, first
}
