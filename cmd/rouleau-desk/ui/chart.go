// The strip chart: several series over time in lanes below each other, with bands and marks above them, and a cursor.
// What each part looks like lives in the other chart files.

package ui

// ChartSeries is one line of a chart: the values of a track, evenly spaced from T0 by DT.
type ChartSeries struct {
	Label    string
	Unit     string
	Digits   int
	Track    *Track
	T0, DT   float64
	Min, Max float64
	Lane     int
	Look     Series
}

// ChartMark is a moment with a name. Marks come in order of time.
type ChartMark struct {
	T     float64
	Label string
	Words string // shown when it is pointed at; "" for the label
	Kind  MarkKind
	Row   int // of the rows of marks; those of one row that would lie on each other become one
}

// MarkKind gives a mark its shape.
type MarkKind uint8

// The kinds: a triangle, a circle, a diamond, a square.
const (
	MarkAct MarkKind = iota
	MarkSaid
	MarkAlarm
	MarkPoint
)

// ChartBand is a stretch of time with a name, drawn as a bar in one of the rows above the lanes.
type ChartBand struct {
	From, To float64
	Label    string
	Row      int
	Fill     BandFill
}

// BandFill tells bars of one row apart without colour.
type BandFill uint8

// The fills of bars.
const (
	BandPlain BandFill = iota
	BandTint
	BandHatch
	BandDark
)

// Chart is a strip chart. Times are in seconds. The caller keeps From, To, Cursor and First lane as ChartView returns
// them; a Cursor of NaN is none.
type Chart struct {
	ID        ID
	Rect      Rect
	Label     string // names the chart for tests and assistive code; not drawn
	From, To  float64
	First     float64 // the earliest time that can be shown
	Last      float64 // the latest
	Now       float64 // a line at the present; NaN for none
	Cursor    float64
	Lanes     int
	TopLane   int // the first one in sight where not all fit
	LeastLane float32
	Series    []ChartSeries
	Marks     []ChartMark
	MarkNames []string // at the left of each row of marks
	Bands     []ChartBand
	BandNames []string // at the left of each row of bars
	LabelW    float32  // width at the left for names; 0 means as wide as the names are
	EndW      float32  // width at the right for values; 0 means as wide as the values can be
	Size      float32  // of type, 0 means SizeBody
	Ends      bool     // the ends of a lane's scale are written at its left: above each other, or in one line where it is low
	Zones     []ChartZone
	Grid      bool // the times of the axis are drawn down through the lanes
}

// ChartView is what part of the time is shown, where the cursor stands, and which lane is the first in sight.
type ChartView struct {
	From, To, Cursor float64
	TopLane          int
	Picked           bool // the cursor was put where it stands in this frame: by a press that did not drag, or by a key
}

const minSpanSec = 10

// chartState is what charts keep from frame to frame.
type chartState struct {
	ends    []endLabel
	lines   map[lineID]*lineCache
	grab    Vec
	lastAt  Vec
	hover   ID
	byKeys  bool // the cursor was moved by keys last
	pressMS float64
	pressX  float32
	dragged float32 // upwards since a lane passed
	named   tipKey
	tipHead string
	tipRest string
	shown   [3]int
	shownAs string
	more    []string
}

// Chart draws a chart and returns the view the person asks for.
func (c *Core) Chart(g Chart) ChartView {
	t := c.place(g.ID, g.Rect, KindChart, g.Label, "")
	l := c.chartLayout(&g)
	v := c.chartInput(t, &g, &l)
	c.chartZones(&g, &l)
	c.chartGrid(&g, &l)
	c.chartBands(&g, &l)
	c.chartMarks(t, &g, &l)
	c.chartNames(t, &g, &l)
	c.PushClip(l.plot.Inset(-1))
	for i := range g.Series {
		if lane, ok := l.lane(g.Series[i].Lane); ok {
			c.chartLine(g.ID, i, &g.Series[i], lane, g.From, g.To)
		}
	}
	c.PopClip()
	c.chartCursor(&g, &l)
	c.chartEnds(&g, &l)
	c.ring(t, g.Rect.Inset(3))
	return v
}

// chartLayout is where the parts of a chart stand.
type chartLayout struct {
	names, plot, ends Rect
	head, bands, foot Rect
	compact           bool // names and values stand in the lanes, as there is no room beside them
	top, shown, lanes int
	size              float32
	row               float32 // height of a line of type
	from, to          float64
}

const (
	markRow = 16
	bandRow = 20
)

func (c *Core) chartLayout(g *Chart) (l chartLayout) {
	l.size, l.lanes = g.Size, max(g.Lanes, 1)
	if l.size == 0 {
		l.size = SizeBody
	}
	l.row, l.from, l.to = LineHeight(l.size), g.From, g.To
	labelW, endW := g.LabelW, g.EndW
	if endW == 0 {
		endW = c.chartEndsWidth(g, &l)
	}
	if labelW == 0 {
		labelW = c.chartNamesWidth(g, &l)
	}
	l.plot = g.Rect
	l.compact = g.Rect.W < labelW+endW+200
	if l.compact {
		labelW, endW = 0, 0
	}
	l.names, l.ends = l.plot.CutLeft(labelW), l.plot.CutRight(endW)
	l.foot = l.plot.CutBottom(l.row)
	l.bands = l.plot.CutTop(bandRow * float32(g.bandRows()))
	l.head = l.plot.CutTop(markRow * float32(g.markRows()))
	least := g.LeastLane
	if least == 0 {
		least = l.row + 6
	}
	if l.compact {
		least = max(least, l.row+22)
	}
	l.shown = min(l.lanes, max(1, int(l.plot.H/least)))
	l.top = min(max(g.TopLane, 0), l.lanes-l.shown)
	return l
}

func (g *Chart) markRows() (n int) {
	n = len(g.MarkNames)
	for i := range g.Marks {
		n = max(n, g.Marks[i].Row+1)
	}
	return n
}

func (g *Chart) bandRows() (n int) {
	n = len(g.BandNames)
	for i := range g.Bands {
		n = max(n, g.Bands[i].Row+1)
	}
	return n
}

// cell is the box of a lane, caption and all; ok says whether it is in sight.
func (l *chartLayout) cell(i int) (r Rect, ok bool) {
	if i < l.top || i >= l.top+l.shown {
		return Rect{}, false
	}
	return l.plot.Row(i-l.top, l.shown, 0), true
}

// lane is the box of a lane's lines, with some air above and below them.
func (l *chartLayout) lane(i int) (r Rect, ok bool) {
	r, ok = l.cell(i)
	if l.compact {
		r.CutTop(l.row)
		return r.InsetXY(0, 3), ok
	}
	return r.InsetXY(0, min(5, r.H/6)), ok
}

func (l *chartLayout) x(t float64) float32 {
	return l.plot.X + float32((t-l.from)/(l.to-l.from))*l.plot.W
}

// time is the time at a place.
func (l *chartLayout) time(x float32) float64 {
	return l.from + float64((x-l.plot.X)/l.plot.W)*(l.to-l.from)
}
