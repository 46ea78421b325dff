// What must be told apart can be: by contrast, by people who see colours otherwise, and without colour or motion at all.

package ui_test

import (
	"math"
	"slices"
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
)

var palettes = map[string]*ui.Palette{"paper": ui.Paper(), "strong": ui.HighContrast()}

// The strong palette asks for WCAG 2.2 level AAA (1.4.6: 7 to 1) for words, and for 4.5 to 1 where the other asks for 3.
func TestStrongPaletteAsksForMore(t *testing.T) {
	paper, strong := palettes["paper"].Pairs(), palettes["strong"].Pairs()
	if len(paper) != len(strong) || len(paper) < 100 {
		t.Fatalf("%d and %d pairs", len(paper), len(strong))
	}
	for i := range paper {
		if want := map[float64]float64{4.5: 7, 3: 4.5}[paper[i].Min]; strong[i].Min != want || paper[i].Name != strong[i].Name {
			t.Errorf("%s asks for %g, in the strong palette for %g", paper[i].Name, paper[i].Min, strong[i].Min)
		}
	}
	if c := ui.Contrast(ui.Paper().Ink, ui.Paper().Ink); c != 1 {
		t.Errorf("a colour on itself is %g", c)
	}
}

// deficiencies are how colours look to people without one of the three kinds of cones, in linear light: G. M. Machado,
// M. M. Oliveira and L. A. F. Fernandes, IEEE Transactions on Visualization and Computer Graphics 2009; from memory.
var deficiencies = map[string][3][3]float64{
	"protanopia":   {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}},
	"deuteranopia": {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}},
	"tritanopia":   {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}},
}

// seen is a colour as CIE L*a*b*, through the eyes of a deficiency, or of none.
func seen(c ui.Color, m [3][3]float64) (lab [3]float64) {
	lin := func(v uint8) float64 {
		f := float64(v) / 255
		if f <= 0.04045 {
			return f / 12.92
		}
		return math.Pow((f+0.055)/1.055, 2.4)
	}
	in := [3]float64{lin(c.R), lin(c.G), lin(c.B)}
	var rgb, f [3]float64
	for i := range m {
		rgb[i] = min(max(m[i][0]*in[0]+m[i][1]*in[1]+m[i][2]*in[2], 0), 1)
	}
	for i, row := range [3][3]float64{{0.4124, 0.3576, 0.1805}, {0.2126, 0.7152, 0.0722}, {0.0193, 0.1192, 0.9505}} {
		v := (row[0]*rgb[0] + row[1]*rgb[1] + row[2]*rgb[2]) / [3]float64{0.9505, 1, 1.089}[i]
		if f[i] = math.Cbrt(v); v <= 0.008856 {
			f[i] = 7.787*v + 16.0/116
		}
	}
	return [3]float64{116*f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])}
}

// distance is how far apart two colours look: 2.3 can just be told, 10 is plain.
func distance(a, b ui.Color, m [3][3]float64) float64 {
	x, y := seen(a, m), seen(b, m)
	return math.Sqrt((x[0]-y[0])*(x[0]-y[0]) + (x[1]-y[1])*(x[1]-y[1]) + (x[2]-y[2])*(x[2]-y[2]))
}

func TestDeficienciesAreSimulated(t *testing.T) {
	red, green := ui.Color{R: 200, G: 60, B: 40, A: 255}, ui.Color{R: 110, G: 120, B: 40, A: 255}
	whole := [3][3]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}
	if d, less := distance(red, green, whole), distance(red, green, deficiencies["deuteranopia"]); d < 60 || less > d/2 {
		t.Errorf("a red and a green are %.0f apart, and %.0f without the green cones", d, less)
	}
	for name, m := range deficiencies {
		for i, row := range m { // grey stays grey
			if sum := row[0] + row[1] + row[2]; math.Abs(sum-1) > 0.001 {
				t.Errorf("%s: row %d sums to %g", name, i, sum)
			}
		}
	}
}

// The grounds that say something differ plainly to everybody. Blue and yellow of alarms, their lit and unlit state, what is
// running, and what is chosen.
func TestColoursThatSaySomethingDifferToEverybody(t *testing.T) {
	for name, p := range palettes {
		pairs := map[string][2]ui.Color{
			"high and medium":  {p.Alarm[ui.High].On, p.Alarm[ui.Medium].On},
			"high and low":     {p.Alarm[ui.High].On, p.Alarm[ui.Low].On},
			"medium and low":   {p.Alarm[ui.Medium].On, p.Alarm[ui.Low].On},
			"high lit and not": {p.Alarm[ui.High].On, p.Alarm[ui.High].Off},
			"medium, the same": {p.Alarm[ui.Medium].On, p.Alarm[ui.Medium].Off},
			"low, the same":    {p.Alarm[ui.Low].On, p.Alarm[ui.Low].Off},
			"words and accent": {p.Ink, p.Accent},
			"accent and well":  {p.Accent, p.Well},
			"dark and shade":   {p.Dark, p.Shade},
		}
		for d, m := range deficiencies {
			for what, c := range pairs {
				if far := distance(c[0], c[1], m); far < 10 {
					t.Errorf("%s, %s: %s are %.1f apart", name, d, what, far)
				}
			}
		}
	}
}

