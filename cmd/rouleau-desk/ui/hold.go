// The hold button, for what cannot be undone: keep it pressed, or press Enter
// (or its quick key) twice.

package ui

// HoldMS is how long a hold button must be kept pressed.
const HoldMS = 800

// armedMS is how long the first Enter waits for the second.
const armedMS = 4000

// holdState is the progress of the one hold that can go on at a time.
type holdState struct {
	id    ID
	ms    float32
	key   Key     // the key that is kept down, KeyNone for the pointer
	spent bool    // it has fired: let go before it can fire again
	armed float64 // clock at the first Enter, 0 for none
	seen  bool
}

// HoldButton is an act that cannot be undone.
type HoldButton struct {
	ID     ID
	Rect   Rect
	Label  string
	Detail string
	Key    Chord
	Why    string
}

// Hold draws a hold button and reports, once, that the hold is complete.
func (c *Core) Hold(b HoldButton) (done bool) {
	t := c.place(b.ID, b.Rect, KindHold, b.Label, b.Why)
	h := &c.hold
	if t.enabled {
		done = c.holdOn(t, b)
	} else if h.id == b.ID {
		*h = holdState{}
	}
	if c.Shortcut(b.Key) {
		c.Focus(b.ID)
		c.focusShown = true
		if t.enabled && c.arm(b.ID) {
			done = true
		}
	}
	if h.id == b.ID {
		h.seen = true
	}
	c.drawHold(t, b)
	return done
}

func (c *Core) holdOn(t target, b HoldButton) (done bool) {
	h := &c.hold
	if t.began {
		*h = holdState{id: b.ID}
	}
	for _, k := range [...]Key{KeyEnter, KeySpace} {
		ev, ok := c.take(b.ID, k, 0)
		if !ok || ev.Repeat {
			continue
		}
		if c.arm(b.ID) {
			return true
		}
		h.key = k
	}
	if h.id != b.ID {
		return false
	}
	if h.key != KeyNone && c.wasReleased(h.key) {
		h.key, h.ms, h.spent = KeyNone, 0, false
	}
	down := h.key != KeyNone || (t.held && t.over)
	if !down {
		h.ms, h.spent = 0, false
		if h.armed == 0 || c.clockMS-h.armed > armedMS || !t.focused {
			*h = holdState{}
		}
		return false
	}
	if h.spent {
		return false
	}
	h.ms += min(max(c.in.DeltaMS, 0), maxDeltaMS)
	if h.ms < HoldMS {
		return false
	}
	h.spent, h.armed = true, 0
	return true
}

// arm is one press of a key: the second within a while completes the hold.
func (c *Core) arm(id ID) (done bool) {
	h := &c.hold
	if h.id == id && h.armed != 0 && c.clockMS-h.armed <= armedMS {
		*h = holdState{}
		return true
	}
	*h = holdState{id: id, armed: max(c.clockMS, 1)}
	return false
}

func (c *Core) drawHold(t target, b HoldButton) {
	p := c.Pal
	ink, word := p.Ink, b.Detail
	if word == "" {
		word = c.Words.HoldToConfirm
	}
	if !t.enabled {
		ink, word = p.Muted, b.Why
		c.StrokeDash(b.Rect.Inset(0.5), radius, 1, p.Edge, Dash{On: 3, Off: 3})
	} else {
		c.Fill(b.Rect, radius, t.shade(c, p.Well))
		mine := c.hold.id == b.ID
		if mine && c.hold.ms > 0 {
			part := min(c.hold.ms/HoldMS, 1)
			c.PushClip(R(b.Rect.X, b.Rect.Y, b.Rect.W*part, b.Rect.H))
			c.Fill(b.Rect, radius, mix(p.Well, p.Ink, holdPart))
			c.PopClip()
		}
		// A double edge tells it from a button that acts at once.
		c.Frame(b.Rect, radius, 1.5, p.Ink)
		c.Frame(b.Rect.Inset(3), radius-2, 1, p.Edge)
		if mine && c.hold.armed != 0 && c.hold.key == KeyNone {
			word = c.Words.AgainToConfirm
		}
	}
	c.set(t, word, false)
	in := b.Rect.InsetXY(holdPad, 0)
	c.keyCapRight(&in, b.Key, ink)
	if c.twoParts(b.ID, in, b.Label, word, Style{Weight: SemiBold, Col: ink}, Style{Size: SizeSmall, Col: p.Muted}) {
		c.cut(t, true)
		c.tip(t, b.Rect, b.Label, word)
	}
	c.ring(t, b.Rect)
}
