// What decisions cost: all of them ranked, and of the chosen one what it would have changed, how sure that is, and both courses.
// List and chosen row stand beside each other, in a high window one above the other, in a small one one after the other.

package bench

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

// Widths and heights from which on list and chosen row stand together.
const (
	besideW = 1080
	aboveH  = 780
)

func (d *Desk) costs(c *ui.Core, v *View, in ui.Rect) {
	t, k := v.Debrief.Told, &d.end.talk
	k.at = min(k.at, len(t.Costs)-1)
	together := in.W >= besideW || in.H >= aboveH
	if together {
		k.open = false
	}
	if k.open {
		d.cost(c, v, in, true)
		return
	}
	d.lead(c, t, words.Say("desk_debrief.costs_lead"), t.Scaled, &in)
	if len(t.Costs) == 0 {
		c.Label(ui.Label{Rect: in.InsetXY(4, 12), Text: words.Say("report.line_nothing"), Style: ui.Style{Size: 15}})
		return
	}
	list := in
	if together {
		var side ui.Rect
		if in.W >= besideW {
			list = in.CutLeft(whole(min(in.W*0.38, 540)))
			in.CutLeft(16)
			side = in
			c.Segment(side.X-8, side.Y, side.X-8, side.Bottom(), 1, c.Pal.Line)
		} else {
			list = in.CutTop(whole(in.H * 0.42))
			in.CutTop(16)
			side = in
			c.Segment(side.X, side.Y-8, side.Right(), side.Y-8, 1, c.Pal.Line)
		}
		d.cost(c, v, side, false) // before the list, so that Tab does not lead through all of it first
	}
	if row, opened := d.costList(c, t, list); row >= 0 {
		k.at = row
		k.open = opened && !together
	}
}

// ChooseCost chooses a row of the costs.
func (d *Desk) ChooseCost(row int) {
	d.end.talk.at, d.end.talk.follow, d.end.talk.open = row, true, false
}

// cost is the chosen row.
func (d *Desk) cost(c *ui.Core, v *View, in ui.Rect, alone bool) {
	t, k := v.Debrief.Told, &d.end.talk
	x := &t.Costs[k.at]
	if x.Courses == nil && x.Place >= 0 {
		d.do(Act{Do: ShowCourses, Value: k.at})
	}
	label := func(text string, st ui.Style, gap float32) {
		if text != "" {
			c.Label(ui.Label{Rect: in.CutTop(c.LabelHeight(text, in.W, st)), Text: text, Style: st})
			in.CutTop(gap)
		}
	}
	label(words.Line("desk_debrief.titled", x.Points, x.Title), ui.Style{Size: 16, Weight: ui.SemiBold}, 3)
	label(x.says(), ui.Style{}, 2)
	st := ui.Style{Size: 13, Col: c.Pal.Muted}
	if x.Unsure {
		st = ui.Style{Size: 13, Weight: ui.SemiBold}
	}
	label(x.sure(), st, 2)
	label(x.bears(), ui.Style{Size: 13, Col: c.Pal.Muted}, 2)
	in.CutTop(4)
	d.costButtons(c, v, x, &in, alone)
	switch {
	case x.Place < 0:
	case x.Courses == nil:
		c.Label(ui.Label{Rect: in, Text: words.Say("desk_debrief.course_coming"), Style: ui.Style{Col: c.Pal.Muted}})
	case !x.Courses.Differ && x.Group == CostSame:
		c.Label(ui.Label{Rect: in, Text: words.Say("desk_debrief.no_curve"), Style: ui.Style{Col: c.Pal.Muted}})
	case !x.Courses.Differ:
		c.Label(ui.Label{Rect: in, Text: words.Say("desk_debrief.no_curve_points"), Style: ui.Style{Col: c.Pal.Muted}})
	default:
		k.cost.draw(c, ui.Name("cost courses"), words.Say("desk_debrief.chart"), x.Courses, in)
	}
}

