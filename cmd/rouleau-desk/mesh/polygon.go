// Polygons: a core shrunk by half a pixel, cut into triangles (a fan where it is
// convex, ears else), and the soft edge round it.

package mesh

import "rouleau/cmd/rouleau-desk/ui"

// convex fills the loaded points, which are known to be convex.
func (b *Builder) convex() {
	b.pts = dedupe(b.pts, true)
	if len(b.pts) < 3 {
		return
	}
	first := b.fringe()
	for i := 1; i+1 < len(b.pts); i++ {
		b.tri(first, first+2*uint32(i), first+2*uint32(i+1))
	}
}

// polygon fills the loaded points, a simple polygon.
func (b *Builder) polygon() {
	b.pts = simplify(dedupe(b.pts, true))
	if len(b.pts) < 3 {
		return
	}
	if area(b.pts) < 0 {
		for i, j := 0, len(b.pts)-1; i < j; i, j = i+1, j-1 {
			b.pts[i], b.pts[j] = b.pts[j], b.pts[i]
		}
	}
	if isConvex(b.pts) {
		b.convex()
		return
	}
	first := b.fringe()
	b.cutEars(first)
}

// area is twice the signed area; positive runs clockwise on the screen.
func area(p []ui.Vec) (sum float32) {
	for i := range p {
		q := p[(i+1)%len(p)]
		sum += p[i].X*q.Y - q.X*p[i].Y
	}
	return sum
}

func dot(a, b ui.Vec) float32 { return a.X*b.X + a.Y*b.Y }

// mitre is the vector across a corner, long enough for the edges to meet.
func mitre(a, b ui.Vec) ui.Vec {
	m := ui.Vec{X: -(a.Y + b.Y), Y: a.X + b.X}
	l2 := dot(m, m)
	if l2 < 1e-6 {
		return ui.Vec{X: -a.Y, Y: a.X}
	}
	// |m| is twice the cosine of half the angle; the mitre is one over it.
	return ui.Vec{X: m.X * 2 / l2, Y: m.Y * 2 / l2}
}

func cross(a, b, c ui.Vec) float32 { return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X) }

func isConvex(p []ui.Vec) bool {
	n := len(p)
	for i := range p {
		if cross(p[i], p[(i+1)%n], p[(i+2)%n]) < -1e-3 {
			return false
		}
	}
	return true
}

// longest bounds how far a point of the soft edge may stand out at a spike.
const longest = 2.5

// fringe adds, for each point, an inner vertex with full cover and an outer one
// with none, joins them, and returns the first; inner vertices are every second.
func (b *Builder) fringe() (first uint32) {
	n := len(b.pts)
	sign := float32(1)
	if area(b.pts) < 0 {
		sign = -1
	}
	first = uint32(len(b.Verts))
	for i, p := range b.pts {
		d0, d1 := dir(b.pts[(i+n-1)%n], p), dir(p, b.pts[(i+1)%n])
		m := mitre(d0, d1)
		if l := hypot(m.X, m.Y); l > longest {
			m = ui.Vec{X: m.X / l * longest, Y: m.Y / l * longest}
		}
		dx, dy := m.X*0.5*sign, m.Y*0.5*sign
		b.vert(ui.Vec{X: p.X + dx, Y: p.Y + dy}, 1)
		b.vert(ui.Vec{X: p.X - dx, Y: p.Y - dy}, 0)
	}
	for i := range n {
		a, z := first+2*uint32(i), first+2*uint32((i+1)%n)
		b.quad(a, a+1, z+1, z)
	}
	return first
}

// cutEars cuts the loaded points, clockwise, into triangles over the inner
// vertices that fringe made.
func (b *Builder) cutEars(first uint32) {
	b.ears = b.ears[:0]
	for i := range b.pts {
		b.ears = append(b.ears, int32(i))
	}
	for tries := 0; len(b.ears) > 3 && tries < len(b.ears); {
		if i := tries % len(b.ears); b.isEar(i) {
			n := len(b.ears)
			b.ear(first, (i+n-1)%n, i, (i+1)%n)
			b.ears = append(b.ears[:i], b.ears[i+1:]...)
			tries = 0
			continue
		}
		tries++
	}
	// Three are left, or points that cross themselves: a fan closes the shape.
	for i := 1; i+1 < len(b.ears); i++ {
		b.ear(first, 0, i, i+1)
	}
}

func (b *Builder) ear(first uint32, i, j, k int) {
	b.tri(first+2*uint32(b.ears[i]), first+2*uint32(b.ears[j]), first+2*uint32(b.ears[k]))
}

func (b *Builder) isEar(i int) bool {
	n := len(b.ears)
	ia, ib, ic := b.ears[(i+n-1)%n], b.ears[i], b.ears[(i+1)%n]
	p, q, r := b.pts[ia], b.pts[ib], b.pts[ic]
	if cross(p, q, r) <= 0 {
		return false
	}
	for _, j := range b.ears {
		if j == ia || j == ib || j == ic {
			continue
		}
		s := b.pts[j]
		if cross(p, q, s) >= 0 && cross(q, r, s) >= 0 && cross(r, p, s) >= 0 {
			return false
		}
	}
	return true
}

// hatch fills the loaded polygon with parallel lines. The lines stand still
// whatever the polygon does, so that a moving level does not drag them along.
func (b *Builder) hatch(op *ui.Op) {
	sin, cos := sincos(op.A0)
	turn := func(p ui.Vec) ui.Vec { return ui.Vec{X: p.X*cos + p.Y*sin, Y: p.Y*cos - p.X*sin} }
	back := func(x, y float32) ui.Vec { return ui.Vec{X: x*cos - y*sin, Y: x*sin + y*cos} }
	b.core = b.core[:0]
	for _, p := range b.pts {
		b.core = append(b.core, turn(p))
	}
	if len(b.core) < 3 {
		return
	}
	low, high := b.core[0].Y, b.core[0].Y
	for _, p := range b.core {
		low, high = min(low, p.Y), max(high, p.Y)
	}
	step := op.Step * b.scale
	for k := round(low / step); k*step < high; k++ {
		y := k*step + 0.01
		b.cuts = b.cuts[:0]
		for i, p := range b.core {
			q := b.core[(i+1)%len(b.core)]
			if (p.Y <= y) != (q.Y <= y) {
				b.insertCut(p.X + (y-p.Y)/(q.Y-p.Y)*(q.X-p.X))
			}
		}
		for i := 0; i+1 < len(b.cuts); i += 2 {
			if b.cuts[i+1]-b.cuts[i] > 0.5 {
				b.part = append(b.part[:0], back(b.cuts[i], y), back(b.cuts[i+1], y))
				b.piece(b.part[0], b.part[1], op.Width*b.scale, 0)
			}
		}
	}
}

func (b *Builder) insertCut(x float32) {
	b.cuts = append(b.cuts, x)
	for i := len(b.cuts) - 1; i > 0 && b.cuts[i-1] > x; i-- {
		b.cuts[i], b.cuts[i-1] = b.cuts[i-1], b.cuts[i]
	}
}
