// The core: what stays from frame to frame (focus, what is pressed, scroll,
// text being edited), and the beginning and end of a frame.

package ui

import "math"

// maxDeltaMS bounds the time one frame may add to the cosmetic clock, so that a
// stalled window cannot complete a hold or jump an animation.
const maxDeltaMS = 100

// Core is the state of all widgets of one window. Use New.
type Core struct {
	Pal   *Palette
	Words Words
	Still bool // reduced motion: nothing flashes, blinks or slides

	in      Input
	lists   [2]List
	turn    int
	over    List  // overlays of this frame, drawn above the rest
	l       *List // where drawing goes now
	clockMS float64

	focus      ID
	focusShown bool // the ring is drawn: the last move came from the keyboard
	focusIndex int
	focusMoved bool // the focus came here by key in this frame: scrolled areas follow
	focusNext  bool // it was moved while widgets were called: they follow in the next frame
	order      []stop
	prevOrder  []stop
	tabsLate   int // Tab presses that wait for the next frame

	under   ID // the topmost thing below the pointer
	wheelOn ID // the topmost thing below the pointer that takes the wheel
	active  ID // what the pointer holds
	seen    bool
	pressed Vec // where the pointer went down
	hoverID ID
	hoverMS float64

	touchID   int
	touching  bool
	fromTouch bool
	pinchIDs  [2]int
	pinchDist float32
	pinch     float32

	keysUsed  uint64
	runesUsed bool
	wheelUsed bool
	typing    typing // what the focused widget takes from the keyboard
	typingNow typing

	layers    layers
	clips     []Rect
	scrolls   map[ID]*scrollState
	scrollIn  []*scrollState
	hold      holdState
	drag      dragState
	entry     entryState
	edit      editState
	seeking   seekState
	pad       padState
	clipboard string
	clipOut   bool
	overText  bool
	tipText   string
	tipMore   string
	tipRect   Rect
	nums      map[numKey]string
	clocks    map[int64]string
	chart     chartState
	caps      map[Chord]string
	path      int32
}

// typing is how much of the keyboard the focused widget takes for itself; quick
// keys on those keys then rest.
type typing uint8

const (
	typesNothing typing = iota
	typesDigits
	typesText
)

// New makes a core with a palette.
func New(p *Palette) *Core {
	return &Core{Pal: p, scrolls: map[ID]*scrollState{}, nums: map[numKey]string{}, clocks: map[int64]string{}, caps: map[Chord]string{}}
}

// Begin starts a frame. Between Begin and End every widget of the screen is
// called, in the order the Tab key should visit them.
func (c *Core) Begin(in Input) {
	c.in = in
	c.clockMS += float64(min(max(in.DeltaMS, 0), maxDeltaMS))
	c.touchToPointer()
	c.padInput()
	c.keysUsed, c.runesUsed, c.wheelUsed, c.overText = 0, false, false, false
	c.typingNow, c.seen = typesNothing, false
	c.focusMoved, c.focusNext = c.focusNext, false
	c.tipText, c.tipMore = "", ""

	prev := &c.lists[c.turn]
	c.turn = 1 - c.turn
	c.l = &c.lists[c.turn]
	c.l.Reset()
	c.over.Reset()
	c.l.Size, c.l.Scale, c.l.Ground = in.Size, in.Scale, c.Pal.Ground
	c.clips = append(c.clips[:0], Rect{W: in.Size.X, H: in.Size.Y})
	c.scrollIn = c.scrollIn[:0]
	c.layers.begin()

	c.findUnder(prev)
	c.order, c.prevOrder = c.prevOrder[:0], c.order
	c.moveFocus()
	if c.in.Pressed {
		c.pressed = c.in.Pointer
		c.focusShown = false
		if c.under == 0 {
			c.focus = 0
		}
	}
}

// findUnder looks in the last frame for what lies under the pointer: the last
// drawn lies on top.
func (c *Core) findUnder(prev *List) {
	c.under, c.wheelOn = 0, 0
	if !c.in.PointerIn {
		return
	}
	for i := len(prev.Marks) - 1; i >= 0; i-- {
		m := &prev.Marks[i]
		if m.ID == 0 || m.Owner != 0 || !m.Shown.Has(c.in.Pointer) {
			continue
		}
		switch m.Kind {
		case KindPanel, KindBadge, KindKeyCap:
			continue
		case KindScroll, KindChart:
			if c.wheelOn == 0 {
				c.wheelOn = m.ID
			}
		}
		if c.under == 0 {
			c.under = m.ID
		}
		if m.Kind == KindOverlay {
			break
		}
	}
	if c.under != c.hoverID {
		c.hoverID, c.hoverMS = c.under, c.clockMS
	}
}

// End finishes the frame. It returns the list to draw and whether it differs
// from that of the frame before; if not, nothing need be drawn.
func (c *Core) End() (list *List, changed bool) {
	c.drawPad()
	c.endFocus()
	if !c.seen || !c.in.Down {
		// The holder is gone, or the pointer is up and all have been told.
		c.active = 0
	}
	if c.entry.id != c.focus {
		c.entry = entryState{}
	}
	if c.hold.id != 0 && !c.hold.seen {
		c.hold = holdState{}
	}
	c.hold.seen = false
	c.typing = c.typingNow
	c.drawTip()
	list = &c.lists[c.turn]
	list.append(&c.over)
	return list, !list.Equal(&c.lists[1-c.turn])
}

// Input is the input of this frame, for screens that draw something of their own.
func (c *Core) Input() *Input { return &c.in }

// Size is the size of the window in logical pixels.
func (c *Core) Size() Vec { return c.in.Size }

// stepMS is how often what only moves for the eye does so: between its steps a frame stays as it was, and nothing is drawn.
const stepMS = 1000.0 / 30

// ClockMS is the cosmetic clock, for flashing and moving dashes.
func (c *Core) ClockMS() float64 { return math.Floor(c.clockMS/stepMS) * stepMS }

// Pinch is how much two fingers moved apart in this frame, 1 for not at all.
func (c *Core) Pinch() float32 { return c.pinch }

// OverText reports whether the pointer is over a text that can be edited, for
// the shape of the pointer.
func (c *Core) OverText() bool { return c.overText }

// SetClipboard gives text to the clipboard, as a cut or copy does.
func (c *Core) SetClipboard(s string) { c.clipboard, c.clipOut = s, true }

// TakeClipboard returns text that was cut or copied since it was last asked, for
// a window that can hand it to the system.
func (c *Core) TakeClipboard() (s string, ok bool) {
	ok, c.clipOut = c.clipOut, false
	return c.clipboard, ok
}
