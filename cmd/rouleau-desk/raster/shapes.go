// Each kind of thing in a display list as a shape to be filled.

package raster

import (
	"image"
	"image/draw"
	"math"

	"github.com/go-text/typesetting/font/opentype"

	"rouleau/cmd/rouleau-desk/ui"
)

func (c *canvas) op(op *ui.Op) {
	c.begin()
	pts := c.l.Points[min(int(op.P0), len(c.l.Points)):min(int(op.P1), len(c.l.Points))]
	switch op.Kind {
	case ui.OpRect:
		c.round4(op.Rect, op.Radius)
	case ui.OpRectStroke:
		c.round4(op.Rect, op.Radius)
		outline := make([]ui.Vec, 0, len(c.path))
		for _, p := range c.path {
			outline = append(outline, ui.Vec{X: p.X / c.scale, Y: p.Y / c.scale})
		}
		c.begin()
		c.stroke(outline, op.Width, op.Dash, true)
	case ui.OpCircle:
		m := op.Rect.Center()
		c.arc(m, op.Rect.W/2, op.Rect.H/2, 0, 2*math.Pi)
		c.end()
	case ui.OpRing:
		m, r := op.Rect.Center(), op.Rect.W/2
		c.arc(m, r, r, op.A0, op.A1)
		c.arc(m, op.Width, op.Width, op.A1, op.A0)
		c.end()
	case ui.OpLine:
		c.stroke(pts, op.Width, op.Dash, op.Closed)
	case ui.OpPolygon:
		c.poly(pts)
	case ui.OpTriangles:
		for i := 0; i+2 < len(pts); i += 3 {
			c.poly(pts[i : i+3])
		}
	case ui.OpHatch:
		c.hatch(pts, op)
		return
	case ui.OpText:
		c.text(op)
	}
	c.fill(op.Col)
}

func (c *canvas) poly(pts []ui.Vec) {
	for _, p := range pts {
		c.to(p.X, p.Y)
	}
	c.end()
}

func (c *canvas) arc(m ui.Vec, rx, ry, from, to float32) {
	n := int(min(max(math.Abs(float64(to-from))*float64(max(rx, ry)*c.scale)/2, 6), 200))
	for i := 0; i <= n; i++ {
		a := float64(from) + float64(to-from)*float64(i)/float64(n)
		c.to(m.X+rx*float32(math.Cos(a)), m.Y+ry*float32(math.Sin(a)))
	}
}

// round4 is a rectangle with round corners.
func (c *canvas) round4(r ui.Rect, radius float32) {
	radius = min(max(radius, 0), r.W/2, r.H/2)
	if radius == 0 {
		c.poly([]ui.Vec{{X: r.X, Y: r.Y}, {X: r.Right(), Y: r.Y}, {X: r.Right(), Y: r.Bottom()}, {X: r.X, Y: r.Bottom()}})
		return
	}
	const q = math.Pi / 2
	for i, m := range [...]ui.Vec{{X: r.X + radius, Y: r.Y + radius}, {X: r.Right() - radius, Y: r.Y + radius},
		{X: r.Right() - radius, Y: r.Bottom() - radius}, {X: r.X + radius, Y: r.Bottom() - radius}} {
		c.arc(m, radius, radius, math.Pi+q*float32(i), math.Pi+q*float32(i+1))
	}
	c.end()
}

// stroke adds a box for each straight piece and a small round at each corner, all turning the same way, so that where they
// lie on each other the cover stays whole.
func (c *canvas) stroke(pts []ui.Vec, width float32, d ui.Dash, closed bool) {
	if closed && len(pts) > 1 {
		pts = append(append(make([]ui.Vec, 0, len(pts)+1), pts...), pts[0])
	}
	half := width / 2
	dashed := d.On > 0 && d.Off > 0
	at := float32(0) // along the pattern
	if dashed {
		at = float32(math.Mod(float64(-d.Phase), float64(d.On+d.Off)))
		if at < 0 {
			at += d.On + d.Off
		}
	}
	for i := 0; i+1 < len(pts); i++ {
		a, b := pts[i], pts[i+1]
		long := float32(math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y)))
		if long == 0 {
			continue
		}
		dir := ui.Vec{X: (b.X - a.X) / long, Y: (b.Y - a.Y) / long}
		if !dashed {
			c.piece(a, b, dir, half)
			if i > 0 {
				c.corner(a, half)
			}
			continue
		}
		for done := float32(0); done < long; {
			left := d.On - at
			on := at < d.On
			if !on {
				left = d.On + d.Off - at
			}
			step := min(left, long-done)
			if on {
				c.piece(ui.Vec{X: a.X + dir.X*done, Y: a.Y + dir.Y*done}, ui.Vec{X: a.X + dir.X*(done+step), Y: a.Y + dir.Y*(done+step)}, dir, half)
			}
			done += max(step, 1e-3)
			if at += max(step, 1e-3); at >= d.On+d.Off-1e-4 {
				at = 0
			}
		}
	}
}

