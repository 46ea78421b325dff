// Tests of the frame itself: focus, overlays, equal lists, memory, touch.

package ui_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
)

func threeButtons(c *ui.Core) {
	for i, s := range []string{"one", "two", "three"} {
		c.Button(ui.Button{ID: ui.Name("b").At(i), Rect: ui.R(10, 10+float32(i)*50, 100, 40), Label: s})
	}
}

func TestFocusOrderIsCallOrder(t *testing.T) {
	d := uitest.New(window, threeButtons)
	if got := uitest.FocusOrder(d.List); !slices.Equal(got, []string{"one", "two", "three"}) {
		t.Errorf("order %v", got)
	}
	at := func() int {
		for i := range 3 {
			if d.Core.Focused() == ui.Name("b").At(i) {
				return i
			}
		}
		return -1
	}
	for _, want := range []int{0, 1, 2, 0} {
		if d.Key(ui.KeyTab); at() != want {
			t.Errorf("Tab leads to %d, want %d", at(), want)
		}
	}
	for _, want := range []int{2, 1} {
		if d.Chord(ui.Chord{Key: ui.KeyTab, Mods: ui.ModShift}); at() != want {
			t.Errorf("Shift+Tab leads to %d, want %d", at(), want)
		}
	}
	rings := func() (n int) {
		for _, op := range d.List.Ops {
			if op.Kind == ui.OpRectStroke && op.Dash.On > 0 {
				n++
			}
		}
		return n
	}
	d.Idle()
	if rings() != 1 {
		t.Errorf("%d focus rings after Tab", rings())
	}
	d.ClickAt(ui.Vec{X: 50, Y: 30})
	d.Idle()
	if at() != 0 || rings() != 0 {
		t.Errorf("a click focuses %d and draws %d rings", at(), rings())
	}
}

func TestTabWaitsForKeysOfTheSameFrame(t *testing.T) {
	s, _ := newValue("slider")
	d := uitest.New(window, func(c *ui.Core) { s.draw(c); threeButtons(c) })
	d.Key(ui.KeyTab)
	d.Frame(ui.Input{Runes: []rune("88"), Keys: []ui.KeyEvent{{Key: ui.KeyEnter}, {Key: ui.KeyTab}}})
	d.Idle()
	if s.v.Value != 88 || d.Core.Focused() != ui.Name("b").At(0) {
		t.Errorf("value %g, focus %x", s.v.Value, d.Core.Focused())
	}
}

func TestModalKeepsEverythingToItself(t *testing.T) {
	open, below, yes := false, 0, 0
	d := uitest.New(window, func(c *ui.Core) {
		if c.Button(ui.Button{ID: ui.Name("below"), Rect: ui.R(10, 10, 500, 400), Label: "below", Key: ui.K('B')}) {
			below++
		}
		if open {
			c.BeginOverlay(ui.Name("ask"), ui.R(200, 200, 300, 200), true)
			in := c.Panel(ui.Panel{ID: ui.Name("ask"), Rect: ui.R(200, 200, 300, 200), Title: "End the case?"})
			if c.Button(ui.Button{ID: ui.Name("yes"), Rect: in.CutTop(40), Label: "yes", Key: ui.K('Y')}) {
				yes++
				open = false
			}
			c.EndOverlay()
		}
	})
	d.Key(ui.KeyTab)
	open = true
	d.Idle()
	if d.Core.Focused() != ui.Name("yes") {
		t.Error("an opening overlay does not take the focus")
	}
	d.Key(ui.KeyTab, ui.KeyTab)
	d.ClickAt(ui.Vec{X: 50, Y: 50})
	d.ClickAt(ui.Vec{X: 220, Y: 380})
	d.Type("b")
	if below != 0 {
		t.Errorf("what lies below acted %d times", below)
	}
	d.Type("y")
	d.Idle()
	d.Idle()
	if yes != 1 || d.Core.Focused() != ui.Name("below") {
		t.Errorf("yes %d times, focus came back: %v", yes, d.Core.Focused() == ui.Name("below"))
	}
	d.ClickAt(ui.Vec{X: 50, Y: 50})
	if below != 1 {
		t.Errorf("after closing, what lies below acted %d times", below)
	}
}

