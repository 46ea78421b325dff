// The lines of a chart: from values to points, and the words at their ends.

package ui

import (
	"math"
	"sort"
)

// endLabel is a value at the right of a chart, and where it would like to stand.
type endLabel struct {
	y    float32
	text string
	col  Color
}

// time is when value i was taken.
func (s *ChartSeries) time(i int) float64 {
	if s.Times != nil {
		return s.Times[i]
	}
	return s.T0 + float64(i)*s.DT
}

// index is the first value taken at or after t.
func (s *ChartSeries) index(t float64) int {
	if s.Times != nil {
		return sort.SearchFloat64s(s.Times, t)
	}
	if s.DT <= 0 {
		return 0
	}
	return int(min(max(math.Ceil((t-s.T0)/s.DT), 0), float64(len(s.Values))))
}

// at is the newest value at time t, NaN where there is none.
func (s *ChartSeries) at(t float64) float64 {
	i := s.index(t)
	if i == len(s.Values) || s.time(i) > t {
		i--
	}
	if i < 0 || i >= len(s.Values) {
		return math.NaN()
	}
	return s.Values[i]
}

// y places a value in its lane.
func (s *ChartSeries) y(lane Rect, v float64) float32 {
	span := s.Max - s.Min
	if span <= 0 {
		return lane.Y + lane.H/2
	}
	part := min(max((v-s.Min)/span, 0), 1)
	return lane.Bottom() - lane.H*float32(part)
}

// chartLine draws one series. Where there are more values than pixels, each
// pixel keeps its lowest and highest value, so that no peak is lost.
func (c *Core) chartLine(s *ChartSeries, lane Rect, from, to float64) {
	if to <= from || len(s.Values) == 0 || lane.Empty() {
		return
	}
	a, b := max(0, s.index(from)-1), min(len(s.Values), s.index(to)+1)
	perPixel := float64(b-a) / float64(lane.W)
	scale := float64(lane.W) / (to - from)
	x := func(i int) float32 { return lane.X + float32((s.time(i)-from)*scale) }
	draw := func() { c.Line(2, s.Look.Col, s.Look.Dash, false) }
	c.BeginPath()
	for i := a; i < b; {
		v := s.Values[i]
		if math.IsNaN(v) {
			draw()
			c.BeginPath()
			i++
			continue
		}
		if perPixel <= 2 {
			c.To(x(i), s.y(lane, v))
			i++
			continue
		}
		i = c.chartColumn(s, lane, i, b, x(i))
	}
	draw()
}

// chartColumn adds the values that share one pixel and returns the next index:
// one point where they are alike, else the lowest and the highest as they came.
func (c *Core) chartColumn(s *ChartSeries, lane Rect, i, end int, x0 float32) int {
	per := float64(end-i) / float64(max(lane.Right()-x0, 1))
	stop := min(end, i+max(1, int(per)))
	lo, hi := i, i
	for i++; i < stop && !math.IsNaN(s.Values[i]); i++ {
		if s.Values[i] < s.Values[lo] {
			lo = i
		}
		if s.Values[i] > s.Values[hi] {
			hi = i
		}
	}
	top, low := s.y(lane, s.Values[hi]), s.y(lane, s.Values[lo])
	if low-top < 1 {
		c.To(x0+0.5, (top+low)/2)
		return i
	}
	first, second := low, top
	if hi < lo {
		first, second = top, low
	}
	c.To(x0+0.3, first)
	c.To(x0+0.7, second)
	return i
}

// chartNames writes the name of each series at the left, with a piece of its
// line, several of one lane below each other.
func (c *Core) chartNames(g Chart, names, plot Rect) {
	n := max(g.Lanes, 1)
	for lane := range n {
		row := R(names.X, plot.Y, names.W-10, plot.H).Row(lane, n, 0)
		y := row.Y + 4
		for i := range g.Series {
			s := &g.Series[i]
			if s.Lane != lane {
				continue
			}
			line := R(row.X, y, row.W, LineHeight(SizeBody))
			if line.Bottom() > row.Bottom()+2 {
				break
			}
			piece := line.CutLeft(22)
			c.BeginPath()
			c.To(piece.X, piece.Y+piece.H/2)
			c.To(piece.Right(), piece.Y+piece.H/2)
			c.Line(2.5, s.Look.Col, s.Look.Dash, false)
			line.CutLeft(8)
			c.inner(g.ID, line, s.Label, Style{Size: SizeBody})
			y += LineHeight(SizeBody)
		}
	}
}

// chartEnds writes the newest value of each series, or that at the cursor, at
// the right. Labels that would lie on each other are pushed apart.
func (c *Core) chartEnds(g Chart, ends, plot Rect) {
	at, bold := min(g.To, g.Last), SemiBold
	if g.Cursor >= g.From && g.Cursor <= g.To {
		at = g.Cursor
	}
	c.ends = c.ends[:0]
	for i := range g.Series {
		s := &g.Series[i]
		v := s.at(at)
		if math.IsNaN(v) {
			continue
		}
		e := endLabel{s.y(g.lane(plot, s.Lane), v), c.Num(v, s.Digits, s.Unit), s.Look.Col}
		// Insertion keeps them in order of height without allocating.
		c.ends = append(c.ends, e)
		for j := len(c.ends) - 1; j > 0 && c.ends[j-1].y > e.y; j-- {
			c.ends[j], c.ends[j-1] = c.ends[j-1], c.ends[j]
		}
	}
	spread(c.ends, plot.Y+8, plot.Bottom()-8, LineHeight(SizeBody)-2)
	for _, e := range c.ends {
		c.inner(g.ID, R(ends.X+10, e.y-9, ends.W-10, 18), e.text, Style{Weight: bold, Tab: true, Col: e.col})
	}
}

// spread moves sorted labels apart by at least gap, inside top and bottom if
// there is room for all.
func spread(e []endLabel, top, bottom, gap float32) {
	at := top
	for i := range e {
		e[i].y = max(e[i].y, at)
		at = e[i].y + gap
	}
	at = bottom
	for i := len(e) - 1; i >= 0; i-- {
		e[i].y = min(e[i].y, at)
		at = e[i].y - gap
	}
}
