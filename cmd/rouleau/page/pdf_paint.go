package page

import (
	"math"

	"codeberg.org/go-pdf/fpdf"

	"rouleau/cmd/rouleau-desk/ui"
)

// This file paints drawings in PDF: each kind of thing in a display list, with lines and areas as such.

// pen paints one list.
type pen struct {
	*canvas
	l     *ui.List
	x, y  float64
	scale float64 // mm for a unit of the drawing
}

// list paints a display list with its upper left corner at a point.
func (c *canvas) list(l *ui.List, x, y, scale float64) {
	p := &pen{canvas: c, l: l, x: x, y: y, scale: scale}
	depth := 0
	p.clip(ui.Rect{W: l.Size.X, H: l.Size.Y})
	c.box(x, y, p.long(l.Size.X), p.long(l.Size.Y), l.Ground)
	for i := range l.Ops {
		switch op := &l.Ops[i]; op.Kind {
		case ui.OpClip:
			p.clip(op.Rect)
			depth++
		case ui.OpUnclip:
			if depth > 0 {
				c.pdf.ClipEnd()
				depth--
			}
		default:
			p.op(op)
		}
	}
	for ; depth >= 0; depth-- {
		c.pdf.ClipEnd()
	}
}

func (p *pen) clip(r ui.Rect) {
	p.pdf.ClipRect(p.h(r.X), p.v(r.Y), p.long(max(r.W, 0)), p.long(max(r.H, 0)), false)
}

// h and v are a place on the sheet, long is a length.
func (p *pen) h(x float32) float64    { return p.x + p.long(x) }
func (p *pen) v(y float32) float64    { return p.y + p.long(y) }
func (p *pen) long(v float32) float64 { return float64(v) * p.scale }

func (p *pen) op(op *ui.Op) {
	through := op.Col.A < 255
	if through {
		p.pdf.SetAlpha(float64(op.Col.A)/255, "Normal")
	}
	p.pdf.SetFillColor(int(op.Col.R), int(op.Col.G), int(op.Col.B))
	p.pdf.SetDrawColor(int(op.Col.R), int(op.Col.G), int(op.Col.B))
	switch op.Kind {
	case ui.OpRect:
		p.round(op, "F")
	case ui.OpRectStroke:
		p.stroke(op, func() { p.round(op, "D") })
	case ui.OpCircle:
		m := op.Rect.Center()
		p.pdf.Ellipse(p.h(m.X), p.v(m.Y), p.long(op.Rect.W/2), p.long(op.Rect.H/2), 0, "F")
	case ui.OpRing:
		p.ring(op)
	case ui.OpLine:
		p.stroke(op, func() {
			p.path(p.l.PointsOf(op), op.Closed)
			p.pdf.DrawPath("D")
		})
	case ui.OpPolygon:
		p.path(p.l.PointsOf(op), true)
		p.pdf.DrawPath("F")
	case ui.OpTriangles:
		pts := p.l.PointsOf(op)
		for i := 0; i+2 < len(pts); i += 3 {
			p.path(pts[i:i+3], true)
		}
		p.pdf.DrawPath("F")
	case ui.OpHatch:
		p.hatch(op)
	case ui.OpText:
		p.letters(p.h(op.Rect.X), p.v(op.Rect.Y), shown(op.Str), look{size: p.long(op.Size), bold: op.Weight == ui.SemiBold, tab: op.Tab, col: op.Col})
	}
	if through {
		p.pdf.SetAlpha(1, "Normal")
	}
}

func (p *pen) round(op *ui.Op, how string) {
	r := op.Rect
	radius := p.long(min(op.Radius, r.W/2, r.H/2))
	if radius <= 0 {
		p.pdf.Rect(p.h(r.X), p.v(r.Y), p.long(r.W), p.long(r.H), how)
		return
	}
	p.pdf.RoundedRect(p.h(r.X), p.v(r.Y), p.long(r.W), p.long(r.H), radius, "1234", how)
}

