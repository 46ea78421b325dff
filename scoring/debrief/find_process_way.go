package debrief

import "rouleau/sim"

// A small closed loop that works off what is in the reservoir and in the bowl, with the pump as the person has set it: for what
// was left lying, and for bowls begun at another volume.

// bowlWay is how bowls are worked off. It holds nothing that changes, so that several forks can go by it at once.
type bowlWay struct {
	start  float64 // mL in the reservoir at which a bowl is begun
	last   float64 // and once the operation is over
	full   float64 // reading at which a filling is stopped
	fillOn float64 // mL at which a part-filled bowl is filled on
	bagML  float64 // that a product bag holds
	packs  []sim.PackSpec
}

// over says whether nothing more comes.
func (w *bowlWay) over(v *sim.Seen) bool {
	return v.OperationOver && v.BasinML <= 0 && !v.Rinsing && v.PoolML < 20
}

// act does the next thing that the bowl needs.
func (w bowlWay) act(v *sim.Seen, do func(sim.Action) sim.Reason) {
	p := &v.Pump
	try := func(verb sim.Verb) { do(sim.Action{Do: verb}) }
	if v.Bench.TakenDown || p.Braking {
		return
	}
	switch {
	case p.Mode == sim.PumpFill || p.Mode == sim.PumpTopUp:
		if reading(v) > w.full || p.Mode == sim.PumpFill && v.ReservoirML < dryML {
			try(sim.StopPump)
		}
	case p.Mode == sim.PumpEmpty && p.NoFlow:
		try(sim.StopPump)
	case p.Mode != sim.PumpIdle || v.Mixing:
	case p.AirML >= 1:
		try(sim.ClearLine)
	case w.isOffered(v):
		try(sim.NewBag)
	case p.CycleOpen && w.dry(v):
		w.hang(v, do)
	case p.CycleOpen && p.Washed && p.WashedML >= p.WashML-1:
		w.empty(v, try)
	case p.CycleOpen && p.Washed:
		try(sim.Wash) // it was interrupted
	case p.CycleOpen && p.Filled:
		switch {
		case reading(v) > w.full-0.02 || w.over(v) && v.ReservoirML < dryML:
			try(sim.Wash)
		case v.ReservoirML > w.fillOn || w.over(v):
			w.fill(v, try)
		}
	case v.ReservoirML >= w.start || w.over(v) && v.ReservoirML >= w.last:
		w.fill(v, try)
	}
}

// isOffered says whether the bag on the product line is on its way to the patient: what comes now goes into a fresh one.
func (w *bowlWay) isOffered(v *sim.Seen) bool {
	k := v.BagsUsed - 1
	return k >= 0 && k < sim.MaxBags-1 && !v.Giving.Joined && v.Bags[k].ML >= littleML && (v.Bags[k].HandedBits != 0 || v.Bags[k].Checkers > 0) && v.Bags[k].GivenML == 0
}

// dry says whether another pack has to be hung before the bowl can be washed.
func (w *bowlWay) dry(v *sim.Seen) bool {
	k := v.Bench.HookPack[sim.WashHookA]
	return w.fresh(v) >= 0 && (k < 0 || v.Bench.PackLeftML[k] < min(v.Pump.WashML, freshML)) && (!v.Pump.Washed || v.Pump.WashedML < v.Pump.WashML-1)
}

const freshML = 1000.0 // in a pack: enough to begin a wash with

// fresh is the fullest pack of saline on the bench that does not hang, -1 where none holds more than the one that hangs.
func (w *bowlWay) fresh(v *sim.Seen) int {
	best, most := -1, littleML
	if k := v.Bench.HookPack[sim.WashHookA]; k >= 0 {
		most += v.Bench.PackLeftML[k]
	}
	for i := range w.packs {
		hangs := v.Bench.HookPack[sim.WashHookB] == int8(i) || v.Bench.HookPack[sim.WashHookA] == int8(i)
		if p := &w.packs[i]; p.Solution == sim.Saline && !p.Expired && !hangs && !v.Bench.PackInStore[i] && v.Bench.PackLeftML[i] > most {
			best, most = i, v.Bench.PackLeftML[i]
		}
	}
	return best
}

// hang takes an empty pack down and hangs a fresh one.
func (w *bowlWay) hang(v *sim.Seen, do func(sim.Action) sim.Reason) {
	switch {
	case v.HandsBusy:
	case v.Bench.HookPack[sim.WashHookA] >= 0:
		do(sim.Action{Do: sim.Unhang, On: sim.WashHookA})
	default:
		do(sim.Action{Do: sim.Hang, On: sim.WashHookA, Value: float64(w.fresh(v))})
	}
}

// fill mixes first what has settled.
func (w *bowlWay) fill(v *sim.Seen, try func(sim.Verb)) {
	if v.ClearML > rightClearShare*v.ReservoirML {
		try(sim.Mix)
		return
	}
	try(sim.Fill)
}

// empty stops the bowl and empties it, into a fresh bag where the one there cannot take it.
func (w *bowlWay) empty(v *sim.Seen, try func(sim.Verb)) {
	k := v.BagsUsed - 1
	switch {
	case v.Pump.Spinning:
		try(sim.StopAll)
	case k >= 0 && (v.Bags[k].Discarded || v.Bags[k].ML+v.Bags[k].AirML+v.Pump.HeldML > w.bagML || int(v.Giving.Bag) == k && !v.Giving.Joined):
		try(sim.NewBag)
	default:
		try(sim.Empty)
	}
}

// waits says whether the tidy end has to wait.
func (w bowlWay) waits(v *sim.Seen) bool {
	return v.Pump.CycleOpen || v.Pump.Mode != sim.PumpIdle || v.ReservoirML >= w.last
}

// bowls is the way in which bowls are worked off from a tick on, each stopped at a reading, in the person's own bowl.
func (f *finding) bowls(from int64, stop float64) *Rule { return f.bowlsIn(from, stop, f.scale()) }

// bowlsIn is the same in a bowl of another size, told against the standard one.
func (f *finding) bowlsIn(from int64, stop, scale float64) *Rule {
	way := bowlWay{start: scaledBy(scale, rightStartML), last: float64(scale * rightLastML), full: stop, fillOn: float64(scale * fillOnFromML), bagML: f.c.Faults.BagCapacityML,
		packs: f.c.Packs}
	return &Rule{From: from - from%sim.TicksPerSecond, Until: f.c.LastTick - endsIn, Act: way.act, Waits: way.waits, Does: pumping}
}

// bowlActs are the person's acts for bowls begun from a tick on, which a rule does in their place.
func (f *finding) bowlActs(from int64) (acts []int) {
	acts = f.after(f.every(does(sim.NewBag)), from)
	for _, b := range f.bowlfuls() {
		if b.from >= from {
			for _, k := range b.acts {
				if f.acts[k].Do != sim.ChangeWaste {
					acts = append(acts, k)
				}
			}
		}
	}
	return acts
}

const endsIn = 4 * 60 * sim.TicksPerSecond // that the tidy end takes at most, before the clock ends the case
