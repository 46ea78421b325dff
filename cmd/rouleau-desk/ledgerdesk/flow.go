// A column of words and controls in a scrolled area: each takes the height it needs, one below the other.

package ledgerdesk

import "rouleau/cmd/rouleau-desk/ui"

// column is such an area while it is drawn.
type column struct {
	c    *ui.Core
	d    *Desk
	id   ui.ID
	x, y float32
	w    float32
	top  float32
	view ui.Rect
}

// ringRoom keeps focus rings from being cut at the edges of an area.
const ringRoom = 5

// reading begins an area in which there is more to read than to do: the page keys turn it unless a list has them. There is one on a
// page.
func (d *Desk) reading(c *ui.Core, name string, r ui.Rect) *column {
	if d.dialog == noDialog && !d.inList(c) {
		c.PageKeys(columnID(name), r.H)
	}
	return d.column(c, name, r)
}

func columnID(name string) ui.ID { return ui.Name("book column").With(name) }

// column begins a scrolled area that remembers its height from frame to frame.
func (d *Desk) column(c *ui.Core, name string, r ui.Rect) *column {
	id := columnID(name)
	r = ui.R(r.X-ringRoom, r.Y, r.W+2*ringRoom, r.H)
	area := c.BeginScroll(ui.Scroll{ID: id, Rect: r, Content: d.heights[id]})
	return &column{c: c, d: d, id: id, x: area.X + ringRoom, y: area.Y + 2, w: min(area.W, r.W-16) - 2*ringRoom, top: area.Y, view: r}
}

// end ends it.
func (f *column) end() {
	f.d.heights[f.id] = f.y - f.top + 4
	f.c.EndScroll()
}

// box takes a strip of a height.
func (f *column) box(h float32) ui.Rect {
	r := ui.R(f.x, f.y, f.w, h)
	f.y += h
	return r
}

func (f *column) gap(h float32) { f.y += h }

// far says whether a strip of a height that comes next is so far out of sight that it need not be drawn.
func (f *column) far(h float32) bool {
	return f.y+h < f.view.Y-f.view.H || f.y > f.view.Bottom()+f.view.H
}

// say writes words in as many lines as they take; "" takes no room.
func (f *column) say(text string, st ui.Style) {
	if text == "" {
		return
	}
	h := f.c.LabelHeight(text, f.w, st)
	if r := f.box(h); !f.far(0) {
		f.c.Label(ui.Label{Rect: r, Text: text, Style: st})
	}
}

func (f *column) head(text string) {
	f.say(text, ui.Style{Size: ui.SizeHead, Weight: ui.SemiBold})
	f.gap(6)
}

func (f *column) strong(text string) { f.say(text, ui.Style{Weight: ui.SemiBold}) }

func (f *column) muted(text string) { f.say(text, ui.Style{Size: 13, Col: f.c.Pal.Muted}) }

// pair is a name at the left with what belongs to it at the right.
func (f *column) pair(name, text string) {
	if text == "" {
		return
	}
	left := min(f.w*0.36, 190)
	ns, ts := ui.Style{Size: 13, Col: f.c.Pal.Muted}, ui.Style{}
	hn, ht := f.c.LabelHeight(name, left-10, ns), f.c.LabelHeight(text, f.w-left, ts)
	r := f.box(max(hn, ht) + 4)
	f.c.Label(ui.Label{Rect: ui.R(r.X, r.Y+1, left-10, hn), Text: name, Style: ns})
	f.c.Label(ui.Label{Rect: ui.R(r.X+left, r.Y, f.w-left, ht), Text: text, Style: ts})
}

// bullet is one of several.
func (f *column) bullet(text string) {
	st := ui.Style{}
	h := f.c.LabelHeight(text, f.w-18, st)
	r := f.box(h + 3)
	f.c.Fill(ui.R(r.X+4, r.Y+7, 5, 5), 1, f.c.Pal.Muted)
	f.c.Label(ui.Label{Rect: ui.R(r.X+18, r.Y, f.w-18, h), Text: text, Style: st})
}

// warn is something to be looked at before going on, set off by a sign and a frame: it is no alarm.
func (f *column) warn(text string) {
	if text == "" {
		return
	}
	st := ui.Style{Size: 13}
	h := f.c.LabelHeight(text, f.w-48, st)
	r := f.box(max(h+14, 36))
	f.gap(6)
	f.c.Fill(r, 6, f.c.Pal.Shade)
	f.c.Frame(r, 6, 1, f.c.Pal.Edge)
	exclaim(f.c, ui.R(r.X+10, r.Y+(r.H-20)/2, 20, 20))
	f.c.Label(ui.Label{Rect: ui.R(r.X+40, r.Y+(r.H-h)/2, f.w-48, h), Text: text, Style: st})
}

func (f *column) rule() {
	f.gap(5)
	f.c.Segment(f.x, f.y, f.x+f.w, f.y, 1, f.c.Pal.Line)
	f.gap(7)
}

// field is a line that can be written.
func (f *column) field(t ui.TextField) (text string, entered bool) {
	t.Rect = f.box(ui.TextFieldHeight)
	text, entered = f.c.TextField(t)
	f.gap(8)
	return text, entered
}

// button is one as high as its words need.
func (f *column) button(b ui.Button) bool {
	b.Rect = f.box(max(44, f.c.ButtonHeight(b, f.w)))
	f.gap(8)
	return f.c.Button(b)
}

// exclaim is the sign of something to be read, in ink.
func exclaim(c *ui.Core, r ui.Rect) {
	c.Circle(r, 1.6, c.Pal.Ink)
	x := r.X + r.W/2
	c.Segment(x, r.Y+5, x, r.Y+r.H*0.58, 2, c.Pal.Ink)
	c.Disc(ui.R(x-1.3, r.Y+r.H*0.68, 2.6, 2.6), c.Pal.Ink)
}

// sign tells how something stands by shape: a filled box with a tick where it holds, a half-filled one where it is due again, an
// empty one where it was never shown.
func sign(c *ui.Core, r ui.Rect, holds, half bool) {
	switch {
	case holds:
		c.Fill(r, 2, c.Pal.Ink)
		c.BeginPath()
		c.To(r.X+r.W*0.2, r.Y+r.H*0.54)
		c.To(r.X+r.W*0.42, r.Y+r.H*0.76)
		c.To(r.X+r.W*0.82, r.Y+r.H*0.26)
		c.LineRound(1.6, c.Pal.OnDark, false)
	case half:
		c.Frame(r, 2, 1.4, c.Pal.Ink)
		c.Fill(ui.R(r.X, r.Y+r.H/2, r.W, r.H/2), 1, c.Pal.Ink)
	default:
		c.Frame(r, 2, 1.4, c.Pal.Edge)
	}
}
