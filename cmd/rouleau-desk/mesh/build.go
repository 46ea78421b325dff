// Package mesh turns a display list into triangles: one vertex buffer and one
// index buffer for a whole frame. It knows no display, so that what is painted
// can be tested as numbers.
//
// Triangles cost most where drawing is done in software, so a box, a disc, an
// outline or a piece of a line is two triangles whose soft edge is computed for
// each pixel (see Cover); only polygons bring a soft edge of their own.
package mesh

import (
	"math"

	"rouleau/cmd/rouleau-desk/ui"
)

// Vertex is a corner of a triangle: place and texture place in pixels, and
// colour with premultiplied alpha. A negative U says that the triangle is part
// of a shape, C describes it and V is half the width of its stroke.
type Vertex struct {
	X, Y, U, V, R, G, B, A float32
	C                      [4]float32
}

// Glyph is the picture of one letter in the atlas, and where it stands from the
// left end of the baseline, in device pixels.
type Glyph struct{ X, Y, W, H, U, V float32 }

// Glyphs shapes text: size is in device pixels.
type Glyphs interface {
	Run(s string, size float32, w ui.Weight, tab bool) []Glyph
}

// Builder makes the mesh of a list. Its buffers are reused.
type Builder struct {
	Verts  []Vertex
	Idx    []uint32
	WhiteU float32 // a place in the atlas that is white all round
	WhiteV float32
	// Width and Height are the picture's, in pixels: all of it is covered with the list's ground first. Zero leaves it.
	Width, Height float32

	scale  float32
	col    [4]float32
	clips  []rect
	pts    []ui.Vec
	part   []ui.Vec
	core   []ui.Vec
	ears   []int32
	cuts   []float32
	clipIn []uint32
	poly   [2][]Vertex
}

type rect struct{ x0, y0, x1, y1 float32 }

// Build makes the mesh of a list.
func (b *Builder) Build(l *ui.List, g Glyphs) {
	b.Verts, b.Idx = b.Verts[:0], b.Idx[:0]
	b.scale = l.Scale
	b.clips = append(b.clips[:0], rect{0, 0, l.Size.X * l.Scale, l.Size.Y * l.Scale})
	if b.Width > 0 && b.Height > 0 {
		b.setColor(l.Ground)
		b.quad(b.vert(ui.Vec{}, 1), b.vert(ui.Vec{X: b.Width}, 1), b.vert(ui.Vec{X: b.Width, Y: b.Height}, 1), b.vert(ui.Vec{Y: b.Height}, 1))
	}
	for i := range l.Ops {
		op := &l.Ops[i]
		switch op.Kind {
		case ui.OpClip:
			r := b.px(op.Rect)
			r = rect{round(r.x0), round(r.y0), round(r.x1), round(r.y1)}
			b.clips = append(b.clips, r)
			continue
		case ui.OpUnclip:
			b.clips = b.clips[:len(b.clips)-1]
			continue
		}
		b.setColor(op.Col)
		v0, i0 := len(b.Verts), len(b.Idx)
		b.op(l, op, g)
		b.clip(v0, i0)
	}
}

func (b *Builder) op(l *ui.List, op *ui.Op, g Glyphs) {
	switch op.Kind {
	case ui.OpRect:
		b.fillRect(op)
	case ui.OpRectStroke:
		b.strokeRect(op)
	case ui.OpLine:
		b.load(l.PointsOf(op))
		b.line(op)
	case ui.OpPolygon:
		b.load(l.PointsOf(op))
		b.polygon()
	case ui.OpTriangles:
		b.load(l.PointsOf(op))
		for i := 0; i+2 < len(b.pts); i += 3 {
			b.tri(b.vert(b.pts[i], 1), b.vert(b.pts[i+1], 1), b.vert(b.pts[i+2], 1))
		}
	case ui.OpCircle:
		b.ellipse(op)
	case ui.OpRing:
		b.ring(op)
	case ui.OpHatch:
		b.load(l.PointsOf(op))
		b.hatch(op)
	case ui.OpText:
		b.text(op, g)
	}
}

// load takes points over into pixels.
func (b *Builder) load(p []ui.Vec) {
	b.pts = b.pts[:0]
	for _, v := range p {
		b.pts = append(b.pts, ui.Vec{X: v.X * b.scale, Y: v.Y * b.scale})
	}
}

func (b *Builder) px(r ui.Rect) rect {
	s := b.scale
	return rect{r.X * s, r.Y * s, r.Right() * s, r.Bottom() * s}
}

func (b *Builder) setColor(c ui.Color) {
	a := float32(c.A) / 255
	b.col = [4]float32{float32(c.R) / 255 * a, float32(c.G) / 255 * a, float32(c.B) / 255 * a, a}
}

// vert adds a vertex with a part of the colour's cover.
func (b *Builder) vert(p ui.Vec, cover float32) uint32 {
	c := &b.col
	b.Verts = append(b.Verts, Vertex{X: p.X, Y: p.Y, U: b.WhiteU, V: b.WhiteV,
		R: c[0] * cover, G: c[1] * cover, B: c[2] * cover, A: c[3] * cover})
	return uint32(len(b.Verts) - 1)
}

func (b *Builder) tri(i, j, k uint32) { b.Idx = append(b.Idx, i, j, k) }

// quad adds two triangles; the corners go round.
func (b *Builder) quad(i, j, k, l uint32) { b.Idx = append(b.Idx, i, j, k, i, k, l) }

// text adds the letters of a line. The baseline stands on whole pixels, as the
// pictures of letters were made for.
func (b *Builder) text(op *ui.Op, g Glyphs) {
	x, y := round(op.Rect.X*b.scale), round(op.Rect.Y*b.scale)
	c := &b.col
	for _, q := range g.Run(op.Str, op.Size*b.scale, op.Weight, op.Tab) {
		x0, y0 := x+q.X, y+q.Y
		n := uint32(len(b.Verts))
		for _, at := range [...]ui.Vec{{}, {X: q.W}, {X: q.W, Y: q.H}, {Y: q.H}} {
			b.Verts = append(b.Verts, Vertex{X: x0 + at.X, Y: y0 + at.Y, U: q.U + at.X, V: q.V + at.Y, R: c[0], G: c[1], B: c[2], A: c[3]})
		}
		b.quad(n, n+1, n+2, n+3)
	}
}

func round(v float32) float32 { return float32(math.Floor(float64(v) + 0.5)) }

func sincos(a float32) (sin, cos float32) {
	s, c := math.Sincos(float64(a))
	return float32(s), float32(c)
}
