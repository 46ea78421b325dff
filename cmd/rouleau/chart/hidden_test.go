package chart

import (
	"math"
	"slices"
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scoring/play"
	"rouleau/sim"
)

func TestLayersAddUpToTheReservoir(t *testing.T) {
	_, co := played(t, "steady-oozing-spine", "hasty")
	ch, _ := told("a case", co)
	i := slices.IndexFunc(ch.Lanes, func(l Lane) bool { return len(l.layers) > 0 })
	if i < 0 || len(ch.Lanes[i].layers) != 3 {
		t.Fatal("there are no layers")
	}
	lane := &ch.Lanes[i]
	var seen sim.Seen
	again := play.New(co.Run.Case, co.Run.Seed)
	layered := 0
	again.Again(co.Run.Actions, co.Run.State.Tick, func(r *play.Run) {
		if r.State.Tick%(60*sim.TicksPerSecond) != 0 {
			return
		}
		at := int(r.State.Tick / sim.TicksPerSecond)
		sim.View(&r.Case, &r.State, &seen)
		sum := 0.0
		for _, k := range lane.layers {
			if k.values[at] < 0 {
				t.Errorf("second %d: %g mL of %s", at, k.values[at], k.name)
			}
			sum += k.values[at]
		}
		if math.Abs(sum-seen.ReservoirML) > 1e-6 || math.Abs(lane.Curves[0].Values[at]-sum) > 1e-6 {
			t.Errorf("second %d: layers add up to %g mL, the curve stands at %g, a person sees %g", at, sum, lane.Curves[0].Values[at], seen.ReservoirML)
		}
		if r.State.Reservoir.Blood.Hct() < leastHct {
			if lane.layers[1].values[at] != 0 {
				t.Errorf("second %d: there are cells in what has none", at)
			}
			return
		}
		if clear := lane.layers[2].values[at]; math.Abs(clear-min(seen.ClearML, sum)) > 1e-6 {
			t.Errorf("second %d: %g mL are clear, a person sees %g", at, clear, seen.ClearML)
		} else if clear > 50 {
			layered++
		}
	})
	if layered < 5 {
		t.Errorf("only %d of the seconds looked at have a clear layer: this run shows nothing", layered)
	}
}

