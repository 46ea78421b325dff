// Lines: a polyline is a chain of straight pieces with round joints; points that
// change nothing are left out first; dashes are chains of their own.

package mesh

import (
	"math"

	"rouleau/cmd/rouleau-desk/ui"
)

// line draws the loaded points.
func (b *Builder) line(op *ui.Op) {
	b.pts = dedupe(b.pts, op.Closed)
	if len(b.pts) < 2 {
		return
	}
	width := op.Width * b.scale
	if len(b.pts) == 2 && !op.Round {
		width = snapStraight(b.pts, width)
	}
	if op.Closed && len(b.pts) > 2 {
		b.pts = append(b.pts, b.pts[0])
	}
	b.pts = simplify(b.pts)
	if op.Dash.On > 0 && op.Dash.Off > 0 {
		b.dashes(width, op.Dash)
		return
	}
	b.chain(b.pts, width, op.Round || op.Closed)
}

// chain draws points joined by pieces; round says whether its ends are round.
func (b *Builder) chain(p []ui.Vec, width float32, round bool) {
	for i := 0; i+1 < len(p); i++ {
		ends := 0
		if round || i > 0 {
			ends |= roundFirst
		}
		if round || i+2 < len(p) {
			ends |= roundSecond
		}
		b.piece(p[i], p[i+1], width, ends)
	}
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

// dedupe drops points that lie on the one before.
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

const (
	flat    = 0.2 // pixels a left out point may stand off the line
	maxSkip = 64  // points left out in a row, which bounds the work
)

// simplify leaves out points that lie on the line between their neighbours.
func simplify(p []ui.Vec) []ui.Vec {
	if len(p) < 3 {
		return p
	}
	out := p[:1]
	at := 0 // index of the last point kept
	for i := 2; i < len(p); i++ {
		if i-at > maxSkip || !straight(p[at], p[at+1:i], p[i]) {
			out = append(out, p[i-1])
			at = i - 1
		}
	}
	return append(out, p[len(p)-1])
}

// straight reports whether points lie near the line from a to z and do not run
// back on it.
func straight(a ui.Vec, between []ui.Vec, z ui.Vec) bool {
	d := dir(a, z)
	last := float32(0)
	for _, p := range between {
		x, y := p.X-a.X, p.Y-a.Y
		along := x*d.X + y*d.Y
		if along < last || abs(x*d.Y-y*d.X) > flat {
			return false
		}
		last = along
	}
	return last <= hypot(z.X-a.X, z.Y-a.Y)
}

// dashes draws the loaded points in pieces.
func (b *Builder) dashes(width float32, d ui.Dash) {
	on, off := max(d.On*b.scale, 0.5), max(d.Off*b.scale, 0.5)
	period := on + off
	// from is where the present dash begins, measured along the line.
	from, at := float32(math.Mod(float64(d.Phase*b.scale), float64(period))), float32(0)
	if from > 0 {
		from -= period
	}
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
			b.chain(b.part, width, false)
			b.part = b.part[:0]
			from += period
		}
		at += l
	}
	b.chain(b.part, width, false)
}

func along(a, b ui.Vec, t float32) ui.Vec {
	return ui.Vec{X: a.X + (b.X-a.X)*t, Y: a.Y + (b.Y-a.Y)*t}
}
