// The home screen as a whole: what stays from frame to frame, the cautions, and the parts of the window.

package home

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

// Least size of the window, in logical pixels.
const (
	LeastWidth  = 900
	LeastHeight = 600
)

// Home is the state of the screens. It holds nothing of any file.
type Home struct {
	cautioned bool // the cautions were read since the start
	key       string
	seek      int // frames in which the chosen case is brought into view
	dialog    dialog
	who       string
	whoWhy    string // why the last try was turned away
	pending   *Act   // to be done once it is known who plays
	assess    bool
	seed      int // which of the three ways
	digits    string
	path      string
	heights   map[ui.ID]float32
	acts      []Act
}

type dialog uint8

const (
	noDialog dialog = iota
	whoDialog
	settingsDialog
	openDialog
	unfinishedDialog
)

// The ways to a seed.
const (
	sameSeed = iota
	newSeed
	exactSeed
)

// New makes the screens as they are at a start: the cautions first.
func New() *Home { return &Home{heights: map[ui.ID]float32{}} }

// Select chooses a case of the list and brings it into view.
func (h *Home) Select(key string) { h.key, h.seek = key, seekFrames }

// ShowCase is Select, with dialogs closed: a file was opened.
func (h *Home) ShowCase(key string) {
	h.Select(key)
	h.dialog = noDialog
}

// seekFrames is how long the list looks for the case to show: only after a frame does it know how long it has become.
const seekFrames = 3

// Cautioned tells whether the cautions were read since the start.
func (h *Home) Cautioned() bool { return h.cautioned }

// Caution notes that the cautions were read on another screen.
func (h *Home) Caution() { h.cautioned = true }

// Frame draws the screen and returns what the person asked for. The slice is good until the next frame.
func (h *Home) Frame(c *ui.Core, v *View) []Act {
	h.acts = h.acts[:0]
	window := ui.Rect{W: c.Size().X, H: c.Size().Y}
	switch {
	case window.W < LeastWidth || window.H < LeastHeight:
		h.tooSmall(c, v, window)
	case !h.cautioned:
		h.cautions(c, window)
	default:
		h.home(c, v, window)
	}
	return h.acts
}

func (h *Home) do(a Act) { h.acts = append(h.acts, a) }

// tooSmall says so, and gives the way back where the scale is what makes the window small.
func (h *Home) tooSmall(c *ui.Core, v *View, window ui.Rect) {
	in := window.Inset(24)
	text := words.Say("window.too_small", LeastWidth, LeastHeight)
	c.Label(ui.Label{ID: ui.Name("too small"), Rect: in.CutTop(c.LabelHeight(text, in.W, ui.Style{})), Text: text})
	if v.Settings.Scale <= 1 {
		return
	}
	in.CutTop(12)
	if c.Button(ui.Button{ID: ui.Name("scale back"), Rect: in.CutTop(44).Place(min(in.W, 280), 44, 0, 0), Label: words.Say("home.scale_back"), Look: ui.LookDark, Key: ui.Chord{Key: ui.KeyEnter}}) {
		s := v.Settings
		s.Scale = 1
		h.do(Act{Do: SaveSettings, Settings: s})
	}
}

// cautions come first at every start, and can be read again from the foot of home.
func (h *Home) cautions(c *ui.Core, window ui.Rect) {
	r := window.Place(min(window.W-64, 760), min(window.H-64, 470), 0.5, 0.42)
	in := c.Panel(ui.Panel{ID: ui.Name("cautions"), Rect: r}).Inset(16)
	vignette(c, ui.R(in.Right()-222, in.Y-4, 222, 76))
	in.CutTop(30)
	c.Text(in.CutTop(38), words.Say("first.name"), ui.Style{Size: 28, Weight: ui.SemiBold})
	in.CutTop(14)
	c.Label(ui.Label{Rect: in.CutTop(46), Text: words.Say("first.job"), Style: ui.Style{Size: 15, Col: c.Pal.Muted}})
	in.CutTop(10)
	foot := in.CutBottom(46)
	in.CutBottom(12)
	for _, k := range [...]string{"first.model", "first.not_treating", "first.not_instructions", "first.simulated"} {
		st := ui.Style{Size: 16}
		row := in.CutTop(c.LabelHeight(words.Say(k), in.W-26, st))
		in.CutTop(16)
		mark := row.CutLeft(26)
		c.Fill(ui.R(mark.X+4, mark.Y+7, 8, 8), 1, c.Pal.Ink)
		c.Label(ui.Label{Rect: row, Text: words.Say(k), Style: st})
	}
	id := ui.Name("home understood")
	if c.Focused() == 0 {
		c.Focus(id)
	}
	if c.Button(ui.Button{ID: id, Rect: foot.CutRight(min(foot.W, 300)), Label: words.Say("home.understood"), Key: ui.Chord{Key: ui.KeyEnter}, Look: ui.LookDark}) {
		h.cautioned = true
		c.Focus(0)
	}
}