// What is drawn as seen is what a person saw, and what is drawn apart is not.
func TestHiddenTruthStandsApart(t *testing.T) {
	_, co := played(t, "one-trouble-after-another", "inattentive")
	ch, _ := told("a case", co)
	curve := func(lanes []Lane, name string) *Curve {
		for i := range lanes {
			for k := range lanes[i].Curves {
				if lanes[i].Curves[k].Name == name {
					return &lanes[i].Curves[k]
				}
			}
		}
		t.Fatalf("there is no curve %q", name)
		return nil
	}
	bleeding, clot := curve(ch.Lanes, words.Say("course.bleeding_seen")), curve(ch.Lanes, words.Say("course.clot_seen"))
	detector, gas := curve(ch.Lanes, words.Say("course.detector")), curve(ch.Lanes, words.Say("course.hb_gas"))
	washed, bags := curve(ch.Lanes, words.Say("course.washed")), curve(ch.Lanes, words.Say("course.product"))
	truth := curve(ch.Hidden, words.Say("course.hb_true"))
	var seen sim.Seen
	again := play.New(co.Run.Case, co.Run.Seed)
	again.Again(co.Run.Actions, co.Run.State.Tick, func(r *play.Run) {
		if r.State.Tick%(20*sim.TicksPerSecond) != 0 {
			return
		}
		at := int(r.State.Tick / sim.TicksPerSecond)
		sim.View(&r.Case, &r.State, &seen)
		inBags := 0.0
		for i := range seen.Bags[:seen.BagsUsed] {
			inBags += seen.Bags[i].ML
		}
		for _, c := range []struct {
			v    float64
			want float64
			tol  float64
		}{{bleeding.Values[at], seen.BriskMLMin, 0}, {clot.Values[at], seen.ClotML, 0}, {orLeast(detector.Values[at], 0), seen.Pump.Detector, 1e-12},
			{bags.Values[at], inBags, 2.5 * float64(seen.BagsUsed)}, {truth.Values[at], r.State.Patient.Blood.HbGPerDL(), 1e-12}} {
			if math.Abs(c.v-c.want) > c.tol {
				t.Errorf("second %d: %g, want %g", at, c.v, c.want)
			}
		}
		if seen.Gas.Tick >= 0 && math.Abs(gas.Values[at]-seen.Gas.HbGDL) > 1e-12 {
			t.Errorf("second %d: the gas says %g, want %g", at, gas.Values[at], seen.Gas.HbGDL)
		}
		if seen.Pump.CycleOpen && seen.Pump.Washed && washed.Values[at] != seen.Pump.WashedML {
			t.Errorf("second %d: washed with %g, want %g", at, washed.Values[at], seen.Pump.WashedML)
		}
	})
	for _, lane := range ch.Hidden {
		for i, c := range lane.Curves {
			if unseen := c.Look == unseenLook || c.Look == unseenOtherLook; i == 0 && !unseen {
				t.Errorf("%q is not drawn as what could not be seen", c.Name)
			}
		}
	}
	for _, lane := range ch.Lanes {
		for _, c := range lane.Curves {
			if c.Look == unseenLook || c.Look == unseenOtherLook {
				t.Errorf("%q stands among what could be seen", c.Name)
			}
		}
	}
	// the ground of what could not be seen lies under all of it and under nothing else
	l := ch.List()
	ground := slices.IndexFunc(l.Ops, func(o ui.Op) bool { return o.Kind == ui.OpRect && o.Col == unseenGround && o.Rect.W == l.Size.X })
	head := slices.IndexFunc(l.Ops, func(o ui.Op) bool { return o.Str == words.Say("course.hidden_head") })
	if ground != 0 || head < 0 {
		t.Fatalf("ground %d, heading %d", ground, head)
	}
	for i := range l.Ops {
		switch o := &l.Ops[i]; o.Str {
		case words.Say("course.hb_true"), words.Say("course.bed"), words.Say("course.clotting"):
			if !l.Ops[ground].Rect.Has(ui.Vec{X: o.Rect.X, Y: o.Rect.Y}) {
				t.Errorf("%q does not stand on the ground of what could not be seen", o.Str)
			}
		case words.Say("course.clot_seen"), words.Say("course.washed"):
			if l.Ops[ground].Rect.Has(ui.Vec{X: o.Rect.X, Y: o.Rect.Y}) {
				t.Errorf("%q stands on the ground of what could not be seen", o.Str)
			}
		}
	}
}

// Looks differ for who sees no colours: greys of layers lie apart, and what lies in one lane differs in its dashes.
func TestLooksDifferInGrey(t *testing.T) {
	p := ui.Paper()
	for i, a := range []shade{light, middle, black} {
		for _, b := range []shade{light, middle, black}[i+1:] {
			if c := ui.Contrast(a.colour(p), b.colour(p)); c < 2 {
				t.Errorf("shades %d and %d: contrast %.2f", a, b, c)
			}
		}
	}
	if c := ui.Contrast(unseenGround, paper); c < 1.15 {
		t.Errorf("the ground of what could not be seen: contrast %.2f to paper", c)
	}
	_, co := played(t, "caesarean-rhd-negative", "steady")
	ch, _ := told("a case", co)
	d := &drawing{ch: ch, c: ui.New(p)}
	for _, lane := range append(slices.Clone(ch.Lanes), ch.Hidden...) {
		dashes := map[ui.Dash]string{}
		for _, c := range lane.Curves {
			dash := d.look(c.Look).Dash
			if dashes[dash] != "" {
				t.Errorf("%q and %q have the same dashes", c.Name, dashes[dash])
			}
			dashes[dash] = c.Name
		}
	}
}
