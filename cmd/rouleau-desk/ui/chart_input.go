// What a person does to a chart: wheel, keys, fingers, pointer.

package ui

import "math"

const (
	doubleMS    = 400 // between the presses of a double press
	doublePX    = 12
	laneDragPX  = 28 // a drag up or down passes one lane
	pickPX      = 6  // a press that ends no further from where it began has picked a moment
	keyStep     = 100
	keyBigSteps = 20
)

// chartInput reads what was done and returns the view that is asked for.
func (c *Core) chartInput(t target, g *Chart, l *chartLayout) ChartView {
	v := ChartView{From: g.From, To: g.To, Cursor: g.Cursor, TopLane: l.top}
	span, s := g.To-g.From, &c.chart
	if span <= 0 || l.plot.W <= 0 {
		return v
	}
	p := c.in.Pointer
	high := Rect{l.plot.X, g.Rect.Y, l.plot.W, g.Rect.H}
	inPlot := t.over && high.Has(p)
	at := l.time(p.X)
	c.chartPoint(t, g, &v, inPlot, at)
	factor, pivot := 1.0, at
	if c.wheelOn == g.ID && c.in.Wheel.Y != 0 && !c.wheelUsed && t.over {
		c.wheelUsed = true
		if inPlot && c.in.Mods&ModShift == 0 {
			factor = math.Pow(0.85, float64(c.in.Wheel.Y))
		} else {
			v.TopLane -= int(math.Copysign(math.Ceil(math.Abs(float64(c.in.Wheel.Y))), float64(c.in.Wheel.Y)))
		}
	}
	if c.pinch != 1 && len(c.in.Touches) >= 2 && t.held {
		factor = 1 / float64(c.pinch)
		pivot = l.time((c.in.Touches[0].Pos.X + c.in.Touches[1].Pos.X) / 2)
	}
	if t.held && !t.began && len(c.in.Touches) < 2 {
		shift := float64((p.X-s.grab.X)/l.plot.W) * span
		v.From, v.To = v.From-shift, v.To-shift
		s.dragged += p.Y - s.grab.Y
		for ; s.dragged >= laneDragPX; s.dragged -= laneDragPX {
			v.TopLane--
		}
		for ; s.dragged <= -laneDragPX; s.dragged += laneDragPX {
			v.TopLane++
		}
	}
	if t.began {
		s.dragged = 0
		if c.clockMS-s.pressMS < doubleMS && max(p.X-s.pressX, s.pressX-p.X) < doublePX {
			v.From, v.To = g.First, g.Last
		}
		s.pressMS, s.pressX = c.clockMS, p.X
	}
	if t.held {
		s.grab = p
	}
	if d := p.Sub(c.pressed); t.ended && inPlot && high.Has(c.pressed) && max(d.X, -d.X, d.Y, -d.Y) < pickPX {
		v.Cursor, v.Picked = min(max(at, g.First), g.Last), true
	}
	if t.focused {
		factor, pivot = c.chartKeys(g, &v, factor, pivot)
	}
	if factor != 1 {
		pivot = min(max(pivot, v.From), v.To)
		v.From = pivot - (pivot-v.From)*factor
		v.To = pivot + (v.To-pivot)*factor
	}
	v.TopLane = min(max(v.TopLane, 0), l.lanes-l.shown)
	return g.bound(v)
}

// chartPoint moves the cursor with the pointer. A pointer that only rests leaves it to the keys.
func (c *Core) chartPoint(t target, g *Chart, v *ChartView, inPlot bool, at float64) {
	s := &c.chart
	moved := c.in.Pointer != s.lastAt || s.hover != g.ID
	switch {
	case t.began && inPlot, inPlot && moved && !t.held && !c.fromTouch:
		v.Cursor, s.byKeys = min(max(at, g.First), g.Last), false
	case !inPlot && s.hover == g.ID && !s.byKeys:
		v.Cursor = math.NaN()
	}
	if inPlot && !c.fromTouch { // a finger that is lifted leaves the cursor where it touched
		s.hover, s.lastAt = g.ID, c.in.Pointer
	} else if s.hover == g.ID {
		s.hover = 0
	}
}

// chartKeys reads the keys of a chart that has the focus.
func (c *Core) chartKeys(g *Chart, v *ChartView, factor, pivot float64) (float64, float64) {
	step := (g.To - g.From) / keyStep
	to := func(t float64) { v.Cursor, v.Picked, c.chart.byKeys = min(max(t, g.First), g.Last), true, true }
	from := v.Cursor
	if math.IsNaN(from) {
		from = min(g.To, g.Last)
	}
	zoom := 0
	for _, k := range [...]Key{KeyLeft, KeyRight, KeyUp, KeyDown, KeyPageUp, KeyPageDown, KeyHome, KeyEnd, KeyEscape} {
		ev, ok := c.take(g.ID, k, 0)
		if !ok {
			continue
		}
		shift := ev.Mods&ModShift != 0
		switch k {
		case KeyLeft, KeyRight:
			by := 1.0
			if k == KeyLeft {
				by = -1
			}
			if shift {
				to(g.nextMark(from, by))
			} else {
				to(from + by*step)
			}
		case KeyPageUp:
			to(from - keyBigSteps*step)
		case KeyPageDown:
			to(from + keyBigSteps*step)
		case KeyHome:
			to(g.First)
		case KeyEnd:
			to(g.Last)
		case KeyEscape:
			v.Cursor = math.NaN()
		case KeyUp, KeyDown:
			by := 1
			if k == KeyDown {
				by = -1
			}
			if shift {
				v.TopLane -= by
			} else {
				zoom += by
			}
		}
	}
	if !c.runesUsed {
		for _, r := range c.in.Runes {
			switch r {
			case '+':
				zoom++
			case '-', '−':
				zoom--
			case '0':
				v.From, v.To = g.First, g.Last
			}
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

// nextMark is the time of the next mark after t, or of the last one before it.
func (g *Chart) nextMark(t, by float64) float64 {
	const apart = 1e-6
	best := t
	for i := range g.Marks {
		m := g.Marks[i].T
		if by > 0 && m > t+apart && (best == t || m < best) || by < 0 && m < t-apart && (best == t || m > best) {
			best = m
		}
	}
	return best
}

// bound keeps a view inside the times there are.
func (g *Chart) bound(v ChartView) ChartView {
	whole := max(g.Last-g.First, minSpanSec)
	if d := v.To - v.From; d < minSpanSec || d > whole {
		mid := (v.From + v.To) / 2
		span := min(max(d, minSpanSec), whole)
		v.From, v.To = mid-span/2, mid+span/2
	}
	span := v.To - v.From
	if v.From < g.First {
		v.From, v.To = g.First, g.First+span
	}
	if end := g.First + whole; v.To > end {
		v.From, v.To = end-span, end
	}
	return v
}
