// The questions for the talk, by its stages, each with the way to the moment that it is about.

package bench

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

const mostRead = 900 // width of a text that is read

func (d *Desk) questions(c *ui.Core, v *View, in ui.Rect) {
	t := v.Debrief.Told
	d.lead(c, t, words.Say("report.questions_lead"), "", &in)
	id := ui.Name("questions")
	c.PageKeys(id, in.H)
	area := c.BeginScroll(ui.Scroll{ID: id, Rect: in, Content: d.heights[id]})
	area.W = min(area.W, in.W-16, mostRead+seeW)
	y, st := area.Y, ui.Style{Size: 15}
	for i := range t.Questions {
		q := &t.Questions[i]
		if i == 0 || t.Questions[i-1].Stage != q.Stage {
			c.Text(ui.R(area.X+4, y+6, area.W-8, 20), q.Stage, groupText)
			y += 32
		}
		w := area.W - seeW - 20
		h := c.LabelHeight(q.Text, w, st)
		c.Label(ui.Label{Rect: ui.R(area.X+4, y+2, w, h), Text: q.Text, Style: st})
		if q.At.Is {
			b := ui.Button{ID: ui.Name("question").At(i), Label: words.Line("result.at", c.Clock(math.Floor(q.At.S))), Rect: ui.R(area.Right()-seeW, y, seeW, 40)}
			b.Rect.H = c.ButtonHeight(b, seeW)
			h = max(h, b.Rect.H)
			if c.Button(b) {
				d.showAt(q.At.S, q.Text, b.ID)
			}
		}
		y += h + 8
		c.Segment(area.X+4, y, area.Right(), y, 1, c.Pal.Line)
		y += 8
	}
	d.heights[id] = y - area.Y
	c.EndScroll()
}
