// Tests of the strip chart: peaks, gaps, labels that keep apart, zoom, cursor.

package ui_test

import (
	"math"
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
)

func chartDriver(g ui.Chart) (*ui.Chart, *uitest.Driver) {
	g.ID, g.Rect, g.Label = ui.Name("chart"), ui.R(20, 20, 700, 300), "course"
	d := uitest.New(window, func(c *ui.Core) {
		v := c.Chart(g)
		g.From, g.To, g.Cursor = v.From, v.To, v.Cursor
	})
	return &g, d
}

// linesOf gives the point lists of all lines in a colour.
func linesOf(l *ui.List, col ui.Color) (lines [][]ui.Vec) {
	for i := range l.Ops {
		// A name's sample of two points at the left is no line of the chart.
		if op := &l.Ops[i]; op.Kind == ui.OpLine && op.Col == col && op.Width == 2 {
			lines = append(lines, l.PointsOf(op))
		}
	}
	return lines
}

func TestChartKeepsPeaksAndGaps(t *testing.T) {
	v := make([]float64, 20000)
	v[7777] = 1 // one peak among thirty values a pixel
	for i := 12000; i < 12400; i++ {
		v[i] = math.NaN()
	}
	look := ui.Paper().Series[1]
	_, d := chartDriver(ui.Chart{To: 20000, Last: 20000, Now: math.NaN(), Cursor: math.NaN(), Lanes: 1,
		Series: []ui.ChartSeries{{Label: "x", Values: v, DT: 1, Max: 1, Look: look}}})
	lines := linesOf(d.List, look.Col)
	if len(lines) != 2 {
		t.Fatalf("%d lines, want 2 with the gap between", len(lines))
	}
	top, points := float32(1e9), 0
	for _, l := range lines {
		points += len(l)
		for _, p := range l {
			top = min(top, p.Y)
		}
	}
	if top > 26 {
		t.Errorf("the peak was lost: highest point at %g", top)
	}
	if points > 4*700 {
		t.Errorf("%d points for 450 pixels", points)
	}
	if last, first := lines[0][len(lines[0])-1].X, lines[1][0].X; first-last < 5 {
		t.Errorf("the gap is %g wide", first-last)
	}
}

func TestChartEndLabelsKeepApart(t *testing.T) {
	var s []ui.ChartSeries
	for i := range 6 {
		s = append(s, ui.ChartSeries{Label: "s", Unit: "mL", Values: []float64{0, 5 + float64(i)/100}, DT: 100, Max: 10, Look: ui.Paper().Series[i]})
	}
	_, d := chartDriver(ui.Chart{To: 100, Last: 100, Now: 100, Cursor: math.NaN(), Lanes: 1, Series: s})
	if f := uitest.Faults(d.List); len(f) > 0 {
		t.Errorf("faults: %v", f)
	}
}

func TestChartMarksGiveWay(t *testing.T) {
	_, d := chartDriver(ui.Chart{To: 1000, Last: 1000, Now: math.NaN(), Cursor: math.NaN(), Lanes: 1,
		Marks: []ui.ChartMark{{T: 100, Label: "first"}, {T: 101, Label: "hidden"}, {T: 500, Label: "later"}}})
	if !d.HasText("first") || d.HasText("hidden") || !d.HasText("later") {
		t.Error("marks that run into each other should give way, others stay")
	}
}

func TestChartZoomAndCursor(t *testing.T) {
	look := ui.Paper().Series[0]
	g, d := chartDriver(ui.Chart{To: 1000, Last: 1000, Now: math.NaN(), Cursor: math.NaN(), Lanes: 1,
		Series: []ui.ChartSeries{{Label: "x", Unit: "mL", Values: []float64{1, 2, 3}, DT: 300, Max: 10, Look: look}}})
	mid := ui.Vec{X: 20 + 120 + 225, Y: 150}
	d.Move(mid)
	if math.Abs(g.Cursor-500) > 2 {
		t.Errorf("the cursor stands at %g, want 500", g.Cursor)
	}
	d.Idle()
	if !d.HasText("2 mL") || !d.HasText("0:08:20") {
		t.Error("the value or the time at the cursor is not shown")
	}
	d.Wheel(mid, 3)
	if w := g.To - g.From; w > 700 || math.Abs((g.From+g.To)/2-500) > 3 {
		t.Errorf("the wheel shows %g to %g", g.From, g.To)
	}
	d.Wheel(mid, -50)
	if g.From != 0 || g.To != 1000 {
		t.Errorf("zoomed out it shows %g to %g", g.From, g.To)
	}
	d.Move(ui.Vec{X: 790, Y: 590})
	if !math.IsNaN(g.Cursor) {
		t.Error("the cursor stays when the pointer has left")
	}
	d.Key(ui.KeyTab, ui.KeyLeft)
	if math.Abs(g.Cursor-990) > 1 {
		t.Errorf("the left arrow puts the cursor at %g", g.Cursor)
	}
	d.Type("+++")
	if g.To-g.From > 400 || g.Cursor < g.From || g.Cursor > g.To {
		t.Errorf("plus shows %g to %g, cursor %g", g.From, g.To, g.Cursor)
	}
	was := g.From
	d.Key(ui.KeyHome)
	if g.Cursor != 0 || g.From > 0 {
		t.Errorf("Home: cursor %g, view from %g (was %g)", g.Cursor, g.From, was)
	}
	two := func(gap float32, began bool) {
		d.Frame(ui.Input{Touches: []ui.Touch{{ID: 1, Pos: ui.Vec{X: mid.X - gap, Y: 150}, Began: began}, {ID: 2, Pos: ui.Vec{X: mid.X + gap, Y: 150}, Began: began}}})
	}
	d.Wheel(mid, -50)
	two(50, true)
	two(100, false)
	if w := g.To - g.From; math.Abs(w-500) > 1 {
		t.Errorf("two fingers twice as far apart show %g seconds", w)
	}
}
