// Before the verdict: the person who played marks how each objective went, with digits and arrows or the pointer, and says in a
// line what they would do otherwise.

package bench

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

// own is what was marked so far.
type own struct {
	begun     bool
	at        int   // the row that digits and arrows are for
	follow    bool  // it is to be brought into view
	marks     []int // a choice for each row, counted from 1; 0 for none
	otherwise string
}

const (
	mostMarking = 1180 // width of the page
	mostLine    = 400  // characters of the line, as many as an attempt keeps
	leastChoice = 500  // width of the choices of a row
	mostChoice  = 640
	rowGap      = 4
)

func ownRow(i int) ui.ID { return ui.Name("own mark").At(i) }

var (
	ownLine = ui.Name("own line")
	ownArea = ui.Name("own marks")
)

// marking is the page. Nothing of the verdict stands on it.
func (d *Desk) marking(c *ui.Core, v *View, window ui.Rect) {
	s, o := &v.Result.Self, &d.end.own
	if !o.begun || len(o.marks) != len(s.Rows) {
		*o = own{begun: true, marks: make([]int, len(s.Rows))}
		c.Focus(0)
	}
	in := window.InsetXY(20, 12)
	in = in.Place(min(in.W, mostMarking), in.H, 0.5, 0)
	d.markingHead(c, v, &in)
	foot := in.CutBottom(d.markingFootHeight(c, s, in.W))
	in.CutBottom(8)
	then := d.markingKeys(c)
	if next := d.markingRows(c, s, in); next != 0 {
		then = next
	}
	if next := d.markingFoot(c, s, foot); next != 0 {
		then = next
	}
	if then != 0 { // only now, so that a key moves no more than once
		c.Focus(then)
	}
}

// left is how many objectives have no mark yet, and the first of them.
func (o *own) left() (n, first int) {
	for i := len(o.marks) - 1; i >= 0; i-- {
		if o.marks[i] == 0 {
			n, first = n+1, i
		}
	}
	return n, first
}

// after is the row that comes after one that was marked: the next, or from the last the first that was left out. Where none is
// left it stays, so that a digit too many does not end up in the line.
func (o *own) after(i int) int {
	left, first := o.left()
	switch {
	case i+1 < len(o.marks):
		return i + 1
	case left > 0:
		return first
	}
	return i
}

func (d *Desk) markingHead(c *ui.Core, v *View, in *ui.Rect) {
	o := &d.end.own
	left, _ := o.left()
	small := ui.Style{Size: 13, Col: c.Pal.Muted, Tab: true, Align: ui.AlignRight}
	count := words.Line("self.marked", len(o.marks)-left, len(o.marks))
	row := in.CutTop(34)
	c.Text(row.CutRight(small.Width(count)+1), count, small)
	row.CutRight(12)
	title := ui.Style{Size: ui.SizeBig, Weight: ui.SemiBold}
	if title.Width(words.Say("self.title")) > row.W {
		title.Size = ui.SizeHead
	}
	c.Text(row, words.Say("self.title"), title)
	muted := ui.Style{Size: 13, Col: c.Pal.Muted}
	for _, text := range [...]string{words.Say("self.lead"), words.Line("self.keys", len(v.Result.Self.Choices))} {
		c.Label(ui.Label{Rect: in.CutTop(c.LabelHeight(text, in.W, muted)), Text: text, Style: muted})
	}
	if v.Notice != "" {
		st := ui.Style{Size: 13, Weight: ui.SemiBold}
		c.Label(ui.Label{ID: ui.Name("notice"), Rect: in.CutTop(min(c.LabelHeight(v.Notice, in.W, st), 36)), Text: v.Notice, Style: st})
	}
	in.CutTop(6)
}

// onRow says which row the keyboard is on: that of the focus, or, while nothing has it, the one that was marked last.
func (d *Desk) onRow(c *ui.Core) (row int, on bool) {
	o := &d.end.own
	for i := range o.marks {
		if c.Focused() == ownRow(i) {
			return i, true
		}
	}
	return o.at, c.Focused() == 0
}

// markingKeys moves from row to row with ↑ and ↓, and from the last to the line, and gives what gets the focus then. A choice that
// has the focus would take these keys for itself.
func (d *Desk) markingKeys(c *ui.Core) (then ui.ID) {
	o := &d.end.own
	row, on := d.onRow(c)
	if !on {
		return 0
	}
	by := 0
	switch {
	case c.Pressed(ui.KeyDown):
		by = 1
	case c.Pressed(ui.KeyUp):
		by = -1
	case c.Focused() == 0 && (c.Pressed(ui.KeyLeft) || c.Pressed(ui.KeyRight)):
		c.Focus(ownRow(row)) // from here on it moves the mark
	}
	if row != o.at {
		o.at, o.follow = row, true
	}
	if by == 0 {
		return 0
	}
	c.Focus(0)
	if row+by >= len(o.marks) {
		return ownLine
	}
	o.at, o.follow = max(row+by, 0), true
	return ownRow(o.at)
}

