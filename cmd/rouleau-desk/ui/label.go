// Words, panels and badges: what is read and not pressed.

package ui

// Label is wrapped text. With an ID, words that do not fit can be read in full
// by putting the focus or the pointer on them.
type Label struct {
	ID    ID
	Rect  Rect
	Text  string
	Style Style
}

// Label draws text wrapped to the width of its box, cut with an ellipsis at its
// height. It returns the height used.
func (c *Core) Label(b Label) (height float32) {
	s := c.style(b.Style)
	s.Top = true
	step := LineHeight(s.Size)
	most := max(1, int((b.Rect.H+1)/step))
	r := b.Rect
	rest := b.Text
	cut := false
	for n := 1; rest != ""; n++ {
		row := R(r.X, r.Y+height, r.W, step)
		height += step
		line, next := NextLine(rest, r.W, s.Size, s.Weight, s.Tab)
		if n == most && next != "" {
			// The last line that fits shows where the rest begins.
			cut = true
			c.lastLine(row, rest, s)
			break
		}
		c.lineIn(row, line, s)
		rest = next
	}
	used := R(r.X, r.Y, r.W, height)
	if cut && b.ID != 0 {
		t := c.place(b.ID, used, KindText, b.Text, "")
		c.cut(t, true)
		c.tip(t, used, b.Text, "")
		c.ring(t, used)
	} else {
		c.markText(0, used, b.Text, cut)
	}
	return height
}

// LabelHeight is the height Label would use at a width.
func (c *Core) LabelHeight(text string, width float32, s Style) float32 {
	s = c.style(s)
	return float32(CountLines(text, width, s.Size, s.Weight, s.Tab)) * LineHeight(s.Size)
}

func (c *Core) lineIn(row Rect, line string, s Style) {
	w := TextWidth(line, s.Size, s.Weight, s.Tab)
	c.glyphs(row.X+(row.W-w)*float32(s.Align)/2, row.Y+(row.H+s.Size*CapHeight)/2, line, s)
}

// lastLine draws as much of text as fits before an ellipsis.
func (c *Core) lastLine(row Rect, text string, s Style) {
	for i, r := range text {
		if r == '\n' {
			text = text[:i]
			break
		}
	}
	dots := TextWidth("…", s.Size, s.Weight, s.Tab)
	n, w := FitText(text, max(row.W-dots, 0), s.Size, s.Weight, s.Tab)
	base := row.Y + (row.H+s.Size*CapHeight)/2
	c.glyphs(row.X, base, text[:n], s)
	c.glyphs(row.X+w, base, "…", s)
}

// Panel is a sheet lying on the paper.
type Panel struct {
	ID    ID
	Rect  Rect
	Title string
	Note  string // muted, at the right of the title
}

// Panel draws a sheet and returns the box for its content.
func (c *Core) Panel(b Panel) Rect {
	c.l.Marks = append(c.l.Marks, Mark{ID: b.ID, Rect: b.Rect, Shown: b.Rect.Intersect(c.clip()), Kind: KindPanel,
		Label: b.Title, Enabled: true, Focus: -1, Layer: c.layers.depth})
	c.Fill(b.Rect, 10, c.Pal.Panel)
	c.Frame(b.Rect, 10, 1, c.Pal.Line)
	in := b.Rect.Inset(16)
	if b.Title == "" {
		return in
	}
	head := in.CutTop(24)
	in.CutTop(8)
	small := Style{Size: SizeSmall, Col: c.Pal.Muted, Align: AlignRight}
	if b.Note != "" {
		c.inner(b.ID, head.CutRight(min(small.Width(b.Note)+1, head.W/2)), b.Note, small)
		head.CutRight(8)
	}
	c.inner(b.ID, head, b.Title, Style{Size: SizeHead, Weight: SemiBold})
	return in
}

// Badge draws a few words in a small frame at the left of r and returns its
// width: a state or a warning that is no alarm.
func (c *Core) Badge(r Rect, text string, strong bool) (width float32) {
	id := Name(text)
	s := Style{Size: SizeSmall, Weight: SemiBold, Align: AlignCenter}
	box := r.Place(min(s.Width(text)+18, r.W), 22, 0, 0.5)
	c.l.Marks = append(c.l.Marks, Mark{ID: id, Rect: box, Shown: box.Intersect(c.clip()), Kind: KindBadge, Label: text, Enabled: true, Focus: -1, Layer: c.layers.depth})
	if strong {
		c.Fill(box, 4, c.Pal.Dark)
		s.Col = c.Pal.OnDark
	} else {
		c.Frame(box, 4, 1.2, c.Pal.Edge)
	}
	if c.inner(id, box.InsetXY(4, 0), text, s) {
		c.l.Marks[len(c.l.Marks)-1].Cut = true
	}
	return box.W
}
