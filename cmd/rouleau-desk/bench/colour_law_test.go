// The optical model as numbers: the law of Beer and Lambert, the tables behind it, and what must grow with what.

package bench

import (
	"math"
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
)

func bandOf(nm int) int { return (nm - firstNM) / stepNM }

// Absorbance of free haemoglobin is molar extinction × concentration × length over 64 500 g/mol. Anchors: S. Prahl's table
// (1998, from Gratzer and Kollias), from memory.
func TestAbsorbanceOfFreeHaemoglobin(t *testing.T) {
	for _, c := range []struct {
		nm         int
		oxy, deoxy float64 // per cm and mol/L
		gPerL, cm  float64
	}{{540, 53236, 46592, 1, 1}, {540, 53236, 46592, 0.2, 2.5}, {450, 62816, 103292, 1, 1}, {500, 20933, 20862, 2, 0.6}, {560, 32613, 53788, 1, 1},
		{600, 3200, 14677, 5, 1}, {650, 368, 3750, 8, 4}} {
		oxy, deoxy := Liquid{FreeHbGL: c.gPerL}, Liquid{FreeHbGL: c.gPerL, Venous: 1}
		for _, k := range []struct {
			liquid Liquid
			molar  float64
		}{{oxy, c.oxy}, {deoxy, c.deoxy}, {Liquid{FreeHbGL: c.gPerL, Venous: 0.25}, 0.75*c.oxy + 0.25*c.deoxy}} {
			want := k.molar * c.gPerL / 64500 * c.cm
			if got := k.liquid.absorbance(bandOf(c.nm), c.cm); math.Abs(got-want) > 0.01*want {
				t.Errorf("%g g/L, %g of it venous, through %g cm at %d nm: %.4f AU, want %.4f within 1 %%", c.gPerL, k.liquid.Venous, c.cm, c.nm, got, want)
			}
		}
	}
	// The figure that is easiest to check by hand: 1 g/L through 1 cm at 540 nm.
	one := Liquid{FreeHbGL: 1}
	if got := one.absorbance(bandOf(540), 1); math.Abs(got-0.825) > 0.005 {
		t.Errorf("1 g/L through 1 cm at 540 nm is %.3f AU, want 0.825", got)
	}
}

// Haemoglobin counts alike in cells and in solution, and isosbestic points are where they belong: 500 and near 570 nm.
func TestTablesCrossWhereTheyShould(t *testing.T) {
	cells, solution := Liquid{Hct: 0.01}, Liquid{FreeHbGL: 3.4}
	if a, b := cells.absorbance(5, 1), solution.absorbance(5, 1); math.Abs(a-b) > 1e-9 {
		t.Errorf("3.4 g/L absorbs %g in cells and %g in solution", a, b)
	}
	for _, nm := range []int{500, 570} {
		if r := oxygenated[bandOf(nm)] / deoxygenated[bandOf(nm)]; r < 0.97 || r > 1.03 {
			t.Errorf("at %d nm both absorb nearly alike, not as %.2f to 1", nm, r)
		}
	}
	// Two peaks with oxygen, one without.
	if o := oxygenated; !(o[bandOf(540)] > o[bandOf(560)] && o[bandOf(580)] > o[bandOf(560)]) {
		t.Error("oxyhaemoglobin has lost its valley at 560 nm")
	}
	if d := deoxygenated; !(d[bandOf(540)] < d[bandOf(560)] && d[bandOf(580)] < d[bandOf(560)]) {
		t.Error("deoxyhaemoglobin has lost its peak near 555 nm")
	}
}

func TestHalfTheDepthHalvesAbsorbance(t *testing.T) {
	for _, l := range []Liquid{{FreeHbGL: 1}, {FreeHbGL: 0.3, ProteinGL: 60}, {ProteinGL: 70}, {FreeHbGL: 4, Venous: 0.5}} {
		for band := range bands {
			if whole, half := l.absorbance(band, 3), l.absorbance(band, 1.5); whole != 2*half || whole <= 0 {
				t.Errorf("%+v at %d nm: %g AU through 3 cm, %g through 1.5", l, firstNM+stepNM*band, whole, half)
			}
			// What comes back has gone through twice.
			got, want := reflect(l.absorbs(band), l.scatters(), 1.5, 1), math.Pow(10, -2*l.absorbance(band, 1.5))
			if math.Abs(got-want) > 1e-12 {
				t.Errorf("%+v at %d nm sends back %g, want %g", l, firstNM+stepNM*band, got, want)
			}
		}
	}
}

