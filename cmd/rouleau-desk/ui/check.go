// Checkbox and toggle: one thing on or off.

package ui

// Checkbox is something that holds or does not.
type Checkbox struct {
	ID     ID
	Rect   Rect
	Label  string
	Detail string
	Key    Chord
	Why    string
	On     bool
}

// Checkbox draws a box with a tick and reports whether it was flipped.
func (c *Core) Checkbox(b Checkbox) bool {
	t := c.target(b.ID, b.Rect, KindCheckbox, b.Label, b.Why, b.Key)
	c.set(t, "", b.On)
	in := b.Rect
	box := in.CutLeft(22).Place(22, 22, 0, 0.5)
	switch {
	case !t.enabled:
		c.StrokeDash(box.Inset(0.5), 4, 1, c.Pal.Edge, Dash{On: 3, Off: 3})
		if b.On {
			c.tick(box.Inset(3), c.Pal.Muted)
		}
	case b.On:
		c.Fill(box, 4, t.shade(c, c.Pal.Accent))
		c.tick(box.Inset(3), c.Pal.Well)
	default:
		c.Fill(box, 4, t.shade(c, c.Pal.Well))
		c.Frame(box, 4, 1.5, c.Pal.Edge)
	}
	c.switchWords(t, in, b.Label, b.Detail, b.Why, b.Key)
	return t.pressed
}

// Toggle is a setting that is on or off; OnWord and OffWord stand in the switch.
type Toggle struct {
	ID              ID
	Rect            Rect
	Label           string
	OnWord, OffWord string
	Key             Chord
	Why             string
	On              bool
}

// Toggle draws a switch and reports whether it was flipped.
func (c *Core) Toggle(b Toggle) bool {
	word := b.OffWord
	if b.On {
		word = b.OnWord
	}
	t := c.target(b.ID, b.Rect, KindToggle, b.Label, b.Why, b.Key)
	c.set(t, word, b.On)
	small := Style{Size: SizeSmall, Weight: SemiBold}
	const knob = 18
	w := max(small.Width(b.OnWord), small.Width(b.OffWord)) + knob + 18
	in := b.Rect
	box := in.CutLeft(w).Place(w, 26, 0, 0.5)
	side := box.Inset(4)
	if b.On {
		ground := t.shade(c, c.Pal.Accent)
		small.Col = c.Pal.Well
		if !t.enabled {
			ground, small.Col = c.Pal.Shade, c.Pal.Muted
		}
		c.Fill(box, 13, ground)
		c.Disc(side.CutRight(knob), small.Col)
	} else {
		small.Col = c.Pal.Muted
		c.Fill(box, 13, t.shade(c, c.Pal.Well))
		c.Frame(box, 13, 1.5, c.Pal.Edge)
		c.Disc(side.CutLeft(knob), c.Pal.Edge)
	}
	small.Align = AlignCenter
	c.inner(b.ID, side, word, small)
	c.switchWords(t, in, b.Label, "", b.Why, b.Key)
	return t.pressed
}

// switchWords writes the label behind a box or switch.
func (c *Core) switchWords(t target, in Rect, label, detail, why string, key Chord) {
	r := in
	in.CutLeft(10)
	ink := c.Pal.Ink
	if !t.enabled {
		ink, detail = c.Pal.Muted, why
	}
	c.keyCapRight(&in, key, ink)
	if c.twoParts(t.id, in, label, detail, Style{Col: ink}, Style{Size: SizeSmall, Col: c.Pal.Muted}) {
		c.cut(t, true)
		c.tip(t, r, label, detail)
	}
	c.ring(t, c.l.Marks[t.mark].Rect)
}
