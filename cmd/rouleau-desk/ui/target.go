// What all controls share: standing in the order of focus, being under the
// pointer, being held, being pressed.

package ui

// target is what a control learns about itself in a frame.
type target struct {
	id      ID
	mark    int
	enabled bool
	over    bool // the pointer is over it
	held    bool // the pointer holds it
	began   bool // the pointer went down on it in this frame
	ended   bool // the pointer was let go that held it
	focused bool
	ring    bool // focused, and the ring is to be drawn
	pressed bool // it was pressed, by whatever means
}

// place puts a control on the screen without any meaning of a press.
func (c *Core) place(id ID, r Rect, kind Kind, label, why string) target {
	t := target{id: id, enabled: why == ""}
	t.over = id != 0 && c.under == id && !(c.fromTouch && !c.in.Down && !c.in.Released)
	if c.in.Pressed && c.under == id && id != 0 {
		// What the pointer found is in view already: nothing moves under it.
		c.active, t.began, c.focus = id, true, id
	}
	if c.active == id && id != 0 {
		c.seen = true
		t.held = c.in.Down
		t.ended = c.in.Released
	}
	t.focused = c.focus == id && id != 0
	t.ring = t.focused && c.focusShown
	t.mark = len(c.l.Marks)
	c.l.Marks = append(c.l.Marks, Mark{
		ID: id, Rect: r, Shown: r.Intersect(c.clip()), Kind: kind, Label: label, Why: why,
		Enabled: t.enabled, Focus: c.addStop(id), Layer: c.layers.depth,
	})
	if t.focused && c.focusMoved {
		c.scrollTo(r)
	}
	return t
}

// target places a control that is pressed: by pointer, finger, Enter, Space or
// its quick key. A quick key on one that cannot be used now puts the focus
// there, which shows the reason.
func (c *Core) target(id ID, r Rect, kind Kind, label, why string, key Chord) target {
	t := c.place(id, r, kind, label, why)
	c.letScroll(&t)
	if t.ended && t.over && c.active == id {
		t.pressed = true
	}
	for _, k := range [...]Key{KeyEnter, KeySpace} {
		if ev, ok := c.take(id, k, 0); ok && !ev.Repeat {
			t.pressed = true
		}
	}
	if c.Shortcut(key) {
		t.pressed = true
		if !t.enabled {
			c.Focus(id)
			c.focusShown = true
		}
	}
	t.pressed = t.pressed && t.enabled
	return t
}

// set changes the mark of a control placed in this frame.
func (c *Core) set(t target, value string, on bool) {
	m := &c.l.Marks[t.mark]
	m.Value, m.On = value, on
}

// cut records that the words of a control did not fit.
func (c *Core) cut(t target, cut bool) {
	m := &c.l.Marks[t.mark]
	m.Cut = m.Cut || cut
}

// shade mixes a hover or press into the ground of a control.
func (t target) shade(c *Core, ground Color) Color {
	switch {
	case !t.enabled:
		return ground
	case t.held && t.over:
		return mix(ground, c.Pal.Ink, pressPart)
	case t.over:
		return mix(ground, c.Pal.Ink, hoverPart)
	}
	return ground
}

// mix blends two opaque colours.
func mix(a, b Color, part float32) Color {
	f := func(x, y uint8) uint8 { return uint8(float32(x) + (float32(y)-float32(x))*part + 0.5) }
	return Color{R: f(a.R, b.R), G: f(a.G, b.G), B: f(a.B, b.B), A: a.A}
}
