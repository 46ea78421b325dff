// Tests of everything that is pressed, by keyboard, pointer and finger alike.

package ui_test

import (
	"slices"
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
)

var window = ui.Vec{X: 800, Y: 600}

// presser is a screen with one control; count tells how often it acted.
type presser struct {
	name  string
	draw  func(c *ui.Core, why string) bool
	label string
}

func pressers() []presser {
	id := ui.Name("it")
	r := ui.R(100, 100, 260, 44)
	return []presser{
		{"button", func(c *ui.Core, why string) bool {
			return c.Button(ui.Button{ID: id, Rect: r, Label: "Wash", Key: ui.K('W'), Why: why})
		}, "Wash"},
		{"checkbox", func(c *ui.Core, why string) bool {
			return c.Checkbox(ui.Checkbox{ID: id, Rect: r, Label: "Wash", Key: ui.K('W'), Why: why})
		}, "Wash"},
		{"toggle", func(c *ui.Core, why string) bool {
			return c.Toggle(ui.Toggle{ID: id, Rect: r, Label: "Wash", OnWord: "on", OffWord: "off", Key: ui.K('W'), Why: why})
		}, "Wash"},
		{"hit", func(c *ui.Core, why string) bool {
			return c.Hit(ui.HitArea{ID: id, Rect: r, Label: "Wash", Key: ui.K('W'), Why: why}).Pressed
		}, "Wash"},
		{"alarm", func(c *ui.Core, _ string) bool {
			return c.Alarm(ui.AlarmStrip{ID: id, Rect: r, Text: "Wash", Key: ui.K('W'), Priority: ui.High})
		}, "Wash"},
	}
}

func TestPressByEveryMeans(t *testing.T) {
	for _, p := range pressers() {
		for _, means := range []struct {
			name string
			do   func(d *uitest.Driver) error
		}{
			{"pointer", func(d *uitest.Driver) error { return d.Click(p.label) }},
			{"finger", func(d *uitest.Driver) error { return d.Tap(p.label) }},
			{"Tab and Enter", func(d *uitest.Driver) error { d.Key(ui.KeyTab, ui.KeyEnter); return nil }},
			{"Tab and Space", func(d *uitest.Driver) error { d.Key(ui.KeyTab, ui.KeySpace); return nil }},
			{"quick key", func(d *uitest.Driver) error { d.Type("w"); return nil }},
			{"press and release in one frame", func(d *uitest.Driver) error {
				m, err := d.At(p.label)
				at := m.Rect.Center()
				d.Move(at)
				d.Frame(ui.Input{Pointer: at, PointerIn: true, Pressed: true, Released: true})
				return err
			}},
		} {
			for _, why := range []string{"", "first stop the bowl"} {
				if why != "" && p.name == "alarm" {
					continue
				}
				n := 0
				d := uitest.New(window, func(c *ui.Core) {
					if p.draw(c, why) {
						n++
					}
				})
				if err := means.do(d); err != nil {
					t.Fatal(err)
				}
				d.Wait(100)
				want := 1
				if why != "" {
					want = 0
				}
				if n != want {
					t.Errorf("%s by %s, reason %q: acted %d times, want %d", p.name, means.name, why, n, want)
				}
			}
		}
	}
}

func TestPressIsDroppedWhenLetGoElsewhere(t *testing.T) {
	for _, p := range pressers() {
		n := 0
		d := uitest.New(window, func(c *ui.Core) {
			if p.draw(c, "") {
				n++
			}
		})
		d.Drag(ui.Vec{X: 200, Y: 120}, ui.Vec{X: 600, Y: 500})
		d.Drag(ui.Vec{X: 600, Y: 500}, ui.Vec{X: 200, Y: 120})
		d.Swipe(ui.Vec{X: 200, Y: 120}, ui.Vec{X: 600, Y: 500})
		if n != 0 {
			t.Errorf("%s acted %d times", p.name, n)
		}
	}
}

func TestRepeatedKeysPressOnce(t *testing.T) {
	n := 0
	d := uitest.New(window, func(c *ui.Core) {
		if c.Button(ui.Button{ID: ui.Name("b"), Rect: ui.R(0, 0, 100, 40), Label: "b", Key: ui.K('B')}) {
			n++
		}
	})
	d.Key(ui.KeyTab)
	for _, k := range []ui.Key{ui.KeyEnter, ui.K('B').Key} {
		d.Frame(ui.Input{Keys: []ui.KeyEvent{{Key: k, Repeat: true}}})
	}
	if n != 0 {
		t.Errorf("acted %d times on repeats", n)
	}
}

func TestReasonIsShownAndReachableByKeyboard(t *testing.T) {
	const why = "the bowl is spinning: stop it before emptying"
	for _, width := range []float32{420, 160} {
		d := uitest.New(window, func(c *ui.Core) {
			c.Button(ui.Button{ID: ui.Name("b"), Rect: ui.R(10, 10, width, 44), Label: "Empty", Key: ui.K('E'), Why: why})
		})
		m, err := d.At("Empty")
		if err != nil {
			t.Fatal(err)
		}
		if m.Enabled || m.Why != why || !d.HasText(why) {
			t.Errorf("width %g: the reason is not on the screen: %+v", width, m)
		}
		if m.Cut != (width < 400) {
			t.Errorf("width %g: cut is %v", width, m.Cut)
		}
		before := len(d.List.Ops)
		d.Type("e") // the quick key of a sleeping button puts the focus there
		if d.Core.Focused() != ui.Name("b") {
			t.Errorf("width %g: the quick key did not focus the button", width)
		}
		d.Idle()
		if width < 400 {
			words := ""
			for _, op := range d.List.Ops[before:] {
				words += op.Str + " "
			}
			if !hasAll(words, "spinning", "emptying") {
				t.Errorf("the full reason is not shown on focus: %q", words)
			}
		}
	}
}

