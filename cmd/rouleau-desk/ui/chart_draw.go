// The paper of a chart and its words: grid, times, names at the left, values at the right, the cursor.

package ui

import (
	"math"
	"slices"
	"strconv"
)

// endLabel is a value at the right of a chart, and where it would like to stand.
type endLabel struct {
	y    float32
	text string
	col  Color
}

const (
	samplePX = 22 // of a line beside its name
	scaleW   = 44 // for the ends of a lane's scale
)

// ticks are the distances of times on the axis, in seconds.
var ticks = [...]float64{5, 10, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14400}

func (c *Core) chartGrid(g *Chart, l *chartLayout) {
	for i := 0; i <= l.shown; i++ {
		y := l.plot.Y + l.plot.H*float32(i)/float32(l.shown)
		c.Segment(l.plot.X, y, l.plot.Right(), y, 1, c.Pal.Line)
	}
	c.chartMore(g, l)
	span := g.To - g.From
	if span <= 0 {
		return
	}
	small := Style{Size: l.size - 2, Tab: true, Col: c.Pal.Muted, Align: AlignCenter}
	room := small.Width("0:00:00") + 34
	step := ticks[len(ticks)-1]
	for _, s := range ticks {
		if float64(l.plot.W)*s/span >= float64(room) {
			step = s
			break
		}
	}
	for t := math.Ceil(g.From/step) * step; t <= g.To; t += step {
		x := l.x(t)
		c.Segment(x, l.foot.Y, x, l.foot.Y+4, 1, c.Pal.Edge)
		if g.Grid {
			c.Segment(x, l.plot.Y, x, l.plot.Bottom(), 1, c.Pal.Line)
		}
		if half := small.Width(c.Clock(t)) / 2; x-half >= l.plot.X && x+half <= l.plot.Right() && !l.nearCursor(g, x, 2*half+14) {
			c.TextAt(x, l.foot.Y+4+small.Size, c.Clock(t), small)
		}
	}
}

func (l *chartLayout) nearCursor(g *Chart, x, room float32) bool {
	return !math.IsNaN(g.Cursor) && math.Abs(float64(l.x(g.Cursor)-x)) < float64(room)
}

// chartMore says which lanes are in sight where not all fit: in figures, and by a bar at the right.
func (c *Core) chartMore(g *Chart, l *chartLayout) {
	if l.shown >= l.lanes {
		return
	}
	s := &c.chart
	if now := [3]int{l.top + 1, l.top + l.shown, l.lanes}; now != s.shown {
		s.shown, s.shownAs = now, strconv.Itoa(now[0])+"–"+strconv.Itoa(now[1])+" / "+strconv.Itoa(now[2])+" ↕"
	}
	st := Style{Size: l.size - 2, Tab: true, Col: c.Pal.Muted}
	if l.names.W > st.Width(s.shownAs) {
		c.TextAt(l.names.X, l.foot.Y+4+st.Size, s.shownAs, st)
	}
	lane := Rect{g.Rect.Right() - 4, l.plot.Y, 4, l.plot.H}
	c.Fill(lane, 2, c.Pal.Shade)
	part := lane.H / float32(l.lanes)
	c.Fill(Rect{lane.X, lane.Y + part*float32(l.top), lane.W, part * float32(l.shown)}, 2, c.Pal.Edge)
}

// chartNamesWidth is how wide the names of all rows are.
func (c *Core) chartNamesWidth(g *Chart, l *chartLayout) float32 {
	w, st := float32(56), Style{Size: l.size}
	for i := range g.Series {
		need := samplePX + 8 + st.Width(g.Series[i].Label) + 12
		if g.Ends {
			need += scaleW
		}
		w = max(w, need)
	}
	st.Size = l.size - 2
	for _, names := range [...][]string{g.MarkNames, g.BandNames} {
		for _, n := range names {
			w = max(w, st.Width(n)+14)
		}
	}
	most := g.Rect.W * 0.34
	if g.Ends {
		most = g.Rect.W * 0.38
	}
	return float32(math.Ceil(float64(min(w, most))))
}

