// The strip chart: several series over time in lanes below each other, with
// marks, a cursor, and zooming by wheel, keys and pinch.

package ui

import "math"

// ChartSeries is one line of a chart. Values are evenly spaced from T0 by DT,
// or stand at Times if that is given. NaN is a gap.
type ChartSeries struct {
	Label    string
	Unit     string
	Digits   int
	Values   []float64
	T0, DT   float64
	Times    []float64
	Min, Max float64
	Lane     int
	Look     Series
}

// ChartMark is a moment with a name.
type ChartMark struct {
	T     float64
	Label string
}

// Chart is a strip chart. Times are in seconds. The caller keeps From, To and
// Cursor as ChartView returns them; a Cursor of NaN is none.
type Chart struct {
	ID       ID
	Rect     Rect
	Label    string // names the chart for tests and assistive code; not drawn
	From, To float64
	First    float64 // the earliest time that can be shown
	Last     float64 // the latest
	Now      float64 // a line at the present; NaN for none
	Cursor   float64
	Lanes    int
	Series   []ChartSeries
	Marks    []ChartMark
	LabelW   float32 // width at the left for names; 0 means 120
	EndW     float32 // width at the right for values; 0 means 130
}

// ChartView is what part of the time is shown, and where the cursor stands.
type ChartView struct{ From, To, Cursor float64 }

const (
	chartFoot  = 18 // height of the row of times
	chartHead  = 16 // height of the row of marks
	minSpanSec = 10
)

// Chart draws a chart and returns the view the person asks for.
func (c *Core) Chart(g Chart) ChartView {
	if g.LabelW == 0 {
		g.LabelW = 120
	}
	if g.EndW == 0 {
		g.EndW = 130
	}
	t := c.place(g.ID, g.Rect, KindChart, g.Label, "")
	plot := g.Rect
	names := plot.CutLeft(g.LabelW)
	ends := plot.CutRight(g.EndW)
	foot := plot.CutBottom(chartFoot)
	head := R(plot.X, plot.Y, plot.W, 0)
	if len(g.Marks) > 0 {
		head = plot.CutTop(chartHead)
	}
	v := c.chartInput(t, g, plot)
	c.chartGrid(g, plot, head, foot)
	c.chartNames(g, names, plot)
	c.PushClip(plot.Inset(-1))
	for i := range g.Series {
		c.chartLine(&g.Series[i], g.lane(plot, g.Series[i].Lane), g.From, g.To)
	}
	c.PopClip()
	c.chartCursor(g, plot, foot)
	c.chartEnds(g, ends, plot)
	c.ring(t, g.Rect.Inset(3))
	return v
}

// lane is the box of a lane, with some air above and below its lines.
func (g *Chart) lane(plot Rect, i int) Rect {
	return plot.Row(i, max(g.Lanes, 1), 0).InsetXY(0, 5)
}

func (g *Chart) x(plot Rect, t float64) float32 {
	return plot.X + float32((t-g.From)/(g.To-g.From))*plot.W
}

// chartInput reads wheel, keys, fingers and pointer.
func (c *Core) chartInput(t target, g Chart, plot Rect) ChartView {
	v := ChartView{g.From, g.To, g.Cursor}
	span := g.To - g.From
	if span <= 0 || plot.W <= 0 {
		return v
	}
	at := g.From + float64((c.in.Pointer.X-plot.X)/plot.W)*span
	inPlot := t.over && plot.Has(c.in.Pointer)
	if inPlot && !t.held && !c.fromTouch || t.began {
		v.Cursor = at
	} else if !inPlot && c.chartHover == g.ID {
		v.Cursor = math.NaN()
	}
	if inPlot {
		c.chartHover = g.ID
	} else if c.chartHover == g.ID {
		c.chartHover = 0
	}
	factor, pivot := 1.0, at
	if c.wheelOn == g.ID && c.in.Wheel.Y != 0 && !c.wheelUsed {
		c.wheelUsed = true
		factor = math.Pow(0.85, float64(c.in.Wheel.Y))
	}
	if inPlot && c.pinch != 1 {
		factor = 1 / float64(c.pinch)
	}
	if t.held && !t.began && c.pinch == 1 {
		shift := float64((c.in.Pointer.X-c.chartGrab)/plot.W) * span
		v.From, v.To = v.From-shift, v.To-shift
	}
	c.chartGrab = c.in.Pointer.X
	if t.focused {
		factor, pivot = c.chartKeys(g, &v, factor, pivot)
	}
	if factor != 1 {
		pivot = min(max(pivot, v.From), v.To)
		v.From = pivot - (pivot-v.From)*factor
		v.To = pivot + (v.To-pivot)*factor
	}
	return g.bound(v)
}

