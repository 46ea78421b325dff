package ui_test

import (
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
)

// With a finger alone a text can be written, mended and taken, and a number set to the digit.
func TestKeysOnTheGlass(t *testing.T) {
	text, taken, value := "", 0, 50.0
	for _, size := range []ui.Vec{{X: 900, Y: 600}, {X: 900, Y: 1200}, {X: 1536, Y: 864}} {
		text, taken, value = "", 0, 50
		d := uitest.New(size, func(c *ui.Core) {
			var entered bool
			text, entered = c.TextField(ui.TextField{ID: ui.Name("who"), Rect: ui.R(20, 20, 300, ui.TextFieldHeight), Label: "who", Text: text})
			if entered {
				taken++
			}
			if v, done := c.Slider(ui.Value{ID: ui.Name("rate"), Rect: ui.R(20, size.Y-80, 300, ui.SliderHeight), Label: "rate", Value: value, Max: 600, Step: 10}); done {
				value = v
			}
		})
		d.Core.Words.Backspace = "Back"
		tap := func(labels ...string) {
			t.Helper()
			for _, l := range labels {
				if err := d.Tap(l); err != nil {
					t.Fatal(err)
				}
				d.Idle()
			}
		}
		if d.HasText("q") {
			t.Error("keys lie on the glass before anything is typed")
		}
		tap("who", "Shift", "R", "n", "x")
		for _, f := range uitest.Faults(d.List) {
			t.Errorf("%.0f × %.0f: %s", size.X, size.Y, f)
		}
		tap("Back", "-", "7", "Enter")
		if text != "Rn-7" || taken != 1 {
			t.Errorf("written %q, taken %d times", text, taken)
		}
		m, err := d.At("rate")
		if err != nil {
			t.Fatal(err)
		}
		d.TapAt(ui.Vec{X: m.Rect.Right() - 4, Y: m.Rect.Y + 8})
		d.Idle()
		for _, f := range uitest.Faults(d.List) {
			t.Errorf("%.0f × %.0f, digits: %s", size.X, size.Y, f)
		}
		tap("3", "2", "7", "Enter")
		if value != 327 {
			t.Errorf("%.0f × %.0f: the rate is %v, typed was 327", size.X, size.Y, value)
		}
		d.Key(ui.KeyTab)
		d.ClickAt(ui.Vec{X: 60, Y: 66}) // with the pointer there are none
		d.Idle()
		if d.HasText("q") {
			t.Error("keys lie on the glass for a person with a pointer")
		}
	}
}
