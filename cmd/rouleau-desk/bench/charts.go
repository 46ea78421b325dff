// The bottom of the bench: strip charts over the case beside the running log; and the charts large, for a closer look and
// for teaching rooms.

package bench

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

// charts fills the strip: charts and log side by side, one above the other in a high window, the log alone in a small one.
func (d *Desk) charts(c *ui.Core, v *View, r ui.Rect) {
	in := r.InsetXY(10, 4)
	var log ui.Rect
	switch {
	case r.H > 0.7*r.W:
		log = in.CutBottom(in.H * 0.5)
		log.CutTop(10)
		c.Segment(r.X+6, log.Y-6, r.Right()-6, log.Y-6, 1, c.Pal.Line)
	case r.W < leastCharts:
		d.smallStrip(c, v, in)
		return
	default:
		log = in.CutRight(in.W * 0.37)
		log.CutLeft(12)
		c.Segment(log.X-6, r.Y+6, log.X-6, r.Bottom()-6, 1, c.Pal.Line)
	}
	b := &d.board
	g := b.chart(c.Pal, v, v.ShowTruth)
	b.moments(v.Charts, false, nil)
	g.ID, g.Rect, g.Label, g.Marks, g.Size = ui.Name("charts"), in, words.Say("chart.name"), b.marks, stripText
	g.LeastLane = 20
	b.take(&g, c.Chart(g))
	d.chartButtons(c, v, log.CutBottom(40))
	log.CutBottom(2)
	d.logLines(c, v, log)
}

const (
	stripText   = 13
	leastCharts = 700 // width of a strip with charts and log side by side
	lofty       = 60  // height of a lane, with its share of what stands above, that has room for type of the usual size
)

// smallStrip is the log alone, with the way to the charts beside it.
func (d *Desk) smallStrip(c *ui.Core, v *View, r ui.Rect) {
	b := ui.Button{ID: ui.Name("charts large"), Label: words.Say("chart.open"), Key: ui.K('C')}
	t := ui.Checkbox{ID: ui.Name("truth"), Label: words.Say("chart.truth"), On: v.ShowTruth}
	side := r.CutRight(min(wideAs(c, &b), r.W*0.4))
	r.CutRight(12)
	b.Rect = side.CutTop(c.ButtonHeight(b, side.W))
	side.CutTop(6)
	if c.Button(b) {
		d.board.large = true
	}
	if t.Rect = side.CutTop(c.CheckHeight(t.Label, "", "", side.W)); v.MayTruth && c.Checkbox(t) {
		d.do(Act{Do: ToggleTruth})
	}
	d.logLines(c, v, r)
}

// chartButtons are the ways to other charts, below the log.
func (d *Desk) chartButtons(c *ui.Core, v *View, r ui.Rect) {
	choose := ui.Button{ID: ui.Name("signals"), Label: words.Say("chart.choose")}
	large := ui.Button{ID: ui.Name("charts large"), Label: words.Say("chart.large"), Key: ui.K('C')}
	truth := ui.Checkbox{ID: ui.Name("truth"), Label: words.Say("chart.truth"), On: v.ShowTruth}
	w := ui.TextWidth(truth.Label, ui.SizeBody, ui.Regular, false) + 36
	if v.MayTruth && r.W >= wideAs(c, &choose)+wideAs(c, &large)+w+28 {
		truth.Rect = r.CutRight(w)
		r.CutRight(12)
		if c.Checkbox(truth) {
			d.do(Act{Do: ToggleTruth})
		}
	}
	right := max(wideAs(c, &large), r.W/2-4)
	large.Rect = r.CutRight(min(right, r.W*0.6))
	r.CutRight(8)
	choose.Rect = r
	if c.Button(choose) {
		d.Dialog = ChartDialog
	}
	if c.Button(large) {
		d.board.large = true
	}
}

// stacked is a button over the width of a column, as high as its words need.
func (d *Desk) stacked(c *ui.Core, r *ui.Rect, b ui.Button) bool {
	b.Rect = r.CutTop(c.ButtonHeight(b, r.W))
	r.CutTop(6)
	return c.Button(b)
}

