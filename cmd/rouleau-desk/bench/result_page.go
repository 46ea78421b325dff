// The last page: critical errors first, then the grade by part with its criteria.

package bench

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

func (d *Desk) result(c *ui.Core, v *View, window ui.Rect) {
	res := &v.Result
	in := window.InsetXY(24, 14)
	head := in.CutTop(58)
	right := head.CutRight(min(head.W*0.45, 460))
	verdict := words.Say("result.not_graded")
	switch {
	case res.Graded && res.Pass:
		verdict = words.Say("result.pass", c.Num(res.Total, 0, ""))
	case res.Graded:
		verdict = words.Say("result.fail", c.Num(res.Total, 0, ""))
	}
	c.Text(head.CutTop(34), verdict, ui.Style{Size: 24, Weight: ui.SemiBold})
	under := words.Say("result.feedback")
	if v.TimeOver {
		under = words.Say("result.time_over") + " " + under
	}
	c.Text(head, under, ui.Style{Size: 13, Col: c.Pal.Muted})
	saved := words.Say("result.not_saved")
	if res.SavedAs != "" {
		saved = words.Say("result.saved", res.SavedAs)
	}
	c.Label(ui.Label{ID: ui.Name("saved"), Rect: right.CutTop(36), Text: saved, Style: ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted, Align: ui.AlignRight}})
	c.Text(right, words.Say("result.case", v.Story.Title, v.Story.Seed), ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted, Align: ui.AlignRight, Tab: true})
	foot := in.CutBottom(52).InsetXY(0, 4)
	d.resultFoot(c, foot)
	in.CutBottom(6)
	if res.Fault != "" {
		c.Label(ui.Label{ID: ui.Name("fault"), Rect: in.CutTop(44), Text: res.Fault, Style: ui.Style{Weight: ui.SemiBold}})
	}
	d.reasons(c, res, &in)
	d.summary(c, res, &in)
	d.resultRows(c, res, in)
}

// reasons says why a case was not passed, before any points.
func (d *Desk) reasons(c *ui.Core, res *Result, in *ui.Rect) {
	if !res.Graded || res.Pass {
		return
	}
	st := ui.Style{Size: ui.SizeBody, Weight: ui.SemiBold}
	for _, why := range res.Reasons {
		c.Label(ui.Label{Rect: in.CutTop(c.LabelHeight(why, in.W, st)), Text: why, Style: st})
		in.CutTop(2)
	}
}

// summary is the six parts side by side, each with the mark of what is the least that passes.
func (d *Desk) summary(c *ui.Core, res *Result, in *ui.Rect) {
	if len(res.Parts) == 0 {
		return
	}
	in.CutTop(4)
	row := in.CutTop(40)
	in.CutTop(8)
	for i := range res.Parts {
		p := &res.Parts[i]
		cell := row.Col(i, len(res.Parts), 14)
		st := ui.Style{Size: ui.SizeSmall}
		points := words.Say("result.points", c.Num(p.Points, 1, ""), c.Num(p.Of, 0, ""))
		if p.Of > 0 && p.Points < p.FloorShare*p.Of {
			st.Weight, points = ui.SemiBold, words.Say("result.below", points)
		}
		c.Text(cell.CutTop(15), p.Name, st)
		c.Text(cell.CutTop(15), points, ui.Style{Size: ui.SizeSmall, Weight: st.Weight, Tab: true, Col: c.Pal.Muted})
		p.bar(c, cell.Place(cell.W, 6, 0, 0.5))
	}
}

// bar is how many of the points were got, and a mark where the least that passes lies.
func (p *PartResult) bar(c *ui.Core, bar ui.Rect) {
	c.Fill(bar, 3, c.Pal.Line)
	if p.Of > 0 {
		c.Fill(ui.R(bar.X, bar.Y, bar.W*float32(min(max(p.Points/p.Of, 0), 1)), bar.H), 3, c.Pal.Dark)
		x := bar.X + bar.W*float32(p.FloorShare)
		c.Segment(x, bar.Y-3, x, bar.Bottom()+3, 2, c.Pal.Ink)
	}
}

func (d *Desk) resultFoot(c *ui.Core, foot ui.Rect) {
	if c.Button(ui.Button{ID: ui.Name("leave"), Rect: foot.CutRight(200), Label: words.Say("result.leave"), Look: ui.LookDark}) {
		d.do(Act{Do: Leave})
	}
	foot.CutRight(8)
	if c.Button(ui.Button{ID: ui.Name("again"), Rect: foot.CutRight(240), Label: words.Say("result.again")}) {
		d.do(Act{Do: Again})
	}
	foot.CutRight(16)
	c.Label(ui.Label{ID: ui.Name("last caution"), Rect: foot.Place(foot.W, 34, 0, 0.5), Text: words.Say("first.short"), Style: ui.Style{Size: 13, Col: c.Pal.Muted}})
}