// gallery is a screen with one of everything.
func gallery(c *ui.Core) {
	id := ui.Name("gallery")
	in := c.Panel(ui.Panel{ID: id, Rect: ui.R(20, 20, 340, 560), Title: "Bowl", Note: "cycle 2"})
	next := func(h float32) ui.Rect { r := in.CutTop(h); in.CutTop(8); return r }
	c.Button(ui.Button{ID: id.With("1"), Rect: next(40), Label: "Stop pump and bowl", Key: ui.K('S'), Look: ui.LookDark})
	c.Button(ui.Button{ID: id.With("2"), Rect: next(40), Label: "Wash", Key: ui.K('W'), Running: true, Detail: "running"})
	c.Button(ui.Button{ID: id.With("3"), Rect: next(40), Label: "Empty", Key: ui.K('E'), Why: "first stop the bowl"})
	c.Slider(ui.Value{ID: id.With("4"), Rect: next(ui.SliderHeight), Label: "Wash rate", Unit: "mL/min", Value: 300, Min: 50, Max: 600, Step: 10})
	c.Checkbox(ui.Checkbox{ID: id.With("5"), Rect: next(40), Label: "stop at the interface", On: true})
	c.Toggle(ui.Toggle{ID: id.With("6"), Rect: next(40), Label: "sound", OnWord: "on", OffWord: "off", On: true})
	c.Hold(ui.HoldButton{ID: id.With("7"), Rect: next(44), Label: "Give to the patient", Key: ui.K('G')})
	c.TextField(ui.TextField{ID: id.With("8"), Rect: next(ui.TextFieldHeight), Label: "Note", Text: "swabs rinsed"})
	c.Choice(ui.Choice{ID: id.With("9"), Rect: next(40), Row: true, Options: speeds, Selected: 1})
	c.Label(ui.Label{ID: id.With("10"), Rect: ui.R(400, 20, 380, 60), Text: "The colour of what leaves the bowl. Is it clear yet?"})
	c.Alarm(ui.AlarmStrip{ID: id.With("11"), Rect: ui.R(400, 90, 380, 40), Priority: ui.Low, Text: "Reservoir layered"})
	c.List(ui.ListBox{ID: id.With("12"), Rect: ui.R(400, 140, 380, 120), Rows: rows, Selected: 1})
	c.Stepper(ui.Value{ID: id.With("13"), Rect: ui.R(400, 270, 200, 40), Label: "drip", Unit: "drops/min", Value: 72, Max: 120, Step: 1})
	c.Badge(ui.R(620, 270, 160, 40), "not for infusion", true)
	c.Ring(ui.Vec{X: 500, Y: 560}, 20, 30, 0, 3, c.Pal.Ink)
	c.HatchRect(ui.R(600, 540, 40, 40), 6, 0.8, 1, c.Pal.Line)
	c.Chart(chartOf(id.With("14"), ui.R(400, 320, 380, 220)))
}

var speeds = []ui.Option{{Label: "1×"}, {Label: "2×"}, {Label: "5×"}, {Label: "20×"}}
var rows = []ui.Row{{Label: "one", Lead: "0:00:12"}, {Label: "two", Lead: "0:01:12"}, {Label: "three"}, {Label: "four"}}

var wave = func() []float64 {
	v := make([]float64, 3000)
	for i := range v {
		v[i] = math.Sin(float64(i) / 100)
	}
	v[1000] = math.NaN()
	return v
}()

var series = []ui.ChartSeries{
	{Label: "bleeding", Unit: "mL/min", Track: ui.TrackOf(wave...), DT: 1, Min: -1, Max: 1, Look: ui.Paper().Series[0]},
	{Label: "reservoir", Unit: "L", Digits: 2, Track: ui.TrackOf(wave...), DT: 1, Min: -1, Max: 1, Lane: 1, Look: ui.Paper().Series[1]},
}
var marks = []ui.ChartMark{{T: 500, Label: "prime"}, {T: 520, Label: "drip"}, {T: 2000, Label: "wash"}}

func chartOf(id ui.ID, r ui.Rect) ui.Chart {
	return ui.Chart{ID: id, Rect: r, Label: "course", To: 3000, Last: 3000, Now: 2900, Cursor: math.NaN(), Lanes: 2,
		Series: series, Marks: marks, LabelW: 100, EndW: 100}
}

