// The same bowlful with one finger alone: no pointer that hovers, no wheel, no key.

package bench_test

import (
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
)

type touch struct {
	*table
	t *testing.T
}

// swipe moves a finger up or down over a place; the content follows it.
func (h touch) swipe(at ui.Vec, by float32) {
	h.Swipe(at, ui.Vec{X: at.X, Y: at.Y + by})
}

// panel is a place in the panel where a finger can take hold of what is scrolled.
func (h touch) panel() ui.Vec {
	for _, m := range h.List.Marks {
		if m.Kind == ui.KindScroll && m.Rect.X > h.Size.X*0.6 {
			return ui.Vec{X: m.Rect.X + 3, Y: m.Rect.Y + m.Rect.H/2}
		}
	}
	h.t.Fatal("there is no panel to scroll")
	return ui.Vec{}
}

func (h touch) reveal(words string) {
	for i := range 60 {
		if words == "" || h.hasWords(words) {
			return
		}
		by := float32(-60)
		if i < 15 {
			by = 120
		}
		h.swipe(h.panel(), by)
	}
}

func (h touch) seen(label, below string) ui.Mark {
	h.t.Helper()
	h.reveal(below)
	for range 60 {
		m, err := h.mark(label, below)
		if err != nil {
			h.t.Fatal(err)
		}
		if m.Shown.H >= 30 && m.Shown.W >= 30 {
			return m
		}
		at, by := h.panel(), float32(-60)
		if m.Rect.Y < at.Y {
			by = 60
		}
		h.swipe(at, by)
	}
	h.t.Fatalf("%q cannot be scrolled into sight with a finger", label)
	return ui.Mark{}
}

func (h touch) press(label, below string) { h.TapAt(h.seen(label, below).Shown.Center()); h.Idle() }
func (h touch) choose(_, label string)    { h.press(label, "") }
func (h touch) part(label string)         { h.press(label, "") }
func (h touch) set(label string, value float64) {
	m := h.seen(label, "")
	least, most := h.rangeOf(label)
	x := m.Rect.X + 10 + (m.Rect.W-20)*float32((value-least)/(most-least))
	h.Swipe(ui.Vec{X: m.Rect.X + m.Rect.W/2, Y: m.Rect.Bottom() - 13}, ui.Vec{X: x, Y: m.Rect.Bottom() - 13})
	h.Idle()
}
func (h touch) hold(label string) {
	at := h.seen(label, "").Shown.Center()
	h.SwipeFor(at, at, ui.HoldMS+100)
	h.Idle()
}

func TestPlayedByTouchAlone(t *testing.T) {
	b := sit(t, ui.Vec{X: 1280, Y: 800}, false)
	playByHand(t, b, touch{b, t})
	checkPlayed(t, b)
}
