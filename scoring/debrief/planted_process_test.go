package debrief

import "rouleau/sim"

var plantedProcessing = []planted{
	{"nothing mixed", "pelvis-loss-over-hours", "mixing", leavesAllOut(does(sim.Mix))},
	{"nothing mixed for a mother", "caesarean-rhd-negative", "mixing", leavesAllOut(does(sim.Mix))},
	{"bowls begun early", "circuit-stays-connected", "begun_early", beginsAt(380)},
	{"first bowl begun late", "steady-oozing-spine", "begun_late", bowlLater(1, 35*minute)},
	{"bowl left standing", "steady-oozing-spine", "stood", stands(0, 35*minute)},
	{"bowl of a child left standing", "child-of-14-kg", "stood", stands(0, 35*minute)},
	{"second bowl overfilled", "steady-oozing-spine", "overfilled", stopsOne(2, 0.999)},
	{"first bowl overfilled", "hip-revision-thin-feed", "overfilled", stopsOne(1, 0.999)},
	{"second bowl filled short", "steady-oozing-spine", "filled_short", stopsOne(2, 0.72)},
	{"every bowl filled short", "heparin-forbidden-citrate-at-hand", "filled_short", stopsOne(0, 0.75)},
	{"detector believed", "detector-misled-by-fat", "misread", believesDetector},
	{"little wash", "steady-oozing-spine", "wash_volume", set(sim.SetWashVolume, 400)},
	{"little wash for a child", "child-of-14-kg", "wash_volume", changes(0, does(sim.SetWashVolume), func(a *sim.Action) { a.Value = 120 })},
	{"wash broken off", "heparin-forbidden-citrate-at-hand", "wash_broken_off", breaksOff(1)},
	{"second bowl unwashed", "steady-oozing-spine", "unwashed", leavesOut(1, does(sim.Wash))},
	{"fast wash", "steady-oozing-spine", "wash_rate", set(sim.SetWashRate, 800)},
	{"fast wash for a child", "child-of-14-kg", "wash_rate", changes(0, does(sim.SetWashRate), func(a *sim.Action) { a.Value = 400 })},
	{"fast filling", "bench-left-by-a-colleague", "fill_rate", set(sim.SetFillRate, 900)},
	{"clamp closed", "pelvis-loss-over-hours", "blocked", closesClamp},
	{"bag thrown away", "steady-oozing-spine", "discarded", throwsBagAway},
	{"last blood left over", "child-of-14-kg", "left_over", leavesLast},
	{"never processed", "steady-oozing-spine", "never_processed", neverFills},
}

// beginsAt works all bowls off as soon as there is so much in the reservoir, and washes them as full as they become.
func beginsAt(ml float64) func(rec *Record) (Edit, bool) {
	return func(rec *Record) (Edit, bool) {
		way := bowlWay{start: ml, last: rightLastML, full: atInterface, fillOn: fillOnFromML, bagML: rec.Run.Case.Faults.BagCapacityML, packs: rec.Run.Case.Packs}
		first := rec.firstOf(does(sim.Fill))
		ready := rec.firstOf(does(sim.AutoStop))
		if first < 0 || ready < 0 {
			return Edit{}, false
		}
		from := rec.Run.Actions[ready].Tick
		e := Edit{Rule: &Rule{From: from, Until: rec.Run.Case.LastTick - endsIn, Waits: way.waits, Does: pumping}}
		e.Rule.Act = func(v *sim.Seen, do func(sim.Action) sim.Reason) {
			if p := &v.Pump; p.Mode == sim.PumpIdle && p.CycleOpen && p.Filled && !p.Washed && p.AirML < 1 {
				do(sim.Action{Do: sim.Wash})
				return
			}
			way.act(v, do)
		}
		for i := range rec.Run.Actions {
			if a := rec.Run.Actions[i]; a.Tick >= from && rec.lineOf(&step{act: a, own: i}) == pumping && a.Do != sim.ChangeWaste && a.Do != sim.NewBag {
				e.Drop = append(e.Drop, i)
			}
		}
		return e, true
	}
}

// finder is what finders look with, for a record that nobody has judged.
func (rec *Record) finder() *finding {
	return &finding{rec: rec, sc: rec.Scenario, c: &rec.Run.Case, acts: rec.Run.Actions}
}

// delayed does one of the acts on bowl and pump later, and what comes after it as soon as it can be.
func (rec *Record) delayed(own int, by int64) (swaps []Swap) {
	f := rec.finder()
	was, is := int64(0), int64(0)
	for i := own; i < len(f.acts); i++ {
		a := f.acts[i]
		if rec.lineOf(&step{act: a, own: i}) != pumping {
			continue
		}
		t := a.Tick + by
		if i > own {
			t = max(a.Tick, is+min(a.Tick-was, soon))
		}
		was, is = a.Tick, t
		swaps = append(swaps, f.at(i, t))
	}
	return swaps
}

// onlyOwn keeps the hand from working off what is left over in a line of work.
func (rec *Record) onlyOwn(l line) *Rule {
	return &Rule{From: 0, Until: rec.Run.Case.LastTick, Act: func(*sim.Seen, func(sim.Action) sim.Reason) {}, Does: l}
}

