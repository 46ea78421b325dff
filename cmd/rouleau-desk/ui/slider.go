// Sliders and steppers: a value that is dragged, stepped, or typed exactly.

package ui

import "math"

// Value is what a slider or stepper sets.
type Value struct {
	ID     ID
	Rect   Rect
	Label  string
	Unit   string
	Value  float64
	Min    float64
	Max    float64
	Step   float64
	Big    float64 // step of PageUp and PageDown; 0 means ten steps
	Digits int     // digits shown behind the point
	Key    Chord   // quick key: puts the focus here
	Why    string
}

// dragState is the value of the slider being dragged.
type dragState struct {
	id    ID
	value float64
}

// SliderHeight is the least height of a slider.
const SliderHeight = 48

const thumb = 10

// Slider draws a slider. It returns the value to show, which follows the
// pointer, and done when the person has settled on it: only then should it act.
func (c *Core) Slider(s Value) (v float64, done bool) {
	t := c.place(s.ID, s.Rect, KindSlider, s.Label, s.Why)
	v, done = c.valueByKeys(&t, s)
	in := s.Rect
	track := in.CutBottom(26).InsetXY(thumb, 0)
	groove := track.Inset(-thumb)
	number := sliderNumber(c, s, in)
	if t.enabled && t.began && (number.Has(c.in.Pointer) || !groove.Has(c.in.Pointer)) {
		c.startEntry(s.ID)
	}
	grabbed := t.enabled && c.active == s.ID && groove.Has(c.pressed) && !number.Has(c.pressed)
	if grabbed && (t.held || t.began) {
		part := float64((c.in.Pointer.X - track.X) / max(track.W, 1))
		v = s.snap(s.Min + part*(s.Max-s.Min))
		c.drag = dragState{s.ID, v}
	}
	if grabbed && t.ended {
		v, done = c.drag.value, c.drag.id == s.ID && c.drag.value != s.Value
		c.drag = dragState{}
	}
	c.set(t, c.Num(v, s.Digits, s.Unit), false)
	c.sliderWords(t, s, v, in)
	c.sliderTrack(t, s, v, track)
	c.ring(t, s.Rect)
	return v, done
}

// sliderNumber is the place of a slider's number: a press there is to type another, and moves nothing.
func sliderNumber(c *Core, s Value, words Rect) Rect {
	w := Style{Weight: SemiBold, Tab: true}.Width(c.Num(s.Value, s.Digits, s.Unit)) + 12
	return words.CutRight(min(w, words.W))
}

func (c *Core) sliderWords(t target, s Value, v float64, in Rect) {
	ink, accent := c.Pal.Ink, c.Pal.Ink
	if !t.enabled {
		ink, accent = c.Pal.Muted, c.Pal.Muted
	}
	bold := Style{Weight: SemiBold, Tab: true, Col: accent, Align: AlignRight}
	remark, why := Style{Size: SizeSmall, Col: c.Pal.Muted}, s.Why
	if low := whyBelow(c, s, s.Rect.W); low > 0 && in.H-low >= SliderHeight-26-1 {
		if c.block(s.ID, in.CutBottom(low), why, remark) {
			c.cut(t, true)
		}
		why = ""
	}
	if c.entry.id == s.ID {
		c.drawEntry(&in, s, Style{}.Width(s.Label))
	} else {
		num := c.Num(v, s.Digits, s.Unit)
		c.inner(s.ID, in.CutRight(bold.Width(num)+1), num, bold)
	}
	in.CutRight(8)
	if c.entry.id != s.ID {
		c.keyCapRight(&in, s.Key, ink)
	}
	label := Style{Col: ink}
	cut := false
	if why == "" {
		cut = c.block(s.ID, in, s.Label, label)
	} else {
		cut = c.twoPartsLine(s.ID, in, s.Label, why, label, remark)
	}
	if cut {
		c.cut(t, true)
		c.tip(t, s.Rect, s.Label, s.Why)
	}
}

// twoPartsLine is a label with a remark behind it, on one line.
func (c *Core) twoPartsLine(owner ID, r Rect, label, remark string, ls, rs Style) (cut bool) {
	lw := min(ls.Width(label), r.W)
	cut = c.inner(owner, R(r.X, r.Y, lw+1, r.H), label, ls)
	if remark == "" {
		return cut
	}
	return c.inner(owner, R(r.X+lw+10, r.Y, max(0, r.W-lw-10), r.H), remark, rs) || cut
}

func (c *Core) sliderTrack(t target, s Value, v float64, track Rect) {
	p := c.Pal
	y := track.Y + track.H/2
	part := float32(0)
	if s.Max > s.Min {
		part = float32(min(max((v-s.Min)/(s.Max-s.Min), 0), 1))
	}
	x := track.X + track.W*part
	if !t.enabled {
		c.BeginPath()
		c.To(track.X-thumb, y)
		c.To(track.Right()+thumb, y)
		c.Line(2, p.Edge, Dash{On: 3, Off: 3}, false)
		c.Disc(R(x-7, y-7, 14, 14), p.Ground)
		c.Circle(R(x-7, y-7, 14, 14), 1.5, p.Edge)
		return
	}
	rail := R(track.X-thumb, y-2.5, track.W+2*thumb, 5)
	c.Fill(rail, 2.5, p.Line)
	c.Stroke(rail, 2.5, 1, p.Edge)
	c.Fill(R(rail.X, rail.Y, x-rail.X, 5), 2.5, p.Accent)
	c.Disc(R(x-thumb, y-thumb, 2*thumb, 2*thumb), t.shade(c, p.Well))
	c.Circle(R(x-thumb+1, y-thumb+1, 2*thumb-2, 2*thumb-2), 2.5, p.Accent)
}

