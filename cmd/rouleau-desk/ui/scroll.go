// Scrolled areas: any widgets in a box that is too small for them. They follow
// the wheel, the scroll bar, a finger, and the keyboard focus.

package ui

// scrollState is where a scrolled area stands.
type scrollState struct {
	id      ID
	off     float32
	content float32
	view    Rect
	grab    float32 // offset when the bar or the content was taken hold of
	bar     bool    // it is the bar that is held
	atEnd   bool
}

// Scroll is an area whose content may be higher than it is.
type Scroll struct {
	ID      ID
	Rect    Rect
	Content float32 // height of the content; last frame's is good enough
	Stick   bool    // stay at the end while the content grows (a log)
}

const barWidth = 12

// BeginScroll starts a scrolled area and returns the box for the content: as
// wide as there is room beside the bar, moved up by what is scrolled away.
func (c *Core) BeginScroll(s Scroll) Rect {
	st := c.scrolls[s.ID]
	if st == nil {
		st = &scrollState{id: s.ID, atEnd: s.Stick}
		c.scrolls[s.ID] = st
	}
	st.content, st.view = s.Content, s.Rect
	c.l.Marks = append(c.l.Marks, Mark{ID: s.ID, Rect: s.Rect, Shown: s.Rect.Intersect(c.clip()), Kind: KindScroll, Enabled: true, Focus: -1, Layer: c.layers.depth})
	if s.Stick && st.atEnd {
		st.off = st.limit()
	}
	c.scrollByPointer(st)
	st.clamp()
	inner := s.Rect
	if st.limit() > 0 {
		c.drawBar(st)
		inner.W -= barWidth + 4
	}
	c.PushClip(s.Rect)
	c.scrollIn = append(c.scrollIn, st)
	return Rect{inner.X, inner.Y - st.off, inner.W, max(s.Content, inner.H)}
}

// EndScroll ends the newest scrolled area.
func (c *Core) EndScroll() {
	c.PopClip()
	c.scrollIn = c.scrollIn[:len(c.scrollIn)-1]
}

// ScrollOffset is how far an area is scrolled down.
func (c *Core) ScrollOffset(id ID) float32 {
	if st := c.scrolls[id]; st != nil {
		return st.off
	}
	return 0
}

// SetScroll scrolls an area.
func (c *Core) SetScroll(id ID, off float32) {
	if st := c.scrolls[id]; st != nil {
		st.off = off
		st.clamp()
	}
}

func (st *scrollState) limit() float32 { return max(0, st.content-st.view.H) }

func (st *scrollState) clamp() {
	st.off = min(max(st.off, 0), st.limit())
	st.atEnd = st.off >= st.limit()-1
}

// barRect is the thumb of the bar.
func (st *scrollState) barRect() Rect {
	h := max(40, st.view.H*st.view.H/max(st.content, 1))
	h = min(h, st.view.H)
	y := st.view.Y
	if l := st.limit(); l > 0 {
		y += (st.view.H - h) * st.off / l
	}
	return R(st.view.Right()-barWidth, y, barWidth, h)
}

func (c *Core) scrollByPointer(st *scrollState) {
	if c.wheelOn == st.id && c.in.Wheel.Y != 0 && !c.wheelUsed && st.limit() > 0 {
		c.wheelUsed = true
		st.off -= c.in.Wheel.Y * 3 * LineHeight(SizeBody)
	}
	if c.in.Pressed && c.under == st.id {
		c.active = st.id
		st.grab = st.off
		lane := R(st.view.Right()-barWidth-4, st.view.Y, barWidth+4, st.view.H)
		st.bar = lane.Has(c.in.Pointer)
		if st.bar && !st.barRect().InsetXY(-4, 0).Has(c.in.Pointer) {
			// A press beside the thumb turns a page.
			page := st.view.H * 0.9
			if c.in.Pointer.Y < st.barRect().Y {
				page = -page
			}
			st.off += page
			st.clamp()
			st.grab = st.off
		}
	}
	if c.active != st.id {
		return
	}
	c.seen = true
	dy := c.in.Pointer.Y - c.pressed.Y
	switch {
	case st.bar:
		if room := st.view.H - st.barRect().H; room > 0 {
			st.off = st.grab + dy*st.limit()/room
		}
	case c.fromTouch:
		st.off = st.grab - dy
	}
}

// letScroll hands a finger that moves up or down on a control over to the
// scrolled area the control stands in.
func (c *Core) letScroll(t *target) {
	if !c.fromTouch || !t.held || len(c.scrollIn) == 0 || t.began {
		return
	}
	st := c.scrollIn[len(c.scrollIn)-1]
	dy := c.in.Pointer.Y - c.pressed.Y
	if st.limit() > 0 && (dy > 8 || dy < -8) {
		c.active, t.held = st.id, false
		st.grab, st.bar = st.off, false
		c.pressed = c.in.Pointer
	}
}

// BringIn scrolls the area that is being drawn so that r is in view in the next frame.
func (c *Core) BringIn(r Rect) { c.scrollTo(r) }

// scrollTo brings a control that got the focus into view.
func (c *Core) scrollTo(r Rect) {
	if len(c.scrollIn) == 0 {
		return
	}
	st := c.scrollIn[len(c.scrollIn)-1]
	const air = 8
	if low := r.Bottom() + air - st.view.Bottom(); low > 0 {
		st.off += low
	}
	if high := st.view.Y + air - r.Y; high > 0 {
		st.off -= high
	}
	st.clamp()
}

func (c *Core) drawBar(st *scrollState) {
	lane := R(st.view.Right()-barWidth, st.view.Y, barWidth, st.view.H)
	c.Fill(lane, barWidth/2, c.Pal.Shade)
	col := c.Pal.Edge
	if c.active == st.id && st.bar {
		col = c.Pal.Ink
	}
	c.Fill(st.barRect().Inset(2), barWidth/2-2, col)
}
