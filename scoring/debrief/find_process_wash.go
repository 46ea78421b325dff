package debrief

import (
	"rouleau/assets/words"
	"rouleau/sim"
)

// Washing: left out, broken off, with too little or too much, too fast; and rates.

const (
	rightWashBowls = 5.0   // bowl volumes, as steady washes; common practice
	rightMLMin     = 300.0 // of filling and washing, as steady sets them; half of it in a smaller bowl
	muchTooSlow    = 0.7   // of that: slower only costs time
)

// setting is one value of a setting of the pump with the bowls that it was used for.
type setting struct {
	own   int // the act that set it, -1 for what it was at the start
	value float64
	bowls []int // as people count them
	from  int64 // its first use
}

// settings are the values of a setting at the acts that used it.
func (f *finding) settings(set, uses sim.Verb, of func(v *sim.Seen) float64) (all []setting) {
	for _, b := range f.bowlfuls() {
		used := f.of(&b, uses)
		if len(used) == 0 && uses == sim.Wash && b.cy.WashTick > 0 && len(b.acts) > 0 {
			used = b.acts[len(b.acts)-1:] // it washed by itself
		}
		for _, k := range used {
			own := f.last(f.acts[k].Tick+1, does(set))
			if n := len(all); n > 0 && all[n-1].own == own {
				if s := &all[n-1]; s.bowls[len(s.bowls)-1] != b.n {
					s.bowls = append(s.bowls, b.n)
				}
				continue
			}
			all = append(all, setting{own: own, value: of(&f.rec.moments[k].seen), bowls: []int{b.n}, from: f.acts[k].Tick})
		}
	}
	return all
}

// set puts a setting right where it was made, or before its first use where it stood as it was.
func (f *finding) set(s *setting, verb sim.Verb, value float64) (e Edit, at int64) {
	if s.own >= 0 {
		return Edit{Swap: []Swap{f.valued(s.own, value)}}, f.acts[s.own].Tick
	}
	at = max(0, s.from-sim.TicksPerSecond)
	return Edit{Add: []Add{{Act: act(at, verb, sim.NoPart, value)}}}, at
}

// findWashVolume looks for each setting of the wash volume that washed bowls with too little, or with far too much.
func findWashVolume(f *finding) []Decision {
	bowl := f.bowlML()
	if bowl <= 0 {
		return nil
	}
	want := float64(max(rightWashBowls, f.least("wash_bowl_volumes", 0)) * bowl)
	most := float64(f.most("wash_bowl_volumes", 2*rightWashBowls-1) * bowl)
	var all []Decision
	for _, s := range f.settings(sim.SetWashVolume, sim.Wash, func(v *sim.Seen) float64 { return v.Pump.WashML }) {
		if s.value >= want-1 && s.value <= most {
			continue
		}
		e, at := f.set(&s, sim.SetWashVolume, want)
		all = append(all, Decision{Fault: Wrong, Title: f.ofBowls("wash_volume", &s, want, s.value), Tick: at, Done: at, Edit: e})
	}
	return some(all, words.Say("decision.wash_volume_all", want))
}

// ofBowls words a setting: for one bowl, or for several.
func (f *finding) ofBowls(aspect string, s *setting, args ...any) string {
	if len(s.bowls) == 1 {
		return title(aspect+"_once", Wrong, append([]any{s.bowls[0]}, args...)...)
	}
	return title(aspect, Wrong, args...)
}

// findRate looks for rates of filling or washing that were too fast, or so slow that they cost time.
func findRate(aspect, measure string, set, uses sim.Verb, of func(v *sim.Seen) float64) func(f *finding) []Decision {
	return func(f *finding) []Decision {
		want := rightMLMin
		if f.scale() < 1 {
			want /= 2
		}
		most := f.most(measure, want*4/3)
		var all []Decision
		for _, s := range f.settings(set, uses, of) {
			if s.value <= most && s.value >= muchTooSlow*want {
				continue
			}
			e, at := f.set(&s, set, min(want, most))
			all = append(all, Decision{Fault: Wrong, Title: f.ofBowls(aspect, &s, min(want, most), s.value), Tick: at, Done: at, Edit: e})
		}
		return some(all, words.Say("decision."+aspect+"_all", min(want, most)))
	}
}

// findUnwashed looks for bowls that were emptied into a bag unwashed, or hardly washed because a wash was not gone on with.
func findUnwashed(f *finding) []Decision {
	var all []Decision
	for _, b := range f.bowlfuls() {
		empties := f.of(&b, sim.Empty)
		if b.cy.Bag < 0 || len(empties) == 0 || b.cy.WashTick > 0 && !f.interrupted(&b) {
			continue
		}
		before := empties[0]
		if stopped := f.stops(&b, sim.PumpIdle); len(stopped) > 0 { // the bowl still spun
			before = stopped[len(stopped)-1]
		}
		t := f.acts[before].Tick
		all = append(all, Decision{Fault: LeftOut, Title: title("unwashed", LeftOut, b.n, clock(f.acts[empties[0]].Tick)), Tick: t, Done: -1,
			Edit: Edit{First: []First{{before, []sim.Action{act(t, sim.Wash, sim.NoPart, 0)}}}}})
	}
	return some(all, words.Say("decision.unwashed_all", len(all)))
}

// interrupted says whether a wash came to nothing, for want of power perhaps, and was not begun anew.
func (f *finding) interrupted(b *bowlful) bool {
	washes := f.of(b, sim.Wash)
	if b.cy.WashML >= f.bowlML() || len(washes) == 0 || len(f.stops(b, sim.PumpWash)) > 0 {
		return false
	}
	last := washes[len(washes)-1]
	return f.rec.moments[last].seen.Pump.WashML >= f.bowlML() && !f.airStopped(f.acts[last].Tick, b.until)
}

// findWashBrokenOff looks for washes that were stopped before they were through.
func findWashBrokenOff(f *finding) []Decision {
	var all []Decision
	for _, b := range f.bowlfuls() {
		stops := f.stops(&b, sim.PumpWash)
		if len(stops) == 0 || b.cy.Bag < 0 {
			continue
		}
		last := stops[len(stops)-1]
		v := &f.rec.moments[last].seen.Pump
		if len(f.after(f.of(&b, sim.Wash), f.acts[last].Tick)) > 0 || v.WashedML >= v.WashML-sameML {
			continue // it was washed anew
		}
		t := f.acts[last].Tick
		all = append(all, Decision{Fault: Late, Title: title("wash_broken_off", Late, b.n, clock(t), v.WashedML, v.WashML), Tick: t, Done: t,
			Edit: Edit{Stops: []StopAt{{Own: last, WashedML: v.WashML}}}})
	}
	if len(all) < 2 {
		return all
	}
	all = some(all, words.Say("decision.wash_broken_off_all", len(all)))
	for _, d := range all[1:] {
		all[0].Edit.Stops = append(all[0].Edit.Stops, d.Edit.Stops...)
	}
	return all
}
