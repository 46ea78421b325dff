// Rectangles, discs and rings.

package mesh

import (
	"math"

	"rouleau/cmd/rouleau-desk/ui"
)

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
	b.box(r, op.Radius*b.scale, 0)
}

func (b *Builder) strokeRect(op *ui.Op) {
	w := op.Width * b.scale
	r := b.px(op.Rect)
	if w >= 0.8 {
		w = max(1, round(w))
		h := w / 2
		r = rect{round(r.x0-h) + h, round(r.y0-h) + h, round(r.x1+h) - h, round(r.y1+h) - h}
	}
	if op.Dash.On > 0 && op.Dash.Off > 0 {
		b.outline(r, op.Radius*b.scale)
		b.dashes(w, op.Dash)
		return
	}
	b.box(r, op.Radius*b.scale, w/2)
}

// outline loads the points of a rounded rectangle, clockwise and closed.
func (b *Builder) outline(r rect, radius float32) {
	b.pts = b.pts[:0]
	radius = max(min(radius, (r.x1-r.x0)/2, (r.y1-r.y0)/2), 0)
	n := corner(radius)
	b.arc(ui.Vec{X: r.x0 + radius, Y: r.y0 + radius}, radius, radius, math.Pi, n)
	b.arc(ui.Vec{X: r.x1 - radius, Y: r.y0 + radius}, radius, radius, -math.Pi/2, n)
	b.arc(ui.Vec{X: r.x1 - radius, Y: r.y1 - radius}, radius, radius, 0, n)
	b.arc(ui.Vec{X: r.x0 + radius, Y: r.y1 - radius}, radius, radius, math.Pi/2, n)
	b.pts = dedupe(b.pts, true)
	b.pts = append(b.pts, b.pts[0])
}

// corner is how many pieces a quarter circle needs to look round.
func corner(radius float32) int {
	return int(min(max(math.Ceil(math.Sqrt(float64(radius))*1.4), 2), 32))
}

// arc loads a quarter of an ellipse.
func (b *Builder) arc(c ui.Vec, rx, ry, from float32, n int) {
	for i := range n + 1 {
		sin, cos := sincos(from + float32(i)/float32(n)*math.Pi/2)
		b.pts = append(b.pts, ui.Vec{X: c.X + rx*cos, Y: c.Y + ry*sin})
	}
}

func (b *Builder) ellipse(op *ui.Op) {
	r := b.px(op.Rect)
	rx, ry := (r.x1-r.x0)/2, (r.y1-r.y0)/2
	if abs(rx-ry) < 0.1 {
		b.box(r, rx, 0)
		return
	}
	b.pts = b.pts[:0]
	n := 2 * corner(max(rx, ry))
	for q := range 4 {
		b.arc(ui.Vec{X: r.x0 + rx, Y: r.y0 + ry}, rx, ry, float32(q)*math.Pi/2, n)
	}
	b.convex()
}

// ring draws an annulus as a wide circle, a sector of one as a polygon.
func (b *Builder) ring(op *ui.Op) {
	r := b.px(op.Rect)
	c := ui.Vec{X: (r.x0 + r.x1) / 2, Y: (r.y0 + r.y1) / 2}
	outer, inner := (r.x1-r.x0)/2, max(op.Width*b.scale, 0)
	turn := op.A1 - op.A0
	if outer <= inner || turn == 0 {
		return
	}
	if abs(turn) >= 2*math.Pi-1e-4 {
		m := (outer + inner) / 2
		b.box(rect{c.X - m, c.Y - m, c.X + m, c.Y + m}, m, (outer-inner)/2)
		return
	}
	n := int(math.Ceil(float64(abs(turn))/(math.Pi/2)*float64(2*corner(outer)))) + 1
	b.pts = b.pts[:0]
	arc := func(radius, from, to float32) {
		for i := range n + 1 {
			sin, cos := sincos(from + (to-from)*float32(i)/float32(n))
			b.pts = append(b.pts, ui.Vec{X: c.X + radius*cos, Y: c.Y + radius*sin})
		}
	}
	arc(outer, op.A0, op.A1)
	arc(inner, op.A1, op.A0)
	b.polygon()
}