func TestLaterCallsLieAbove(t *testing.T) {
	var pressed []string
	d := uitest.New(window, func(c *ui.Core) {
		if c.Hit(ui.HitArea{ID: ui.Name("vessel"), Rect: ui.R(0, 0, 300, 300), Label: "vessel"}).Pressed {
			pressed = append(pressed, "vessel")
		}
		if c.Button(ui.Button{ID: ui.Name("pill"), Rect: ui.R(100, 100, 100, 40), Label: "pill", Look: ui.LookPill}) {
			pressed = append(pressed, "pill")
		}
	})
	d.ClickAt(ui.Vec{X: 150, Y: 120})
	d.ClickAt(ui.Vec{X: 20, Y: 20})
	if !slices.Equal(pressed, []string{"pill", "vessel"}) {
		t.Errorf("pressed %v", pressed)
	}
}

func TestHoldNeedsTimeOrTwoPresses(t *testing.T) {
	for _, c := range []struct {
		name string
		do   func(d *uitest.Driver)
		want int
	}{
		{"pointer, short", func(d *uitest.Driver) { _ = d.HoldDown("Give", 500) }, 0},
		{"pointer, twice short", func(d *uitest.Driver) { _ = d.HoldDown("Give", 500); _ = d.HoldDown("Give", 500) }, 0},
		{"pointer, long", func(d *uitest.Driver) { _ = d.HoldDown("Give", 900) }, 1},
		{"pointer, very long", func(d *uitest.Driver) { _ = d.HoldDown("Give", 5000) }, 1},
		{"finger, short", func(d *uitest.Driver) { _ = d.Tap("Give") }, 0},
		{"finger, long", func(d *uitest.Driver) { p := ui.Vec{X: 100, Y: 30}; d.SwipeFor(p, p, 900) }, 1},
		{"Enter once", func(d *uitest.Driver) { d.Key(ui.KeyTab, ui.KeyEnter) }, 0},
		{"Enter twice", func(d *uitest.Driver) { d.Key(ui.KeyTab, ui.KeyEnter, ui.KeyEnter) }, 1},
		{"Enter twice, too slow", func(d *uitest.Driver) { d.Key(ui.KeyTab, ui.KeyEnter); d.Wait(5000); d.Key(ui.KeyEnter) }, 0},
		{"quick key twice", func(d *uitest.Driver) { d.Type("gg") }, 1},
		{"Space kept down", func(d *uitest.Driver) {
			d.Key(ui.KeyTab)
			d.Frame(ui.Input{Keys: []ui.KeyEvent{{Key: ui.KeySpace}}})
			for range 60 {
				d.Frame(ui.Input{Keys: []ui.KeyEvent{{Key: ui.KeySpace, Repeat: true}}})
			}
			d.Frame(ui.Input{KeysUp: []ui.Key{ui.KeySpace}})
		}, 1},
		{"focus left between", func(d *uitest.Driver) {
			d.Key(ui.KeyTab, ui.KeyEnter, ui.KeyTab, ui.KeyTab, ui.KeyEnter)
		}, 0},
		{"a stalled frame does not count whole", func(d *uitest.Driver) {
			p := ui.Vec{X: 100, Y: 30}
			d.Move(p)
			d.Frame(ui.Input{Pointer: p, PointerIn: true, Pressed: true, Down: true})
			d.Frame(ui.Input{Pointer: p, PointerIn: true, Down: true, DeltaMS: 5000})
			d.Frame(ui.Input{Pointer: p, PointerIn: true, Released: true})
		}, 0},
	} {
		n := 0
		d := uitest.New(window, func(co *ui.Core) {
			if co.Hold(ui.HoldButton{ID: ui.Name("h"), Rect: ui.R(10, 10, 200, 44), Label: "Give", Key: ui.K('G')}) {
				n++
			}
			co.Button(ui.Button{ID: ui.Name("o"), Rect: ui.R(10, 100, 200, 44), Label: "other"})
		})
		c.do(d)
		d.Wait(200)
		if n != c.want {
			t.Errorf("%s: done %d times, want %d", c.name, n, c.want)
		}
	}
	d := uitest.New(window, func(co *ui.Core) {
		if co.Hold(ui.HoldButton{ID: ui.Name("h"), Rect: ui.R(10, 10, 300, 44), Label: "Give", Key: ui.K('G'), Why: "no bag"}) {
			t.Error("a sleeping hold button acted")
		}
	})
	d.Type("gg")
	_ = d.HoldDown("Give", 2000)
}

func TestButtonHeightShowsTheWholeReason(t *testing.T) {
	const why = "der Glockenboden dreht sich noch: vor dem Entleeren erst die Zentrifugenantriebssteuerung anhalten"
	for _, width := range []float32{150, 220, 300, 900} {
		b := ui.Button{ID: ui.Name("b"), Label: "Entleeren", Key: ui.K('E'), Why: why}
		d := uitest.New(window, func(c *ui.Core) {
			b.Rect = ui.R(10, 10, width, c.ButtonHeight(b, width))
			c.Button(b)
		})
		if f := uitest.Truncated(d.List); len(f) != 0 {
			t.Errorf("width %g, height %g: %v", width, b.Rect.H, f)
		}
		if width == 900 && b.Rect.H != 40 {
			t.Errorf("one line needs %g", b.Rect.H)
		}
	}
}
