// Rectangles, discs and rings: their outlines as points, filled with a soft
// edge half a pixel to either side.

package mesh

import (
	"math"

	"rouleau/cmd/rouleau-desk/ui"
)

// outline loads the points of a rounded rectangle, clockwise.
func (b *Builder) outline(r rect, radius float32) {
	b.pts = b.pts[:0]
	radius = min(radius, (r.x1-r.x0)/2, (r.y1-r.y0)/2)
	if radius < 0.5 {
		b.pts = append(b.pts, ui.Vec{X: r.x0, Y: r.y0}, ui.Vec{X: r.x1, Y: r.y0}, ui.Vec{X: r.x1, Y: r.y1}, ui.Vec{X: r.x0, Y: r.y1})
		return
	}
	n := corner(radius)
	b.arc(ui.Vec{X: r.x0 + radius, Y: r.y0 + radius}, radius, radius, math.Pi, n)
	b.arc(ui.Vec{X: r.x1 - radius, Y: r.y0 + radius}, radius, radius, -math.Pi/2, n)
	b.arc(ui.Vec{X: r.x1 - radius, Y: r.y1 - radius}, radius, radius, 0, n)
	b.arc(ui.Vec{X: r.x0 + radius, Y: r.y1 - radius}, radius, radius, math.Pi/2, n)
}

// corner is how many pieces a quarter circle needs to look round.
func corner(radius float32) int {
	return int(min(max(math.Ceil(math.Sqrt(float64(radius))*1.8), 3), 32))
}

// arc loads a quarter of an ellipse.
func (b *Builder) arc(c ui.Vec, rx, ry, from float32, n int) {
	for i := range n + 1 {
		sin, cos := sincos(from + float32(i)/float32(n)*math.Pi/2)
		b.pts = append(b.pts, ui.Vec{X: c.X + rx*cos, Y: c.Y + ry*sin})
	}
}

// snapped is the least size in pixels from which a filled rectangle is put on
// whole pixels; smaller ones are marks whose middle matters more.
const snapped = 6

func (b *Builder) fillRect(op *ui.Op) {
	r := b.px(op.Rect)
	if w, h := r.x1-r.x0, r.y1-r.y0; op.Radius == 0 || (w >= snapped && h >= snapped) {
		r = rect{round(r.x0), round(r.y0), round(r.x1), round(r.y1)}
		// What is thinner than a pixel is still there.
		if w > 0 {
			r.x1 = max(r.x1, r.x0+1)
		}
		if h > 0 {
			r.y1 = max(r.y1, r.y0+1)
		}
	}
	b.outline(r, op.Radius*b.scale)
	b.convex()
}

func (b *Builder) strokeRect(op *ui.Op) {
	w := op.Width * b.scale
	r := b.px(op.Rect)
	if w >= 0.8 {
		w = max(1, round(w))
		h := w / 2
		r = rect{round(r.x0-h) + h, round(r.y0-h) + h, round(r.x1+h) - h, round(r.y1+h) - h}
	}
	b.outline(r, op.Radius*b.scale)
	b.pts = dedupe(b.pts, true)
	if op.Dash.On > 0 && op.Dash.Off > 0 {
		b.dashes(w, op.Dash, true)
		return
	}
	b.strip(b.pts, w, true, false)
}

func (b *Builder) ellipse(op *ui.Op) {
	r := b.px(op.Rect)
	rx, ry := (r.x1-r.x0)/2, (r.y1-r.y0)/2
	b.pts = b.pts[:0]
	n := corner(max(rx, ry))
	for q := range 4 {
		b.arc(ui.Vec{X: r.x0 + rx, Y: r.y0 + ry}, rx, ry, float32(q)*math.Pi/2, n)
	}
	b.convex()
}

// disc draws a small disc in pixels, for round ends and corners.
func (b *Builder) disc(c ui.Vec, radius float32) {
	n := 4 * corner(radius)
	center := b.vert(c, 1)
	var in0, out0, in, out uint32
	for i := range n + 1 {
		sin, cos := sincos(float32(i) / float32(n) * 2 * math.Pi)
		pin, pout := in, out
		in = b.vert(ui.Vec{X: c.X + (radius-0.5)*cos, Y: c.Y + (radius-0.5)*sin}, 1)
		out = b.vert(ui.Vec{X: c.X + (radius+0.5)*cos, Y: c.Y + (radius+0.5)*sin}, 0)
		if i == 0 {
			in0, out0 = in, out
			continue
		}
		if i == n {
			in, out = in0, out0
		}
		b.tri(center, pin, in)
		b.quad(pin, pout, out, in)
	}
}

// ring draws a sector of an annulus as a strip round its middle.
func (b *Builder) ring(op *ui.Op) {
	r := b.px(op.Rect)
	c := ui.Vec{X: (r.x0 + r.x1) / 2, Y: (r.y0 + r.y1) / 2}
	outer, inner := (r.x1-r.x0)/2, max(op.Width*b.scale, 0)
	if outer <= inner || op.A0 == op.A1 {
		return
	}
	turn := float64(op.A1 - op.A0)
	whole := math.Abs(turn) >= 2*math.Pi-1e-6
	n := int(math.Ceil(math.Abs(turn)/(math.Pi/2)*float64(corner(outer)))) + 1
	at := func(i int, shift float32, cover float32) {
		sin, cos := sincos(op.A0 + float32(float64(i)/float64(n)*turn))
		d := ui.Vec{X: cos, Y: sin}
		b.rowOf(ui.Vec{X: c.X - sin*shift, Y: c.Y + cos*shift}, d, inner, outer, cover)
	}
	side := float32(0.5)
	if turn < 0 {
		side = -side
	}
	b.row0 = noRow
	if !whole {
		at(0, -side, 0)
		at(0, side, 1)
	} else {
		at(0, 0, 1)
	}
	for i := 1; i < n; i++ {
		at(i, 0, 1)
	}
	if !whole {
		at(n, -side, 1)
		at(n, side, 0)
	} else {
		at(n, 0, 1)
	}
}
