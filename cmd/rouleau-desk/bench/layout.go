// Where things stand on the bench, by the size of the window: wide windows have the panel at the right, high ones below the
// drawing. The stop keeps its place whatever else is shown.

package bench

import (
	"rouleau/cmd/rouleau-desk/ui"
)

// Least size of the window, in logical pixels.
const (
	LeastWidth  = 900
	LeastHeight = 600
)

const (
	topHeight  = 78
	timeHeight = 48
	stopHeight = 52
	// leastDrawing is the height below which the drawing takes the place of log and charts.
	leastDrawing = 320
)

// places are the parts of the bench.
type places struct {
	tall                             bool
	top, time, panel, strip, drawing ui.Rect
	stop                             ui.Rect
	aside                            ui.Rect // where dialogs may lie without covering the stop
}

func placesOf(size ui.Vec) (p places) {
	window := ui.Rect{W: size.X, H: size.Y}
	p.tall = size.Y > size.X
	p.top, p.time = window.CutTop(topHeight), window.CutTop(timeHeight)
	if p.tall {
		p.drawing = window.CutTop(whole(min(window.W*(sheetH+60)/sheetW, window.H*0.5)))
		p.aside = ui.R(0, 0, size.X, p.drawing.Bottom())
		p.panel = window.CutLeft(whole(min(max(size.X*0.4, 300), 440))).Inset(8)
		p.strip = window
	} else {
		wide := whole(min(max(size.X*0.27, 284), 400))
		p.aside = ui.R(0, 0, size.X-wide, size.Y)
		p.panel = window.CutRight(wide).Inset(8)
		p.strip = window.CutBottom(whole(min(max(window.H*0.28, 112), 250)))
		p.drawing = window
	}
	p.stop = ui.R(p.panel.X+12, p.panel.Y+12, p.panel.W-24, stopHeight)
	return p
}

// whole is a length without fractions, so that edges lie on pixels.
func whole(x float32) float32 { return float32(int(x)) }

// stopRect is where the stop of pump and bowl stands, whatever else is on the screen.
func stopRect(size ui.Vec) ui.Rect { return placesOf(size).stop }

// bench is the screen a case is played on.
func (d *Desk) bench(c *ui.Core, v *View) {
	d.onLine = max(v.newest(), 0)
	p := placesOf(c.Size())
	d.topBar(c, v, p.top)
	c.Segment(0, p.top.Bottom()+0.5, p.top.W, p.top.Bottom()+0.5, 1, c.Pal.Line)
	d.timeRow(c, v, p.time.InsetXY(8, 0))
	room := p.drawing
	if p.tall {
		p.strip = d.guide(c, v, p.strip)
	} else {
		room = d.guide(c, v, room.Union(p.strip))
	}
	room = d.bands(c, v, room)
	if d.board.large {
		d.largeCharts(c, v, room, p.panel)
	} else {
		if !p.tall {
			p.strip = room.CutBottom(d.stripRoom(v, p.strip.H))
		}
		if !p.tall && room.H < leastDrawing && !p.strip.Empty() {
			room.H, p.strip.H = room.H+p.strip.H, 0 // the log comes back when the band has gone
		}
		drawScene(c, v, d, room)
		if !p.strip.Empty() {
			c.Segment(p.strip.X, p.strip.Y, p.strip.Right(), p.strip.Y, 1, c.Pal.Line)
			d.charts(c, v, p.strip)
		}
		d.panel(c, v, p.panel)
	}
	d.dialogs(c, v)
	d.quickKeys(c)
	d.arrows(c)
}

// bands are what stands between time row and drawing only now and then. They give back the room that is left.
func (d *Desk) bands(c *ui.Core, v *View, r ui.Rect) ui.Rect {
	if v.Watching {
		d.watchBand(c, v, &r)
	}
	if v.Notice != "" {
		d.band(c, &r, v.Notice)
	}
	return r
}

// band is a line of words over the width of the drawing.
func (d *Desk) band(c *ui.Core, r *ui.Rect, text string) {
	st := ui.Style{Size: 13}
	w := r.W - 32
	h := c.LabelHeight(text, w, st)
	box := r.CutTop(max(h+8, 26)).InsetXY(6, 1)
	c.Fill(box, 6, c.Pal.Panel)
	c.Frame(box, 6, 1.2, c.Pal.Edge)
	in := box.InsetXY(10, 1)
	c.Label(ui.Label{Rect: in.Place(in.W, h, 0, 0.5), Text: text, Style: st})
}

// wideAs is how wide a button is with its words on one line.
func wideAs(c *ui.Core, b *ui.Button) float32 {
	w := ui.TextWidth(b.Label, ui.SizeBody, ui.SemiBold, false) + 26
	if k := c.KeyCapWidth(b.Key); k > 0 {
		w += k + 8
	}
	if b.Selected {
		w += 28
	}
	return w
}

// fitting is the first of some wordings, from long to short, that fits into a width on one line; the last if none does.
func fitting(w float32, st ui.Style, texts ...string) string {
	for _, t := range texts {
		if st.Width(t) <= w {
			return t
		}
	}
	return texts[len(texts)-1]
}
