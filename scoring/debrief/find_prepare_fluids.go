package debrief

import (
	"rouleau/assets/words"
	"rouleau/sim"
)

// What was chosen and hung: anticoagulant, wash fluid, bowl.

// fits says whether a solution belongs on a hook at all.
func (f *finding) fits(s sim.Solution, hook sim.Part) bool {
	if hook == sim.AnticoagulantHook {
		return s.Anticoagulant()
	}
	return s.FitToWash()
}

// allowed says whether a pack is right for a hook in this case: of the right kind, in date, and not the wrong anticoagulant.
func (f *finding) allowed(pack int, hook sim.Part) bool {
	p := &f.c.Packs[pack]
	return !p.Expired && f.fits(p.Solution, hook) && (hook != sim.AnticoagulantHook || f.sc.Right.AllowsAnticoagulant(p.Solution))
}

// drawn says whether anything was drawn from a pack.
func (f *finding) drawn(pack int) bool {
	return f.c.Packs[pack].VolumeML-f.rec.Run.State.Bench.Packs[pack].Fluid.VolumeML() >= 1
}

// packFor is a right pack for a hook instead of another, from a tick on: the one the person hung there later, or one nobody used,
// the fullest; -1 where the bench has none.
func (f *finding) packFor(hook sim.Part, tick int64, instead int) int {
	if i := f.first(tick, func(a *sim.Action) bool { return a.Do == sim.Hang && a.On == hook && f.allowed(int(a.Value), hook) }); i >= 0 {
		return int(f.acts[i].Value)
	}
	best, spare := -1, false
	for i := range f.c.Packs {
		p := &f.c.Packs[i]
		if i == instead || p.InStore || !f.allowed(i, hook) {
			continue
		}
		free := !f.rec.Run.State.Bench.Packs[i].Used
		if best < 0 || free && !spare || free == spare && p.VolumeML > f.c.Packs[best].VolumeML {
			best, spare = i, free
		}
	}
	return best
}

// findAnticoagulant looks for an anticoagulant that is wrong in this case.
func findAnticoagulant(f *finding) []Decision {
	wrong := func(s sim.Solution) bool { return s.Anticoagulant() && !f.sc.Right.AllowsAnticoagulant(s) }
	hung := f.every(func(a *sim.Action) bool {
		return a.Do == sim.Hang && a.On == sim.AnticoagulantHook && wrong(f.c.Packs[int(a.Value)].Solution)
	})
	if len(hung) == 0 {
		return nil
	}
	var d Decision
	for n, i := range hung {
		k := f.packFor(sim.AnticoagulantHook, f.acts[i].Tick+1, int(f.acts[i].Value))
		if k < 0 {
			return nil
		}
		d.Edit.Swap = append(d.Edit.Swap, f.valued(i, float64(k)))
		if n == 0 {
			d.Tick = f.acts[i].Tick
			d.Title = title("anticoagulant", Wrong, solutionName(f.c.Packs[k].Solution), clock(d.Tick), solutionName(f.c.Packs[int(f.acts[i].Value)].Solution))
		}
	}
	for _, i := range f.every(does(sim.ChooseAnticoagulant)) {
		if wrong(sim.Solution(f.acts[i].Value)) {
			d.Edit.Swap = append(d.Edit.Swap, f.valued(i, float64(f.c.Packs[int(d.Edit.Swap[0].Act.Value)].Solution)))
		}
	}
	d.Fault, d.Done = Wrong, d.Tick
	return []Decision{d}
}

// findFluids looks for each pack that was hung out of date or on a hook it is not for, and that ran.
func findFluids(f *finding) (all []Decision) {
	for _, i := range f.every(does(sim.Hang)) {
		a := f.acts[i]
		pack := int(a.Value)
		if !f.drawn(pack) || f.fits(f.c.Packs[pack].Solution, a.On) && !f.c.Packs[pack].Expired {
			continue
		}
		k := f.packFor(a.On, a.Tick+1, pack)
		if k < 0 {
			continue
		}
		right := solutionName(f.c.Packs[k].Solution)
		if f.c.Packs[k].Solution == f.c.Packs[pack].Solution {
			right = words.Say("decision.in_date", right)
		}
		all = append(all, Decision{Fault: Wrong, Title: title("fluid", Wrong, right, f.nameOf(pack, a.On), partName(a.On), clock(a.Tick)), Tick: a.Tick, Done: a.Tick,
			Edit: Edit{Swap: []Swap{f.valued(i, float64(k))}}})
	}
	return some(all, words.Say("decision.fluid_all", len(all)))
}

// findBowl looks for a bowl that is too large or too small for this patient.
func findBowl(f *finding) []Decision {
	opened := f.first(0, on(sim.OpenSet, sim.ProcessingSet))
	chose := f.last(f.tickOf(opened)+1, does(sim.ChooseBowl))
	if opened < 0 || chose < 0 || len(f.sc.Right.Bowls) == 0 {
		return nil
	}
	own := sim.BowlKind(f.acts[chose].Value)
	right, ok := sim.BowlNamed(f.sc.Right.Bowls[0])
	if !ok || f.sc.Right.AllowsBowl(own) {
		return nil
	}
	at := f.acts[chose].Tick
	d := Decision{Fault: Wrong, Title: title("bowl", Wrong, words.Say("bowl."+right.String()), words.Say("bowl."+own.String())), Tick: at, Done: at,
		Edit: Edit{Swap: []Swap{f.valued(chose, float64(right))}}}
	// bowls of another size come at other times and in another number, filled as far as the person filled theirs
	d.Edit.Rule = f.bowlsIn(f.acts[opened].Tick, f.usualStop(), right.Shape().VolumeML/sim.StandardBowl.Shape().VolumeML)
	d.Edit.Drop = f.bowlActs(f.acts[opened].Tick)
	// wash is reckoned in volumes of the bowl; what is enough for both stays
	ratio, set := right.Shape().VolumeML/own.Shape().VolumeML, f.every(does(sim.SetWashVolume))
	enough := rightWashBowls * right.Shape().VolumeML
	wash := func(own float64) float64 {
		if own > enough {
			return max(enough, min(own, float64(ratio*own)))
		}
		return max(own, min(enough, float64(ratio*own)))
	}
	for _, i := range set {
		d.Edit.Swap = append(d.Edit.Swap, f.valued(i, wash(f.acts[i].Value)))
	}
	if len(set) == 0 {
		d.Edit.Add = []Add{{Act: act(f.acts[opened].Tick, sim.SetWashVolume, sim.NoPart, wash(f.rec.moments[opened].seen.Pump.WashML))}}
	}
	return []Decision{d}
}