// chartEndsWidth is how wide the widest value can be.
func (c *Core) chartEndsWidth(g *Chart, l *chartLayout) float32 {
	w, st := float32(60), Style{Size: l.size, Weight: SemiBold, Tab: true}
	for i := range g.Series {
		s := &g.Series[i]
		w = max(w, st.Width(c.Num(s.Max, s.Digits, s.Unit)), st.Width(c.Num(s.Min, s.Digits, s.Unit)))
	}
	return float32(math.Ceil(float64(w))) + 20
}

// chartNames writes the name of each series at the left with a piece of its line, or in its lane where there is no room
// beside it. Where not all of it could be read, pointing at it shows the whole.
func (c *Core) chartNames(t target, g *Chart, l *chartLayout) {
	for lane := range l.shown {
		box := l.plot.Row(lane, l.shown, 0)
		if l.compact {
			c.chartCaption(g, l, lane+l.top, box.CutTop(l.row))
			continue
		}
		row := Rect{l.names.X, box.Y, l.names.W - 8, box.H}
		at, cut := row, false
		if g.Ends {
			at.CutRight(scaleW - 8)
		}
		air := max((row.H-l.row*float32(g.inLane(lane+l.top)))/2, 1)
		at.CutTop(min(air, 6))
		for i := range g.Series {
			s := &g.Series[i]
			if s.Lane != lane+l.top {
				continue
			}
			if at.H < l.row-2 {
				cut = true
				break
			}
			line := at.CutTop(l.row)
			c.chartSample(line.CutLeft(samplePX), s)
			line.CutLeft(8)
			cut = c.chartName(g, line, s.Label, Style{Size: l.size}) || cut
		}
		c.chartScale(g, l, lane+l.top, row)
		if cut && t.over && row.Has(c.in.Pointer) {
			c.tipRect, c.tipText, c.tipMore = row, g.laneNames(lane+l.top), ""
		}
	}
}

// chartName writes a name and says whether it was cut. The whole can be read by pointing, so the mark is not cut.
func (c *Core) chartName(g *Chart, r Rect, text string, s Style) bool {
	cut := c.inner(g.ID, r, text, s)
	if cut {
		c.l.Marks[len(c.l.Marks)-1].Cut = false
	}
	return cut
}

func (g *Chart) inLane(lane int) (n int) {
	for i := range g.Series {
		if g.Series[i].Lane == lane {
			n++
		}
	}
	return n
}

// laneNames are the names of a lane below each other; it is asked for only while somebody points at them.
func (g *Chart) laneNames(lane int) (names string) {
	for i := range g.Series {
		if s := &g.Series[i]; s.Lane == lane {
			if names != "" {
				names += "\n"
			}
			names += s.Label
		}
	}
	return names
}

func (c *Core) chartSample(piece Rect, s *ChartSeries) {
	c.BeginPath()
	c.To(piece.X, piece.Y+piece.H/2)
	c.To(piece.Right(), piece.Y+piece.H/2)
	c.Line(2.5, s.Look.Col, s.Look.Dash, false)
}

// chartScale writes the ends of a lane's scale at the right of a box: above each other, or in one line where it is low.
func (c *Core) chartScale(g *Chart, l *chartLayout, lane int, row Rect) {
	i := slices.IndexFunc(g.Series, func(s ChartSeries) bool { return s.Lane == lane })
	if !g.Ends || i < 0 {
		return
	}
	s, st := &g.Series[i], Style{Size: l.size - 2, Tab: true, Col: c.Pal.Muted, Align: AlignRight}
	top, bottom, h := c.scaleEnd(s, s.Max), c.scaleEnd(s, s.Min), LineHeight(st.Size)
	if row.H >= 2*h {
		c.inner(g.ID, Rect{row.X, row.Y + 1, row.W, h - 1}, top, st)
		c.inner(g.ID, Rect{row.X, row.Bottom() - h, row.W, h - 1}, bottom, st)
		return
	}
	for _, text := range [...]string{top, "–", bottom} {
		c.inner(g.ID, row, text, st)
		row.CutRight(st.Width(text))
	}
}

// scaleEnd is one end of a scale, without digits that say nothing.
func (c *Core) scaleEnd(s *ChartSeries, v float64) string {
	digits, power := 0, 1.0
	for digits < s.Digits && math.Abs(v*power-math.Round(v*power)) > 1e-6 {
		digits, power = digits+1, power*10
	}
	return c.Num(v, digits, "")
}

