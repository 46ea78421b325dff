// Tests of the strip chart: peaks, gaps, labels that keep apart, zoom, cursor, marks, lanes that do not all fit.

package ui_test

import (
	"math"
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
)

func chartDriver(g ui.Chart) (*ui.Chart, *uitest.Driver) {
	g.ID, g.Rect, g.Label = ui.Name("chart"), ui.R(20, 20, 700, 300), "course"
	if g.LabelW == 0 {
		g.LabelW, g.EndW = 120, 130
	}
	d := uitest.New(window, func(c *ui.Core) {
		v := c.Chart(g)
		g.From, g.To, g.Cursor, g.TopLane = v.From, v.To, v.Cursor, v.TopLane
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
	v := &ui.Track{}
	for i := range 20000 {
		switch {
		case i == 7777: // one peak among forty values a pixel
			v.Add(1)
		case i >= 12000 && i < 12400:
			v.Add(math.NaN())
		default:
			v.Add(0.01 * float64(i%2))
		}
	}
	look := ui.Paper().Series[1]
	_, d := chartDriver(ui.Chart{To: 20000, Last: 20000, Now: math.NaN(), Cursor: math.NaN(), Lanes: 1,
		Series: []ui.ChartSeries{{Label: "x", Track: v, DT: 1, Max: 1, Look: look}}})
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
	if points > 2*450+10 {
		t.Errorf("%d points for 450 pixels", points)
	}
	if last, first := lines[0][len(lines[0])-1].X, lines[1][0].X; first-last < 5 {
		t.Errorf("the gap is %g wide", first-last)
	}
}

// The points drawn reach, at every pixel, the lowest and the highest value there.
func TestChartDrawsWhatTheValuesAre(t *testing.T) {
	v := &ui.Track{}
	for i := range 7200 {
		v.Add(0.5 + 0.4*math.Sin(float64(i)/300) + 0.1*math.Sin(float64(i)*1.7))
	}
	look := ui.Paper().Series[0]
	g, d := chartDriver(ui.Chart{To: 7200, Last: 7200, Now: math.NaN(), Cursor: math.NaN(), Lanes: 1,
		Series: []ui.ChartSeries{{Label: "x", Track: v, DT: 1, Max: 1, Look: look}}})
	for _, to := range []float64{7200, 3000, 700, 150, 40} {
		g.To = to
		d.Idle()
		pts := linesOf(d.List, look.Col)[0]
		lowest, highest := float32(-1), float32(1e9)
		for _, p := range pts {
			lowest, highest = max(lowest, p.Y), min(highest, p.Y)
		}
		lo, hi := math.Inf(1), math.Inf(-1)
		for i := range int(to) {
			lo, hi = min(lo, v.At(i)), max(hi, v.At(i))
		}
		// the lane stands from 25 to 20+300-19-5, as the foot is 19 high
		y := func(x float64) float32 { return 296 - 271*float32(x) }
		if math.Abs(float64(y(lo)-lowest)) > 2.5 || math.Abs(float64(y(hi)-highest)) > 2.5 {
			t.Errorf("to %g s the line reaches from %g to %g, want %g to %g", to, lowest, highest, y(lo), y(hi))
		}
	}
}

func TestChartEndLabelsKeepApart(t *testing.T) {
	var s []ui.ChartSeries
	for i := range 6 {
		s = append(s, ui.ChartSeries{Label: "s", Unit: "mL", Track: ui.TrackOf(0, 5+float64(i)/100), DT: 100, Max: 10, Look: ui.Paper().Series[i]})
	}
	_, d := chartDriver(ui.Chart{To: 100, Last: 100, Now: 100, Cursor: math.NaN(), Lanes: 1, Series: s})
	if f := uitest.Faults(d.List); len(f) > 0 {
		t.Errorf("faults: %v", f)
	}
}

func TestChartMarksMerge(t *testing.T) {
	g, d := chartDriver(ui.Chart{To: 1000, Last: 1000, Now: math.NaN(), Cursor: math.NaN(), Lanes: 1,
		Marks: []ui.ChartMark{{T: 100, Label: "first"}, {T: 101, Label: "hidden"}, {T: 500, Label: "later"}, {T: 501, Label: "alarmed", Kind: ui.MarkAlarm, Row: 1}}})
	if !d.HasText("first") || d.HasText("hidden") || !d.HasText("later") || !d.HasText("alarmed") {
		t.Error("marks of a row that run into each other should be one, others stay")
	}
	if f := uitest.Faults(d.List); len(f) > 0 {
		t.Errorf("faults: %v", f)
	}
	d.Move(ui.Vec{X: 140 + 45, Y: 28})
	d.Idle()
	if !d.HasText("0:01:41  hidden") || !d.HasText("0:01:40  first") {
		t.Error("pointing at a mark that stands for two does not say both")
	}
	d.Move(ui.Vec{X: 790, Y: 590})
	d.Idle()
	if d.HasText("hidden") {
		t.Error("the words stay when the pointer has left")
	}
	d.Key(ui.KeyTab)
	d.Chord(ui.Chord{Key: ui.KeyHome})
	for _, want := range []float64{100, 101, 500} {
		d.Chord(ui.Chord{Key: ui.KeyRight, Mods: ui.ModShift})
		if g.Cursor != want {
			t.Errorf("shift and right go to %g, want %g", g.Cursor, want)
		}
	}
	d.Idle()
	if !d.HasText("0:08:20  later") {
		t.Error("the words of the mark at the cursor are not said")
	}
	d.Chord(ui.Chord{Key: ui.KeyLeft, Mods: ui.ModShift})
	if g.Cursor != 101 {
		t.Errorf("shift and left go to %g", g.Cursor)
	}
	d.TapAt(ui.Vec{X: 140 + 45, Y: 200})
	if !d.HasText("0:01:41  hidden") {
		t.Error("a touch at a mark does not say its words")
	}
}

func TestChartZoomAndCursor(t *testing.T) {
	look := ui.Paper().Series[0]
	g, d := chartDriver(ui.Chart{To: 1000, Last: 1000, Now: math.NaN(), Cursor: math.NaN(), Lanes: 1,
		Series: []ui.ChartSeries{{Label: "x", Unit: "mL", Track: ui.TrackOf(1, 2, 3), DT: 300, Max: 10, Look: look}}})
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
	d.Wheel(mid, 5)
	d.Drag(mid, ui.Vec{X: mid.X - 90, Y: 150})
	if at := g.From; math.Abs(at-(500-(g.To-g.From)/2+90.0/450*(g.To-g.From))) > 3 {
		t.Errorf("dragged to the left it shows %g to %g", g.From, g.To)
	}
	d.Wait(600)
	d.ClickAt(mid)
	d.ClickAt(mid)
	if g.From != 0 || g.To != 1000 {
		t.Errorf("a double press shows %g to %g", g.From, g.To)
	}
	d.Move(ui.Vec{X: 790, Y: 590})
	if !math.IsNaN(g.Cursor) {
		t.Error("the cursor stays when the pointer has left")
	}
	d.Key(ui.KeyLeft)
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
	d.Type("0")
	if g.From != 0 || g.To != 1000 {
		t.Errorf("0 shows %g to %g", g.From, g.To)
	}
	d.Type("+-")
	if g.To-g.From != 1000 {
		t.Errorf("minus shows %g to %g", g.From, g.To)
	}
	two := func(gap float32, began bool) {
		d.Frame(ui.Input{Touches: []ui.Touch{{ID: 1, Pos: ui.Vec{X: mid.X - gap, Y: 150}, Began: began}, {ID: 2, Pos: ui.Vec{X: mid.X + gap, Y: 150}, Began: began}}})
	}
	two(50, true)
	two(100, false)
	if w := g.To - g.From; math.Abs(w-500) > 1 {
		t.Errorf("two fingers twice as far apart show %g seconds", w)
	}
	if at := (g.From + g.To) / 2; math.Abs(at-500) > 3 {
		t.Errorf("what was between the fingers is now %g away", at-500)
	}
}

// The pointer rests on the chart, and the keys move the cursor all the same.
func TestChartKeysWorkUnderARestingPointer(t *testing.T) {
	g, d := chartDriver(ui.Chart{To: 1000, Last: 1000, Now: math.NaN(), Cursor: math.NaN(), Lanes: 1})
	d.ClickAt(ui.Vec{X: 365, Y: 150})
	d.Key(ui.KeyRight, ui.KeyRight)
	d.Idle()
	if math.Abs(g.Cursor-520) > 2 {
		t.Errorf("the cursor stands at %g, want 520", g.Cursor)
	}
}

func TestLanesThatDoNotFitAreReached(t *testing.T) {
	var s []ui.ChartSeries
	for i := range 15 {
		s = append(s, ui.ChartSeries{Label: string(rune('a' + i)), Track: ui.TrackOf(float64(100 + i)), DT: 100, Max: 200, Lane: i, Look: ui.Paper().Series[i%6]})
	}
	g, d := chartDriver(ui.Chart{To: 100, Last: 100, Now: math.NaN(), Cursor: math.NaN(), Lanes: 15, Series: s})
	if !d.HasText("100") || d.HasText("114") || !d.HasText("/ 15") {
		t.Error("the first lanes should be in sight, the last not, and the chart should say so")
	}
	d.Wheel(ui.Vec{X: 60, Y: 100}, -30)
	if !d.HasText("114") || d.HasText("100") || g.To != 100 {
		t.Error("the wheel over the names does not move the lanes")
	}
	d.Move(ui.Vec{X: 790, Y: 590})
	d.Key(ui.KeyTab)
	for range 20 {
		d.Chord(ui.Chord{Key: ui.KeyUp, Mods: ui.ModShift})
	}
	d.Idle()
	if !d.HasText("100") {
		t.Error("shift and up do not move the lanes")
	}
	d.Swipe(ui.Vec{X: 300, Y: 280}, ui.Vec{X: 300, Y: 60})
	if g.TopLane == 0 {
		t.Error("a finger that moves up does not move the lanes")
	}
	if f := uitest.Faults(d.List); len(f) > 0 {
		t.Errorf("faults: %v", f)
	}
}

func TestAChartThatStaysAllocatesNothing(t *testing.T) {
	var s []ui.ChartSeries
	for i := range 8 {
		v := &ui.Track{}
		for k := range 7200 {
			v.Add(float64(k*(i+3)%977) / 977)
		}
		s = append(s, ui.ChartSeries{Label: "s", Unit: "mL", Track: v, DT: 1, Max: 1, Lane: i, Look: ui.Paper().Series[i%6]})
	}
	_, d := chartDriver(ui.Chart{To: 7200, Last: 7200, Now: 7200, Cursor: math.NaN(), Lanes: 8, Series: s})
	d.Wait(200)
	if a := testing.AllocsPerRun(50, d.Idle); a > 0 {
		t.Errorf("a frame allocates %g times", a)
	}
	if d.Changed {
		t.Error("a frame in which nothing happened differs")
	}
}

func BenchmarkChartGrowing(b *testing.B) {
	var s []ui.ChartSeries
	for i := range 8 {
		v := &ui.Track{}
		for k := range 7200 {
			v.Add(float64(k*(i+3)%977) / 977)
		}
		s = append(s, ui.ChartSeries{Label: "s", Unit: "mL", Track: v, DT: 1, Max: 1, Lane: i, Look: ui.Paper().Series[i%6]})
	}
	g, d := chartDriver(ui.Chart{To: 7200, Last: 7200, Now: 7200, Cursor: math.NaN(), Lanes: 8, Series: s})
	b.ReportAllocs()
	for b.Loop() {
		for i := range s {
			s[i].Track.Add(0.5)
		}
		g.Last++
		g.Now, g.To = g.Last, g.Last
		d.Idle()
	}
}

// A press that stays where it began, a tap and the keys pick a moment; a drag and a pointer that only passes pick none.
func TestChartPicks(t *testing.T) {
	picked := []float64{}
	g := ui.Chart{ID: ui.Name("chart"), Rect: ui.R(20, 20, 760, 260), To: 1000, Last: 1000, Now: math.NaN(), Cursor: math.NaN(), Lanes: 1, LabelW: 120, EndW: 190}
	d := uitest.New(ui.Vec{X: 800, Y: 600}, func(c *ui.Core) {
		v := c.Chart(g)
		if g.From, g.To, g.Cursor = v.From, v.To, v.Cursor; v.Picked {
			picked = append(picked, v.Cursor)
		}
	})
	pick := func(how string, want ...float64) {
		t.Helper()
		near := len(picked) == len(want)
		for i := range min(len(want), len(picked)) {
			near = near && math.Abs(picked[i]-want[i]) < 4
		}
		if !near {
			t.Errorf("%s picks %v, want %v", how, picked, want)
		}
		picked = picked[:0]
		d.Wait(600)
	}
	mid := ui.Vec{X: 20 + 120 + 225, Y: 150}
	d.Move(mid)
	pick("a pointer that passes")
	d.ClickAt(mid)
	pick("a press", 500)
	d.TapAt(mid)
	pick("a tap", 500)
	g.From, g.To = 400, 600
	d.Drag(mid, mid.Add(ui.Vec{X: -60}))
	pick("a drag")
	g.From, g.To = 0, 1000
	d.ClickAt(ui.Vec{X: 60, Y: 150})
	pick("a press on the names")
	d.Key(ui.KeyHome, ui.KeyPageDown)
	pick("keys", 0, 200)
}

// The ends of a scale are always written: above each other, in one line where a lane is low, without digits that say nothing.
func TestEveryLaneHasItsScale(t *testing.T) {
	for lanes, want := range map[int][]string{2: {"500", "0", "1.2"}, 9: {"500", "–", "0", "1.2"}} {
		var s []ui.ChartSeries
		for i := range lanes {
			s = append(s, ui.ChartSeries{Label: "s", Track: ui.TrackOf(1), DT: 100, Max: 500, Lane: i, Look: ui.Paper().Series[0]})
		}
		s[lanes-1].Max, s[lanes-1].Digits = 1.2, 2
		_, d := chartDriver(ui.Chart{To: 100, Last: 100, Now: math.NaN(), Cursor: math.NaN(), Lanes: lanes, LeastLane: 20, Series: s, Ends: true, LabelW: 120})
		for _, text := range want {
			n := 0
			for _, m := range d.List.Marks {
				if m.Kind == ui.KindText && m.Label == text {
					n++
				}
			}
			if least := map[string]int{"500": lanes - 1, "0": lanes, "–": lanes, "1.2": 1}[text]; n != least {
				t.Errorf("%d lanes: %d times %q, want %d", lanes, n, text, least)
			}
		}
		if f := uitest.Faults(d.List); len(f) > 0 {
			t.Errorf("%d lanes: %v", lanes, f)
		}
	}
}

// A mark that stands for others too says for how many in a word, which no figure of points looks like.
func TestMarksSayHowManyMoreThereAre(t *testing.T) {
	at := []ui.ChartMark{{T: 200, Label: "+2.0"}, {T: 205, Label: "+1.9"}, {T: 208, Label: "+0.4"}, {T: 700, Label: "+9.0"}}
	_, d := chartDriver(ui.Chart{To: 1000, Last: 1000, Now: math.NaN(), Cursor: math.NaN(), Lanes: 1, Marks: at})
	d.Idle()
	if !d.HasText("2 more") || d.HasText("+0.4") {
		t.Errorf("three marks in one: %v", d.Labels())
	}
}