func (c *Core) chartKeys(g Chart, v *ChartView, factor, pivot float64) (float64, float64) {
	step := (g.To - g.From) / 100
	start := func() {
		if math.IsNaN(v.Cursor) {
			v.Cursor = min(g.To, g.Last)
		}
	}
	for _, k := range [...]struct {
		key Key
		by  float64
	}{{KeyLeft, -step}, {KeyRight, step}, {KeyPageUp, -20 * step}, {KeyPageDown, 20 * step}} {
		if _, ok := c.take(g.ID, k.key, 0); ok {
			start()
			v.Cursor = min(max(v.Cursor+k.by, g.First), g.Last)
		}
	}
	if _, ok := c.take(g.ID, KeyHome, 0); ok {
		v.Cursor = g.First
	}
	if _, ok := c.take(g.ID, KeyEnd, 0); ok {
		v.Cursor = g.Last
	}
	if _, ok := c.take(g.ID, KeyEscape, 0); ok {
		v.Cursor = math.NaN()
	}
	zoom := 0
	if _, ok := c.take(g.ID, KeyUp, 0); ok {
		zoom++
	}
	if _, ok := c.take(g.ID, KeyDown, 0); ok {
		zoom--
	}
	for _, r := range c.in.Runes {
		switch r {
		case '+':
			zoom++
		case '-':
			zoom--
		}
	}
	if zoom != 0 {
		factor, pivot = math.Pow(0.7, float64(zoom)), v.To
		if !math.IsNaN(v.Cursor) {
			pivot = v.Cursor
		}
	}
	// A cursor moved out of sight by keys takes the view along.
	if v.Cursor < v.From {
		v.From, v.To = v.Cursor, v.To-(v.From-v.Cursor)
	}
	if v.Cursor > v.To {
		v.From, v.To = v.From+(v.Cursor-v.To), v.Cursor
	}
	return factor, pivot
}

// bound keeps a view inside the times there are.
func (g *Chart) bound(v ChartView) ChartView {
	whole := max(g.Last-g.First, minSpanSec)
	span := min(max(v.To-v.From, minSpanSec), whole)
	if d := v.To - v.From; d != span && (d < minSpanSec || d > whole) {
		v.To = v.From + span
	}
	if v.From < g.First {
		v.From, v.To = g.First, g.First+span
	}
	if end := g.First + whole; v.To > end {
		v.From, v.To = end-span, end
	}
	return v
}

// ticks are the distances of times on the axis, in seconds.
var ticks = [...]float64{5, 10, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14400}

func (c *Core) chartGrid(g Chart, plot, head, foot Rect) {
	n := max(g.Lanes, 1)
	for i := 0; i <= n; i++ {
		y := plot.Y + plot.H*float32(i)/float32(n)
		c.Segment(plot.X, y, plot.Right(), y, 1, c.Pal.Line)
	}
	span := g.To - g.From
	if span <= 0 {
		return
	}
	small := Style{Size: SizeSmall, Tab: true, Col: c.Pal.Muted, Align: AlignCenter}
	step := ticks[len(ticks)-1]
	for _, s := range ticks {
		if float64(plot.W)*s/span >= 84 {
			step = s
			break
		}
	}
	for t := math.Ceil(g.From/step) * step; t <= g.To; t += step {
		x := g.x(plot, t)
		c.Segment(x, foot.Y, x, foot.Y+4, 1, c.Pal.Edge)
		if half := small.Width(c.Clock(t)) / 2; x-half >= plot.X && x+half <= plot.Right() && !g.nearCursor(plot, x) {
			c.TextAt(x, foot.Y+4+SizeSmall, c.Clock(t), small)
		}
	}
	small.Align, small.Tab = AlignLeft, false
	free := plot.X
	for i := range g.Marks {
		m := &g.Marks[i]
		if m.T < g.From || m.T > g.To {
			continue
		}
		x := g.x(plot, m.T)
		c.BeginPath()
		c.To(x, plot.Y)
		c.To(x, plot.Bottom())
		c.Line(1, c.Pal.Edge, Dash{On: 2, Off: 3}, false)
		c.BeginPath()
		c.To(x-3.5, plot.Y-5)
		c.To(x+3.5, plot.Y-5)
		c.To(x, plot.Y)
		c.Polygon(c.Pal.Edge)
		// Names that would run into each other give way; the mark stays.
		if w := small.Width(m.Label); x+6 >= free && x+6+w <= plot.Right() {
			c.TextAt(x+6, head.Y+SizeSmall-1, m.Label, small)
			free = x + 6 + w + 8
		}
	}
}

func (g *Chart) nearCursor(plot Rect, x float32) bool {
	return !math.IsNaN(g.Cursor) && math.Abs(float64(g.x(plot, g.Cursor)-x)) < 64
}

func (c *Core) chartCursor(g Chart, plot, foot Rect) {
	if g.Now >= g.From && g.Now <= g.To {
		x := g.x(plot, g.Now)
		c.Segment(x, plot.Y, x, plot.Bottom()+4, 1.5, c.Pal.Ink)
	}
	if !(g.Cursor >= g.From && g.Cursor <= g.To) {
		return
	}
	x := g.x(plot, g.Cursor)
	c.Segment(x, plot.Y, x, plot.Bottom(), 1.2, c.Pal.Accent)
	word := c.Clock(math.Floor(g.Cursor))
	st := Style{Size: SizeSmall, Weight: SemiBold, Tab: true, Col: c.Pal.OnDark, Align: AlignCenter}
	w := st.Width(word) + 12
	box := R(min(max(x-w/2, plot.X), max(plot.Right()-w, plot.X)), foot.Y+1, w, foot.H-2)
	c.Fill(box, 4, c.Pal.Dark)
	c.inner(g.ID, box, word, st)
	for i := range g.Series {
		s := &g.Series[i]
		if val := s.at(g.Cursor); !math.IsNaN(val) {
			y := s.y(g.lane(plot, s.Lane), val)
			c.Disc(R(x-4, y-4, 8, 8), c.Pal.Ground)
			c.Disc(R(x-3, y-3, 6, 6), s.Look.Col)
		}
	}
}
