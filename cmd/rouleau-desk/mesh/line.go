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
	if closed = closed && n > 2; closed {
		segs = n
	}
	half := width / 2
	b.row0 = noRow
	for i := range segs {
		a, z := p[i], p[(i+1)%n]
		d := dir(a, z)
		if b.row0 == noRow {
			if before := dir(p[n-1], a); closed && i == 0 && dot(before, d) > sharp {
				b.row(a, mitre(before, d), half, cover)
			} else {
				b.cap(a, d, -1, half, cover)
			}
		}
		if i == segs-1 && !closed {
			b.cap(z, d, 1, half, cover)
			break
		}
		next := dir(z, p[(i+2)%n])
		if dot(d, next) > sharp {
			b.row(z, mitre(d, next), half, cover)
			continue
		}
		b.cap(z, d, 1, half, cover)
		b.row0 = noRow
		if rnd || width > 3 {
			b.disc(z, half)
		}
	}
	if rnd && !closed && width > 1.5 {
		b.disc(p[0], half)
		b.disc(p[n-1], half)
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
	// |m| is twice the cosine of half the angle; the mitre is one over it.
	return ui.Vec{X: m.X * 2 / l2, Y: m.Y * 2 / l2}
}

// noRow says that the next row of a strip joins nothing.
const noRow = ^uint32(0)

// row adds the four vertices across a strip at p and joins them to the row before.
func (b *Builder) row(p, across ui.Vec, half, cover float32) {
	b.rowOf(p, across, -half, half, cover)
}

// rowOf is row from one distance along across to another.
func (b *Builder) rowOf(p, across ui.Vec, from, to, cover float32) {
	at := func(d float32) ui.Vec { return ui.Vec{X: p.X + across.X*d, Y: p.Y + across.Y*d} }
	// A strip narrower than the soft edge has no core to invert.
	soft := min(0.5, (to-from)/2)
	n := b.vert(at(from-0.5), 0)
	b.vert(at(from+soft), cover)
	b.vert(at(to-soft), cover)
	b.vert(at(to+0.5), 0)
	if b.row0 != noRow {
		for c := range uint32(3) {
			b.quad(b.row0+c, b.row0+c+1, n+c+1, n+c)
		}
	}
	b.row0 = n
}

// cap adds the soft end of a line: at its beginning (side -1) or its end.
func (b *Builder) cap(p, d ui.Vec, side, half, cover float32) {
	across := ui.Vec{X: -d.Y, Y: d.X}
	outer := ui.Vec{X: p.X + d.X*0.5*side, Y: p.Y + d.Y*0.5*side}
	inner := ui.Vec{X: p.X - d.X*0.5*side, Y: p.Y - d.Y*0.5*side}
	if side < 0 {
		b.row(outer, across, half, 0)
		b.row(inner, across, half, cover)
	} else {
		b.row(inner, across, half, cover)
		b.row(outer, across, half, 0)
	}
}

// dashes draws the loaded points in pieces.
func (b *Builder) dashes(width float32, d ui.Dash, closed bool) {
	on, off := max(d.On*b.scale, 0.5), max(d.Off*b.scale, 0.5)
	period := on + off
	if closed {
		b.pts = append(b.pts, b.pts[0])
	}
	phase := float32(math.Mod(float64(d.Phase*b.scale), float64(period)))
	if phase > 0 {
		phase -= period
	}
	// from is where the present dash begins, measured along the line.
	from, at := phase, float32(0)
	b.part = b.part[:0]
	for i := 0; i+1 < len(b.pts); i++ {
		a, z := b.pts[i], b.pts[i+1]
		l := hypot(z.X-a.X, z.Y-a.Y)
		for from < at+l {
			start, end := max(from, at), min(from+on, at+l)
			if end > start {
				if len(b.part) == 0 {
					b.part = append(b.part, along(a, z, (start-at)/l))
				}
				b.part = append(b.part, along(a, z, (end-at)/l))
			}
			if from+on > at+l {
				break // the dash goes on round the corner
			}
			b.strip(dedupe(b.part, false), width, false, false)
			b.part = b.part[:0]
			from += period
		}
		at += l
	}
	b.strip(dedupe(b.part, false), width, false, false)
}

func along(a, b ui.Vec, t float32) ui.Vec {
	return ui.Vec{X: a.X + (b.X-a.X)*t, Y: a.Y + (b.Y-a.Y)*t}
}