func TestGalleryHasNoFaultsAtAnyScale(t *testing.T) {
	for _, scale := range []float32{1, 1.25, 1.5, 2, 2.5} {
		d := uitest.New(window, gallery)
		d.Scale = scale
		d.Idle()
		for _, f := range uitest.Faults(d.List) {
			t.Errorf("scale %g: %s", scale, f)
		}
	}
}

func TestUnchangedFrameIsEqualAndAllocatesNothing(t *testing.T) {
	d := uitest.New(window, gallery)
	d.Idle()
	d.Idle()
	if d.Changed {
		t.Error("a frame in which nothing happened differs from the last")
	}
	d.Move(ui.Vec{X: 100, Y: 80}) // over the first button
	d.Idle()
	if d.Idle(); d.Changed {
		t.Error("a resting pointer changes the frame")
	}
	d.Move(ui.Vec{X: 100, Y: 130})
	d.Idle()
	in := ui.Input{Size: window, Scale: 1, DeltaMS: 0, Pointer: ui.Vec{X: 100, Y: 130}, PointerIn: true}
	allocs := testing.AllocsPerRun(100, func() {
		d.Core.Begin(in)
		gallery(d.Core)
		d.Core.End()
	})
	if allocs != 0 {
		t.Errorf("an unchanged frame allocates %g times", allocs)
	}
}

func TestListEqualSeesEveryDifference(t *testing.T) {
	frame := func(draw func(c *ui.Core)) *ui.List {
		c := ui.New(ui.Paper())
		c.Begin(ui.Input{Size: window, Scale: 1})
		draw(c)
		l, _ := c.End()
		return l
	}
	line := func(x, phase float32) func(c *ui.Core) {
		return func(c *ui.Core) {
			c.BeginPath()
			c.To(0, 0)
			c.To(x, 10)
			c.Line(2, c.Pal.Ink, ui.Dash{On: 4, Off: 4, Phase: phase}, false)
		}
	}
	base := frame(line(10, 0))
	if !base.Equal(frame(line(10, 0))) {
		t.Error("equal lists differ")
	}
	if base.Equal(frame(line(11, 0))) || base.Equal(frame(line(10, 1))) || base.Equal(frame(func(*ui.Core) {})) {
		t.Error("different lists are called equal")
	}
	a, b := frame(func(c *ui.Core) { c.Text(ui.R(0, 0, 99, 20), "0.58", ui.Style{}) }), frame(func(c *ui.Core) { c.Text(ui.R(0, 0, 99, 20), "0.59", ui.Style{}) })
	if a.Equal(b) {
		t.Error("different words are called equal")
	}
}

func TestPaletteContrast(t *testing.T) {
	if c := ui.Contrast(ui.Color{R: 255, G: 255, B: 255, A: 255}, ui.Color{A: 255}); math.Abs(c-21) > 1e-9 {
		t.Errorf("white on black is %g, WCAG 2.2 says 21", c)
	}
	// #777777 on white is the well-known near miss of 4.5 (WCAG 2.2 formula: 4.478).
	if c := ui.Contrast(ui.Color{R: 0x77, G: 0x77, B: 0x77, A: 255}, ui.Color{R: 255, G: 255, B: 255, A: 255}); math.Abs(c-4.478) > 0.001 {
		t.Errorf("#777 on white is %g", c)
	}
	for name, p := range map[string]*ui.Palette{"paper": ui.Paper(), "high contrast": ui.HighContrast()} {
		for _, pair := range p.Pairs() {
			if c := ui.Contrast(pair.A, pair.B); c < pair.Min {
				t.Errorf("%s: %s is %.2f, needs %.1f", name, pair.Name, c, pair.Min)
			}
		}
	}
}

func TestFlashRates(t *testing.T) {
	// IEC 60601-1-8 (from memory): high 1.4-2.8 Hz, medium 0.4-0.8 Hz, low steady.
	count := func(p ui.Priority, still bool) (n int, on float64) {
		was := ui.FlashOn(p, 0, still)
		for ms := 1.0; ms <= 60000; ms++ {
			now := ui.FlashOn(p, ms, still)
			if now && !was {
				n++
			}
			if now {
				on++
			}
			was = now
		}
		return n, on / 60000
	}
	for _, c := range []struct {
		p        ui.Priority
		low, top int
	}{{ui.High, 84, 168}, {ui.Medium, 24, 48}} {
		n, duty := count(c.p, false)
		if n < c.low || n > c.top || duty < 0.2 || duty > 0.6 {
			t.Errorf("priority %d flashes %d times a minute, lit for %.2f", c.p, n, duty)
		}
		if n, duty := count(c.p, true); n != 0 || duty < 1 {
			t.Errorf("priority %d flashes %d times with reduced motion", c.p, n)
		}
	}
	if n, duty := count(ui.Low, false); n != 0 || duty < 1 {
		t.Error("low priority flashes")
	}
}