// bowlLater begins a bowl later, n from 1.
func bowlLater(n int, by int64) func(rec *Record) (Edit, bool) {
	return func(rec *Record) (Edit, bool) {
		bowls := rec.finder().bowlfuls()
		if n > len(bowls) {
			return Edit{}, false
		}
		first := rec.finder().mixesBefore(&bowls[n-1])
		return Edit{Swap: rec.delayed(append(first, bowls[n-1].acts...)[0], by), Rule: rec.onlyOwn(pumping)}, true
	}
}

// stands lets the n-th bowl, from 0, stand between filling and washing.
func stands(n int, by int64) func(rec *Record) (Edit, bool) {
	return func(rec *Record) (Edit, bool) {
		washes := rec.allOf(does(sim.Wash))
		if n >= len(washes) {
			return Edit{}, false
		}
		return Edit{Swap: rec.delayed(washes[n], by), Rule: rec.onlyOwn(pumping)}, true
	}
}

// stopsOne stops the filling of one bowl, 0 for each of them, at another reading.
func stopsOne(n int, at float64) func(rec *Record) (Edit, bool) {
	return func(rec *Record) (Edit, bool) {
		first := rec.firstOf(does(sim.Fill))
		if first < 0 || rec.Run.State.CycleUsed < max(2, n+1) {
			return Edit{}, false
		}
		e := Edit{Drop: rec.allOf(func(a *sim.Action) bool { return a.Do == sim.AutoStop })}
		e.Rule = &Rule{From: rec.Run.Actions[first].Tick, Until: rec.lastTick, Act: func(v *sim.Seen, do func(sim.Action) sim.Reason) {
			if p := &v.Pump; p.Mode == sim.PumpFill && ((p.Cycles == n || n == 0) && p.Detector >= at || p.Cycles != n && n > 0 && p.Detector > atInterface || v.ReservoirML < dryML) {
				do(sim.Action{Do: sim.StopPump})
			}
		}}
		return e, true
	}
}

// believesDetector leaves fillings to the automatic stop, whatever can be seen.
func believesDetector(rec *Record) (Edit, bool) {
	e := Edit{Drop: rec.allOf(func(a *sim.Action) bool { return a.Do == sim.AutoStop && a.Value == 0 })}
	for i := range rec.Run.Actions {
		if rec.Run.Actions[i].Do == sim.StopPump && rec.moments[i].seen.Pump.Mode == sim.PumpFill && rec.moments[i].seen.ReservoirML > littleML {
			e.Drop = append(e.Drop, i)
		}
	}
	return e, len(e.Drop) > 0
}

// set sets the pump to something else before the first bowl.
func set(verb sim.Verb, value float64) func(rec *Record) (Edit, bool) {
	return func(rec *Record) (Edit, bool) {
		first := rec.firstOf(does(sim.Fill))
		if first < 0 {
			return Edit{}, false
		}
		return Edit{Drop: rec.allOf(does(verb)), Add: []Add{{Act: act(rec.Run.Actions[first].Tick-1, verb, sim.NoPart, value)}}}, true
	}
}

// breaksOff stops a wash after a minute.
func breaksOff(n int) func(rec *Record) (Edit, bool) {
	return func(rec *Record) (Edit, bool) {
		washes := rec.allOf(does(sim.Wash))
		if n >= len(washes) {
			return Edit{}, false
		}
		return Edit{Add: []Add{{Act: act(rec.Run.Actions[washes[n]].Tick+minute, sim.StopPump, sim.NoPart, 0)}}}, true
	}
}

// closesClamp closes the outlet before a bowl is filled, and opens it minutes later.
func closesClamp(rec *Record) (Edit, bool) {
	fills := rec.allOf(does(sim.Fill))
	if len(fills) < 4 {
		return Edit{}, false
	}
	t := rec.Run.Actions[fills[3]].Tick
	return Edit{Add: []Add{{Act: act(t-1, sim.Clamp, sim.OutletClamp, 0)}, {Act: act(t+3*minute, sim.Clamp, sim.OutletClamp, 1)}}}, true
}

// throwsBagAway discards the first bag when it has been labelled.
func throwsBagAway(rec *Record) (Edit, bool) {
	i := rec.firstOf(does(sim.Label))
	if i < 0 {
		return Edit{}, false
	}
	a := rec.Run.Actions[i]
	return Edit{Add: []Add{{Act: act(a.Tick+1, sim.DiscardIt, a.On, 0), PatienceS: 600}}}, true
}

// leavesLast leaves what comes after the operation unprocessed.
func leavesLast(rec *Record) (Edit, bool) {
	f := rec.finder()
	bowls := f.bowlfuls()
	last := &bowls[len(bowls)-1]
	if last.from < f.c.EndTick-15*minute || len(bowls) < 2 {
		return Edit{}, false
	}
	return Edit{Drop: append(f.mixesBefore(last), last.acts...), Rule: rec.onlyOwn(pumping)}, true
}

// neverFills opens everything and never fills.
func neverFills(rec *Record) (Edit, bool) {
	first := rec.firstOf(does(sim.Fill))
	if first < 0 {
		return Edit{}, false
	}
	e := Edit{Rule: rec.onlyOwn(pumping)}
	for i := range rec.Run.Actions {
		if rec.lineOf(&step{act: rec.Run.Actions[i], own: i}) == pumping {
			e.Drop = append(e.Drop, i)
		}
	}
	return e, true
}
