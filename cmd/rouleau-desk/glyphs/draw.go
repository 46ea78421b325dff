// Drawing one letter: its outline becomes cover values at a free place of the sheet.

package glyphs

import (
	"image"
	"image/draw"
	"math"

	"github.com/go-text/typesetting/font/opentype"

	"rouleau/cmd/rouleau-desk/mesh"
	"rouleau/cmd/rouleau-desk/ui"
)

// draw makes the picture of a letter so many steps right of a whole pixel. It fails only for want of room.
func (s *Sheet) draw(f faceKey, r rune, step uint8) (picture, bool) {
	o := ui.LetterOutline(r, f.weight, f.tab)
	key := pictureKey{o.Glyph, f.size, f.weight, step}
	if p, ok := s.made[key]; ok {
		return p, true
	}
	p := picture{made: true}
	if len(o.Segments) > 0 {
		scale, right := f.size/o.PerEm, float32(step)/steps
		x0, y0, x1, y1 := bounds(o.Segments, scale)
		box := image.Rect(int(math.Floor(float64(x0+right))), int(math.Floor(float64(y0))), int(math.Ceil(float64(x1+right))), int(math.Ceil(float64(y1))))
		if !box.Empty() {
			at, ok := s.room(box.Dx(), box.Dy())
			if !ok {
				return p, false
			}
			s.fill(o.Segments, scale, right-float32(box.Min.X), -float32(box.Min.Y), image.Rectangle{Min: at, Max: at.Add(box.Size())})
			p.at = mesh.Glyph{X: float32(box.Min.X), Y: float32(box.Min.Y), W: float32(box.Dx()), H: float32(box.Dy()), U: float32(at.X), V: float32(at.Y)}
		}
	}
	s.made[key] = p
	return p, true
}

// points are the points of a segment, its end last.
func points(g *opentype.Segment) []opentype.SegmentPoint { return g.ArgsSlice() }

// bounds is the box of an outline in pixels, Y downwards.
func bounds(outline []opentype.Segment, scale float32) (x0, y0, x1, y1 float32) {
	first := outline[0].Args[0]
	x0, x1 = first.X, first.X
	y0, y1 = first.Y, first.Y
	for i := range outline {
		for _, p := range points(&outline[i]) {
			x0, x1 = min(x0, p.X), max(x1, p.X)
			y0, y1 = min(y0, p.Y), max(y1, p.Y)
		}
	}
	return x0 * scale, -y1 * scale, x1 * scale, -y0 * scale
}

// fill draws an outline, moved by dx and dy, into a box of the sheet.
func (s *Sheet) fill(outline []opentype.Segment, scale, dx, dy float32, box image.Rectangle) {
	s.pen.Reset(box.Dx(), box.Dy())
	s.pen.DrawOp = draw.Src
	var p [3][2]float32
	for i := range outline {
		g := &outline[i]
		for k, q := range points(g) {
			p[k] = [2]float32{q.X*scale + dx, dy - q.Y*scale}
		}
		switch g.Op {
		case opentype.SegmentOpMoveTo:
			s.pen.MoveTo(p[0][0], p[0][1])
		case opentype.SegmentOpLineTo:
			s.pen.LineTo(p[0][0], p[0][1])
		case opentype.SegmentOpQuadTo:
			s.pen.QuadTo(p[0][0], p[0][1], p[1][0], p[1][1])
		case opentype.SegmentOpCubeTo:
			s.pen.CubeTo(p[0][0], p[0][1], p[1][0], p[1][1], p[2][0], p[2][1])
		}
	}
	s.pen.ClosePath()
	s.ink = image.Alpha{Pix: s.cover, Stride: s.Side, Rect: image.Rect(0, 0, s.Side, s.Side)}
	s.pen.Draw(&s.ink, box, image.Opaque, image.Point{})
	s.fresh = s.fresh.Union(box)
}

// room finds a free place, rows of letters below each other, a pixel apart.
func (s *Sheet) room(w, h int) (image.Point, bool) {
	if s.x+w+1 > s.Side {
		s.x, s.y, s.h = 0, s.y+s.h+1, 0
	}
	if s.y+h+1 > s.Side {
		return image.Point{}, false
	}
	at := image.Pt(s.x, s.y)
	s.x, s.h = s.x+w+1, max(s.h, h)
	return at, true
}
