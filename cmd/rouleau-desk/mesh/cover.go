// Shapes that are computed for each pixel: how a vertex says what it belongs to,
// and how much of a pixel the shape covers. The window's shader says the same in
// its own language; tests use this one.

package mesh

import (
	"math"

	"rouleau/cmd/rouleau-desk/ui"
)

// How a shape is written into U: a box as BoxU minus its corner radius, a piece
// of a line as LineU minus which of its ends are round (1 the first, 2 the second).
const (
	BoxU  = -1
	LineU = -20000
)

// Cover is how much of the pixel with its centre at x, y a shape covers, from 0
// to 1, given any vertex of it.
func Cover(v *Vertex, x, y float32) float32 {
	if v.U > LineU+1 {
		return boxCover(v, x, y)
	}
	return lineCover(v, x, y)
}

// boxCover: C is the middle and half the size; V is 0 for a filled box.
func boxCover(v *Vertex, x, y float32) float32 {
	r := BoxU - v.U
	qx, qy := abs(x-v.C[0])-v.C[2]+r, abs(y-v.C[1])-v.C[3]+r
	d := max(qx, qy)
	if r > 0 { // else the corners stay sharp
		d = hypot(max(qx, 0), max(qy, 0)) + min(d, 0) - r
	}
	if v.V > 0 {
		d = abs(d) - v.V
	}
	return clamp(0.5 - d)
}

// lineCover: C is the first and the second end.
func lineCover(v *Vertex, x, y float32) float32 {
	ends := LineU - v.U
	px, py := x-v.C[0], y-v.C[1]
	dx, dy := v.C[2]-v.C[0], v.C[3]-v.C[1]
	l := max(hypot(dx, dy), 1e-4)
	dx, dy = dx/l, dy/l
	t, s := px*dx+py*dy, abs(px*dy-py*dx)
	past := float32(0) // how far past a round end
	blunt := float32(1)
	if t < l/2 {
		if ends == 1 || ends == 3 {
			past = max(-t, 0)
		} else {
			blunt = clamp(t + 0.5)
		}
	} else {
		if ends >= 2 {
			past = max(t-l, 0)
		} else {
			blunt = clamp(l - t + 0.5)
		}
	}
	return clamp(v.V+0.5-hypot(s, past)) * blunt
}

func clamp(v float32) float32 { return min(max(v, 0), 1) }

func hypot(x, y float32) float32 { return float32(math.Sqrt(float64(x*x + y*y))) }

func abs(v float32) float32 { return float32(math.Abs(float64(v))) }

// shapeVert adds a corner of a shape.
func (b *Builder) shapeVert(x, y, u, v float32, c [4]float32) uint32 {
	k := &b.col
	b.Verts = append(b.Verts, Vertex{x, y, u, v, k[0], k[1], k[2], k[3], c})
	return uint32(len(b.Verts) - 1)
}

// box adds a rounded box in pixels: filled, or its outline with half a width.
func (b *Builder) box(r rect, radius, half float32) {
	w, h := r.x1-r.x0, r.y1-r.y0
	if w <= 0 || h <= 0 {
		return
	}
	radius = max(min(radius, w/2, h/2), 0)
	c := [4]float32{(r.x0 + r.x1) / 2, (r.y0 + r.y1) / 2, w / 2, h / 2}
	u := BoxU - radius
	out := half + 1
	o := [4]uint32{}
	for i, at := range corners(r, -out) {
		o[i] = b.shapeVert(at.X, at.Y, u, half, c)
	}
	in := out + 0.3*radius
	if half == 0 || w < 2*in+16 || h < 2*in+16 {
		b.quad(o[0], o[1], o[2], o[3])
		return
	}
	// The inside of a large outline is left out: it would be painted for nothing.
	n := [4]uint32{}
	for i, at := range corners(r, in) {
		n[i] = b.shapeVert(at.X, at.Y, u, half, c)
	}
	for i := range 4 {
		j := (i + 1) % 4
		b.quad(o[i], o[j], n[j], n[i])
	}
}

func corners(r rect, in float32) [4]ui.Vec {
	return [4]ui.Vec{{X: r.x0 + in, Y: r.y0 + in}, {X: r.x1 - in, Y: r.y0 + in}, {X: r.x1 - in, Y: r.y1 - in}, {X: r.x0 + in, Y: r.y1 - in}}
}

// Ends of a piece of a line that are round.
const (
	roundFirst  = 1
	roundSecond = 2
)

// piece adds a straight piece of a line in pixels.
func (b *Builder) piece(p, q ui.Vec, width float32, ends int) {
	half := width / 2
	k := b.col
	if half < 0.5 {
		// Thinner than a pixel: a pixel wide and paler.
		for i := range b.col {
			b.col[i] *= width
		}
		half = 0.5
	}
	d := dir(p, q)
	e, f := float32(1), float32(1)
	if ends&roundFirst != 0 {
		e += half
	}
	if ends&roundSecond != 0 {
		f += half
	}
	nx, ny := -d.Y*(half+1), d.X*(half+1)
	x0, y0, x1, y1 := p.X-d.X*e, p.Y-d.Y*e, q.X+d.X*f, q.Y+d.Y*f
	c := [4]float32{p.X, p.Y, q.X, q.Y}
	u := LineU - float32(ends)
	b.quad(b.shapeVert(x0-nx, y0-ny, u, half, c), b.shapeVert(x1-nx, y1-ny, u, half, c),
		b.shapeVert(x1+nx, y1+ny, u, half, c), b.shapeVert(x0+nx, y0+ny, u, half, c))
	b.col = k
}

func dir(a, b ui.Vec) ui.Vec {
	d := b.Sub(a)
	if l := hypot(d.X, d.Y); l > 0 {
		return ui.Vec{X: d.X / l, Y: d.Y / l}
	}
	return ui.Vec{X: 1}
}
