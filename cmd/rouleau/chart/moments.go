package chart

import (
	"cmp"
	"slices"
	"strconv"

	"rouleau/cmd/rouleau-desk/ui"
)

// This file holds rows of moments: a few characters each, that a table beside the chart explains. Where they would lie on each
// other they are moved apart, and a thin line leads from each to its time. None is left out. A row may have a strip of ticks
// for much more than is named.

// Moments is a row of them.
type Moments struct {
	Name  string
	At    []Moment
	Guide bool // thin lines lead down through the lanes

	strip  []tick   // everything that happened, named or not
	counts []string // said behind the strip
}

// Moment is one moment.
type Moment struct {
	S    float64
	Text string

	number int // in place of Text; neighbours without room become one, such as 3–7
}

const (
	momentText  = small
	momentH     = 15 // of a line of boxes
	leaderH     = 6
	betweenText = 2
	stripH      = 8
	underStrip  = 2
	mostMoved   = 22 // farther from its time a number is not moved
)

// box is where the text of a moment stands.
type box struct {
	at, mid, wide float32 // its time; its middle; its width
	from, to      float32 // what it stands for
	text          string
	line          int
}

// momentRow is a row in its place.
type momentRow struct {
	m     *Moments
	plot  ui.Rect
	x     func(s float64) float32
	form  form
	top   float32
	boxes []box
	lines int
}

func (r *momentRow) high() float32 {
	high := float32(0)
	if len(r.boxes) > 0 || len(r.m.strip) == 0 {
		high += float32(r.lines*momentH + leaderH)
	}
	if len(r.m.strip) > 0 {
		high += stripH + underStrip
	}
	return high
}

// place finds room for every moment of a row, in as many lines as that takes. Numbered ones take one line.
func (ch *Chart) place(m *Moments, plot ui.Rect, top float32) momentRow {
	x := func(s float64) float32 { return plot.X + plot.W*float32(s/max(ch.EndS, 1)) }
	r := momentRow{m: m, plot: plot, x: x, form: ch.form, top: top, lines: 1}
	at := slices.SortedStableFunc(slices.Values(m.At), func(a, b Moment) int { return cmp.Compare(a.S, b.S) })
	if len(at) > 0 && at[0].number > 0 {
		r.gather(at)
		return r
	}
	all := float32(0)
	for _, k := range at {
		b := newBox(x(k.S), x(k.S), k.Text)
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

func newBox(from, to float32, text string) box {
	return box{at: (from + to) / 2, from: from, to: to, text: text, wide: ui.Style{Size: momentText, Tab: true}.Width(text) + 7}
}

// gather makes boxes of numbers that follow each other. Where one would have to be moved far from its time, the two nearest
// ones of those that crowd there share a box, until none has to be.
func (r *momentRow) gather(at []Moment) {
	type stretch struct{ from, to int }
	var shared []stretch
	for i := range at {
		shared = append(shared, stretch{i, i})
	}
	for {
		r.boxes = r.boxes[:0]
		for _, k := range shared {
			r.boxes = append(r.boxes, newBox(r.x(at[k.from].S), r.x(at[k.to].S), numbers(at[k.from].number, at[k.to].number)))
		}
		one := make([]*box, len(r.boxes))
		for i := range r.boxes {
			one[i] = &r.boxes[i]
		}
		apart(one, r.plot.X, r.plot.Right())
		i := r.crowded()
		if i < 0 {
			return
		}
		shared[i].to = shared[i+1].to
		shared = slices.Delete(shared, i+1, i+2)
	}
}

// numbers names one number or several that follow each other.
func numbers(from, to int) string {
	if from == to {
		return strconv.Itoa(from)
	}
	return strconv.Itoa(from) + "–" + strconv.Itoa(to)
}

// crowded is the first of the two boxes that are to share one, -1 where none stands far from its time.
func (r *momentRow) crowded() int {
	worst, far := -1, float32(mostMoved)
	for i := range r.boxes {
		if moved := max(r.boxes[i].mid-r.boxes[i].at, r.boxes[i].at-r.boxes[i].mid); moved > far {
			worst, far = i, moved
		}
	}
	if worst < 0 || len(r.boxes) < 2 {
		return -1
	}
	touch := func(i int) bool { // box i and the one after it
		return i >= 0 && i+1 < len(r.boxes) && r.boxes[i+1].mid-r.boxes[i].mid < (r.boxes[i].wide+r.boxes[i+1].wide)/2+betweenText+0.5
	}
	first, last := worst, worst // of those that push each other
	for touch(first - 1) {
		first--
	}
	for touch(last) {
		last++
	}
	if first == last { // pushed by the edge alone
		return -1
	}
	best := first
	for i := first; i < last; i++ {
		if r.boxes[i+1].from-r.boxes[i].to < r.boxes[best+1].from-r.boxes[best].to {
			best = i
		}
	}
	return best
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
	high := r.high()
	c.Text(ui.R(r.form.edge, r.top, r.form.names-r.form.edge-10, max(momentH, high-underStrip)), r.m.Name, ui.Style{Size: small, Col: c.Pal.Muted})
	end := r.top + high
	if len(r.m.strip) > 0 {
		end -= stripH + underStrip
		drawStrip(c, r.m.strip, r.plot, end, r.x)
	}
	for i, text := range r.m.counts {
		c.Text(ui.R(r.plot.Right()+10, r.top+(high-underStrip-float32(13*len(r.m.counts)))/2+float32(13*i), r.form.ends-12, 13), text, ui.Style{Size: small, Tab: true, Col: c.Pal.Muted})
	}
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
		if b.to > b.from+1 {
			c.Segment(b.from, end-1, b.to, end-1, 1, c.Pal.Edge)
		}
	}
	st := ui.Style{Size: momentText, Tab: true, Align: ui.AlignCenter}
	for _, b := range r.boxes {
		in := ui.R(b.mid-b.wide/2, r.top+float32(b.line*momentH), b.wide, momentH-1)
		c.Fill(in, 3, c.Pal.Ground)
		c.Frame(in, 3, 1, c.Pal.Edge)
		c.Text(in.InsetXY(-2, 0), b.text, st)
	}
}
