package operators

import "rouleau/sim"

// Steady and what one kind of case asks for: small patients, a reservoir that fills faster than it is worked off, a bowl that
// stays part-filled at the end, a second sucker, an RhD-negative mother.

// How steady judges by eye and by rule of thumb: assumptions, chosen once and the same in every case.
const (
	standardBowlML = 200.0
	leastFillML    = 120.0 // of a standard bowl's reservoir: less is not worth a bowl
	goOnFillML     = 150.0 // of the same: from here a part-filled bowl is filled on
	childKg        = 40.0
	childMLMinKg   = 1.0 // rate of giving for a child
	presses        = 0.5 // share of the reservoir from which it fills faster
	eases          = 0.35
	pressed        = 5.0 / 3
	mostMLMin      = 1000.0 // what the pump gives
	smallPace      = 0.5
	partBowl       = 0.80
	topUpFromML    = 60.0 // in the bag: less does not fill a bowl
)

// scale is the size of the chosen bowl against the standard one: what is begun from which volume goes with it.
func (o *Steady) scale(v *sim.Seen) float64 {
	if ml := v.Bench.Bowl.Shape().VolumeML; ml > 0 {
		return ml / standardBowlML
	}
	return 1
}

// primeML is half the prime where the bowl is a small one: a child's reservoir would hold little else.
func (o *Steady) primeML(v *sim.Seen) float64 {
	if o.scale(v) < 1 {
		return float64(o.habits.PrimeML / 2)
	}
	return o.habits.PrimeML
}

// from turns a volume of the habits, meant for a standard bowl and with its prime in it, into one for the chosen bowl.
func (o *Steady) from(v *sim.Seen, ml float64) float64 {
	return o.primeML(v) + float64(o.scale(v)*(ml-o.habits.PrimeML))
}

// giveMLMin is the rate of giving, less for a child.
func (o *Steady) giveMLMin() float64 {
	if o.sheet.WeightKg < childKg {
		return min(o.habits.GiveMLMin, float64(childMLMinKg*o.sheet.WeightKg))
	}
	return o.habits.GiveMLMin
}

// fillMLMin is the rate of filling, more while the reservoir is filling up.
func (o *Steady) fillMLMin(v *sim.Seen) float64 {
	mark, usual := presses, float64(o.pace(v)*o.habits.FillMLMin)
	if v.Pump.FillMLMin > usual {
		mark = eases
	}
	if o.sheet.ReservoirML > 0 && v.ReservoirML > mark*o.sheet.ReservoirML {
		return min(mostMLMin, float64(pressed*usual))
	}
	return usual
}

// pace is what becomes of rates in a smaller bowl, whose bed a fast flow would swell.
func (o *Steady) pace(v *sim.Seen) float64 {
	if o.scale(v) < 1 {
		return smallPace
	}
	return 1
}

// toppedUp fills the last bowl from the product bag where the reservoir has not done it. It says whether it acted.
func (o *Steady) toppedUp(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	if !o.habits.TopsUp || !o.sheet.TopsUp || !v.Pump.Spinning || o.reading(v) >= partBowl || v.BagsUsed == 0 || v.Giving.Joined {
		return false
	}
	b := &v.Bags[v.BagsUsed-1]
	return b.ML >= topUpFromML && b.HandedBits == 0 && !o.suspect[v.BagsUsed-1] && try(sim.TopUp, sim.NoPart, 0)
}

// afterBirth asks for what an RhD-negative mother needs once she has had washed blood.
func (o *Steady) afterBirth(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	switch {
	case !o.habits.FollowsUp || !o.sheet.RhDNegative || v.Giving.GivenML <= 0:
		return false
	case !v.AntiDAsked:
		return try(sim.Ask, sim.NoPart, float64(sim.GiveAntiD))
	case !v.FetalTestAsked:
		return try(sim.Ask, sim.NoPart, float64(sim.TestFetalBleed))
	}
	return false
}
