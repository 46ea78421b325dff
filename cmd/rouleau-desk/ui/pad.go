// Keys on the glass: where a finger chose something that is typed into, the keys to type it with appear, so that touch
// alone suffices. What is pressed on them reaches the widgets as input of the next frame, as if from a keyboard.

package ui

// padState is what the keys on the glass remember.
type padState struct {
	finger bool // the last press came from a finger
	shift  bool // the next letter is a capital
	keys   []KeyEvent
	runes  []rune
}

const (
	padKey = 44 // height of a key
	padGap = 4
)

// Signs on the keys that stand for a named key; all others are the letter they write.
const (
	padBack  = '\b'
	padEnter = '\n'
	padHide  = '\x1b'
	padShift = '\x0e'
)

var (
	padText   = [...]string{"1234567890\b", "qwertyuiop/", "asdfghjkl-_", "\x0ezxcvbnm,.:", "\x1b \n"}
	padDigits = [...]string{"789\b", "456\x1b", "123.", "0-\n"}
	idPad     = Name("keys on the glass")
)

// padInput adds what was pressed on the glass to this frame's input, and notes what the person works with.
func (c *Core) padInput() {
	p := &c.pad
	switch {
	case len(c.in.Keys) > 0 || len(c.in.Runes) > 0 || c.in.Pressed && !c.fromTouch:
		p.finger = false
	case c.in.Pressed:
		p.finger = true
	}
	if len(p.keys)+len(p.runes) == 0 {
		return
	}
	c.in.Keys, c.in.Runes = append(p.keys, c.in.Keys...), append(p.runes, c.in.Runes...)
	p.keys, p.runes = p.keys[:0], p.runes[:0]
}

// drawPad shows the keys while they are wanted, at the end of the window that the typed text is not in.
func (c *Core) drawPad() {
	rows := padText[:]
	switch {
	case !c.pad.finger || c.focus == 0:
		return
	case c.entry.id == c.focus:
		rows = padDigits[:]
	case c.edit.id != c.focus:
		return
	}
	at, size := c.markOf(c.focus), c.in.Size
	wide := min(size.X-16, 700)
	if len(rows) == len(padDigits) {
		wide = 4*64 + 5*padGap
	}
	high := float32(len(rows))*(padKey+padGap) + padGap
	box := R((size.X-wide)/2, size.Y-high-8, wide, high)
	if at.Y+at.H/2 > size.Y/2 {
		box.Y = 8
	}
	c.BeginOverlay(idPad, box, false)
	c.Fill(box, radius, c.Pal.Panel)
	c.Frame(box, radius, 1.5, c.Pal.Ink)
	in := box.Inset(padGap)
	for i, row := range rows {
		c.padRow(in.Row(i, len(rows), padGap), row)
	}
	c.EndOverlay()
}

// markOf is where a widget stands in this frame.
func (c *Core) markOf(id ID) Rect {
	for _, l := range [...]*List{&c.over, &c.lists[c.turn]} {
		for i := range l.Marks {
			if l.Marks[i].ID == id {
				return l.Marks[i].Rect
			}
		}
	}
	return Rect{}
}

// padRow is one row of keys, each of the same share but the space bar, which takes three.
func (c *Core) padRow(r Rect, keys string) {
	share := func(k rune) float32 {
		if k == ' ' {
			return 3
		}
		return 1
	}
	all := float32(0)
	for _, k := range keys {
		all += share(k)
	}
	unit := (r.W + padGap) / all
	for _, k := range keys {
		box := r.CutLeft(share(k)*unit - padGap)
		r.CutLeft(padGap)
		if c.padPressed(idPad.At(int(k)), box, c.padName(k)) {
			c.padType(k)
		}
	}
}

func (c *Core) padName(k rune) string {
	switch k {
	case padBack:
		return c.Words.Backspace
	case padEnter:
		return c.Words.Enter
	case padHide:
		return c.Words.Escape
	case padShift:
		return c.Words.Shift
	case ' ':
		return c.Words.Space
	}
	if c.pad.shift && k >= 'a' && k <= 'z' {
		k += 'A' - 'a'
	}
	return string(k)
}

// padPressed is a key that is pressed without taking the focus from what is typed into.
func (c *Core) padPressed(id ID, box Rect, name string) bool {
	over := c.under == id
	if c.in.Pressed && over {
		c.active = id
	}
	held := c.active == id
	c.seen = c.seen || held
	c.l.Marks = append(c.l.Marks, Mark{ID: id, Rect: box, Shown: box.Intersect(c.clip()), Kind: KindButton, Label: name, Enabled: true, Focus: -1, Layer: c.layers.depth})
	t := target{id: id, mark: len(c.l.Marks) - 1, enabled: true, over: over, held: held && c.in.Down}
	c.Fill(box, radius, t.shade(c, c.Pal.Well))
	c.Frame(box, radius, 1.2, c.Pal.Edge)
	c.cut(t, c.inner(id, box.InsetXY(2, 0), name, Style{Weight: SemiBold, Align: AlignCenter}))
	return held && over && c.in.Released
}

func (c *Core) padType(k rune) {
	p := &c.pad
	key := func(k Key) { p.keys = append(p.keys, KeyEvent{Key: k}) }
	switch k {
	case padBack:
		key(KeyBackspace)
	case padEnter:
		key(KeyEnter)
		p.finger = c.entry.id == c.focus // a number that is refused can be mended
	case padHide:
		if c.entry.id == c.focus {
			key(KeyEscape)
		}
		p.finger = false
	case padShift:
		p.shift = !p.shift
		return
	default:
		p.runes = append(p.runes, []rune(c.padName(k))...)
	}
	p.shift = false
}