func (d *Desk) resultRows(c *ui.Core, res *Result, r ui.Rect) {
	id := ui.Name("result")
	pageKeys(c, id, r.H)
	area := c.BeginScroll(ui.Scroll{ID: id, Rect: r, Content: d.heights[id]})
	area.W = min(area.W, r.W-16)
	y := area.Y + 2
	if len(res.Criticals) > 0 {
		c.Text(ui.R(area.X, y, area.W, 26), words.Say("result.criticals"), ui.Style{Size: ui.SizeHead, Weight: ui.SemiBold})
		y += 30
	}
	for i := range res.Criticals {
		y = d.critical(c, &res.Criticals[i], area, y)
	}
	for i := range res.Parts {
		y = d.part(c, &res.Parts[i], i, area, y)
	}
	d.heights[id] = y - area.Y + 8
	c.EndScroll()
}

func (d *Desk) critical(c *ui.Core, k *CriticalResult, area ui.Rect, y float32) float32 {
	name := k.Name
	if k.Mended {
		name = words.Say("result.mended", k.Name)
	}
	text := ui.Style{Size: 14}
	bold := ui.Style{Size: 15, Weight: ui.SemiBold}
	w := area.W - 40
	hn, ht := c.LabelHeight(name, w, bold), c.LabelHeight(k.Reason, w, text)
	box := ui.R(area.X+2, y, area.W-4, hn+ht+16)
	c.Fill(box, 6, c.Pal.Well)
	c.Frame(box, 6, 2, c.Pal.Ink)
	c.Fill(ui.R(box.X, box.Y, 8, box.H), 4, c.Pal.Ink)
	c.Label(ui.Label{Rect: ui.R(box.X+22, box.Y+7, w, hn), Text: name, Style: bold})
	c.Label(ui.Label{Rect: ui.R(box.X+22, box.Y+8+hn, w, ht), Text: k.Reason, Style: text})
	return y + box.H + 8
}

// part is a part of the grade: a bar with its floor, opened to show the criteria.
func (d *Desk) part(c *ui.Core, p *PartResult, i int, area ui.Rect, y float32) float32 {
	open := d.opened == i || d.opened == -1
	row := ui.R(area.X+4, y+2, area.W-8, 42)
	score := words.Say("result.points", c.Num(p.Points, 1, ""), c.Num(p.Of, 0, ""))
	if c.Button(ui.Button{ID: ui.Name("part").At(i), Rect: row, Label: p.Name, Detail: score, Selected: d.opened == i}) {
		switch {
		case d.opened == i:
			d.opened = -1
		default:
			d.opened = i
		}
	}
	bar := ui.R(row.X, row.Bottom()+4, row.W, 6)
	p.bar(c, bar)
	y = bar.Bottom() + 10
	if !open {
		return y
	}
	for k := range p.Rows {
		y = d.criterion(c, &p.Rows[k], area, y)
	}
	return y + 8
}

// criterion is one line: what was measured against what, points, why, and where the target comes from.
func (d *Desk) criterion(c *ui.Core, k *CriterionResult, area ui.Rect, y float32) float32 {
	left := area.W * 0.30
	mid := area.W * 0.24
	name, small := ui.Style{Size: 14, Weight: ui.SemiBold}, ui.Style{Size: 13, Col: c.Pal.Muted}
	x := area.X + 14
	why := k.Reason
	if k.Source != "" {
		why += "\n" + words.Say("result.source", k.Source)
	}
	was := words.Say("result.nothing_measured")
	if k.Measured != "" {
		was = words.Say("result.measured", k.Measured)
	}
	values := was + "\n" + words.Say("result.target", k.Target)
	wy := area.Right() - 8 - (x + left + mid)
	h := max(c.LabelHeight(k.Name, left-16, name)+c.LabelHeight(" ", left, small), c.LabelHeight(values, mid-12, small), c.LabelHeight(why, wy, small))
	c.Label(ui.Label{Rect: ui.R(x, y, left-16, h), Text: k.Name, Style: name})
	c.Text(ui.R(x, y+c.LabelHeight(k.Name, left-16, name), left-16, ui.LineHeight(13)), words.Say("result.points", c.Num(k.Points, 1, ""), c.Num(k.Of, 0, "")), ui.Style{Size: 13, Tab: true, Col: c.Pal.Muted})
	c.Label(ui.Label{Rect: ui.R(x+left, y, mid-12, h), Text: values, Style: ui.Style{Size: 13, Tab: true}})
	c.Label(ui.Label{Rect: ui.R(x+left+mid, y, wy, h), Text: why, Style: small})
	y += h + 6
	c.Segment(x, y, area.Right(), y, 1, c.Pal.Line)
	return y + 6
}