func TestNumbersAndClock(t *testing.T) {
	c := ui.New(ui.Paper())
	for _, k := range []struct {
		v      float64
		digits int
		unit   string
		want   string
	}{{0.583, 2, "", "0.58"}, {312.4, 0, "mL", "312 mL"}, {24.46, 1, "mL/min", "24.5 mL/min"}, {-310, 0, "mL", "−310 mL"}, {-0.2, 0, "", "0"}, {math.NaN(), 1, "mL", "–"}} {
		if got := c.Num(k.v, k.digits, k.unit); got != k.want {
			t.Errorf("Num(%g, %d) is %q, want %q", k.v, k.digits, got, k.want)
		}
	}
	d := ui.New(ui.Paper())
	d.Words.Decimal = ","
	if got := d.Num(0.583, 2, ""); got != "0,58" {
		t.Errorf("with a comma: %q", got)
	}
	for sec, want := range map[float64]string{2052: "0:34:12", 0: "0:00:00", 36061: "10:01:01", -5: "−0:00:05"} {
		if got := c.Clock(sec); got != want {
			t.Errorf("Clock(%g) is %q, want %q", sec, got, want)
		}
	}
}

func TestLongWordsWrapOrShowInFull(t *testing.T) {
	long := "Blutgerinnungshemmungsmittelkonzentrationsbestimmung abgeschlossen"
	d := uitest.New(window, func(c *ui.Core) {
		h := c.Label(ui.Label{ID: ui.Name("a"), Rect: ui.R(10, 10, 180, 400), Text: long})
		if h != c.LabelHeight(long, 180, ui.Style{}) || h < 2*ui.LineHeight(ui.SizeBody) {
			t.Errorf("label height %g, foretold %g", h, c.LabelHeight(long, 180, ui.Style{}))
		}
		c.Label(ui.Label{ID: ui.Name("b"), Rect: ui.R(10, 300, 180, 20), Text: long})
		c.Button(ui.Button{ID: ui.Name("c"), Rect: ui.R(10, 400, 180, 40), Label: long})
	})
	if n := len(uitest.Truncated(d.List)); n != 3 {
		t.Errorf("%d runs of text are cut, want the second label, the button and its words: %v", n, uitest.Truncated(d.List))
	}
	d.Key(ui.KeyTab)
	shown := ""
	for _, op := range d.List.Ops {
		shown += op.Str
	}
	if !strings.Contains(shown, "abgeschlossen") {
		t.Error("the full words of a cut label are not shown on focus")
	}
	if d.Key(ui.KeyTab); d.Core.Focused() != ui.Name("c") {
		t.Error("only the label that is cut should be a stop")
	}
}

func TestPinch(t *testing.T) {
	d := uitest.New(window, func(*ui.Core) {})
	two := func(gap float32, began bool) {
		d.Frame(ui.Input{Touches: []ui.Touch{{ID: 1, Pos: ui.Vec{X: 100, Y: 100}, Began: began}, {ID: 2, Pos: ui.Vec{X: 100 + gap, Y: 100}, Began: began}}})
	}
	two(100, true)
	two(150, false)
	if got := d.Core.Pinch(); got != 1.5 {
		t.Errorf("pinch is %g, want 1.5", got)
	}
	if d.Idle(); d.Core.Pinch() != 1 {
		t.Error("the pinch does not end")
	}
}

func TestIDsDoNotCollide(t *testing.T) {
	seen := map[ui.ID]string{}
	add := func(id ui.ID, name string) {
		if was, ok := seen[id]; ok {
			t.Errorf("%s and %s share an ID", was, name)
		}
		seen[id] = name
	}
	add(ui.Name("ab"), "ab")
	add(ui.Name("a").With("b"), "a b")
	for i := range 1000 {
		add(ui.Name("a").At(i), "a number")
		add(ui.Name("b").At(i), "b number")
	}
	add(ui.Name("a").With(""), "a empty")
}
