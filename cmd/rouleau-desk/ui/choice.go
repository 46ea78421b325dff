// Choices: one of several. A list of radio buttons, a row of segments, a strip
// of tabs. Each group is one stop of the Tab key; arrows move inside it.

package ui

// Option is one thing that can be chosen.
type Option struct {
	Label  string
	Detail string
	Key    Chord
	Why    string // not empty: it cannot be chosen now
}

// Choice is a group of which one is chosen; Selected is -1 for none yet.
type Choice struct {
	ID       ID
	Rect     Rect
	Label    string // names the group for tests and assistive code; not drawn
	Options  []Option
	Selected int
	Row      bool // segments side by side instead of radio buttons below each other
}

// Choice draws the group and returns what is chosen now and whether that changed.
func (c *Core) Choice(g Choice) (selected int, changed bool) {
	return c.group(g, KindChoice)
}

// Tabs is a strip of tabs.
type Tabs struct {
	ID       ID
	Rect     Rect
	Label    string
	Options  []Option
	Selected int
}

// Tabs draws the strip and returns the tab on top and whether that changed.
func (c *Core) Tabs(g Tabs) (selected int, changed bool) {
	c.Segment(g.Rect.X, g.Rect.Bottom()-0.5, g.Rect.Right(), g.Rect.Bottom()-0.5, 1, c.Pal.Line)
	return c.group(Choice{ID: g.ID, Rect: g.Rect, Label: g.Label, Options: g.Options, Selected: g.Selected, Row: true}, KindTab)
}

func (c *Core) group(g Choice, kind Kind) (int, bool) {
	stopAt := c.addStop(g.ID)
	sel := g.Selected
	n := len(g.Options)
	if c.focus == g.ID {
		sel = c.groupKeys(g, sel)
		if c.focusMoved && n > 0 {
			c.scrollTo(g.cell(c, kind, max(sel, 0)))
		}
	}
	for i := range g.Options {
		o := &g.Options[i]
		if c.option(g, kind, i, stopAt, sel == i) && o.Why == "" {
			sel = i
		}
	}
	return sel, sel != g.Selected
}

// groupKeys moves the choice by keys, over options that cannot be chosen.
func (c *Core) groupKeys(g Choice, sel int) int {
	n := len(g.Options)
	step := func(from, by int) int {
		for i := from + by; i >= 0 && i < n; i += by {
			if g.Options[i].Why == "" {
				return i
			}
		}
		return sel
	}
	for _, k := range [...]struct {
		key Key
		by  int
	}{{KeyLeft, -1}, {KeyUp, -1}, {KeyRight, 1}, {KeyDown, 1}} {
		if _, ok := c.take(g.ID, k.key, 0); ok {
			if sel < 0 && k.by < 0 {
				sel = n
			}
			sel = step(sel, k.by)
		}
	}
	if _, ok := c.take(g.ID, KeyHome, 0); ok {
		sel = step(-1, 1)
	}
	if _, ok := c.take(g.ID, KeyEnd, 0); ok {
		sel = step(n, -1)
	}
	for _, k := range [...]Key{KeySpace, KeyEnter} {
		if _, ok := c.take(g.ID, k, 0); ok && sel < 0 {
			sel = step(-1, 1)
		}
	}
	if sel >= n {
		sel = -1
	}
	return sel
}

// cell is where an option stands: tabs are as wide as their words.
func (g *Choice) cell(c *Core, kind Kind, i int) Rect {
	n := len(g.Options)
	switch {
	case kind == KindTab:
		x, total := g.Rect.X, float32(0)
		for j := range g.Options {
			total += c.tabWidth(&g.Options[j])
		}
		squeeze := min(1, g.Rect.W/max(total, 1))
		for j := range i {
			x += c.tabWidth(&g.Options[j]) * squeeze
		}
		return R(x, g.Rect.Y, c.tabWidth(&g.Options[i])*squeeze, g.Rect.H)
	case g.Row:
		return g.Rect.Col(i, n, 0)
	}
	return g.Rect.Row(i, n, 0)
}

func (c *Core) tabWidth(o *Option) float32 {
	w := TextWidth(o.Label, SizeBody, SemiBold, false) + 32
	if k := c.KeyCapWidth(o.Key); k > 0 {
		w += k + 8
	}
	return max(w, 64)
}

