// The ranked list of decisions, in its groups. Only rows in sight, and one on either side for Tab to go on to, are drawn.

package bench

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

// costRows keeps how high the rows are: breaking the words of all of them anew in every frame would cost more than drawing those
// in sight.
type costRows struct {
	told  *Told
	width float32
	high  []float32
	total float32
}

const (
	pointsW = 54 // room for points with their sign
	rowPad  = 12
	rowAir  = 8  // above and below the words of a row, half the gap to the next included
	rowTall = 48 // a row at least
	groupH  = 34 // the name of a group at least

	pageRows = 6 // that a page key passes
)

var (
	costArea  = ui.Name("cost list")
	groupKeys = [...]string{CostGained: "desk_debrief.group_gained", CostBetter: "desk_debrief.group_better", CostUnclear: "desk_debrief.group_unclear",
		CostSame: "desk_debrief.group_same", CostLeft: "desk_debrief.group_left"}
	titleText = ui.Style{Size: ui.SizeBody}
	groupText = ui.Style{Size: 13, Weight: ui.SemiBold}
)

func costRow(i int) ui.ID { return ui.Name("cost").At(i) }

// begins says whether a row is the first of its group.
func (t *Told) begins(i int) bool { return i == 0 || t.Costs[i-1].Group != t.Costs[i].Group }

// measure finds how high each row is, the name of its group included where it begins one.
func (h *costRows) measure(c *ui.Core, t *Told, width float32) {
	if h.told == t && h.width == width {
		return
	}
	*h = costRows{told: t, width: width, high: h.high[:0]}
	for i := range t.Costs {
		high := t.Costs[i].rowHeight(c, width)
		if t.begins(i) {
			high += groupHeight(c, t.Costs[i].Group, width)
		}
		h.high, h.total = append(h.high, high), h.total+high
	}
}

func groupHeight(c *ui.Core, g CostGroup, width float32) float32 {
	return max(groupH, c.LabelHeight(words.Say(groupKeys[g]), width-rowPad, groupText)+14)
}

func (x *Cost) rowHeight(c *ui.Core, width float32) float32 {
	return max(x.wordsHeight(c, width-pointsW-2*rowPad)+2*rowAir, rowTall)
}

func (x *Cost) wordsHeight(c *ui.Core, w float32) float32 {
	h := c.LabelHeight(x.Title, w, titleText)
	for _, text := range [...]string{x.listed(), x.listedSure()} {
		h += c.LabelHeight(text, w, ui.Style{Size: ui.SizeSmall})
	}
	return h
}

// listed is the line under the title of a row.
func (x *Cost) listed() string {
	if x.Group == CostLeft {
		return x.says()
	}
	return x.Changes
}

// listedSure is how sure that is.
func (x *Cost) listedSure() string {
	switch {
	case x.Group == CostLeft:
		return ""
	case x.Unsure:
		return words.Line("desk_debrief.unsure_short", x.Sure)
	}
	return x.Sure
}

// costList draws the list. It gives the row that was chosen in this frame, -1 for none, and whether it is to be opened.
func (d *Desk) costList(c *ui.Core, t *Told, r ui.Rect) (row int, opened bool) {
	k := &d.end.talk
	row = d.costKeys(c, t)
	if row >= 0 {
		k.at, k.follow = row, true
		c.Focus(costRow(row))
	}
	width := r.W - 16 // the bar comes and goes without moving words
	k.rows.measure(c, t, width)
	area := c.BeginScroll(ui.Scroll{ID: costArea, Rect: r, Content: k.rows.total + 4})
	y := area.Y
	for i := range t.Costs {
		box := ui.R(area.X, y, width, k.rows.high[i])
		y += box.H
		if i == k.at && k.follow {
			c.BringIn(box)
			k.follow = false
		}
		if box.Bottom() < r.Y-rowTall || box.Y > r.Bottom()+rowTall {
			continue
		}
		if t.begins(i) {
			head := box.CutTop(groupHeight(c, t.Costs[i].Group, width))
			c.Label(ui.Label{Rect: ui.R(head.X+4, head.Y+9, head.W-rowPad, head.H-9), Text: words.Say(groupKeys[t.Costs[i].Group]), Style: groupText})
		}
		if t.Costs[i].draw(c, i, box, i == k.at) {
			row, opened = i, true
		}
	}
	c.EndScroll()
	return row, opened
}

// draw draws a row and says whether it was pressed.
func (x *Cost) draw(c *ui.Core, i int, r ui.Rect, on bool) bool {
	box := r.InsetXY(4, 2.5)
	h := c.Hit(ui.HitArea{ID: costRow(i), Rect: box, Label: x.Title, Selected: on})
	switch {
	case on:
		c.Fill(box, 6, c.Pal.Tint)
		c.Frame(box, 6, 1.5, c.Pal.Ink)
		c.Fill(ui.R(box.X+4, box.Y+7, 4, box.H-14), 2, c.Pal.Ink)
	case h.Over:
		c.Fill(box, 6, c.Pal.Shade)
		c.Frame(box, 6, 1, c.Pal.Edge)
	default:
		c.Fill(box, 6, c.Pal.Panel)
		c.Frame(box, 6, 1, c.Pal.Line)
	}
	in := ui.R(r.X+pointsW+rowPad, r.Y, r.W-pointsW-2*rowPad, 0)
	in.H = x.wordsHeight(c, in.W)
	in.Y += (r.H - in.H) / 2
	c.Text(ui.R(r.X+rowPad, in.Y, pointsW-8, ui.LineHeight(titleText.Size)), x.Points, ui.Style{Weight: ui.SemiBold, Tab: true, Align: ui.AlignRight})
	say := func(text string, st ui.Style) {
		if text != "" {
			c.Label(ui.Label{Rect: in.CutTop(c.LabelHeight(text, in.W, st)), Text: text, Style: st})
		}
	}
	say(x.Title, titleText)
	say(x.listed(), ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted})
	sure := ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted}
	if x.Unsure {
		sure = ui.Style{Size: ui.SizeSmall, Weight: ui.SemiBold}
	}
	say(x.listedSure(), sure)
	return h.Pressed
}

// costKeys moves the choice while the focus is in the list or nowhere.
func (d *Desk) costKeys(c *ui.Core, t *Told) (row int) {
	in := c.Focused() == 0
	for i := range t.Costs {
		in = in || c.Focused() == costRow(i)
	}
	if !in || d.end.asking != askNothing {
		return -1
	}
	last := len(t.Costs) - 1
	switch at := d.end.talk.at; {
	case c.Pressed(ui.KeyUp):
		return max(at-1, 0)
	case c.Pressed(ui.KeyDown):
		return min(at+1, last)
	case c.Pressed(ui.KeyPageUp):
		return max(at-pageRows, 0)
	case c.Pressed(ui.KeyPageDown):
		return min(at+pageRows, last)
	case c.Pressed(ui.KeyHome):
		return 0
	case c.Pressed(ui.KeyEnd):
		return last
	}
	return -1
}