// Lines of a chart need not differ by colour: no two have the same dashes.
func TestChartLinesDifferWithoutColour(t *testing.T) {
	for name, p := range palettes {
		for i := range p.Series {
			for k := range i {
				if p.Series[i].Dash == p.Series[k].Dash {
					t.Errorf("%s: lines %d and %d have the same dashes", name, k, i)
				}
			}
		}
	}
}

// drawn is what a frame draws without its colours and words.
func drawn(still bool, screen func(c *ui.Core)) ([]ui.Op, []ui.Vec) {
	d := uitest.New(window, screen)
	d.Core.Still = still
	d.Idle()
	ops := slices.Clone(d.List.Ops)
	for i := range ops {
		ops[i].Col, ops[i].Str = ui.Color{}, ""
	}
	return ops, slices.Clone(d.List.Points)
}

func TestStatesDifferWithoutColour(t *testing.T) {
	id, box := ui.Name("state"), ui.R(20, 20, 320, 40)
	alarm := func(p ui.Priority, known bool) func(*ui.Core) {
		return func(c *ui.Core) {
			c.Alarm(ui.AlarmStrip{ID: id, Rect: box, Priority: p, Text: "same words", Known: known})
		}
	}
	button := func(b ui.Button) func(*ui.Core) {
		b.ID, b.Rect, b.Label = id, box, "Wash"
		return func(c *ui.Core) { c.Button(b) }
	}
	screens := map[string]func(*ui.Core){
		"high": alarm(ui.High, false), "medium": alarm(ui.Medium, false), "low": alarm(ui.Low, false),
		"high, known": alarm(ui.High, true), "medium, known": alarm(ui.Medium, true), "low, known": alarm(ui.Low, true),
		"button":   button(ui.Button{}),
		"running":  button(ui.Button{Running: true}),
		"selected": button(ui.Button{Selected: true}),
		"disabled": button(ui.Button{Why: "no"}),
	}
	for _, still := range []bool{false, true} {
		for a := range screens {
			for b := range screens {
				if a >= b {
					continue
				}
				ops, points := drawn(still, screens[a])
				ops2, points2 := drawn(still, screens[b])
				if slices.Equal(ops, ops2) && slices.Equal(points, points2) {
					t.Errorf("%s and %s differ by colour alone (reduced motion %v)", a, b, still)
				}
			}
		}
	}
}

// With reduced motion an alarm stands in its strong colours, and one that was acknowledged in its known ones, whatever the time.
func TestReducedMotionShowsAlarmsSteadily(t *testing.T) {
	for _, p := range []ui.Priority{ui.Low, ui.Medium, ui.High} {
		for _, known := range []bool{false, true} {
			d := uitest.New(window, func(c *ui.Core) {
				c.Alarm(ui.AlarmStrip{ID: ui.Name("a"), Rect: ui.R(20, 20, 320, 40), Priority: p, Text: "air in the line", Known: known})
			})
			want := d.Core.Pal.Alarm[p].On
			if known {
				want = d.Core.Pal.Alarm[p].Off
			}
			others := func(still bool) (n int) {
				d.Core.Still = still
				for range 200 {
					d.Frame(ui.Input{DeltaMS: 1000.0 / 60})
					if d.List.Ops[0].Col != want {
						n++
					}
				}
				return n
			}
			if n := others(true); n != 0 {
				t.Errorf("priority %d, known %v: %d of 200 frames show another ground than %v", p, known, n, want)
			}
			if n := others(false); (n > 0) != (p != ui.Low && !known) {
				t.Errorf("priority %d, known %v: with motion %d of 200 frames show another ground", p, known, n)
			}
			if !d.HasText("air in the line") {
				t.Error("the words are gone")
			}
		}
	}
}

// Nothing flashes more than three times a second (WCAG 2.2, 2.3.1).
func TestNothingFlashesTooFast(t *testing.T) {
	if ui.HighFlashHz > 3 || ui.MediumFlashHz > 3 {
		t.Error("an alarm flashes more than three times a second")
	}
}