// says is what putting a decision right would have changed.
func (x *Cost) says() string {
	switch {
	case x.Group == CostLeft:
		return x.Changes + ", " + x.Bears
	case x.Group == CostSame:
		return words.Say("desk_debrief.same")
	case x.Group == CostUnclear && x.Changes == "":
		return words.Say("desk_debrief.unclear_points")
	case x.Group == CostUnclear:
		return words.Line("desk_debrief.unclear", x.Changes)
	case x.Changes == "" && x.Group == CostBetter:
		return words.Say("desk_debrief.better_points")
	case x.Changes == "":
		return words.Say("desk_debrief.points_only")
	case x.Group == CostBetter:
		return words.Line("desk_debrief.better", x.Changes)
	}
	return words.Line("desk_debrief.gained", x.Changes)
}

// sure says how sure that is; of lost points that nothing explains, why they were lost.
func (x *Cost) sure() string {
	switch {
	case x.Group == CostLeft:
		return x.Sure
	case x.Sure == "":
		return words.Say("desk_debrief.one_drawing")
	case x.Unsure:
		return words.Line("desk_debrief.unsure", x.Sure)
	}
	return words.Line("desk_debrief.sure", x.Sure)
}

// bears says on which criteria a decision bears.
func (x *Cost) bears() string {
	switch {
	case x.Group == CostLeft:
		return words.Say("desk_debrief.left_why")
	case x.Bears == "":
		return ""
	}
	return words.Line("desk_debrief.bears", x.Bears)
}

// turn is the moment on which a row turns: where both courses part, or where a criterion was decided.
func (x *Cost) turn() Moment {
	if x.Courses != nil && x.Courses.Part.Is {
		return x.Courses.Part
	}
	return x.At
}

const beforeS = 20 // before its moment a decision is tried again

// costButtons are the ways on from the chosen row: back to the list, to the timeline, to try again from a little before.
func (d *Desk) costButtons(c *ui.Core, v *View, x *Cost, in *ui.Rect, alone bool) {
	m := x.turn()
	back := ui.Button{ID: ui.Name("cost back"), Label: words.Say("desk_debrief.back_list"), Key: ui.Chord{Key: ui.KeyEscape}}
	show := ui.Button{ID: ui.Name("cost on timeline"), Label: words.Say("desk_debrief.on_timeline"), Key: timelineKey}
	again := ui.Button{ID: ui.Name("cost try again"), Label: words.Line("result.try_from", c.Clock(max(m.S-beforeS, 0))), Key: tryAgainKey, Why: v.Recorded.Stale}
	if x.Place >= 0 && x.Courses == nil && again.Why == "" {
		again.Why = words.Say("desk_debrief.wait")
	}
	var all [3]*ui.Button
	n := 0
	add := func(b *ui.Button, is bool) {
		if is {
			all[n] = b
			n++
		}
	}
	add(&back, alone)
	add(&again, x.Place >= 0)
	add(&show, m.Is)
	if n == 0 {
		return
	}
	const gap = 8
	most := (in.W - gap*float32(n-1)) / float32(n)
	high := float32(40)
	for _, b := range all[:n] {
		b.Rect.W = min(wideAs(c, b), most)
		high = max(high, c.ButtonHeight(*b, b.Rect.W))
	}
	row := in.CutTop(high)
	in.CutTop(8)
	for _, b := range all[:n] {
		b.Rect = row.CutLeft(b.Rect.W)
		row.CutLeft(gap)
	}
	if alone && c.Button(back) {
		d.end.talk.open, d.end.talk.follow = false, true
		c.Focus(costRow(d.end.talk.at))
	}
	if x.Place >= 0 && c.Button(again) {
		d.do(Act{Do: TryAgain, Value: int(max(m.S-beforeS, 0))})
	}
	if m.Is && c.Button(show) {
		d.showAt(m.S, x.Title, show.ID)
	}
}

var timelineKey = ui.K('T')
