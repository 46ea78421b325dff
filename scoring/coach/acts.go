// Whether an act that a step waits for is done. Settings and what stands on the bench count as they stand, whoever did it and
// when; other acts count from the log, the newest of a kind, each only once and only where what it began was not broken off.

package coach

import (
	"math"

	"rouleau/scenarios"
	"rouleau/sim"
)

// holds says whether what a step waits for is the case.
func (g *Guide) holds(u *scenarios.Until, s *Sight, acts []sim.Action) bool {
	switch {
	case u.Act != nil:
		return g.acted(u.Act, s.Seen, acts)
	case u.Holds != "":
		return s.Holds(u.Holds)
	case u.Reads != nil:
		return s.reads(u.Reads)
	}
	return false
}

// use notes that an act of the log has counted for a step.
func (g *Guide) use(u *scenarios.Until, log int) {
	if u.Act == nil {
		return
	}
	do, on := named(u.Act)
	for i := range g.used {
		if g.used[i].do == do && g.used[i].on == on {
			g.used[i].log = log
			return
		}
	}
	g.used = append(g.used, used{do, on, log})
}

func (g *Guide) acted(u *scenarios.UntilAct, v *sim.Seen, acts []sim.Action) bool {
	do, on := named(u)
	if value, ok := stands(do, on, v); ok {
		return g.will(u, do, value)
	}
	from, again := 0, false
	for i := range g.used {
		if g.used[i].do == do && g.used[i].on == on {
			from, again = g.used[i].log, true
		}
	}
	for i := len(acts) - 1; i >= from; i-- {
		if a := &acts[i]; a.Do == do && (on == sim.NoPart || a.On == on) {
			return g.will(u, do, a.Value) && !brokenOff(do, again, v)
		}
	}
	return false
}

// brokenOff says whether what an act of the log brought about is not so any more. Somebody who filled by mistake and stopped has
// still to fill, and who stopped the bowl then has still to stop it after the wash. A lesson that fills again means another
// bowlful: a button pressed twice at the first one does not count for it.
func brokenOff(do sim.Verb, again bool, v *sim.Seen) bool {
	p := &v.Pump
	over := again && !p.CycleOpen
	switch do {
	case sim.Fill:
		return p.Mode != sim.PumpFill && (over || !p.Washed && p.Detector < hintDetector)
	case sim.Wash:
		return p.Mode != sim.PumpWash && (over || !p.Washed)
	case sim.Empty:
		for i := range v.Bags[:v.BagsUsed] {
			if v.Bags[i].ML > 0 {
				return false
			}
		}
		return p.Mode != sim.PumpEmpty
	case sim.StopPump:
		return p.Mode != sim.PumpIdle
	case sim.StopAll:
		return p.Mode != sim.PumpIdle || p.Spinning && !p.Braking
	}
	return false
}

// will says whether a value will do.
func (g *Guide) will(u *scenarios.UntilAct, do sim.Verb, value float64) bool {
	switch {
	case value != value:
		return false
	case do == sim.Hang && u.Choice != "":
		i := int(value)
		return i >= 0 && i < len(g.packs) && g.packs[i].solution == u.Choice && !g.packs[i].expired
	case u.Choice != "":
		want, _ := scenarios.ValueNamed(do, u.Choice)
		return value == want
	}
	return (u.AtLeast == nil || value >= *u.AtLeast) && (u.AtMost == nil || value <= *u.AtMost)
}

// absent is the value of what is not there; no step waits for it.
var absent = math.NaN()

// stands gives the value of an act as it stands on the bench, where it leaves something that stays.
func stands(do sim.Verb, on sim.Part, v *sim.Seen) (value float64, lasting bool) {
	b := &v.Bench
	known := int(on) < len(b.Open)
	lasts := func(is bool) (float64, bool) {
		if is {
			return 0, true
		}
		return absent, true
	}
	switch {
	case do == sim.Decide && b.Decision != sim.Undecided:
		return float64(b.Decision), true
	case do == sim.ChooseAnticoagulant && b.Anticoagulant != sim.NoSolution:
		return float64(b.Anticoagulant), true
	case do == sim.ChooseBowl && b.Bowl != sim.NoBowl:
		return float64(b.Bowl), true
	case do == sim.OpenSet && on != sim.NoPart && known:
		return lasts(b.Opened[on])
	case do == sim.Connect && on != sim.NoPart && known:
		return lasts(b.Connected[on] && !b.FoundLoose[on])
	case do == sim.Clamp && on != sim.NoPart && known:
		return yesNo(b.Open[on]), true
	case do == sim.Hang && on >= sim.AnticoagulantHook && on <= sim.WashHookB:
		if b.HookPack[on] < 0 {
			return absent, true
		}
		return float64(b.HookPack[on]), true
	case do == sim.TestVacuum:
		return lasts(b.VacuumTested)
	case do == sim.Route:
		return float64(v.Route), true
	}
	return setting(do, v)
}

// setting gives a value that is set and stays.
func setting(do sim.Verb, v *sim.Seen) (value float64, lasting bool) {
	p := &v.Pump
	switch do {
	case sim.SetDrip:
		return v.DropsMin, true
	case sim.SetVacuum:
		return v.VacuumSetMmHg, true
	case sim.SetFillRate:
		return p.FillMLMin, true
	case sim.SetWashRate:
		return p.WashMLMin, true
	case sim.SetEmptyRate:
		return p.EmptyMLMin, true
	case sim.SetWashVolume:
		return p.WashML, true
	case sim.AutoFillAt:
		return p.AutoFillML, true
	case sim.AutoStop:
		return yesNo(p.AutoStop), true
	case sim.AutoWash:
		return yesNo(p.AutoWash), true
	case sim.AutoEmpty:
		return yesNo(p.AutoEmpty), true
	case sim.Decide, sim.ChooseAnticoagulant, sim.ChooseBowl:
		return absent, true // not decided yet
	}
	return 0, false
}

// named gives the act and the part that a step names.
func named(u *scenarios.UntilAct) (do sim.Verb, on sim.Part) {
	do, _ = sim.VerbNamed(u.Do)
	on, _ = sim.PartNamed(u.On)
	return do, on
}