// largeCharts shows the charts over all of the bench, with stop and the log beside them.
func (d *Desk) largeCharts(c *ui.Core, v *View, r, panel ui.Rect) {
	in := r.InsetXY(12, 8)
	b := &d.board
	g := b.chart(c.Pal, v, v.ShowTruth)
	d.overTime(c, v, &g, in, nil)
	side := c.Panel(ui.Panel{ID: ui.Name("charts panel"), Rect: panel}).Inset(-4)
	side.CutTop(stopHeight)
	d.stop(c, v)
	side.CutTop(6)
	small := d.stacked(c, &side, ui.Button{ID: ui.Name("charts small"), Label: words.Say("chart.small"), Key: ui.K('C')})
	if small || c.Shortcut(ui.Chord{Key: ui.KeyEscape}) {
		b.large = false
	}
	if d.stacked(c, &side, ui.Button{ID: ui.Name("signals"), Label: words.Say("chart.choose")}) {
		d.Dialog = ChartDialog
	}
	d.exportButtons(c, side.CutTop(exportHeight(c, side.W)))
	if v.MayTruth {
		t := ui.Checkbox{ID: ui.Name("truth"), Label: words.Say("chart.show_truth"), On: v.ShowTruth}
		t.Rect = side.CutTop(c.CheckHeight(t.Label, "", "", side.W))
		if c.Checkbox(t) {
			d.do(Act{Do: ToggleTruth})
		}
	}
	help := words.Say("chart.help")
	st := ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted}
	if h := c.LabelHeight(help, side.W, st) + 4; h < side.H-60 { // where there is little room the log goes first
		c.Label(ui.Label{Rect: side.CutTop(h), Text: help, Style: st})
		side.CutTop(8)
	}
	if beside := r.Right() - panel.Right() - 20; beside > 0 { // the panel stands below, in a high window
		side = ui.R(panel.Right()+12, panel.Y, beside, panel.H)
	}
	d.logLines(c, v, side)
}

// overTime draws a chart with all that stands above it: phases, bowlfuls, what was given, acts, alarms, what was said.
func (d *Desk) overTime(c *ui.Core, v *View, g *ui.Chart, r ui.Rect, extra []ui.ChartMark) {
	b := &d.board
	b.moments(v.Charts, true, extra)
	b.names = [...]string{words.Say("chart.row_acts"), words.Say("chart.row_alarms"), words.Say("chart.row_said"), words.Say("chart.row_points"),
		words.Say("report.row_decisions")}
	b.over = [...]string{words.Say("chart.row_phase"), words.Say("chart.row_bowl"), words.Say("chart.row_given")}
	b.stretches(v.Charts)
	g.ID, g.Rect, g.Label, g.Ends = ui.Name("charts"), r, words.Say("chart.name"), true
	g.Marks, g.Bands, g.MarkNames, g.BandNames, g.Size = b.marks, b.bands, b.names[:3], b.over[:], 15
	for i := range extra {
		g.MarkNames = b.names[:max(len(g.MarkNames), extra[i].Row+1)]
	}
	if r.H < 420 || r.W < 620 || r.H < lofty*float32(g.Lanes) {
		g.Size = stripText
	}
	b.take(g, c.Chart(*g))
}

// exports are the formats charts are saved in, by the words on their buttons.
var exports = [...]string{FormatPNG: "chart.save_png", FormatSVG: "chart.save_svg"}

func exportButton(format int) ui.Button {
	return ui.Button{ID: ui.Name("export").At(format), Label: words.Say(exports[format])}
}

// exportHeight is how high the buttons of a row of some width must be.
func exportHeight(c *ui.Core, width float32) (h float32) {
	for i := range exports {
		h = max(h, c.ButtonHeight(exportButton(i), ui.R(0, 0, width, 0).Col(i, len(exports), 8).W))
	}
	return h
}

func (d *Desk) exportButtons(c *ui.Core, r ui.Rect) {
	for i := range exports {
		b := exportButton(i)
		if b.Rect = r.Col(i, len(exports), 8); c.Button(b) {
			d.do(Act{Do: ExportChart, Value: i})
		}
	}
}
