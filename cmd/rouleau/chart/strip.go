package chart

import (
	"rouleau/cmd/rouleau-desk/ui"
)

// This file draws strips: a tick for each thing that happened, a bar for what lasted. Hundreds may stand in one, as none has
// words.

// tick is one thing that happened, or with toS one that lasted.
type tick struct {
	fromS, toS float64
	kind       tickKind
}

type tickKind uint8

const (
	tickWhole tickKind = iota // as high as the strip
	tickLow                   // less than half as high, at the foot
	barLow                    // bars by priority: open, grey, black
	barMedium
	barHigh
)

const (
	barLines = 2 // how many bars may last at the same time without lying on each other
	leastBar = 2 // units a bar is long at least
)

// drawStrip draws a strip at y; x places a time.
func drawStrip(c *ui.Core, ticks []tick, plot ui.Rect, y float32, x func(float64) float32) {
	c.Segment(plot.X, y+stripH, plot.Right(), y+stripH, 1, c.Pal.Line)
	var free [barLines]float32
	for _, t := range ticks {
		from, to := x(t.fromS), x(t.toS)
		switch t.kind {
		case tickWhole:
			c.Segment(from, y+1, from, y+stripH, 1, c.Pal.Ink)
		case tickLow:
			c.Segment(from, y+stripH-4, from, y+stripH, 1, c.Pal.Edge)
		default:
			line := 0
			for line < barLines-1 && free[line] > from {
				line++
			}
			to = max(to, from+leastBar)
			free[line] = max(free[line], to)
			high := float32(stripH-1) / barLines
			bar := ui.R(from, y+1+high*float32(line), to-from, high-0.6)
			switch t.kind {
			case barHigh:
				c.Fill(bar, 0, c.Pal.Ink)
			case barMedium:
				c.Fill(bar, 0, middling)
			default:
				c.Fill(bar, 0, c.Pal.Ground)
				c.Frame(bar, 0, 0.8, c.Pal.Edge)
			}
		}
	}
}

// middling is a grey that lies between ink and paper for every eye.
var middling = ui.Color{R: 0x90, G: 0x90, B: 0x90, A: 255}