// option draws one option and reports whether it was pressed.
func (c *Core) option(g Choice, kind Kind, i, stopAt int, on bool) bool {
	o := &g.Options[i]
	r := g.cell(c, kind, i)
	id := g.ID.At(i)
	t := target{id: id, enabled: o.Why == "", over: c.under == id}
	if c.in.Pressed && t.over {
		c.active, c.focus = id, g.ID
	}
	if c.active == id {
		c.seen, t.held = true, c.in.Down
		t.ended = c.in.Released
	}
	t.focused = c.focus == g.ID && (on || (g.Selected < 0 && i == 0))
	t.ring = t.focused && c.focusShown
	t.mark = len(c.l.Marks)
	c.l.Marks = append(c.l.Marks, Mark{ID: id, Rect: r, Shown: r.Intersect(c.clip()), Kind: kind, Label: o.Label,
		Why: o.Why, Enabled: t.enabled, On: on, Focus: stopAt, Layer: c.layers.depth})
	c.letScroll(&t)
	t.pressed = (t.ended && t.over && c.active == id) || c.Shortcut(o.Key)
	switch {
	case kind == KindTab:
		c.drawTab(t, r, o, on)
	case g.Row:
		c.drawSegment(t, r, o, on, i, len(g.Options))
	default:
		c.drawRadio(t, r, o, on)
	}
	return t.pressed
}

func (c *Core) drawRadio(t target, r Rect, o *Option, on bool) {
	in := r
	dot := in.CutLeft(22).Place(22, 22, 0, 0.5)
	switch {
	case !t.enabled:
		c.StrokeDash(dot.Inset(0.5), 11, 1, c.Pal.Edge, Dash{On: 3, Off: 3})
	case on:
		c.Disc(dot, c.Pal.Well)
		c.Circle(dot.Inset(1), 2, c.Pal.Accent)
		c.Disc(dot.Inset(5.5), c.Pal.Accent)
	default:
		c.Disc(dot, t.shade(c, c.Pal.Well))
		c.Circle(dot.Inset(0.75), 1.5, c.Pal.Edge)
	}
	c.switchWords(t, in, o.Label, o.Detail, o.Why, o.Key)
}

func (c *Core) drawSegment(t target, r Rect, o *Option, on bool, i, n int) {
	box := r.InsetXY(0, max(0, (r.H-36)/2))
	box.W += 1 // neighbours share an edge
	if i == n-1 {
		box.W -= 1
	}
	ink, weight := c.Pal.Ink, Regular
	switch {
	case !t.enabled:
		ink = c.Pal.Muted
		c.StrokeDash(box.Inset(0.5), 4, 1, c.Pal.Edge, Dash{On: 3, Off: 3})
	case on:
		c.Fill(box, 4, c.Pal.Tint)
		c.Frame(box, 4, 2, c.Pal.Ink)
		weight = SemiBold
	default:
		c.Fill(box, 4, t.shade(c, c.Pal.Well))
		c.Frame(box, 4, 1, c.Pal.Edge)
	}
	in := box.InsetXY(6, 0)
	if o.labelWidth() > in.W {
		in = box.InsetXY(2, 0)
	}
	if c.KeyCapWidth(o.Key)+o.labelWidth()+8 <= in.W {
		c.keyCapRight(&in, o.Key, ink)
	}
	if cut := c.block(t.id, in, o.Label, Style{Weight: weight, Col: ink, Align: AlignCenter}); cut || !t.enabled {
		c.cut(t, cut)
		c.tip(t, r, o.Label, o.Why)
	}
	c.ring(t, box)
}

func (o *Option) labelWidth() float32 { return TextWidth(o.Label, SizeBody, SemiBold, false) }

func (c *Core) drawTab(t target, r Rect, o *Option, on bool) {
	ink, weight := c.Pal.Muted, Regular
	if on {
		ink, weight = c.Pal.Ink, SemiBold
		c.Fill(R(r.X+8, r.Bottom()-3, r.W-16, 3), 1.5, c.Pal.Ink)
	} else if t.over {
		c.Fill(R(r.X+4, r.Y+4, r.W-8, r.H-8), radius, c.Pal.Shade)
	}
	in := r.InsetXY(16, 0)
	c.keyCapRight(&in, o.Key, ink)
	if c.inner(t.id, in, o.Label, Style{Weight: weight, Col: ink, Align: AlignCenter}) {
		c.cut(t, true)
		c.tip(t, r, o.Label, o.Why)
	}
	c.ring(t, r.InsetXY(3, 5))
}
