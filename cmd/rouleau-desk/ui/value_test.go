// Tests of sliders and steppers: drag, step, exact digits.

package ui_test

import (
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
)

type valueScreen struct {
	v     ui.Value
	shown float64
	dones int
	kind  string
}

func (s *valueScreen) draw(c *ui.Core) {
	var v float64
	var done bool
	if s.kind == "slider" {
		v, done = c.Slider(s.v)
	} else {
		v, done = c.Stepper(s.v)
	}
	s.shown = v
	if done {
		s.v.Value = v
		s.dones++
	}
}

func newValue(kind string) (*valueScreen, *uitest.Driver) {
	s := &valueScreen{kind: kind, v: ui.Value{ID: ui.Name("v"), Rect: ui.R(100, 100, 220, 48), Label: "Wash rate",
		Unit: "mL/min", Value: 300, Min: 50, Max: 600, Step: 10, Key: ui.K('R')}}
	return s, uitest.New(window, s.draw)
}

func TestValueByKeys(t *testing.T) {
	for _, kind := range []string{"slider", "stepper"} {
		s, d := newValue(kind)
		steps := []struct {
			key  ui.Key
			want float64
		}{
			{ui.KeyTab, 300}, {ui.KeyRight, 310}, {ui.KeyUp, 320}, {ui.KeyLeft, 310}, {ui.KeyDown, 300},
			{ui.KeyPageUp, 400}, {ui.KeyPageDown, 300}, {ui.KeyHome, 50}, {ui.KeyLeft, 50}, {ui.KeyEnd, 600}, {ui.KeyRight, 600},
		}
		for _, st := range steps {
			d.Key(st.key)
			if s.v.Value != st.want {
				t.Errorf("%s: key %d gives %g, want %g", kind, st.key, s.v.Value, st.want)
			}
		}
		// Several steps in one frame all count.
		d.Frame(ui.Input{Keys: []ui.KeyEvent{{Key: ui.KeyLeft}, {Key: ui.KeyLeft, Repeat: true}, {Key: ui.KeyLeft, Repeat: true}}})
		if s.v.Value != 570 {
			t.Errorf("%s: three steps in a frame give %g", kind, s.v.Value)
		}
	}
}

func TestValueByDigits(t *testing.T) {
	for _, kind := range []string{"slider", "stepper"} {
		s, d := newValue(kind)
		d.Type("r") // quick key
		d.Type("445")
		if s.v.Value != 300 || s.dones != 0 || !d.HasText("445") {
			t.Errorf("%s: acted before Enter: %g", kind, s.v.Value)
		}
		d.Key(ui.KeyEnter)
		if s.v.Value != 445 || s.dones != 1 {
			t.Errorf("%s: typed 445, got %g, acted %d times", kind, s.v.Value, s.dones)
		}
		d.Type("9")
		d.Key(ui.KeyEscape)
		d.Key(ui.KeyEnter)
		if s.v.Value != 445 {
			t.Errorf("%s: Escape did not drop the digits: %g", kind, s.v.Value)
		}
		d.Type("900")
		d.Key(ui.KeyEnter)
		if s.v.Value != 445 || !d.HasText("600 mL/min") {
			t.Errorf("%s: out of range gave %g, range shown %v", kind, s.v.Value, d.HasText("600 mL/min"))
		}
		d.Key(ui.KeyBackspace, ui.KeyBackspace)
		d.Type("5.")
		d.Key(ui.KeyEnter) // no point without digits behind it: 95
		if s.v.Value != 95 {
			t.Errorf("%s: after mending, %g, want 95", kind, s.v.Value)
		}
		// Digits and Enter in one frame, as a fast typist or a script sends them.
		d.Frame(ui.Input{Runes: []rune("120"), Keys: []ui.KeyEvent{{Key: ui.KeyEnter}}})
		if s.v.Value != 120 {
			t.Errorf("%s: digits and Enter at once give %g", kind, s.v.Value)
		}
	}
}

func TestValueWithDigitsBehindThePoint(t *testing.T) {
	s := &valueScreen{kind: "slider", v: ui.Value{ID: ui.Name("v"), Rect: ui.R(0, 0, 300, 48), Label: "x", Value: 0, Min: -2, Max: 2, Step: 0.1, Digits: 2}}
	d := uitest.New(window, s.draw)
	d.Key(ui.KeyTab)
	for _, c := range []struct {
		typed string
		want  float64
	}{{"0,25", 0.25}, {"-1.5", -1.5}, {"0", 0}} {
		d.Type(c.typed)
		d.Key(ui.KeyEnter)
		if s.v.Value != c.want {
			t.Errorf("typed %q, got %v", c.typed, s.v.Value)
		}
	}
	for range 3 {
		d.Key(ui.KeyRight)
	}
	if s.v.Value != 0.3 {
		t.Errorf("three steps of 0.1 give %v", s.v.Value)
	}
}

