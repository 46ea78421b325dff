// On the page of the verdict: how each objective was seen, beside what was measured of it, and where the two part.

package bench

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

// besideCols are the columns of a row.
type besideCols struct{ text, own, measured, scale, apart ui.Rect }

const (
	scaleW  = 96
	colGap  = 12
	scaleIn = 10 // from the ends of the scale to its first and last place

	besideIn = 4 // of rows and what stands over them
)

func colsOf(r ui.Rect) (k besideCols) {
	r.X, r.W = r.X+besideIn, r.W-besideIn-8
	k.text = r.CutLeft(r.W * 0.37)
	r.CutLeft(colGap)
	rest := r.W - scaleW - 3*colGap
	k.own = r.CutLeft(rest * 0.27)
	r.CutLeft(colGap)
	k.measured = r.CutLeft(rest * 0.36)
	r.CutLeft(colGap)
	k.scale = r.CutLeft(scaleW)
	r.CutLeft(colGap)
	k.apart = r
	return k
}

// sideBySide draws the rows from y on and gives where they end. Where nobody was asked there is nothing to compare.
func (d *Desk) sideBySide(c *ui.Core, s *Self, area ui.Rect, y float32) float32 {
	if !s.Given {
		return y
	}
	said := ui.Style{Size: 14}
	marked := false
	for i := range s.Rows {
		marked = marked || s.Rows[i].Apart != ""
	}
	sum := ui.Style{Size: 15, Weight: ui.SemiBold}
	if !marked {
		sum = ui.Style{Size: 13, Col: c.Pal.Muted}
	}
	label := func(text string, st ui.Style, gap float32) {
		h := c.LabelHeight(text, area.W-8, st)
		c.Label(ui.Label{Rect: ui.R(area.X, y, area.W-8, h), Text: text, Style: st})
		y += h + gap
	}
	y += 4
	if marked {
		c.Text(ui.R(area.X, y, area.W, 26), words.Say("self.beside"), ui.Style{Size: ui.SizeHead, Weight: ui.SemiBold})
		y += 28
	}
	label(s.Sum, sum, 4)
	if s.Otherwise != "" {
		label(words.Line("self.said", s.Otherwise), said, 6)
	}
	if !marked {
		return y + 4
	}
	y = d.besideHead(c, area, y)
	for i := range s.Rows {
		if i == 0 || s.Rows[i].Part != s.Rows[i-1].Part {
			c.Text(ui.R(area.X+besideIn, y+2, area.W-8, 18), s.Rows[i].Part, ui.Style{Size: ui.SizeSmall, Weight: ui.SemiBold, Col: c.Pal.Muted})
			y += 21
		}
		y = d.besideRow(c, &s.Rows[i], area, y)
	}
	label(s.Rule, ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted}, 10)
	return y
}

// besideHead names the columns, with the signs of the scale.
func (d *Desk) besideHead(c *ui.Core, area ui.Rect, y float32) float32 {
	k := colsOf(ui.R(area.X, y, area.W, 0))
	st := ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted}
	const sign = 20 // room for one
	own, measured := words.Say("self.own"), words.Say("self.measured")
	h := max(c.LabelHeight(own, k.own.W-sign, st), c.LabelHeight(measured, k.measured.W-sign, st))
	ringAt(c, ui.Vec{X: k.own.X + 7, Y: y + 8})
	c.Label(ui.Label{Rect: ui.R(k.own.X+sign, y, k.own.W-sign, h), Text: own, Style: st})
	dotAt(c, ui.Vec{X: k.measured.X + 7, Y: y + 8})
	c.Label(ui.Label{Rect: ui.R(k.measured.X+sign, y, k.measured.W-sign, h), Text: measured, Style: st})
	low, high := words.Say("self.low"), words.Say("self.high")
	if st.Width(low)+st.Width(high)+6 <= k.scale.W {
		c.Text(ui.R(k.scale.X, y, k.scale.W, 16), low, st)
		st.Align = ui.AlignRight
		c.Text(ui.R(k.scale.X, y, k.scale.W, 16), high, st)
	}
	y += h + 4
	c.Segment(area.X, y, area.Right(), y, 1, c.Pal.Line)
	return y + 3
}

// besideRow is one objective.
func (d *Desk) besideRow(c *ui.Core, row *SelfRow, area ui.Rect, y float32) float32 {
	k := colsOf(ui.R(area.X, y, area.W, 0))
	plain := ui.Style{Size: 13, Tab: true}
	apart := ui.Style{Size: 13, Col: c.Pal.Muted}
	if row.Parts {
		apart = ui.Style{Size: 13, Weight: ui.SemiBold}
	}
	measured := words.Line("self.level", row.Measured, words.Line("result.points", score(c, row.Points), score(c, row.Of)))
	h := float32(0)
	for _, cell := range [...]struct {
		at   ui.Rect
		text string
		st   ui.Style
	}{{k.text, row.Text, plain}, {k.own, row.Own, plain}, {k.measured, measured, plain}, {k.apart, row.Apart, apart}} {
		high := c.LabelHeight(cell.text, cell.at.W, cell.st)
		if cell.text != "" {
			c.Label(ui.Label{Rect: ui.R(cell.at.X, y+3, cell.at.W, high), Text: cell.text, Style: cell.st})
		}
		h = max(h, high)
	}
	d.scale(c, row, ui.R(k.scale.X, y+3, k.scale.W, 18))
	y += h + 7
	c.Segment(area.X+besideIn, y, area.Right(), y, 1, c.Pal.Line)
	return y + 2
}

// scale shows both on one line, from not at the left to well at the right.
func (d *Desk) scale(c *ui.Core, row *SelfRow, r ui.Rect) {
	place := func(at int) ui.Vec {
		return ui.Vec{X: r.X + scaleIn + (r.W-2*scaleIn)*float32(at)/2, Y: r.Y + r.H/2}
	}
	from, to := place(0), place(2)
	c.Segment(from.X, from.Y, to.X, to.Y, 1, c.Pal.Edge)
	for at := range 3 {
		p := place(at)
		c.Segment(p.X, p.Y-4, p.X, p.Y+4, 1, c.Pal.Edge)
	}
	if row.Parts && row.Seen >= 0 && row.Was >= 0 {
		a, b := place(row.Seen), place(row.Was)
		c.Segment(a.X, a.Y, b.X, b.Y, 3, c.Pal.Ink)
	}
	if row.Seen >= 0 {
		ringAt(c, place(row.Seen))
	}
	if row.Was >= 0 {
		dotAt(c, place(row.Was))
	}
}

// ringAt is the sign of what was seen, large enough to show round the other's.
func ringAt(c *ui.Core, p ui.Vec) {
	box := ui.R(p.X-7, p.Y-7, 14, 14)
	c.Disc(box, c.Pal.Well)
	c.Circle(box, 1.8, c.Pal.Ink)
}

// dotAt is the sign of what was measured.
func dotAt(c *ui.Core, p ui.Vec) { c.Disc(ui.R(p.X-4, p.Y-4, 8, 8), c.Pal.Ink) }
