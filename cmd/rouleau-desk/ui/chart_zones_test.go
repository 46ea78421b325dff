// Tests of what lies under the curves: ranges and limits stand at their values, and times lead down through the lanes.

package ui_test

import (
	"math"
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
)

func TestZonesStandAtTheirValues(t *testing.T) {
	g := ui.Chart{To: 600, Last: 600, Now: math.NaN(), Cursor: math.NaN(), Lanes: 2, Grid: true, Series: []ui.ChartSeries{
		{Label: "x", Track: ui.TrackOf(0, 25, 50, 100), DT: 1, Max: 100, Lane: 0, Look: ui.Paper().Series[0]},
		{Label: "y", Track: ui.TrackOf(5, 5), DT: 1, Max: 10, Lane: 1, Look: ui.Paper().Series[1]},
	}, Zones: []ui.ChartZone{{Lane: 0, From: 25, To: 50, Label: "aim"}, {Lane: 1, From: 5, To: 5, Label: "limit"}, {Lane: 7, From: 1, To: 2, Label: "nowhere"}}}
	_, d := chartDriver(g)
	pal := ui.Paper()
	x, y := linesOf(d.List, pal.Series[0].Col)[0], linesOf(d.List, pal.Series[1].Col)[0]
	near := func(a, b float32) bool { return math.Abs(float64(a-b)) < 0.01 }
	aim, limit, down, words := false, false, 0, map[string]bool{}
	for i := range d.List.Ops {
		op := &d.List.Ops[i]
		switch pts := d.List.PointsOf(op); {
		case op.Kind == ui.OpRect && op.Col == pal.Tint:
			aim = near(op.Rect.Bottom(), x[1].Y) && near(op.Rect.Y, x[2].Y)
		case op.Kind == ui.OpLine && op.Dash.On == 6 && len(pts) == 2:
			limit = near(pts[0].Y, y[0].Y) && near(pts[1].Y, y[0].Y)
		case op.Kind == ui.OpLine && op.Col == pal.Line && len(pts) == 2 && pts[0].X == pts[1].X:
			down++
		case op.Kind == ui.OpText:
			words[op.Str] = true
		}
	}
	if !aim || !limit {
		t.Errorf("the range stands at its values: %v, the limit: %v", aim, limit)
	}
	if down < 3 {
		t.Errorf("only %d times of the axis lead down", down)
	}
	if !words["aim"] || !words["limit"] || words["nowhere"] {
		t.Errorf("words of the ranges: %v", words)
	}
}
