package debrief

import "rouleau/sim"

// Decisions in deciding and preparing.

var preparing = []aspect{
	{name: "prime", measures: []string{"primed_before_blood_ml", "anticoagulant_in_range_share"}, find: findPrime},
}

const rightPrimeML = 200.0 // as steady primes; common practice

// findPrime looks for a prime that was left out, too small or after the first blood.
func findPrime(f *finding) []Decision {
	cr := f.criterion("primed_before_blood_ml")
	if cr == nil || cr.Least == nil || !f.short("primed_before_blood_ml") {
		return nil
	}
	primes, sucks := f.every(does(sim.Prime)), f.first(0, func(a *sim.Action) bool { return a.Do == sim.Route && sim.Destination(a.Value) == sim.ToReservoir })
	if sucks < 0 {
		return nil
	}
	want := max(rightPrimeML, *cr.Least)
	at := f.acts[sucks].Tick
	if len(primes) > 0 && f.acts[primes[0]].Tick <= at {
		i := primes[0]
		right := f.acts[i]
		right.Value = want
		return []Decision{{Fault: Wrong, Title: title("prime", Wrong, want, f.acts[i].Value), Tick: right.Tick, Done: right.Tick, Edit: Edit{Swap: []Swap{{i, right}}}}}
	}
	return []Decision{{Fault: LeftOut, Title: title("prime", LeftOut, want), Tick: at, Done: -1,
		Edit: Edit{Drop: primes, First: []First{{sucks, []sim.Action{act(at, sim.Prime, sim.NoPart, want)}}}}}}
}
