// Choosing what is charted: a list of ticks.

package bench

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

// chartDialog lists the signals. Those that nobody at a bench could know are offered only where hidden truth may be seen.
func (d *Desk) chartDialog(c *ui.Core, v *View) {
	const width, tick = 640, 40
	id := ui.Name("signal list")
	shown, first := d.board.choice(v)
	title := words.Say("chart.choose_title")
	var in ui.Rect
	if v.Screen == Graded { // there is no bench to stop behind it
		r := ui.Rect{W: c.Size().X, H: c.Size().Y}
		r = r.Place(min(width, r.W-32), min(620, r.H-32), 0.5, 0.5)
		c.BeginOverlay(ui.Name("dialog"), r, true)
		in = c.Panel(ui.Panel{ID: ui.Name("dialog panel"), Rect: r, Title: title})
	} else {
		in = d.window(c, v, title, width, 620)
	}
	foot := in.CutBottom(44)
	in.CutBottom(8)
	area := c.BeginScroll(ui.Scroll{ID: id, Rect: in, Content: d.heights[id]})
	area = area.InsetXY(6, 0)
	columns := 1
	if area.W >= 480 {
		columns = 2
	}
	y := area.Y + 4
	group := func(from, to Signal) {
		rows := (int(to-from) + columns - 1) / columns
		for s := from; s < to; s++ {
			i := int(s - from)
			cell := ui.R(area.X, y+tick*float32(i%rows), area.W, tick).Col(i/rows, columns, 12)
			if c.Checkbox(ui.Checkbox{ID: ui.Name("signal").At(int(s)), Rect: cell, Label: s.Name(), On: shown.Has(s)}) {
				*shown ^= 1 << s
			}
		}
		y += tick*float32(rows) + 6
	}
	group(0, FirstTruth)
	if v.MayTruth || v.Screen == Graded {
		text := words.Say("chart.choose_truth")
		st := ui.Style{Size: 13, Col: c.Pal.Muted}
		h := c.LabelHeight(text, area.W, st)
		c.Label(ui.Label{Rect: ui.R(area.X, y+6, area.W, h), Text: text, Style: st})
		y += h + 12
		group(FirstTruth, SignalCount)
	}
	d.heights[id] = y - area.Y
	c.EndScroll()
	if c.Button(ui.Button{ID: ui.Name("signals first"), Rect: foot.CutRight(min(220, foot.W/2-4)), Label: words.Say("chart.choose_first")}) {
		*shown = first
	}
	d.close(c, foot.CutLeft(min(200, foot.W-8)))
}
