// The run beside a good one: both in figures, and both courses over each other.

package bench

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

func (d *Desk) beside(c *ui.Core, v *View, in ui.Rect) {
	t := v.Debrief.Told
	d.lead(c, t, words.Say("report.good_lead"), "", &in)
	table := in.CutLeft(whole(min(max(in.W*0.36, 310), 460)))
	in.CutLeft(16)
	d.figures(c, t, table)
	d.end.talk.good.draw(c, ui.Name("good courses"), words.Say("desk_debrief.chart_good"), t.Good, in)
}

const (
	figureW   = 76 // of a column of figures
	figureRow = 26
)

// figures sets both runs side by side.
func (d *Desk) figures(c *ui.Core, t *Told, r ui.Rect) {
	id := ui.Name("figures")
	c.PageKeys(id, r.H)
	area := c.BeginScroll(ui.Scroll{ID: id, Rect: r, Content: d.heights[id]})
	area.W = min(area.W, r.W-16)
	name, value := ui.Style{Size: 13}, ui.Style{Size: 13, Weight: ui.SemiBold, Tab: true, Align: ui.AlignRight}
	y := area.Y
	line := func(name, own, good string, ns, vs ui.Style) {
		w := area.W - 2*figureW - 16
		h := max(c.LabelHeight(name, w, ns)+8, figureRow)
		c.Label(ui.Label{Rect: ui.R(area.X+4, y+4, w, h-8), Text: name, Style: ns})
		c.Text(ui.R(area.Right()-2*figureW-8, y, figureW, figureRow), own, vs)
		c.Text(ui.R(area.Right()-figureW-4, y, figureW, figureRow), good, vs)
		y += h
		c.Segment(area.X, y, area.Right(), y, 1, c.Pal.Line)
		y++
	}
	head := ui.Style{Size: 13, Col: c.Pal.Muted, Align: ui.AlignRight}
	line("", t.Good.Names[0], t.Good.Names[1], name, head)
	for i := range t.Figures {
		f := &t.Figures[i]
		line(f.Name, f.Own, f.Good, name, value)
	}
	d.heights[id] = y - area.Y + 4
	c.EndScroll()
}