// More cells, more free haemoglobin, a deeper layer or less oxygen is never brighter.
func TestDarkerWithMore(t *testing.T) {
	at := []float64{0, 1e-4, 3e-4, 1e-3, 2e-3, 5e-3, 0.01, 0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1}
	for what, liquid := range map[string]func(share float64) (Liquid, float64){
		"haematocrit":      func(s float64) (Liquid, float64) { return Liquid{Hct: s, ProteinGL: 40}, depthBag },
		"free haemoglobin": func(s float64) (Liquid, float64) { return Liquid{FreeHbGL: 10 * s}, depthTube },
		"free, with cells": func(s float64) (Liquid, float64) { return Liquid{FreeHbGL: 10 * s, Hct: 0.01}, depthTube },
		"protein":          func(s float64) (Liquid, float64) { return Liquid{ProteinGL: 80 * s}, depthBag },
		"venous share":     func(s float64) (Liquid, float64) { return Liquid{Hct: 0.4, Venous: s}, depthBag },
		"depth":            func(s float64) (Liquid, float64) { return Liquid{FreeHbGL: 1, Hct: 0.002}, 5 * s },
	} {
		last, first := 2.0, 0.0
		for i, s := range at {
			l, depth := liquid(s)
			lum := ui.Luminance(l.colour(depth))
			if lum > last+0.002 { // a step of the screen
				t.Errorf("%s: brighter at %g than before, %.4f after %.4f", what, s, lum, last)
			}
			if last = lum; i == 0 {
				first = lum
			}
		}
		if last > 0.95*first {
			t.Errorf("%s makes no difference: %.3f to %.3f", what, first, last)
		}
	}
}

func TestWholeBloodIsDeepRedAndVenousDarker(t *testing.T) {
	whole := Liquid{Hct: 0.42, ProteinGL: 70}
	venous := whole
	venous.Venous = 0.3
	a, b := whole.Colour(depthBag), venous.Colour(depthBag)
	if !(a.R > 110 && a.R < 160 && a.G < 40 && a.B < 40) {
		t.Errorf("whole blood is not deep red: %v", a)
	}
	if !(b.R+20 < a.R && b.R > 70 && apart(a, b) > 25) {
		t.Errorf("venous blood %v is not darker than %v", b, a)
	}
	if c := (Liquid{FreeHbGL: 0.3}).Colour(depthTube); !(c.R > 225 && c.R > c.G+20 && c.G > c.B+20 && c.B > 120) {
		t.Errorf("an effluent with 0.3 g/L is not pale and reddish: %v", c)
	}
}

// The strong palette's alarm keeps clear of liquids too.
func TestNoLiquidLooksLikeAnAlarmOfTheStrongPalette(t *testing.T) {
	alarm := ui.HighContrast().Alarm[ui.High].On
	for _, hct := range []float64{0, 0.01, 0.05, 0.25, 0.65} {
		for _, free := range []float64{0, 0.5, 1, 2, 4, 8} {
			for _, venous := range []float64{0, ShedVenous} {
				for _, depth := range []float64{depthTube, depthBowl, depthPool, depthBag, depthReservoir} {
					l := Liquid{Hct: hct, FreeHbGL: free, ProteinGL: 30, Venous: venous}
					if d := apart(l.Colour(depth), alarm); d < 40 {
						t.Errorf("%+v at %.1f cm is %v, by %.0f from the alarm's %v", l, depth, l.Colour(depth), d, alarm)
					}
				}
			}
		}
	}
}

// A screen white is white: each of red, green and blue is all of the light.
func TestWhiteIsWhite(t *testing.T) {
	for c := range screenShare {
		sum := 0.0
		for _, s := range screenShare[c] {
			sum += s
		}
		if math.Abs(sum-1) > 1e-12 {
			t.Errorf("channel %d gives %g", c, sum)
		}
	}
	// The observer's lobes against the CIE's table at its peaks, from memory: y is 0.995 at 555 nm (here at 550 and 560),
	// x 1.062 at 600, z 1.772 at 445 (1.783 at 440, 1.747 at 450).
	for _, c := range []struct {
		nm, x, y, z float64
	}{{550, 0.433, 0.995, 0.009}, {560, 0.594, 0.995, 0.004}, {600, 1.062, 0.631, 0.001}, {450, 0.336, 0.038, 1.772}} {
		x, y, z := observer(c.nm)
		if math.Abs(x-c.x) > 0.03 || math.Abs(y-c.y) > 0.03 || math.Abs(z-c.z) > 0.05 {
			t.Errorf("at %g nm the observer is %.3f %.3f %.3f, want %.3f %.3f %.3f", c.nm, x, y, z, c.x, c.y, c.z)
		}
	}
}

func TestKeptColoursAreThoseComputed(t *testing.T) {
	for range 2 { // the second time from what was kept
		for _, hct := range []float64{0, 1e-6, 0.0123, 0.333, 0.987, 1} {
			for _, free := range []float64{0, 0.01234, 0.777, 5.43} {
				for _, depth := range []float64{0, 0.04, depthTube, depthReservoir} {
					l := Liquid{Hct: hct, FreeHbGL: free, ProteinGL: 33.4, Venous: 0.111}
					if d := apart(l.Colour(depth), l.colour(depth)); d > 3 {
						t.Errorf("%+v at %g cm: kept %v, computed %v", l, depth, l.Colour(depth), l.colour(depth))
					}
				}
			}
		}
	}
	l := samples["shed"]
	if n := testing.AllocsPerRun(100, func() { l.Colour(depthBag) }); n != 0 {
		t.Errorf("a kept colour allocates %g times", n)
	}
}
