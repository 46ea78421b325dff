// A question that waits for an answer stands at the top of the panel, whatever else the panel shows.

package bench

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

// question draws the open question, if there is one, and cuts its place off the top of r.
func (d *Desk) question(c *ui.Core, v *View, r *ui.Rect) {
	q := &v.Question
	if !q.Open {
		return
	}
	text := ui.Style{Size: ui.SizeBody, Weight: ui.SemiBold}
	in := *r
	h := c.LabelHeight(q.Text, in.W-28, text)
	box := r.CutTop(h + 82)
	r.CutTop(6)
	c.Fill(box, 6, c.Pal.Well)
	c.Frame(box, 6, 1.5, c.Pal.Ink)
	c.Fill(ui.R(box.X, box.Y, 6, box.H), 3, c.Pal.Ink)
	in = box.InsetXY(14, 8)
	head := in.CutTop(18)
	wait := words.Line("top.waiting", c.Clock(math.Floor(q.SinceS))[2:])
	small := ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted, Tab: true, Align: ui.AlignRight}
	c.Text(head.CutRight(small.Width(wait)+1), wait, small)
	c.Text(head, words.Line("top.asks", words.Say("speaker."+q.Who)), ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted})
	c.Label(ui.Label{Rect: in.CutTop(h), Text: q.Text, Style: text})
	row := in.CutBottom(42)
	if q.Loss {
		if c.Button(ui.Button{ID: ui.Name("answer loss"), Rect: row, Label: words.Say("top.answer_loss"), Look: ui.LookDark}) {
			d.Tab = TabRecords
			c.Focus(estimateID)
		}
		return
	}
	for i, k := range [...]struct {
		label string
		value float64
	}{{words.Say("top.yes"), 1}, {words.Say("top.no"), 0}} {
		a := on(sim.Answer, sim.NoPart, k.value)
		if c.Button(ui.Button{ID: ui.Name("answer").At(i), Rect: row.Col(i, 2, 8), Label: k.label, Look: ui.LookDark, Why: v.why(a.Sim)}) {
			d.do(a)
		}
	}
}
