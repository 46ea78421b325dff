// Keyboard focus: the order of stops is the order of calls; Tab and Shift+Tab
// walk it. An open modal overlay keeps the walk inside itself.

package ui

// stop is one place the focus can rest.
type stop struct {
	id    ID
	modal ID // the modal overlay it stands in, 0 for none
}

// Focus puts the keyboard focus on a widget.
func (c *Core) Focus(id ID) {
	if c.focus != id {
		c.focus, c.focusNext = id, true
	}
}

// Focused is the widget that has the keyboard focus, 0 if none.
func (c *Core) Focused() ID { return c.focus }

// Typing reports whether the focused widget takes letters, so that a screen's
// own quick keys should rest.
func (c *Core) Typing() bool { return c.typing == typesText }

// moveFocus applies the Tab keys of this frame over last frame's order, before
// any widget looks at the focus. Tabs that arrive together with other keys wait
// one frame, so that the other keys still reach the widget they were meant for.
func (c *Core) moveFocus() {
	tabs, others := c.tabsLate, len(c.in.Runes)
	c.tabsLate = 0
	for i, k := range c.in.Keys {
		if k.Key == KeyTab && k.Mods&(ModCtrl|ModAlt) == 0 {
			if k.Mods&ModShift != 0 {
				tabs--
			} else {
				tabs++
			}
			c.use(i)
		} else {
			others++
		}
	}
	if tabs == 0 {
		return
	}
	if others > 0 {
		c.tabsLate = tabs
		return
	}
	c.focusShown, c.focusMoved = true, true
	modal := c.layers.prevModal
	n, at := 0, -1
	for _, s := range c.prevOrder {
		if s.modal != modal {
			continue
		}
		if s.id == c.focus {
			at = n
		}
		n++
	}
	if n == 0 {
		return
	}
	switch {
	case at >= 0:
		at += tabs
	case tabs > 0:
		at = tabs - 1
	default:
		at = n + tabs
	}
	at = ((at % n) + n) % n
	for _, s := range c.prevOrder {
		if s.modal != modal {
			continue
		}
		if at == 0 {
			c.focus = s.id
			return
		}
		at--
	}
}

// addStop puts a widget into the order of focus and returns its place.
func (c *Core) addStop(id ID) int {
	c.order = append(c.order, stop{id, c.layers.modal})
	return len(c.order) - 1
}

// endFocus moves the focus into a modal overlay that has opened, and back to
// where it was when it has closed.
func (c *Core) endFocus() {
	l := &c.layers
	if l.topModal == l.prevModal {
		return
	}
	if l.topModal == 0 {
		c.focus = l.focusBefore
		return
	}
	if l.prevModal == 0 {
		l.focusBefore = c.focus
	}
	for _, s := range c.order {
		if s.modal == l.topModal {
			if s.id == c.focus {
				return
			}
		}
	}
	for _, s := range c.order {
		if s.modal == l.topModal {
			c.focus = s.id
			return
		}
	}
	c.focus = 0
}

// ring draws the dotted focus ring round a widget that has the focus.
func (c *Core) ring(t target, r Rect) {
	if t.ring {
		c.StrokeDash(r.Inset(-3), 8, 2, c.Pal.Focus, Dash{On: 2, Off: 2.5})
	}
}
