package debrief

import "rouleau/sim"

// Known faults in collecting.

var plantedCollecting = []planted{
	{"drip opened late", "steady-oozing-spine", "drip", func(rec *Record) (Edit, bool) {
		late, ok := changes(0, within(does(sim.SetDrip), 12, 15), func(a *sim.Action) { a.Tick += 14 * minute })(rec)
		late.Drop = rec.allOf(within(does(sim.SetDrip), 0, 12))
		return late, ok
	}},
	{"drip does not follow a flood", "sudden-brisk-bleeding", "drip", leavesAllOut(within(does(sim.SetDrip), 11, 19))},
	{"drip far too fast in the middle of the case", "hip-revision-thin-feed", "drip", otherwise(within(does(sim.SetDrip), 14, 120), 400)},
	{"drip far too fast from the start", "hip-revision-thin-feed", "drip", otherwise(does(sim.SetDrip), 400)},
	{"drip left far too fast", "steady-oozing-spine", "drip", func(rec *Record) (Edit, bool) {
		i := rec.firstOf(within(does(sim.SetDrip), 14, 120))
		if i < 0 {
			return Edit{}, false
		}
		a := rec.Run.Actions[i]
		a.Value = 300
		e := Edit{Swap: []Swap{{Own: i, Act: a}}}
		for _, k := range rec.allOf(does(sim.SetDrip)) {
			if k > i {
				e.Drop = append(e.Drop, k)
			}
		}
		return e, true
	}},
	{"citrate left behind by calcium", "calcium-in-the-irrigation", "drip", leavesAllOut(within(does(sim.SetDrip), 8, 60))},
	{"the pack runs out", "sudden-brisk-bleeding", "drip_flow", leavesAllOut(within(either(on(sim.Unhang, sim.AnticoagulantHook), on(sim.Hang, sim.AnticoagulantHook)), 5, 40))},
	{"too much vacuum", "steady-oozing-spine", "vacuum", otherwise(does(sim.SetVacuum), 300)},
	{"too little vacuum", "detector-misled-by-fat", "vacuum", otherwise(does(sim.SetVacuum), 40)},
	{"sucker to the reservoir late in fat", "detector-misled-by-fat", "ready", inMinute(routesTo(sim.ToReservoir), 25)},
	{"sucker to the reservoir late", "sudden-brisk-bleeding", "ready", inMinute(routesTo(sim.ToReservoir), 15)},
	{"haemostat collected", "steady-oozing-spine", "route", leavesAllOut(either(within(does(sim.Route), 30, 60), within(does(sim.SetDrip), 35, 45)))},
	{"sucker left away", "steady-oozing-spine", "route", changes(0, within(routesTo(sim.ToReservoir), 30, 120), func(a *sim.Action) { a.Tick += 15 * minute })},
	{"second sucker asked for late", "caesarean-rhd-negative", "second_sucker", inMinute(asks(sim.SecondSucker), 12)},
	{"swabs thrown away", "steady-oozing-spine", "swabs", leavesAllOut(asks(sim.RinseSwabs))},
	{"swabs of a child thrown away", "child-of-14-kg", "swabs", leavesAllOut(asks(sim.RinseSwabs))},
	{"blood of the pump left", "heparin-pump-and-protamine", "pump_blood", leavesAllOut(does(sim.TakePumpBlood))},
	{"circuit joined late", "circuit-stays-connected", "circuit", inMinute(does(sim.JoinCircuit), 30)},
}