func (c *canvas) piece(a, b, dir ui.Vec, half float32) {
	n := ui.Vec{X: -dir.Y * half, Y: dir.X * half}
	c.to(a.X+n.X, a.Y+n.Y)
	c.to(b.X+n.X, b.Y+n.Y)
	c.to(b.X-n.X, b.Y-n.Y)
	c.to(a.X-n.X, a.Y-n.Y)
	c.end()
}

func (c *canvas) corner(p ui.Vec, half float32) {
	if half*c.scale < 0.75 {
		return
	}
	for i := range 8 {
		a := -2 * math.Pi * float64(i) / 8
		c.to(p.X+half*float32(math.Cos(a)), p.Y+half*float32(math.Sin(a)))
	}
	c.end()
}

// hatch is what parallel lines and a polygon both cover.
func (c *canvas) hatch(pts []ui.Vec, op *ui.Op) {
	c.poly(pts)
	box := c.bounds()
	if box.Empty() {
		return
	}
	inside := c.mask(box)
	c.begin()
	m := ui.Vec{X: float32(box.Min.X+box.Max.X) / 2 / c.scale, Y: float32(box.Min.Y+box.Max.Y) / 2 / c.scale}
	reach := float32(box.Dx()+box.Dy()) / c.scale
	dir := ui.Vec{X: float32(math.Cos(float64(op.A0))), Y: float32(math.Sin(float64(op.A0)))}
	for at := -reach / 2; at <= reach/2; at += op.Step {
		p := ui.Vec{X: m.X - dir.Y*at, Y: m.Y + dir.X*at}
		c.piece(ui.Vec{X: p.X - dir.X*reach, Y: p.Y - dir.Y*reach}, ui.Vec{X: p.X + dir.X*reach, Y: p.Y + dir.Y*reach}, dir, op.Width/2)
	}
	lines := c.mask(box)
	for i := range lines.Pix {
		lines.Pix[i] = uint8(int(lines.Pix[i]) * int(inside.Pix[i]) / 255)
	}
	draw.DrawMask(c.img, box, image.NewUniform(op.Col), image.Point{}, lines, box.Min, draw.Over)
}

// text adds the outlines of a line of words, each letter where the window has it.
func (c *canvas) text(op *ui.Op) {
	for i, r := range op.Str {
		x := op.Rect.X + ui.TextWidth(op.Str[:i], op.Size, op.Weight, op.Tab)
		o := ui.LetterOutline(r, op.Weight, op.Tab)
		if o.PerEm == 0 {
			continue
		}
		c.letter(&o, x, op.Rect.Y, op.Size/o.PerEm)
	}
}

func (c *canvas) letter(o *ui.Outline, x, y, k float32) {
	var last ui.Vec
	open := false
	for i := range o.Segments {
		s := &o.Segments[i]
		args := s.ArgsSlice()
		var p [3]ui.Vec
		for j, a := range args {
			p[j] = ui.Vec{X: x + a.X*k, Y: y - a.Y*k}
		}
		switch s.Op {
		case opentype.SegmentOpMoveTo:
			if open {
				c.end()
			}
			open = true
			c.to(p[0].X, p[0].Y)
		case opentype.SegmentOpLineTo:
			c.to(p[0].X, p[0].Y)
		case opentype.SegmentOpQuadTo:
			for n := 1; n <= 6; n++ {
				t := float32(n) / 6
				u := 1 - t
				c.to(u*u*last.X+2*u*t*p[0].X+t*t*p[1].X, u*u*last.Y+2*u*t*p[0].Y+t*t*p[1].Y)
			}
		case opentype.SegmentOpCubeTo:
			for n := 1; n <= 8; n++ {
				t := float32(n) / 8
				u := 1 - t
				c.to(u*u*u*last.X+3*u*u*t*p[0].X+3*u*t*t*p[1].X+t*t*t*p[2].X, u*u*u*last.Y+3*u*u*t*p[0].Y+3*u*t*t*p[1].Y+t*t*t*p[2].Y)
			}
		}
		last = p[len(args)-1]
	}
	if open {
		c.end()
	}
}
