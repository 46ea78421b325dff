package chart

import (
	"rouleau/cmd/rouleau-desk/ui"
)

// This file draws what adds up to a whole: filled layers on each other, told apart by how dark they are.

// shade is what a layer is filled with.
type shade uint8

// The shades, from light to dark.
const (
	light shade = iota
	middle
	black
)

// colour of a shade. Greys of the three lie far apart, so that they can be told without seeing colour.
func (s shade) colour(p *ui.Palette) ui.Color {
	switch s {
	case light:
		return p.Tint
	case middle:
		return ui.Color{R: 0xC9, G: 0x80, B: 0x60, A: 255} // vermilion of the curves, thinned
	}
	return p.Ink
}

func (s shade) fill(c *ui.Core, in ui.Rect) { c.Fill(in, 0, s.colour(c.Pal)) }

// everyUnits is how far apart on paper the points of a layer's edge are.
const everyUnits = 1.0

// layers fills a lane from below. The box is the whole lane; curves leave some air in it, and so do the layers.
func (d *drawing) layers(lane *Lane, box ui.Rect, least, most float64) {
	box = box.InsetXY(0, min(5, box.H/6)) // as the widget has it
	perSecond := float64(box.W) / max(d.ch.EndS, 1)
	step := max(1, int(everyUnits/perSecond))
	y := func(v float64) float32 {
		return box.Bottom() - box.H*float32(min(max((v-least)/(most-least), 0), 1))
	}
	var below []float64
	for k := range lane.layers {
		layer := &lane.layers[k]
		n := len(layer.values)
		above := make([]float64, n)
		for i, v := range layer.values {
			above[i] = orLeast(v, 0)
			if below != nil {
				above[i] += below[i]
			}
		}
		e := edges{}
		for i := 0; i < n; i += step {
			low := y(0)
			if below != nil {
				low = y(below[i])
			}
			e.add(box.X+float32(float64(i)*perSecond), low, y(above[i]))
		}
		e.fill(d.c, layer.shade)
		below = above
	}
}

// edge is where a layer begins and ends at one time.
type edge struct{ x, low, high float32 }

// edges are the stretch of a layer in which there is something of it.
type edges struct{ at []edge }

const flat = 0.05 // units that no eye sees

// add adds a time. Where nothing has changed for a while the time before is not needed.
func (e *edges) add(x, low, high float32) {
	if n := len(e.at); n >= 2 && e.at[n-1].like(low, high) && e.at[n-2].like(low, high) {
		e.at[n-1].x = x
		return
	}
	e.at = append(e.at, edge{x, low, high})
}

func (k *edge) like(low, high float32) bool {
	return max(k.low-low, low-k.low) < flat && max(k.high-high, high-k.high) < flat
}

// fill fills each stretch in which the layer has a thickness.
func (e *edges) fill(c *ui.Core, s shade) {
	for from := 0; from < len(e.at); {
		to := from
		for to < len(e.at) && e.at[to].low-e.at[to].high >= flat {
			to++
		}
		if to > from {
			from, end := max(0, from-1), min(to+1, len(e.at)) // it begins and ends with nothing
			c.BeginPath()
			for _, k := range e.at[from:end] {
				c.To(k.x, k.high)
			}
			for i := end - 1; i >= from; i-- {
				c.To(e.at[i].x, e.at[i].low)
			}
			c.Polygon(s.colour(c.Pal))
		}
		from = to + 1
	}
}
