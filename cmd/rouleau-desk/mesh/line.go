// Lines: a strip of four vertices across for each point, two of them the soft
// edge, with mitred corners; dashes are pieces of such strips.

package mesh

import (
	"math"

	"rouleau/cmd/rouleau-desk/ui"
)

// sharp is the cosine between directions below which a corner is too sharp for a
// mitre and the strip starts anew.
const sharp = -0.25

// line draws the loaded points.
func (b *Builder) line(op *ui.Op) {
	b.pts = dedupe(b.pts, op.Closed)
	if len(b.pts) < 2 {
		if op.Round && len(b.pts) == 1 {
			b.disc(b.pts[0], op.Width*b.scale/2)
		}
		return
	}
	width := op.Width * b.scale
	if len(b.pts) == 2 {
		width = snapStraight(b.pts, width)
	}
	if op.Dash.On > 0 && op.Dash.Off > 0 {
		b.dashes(width, op.Dash, op.Closed)
		return
	}
	b.strip(b.pts, width, op.Closed, op.Round)
}

// snapStraight puts a level or upright line on whole pixels and returns its
// width in whole pixels, so that rules are crisp.
func snapStraight(p []ui.Vec, width float32) float32 {
	level, upright := p[0].Y == p[1].Y, p[0].X == p[1].X
	if !level && !upright {
		return width
	}
	width = max(1, round(width))
	snap := func(v float32) float32 { return round(v-width/2) + width/2 }
	for i := range p {
		if level {
			p[i].Y = snap(p[i].Y)
		} else {
			p[i].X = snap(p[i].X)
		}
	}
	return width
}

func dedupe(p []ui.Vec, closed bool) []ui.Vec {
	const near = 0.01
	out := p[:0]
	for _, v := range p {
		if n := len(out); n > 0 && abs(out[n-1].X-v.X) < near && abs(out[n-1].Y-v.Y) < near {
			continue
		}
		out = append(out, v)
	}
	if n := len(out); closed && n > 1 && abs(out[n-1].X-out[0].X) < near && abs(out[n-1].Y-out[0].Y) < near {
		out = out[:n-1]
	}
	return out
}

func abs(v float32) float32 { return float32(math.Abs(float64(v))) }

func dir(a, b ui.Vec) ui.Vec {
	d := b.Sub(a)
	if l := hypot(d.X, d.Y); l > 0 {
		return ui.Vec{X: d.X / l, Y: d.Y / l}
	}
	return ui.Vec{X: 1}
}

// strip draws a polyline of a width in pixels. Lines thinner than a pixel are
// drawn a pixel wide and paler.
func (b *Builder) strip(p []ui.Vec, width float32, closed, rnd bool) {
	cover := float32(1)
	if width < 1 {
		cover, width = width, 1
	}
	n := len(p)
	if n < 2 {
		return
	}
	segs := n - 1
	if closed && n > 2 {
		segs = n
	} else {
		closed = false
	}
	half := width / 2
	first, open := uint32(len(b.Verts)), false
	for i := range segs {
		a, z := p[i], p[(i+1)%n]
		d := dir(a, z)
		if !open {
			joined := closed && i == 0 && dot(dir(p[n-1], a), d) > sharp
			if joined {
				b.row(a, mitre(dir(p[n-1], a), d), half, cover)
			} else {
				b.cap(a, d, -1, half, cover)
			}
			open = true
		}
		last := i == segs-1
		var next ui.Vec
		if !last || closed {
			next = dir(z, p[(i+2)%n])
		}
		switch {
		case last && !closed:
			b.cap(z, d, 1, half, cover)
		case dot(d, next) <= sharp:
			b.cap(z, d, 1, half, cover)
			open = false
			if rnd || width > 3 {
				b.discAt(z, half, cover)
			}
		default:
			b.row(z, mitre(d, next), half, cover)
		}
	}
	b.join(first)
	if rnd && !closed && width > 1.5 {
		b.discAt(p[0], half, cover)
		b.discAt(p[n-1], half, cover)
	}
}

func dot(a, b ui.Vec) float32 { return a.X*b.X + a.Y*b.Y }

// mitre is the vector across a corner, long enough for the edges to meet.
func mitre(a, b ui.Vec) ui.Vec {
	m := ui.Vec{X: -(a.Y + b.Y), Y: a.X + b.X}
	l2 := dot(m, m)
	if l2 < 1e-6 {
		return ui.Vec{X: -a.Y, Y: a.X}
	}
	// Length 1/cos(half angle) with |m| = 2 cos(half angle).
	return ui.Vec{X: m.X * 2 / l2, Y: m.Y * 2 / l2}
}

// rowStart marks a row that does not join the one before, by the sign of V.
const rowStart = -1

// row adds the four vertices across the line at p.
func (b *Builder) row(p, across ui.Vec, half, cover float32) {
	out, in := half+0.5, half-0.5
	b.vert(ui.Vec{X: p.X - across.X*out, Y: p.Y - across.Y*out}, 0)
	b.vert(ui.Vec{X: p.X - across.X*in, Y: p.Y - across.Y*in}, cover)
	b.vert(ui.Vec{X: p.X + across.X*in, Y: p.Y + across.Y*in}, cover)
	b.vert(ui.Vec{X: p.X + across.X*out, Y: p.Y + across.Y*out}, 0)
}

// cap adds the soft end of a line: at its beginning (side -1) or its end.
func (b *Builder) cap(p, d ui.Vec, side, half, cover float32) {
	across := ui.Vec{X: -d.Y, Y: d.X}
	outer := ui.Vec{X: p.X + d.X*0.5*side, Y: p.Y + d.Y*0.5*side}
	inner := ui.Vec{X: p.X - d.X*0.5*side, Y: p.Y - d.Y*0.5*side}
	if side < 0 {
		b.row(outer, across, half, 0)
		b.Verts[len(b.Verts)-4].V = rowStart
		b.row(inner, across, half, cover)
	} else {
		b.row(inner, across, half, cover)
		b.row(outer, across, half, 0)
	}
}

// join connects the rows from vertex first on, up to each start of a new strip.
// Discs drawn between lie behind, as they bring their own indices.
func (b *Builder) join(first uint32) {
	for r := first; r+8 <= uint32(len(b.Verts)); r += 4 {
		if b.Verts[r].U == discMark {
			r += uint32(b.Verts[r].V) - 4
			continue
		}
		if next := &b.Verts[r+4]; next.V == rowStart || next.U == discMark {
			continue
		}
		for c := range uint32(3) {
			b.quad(r+c, r+c+1, r+c+5, r+c+4)
		}
	}
	b.unmark(first)
}
