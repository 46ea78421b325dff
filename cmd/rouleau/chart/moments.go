package chart

import (
	"cmp"
	"slices"

	"rouleau/cmd/rouleau-desk/ui"
)

// This file holds rows of moments: a few characters each, that a table beside the chart explains. Where they would lie on each
// other they are moved apart, and a thin line leads from each to its time. None is left out.

// Moments is a row of them.
type Moments struct {
	Name  string
	At    []Moment
	Guide bool // thin lines lead down through the lanes
}

// Moment is one moment.
type Moment struct {
	S    float64
	Text string
}

const (
	momentText  = 11
	momentH     = 15 // of a line of boxes
	leaderH     = 8
	betweenText = 2
)

// box is where the text of a moment stands.
type box struct {
	at, mid, wide float32 // its time; its middle; its width
	text          string
	line          int
}

// momentRow is a row in its place.
type momentRow struct {
	m     *Moments
	plot  ui.Rect
	top   float32
	boxes []box
	lines int
}

func (r *momentRow) high() float32 { return float32(r.lines*momentH + leaderH) }

// place finds room for every moment of a row, in as many lines as that takes.
func (ch *Chart) place(m *Moments, plot ui.Rect, top float32) momentRow {
	r := momentRow{m: m, plot: plot, top: top, lines: 1}
	at := slices.SortedStableFunc(slices.Values(m.At), func(a, b Moment) int { return cmp.Compare(a.S, b.S) })
	all := float32(0)
	for _, k := range at {
		b := box{at: plot.X + plot.W*float32(k.S/max(ch.EndS, 1)), text: k.Text}
		b.wide = ui.Style{Size: momentText, Tab: true}.Width(k.Text) + 7
		all += b.wide + betweenText
		r.boxes = append(r.boxes, b)
	}
	r.lines = max(1, int(all/(plot.W*0.9))+1)
	for line := range r.lines {
		var one []*box
		for i := line; i < len(r.boxes); i += r.lines {
			r.boxes[i].line = line
			one = append(one, &r.boxes[i])
		}
		apart(one, plot.X, plot.Right())
	}
	return r
}

// apart moves boxes that are in order of time off each other, each as little as can be, inside a width that has room for all.
// Boxes that would lie on each other form a block, which stands where the mean of their wishes is.
func apart(boxes []*box, left, right float32) {
	type block struct {
		wish float32 // of its first box, as the mean of all in it has it
		n    int
	}
	var blocks []block
	offset := make([]float32, len(boxes)) // from the middle of the first box, were all packed
	for i, b := range boxes {
		if i > 0 {
			offset[i] = offset[i-1] + (boxes[i-1].wide+b.wide)/2 + betweenText
		}
		last := block{b.at - offset[i], 1}
		for n := len(blocks); n > 0 && blocks[n-1].wish > last.wish; n = len(blocks) {
			k := blocks[n-1]
			last = block{(k.wish*float32(k.n) + last.wish*float32(last.n)) / float32(k.n+last.n), k.n + last.n}
			blocks = blocks[:n-1]
		}
		blocks = append(blocks, last)
	}
	if len(boxes) == 0 {
		return
	}
	least := left + boxes[0].wide/2
	most := right - boxes[len(boxes)-1].wide/2 - offset[len(boxes)-1]
	i := 0
	for _, k := range blocks {
		for range k.n {
			boxes[i].mid = max(min(k.wish, most), least) + offset[i]
			i++
		}
	}
}

// draw draws the row; foot is where the lanes end.
func (r *momentRow) draw(c *ui.Core, foot float32) {
	c.Text(ui.R(0, r.top, names-10, momentH), r.m.Name, ui.Style{Size: size - 2, Col: c.Pal.Muted})
	end := r.top + r.high()
	for _, b := range r.boxes {
		y := r.top + float32(b.line*momentH)
		if r.m.Guide {
			c.BeginPath()
			c.To(b.at, end)
			c.To(b.at, foot)
			c.Line(0.8, c.Pal.Edge, ui.Dash{On: 1.5, Off: 3.5}, false)
		}
		c.BeginPath()
		c.To(b.mid, y+momentH-1)
		c.To(b.mid, end-leaderH+1)
		c.To(b.at, end-2)
		c.To(b.at, end)
		c.Line(1, c.Pal.Edge, ui.Dash{}, false)
	}
	st := ui.Style{Size: momentText, Tab: true, Align: ui.AlignCenter}
	for _, b := range r.boxes {
		in := ui.R(b.mid-b.wide/2, r.top+float32(b.line*momentH), b.wide, momentH-1)
		c.Fill(in, 3, c.Pal.Ground)
		c.Frame(in, 3, 1, c.Pal.Edge)
		c.Text(in.InsetXY(-2, 0), b.text, st)
	}
}
