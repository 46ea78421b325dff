// Handing keys to widgets: each key event is used once, by the widget that has
// the focus or by the one that owns the quick key.

package ui

// maxKeys is how many key events one frame tells apart.
const maxKeys = 64

func (c *Core) use(i int) {
	if i < maxKeys {
		c.keysUsed |= 1 << i
	}
}

func (c *Core) used(i int) bool { return i >= maxKeys || c.keysUsed&(1<<i) != 0 }

// take uses up the next unused event of a key, if the widget has the focus.
// Modifiers other than shift must match.
func (c *Core) take(id ID, key Key, mods Mods) (ev KeyEvent, ok bool) {
	if id == 0 || c.focus != id {
		return ev, false
	}
	for i, k := range c.in.Keys {
		if k.Key == key && k.Mods&^ModShift == mods && !c.used(i) {
			c.use(i)
			c.focusShown = true
			return k, true
		}
	}
	return ev, false
}

// Shortcut reports whether a quick key was pressed that no widget took. It rests
// while the focused widget needs that key for typing.
func (c *Core) Shortcut(ch Chord) bool {
	if ch.Key == KeyNone || c.layers.modal != c.layers.prevModal || c.claims(ch) {
		return false
	}
	for i, k := range c.in.Keys {
		if k.Key == ch.Key && k.Mods == ch.Mods && !k.Repeat && !c.used(i) {
			c.use(i)
			return true
		}
	}
	return false
}

// Pressed reports whether a key went down by itself in this frame, whoever else uses it: for keys that move through a whole
// screen while no widget wants them.
func (c *Core) Pressed(key Key) bool {
	for _, k := range c.in.Keys {
		if k.Key == key && k.Mods == 0 {
			return true
		}
	}
	return false
}

// PageKeys turns the pages of a scrolled area that holds only words, which the focus never enters.
func (c *Core) PageKeys(id ID, height float32) {
	if c.Typing() {
		return
	}
	if c.Pressed(KeyPageDown) {
		c.SetScroll(id, c.ScrollOffset(id)+0.8*height)
	}
	if c.Pressed(KeyPageUp) {
		c.SetScroll(id, c.ScrollOffset(id)-0.8*height)
	}
}

// claims reports whether the widget with the focus wants this key for itself.
func (c *Core) claims(ch Chord) bool {
	if c.focus == 0 || ch.Mods&(ModCtrl|ModAlt) != 0 {
		return c.typing == typesText && ch.Mods == ModCtrl &&
			(ch.Key == K('A').Key || ch.Key == K('C').Key || ch.Key == K('V').Key || ch.Key == K('X').Key)
	}
	switch {
	case ch.Key >= KeyF1 && ch.Key <= KeyF12:
		return false
	case ch.Key == KeyEscape:
		return c.entry.id != 0
	case ch.Key >= Key0 && ch.Key <= Key9, ch.Key == KeyComma, ch.Key == KeyPeriod, ch.Key == KeyMinus:
		return c.typing >= typesDigits
	case ch.Key == KeyBackspace:
		return c.typing >= typesDigits
	case ch.Key == KeyEnter, ch.Key == KeySpace, ch.Key >= KeyLeft && ch.Key <= KeyPageDown:
		return true
	}
	return c.typing == typesText
}

// wasReleased reports whether a key came up in this frame.
func (c *Core) wasReleased(k Key) bool {
	for _, u := range c.in.KeysUp {
		if u == k {
			return true
		}
	}
	return false
}