const (
	topHeight  = 60
	footHeight = 44
	gap        = 16

	mostReadable = 1080 // wider lines are hard to read
)

func (h *Home) home(c *ui.Core, v *View, window ui.Rect) {
	top := window.CutTop(topHeight)
	h.topBar(c, v, top.InsetXY(gap, 9))
	c.Segment(0, top.Bottom()+0.5, window.W, top.Bottom()+0.5, 1, c.Pal.Line)
	foot := window.CutBottom(footHeight)
	c.Segment(0, foot.Y+0.5, window.W, foot.Y+0.5, 1, c.Pal.Line)
	window.CutTop(1)
	h.notices(c, v, &window)
	h.strip(c, v, &window)
	in := window.InsetXY(gap, 0)
	list := in.CutLeft(min(max(in.W*0.36, 310), 470))
	in.CutLeft(gap)
	in.W = min(in.W, mostReadable)
	chosen := h.chosen(v)
	h.list(c, v, list)
	if chosen != nil {
		h.chosenCase(c, v, chosen, in)
	}
	h.foot(c, foot.InsetXY(gap, 2))
	h.dialogs(c, v)
}

// chosen is the case of the list that is chosen: the first one until the person chooses.
func (h *Home) chosen(v *View) *Case {
	for i := range v.Cases {
		if v.Cases[i].Key == h.key {
			return &v.Cases[i]
		}
	}
	if len(v.Cases) == 0 {
		return nil
	}
	h.key = v.Cases[0].Key
	return &v.Cases[0]
}

func (h *Home) topBar(c *ui.Core, v *View, r ui.Rect) {
	name := ui.Style{Size: 24, Weight: ui.SemiBold}
	c.Text(r.CutLeft(name.Width(words.Say("first.name"))+2), words.Say("first.name"), name)
	button := func(id, label string, key rune, to dialog) {
		w := ui.TextWidth(label, ui.SizeBody, ui.SemiBold, false) + 62
		if c.Button(ui.Button{ID: ui.Name(id), Rect: r.CutRight(w), Label: label, Key: ui.K(key)}) {
			h.show(c, to, v)
		}
		r.CutRight(8)
	}
	who := words.Say("home.who_unknown")
	if v.Settings.Who != "" {
		who = words.Say("home.who_is", v.Settings.Who)
	}
	button("home settings", words.Say("home.settings"), 'S', settingsDialog)
	button("home open", words.Say("home.open"), 'O', openDialog)
	button("home who", who, 'W', whoDialog)
	label := words.Say("desk_book.to_book")
	w := ui.TextWidth(label, ui.SizeBody, ui.SemiBold, false) + 62
	if c.Button(ui.Button{ID: ui.Name("home book"), Rect: r.CutRight(w), Label: label, Key: ui.K('T')}) {
		h.do(Act{Do: OpenBook})
	}
}

// show opens a dialog.
func (h *Home) show(c *ui.Core, d dialog, v *View) {
	h.dialog = d
	switch d {
	case whoDialog:
		h.who, h.whoWhy = v.Settings.Who, ""
	case openDialog:
		h.path = ""
		h.do(Act{Do: Look})
	}
}

// foot is the short form of the cautions, with the way to all of them, and the way out.
func (h *Home) foot(c *ui.Core, r ui.Rect) {
	link := func(id, label string) bool {
		w := max(44, ui.TextWidth(label, ui.SizeBody, ui.SemiBold, false)+2)
		pressed := c.Button(ui.Button{ID: ui.Name(id), Rect: r.CutRight(w), Label: label, Look: ui.LookLink})
		r.CutRight(20)
		return pressed
	}
	if link("home close", words.Say("home.close")) {
		h.do(Act{Do: Close})
	}
	if link("home cautions", words.Say("home.cautions")) {
		h.cautioned = false
		c.Focus(0)
	}
	c.Text(r, words.Say("first.short"), ui.Style{Size: 13, Col: c.Pal.Muted})
}