// A press on the number of a slider is to type another: it moves nothing, even where the groove begins close below.
func TestAPressOnTheNumberMovesNothing(t *testing.T) {
	for y := float32(101); y < 122; y += 4 {
		s, d := newValue("slider")
		d.ClickAt(ui.Vec{X: 310, Y: y})
		if s.v.Value != 300 || s.dones != 0 {
			t.Fatalf("a press at %.0f on the number gives %g", y, s.v.Value)
		}
		d.Type("420")
		d.Key(ui.KeyEnter)
		if s.v.Value != 420 || s.dones != 1 {
			t.Errorf("after a press at %.0f, typing gives %g", y, s.v.Value)
		}
	}
}

func TestSliderByPointerAndFinger(t *testing.T) {
	track := func(part float32) ui.Vec { return ui.Vec{X: 110 + 200*part, Y: 135} }
	for _, finger := range []bool{false, true} {
		s, d := newValue("slider")
		move := d.Drag
		if finger {
			move = d.Swipe
		}
		move(track(0.5), track(1))
		if s.v.Value != 600 || s.dones != 1 {
			t.Errorf("finger %v: dragged to %g in %d acts, want 600 in one", finger, s.v.Value, s.dones)
		}
		move(track(1), track(0))
		if s.v.Value != 50 || s.dones != 2 {
			t.Errorf("finger %v: dragged back to %g", finger, s.v.Value)
		}
		move(track(0.5), track(0.5))
		if s.v.Value != 330 {
			t.Errorf("finger %v: a press in the middle gives %g, want 330 (on the steps)", finger, s.v.Value)
		}
		s.v.Why = "first connect the bag"
		move(track(0.5), track(1))
		if s.v.Value != 330 {
			t.Errorf("finger %v: a sleeping slider moved to %g", finger, s.v.Value)
		}
	}
	s, d := newValue("slider")
	d.ClickAt(ui.Vec{X: 300, Y: 108}) // on the number: type it
	d.Type("77")
	d.Key(ui.KeyEnter)
	if s.v.Value != 77 {
		t.Errorf("a press on the number and digits give %g", s.v.Value)
	}
}

func TestStepperByPointerAndFinger(t *testing.T) {
	for _, finger := range []bool{false, true} {
		s, d := newValue("stepper")
		tap := d.ClickAt
		if finger {
			tap = d.TapAt
		}
		tap(ui.Vec{X: 310, Y: 124})
		tap(ui.Vec{X: 310, Y: 124})
		tap(ui.Vec{X: 110, Y: 124})
		if s.v.Value != 310 || s.dones != 3 {
			t.Errorf("finger %v: %g in %d acts", finger, s.v.Value, s.dones)
		}
	}
}

func TestDigitsAreNotQuickKeysWhileTyping(t *testing.T) {
	s, _ := newValue("slider")
	fives := 0
	d := uitest.New(window, func(c *ui.Core) {
		if c.Button(ui.Button{ID: ui.Name("five"), Rect: ui.R(10, 10, 80, 40), Label: "5×", Key: ui.K('5')}) {
			fives++
		}
		s.draw(c)
	})
	d.Type("5")
	d.Type("r")
	d.Type("55")
	d.Key(ui.KeyEnter)
	if fives != 1 || s.v.Value != 55 {
		t.Errorf("the quick key acted %d times, want 1; the value is %g, want 55", fives, s.v.Value)
	}
}

// The wheel scrolls and never sets: a value of the bench must not change because a page was turned over it.
func TestTheWheelSetsNothing(t *testing.T) {
	for _, kind := range []string{"slider", "stepper"} {
		s, _ := newValue(kind)
		scrolled := float32(0)
		d := uitest.New(window, func(c *ui.Core) {
			area := ui.Name("area")
			in := c.BeginScroll(ui.Scroll{ID: area, Rect: ui.R(50, 50, 400, 200), Content: 900})
			s.v.Rect = ui.R(100, in.Y+50, 220, 48)
			s.draw(c)
			c.EndScroll()
			scrolled = c.ScrollOffset(area)
		})
		d.Key(ui.KeyTab) // also with the focus on it
		d.Wheel(ui.Vec{X: 200, Y: 125}, -1)
		d.Wheel(ui.Vec{X: 200, Y: 125}, 3)
		d.Wheel(ui.Vec{X: 200, Y: 125}, -2)
		d.Idle()
		if s.v.Value != 300 || s.dones != 0 || scrolled == 0 {
			t.Errorf("%s: the wheel set %g in %d acts and scrolled to %g", kind, s.v.Value, s.dones, scrolled)
		}
	}
}
