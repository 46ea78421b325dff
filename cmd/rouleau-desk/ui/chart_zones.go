// What lies under the curves of a chart: ranges of values that matter in a lane, and lines of time that lead the eye down.

package ui

// ChartZone is a range of values in a lane, such as a target; a range from a value to the same one is a line, such as a limit.
type ChartZone struct {
	Lane     int
	From, To float64
	Label    string
}

// chartZones draws the ranges, each on the scale of the first curve of its lane, a range with its
// name at the right end, where curves have mostly ended, a limit with it at the left.
func (c *Core) chartZones(g *Chart, l *chartLayout) {
	for i := range g.Zones {
		z := &g.Zones[i]
		lane, ok := l.lane(z.Lane)
		s := g.firstIn(z.Lane)
		if !ok || s == nil {
			continue
		}
		low, high := s.y(lane, z.From), s.y(lane, z.To)
		if low-high < 1 {
			c.BeginPath()
			c.To(l.plot.X, low)
			c.To(l.plot.Right(), low)
			c.Line(1.2, c.Pal.Edge, Dash{On: 6, Off: 3}, false)
		} else {
			c.Fill(Rect{l.plot.X, high, l.plot.W, low - high}, 0, c.Pal.Tint)
		}
		st := Style{Size: l.size - 2, Col: c.Pal.Muted}
		base := low - 3 // on the line, or at the foot of the range
		if base-st.Size < lane.Y {
			base = high + st.Size
		}
		x := l.plot.X + 5
		if low-high >= 1 {
			x = l.plot.Right() - 5 - st.Width(z.Label)
		} else if z.Label != "" { // a line of time may pass under it
			c.Fill(Rect{x - 2, base - st.Size + 1, st.Width(z.Label) + 4, st.Size + 1}, 2, c.Pal.Ground)
		}
		c.TextAt(x, base, z.Label, st)
	}
}

// firstIn is the first curve of a lane.
func (g *Chart) firstIn(lane int) *ChartSeries {
	for i := range g.Series {
		if g.Series[i].Lane == lane {
			return &g.Series[i]
		}
	}
	return nil
}
