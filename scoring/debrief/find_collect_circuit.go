package debrief

import (
	"slices"

	"rouleau/sim"
)

// A circuit that has to stay joined to the patient, and the blood of a pump.

// findPumpBlood looks for the blood of a pump that was offered and taken over late, in part, or not at all.
func findPumpBlood(f *finding) []Decision {
	offer := f.rec.Run.State.Team.PumpOfferTick
	if offer == 0 {
		return nil
	}
	at := offer + soonSaid
	if i := f.first(offer, does(sim.TakePumpBlood)); i >= 0 {
		done := f.acts[i].Tick
		return []Decision{{Fault: Late, Title: title("pump_blood", Late, clock(at), clock(done)), Tick: at, Done: done, Edit: Edit{Swap: []Swap{f.at(i, at)}}}}
	}
	return []Decision{{Fault: LeftOut, Title: title("pump_blood", LeftOut, clock(at)), Tick: at, Done: -1,
		Edit: Edit{Add: []Add{{Act: act(at, sim.TakePumpBlood, sim.NoPart, 0), PatienceS: int(f.rec.Run.State.Team.PumpOfferEnds-at) / sim.TicksPerSecond}}}}}
}

// findCircuit looks for a circuit that was joined to the patient only after blood had been collected, or never.
func findCircuit(f *finding) []Decision {
	if !f.c.Patient.CircuitAsked {
		return nil
	}
	at := soonBefore(f.rec.firstBlood()) - inHand/2
	joins, opens := f.first(0, does(sim.JoinCircuit)), f.first(0, on(sim.OpenSet, sim.ProcessingSet))
	if opens < 0 || joins >= 0 && f.acts[joins].Tick <= f.firstSucked() {
		return nil
	}
	d := Decision{Fault: LeftOut, Title: title("circuit", LeftOut, clock(at)), Tick: at, Done: -1}
	if f.acts[opens].Tick > at {
		for _, i := range f.setUp(opens) {
			d.Edit.Swap = append(d.Edit.Swap, f.at(i, f.acts[i].Tick+at-f.acts[opens].Tick))
		}
	}
	if joins >= 0 {
		d.Fault, d.Done, d.Title = Late, f.acts[joins].Tick, title("circuit", Late, clock(at), clock(f.acts[joins].Tick))
		d.Edit.Swap = slices.DeleteFunc(d.Edit.Swap, func(s Swap) bool { return s.Own == joins })
		d.Edit.Swap = append(d.Edit.Swap, f.at(joins, at))
	} else {
		d.Edit.Add = []Add{{Act: act(at, sim.JoinCircuit, sim.NoPart, 1), PatienceS: 600}}
	}
	d.Edit.Drop = f.parts(0) // with the circuit joined, hooking bags would part it
	return []Decision{d}
}

// parts are the acts from one on that part a joined circuit: hooking and unhooking bags, and fresh ones.
func (f *finding) parts(from int64) (all []int) {
	return slices.DeleteFunc(f.every(func(a *sim.Action) bool {
		return a.Tick >= from && (a.Do == sim.Unhook || a.Do == sim.Hook || a.Do == sim.NewBag)
	}), func(i int) bool { return f.acts[i].On == sim.AnticoagulantHook })
}
