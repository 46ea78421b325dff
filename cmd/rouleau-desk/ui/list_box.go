// The scrolled list: rows of words of which one can be chosen.

package ui

// Row is one line of a list.
type Row struct {
	Label  string
	Detail string // muted, at the right
	Lead   string // muted figures before the label, for example a time
}

// ListBox is a list of rows. Selected is -1 for none.
type ListBox struct {
	ID        ID
	Rect      Rect
	Label     string // names the list for tests and assistive code; not drawn
	Rows      []Row
	RowH      float32 // 0 means 40; lower only where rows need not be pressed
	Selected  int
	Stick     bool // stay at the end while rows are added
	LeadWidth float32
	Quiet     bool // rows are only read, not chosen
}

// List draws the list. It returns the chosen row and whether a row was opened:
// pressed with the pointer, or with Enter.
func (c *Core) List(b ListBox) (selected int, opened bool) {
	rowH := b.RowH
	if rowH == 0 {
		rowH = 40
	}
	selected = b.Selected
	t := c.place(b.ID, b.Rect, KindList, b.Label, "")
	area := b.ID.With("rows")
	if t.focused {
		selected, opened = c.listKeys(b, area, rowH, selected)
	}
	inner := c.BeginScroll(Scroll{ID: area, Rect: b.Rect, Content: rowH * float32(len(b.Rows)), Stick: b.Stick})
	if selected != b.Selected && selected >= 0 {
		c.scrollTo(R(inner.X, inner.Y+float32(selected)*rowH, inner.W, rowH))
	}
	first := max(0, int((b.Rect.Y-inner.Y)/rowH))
	for i := first; i < len(b.Rows); i++ {
		r := R(inner.X, inner.Y+float32(i)*rowH, inner.W, rowH)
		if r.Y >= b.Rect.Bottom() {
			break
		}
		if c.row(b, i, r, selected == i, t.ring) {
			selected, opened = i, true
		}
	}
	c.EndScroll()
	c.ring(t, b.Rect)
	return selected, opened
}

func (c *Core) row(b ListBox, i int, r Rect, on, ring bool) (pressed bool) {
	id := b.ID.At(i)
	row := &b.Rows[i]
	kind := KindRow
	if b.Quiet {
		kind = KindText
	}
	t := target{id: id, enabled: true, over: c.under == id && !b.Quiet, mark: len(c.l.Marks)}
	if c.in.Pressed && c.under == id {
		c.active, c.focus = id, b.ID
	}
	if c.active == id {
		c.seen, t.held, t.ended = true, c.in.Down, c.in.Released
		t.began = c.in.Pressed
	}
	c.l.Marks = append(c.l.Marks, Mark{ID: id, Rect: r, Shown: r.Intersect(c.clip()), Kind: kind, Label: row.Label,
		Value: row.Detail, Enabled: true, On: on, Focus: -1, Layer: c.layers.depth})
	c.letScroll(&t)
	if !b.Quiet {
		c.rowGround(t, r, on, ring)
	}
	in := r.InsetXY(14, 0)
	if b.Quiet {
		in = r.InsetXY(4, 0)
	}
	if row.Lead != "" {
		lead := Style{Size: SizeSmall, Tab: true, Col: c.Pal.Muted}
		c.inner(id, in.CutLeft(max(b.LeadWidth, lead.Width(row.Lead))+12), row.Lead, lead)
	}
	weight := Regular
	if on {
		weight = SemiBold
	}
	if c.twoParts(id, in, row.Label, row.Detail, Style{Weight: weight}, Style{Size: SizeSmall, Col: c.Pal.Muted}) {
		c.cut(t, true)
		t.ring = on && ring
		c.tip(t, r, row.Label, row.Detail)
	}
	return t.ended && t.over && c.active == id
}

func (c *Core) rowGround(t target, r Rect, on, ring bool) {
	switch {
	case on:
		c.Fill(r.InsetXY(2, 1), 4, c.Pal.Tint)
		c.Fill(R(r.X+2, r.Y+6, 4, r.H-12), 2, c.Pal.Ink)
		if ring {
			c.StrokeDash(r.InsetXY(4, 3), 3, 1.5, c.Pal.Focus, Dash{On: 2, Off: 2.5})
		}
	case t.over:
		c.Fill(r.InsetXY(2, 1), 4, t.shade(c, c.Pal.Shade))
	}
}

// listKeys moves the choice, or scrolls a list that is only read.
func (c *Core) listKeys(b ListBox, area ID, rowH float32, sel int) (int, bool) {
	n := len(b.Rows)
	page := max(1, int(b.Rect.H/rowH)-1)
	by := 0
	for _, k := range [...]struct {
		key Key
		by  int
	}{{KeyUp, -1}, {KeyDown, 1}, {KeyPageUp, -page}, {KeyPageDown, page}, {KeyHome, -n}, {KeyEnd, n}} {
		for {
			if _, ok := c.take(b.ID, k.key, 0); !ok {
				break
			}
			by += k.by
		}
	}
	if b.Quiet {
		if by != 0 {
			c.SetScroll(area, c.ScrollOffset(area)+float32(by)*rowH)
		}
		return sel, false
	}
	if by != 0 && n > 0 {
		if sel < 0 && by > 0 {
			by--
			sel = 0
		}
		sel = min(max(sel+by, 0), n-1)
	}
	sel = c.seek(b, sel)
	for _, k := range [...]Key{KeyEnter, KeySpace} {
		if _, ok := c.take(b.ID, k, 0); ok && sel >= 0 && sel < n {
			return sel, true
		}
	}
	return sel, false
}