// path is a path through points.
func (p *pen) path(pts []ui.Vec, closed bool) {
	for i, pt := range pts {
		if i == 0 {
			p.pdf.MoveTo(p.h(pt.X), p.v(pt.Y))
		} else {
			p.pdf.LineTo(p.h(pt.X), p.v(pt.Y))
		}
	}
	if closed {
		p.pdf.ClosePath()
	}
}

// stroke draws lines with the width, dashes and corners of an op.
func (p *pen) stroke(op *ui.Op, draw func()) {
	p.pdf.SetLineWidth(p.long(op.Width))
	join, ends := "bevel", "butt" // a sharp corner of a noisy line must not shoot out
	if op.Kind == ui.OpRectStroke {
		join = "miter"
	}
	if op.Round {
		join, ends = "round", "round"
	}
	p.pdf.SetLineJoinStyle(join)
	p.pdf.SetLineCapStyle(ends)
	d := op.Dash
	dashed := d.On > 0 && d.Off > 0
	if dashed {
		phase := 0.0
		if d.Phase != 0 {
			span := float64(d.On + d.Off)
			phase = math.Mod(span-math.Mod(float64(d.Phase), span), span)
		}
		p.pdf.SetDashPattern([]float64{p.long(d.On), p.long(d.Off)}, phase*p.scale)
	}
	draw()
	if dashed {
		p.pdf.SetDashPattern(nil, 0)
	}
}

// ring is a sector of an annulus, its arcs as many short lines.
func (p *pen) ring(op *ui.Op) {
	c, outer := op.Rect.Center(), op.Rect.W/2
	n := min(max(8, int(math.Abs(float64(op.A1-op.A0))*float64(outer)/2)), 180)
	var pts []ui.Vec
	for side, radius := range [...]float32{outer, op.Width} {
		for i := 0; i <= n; i++ {
			k := i
			if side == 1 {
				k = n - i
			}
			a := float64(op.A0) + float64(op.A1-op.A0)*float64(k)/float64(n)
			pts = append(pts, ui.Vec{X: c.X + radius*float32(math.Cos(a)), Y: c.Y + radius*float32(math.Sin(a))})
		}
	}
	p.path(pts, true)
	p.pdf.DrawPath("F*")
}

// hatch fills a polygon with parallel lines, which keep their places from one polygon to the next.
func (p *pen) hatch(op *ui.Op) {
	pts := p.l.PointsOf(op)
	outline := make([]fpdf.PointType, len(pts))
	sin, cos := math.Sincos(float64(op.A0))
	left, right, above, below := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for i, pt := range pts {
		outline[i] = fpdf.PointType{X: p.h(pt.X), Y: p.v(pt.Y)}
		along := float64(pt.X)*cos + float64(pt.Y)*sin
		across := float64(pt.Y)*cos - float64(pt.X)*sin
		left, right, above, below = min(left, along), max(right, along), min(above, across), max(below, across)
	}
	p.pdf.ClipPolygon(outline, false)
	p.pdf.SetLineWidth(p.long(op.Width))
	p.pdf.SetLineCapStyle("butt")
	step, half := float64(op.Step), float64(op.Width)/2
	for k := math.Floor(above/step) - 1; k*step <= below; k++ {
		v := k*step + half
		p.pdf.Line(p.x+p.scale*(left*cos-v*sin), p.y+p.scale*(left*sin+v*cos), p.x+p.scale*(right*cos-v*sin), p.y+p.scale*(right*sin+v*cos))
	}
	p.pdf.ClipEnd()
}

// disc and frame are what blocks are drawn with beside text.
func (c *canvas) disc(x, y, radius float64, col colour) {
	c.pdf.SetFillColor(int(col.R), int(col.G), int(col.B))
	c.pdf.Circle(x, y, radius, "F")
}

func (c *canvas) frame(x, y, w, h, thick float64, col colour) {
	c.pdf.SetDrawColor(int(col.R), int(col.G), int(col.B))
	c.pdf.SetLineWidth(thick)
	c.pdf.SetLineJoinStyle("miter")
	c.pdf.Rect(x, y, w, h, "D")
}
