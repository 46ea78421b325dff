// Buttons: acts in words, with their quick key and, if they cannot be pressed
// now, the reason beside them.

package ui

// Look is the dress of a button.
type Look uint8

// The looks. LookDark is for the one act that must stand out (stop, begin);
// LookPill sits on a part of a drawing; LookLink is words alone.
const (
	LookPlain Look = iota
	LookDark
	LookPill
	LookLink
)

// Button is an act that can be pressed.
type Button struct {
	ID       ID
	Rect     Rect
	Label    string
	Detail   string // muted words at the right: "running · 1 min 24 s"
	Key      Chord  // quick key
	Why      string // not empty: it cannot be pressed now, and this is why
	Running  bool   // the act is going on
	Selected bool   // it is the chosen one
	Look     Look
}

const radius = 6

// Button draws a button and reports whether it was pressed. The words go into
// one line if they fit; else the detail or reason goes below the label.
func (c *Core) Button(b Button) bool {
	t := c.target(b.ID, b.Rect, KindButton, b.Label, b.Why, b.Key)
	c.set(t, b.Detail, b.Running || b.Selected)
	box := b.Rect
	if b.Look == LookPill {
		box = box.Place(box.W, min(box.H, 32), 0, 0.5)
	}
	ink, muted, weight := c.dress(t, b, box)
	in := box.InsetXY(buttonPad, 0)
	if b.Look == LookLink {
		in = box
	}
	if b.Running || b.Selected {
		in.CutLeft(6)
	}
	if b.Selected && t.enabled {
		c.tick(in.CutLeft(16).Place(14, 14, 0, 0.5), ink)
		in.CutLeft(6)
	}
	c.keyCapRight(&in, b.Key, ink)
	detail := b.Detail
	if !t.enabled {
		detail = b.Why
	}
	align := AlignLeft
	if (b.Look == LookPill || b.Look == LookDark) && detail == "" && b.Key == (Chord{}) {
		align = AlignCenter
	}
	cut := c.twoParts(b.ID, in, b.Label, detail,
		Style{Size: SizeBody, Weight: weight, Col: ink, Align: align}, Style{Size: SizeSmall, Col: muted})
	c.cut(t, cut)
	if cut {
		c.tip(t, b.Rect, b.Label, detail)
	}
	c.ring(t, box)
	return t.pressed
}

// dress draws the box of a button and returns the colours of its words.
func (c *Core) dress(t target, b Button, box Rect) (ink, muted Color, weight Weight) {
	p := c.Pal
	ink, muted, weight = p.Ink, p.Muted, SemiBold
	r := float32(radius)
	if b.Look == LookPill {
		r = box.H / 2
	}
	switch {
	case !t.enabled:
		ink, weight = p.Muted, Regular
		if b.Look != LookLink {
			c.StrokeDash(box.Inset(0.5), r, 1, p.Edge, Dash{On: 3, Off: 3})
		}
	case b.Look == LookLink:
		ink, muted = p.Accent, p.Accent
		if t.over {
			c.Segment(box.X, box.Y+box.H/2+SizeBody*0.62, box.X+TextWidth(b.Label, SizeBody, SemiBold, false), box.Y+box.H/2+SizeBody*0.62, 1, ink)
		}
	case b.Look == LookDark:
		ground := p.Dark
		if t.over {
			ground = mix(p.Dark, p.OnDark, darkHoverPart)
		}
		c.Fill(box, r, ground)
		ink, muted = p.OnDark, p.OnDark
	case b.Running:
		c.Fill(box, r, t.shade(c, p.Tint))
		c.Frame(box, r, 1.5, p.Accent)
		c.Fill(R(box.X+5, box.Y+7, 4, box.H-14), 2, p.Accent)
		muted = p.Accent
	case b.Selected:
		c.Fill(box, r, t.shade(c, p.Well))
		c.Frame(box, r, 2, p.Ink)
	default:
		c.Fill(box, r, t.shade(c, p.Well))
		edge := p.Edge
		if b.Look == LookPill {
			ink, edge = p.Accent, p.Accent
		}
		c.Frame(box, r, 1.2, edge)
	}
	return ink, muted, weight
}

// tick draws the sign of what is chosen.
func (c *Core) tick(r Rect, col Color) {
	c.BeginPath()
	c.To(r.X+r.W*0.14, r.Y+r.H*0.54)
	c.To(r.X+r.W*0.40, r.Y+r.H*0.80)
	c.To(r.X+r.W*0.88, r.Y+r.H*0.22)
	c.LineRound(2.2, col, false)
}
