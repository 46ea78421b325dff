// Package raster turns a display list into a picture in memory, without a display: for charts that are saved, and for
// tests and people who want to look at a screen. It is exact rather than quick; the window has a painter of its own.
package raster

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"

	"golang.org/x/image/vector"

	"rouleau/cmd/rouleau-desk/ui"
)

// canvas is the picture being made.
type canvas struct {
	img   *image.RGBA
	l     *ui.List
	scale float32
	clips []image.Rectangle
	pen   vector.Rasterizer
	path  []ui.Vec // of the shape being filled, in pixels: pieces one behind the other
	ends  []int
}

// Of is the picture of a list, at so many pixels to a logical one.
func Of(l *ui.List, scale float32) *image.RGBA {
	w, h := int(math.Ceil(float64(l.Size.X*scale))), int(math.Ceil(float64(l.Size.Y*scale)))
	c := &canvas{img: image.NewRGBA(image.Rect(0, 0, w, h)), l: l, scale: scale}
	draw.Draw(c.img, c.img.Rect, image.NewUniform(l.Ground), image.Point{}, draw.Src)
	c.clips = append(c.clips, c.img.Rect)
	for i := range l.Ops {
		switch op := &l.Ops[i]; op.Kind {
		case ui.OpClip:
			r := image.Rect(c.round(op.Rect.X), c.round(op.Rect.Y), c.round(op.Rect.Right()), c.round(op.Rect.Bottom()))
			c.clips = append(c.clips, r.Intersect(c.clip()))
		case ui.OpUnclip:
			if len(c.clips) > 1 {
				c.clips = c.clips[:len(c.clips)-1]
			}
		default:
			c.op(op)
		}
	}
	return c.img
}

// PNG is the picture of a list as a file.
func PNG(l *ui.List, scale float32) ([]byte, error) {
	var out bytes.Buffer
	if err := png.Encode(&out, Of(l, scale)); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

func (c *canvas) round(v float32) int { return int(math.Round(float64(v * c.scale))) }

func (c *canvas) clip() image.Rectangle { return c.clips[len(c.clips)-1] }

// begin starts a new shape; to adds points in logical pixels; end ends a piece of it.
func (c *canvas) begin() { c.path, c.ends = c.path[:0], c.ends[:0] }

func (c *canvas) to(x, y float32) { c.path = append(c.path, ui.Vec{X: x * c.scale, Y: y * c.scale}) }

func (c *canvas) end() { c.ends = append(c.ends, len(c.path)) }

// bounds is the box of the shape that is in sight.
func (c *canvas) bounds() image.Rectangle {
	if len(c.path) == 0 {
		return image.Rectangle{}
	}
	x0, y0, x1, y1 := c.path[0].X, c.path[0].Y, c.path[0].X, c.path[0].Y
	for _, p := range c.path {
		x0, x1, y0, y1 = min(x0, p.X), max(x1, p.X), min(y0, p.Y), max(y1, p.Y)
	}
	const far = 1 << 20
	f := func(v float32) int { return int(math.Floor(float64(min(max(v, -far), far)))) }
	return image.Rect(f(x0), f(y0), f(x1)+1, f(y1)+1).Intersect(c.clip())
}

// trace gives the shape to the pen, moved so that box begins at nothing.
func (c *canvas) trace(box image.Rectangle) {
	c.pen.Reset(box.Dx(), box.Dy())
	dx, dy := float32(box.Min.X), float32(box.Min.Y)
	start := 0
	for _, end := range c.ends {
		for i, p := range c.path[start:end] {
			if i == 0 {
				c.pen.MoveTo(p.X-dx, p.Y-dy)
			} else {
				c.pen.LineTo(p.X-dx, p.Y-dy)
			}
		}
		c.pen.ClosePath()
		start = end
	}
}

// fill paints the shape.
func (c *canvas) fill(col color.Color) {
	box := c.bounds()
	if box.Empty() {
		return
	}
	c.trace(box)
	c.pen.DrawOp = draw.Over
	c.pen.Draw(c.img, box, image.NewUniform(col), image.Point{})
}

// mask is the cover of the shape in a box.
func (c *canvas) mask(box image.Rectangle) *image.Alpha {
	m := image.NewAlpha(box)
	c.trace(box)
	c.pen.DrawOp = draw.Src
	c.pen.Draw(m, box, image.Opaque, image.Point{})
	return m
}