// Stepper draws a value in a pill with a part at each end that steps it. It
// returns the value and whether it was changed.
func (c *Core) Stepper(s Value) (v float64, done bool) {
	t := c.place(s.ID, s.Rect, KindStepper, s.Label, s.Why)
	v, done = c.valueByKeys(&t, s)
	in := s.Rect
	less := in.CutLeft(min(40, s.Rect.W/3))
	more := in.CutRight(less.W)
	if t.enabled && t.ended && t.over {
		switch {
		case less.Has(c.in.Pointer) && less.Has(c.pressed):
			v, done = s.move(-s.Step)
		case more.Has(c.in.Pointer) && more.Has(c.pressed):
			v, done = s.move(s.Step)
		case in.Has(c.pressed):
			c.startEntry(s.ID)
		}
	}
	num := c.Num(v, s.Digits, s.Unit)
	c.set(t, num, false)
	c.drawStepper(t, s, v, num, less, in, more)
	return v, done
}

func (c *Core) drawStepper(t target, s Value, v float64, num string, less, in, more Rect) {
	p := c.Pal
	box := s.Rect.Place(s.Rect.W, min(s.Rect.H, 32), 0, 0.5)
	ink := p.Accent
	if t.enabled {
		c.Fill(box, box.H/2, p.Well)
		c.Frame(box, box.H/2, 1.2, p.Accent)
	} else {
		ink = p.Muted
		c.StrokeDash(box.Inset(0.5), box.H/2, 1, p.Edge, Dash{On: 3, Off: 3})
	}
	for i, part := range [...]Rect{less, more} {
		m := part.Center()
		col := ink
		if (i == 0 && v <= s.Min) || (i == 1 && v >= s.Max) {
			col = p.Line
		}
		if t.enabled && t.over && part.Has(c.in.Pointer) {
			c.Disc(R(m.X-13, m.Y-13, 26, 26), t.shade(c, p.Shade))
		}
		c.Fill(R(m.X-6, m.Y-1, 12, 2), 1, col)
		if i == 1 {
			c.Fill(R(m.X-1, m.Y-6, 2, 12), 1, col)
		}
	}
	if c.entry.id == s.ID {
		c.drawEntry(&in, s, 0)
		if c.entry.refuse {
			c.tip(t, s.Rect, c.entry.say, "")
		}
	} else if c.inner(s.ID, in, num, Style{Weight: SemiBold, Tab: true, Col: ink, Align: AlignCenter}) || !t.enabled {
		c.cut(t, Style{Weight: SemiBold, Tab: true}.Width(num) > in.W)
		c.tip(t, s.Rect, num, s.Why)
	}
	c.ring(t, box)
}

// snap brings a value onto the steps and into the range.
func (s *Value) snap(v float64) float64 {
	if s.Step > 0 {
		v = s.Min + math.Round((v-s.Min)/s.Step)*s.Step
	}
	return s.clean(min(max(v, s.Min), s.Max))
}

// clean takes off what adding steps left behind the shown digits.
func (s *Value) clean(v float64) float64 {
	p := math.Pow10(s.Digits)
	return math.Round(v*p) / p
}

func (s *Value) move(by float64) (v float64, changed bool) {
	v = s.clean(min(max(s.Value+by, s.Min), s.Max))
	return v, v != s.Value
}

// valueByKeys steps a value by arrows, pages, Home and End, and reads digits.
func (c *Core) valueByKeys(t *target, s Value) (v float64, done bool) {
	v = s.Value
	if c.Shortcut(s.Key) {
		c.Focus(s.ID)
		c.focusShown = true
		t.focused, t.ring = true, true
		c.typingNow = max(c.typingNow, typesDigits)
		return v, false
	}
	if c.drag.id == s.ID && t.held {
		return c.drag.value, false
	}
	if !t.focused || !t.enabled {
		return v, false
	}
	c.typingNow = max(c.typingNow, typesDigits)
	if nv, ok := c.entryKeys(s); ok {
		return nv, nv != s.Value
	}
	if c.entry.id == s.ID {
		return v, false
	}
	big := s.Big
	if big == 0 {
		big = 10 * s.Step
	}
	for _, k := range [...]struct {
		key Key
		by  float64
	}{{KeyLeft, -s.Step}, {KeyDown, -s.Step}, {KeyRight, s.Step}, {KeyUp, s.Step}, {KeyPageDown, -big}, {KeyPageUp, big},
		{KeyHome, s.Min - s.Max}, {KeyEnd, s.Max - s.Min}} {
		for {
			if _, ok := c.take(s.ID, k.key, 0); !ok {
				break
			}
			s.Value, _ = s.move(k.by)
		}
	}
	return s.Value, s.Value != v
}
