// The bottom of the bench: strip charts over the case, and the running log.

package bench

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

func (d *Desk) charts(c *ui.Core, v *View, r ui.Rect) {
	in := r.InsetXY(10, 4)
	log := in.CutRight(in.W * 0.37)
	log.CutLeft(12)
	c.Segment(log.X-6, r.Y+6, log.X-6, r.Bottom()-6, 1, c.Pal.Line)
	d.chartOf(c, v, in)
	d.log(c, v, log)
}

func (d *Desk) chartOf(c *ui.Core, v *View, r ui.Rect) {
	now := sim.Seconds(v.Seen.Tick)
	lastS := math.Max(now, 600)
	if !d.chosen {
		d.chart.From, d.chart.To = 0, lastS
	}
	h := v.Charts
	look := c.Pal.Series
	lanes := [...]ui.ChartSeries{
		{Label: words.Say("chart.reservoir"), Unit: "mL", Values: h.Reservoir, Max: v.Limits.ReservoirML, Lane: 0, Look: look[0]},
		{Label: words.Say("chart.drip"), Unit: words.Say("chart.drip_unit"), Values: h.Drip, Max: 40, Lane: 1, Look: look[3]},
		{Label: words.Say("chart.detector"), Digits: 2, Values: h.Detector, Max: 1.1, Lane: 2, Look: look[1]},
		{Label: words.Say("chart.hb"), Unit: "g/dL", Digits: 1, Values: h.Hb, Min: 5, Max: 15, Lane: 3, Look: look[2]},
		{Label: words.Say("chart.bleed"), Unit: "mL/min", Values: h.Bleed, Max: 100, Lane: 4, Look: look[5]},
	}
	series := make([]ui.ChartSeries, 0, 9)
	for i := range lanes {
		lanes[i].DT = 1
		series = append(series, lanes[i])
	}
	if v.ShowTruth {
		// hidden truth is dotted in ink, never in a series' own colour
		units := [...]string{"", "", words.Say("chart.true_bed"), words.Say("chart.true_hb"), words.Say("chart.true_bleed")}
		for i, values := range [...][]float64{nil, nil, h.TrueBed, h.TrueHb, h.TrueB} {
			if values == nil {
				continue
			}
			t := lanes[i]
			t.Label, t.Unit, t.Values, t.Look = words.Say("chart.truth"), units[i], values, look[4]
			series = append(series, t)
		}
	}
	marks := make([]ui.ChartMark, len(h.Marks))
	for i, m := range h.Marks {
		marks[i] = ui.ChartMark{T: m.S, Label: m.Text}
	}
	view := c.Chart(ui.Chart{ID: ui.Name("charts"), Rect: r, Label: words.Say("chart.name"), From: d.chart.From, To: d.chart.To, First: 0,
		Last: lastS, Now: now, Cursor: d.chart.Cursor, Lanes: len(lanes), Series: series, Marks: marks, LabelW: 136, EndW: 104})
	if view.From != d.chart.From || view.To != d.chart.To {
		d.chosen = view.From > 0 || view.To < lastS
	}
	d.chart = view
}

// log is the running log, newest at the end.
func (d *Desk) log(c *ui.Core, v *View, r ui.Rect) {
	if v.MayTruth {
		head := r.CutBottom(40)
		if c.Checkbox(ui.Checkbox{ID: ui.Name("truth"), Rect: head, Label: words.Say("chart.show_truth"), On: v.ShowTruth}) {
			d.do(Act{Do: ToggleTruth})
		}
	}
	d.logLines(c, v, r)
}

const logText = 13

func (d *Desk) logLines(c *ui.Core, v *View, r ui.Rect) {
	id := ui.Name("log")
	if d.Dialog == NoDialog && (c.Focused() == 0 || isPartID(c.Focused())) {
		pageKeys(c, id, r.H)
	}
	width := r.W - 16 - 52
	step := ui.LineHeight(logText)
	// heights of the lines, from the newest back, only as many as the log keeps
	total := float32(0)
	for i := range v.Log {
		total += float32(lineCount(&v.Log[i], width)) * step
	}
	in := c.BeginScroll(ui.Scroll{ID: id, Rect: r, Content: total + 4, Stick: true})
	y := in.Y + 2
	for i := range v.Log {
		l := &v.Log[i]
		h := float32(lineCount(l, width)) * step
		if y+h >= r.Y && y <= r.Bottom() {
			st := ui.Style{Size: logText}
			switch l.Kind {
			case sim.Said, sim.Came:
			case sim.Refused, sim.Calmed:
				st.Col = c.Pal.Muted
			case sim.Alarmed:
				st.Weight = ui.SemiBold
			}
			c.Text(ui.R(in.X, y, 50, step), c.Clock(math.Floor(l.S)), ui.Style{Size: ui.SizeSmall, Tab: true, Col: c.Pal.Muted})
			c.Label(ui.Label{Rect: ui.R(in.X+52, y, width, h), Text: l.Text, Style: st})
		}
		y += h
	}
	c.EndScroll()
}

func lineCount(l *Line, width float32) int {
	w := ui.Regular
	if l.Kind == sim.Alarmed {
		w = ui.SemiBold
	}
	return max(1, ui.CountLines(l.Text, width, logText, w, false))
}
