// The line that shows in full what did not fit, while the control has the focus
// or the pointer rests on it.

package ui

// tipDelayMS is how long the pointer rests before the full words are shown.
const tipDelayMS = 450

// tipLayer lies above every overlay.
const tipLayer = 99

// tipWidth bounds the width of the shown words.
const tipWidth = 320

// tip asks for the full words of a control to be shown if it is looked at.
func (c *Core) tip(t target, r Rect, label, detail string) {
	rested := t.over && !t.held && c.clockMS-c.hoverMS >= tipDelayMS
	if !rested && !t.ring {
		return
	}
	c.tipRect = r
	c.tipText = label
	c.tipMore = detail
}

// drawTip draws the words asked for, below the control or above it where there
// is no room.
func (c *Core) drawTip() {
	if c.tipText == "" && c.tipMore == "" {
		return
	}
	main := Style{Size: SizeBody, Weight: SemiBold, Col: c.Pal.OnDark, Top: true}
	more := Style{Size: SizeBody, Col: c.Pal.OnDark, Top: true}
	w := min(max(main.Width(c.tipText), more.Width(c.tipMore))+1, tipWidth)
	n := CountLines(c.tipText, w, SizeBody, SemiBold, false) + CountLines(c.tipMore, w, SizeBody, Regular, false)
	box := Rect{W: w + 24, H: float32(n)*LineHeight(SizeBody) + 14}
	box.X = min(max(c.tipRect.X, 4), max(c.in.Size.X-box.W-4, 4))
	box.Y = c.tipRect.Bottom() + 8
	if box.Bottom() > c.in.Size.Y-4 {
		box.Y = max(c.tipRect.Y-box.H-8, 4)
	}
	c.l = &c.over
	c.layers.depth = tipLayer
	c.clips = append(c.clips[:0], Rect{W: c.in.Size.X, H: c.in.Size.Y})
	c.Fill(box, radius, c.Pal.Dark)
	in := box.InsetXY(12, 7)
	c.lines(&in, c.tipText, main)
	c.lines(&in, c.tipMore, more)
}

// lines draws wrapped lines, cutting each off the top of r.
func (c *Core) lines(r *Rect, text string, s Style) {
	if text != "" {
		c.markText(0, R(r.X, r.Y, r.W, SizeBody), text, false)
	}
	for text != "" {
		var line string
		line, text = NextLine(text, r.W, s.Size, s.Weight, s.Tab)
		row := r.CutTop(LineHeight(s.Size))
		c.glyphs(row.X, row.Y+(row.H+s.Size*CapHeight)/2, line, s)
	}
}
