// The grade: critical errors first, why it was not passed, the parts at a glance, the marks of one's own beside what was
// measured, and then the parts with their criteria, each with the way to its moment.

package bench

import (
	"math"
	"slices"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

// reasons says why a case was not passed, before any points. Errors stand above in full.
func (d *Desk) reasons(c *ui.Core, res *Result, in *ui.Rect) {
	if !res.Graded || res.Pass {
		return
	}
	st := ui.Style{Size: ui.SizeBody, Weight: ui.SemiBold}
	for _, why := range res.Reasons {
		if slices.ContainsFunc(res.Criticals, func(k CriticalResult) bool { return k.Name == why }) {
			continue
		}
		c.Label(ui.Label{Rect: in.CutTop(c.LabelHeight(why, in.W, st)), Text: why, Style: st})
		in.CutTop(2)
	}
}

// summary is the parts side by side, each with the mark of what is the least that passes.
func (d *Desk) summary(c *ui.Core, res *Result, in *ui.Rect) {
	n := len(res.Parts)
	if n == 0 {
		return
	}
	rows := 1
	if in.W/float32(n) < 156 {
		rows = 2
	}
	each := (n + rows - 1) / rows
	in.CutTop(2)
	for at := 0; at < n; at += each {
		row := in.CutTop(40)
		in.CutTop(6)
		for i := at; i < min(at+each, n); i++ {
			p := &res.Parts[i]
			cell := row.Col(i-at, each, 14)
			st := ui.Style{Size: ui.SizeSmall}
			points := words.Line("result.points", score(c, p.Points), score(c, p.Of))
			if p.below() {
				st.Weight, points = ui.SemiBold, words.Line("result.below", points)
			}
			c.Text(cell.CutTop(15), p.Name, st)
			c.Text(cell.CutTop(15), points, ui.Style{Size: ui.SizeSmall, Weight: st.Weight, Tab: true, Col: c.Pal.Muted})
			p.bar(c, cell.Place(cell.W, 6, 0, 0.5))
		}
	}
	in.CutTop(2)
}

func (p *PartResult) below() bool { return p.Of > 0 && p.Points < p.FloorShare*p.Of-1e-9 }

// bar is how many of the points were got, and a mark where the least that passes lies.
func (p *PartResult) bar(c *ui.Core, bar ui.Rect) {
	c.Fill(bar, 3, c.Pal.Line)
	if p.Of > 0 {
		c.Fill(ui.R(bar.X, bar.Y, bar.W*float32(min(max(p.Points/p.Of, 0), 1)), bar.H), 3, c.Pal.Dark)
		x := bar.X + bar.W*float32(p.FloorShare)
		c.Segment(x, bar.Y-3, x, bar.Bottom()+3, 2, c.Pal.Ink)
	}
}

func (d *Desk) resultRows(c *ui.Core, v *View, r ui.Rect) {
	res := &v.Result
	id := ui.Name("result")
	c.PageKeys(id, r.H)
	area := c.BeginScroll(ui.Scroll{ID: id, Rect: r, Content: d.heights[id]})
	area.W = min(area.W, r.W-16)
	y := area.Y + 2
	if len(res.Criticals) > 0 {
		c.Text(ui.R(area.X, y, area.W, 26), words.Say("result.criticals"), ui.Style{Size: ui.SizeHead, Weight: ui.SemiBold})
		y += 30
	}
	for i := range res.Criticals {
		y = d.critical(c, &res.Criticals[i], i, area, y)
	}
	if v.lesson() {
		for _, line := range v.Guide.Summary {
			st := ui.Style{Size: 15}
			h := c.LabelHeight(line, area.W-20, st)
			c.Label(ui.Label{Rect: ui.R(area.X+10, y, area.W-20, h), Text: line, Style: st})
			y += h + 8
		}
	} else {
		in := ui.R(area.X, y, area.W, endless)
		d.reasons(c, res, &in)
		d.summary(c, res, &in)
		y = d.sideBySide(c, &res.Self, area, in.Y)
	}
	if res.Scaled != "" {
		st := ui.Style{Size: 13, Col: c.Pal.Muted}
		h := c.LabelHeight(res.Scaled, area.W-10, st)
		c.Label(ui.Label{Rect: ui.R(area.X+4, y, area.W-10, h), Text: res.Scaled, Style: st})
		y += h + 6
	}
	for i := range res.Parts {
		y = d.part(c, &res.Parts[i], i, area, y)
	}
	d.heights[id] = y - area.Y + 8
	c.EndScroll()
}

const (
	seeW    = 190 // room for it
	endless = 1e5 // height of what is cut from the top as far as it is needed
)

// see is the way from a row of the grade to its moment on the timeline.
func (d *Desk) see(c *ui.Core, m Moment, id ui.ID, r ui.Rect) {
	if !m.Is {
		return
	}
	b := ui.Button{ID: id, Label: words.Line("result.at", c.Clock(math.Floor(m.S)))}
	b.Rect = r
	b.Rect.W = min(wideAs(c, &b), r.W)
	if c.Button(b) {
		d.goTo(id)
	}
}

func (d *Desk) critical(c *ui.Core, k *CriticalResult, i int, area ui.Rect, y float32) float32 {
	name := k.Name
	if k.Mended {
		name = words.Line("result.mended", k.Name)
	}
	text := ui.Style{Size: 14}
	bold := ui.Style{Size: 15, Weight: ui.SemiBold}
	w := area.W - 40
	least := float32(0)
	if k.Moment.Is {
		w -= seeW + 12
		least = 56
	}
	hn, ht := c.LabelHeight(name, w, bold), c.LabelHeight(k.Reason, w, text)
	box := ui.R(area.X+2, y, area.W-4, max(hn+ht+16, least))
	c.Fill(box, 6, c.Pal.Well)
	c.Frame(box, 6, 2, c.Pal.Ink)
	c.Fill(ui.R(box.X, box.Y, 8, box.H), 4, c.Pal.Ink)
	c.Label(ui.Label{Rect: ui.R(box.X+22, box.Y+7, w, hn), Text: name, Style: bold})
	if k.Reason != "" {
		c.Label(ui.Label{Rect: ui.R(box.X+22, box.Y+8+hn, w, ht), Text: k.Reason, Style: text})
	}
	d.see(c, k.Moment, criticalID(i), ui.R(box.Right()-seeW-8, box.Y+8, seeW, 40))
	return y + box.H + 8
}

func criticalID(i int) ui.ID     { return ui.Name("see critical").At(i) }
func criterionID(i, k int) ui.ID { return ui.Name("see criterion").At(i).At(k) }

// part is a part of the grade: a bar with its floor, opened to show the criteria.
func (d *Desk) part(c *ui.Core, p *PartResult, i int, area ui.Rect, y float32) float32 {
	open := d.end.opened == i || d.end.opened == -1
	row := ui.R(area.X+4, y+2, area.W-8, 42)
	points := words.Line("result.points", score(c, p.Points), score(c, p.Of))
	if c.Button(ui.Button{ID: ui.Name("part").At(i), Rect: row, Label: p.Name, Detail: points, Selected: d.end.opened == i}) {
		if d.end.opened == i {
			d.end.opened = -1
		} else {
			d.end.opened = i
		}
	}
	bar := ui.R(row.X, row.Bottom()+4, row.W, 6)
	p.bar(c, bar)
	y = bar.Bottom() + 10
	if !open {
		return y
	}
	for k := range p.Rows {
		y = d.criterion(c, &p.Rows[k], criterionID(i, k), area, y)
	}
	return y + 8
}

// criterion is one line: what was measured against what, points, why, and where the target comes from.
func (d *Desk) criterion(c *ui.Core, k *CriterionResult, id ui.ID, area ui.Rect, y float32) float32 {
	left := area.W * 0.30
	mid := area.W * 0.24
	name, small := ui.Style{Size: 14, Weight: ui.SemiBold}, ui.Style{Size: 13, Col: c.Pal.Muted}
	x := area.X + 14
	why := k.Reason
	if k.Source != "" {
		why += "\n" + words.Line("result.source", k.Source)
	}
	was := words.Say("result.nothing_measured")
	if k.Measured != "" {
		was = words.Line("result.measured", k.Measured)
	}
	values := was + "\n" + words.Line("result.target", k.Target)
	wy := area.Right() - 8 - (x + left + mid)
	hn := c.LabelHeight(k.Name, left-16, name)
	line := ui.LineHeight(13)
	hl := hn + line
	if k.Moment.Is {
		hl += 44
	}
	h := max(hl, c.LabelHeight(values, mid-12, small), c.LabelHeight(why, wy, small))
	c.Label(ui.Label{Rect: ui.R(x, y, left-16, hn), Text: k.Name, Style: name})
	c.Text(ui.R(x, y+hn, left-16, line), words.Line("result.points", score(c, k.Points), score(c, k.Of)), ui.Style{Size: 13, Tab: true, Col: c.Pal.Muted})
	d.see(c, k.Moment, id, ui.R(x, y+hn+line+4, min(seeW, left-16), 40))
	c.Label(ui.Label{Rect: ui.R(x+left, y, mid-12, h), Text: values, Style: ui.Style{Size: 13, Tab: true}})
	c.Label(ui.Label{Rect: ui.R(x+left+mid, y, wy, h), Text: why, Style: small})
	y += h + 6
	c.Segment(x, y, area.Right(), y, 1, c.Pal.Line)
	return y + 6
}
