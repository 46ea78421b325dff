// Colours of liquids as numbers: what differs for the trainee must differ on the screen.

package bench

import (
	"math"
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
)

var samples = map[string]Liquid{
	"saline":     {},
	"plasma":     {ProteinGL: 70},
	"thin":       {Hct: 0.005},
	"haemolysed": {FreeHbGL: 5, ProteinGL: 50},
	"shed":       {Hct: 0.25, FreeHbGL: 1, ProteinGL: 40},
	"packed":     {Hct: 0.65, ProteinGL: 5},
}

func apart(a, b ui.Color) float64 {
	d := func(x, y uint8) float64 { return float64(x) - float64(y) }
	return math.Sqrt(d(a.R, b.R)*d(a.R, b.R) + d(a.G, b.G)*d(a.G, b.G) + d(a.B, b.B)*d(a.B, b.B))
}

func TestColoursLookLikeWhatTheyAre(t *testing.T) {
	col := map[string]ui.Color{}
	for name, l := range samples {
		col[name] = l.Colour(depthBag)
	}
	if c := col["saline"]; c.R < 235 || c.G < 235 || c.B < 225 {
		t.Errorf("saline is not clear: %v", c)
	}
	if c := col["plasma"]; !(c.R > 220 && c.G > 190 && c.B < c.G-30) {
		t.Errorf("plasma is not straw: %v", c)
	}
	if c := col["thin"]; !(c.R > 150 && c.R > c.G+30) {
		t.Errorf("a thin suspension is not pink or light red: %v", c)
	}
	if c := samples["haemolysed"].Colour(depthTube); !(c.R > 150 && c.G < 60 && c.B < 60) {
		t.Errorf("haemolysed liquid is not cherry: %v", c)
	}
	if c := col["packed"]; !(c.R > 80 && c.R < 130 && c.G < 50 && c.B < 50) {
		t.Errorf("packed cells are not dark red: %v", c)
	}
	if !(col["packed"].R < col["shed"].R) {
		t.Errorf("packed %v is not darker than shed %v", col["packed"], col["shed"])
	}
}

func TestAllLiquidsDiffer(t *testing.T) {
	for a, la := range samples {
		for b, lb := range samples {
			if a < b && apart(la.Colour(depthBag), lb.Colour(depthBag)) < 20 {
				t.Errorf("%s and %s look alike: %v, %v", a, b, la.Colour(depthBag), lb.Colour(depthBag))
			}
		}
	}
}

// The red of an alarm is never the colour of a liquid, however haemolysed and at whatever depth.
func TestNoLiquidLooksLikeAnAlarm(t *testing.T) {
	alarm := ui.Paper().Alarm[ui.High].On
	for _, hct := range []float64{0, 0.01, 0.05, 0.25, 0.65} {
		for _, free := range []float64{0, 0.5, 1, 2, 4, 8} {
			for _, depth := range []float64{depthTube, depthBowl, depthPool, depthBag, depthReservoir} {
				l := Liquid{Hct: hct, FreeHbGL: free, ProteinGL: 30}
				if d := apart(l.Colour(depth), alarm); d < 40 {
					t.Errorf("haematocrit %.2f with %.1f g/L free haemoglobin at %.1f cm is %v, by %.0f from the alarm's %v", hct, free, depth, l.Colour(depth), d, alarm)
				}
			}
		}
	}
}

func TestClearCherryAgainstOpaqueRed(t *testing.T) {
	clear, packed := samples["haemolysed"].Opacity(depthTube), samples["packed"].Opacity(depthTube)
	if clear > 0.5 || packed < 0.95 {
		t.Errorf("opacity in a tube: haemolysed %.2f, packed %.2f", clear, packed)
	}
}

// Without scattering the formula is the law of Beer and Lambert, there and back.
func TestWithoutCellsItIsBeerLambert(t *testing.T) {
	for _, absorb := range []float64{0.01, 0.3, 2} {
		got, want := reflect(absorb, 1e-5, 1.5, 0.9), 0.9*math.Exp(-2*absorb*1.5)
		if math.Abs(got-want) > 1e-4 {
			t.Errorf("absorption %v: %v, want %v", absorb, got, want)
		}
	}
}

// A thick layer of scatterers no longer shows the ground: R = a − b.
func TestThickLayersHideTheGround(t *testing.T) {
	a := 1 + 3.0/10
	want := a - math.Sqrt(a*a-1)
	for _, ground := range []float64{0, 0.5, 0.9} {
		if got := reflect(3, 10, 5, ground); math.Abs(got-want) > 1e-6 {
			t.Errorf("ground %v: %v, want %v", ground, got, want)
		}
	}
}

func TestColourNeverFails(t *testing.T) {
	for _, l := range []Liquid{{Hct: 1}, {Hct: -1}, {Hct: 2, FreeHbGL: 1e6}, {FreeHbGL: -3, ProteinGL: -5}, {Hct: math.NaN()}} {
		l.Colour(depthReservoir)
		l.Opacity(depthReservoir)
	}
}
