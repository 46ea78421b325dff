// The lines of a chart: from values to points, kept until something changes.

package ui

import "math"

// lineID names a line: which chart, which series.
type lineID struct {
	chart ID
	i     int
}

// lineKey is all that the points of a line depend on.
type lineKey struct {
	track       *Track
	n           int
	first, last float32
	from, to    float64
	t0, dt      float64
	min, max    float64
	lane        Rect
}

// lineCache is the points of a line; each end is where one piece of it ends, as gaps divide it.
type lineCache struct {
	key  lineKey
	pts  []Vec
	ends []int
}

// at is the newest value at time t, NaN where there is none.
func (s *ChartSeries) at(t float64) float64 {
	if s.Track == nil || s.DT <= 0 || t < s.T0 {
		return math.NaN()
	}
	return s.Track.At(min(int(math.Floor((t-s.T0)/s.DT+1e-9)), s.Track.Len()-1))
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

// chartLine draws one series.
func (c *Core) chartLine(id ID, i int, s *ChartSeries, lane Rect, from, to float64) {
	if to <= from || s.Track == nil || s.Track.Len() == 0 || s.DT <= 0 || lane.Empty() {
		return
	}
	if c.chart.lines == nil {
		c.chart.lines = map[lineID]*lineCache{}
	}
	k := c.chart.lines[lineID{id, i}]
	if k == nil {
		k = &lineCache{}
		c.chart.lines[lineID{id, i}] = k
	}
	n := s.Track.Len()
	key := lineKey{s.Track, n, s.Track.vals[0], s.Track.vals[n-1], from, to, s.T0, s.DT, s.Min, s.Max, lane}
	// A value that is no number is never equal to itself: such a row counts as having zero there.
	if key.first != key.first {
		key.first = 0
	}
	if key.last != key.last {
		key.last = 0
	}
	if k.key != key {
		k.key = key
		k.make(s, lane, from, to)
	}
	start := 0
	for _, end := range k.ends {
		c.BeginPath()
		c.l.Points = append(c.l.Points, k.pts[start:end]...)
		c.Line(2, s.Look.Col, s.Look.Dash, false)
		start = end
	}
}

// make computes the points. Where there are more values than pixels, a group of them keeps its lowest and its highest,
// so that no peak is lost.
func (k *lineCache) make(s *ChartSeries, lane Rect, from, to float64) {
	k.pts, k.ends = k.pts[:0], k.ends[:0]
	scale := float64(lane.W) / (to - from)
	level := s.Track.level(1 / (s.DT * scale))
	size := 1
	if level >= 0 {
		size = leastGroup << level
	}
	n := (s.Track.Len() + size - 1) / size
	each := s.DT * float64(size)
	a := max(0, int(math.Floor((from-s.T0)/each))-1)
	b := min(n, int(math.Ceil((to-s.T0)/each))+2)
	for i := a; i < b; i++ {
		x := lane.X + float32((s.T0+float64(i)*each-from)*scale)
		if level < 0 {
			k.add(x, s.y(lane, float64(s.Track.vals[i])), s.Track.vals[i])
			continue
		}
		e := s.Track.groups[level][i]
		high, low := s.y(lane, float64(e.hi)), s.y(lane, float64(e.lo))
		wide := float32(each * scale)
		if low-high < 1 {
			k.add(x+wide/2, (high+low)/2, e.lo)
			continue
		}
		if !e.highFirst {
			high, low = low, high
		}
		k.add(x+wide*0.3, high, e.lo)
		k.add(x+wide*0.7, low, e.lo)
	}
	k.cut()
}

// add adds a point, or ends the piece where there is no value. A third point on one level takes the place of the second.
func (k *lineCache) add(x, y, v float32) {
	if v != v {
		k.cut()
		return
	}
	start := 0
	if m := len(k.ends); m > 0 {
		start = k.ends[m-1]
	}
	if n := len(k.pts); n-start >= 2 && k.pts[n-1].Y == y && k.pts[n-2].Y == y {
		k.pts[n-1].X = x
		return
	}
	k.pts = append(k.pts, Vec{x, y})
}

// cut ends a piece. One point alone becomes a short dash, so that it can be seen.
func (k *lineCache) cut() {
	start := 0
	if m := len(k.ends); m > 0 {
		start = k.ends[m-1]
	}
	if len(k.pts) == start {
		return
	}
	if len(k.pts) == start+1 {
		k.pts = append(k.pts, k.pts[start].Add(Vec{2, 0}))
	}
	k.ends = append(k.ends, len(k.pts))
}
