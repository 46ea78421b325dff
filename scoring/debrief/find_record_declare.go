package debrief

import (
	"slices"

	"rouleau/assets/words"
	"rouleau/scenarios"
	"rouleau/sim"
)

// What is declared: an incident that was kept back or told too late to mend it, and one that had not happened.

// noticed is how long after it happened an incident is told: somebody must see it first [A].
const noticed = 10 * sim.TicksPerSecond

// mendedByTelling are the names of what points never make up for unless it was brief and told, and of keeping it back.
func mendedByTelling() (names []string) {
	for i := range scenarios.Criticals {
		if c := &scenarios.Criticals[i]; c.Told != scenarios.NoIncident {
			names = append(names, c.Name)
		}
	}
	return append(names, "concealed")
}

// findDeclare looks at each incident that happened and was not told, or told when it could not mend a slip any more.
func findDeclare(f *finding) (all []Decision) {
	k := &f.rec.Run.State.Conduct
	for i, met := range k.Met {
		if met == 0 || k.Told[i] != 0 && !f.toldTooLate(sim.Incident(i)) {
			continue
		}
		at := f.inTime(met + noticed)
		name := words.Say("incident." + sim.Incident(i).String())
		d := Decision{Fault: LeftOut, Title: title("declare", LeftOut, name, clock(at)), Tick: at, Done: -1, Edit: saying(at, sim.Declare, float64(i))}
		if told := k.Told[i]; told != 0 {
			d.Fault, d.Done, d.Title = Late, told, title("declare", Late, name, clock(at), clock(told))
		}
		all = append(all, d)
	}
	return some(all, words.Say("decision.declare_all", len(all)))
}

// toldTooLate says whether a brief slip would have been mended by telling of it sooner.
func (f *finding) toldTooLate(i sim.Incident) bool {
	return slices.ContainsFunc(scenarios.Criticals[:], func(c scenarios.Critical) bool {
		if c.Told != i {
			return false
		}
		for _, g := range f.grade.Critical {
			if g.Name == c.Name && !g.Mended && g.Amount <= c.Brief {
				return true
			}
		}
		return false
	})
}

// findFalseAlarms looks at each declaration of what had not happened.
func findFalseAlarms(f *finding) (all []Decision) {
	for _, i := range f.every(does(sim.Declare)) {
		a := f.acts[i]
		if !f.rec.moments[i].falsely {
			continue
		}
		name := words.Say("incident." + sim.Incident(a.Value).String())
		all = append(all, Decision{Fault: Needless, Title: title("false_alarm", Needless, name, clock(a.Tick)), Tick: a.Tick, Done: a.Tick, Edit: Edit{Drop: []int{i}}})
	}
	return some(all, words.Say("decision.false_alarm_all", len(all)))
}

// findWrongPackTold looks for a wrong pack that hung on the bench before the case and of which nobody was told. It is told when
// it was found; where it was never looked at it has to be read first.
func findWrongPackTold(f *finding) []Decision {
	if f.rec.Run.State.Conduct.Met[sim.IncidentWrongFluid] > 0 {
		return nil // it did harm, which is to be declared anyhow
	}
	for i := range f.c.Packs {
		hook := f.c.Packs[i].On
		if hook == sim.NoPart || !f.c.WrongOn(i, hook) {
			continue
		}
		name, tell := words.Say("part."+hook.String()), float64(sim.IncidentWrongFluid)
		if hook == sim.AnticoagulantHook {
			name = words.Say("decision.anticoagulant_hook")
		}
		if k := f.first(0, func(a *sim.Action) bool { return a.On == hook && (a.Do == sim.Inspect || a.Do == sim.Unhang) }); k >= 0 {
			at := f.inTime(f.acts[k].Tick + noticed)
			return []Decision{{Fault: LeftOut, Title: title("wrong_pack_told", LeftOut, name, clock(at)), Tick: at, Done: -1, Edit: saying(at, sim.Declare, tell)}}
		}
		at := f.inTime(f.rec.decided() + soonSaid)
		e := saying(at+noticed, sim.Declare, tell)
		e.Add = append([]Add{{Act: act(at, sim.Inspect, hook, 0)}}, e.Add...)
		return []Decision{{Fault: LeftOut, Title: title("wrong_pack_read", LeftOut, name, clock(at)), Tick: at, Done: -1, Edit: e}}
	}
	return nil
}
