// The running log, newest at the end.

package bench

import (
	"math"

	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

const logText = 13

func (d *Desk) logLines(c *ui.Core, v *View, r ui.Rect) {
	id := ui.Name("log")
	if d.Dialog == NoDialog && (c.Focused() == 0 || isPartID(c.Focused())) {
		c.PageKeys(id, r.H)
	}
	width := r.W - 16 - 52
	step := ui.LineHeight(logText)
	d.log.count(v.Log, width)
	total := float32(0)
	for i := range v.Log {
		total += float32(d.log.lines[i].n) * step
	}
	in := c.BeginScroll(ui.Scroll{ID: id, Rect: r, Content: total + 4, Stick: true})
	y := in.Y + 2
	for i := range v.Log {
		l := &v.Log[i]
		h := float32(d.log.lines[i].n) * step
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

// logHeights keeps how many rows each line of the log takes: breaking hundreds of lines in every frame would cost more
// than all charts.
type logHeights struct {
	width float32
	lines []logHeight
}

type logHeight struct {
	text   string
	strong bool
	n      int
}

func (h *logHeights) count(log []Line, width float32) {
	if h.width != width {
		h.width, h.lines = width, h.lines[:0]
	}
	for len(h.lines) < len(log) {
		h.lines = append(h.lines, logHeight{})
	}
	for i := range log {
		k, strong := &h.lines[i], log[i].Kind == sim.Alarmed
		if k.n > 0 && k.text == log[i].Text && k.strong == strong {
			continue
		}
		weight := ui.Regular
		if strong {
			weight = ui.SemiBold
		}
		*k = logHeight{log[i].Text, strong, max(1, ui.CountLines(log[i].Text, width, logText, weight, false))}
	}
}
