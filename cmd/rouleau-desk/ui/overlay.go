// Overlays: panels that lie above the screen. A modal one keeps pointer, focus
// and quick keys to itself until it is no longer called.

package ui

type layers struct {
	depth       int
	modal       ID // the modal overlay being drawn
	topModal    ID // the newest modal overlay of this frame
	prevModal   ID // that of the last frame
	focusBefore ID // where the focus was when a modal overlay opened
	stack       []layer
}

// layer is what has to come back when an overlay ends.
type layer struct {
	l      *List
	modal  ID
	clips  []Rect
	scroll []*scrollState
}

func (l *layers) begin() {
	l.depth, l.modal = 0, 0
	l.prevModal, l.topModal = l.topModal, 0
	l.stack = l.stack[:0]
}

// BeginOverlay starts drawing above the screen. With modal set the rest of the
// window is veiled and asleep.
func (c *Core) BeginOverlay(id ID, r Rect, modal bool) {
	c.layers.stack = append(c.layers.stack, layer{c.l, c.layers.modal, c.clips, c.scrollIn})
	c.l = &c.over
	c.layers.depth++
	window := Rect{W: c.in.Size.X, H: c.in.Size.Y}
	c.clips = append(c.clips[len(c.clips):], window)
	c.scrollIn = c.scrollIn[len(c.scrollIn):]
	block := r
	if modal {
		c.layers.modal, c.layers.topModal = id, id
		block = window
		veil := c.Pal.Ink
		veil.A = 90
		c.Fill(window, 0, veil)
	}
	c.l.Marks = append(c.l.Marks, Mark{ID: id, Rect: block, Shown: block, Kind: KindOverlay, Focus: -1, Layer: c.layers.depth})
}

// EndOverlay goes back to drawing below.
func (c *Core) EndOverlay() {
	n := len(c.layers.stack) - 1
	s := &c.layers.stack[n]
	c.l, c.layers.modal, c.clips, c.scrollIn = s.l, s.modal, s.clips, s.scroll
	c.layers.stack = c.layers.stack[:n]
	c.layers.depth--
}
