// Exact entry: digits typed into a slider or stepper, taken with Enter.

package ui

import (
	"strconv"
	"strings"
)

// maxEntry bounds what can be typed as a number.
const maxEntry = 10

// entryState is the number being typed.
type entryState struct {
	id     ID
	text   string
	refuse bool   // Enter was pressed on a number outside the range
	say    string // the range, once a number was refused
}

func (c *Core) startEntry(id ID) { c.entry = entryState{id: id} }

// entryKeys reads digits for the value with the focus and reports a number that
// was taken with Enter. What is no number or lies outside the range stays, with
// the range shown beside it.
func (c *Core) entryKeys(s Value) (v float64, ok bool) {
	e := &c.entry
	if !c.runesUsed {
		for _, r := range c.in.Runes {
			switch {
			case r >= '0' && r <= '9', (r == '.' || r == ',') && s.Digits > 0, r == '-' && s.Min < 0:
				if e.id != s.ID {
					c.startEntry(s.ID)
				}
				if len(e.text) < maxEntry {
					e.text, e.refuse = e.text+string(r), false
				}
				c.runesUsed, c.focusShown = true, true
			}
		}
	}
	if e.id != s.ID {
		return 0, false
	}
	if _, back := c.take(s.ID, KeyBackspace, 0); back && e.text != "" {
		e.text, e.refuse = e.text[:len(e.text)-1], false
	}
	if _, esc := c.take(s.ID, KeyEscape, 0); esc {
		*e = entryState{}
		return 0, false
	}
	if _, enter := c.take(s.ID, KeyEnter, 0); !enter {
		return 0, false
	}
	if e.text == "" {
		*e = entryState{}
		return 0, false
	}
	v, err := strconv.ParseFloat(strings.Replace(e.text, ",", ".", 1), 64)
	v = s.clean(v)
	if err != nil || v < s.Min || v > s.Max {
		e.refuse, e.say = true, c.Num(s.Min, s.Digits, "")+" – "+c.Num(s.Max, s.Digits, s.Unit)
		return 0, false
	}
	*e = entryState{}
	return v, true
}

// drawEntry draws the box a number is typed into at the right end of r and cuts
// it off. The range goes before it where that leaves keep for the label, and
// always once a number was refused.
func (c *Core) drawEntry(r *Rect, s Value, keep float32) {
	p := c.Pal
	st := Style{Weight: SemiBold, Tab: true}
	box := r.CutRight(min(max(st.Width(c.entry.text)+20, 56), r.W))
	box = box.Place(box.W, min(box.H, 24), 0, 0.5)
	c.Fill(box, 4, p.Well)
	c.Frame(box, 4, 2, p.Accent)
	in := box.InsetXY(7, 0)
	c.inner(s.ID, in, c.entry.text, st)
	if c.caretOn() {
		x := in.X + st.Width(c.entry.text) + 1
		c.Fill(R(x, box.Y+5, 1.5, box.H-10), 0, p.Ink)
	}
	small := Style{Size: SizeSmall, Tab: true, Col: p.Muted, Align: AlignRight}
	sign := float32(0)
	if c.entry.refuse {
		small.Weight, small.Col, sign = SemiBold, p.Ink, 22
	}
	parts := [...]string{c.Num(s.Max, s.Digits, s.Unit), " – ", c.Num(s.Min, s.Digits, "")}
	need := sign + 16
	for _, part := range parts {
		need += small.Width(part)
	}
	if need > r.W || (need+keep > r.W && !c.entry.refuse) {
		return
	}
	r.CutRight(8)
	for _, part := range parts {
		c.inner(s.ID, r.CutRight(small.Width(part)), part, small)
	}
	if c.entry.refuse {
		r.CutRight(4)
		c.exclaim(r.CutRight(18).Place(18, 18, 0, 0.5))
	}
	r.CutRight(6)
}

// exclaim is the sign of something that was not taken, without alarm colours.
func (c *Core) exclaim(r Rect) {
	m := r.Center()
	c.Circle(r.Inset(1), 1.6, c.Pal.Ink)
	c.Fill(R(m.X-1, m.Y-5, 2, 6), 1, c.Pal.Ink)
	c.Fill(R(m.X-1, m.Y+3, 2, 2), 1, c.Pal.Ink)
}

// caretOn is the blink of a caret; steady where motion is reduced.
func (c *Core) caretOn() bool {
	return c.Still || int(c.clockMS/530)%2 == 0
}
