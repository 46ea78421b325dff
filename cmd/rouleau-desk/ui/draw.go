// The primitives screens draw with. Each adds one Op to the display list; what
// lies wholly outside the clip is left out.

package ui

import "math"

// Fill draws a filled rounded rectangle.
func (c *Core) Fill(r Rect, radius float32, col Color) {
	c.add(Op{Kind: OpRect, Rect: r, Radius: radius, Col: col}, r)
}

// Stroke draws the outline of a rounded rectangle, centred on its edge.
func (c *Core) Stroke(r Rect, radius, width float32, col Color) {
	c.StrokeDash(r, radius, width, col, Dash{})
}

// StrokeDash is Stroke with a dash pattern.
func (c *Core) StrokeDash(r Rect, radius, width float32, col Color, d Dash) {
	c.add(Op{Kind: OpRectStroke, Rect: r, Radius: radius, Width: width, Col: col, Dash: d}, r.Inset(-width))
}

// Frame draws an outline that lies inside r, so that its outer edge is r.
func (c *Core) Frame(r Rect, radius, width float32, col Color) {
	c.Stroke(r.Inset(width/2), max(radius-width/2, 0), width, col)
}

// Disc draws a filled ellipse that fills r.
func (c *Core) Disc(r Rect, col Color) {
	c.add(Op{Kind: OpCircle, Rect: r, Col: col}, r)
}

// Circle draws the outline of an ellipse inside r.
func (c *Core) Circle(r Rect, width float32, col Color) {
	c.Stroke(r, min(r.W, r.H)/2, width, col)
}

// Ring draws a sector of an annulus between two radii. Angles are in radians,
// clockwise from the right; a whole turn draws the whole annulus.
func (c *Core) Ring(center Vec, inner, outer, from, to float32, col Color) {
	r := R(center.X-outer, center.Y-outer, 2*outer, 2*outer)
	c.add(Op{Kind: OpRing, Rect: r, Width: inner, A0: from, A1: to, Col: col}, r)
}

// Segment draws one straight line.
func (c *Core) Segment(x0, y0, x1, y1, width float32, col Color) {
	c.BeginPath()
	c.To(x0, y0)
	c.To(x1, y1)
	c.Line(width, col, Dash{}, false)
}

// BeginPath starts a new path; To adds its points.
func (c *Core) BeginPath() { c.path = int32(len(c.l.Points)) }

// To adds a point to the path. Points that are not numbers are left out.
func (c *Core) To(x, y float32) {
	if x != x || y != y {
		return
	}
	c.l.Points = append(c.l.Points, Vec{x, y})
}

// Curve adds a quadratic curve from the last point over a control point.
func (c *Core) Curve(cx, cy, x, y float32) {
	if int32(len(c.l.Points)) == c.path {
		c.To(x, y)
		return
	}
	p := c.l.Points[len(c.l.Points)-1]
	span := math.Hypot(float64(cx-p.X), float64(cy-p.Y)) + math.Hypot(float64(x-cx), float64(y-cy))
	n := int(min(max(span/4, 4), 40))
	for i := 1; i <= n; i++ {
		t := float32(i) / float32(n)
		u := 1 - t
		c.To(u*u*p.X+2*u*t*cx+t*t*x, u*u*p.Y+2*u*t*cy+t*t*y)
	}
}

// Arc adds points of a circle to the path.
func (c *Core) Arc(center Vec, radius, from, to float32) {
	n := int(min(max(math.Abs(float64(to-from))*float64(radius)/3, 4), 96))
	for i := 0; i <= n; i++ {
		a := float64(from) + float64(to-from)*float64(i)/float64(n)
		c.To(center.X+radius*float32(math.Cos(a)), center.Y+radius*float32(math.Sin(a)))
	}
}

// Line strokes the path. The path stays, to be filled or stroked again.
func (c *Core) Line(width float32, col Color, d Dash, closed bool) {
	c.addPath(Op{Kind: OpLine, Width: width, Col: col, Dash: d, Closed: closed}, width, 2)
}

// LineRound strokes the path with round ends and corners.
func (c *Core) LineRound(width float32, col Color, closed bool) {
	c.addPath(Op{Kind: OpLine, Width: width, Col: col, Closed: closed, Round: true}, width, 2)
}

// Polygon fills the path, a simple polygon.
func (c *Core) Polygon(col Color) { c.addPath(Op{Kind: OpPolygon, Col: col}, 0, 3) }

// Triangles fills the path three points at a time.
func (c *Core) Triangles(col Color) { c.addPath(Op{Kind: OpTriangles, Col: col}, 0, 3) }

// Hatch fills the path, a simple polygon, with parallel lines: their distance,
// their angle in radians and their width.
func (c *Core) Hatch(step, angle, width float32, col Color) {
	c.addPath(Op{Kind: OpHatch, Step: max(step, 1), A0: angle, Width: width, Col: col}, 0, 3)
}

// HatchRect fills a rectangle with parallel lines.
func (c *Core) HatchRect(r Rect, step, angle, width float32, col Color) {
	c.BeginPath()
	c.To(r.X, r.Y)
	c.To(r.Right(), r.Y)
	c.To(r.Right(), r.Bottom())
	c.To(r.X, r.Bottom())
	c.Hatch(step, angle, width, col)
}

func (c *Core) addPath(op Op, grow float32, least int32) {
	op.P0, op.P1 = c.path, int32(len(c.l.Points))
	if op.P1-op.P0 < least {
		return
	}
	p := c.l.Points[op.P0]
	x0, y0, x1, y1 := p.X, p.Y, p.X, p.Y
	for _, p := range c.l.Points[op.P0+1:] {
		x0, y0 = min(x0, p.X), min(y0, p.Y)
		x1, y1 = max(x1, p.X), max(y1, p.Y)
	}
	// A straight line has no area: growing it keeps it from counting as empty.
	c.add(op, Rect{x0, y0, x1 - x0, y1 - y0}.Inset(-grow-1))
}

// add appends an Op unless nothing of it can be seen.
func (c *Core) add(op Op, bounds Rect) {
	if op.Col.A == 0 || bounds.Intersect(c.clip()).Empty() {
		return
	}
	c.l.Ops = append(c.l.Ops, op)
}

// PushClip hides what is drawn outside r until PopClip.
func (c *Core) PushClip(r Rect) {
	r = r.Intersect(c.clip())
	c.clips = append(c.clips, r)
	c.l.Ops = append(c.l.Ops, Op{Kind: OpClip, Rect: r})
}

// PopClip ends the newest PushClip.
func (c *Core) PopClip() {
	c.clips = c.clips[:len(c.clips)-1]
	c.l.Ops = append(c.l.Ops, Op{Kind: OpUnclip})
}

func (c *Core) clip() Rect { return c.clips[len(c.clips)-1] }