// chartCaption writes names and values of a lane into one line above it.
func (c *Core) chartCaption(g *Chart, l *chartLayout, lane int, row Rect) {
	if g.Ends && row.W > 3*scaleW {
		c.chartScale(g, l, lane, row.CutRight(scaleW))
		row.CutRight(8)
	}
	name, value := Style{Size: l.size - 1}, Style{Size: l.size - 1, Weight: SemiBold, Tab: true}
	at := g.readAt()
	for i := range g.Series {
		s := &g.Series[i]
		if s.Lane != lane {
			continue
		}
		text := ""
		if v := s.at(at); !math.IsNaN(v) {
			text = c.Num(v, s.Digits, s.Unit)
		}
		value.Col = s.Look.Col
		nw, vw := name.Width(s.Label)+8, value.Width(text)+16
		if row.W < samplePX+8+nw+vw {
			nw = max(row.W-samplePX-8-vw, 0)
		}
		if row.W < samplePX+8+vw {
			break
		}
		c.chartSample(row.CutLeft(samplePX), s)
		row.CutLeft(6)
		c.chartName(g, row.CutLeft(nw), s.Label, name)
		c.inner(g.ID, row.CutLeft(vw), text, value)
	}
}

// readAt is the time whose values are shown: that of the cursor, else the newest in sight.
func (g *Chart) readAt() float64 {
	if g.Cursor >= g.From && g.Cursor <= g.To {
		return g.Cursor
	}
	return min(g.To, g.Last)
}

func (c *Core) chartCursor(g *Chart, l *chartLayout) {
	if g.Now >= g.From && g.Now <= g.To {
		x := l.x(g.Now)
		c.Segment(x, l.plot.Y, x, l.plot.Bottom()+4, 1.5, c.Pal.Ink)
	}
	if !(g.Cursor >= g.From && g.Cursor <= g.To) {
		return
	}
	x := l.x(g.Cursor)
	c.Segment(x, l.bands.Y, x, l.plot.Bottom(), 1.2, c.Pal.Accent)
	word := c.Clock(math.Floor(g.Cursor))
	st := Style{Size: l.size - 2, Weight: SemiBold, Tab: true, Col: c.Pal.OnDark, Align: AlignCenter}
	w := st.Width(word) + 12
	box := R(min(max(x-w/2, l.plot.X), max(l.plot.Right()-w, l.plot.X)), l.foot.Y+1, w, l.foot.H-1)
	c.Fill(box, 4, c.Pal.Dark)
	c.inner(g.ID, box, word, st)
	for i := range g.Series {
		s := &g.Series[i]
		lane, ok := l.lane(s.Lane)
		if val := s.at(g.Cursor); ok && !math.IsNaN(val) {
			y := s.y(lane, val)
			c.Disc(R(x-4, y-4, 8, 8), c.Pal.Ground)
			c.Disc(R(x-3, y-3, 6, 6), s.Look.Col)
		}
	}
}

// chartEnds writes the newest value of each series, or that at the cursor, at the right, each in its lane as long as there is
// room. Labels that would lie on each other are pushed apart.
func (c *Core) chartEnds(g *Chart, l *chartLayout) {
	if l.compact {
		return
	}
	at, e := g.readAt(), c.chart.ends[:0]
	for n := l.top; n < l.top+l.shown; n++ {
		lane, _ := l.lane(n)
		first := len(e)
		for i := range g.Series {
			s := &g.Series[i]
			v := s.at(at)
			if s.Lane != n || math.IsNaN(v) {
				continue
			}
			// Insertion keeps them in order of height without allocating.
			e = append(e, endLabel{s.y(lane, v), c.Num(v, s.Digits, s.Unit), s.Look.Col})
			for j := len(e) - 1; j > first && e[j-1].y > e[j].y; j-- {
				e[j], e[j-1] = e[j-1], e[j]
			}
		}
		cell, _ := l.cell(n)
		spread(e[first:], cell.Y+8, cell.Bottom()-8, l.row-2)
	}
	c.chart.ends = e
	spread(e, l.plot.Y+8, l.plot.Bottom()-8, l.row-2)
	for _, k := range e {
		c.inner(g.ID, R(l.ends.X+10, k.y-l.row/2, l.ends.W-16, l.row), k.text, Style{Size: l.size, Weight: SemiBold, Tab: true, Col: k.col})
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
