// Key caps: the quick key of a control, drawn where it acts.

package ui

const keyCapH = 20

// capText is the name of a chord, kept so that it is put together once.
func (c *Core) capText(ch Chord) string {
	if ch.Mods == 0 {
		return c.Words.keyName(ch.Key)
	}
	if s, ok := c.caps[ch]; ok {
		return s
	}
	s := ""
	for _, m := range [...]struct {
		mod  Mods
		name string
	}{{ModCtrl, c.Words.Ctrl}, {ModAlt, c.Words.Alt}, {ModShift, c.Words.Shift}} {
		if ch.Mods&m.mod != 0 && m.name != "" {
			s += m.name + "+"
		}
	}
	s += c.Words.keyName(ch.Key)
	c.caps[ch] = s
	return s
}

// KeyCapWidth is the width KeyCap takes for a chord.
func (c *Core) KeyCapWidth(ch Chord) float32 {
	s := c.capText(ch)
	if s == "" {
		return 0
	}
	return max(keyCapH, TextWidth(s, SizeSmall, SemiBold, false)+12)
}

// KeyCap draws the cap of a key at the left of r, in the middle of its height.
func (c *Core) KeyCap(r Rect, ch Chord, ink Color) {
	s := c.capText(ch)
	if s == "" {
		return
	}
	box := r.Place(c.KeyCapWidth(ch), keyCapH, 0, 0.5)
	c.l.Marks = append(c.l.Marks, Mark{Rect: box, Shown: box.Intersect(c.clip()), Kind: KindKeyCap, Label: s, Enabled: true, Focus: -1, Layer: c.layers.depth})
	edge := ink
	edge.A = 150
	c.Frame(box, 4, 1, edge)
	c.Segment(box.X+4, box.Bottom()-2.2, box.Right()-4, box.Bottom()-2.2, 1, edge)
	c.glyphs(box.X+(box.W-TextWidth(s, SizeSmall, SemiBold, false))/2, box.Y+box.H/2+SizeSmall*CapHeight/2-0.5, s, Style{Size: SizeSmall, Weight: SemiBold, Col: ink})
}

// keyCapRight draws a cap at the right end of r and cuts it off.
func (c *Core) keyCapRight(r *Rect, ch Chord, ink Color) {
	w := c.KeyCapWidth(ch)
	if w == 0 {
		return
	}
	c.KeyCap(r.CutRight(w), ch, ink)
	r.CutRight(8)
}