// markingRows draws the objectives, part after part, and gives what gets the focus then.
func (d *Desk) markingRows(c *ui.Core, s *Self, in ui.Rect) (then ui.ID) {
	o := &d.end.own
	_, on := d.onRow(c)
	now := o.at // a digit that marks this row is not one for the next
	c.PageKeys(ownArea, in.H)
	area := c.BeginScroll(ui.Scroll{ID: ownArea, Rect: in, Content: d.heights[ownArea]})
	area.W = min(area.W, in.W-16) // the bar comes and goes without moving the rows
	y := area.Y
	for i := range s.Rows {
		top := y
		if i == 0 || s.Rows[i].Part != s.Rows[i-1].Part {
			c.Text(ui.R(area.X+14, y+2, area.W-28, 20), s.Rows[i].Part, ui.Style{Size: ui.SizeSmall, Weight: ui.SemiBold, Col: c.Pal.Muted})
			y += 24
		}
		at := on && i == now
		var next ui.ID
		y, next = d.markingRow(c, s, i, at, ui.R(area.X, y, area.W, 0))
		if next != 0 {
			then = next
		}
		if i == o.at && o.follow {
			c.BringIn(ui.R(area.X, top, area.W, y-top))
			o.follow = false
		}
	}
	d.heights[ownArea] = y - area.Y + 4
	c.EndScroll()
	return then
}

// markingRow is one objective with its choices. Digits are for the row the keyboard is on, and go on to the next.
func (d *Desk) markingRow(c *ui.Core, s *Self, i int, at bool, r ui.Rect) (bottom float32, then ui.ID) {
	o := &d.end.own
	text, st := s.Rows[i].Text, ui.Style{Size: ui.SizeBody}
	wide := min(max(r.W*0.55, leastChoice), mostChoice)
	left := r.W - wide - 14 - 16 - 6
	high := c.LabelHeight(text, left, st)
	r.H = max(42, high+8)
	if at {
		c.Fill(r, 6, c.Pal.Shade)
		c.Fill(ui.R(r.X, r.Y, 5, r.H), 2.5, c.Pal.Ink)
	}
	c.Label(ui.Label{Rect: ui.R(r.X+14, r.Y+(r.H-high)/2, left, high), Text: text, Style: st})
	options := make([]ui.Option, len(s.Choices))
	caps := at && capsFit(c, s.Choices, wide)
	for k, label := range s.Choices {
		options[k].Label = label
		if caps {
			options[k].Key = digit(k)
		}
		if at && c.Pressed(digit(k).Key) {
			o.marks[i] = k + 1
			o.at, o.follow = o.after(i), true
			then = ownRow(o.at)
		}
	}
	choice := ui.Choice{ID: ownRow(i), Rect: ui.R(r.Right()-6-wide, r.Y, wide, r.H), Label: text, Options: options, Selected: o.marks[i] - 1, Row: true}
	if k, changed := c.Choice(choice); changed && k >= 0 {
		o.marks[i] = k + 1
	}
	return r.Bottom() + rowGap, then
}

func digit(choice int) ui.Chord { return ui.K(rune('1' + choice)) }

// capsFit tells whether the caps of the digits have room beside all choices: some with and some without would look as if only
// those could be chosen.
func capsFit(c *ui.Core, choices []string, wide float32) bool {
	for k, label := range choices {
		if (ui.Style{Weight: ui.SemiBold}).Width(label)+c.KeyCapWidth(digit(k))+20 > wide/float32(len(choices)) {
			return false
		}
	}
	return true
}

// markingButtons are the ways to the verdict: with all marks, and without those that are missing, which are kept as left out.
func (d *Desk) markingButtons() (show, without ui.Button, left int) {
	o := &d.end.own
	left, _ = o.left()
	show = ui.Button{ID: ui.Name("own show"), Label: words.Say("self.show"), Look: ui.LookDark}
	without = ui.Button{ID: ui.Name("own without"), Label: words.Say("self.without")}
	if left > 0 {
		show.Why = words.Line("self.still", left)
	}
	if left < len(o.marks) {
		without.Label = words.Say("self.rest_unmarked")
	}
	return show, without, left
}

func (d *Desk) markingFootHeight(c *ui.Core, s *Self, width float32) float32 {
	show, without, _ := d.markingButtons()
	cell := ui.R(0, 0, min(width, mostButtons), 0).Col(0, 2, 10)
	return ui.TextFieldHeight + 10 + max(40, c.ButtonHeight(show, cell.W), c.ButtonHeight(without, cell.W))
}

const mostButtons = 720 // width of both

// markingFoot is the line and the ways to the verdict. It gives what gets the focus then.
func (d *Desk) markingFoot(c *ui.Core, s *Self, foot ui.Rect) (then ui.ID) {
	o := &d.end.own
	text, entered := c.TextField(ui.TextField{ID: ownLine, Rect: foot.CutTop(ui.TextFieldHeight), Label: words.Say("self.otherwise"), Text: o.otherwise, Most: mostLine})
	o.otherwise = text
	foot.CutTop(10)
	foot.W = min(foot.W, mostButtons)
	show, without, left := d.markingButtons()
	show.Rect, without.Rect = foot.Col(0, 2, 10), foot.Col(1, 2, 10)
	done := c.Button(show)
	if left > 0 {
		done = c.Button(without) || done
	}
	if entered && left > 0 {
		_, first := o.left()
		o.at, o.follow = first, true
		return ownRow(first)
	}
	if done || entered {
		d.do(Act{Do: GiveMarks, Marks: &Marks{Each: o.marks, Otherwise: o.otherwise}})
		c.Focus(0)
	}
	return 0
}
