package scoring

import "rouleau/sim"

// Measures of deciding and preparing.

// anticoagulantRight asks of every pack that ran through the anticoagulant line whether it was one of the right ones.
func anticoagulantRight(j *judged) found {
	used, right := 0, true
	j.drawnPacks(func(pack int, hook sim.Part, _ int64) {
		if hook == sim.AnticoagulantHook {
			used++
			right = right && j.sc.Right.AllowsAnticoagulant(j.c.Packs[pack].Solution)
		}
	})
	if used == 0 {
		return absent()
	}
	return yesNo(right)
}

// drawnPacks calls visit for every pack that something was drawn from, with the hook it hung on and since when.
func (j *judged) drawnPacks(visit func(pack int, hook sim.Part, tick int64)) {
	drawn := func(pack int) bool { return j.c.Packs[pack].VolumeML-j.s.Bench.Packs[pack].Fluid.VolumeML() >= 1 }
	for i := range j.c.Packs {
		if hook := j.c.Packs[i].On; hook != sim.NoPart && drawn(i) {
			visit(i, hook, 0)
		}
	}
	for i := range j.run.Log {
		if o := &j.run.Log[i]; o.Kind == sim.Done && o.Act.Do == sim.Hang && drawn(int(o.Act.Value)) {
			visit(int(o.Act.Value), o.Act.On, o.Tick)
		}
	}
}

func bowlRight(j *judged) found {
	if !j.s.Bench.Opened[sim.ProcessingSet] {
		return absent()
	}
	return yesNo(j.sc.Right.AllowsBowl(j.s.Bowl.Kind))
}

func setsDrip(a *sim.Action) bool { return a.Do == sim.SetDrip && a.Value > 0 || a.Do == sim.Prime }

func routesIn(a *sim.Action) bool {
	return a.Do == sim.Route && sim.Destination(a.Value) == sim.ToReservoir
}

func does(v sim.Verb) func(a *sim.Action) bool { return func(a *sim.Action) bool { return a.Do == v } }

// benchChecked asks of each hook and line that was used whether it was looked at before.
func benchChecked(j *judged) found {
	checks := [...]struct {
		part sim.Part
		used func(a *sim.Action) bool
	}{
		{sim.AnticoagulantHook, setsDrip}, {sim.SuctionLine, routesIn}, {sim.VacuumLine, routesIn},
		{sim.WashHookA, does(sim.Wash)}, {sim.OutletLine, does(sim.Fill)}, {sim.ProductLine, does(sim.Empty)}, {sim.WasteLine, does(sim.Fill)},
	}
	used, looked := 0, 0
	for _, c := range checks {
		first := j.firstDone(c.used)
		if first < 0 {
			continue
		}
		used++
		if j.lookedAt(c.part, first) {
			looked++
		}
	}
	if used == 0 {
		return absent()
	}
	return shareOf(float64(looked), float64(used))
}

// lookedAt says whether a part was looked at after it was last hung or connected and before a tick.
func (j *judged) lookedAt(part sim.Part, before int64) bool {
	looked := false
	for i := range j.run.Log {
		o := &j.run.Log[i]
		if o.Tick > before {
			break
		}
		if o.Kind != sim.Done || o.Act.On != part {
			continue
		}
		switch o.Act.Do {
		case sim.Inspect:
			looked = true
		case sim.Hang, sim.Connect:
			looked = false
		}
	}
	return looked
}

func vacuumTested(j *judged) found {
	first := j.firstDone(routesIn)
	if first < 0 {
		return absent()
	}
	test := j.firstDone(does(sim.TestVacuum))
	return yesNo(test >= 0 && test <= first)
}

func primedBeforeBlood(j *judged) found {
	for _, t := range j.run.Trace {
		if t.SuckedBloodML > 0 {
			return valueAt(t.PrimedML, t.Tick)
		}
	}
	return absent()
}

func openedAt(j *judged) found {
	if !j.s.Bench.Opened[sim.ProcessingSet] {
		return absent()
	}
	tick := j.s.Bench.OpenedTick[sim.ProcessingSet]
	return valueAt(j.at(tick).ReservoirML, tick)
}

func breachesMended(j *judged) found {
	k := &j.s.Conduct
	if k.Met[sim.IncidentBreach] == 0 {
		return none()
	}
	return yesNo(!j.s.Bench.BreachUsed && k.BreachedGivenML == 0)
}

// fluidsRight asks of every pack that something was drawn from whether it was in date and right for its hook.
func fluidsRight(j *judged) found {
	used, good, at := 0.0, 0.0, int64(-1)
	j.drawnPacks(func(pack int, hook sim.Part, tick int64) {
		spec := &j.c.Packs[pack]
		used++
		right := spec.Solution.FitToWash()
		if hook == sim.AnticoagulantHook {
			right = spec.Solution.Anticoagulant()
		}
		if right && !spec.Expired {
			good++
		} else {
			at = tick
		}
	})
	if used == 0 {
		return absent()
	}
	return found{value: good / used, tick: at}
}

func spilled(j *judged) found {
	if j.s.Field.SuckedML == 0 && j.s.Drip.PrimedML == 0 { // nothing ran that could have been spilled
		return absent()
	}
	return value(j.s.Field.Floor.VolumeML())
}
