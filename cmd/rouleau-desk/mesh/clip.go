// Clipping: what an operation added is cut to the rectangle in force, so that a
// whole frame stays one draw call.

package mesh

// clip looks at the vertices from v0 and indices from i0 on: all inside stays,
// all outside is taken back, the rest is cut triangle by triangle.
func (b *Builder) clip(v0, i0 int) {
	if len(b.clips) == 1 {
		return // the picture itself ends where the window does
	}
	r := b.clips[len(b.clips)-1]
	if len(b.Verts) == v0 {
		return
	}
	box := rect{b.Verts[v0].X, b.Verts[v0].Y, b.Verts[v0].X, b.Verts[v0].Y}
	for i := v0; i < len(b.Verts); i++ {
		v := &b.Verts[i]
		box = rect{min(box.x0, v.X), min(box.y0, v.Y), max(box.x1, v.X), max(box.y1, v.Y)}
	}
	if box.x1 <= r.x0 || box.y1 <= r.y0 || box.x0 >= r.x1 || box.y0 >= r.y1 {
		b.Verts, b.Idx = b.Verts[:v0], b.Idx[:i0]
		return
	}
	if box.x0 >= r.x0 && box.y0 >= r.y0 && box.x1 <= r.x1 && box.y1 <= r.y1 {
		return
	}
	b.clipIn = append(b.clipIn[:0], b.Idx[i0:]...)
	b.Idx = b.Idx[:i0]
	for i := 0; i+2 < len(b.clipIn); i += 3 {
		b.clipTri(b.clipIn[i], b.clipIn[i+1], b.clipIn[i+2], r)
	}
}

func (b *Builder) clipTri(i, j, k uint32, r rect) {
	in := func(v *Vertex) bool { return v.X >= r.x0 && v.X <= r.x1 && v.Y >= r.y0 && v.Y <= r.y1 }
	p, q, s := &b.Verts[i], &b.Verts[j], &b.Verts[k]
	if in(p) && in(q) && in(s) {
		b.tri(i, j, k)
		return
	}
	if max(p.X, q.X, s.X) <= r.x0 || min(p.X, q.X, s.X) >= r.x1 || max(p.Y, q.Y, s.Y) <= r.y0 || min(p.Y, q.Y, s.Y) >= r.y1 {
		return
	}
	from, to := append(b.poly[0][:0], *p, *q, *s), b.poly[1][:0]
	for side := range 4 {
		to = cutSide(from, to[:0], side, r)
		from, to = to, from
	}
	if len(from) >= 3 {
		n := uint32(len(b.Verts))
		b.Verts = append(b.Verts, from...)
		for m := uint32(1); m+1 < uint32(len(from)); m++ {
			b.tri(n, n+m, n+m+1)
		}
	}
	b.poly[0], b.poly[1] = from[:0], to[:0]
}

// cutSide keeps the part of a convex polygon inside one side of the rectangle.
func cutSide(from, to []Vertex, side int, r rect) []Vertex {
	dist := func(v *Vertex) float32 {
		switch side {
		case 0:
			return v.X - r.x0
		case 1:
			return r.x1 - v.X
		case 2:
			return v.Y - r.y0
		}
		return r.y1 - v.Y
	}
	for i := range from {
		a, b := &from[i], &from[(i+1)%len(from)]
		da, db := dist(a), dist(b)
		if da >= 0 {
			to = append(to, *a)
		}
		if (da >= 0) != (db >= 0) {
			to = append(to, lerp(a, b, da/(da-db)))
		}
	}
	return to
}

func lerp(a, b *Vertex, t float32) Vertex {
	m := func(x, y float32) float32 { return x + (y-x)*t }
	v := *a // what describes a shape is the same at all corners
	v.X, v.Y, v.U, v.V = m(a.X, b.X), m(a.Y, b.Y), m(a.U, b.U), m(a.V, b.V)
	v.R, v.G, v.B, v.A = m(a.R, b.R), m(a.G, b.G), m(a.B, b.B), m(a.A, b.A)
	return v
}
