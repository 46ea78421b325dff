// Each kind of thing in a display list as an element of the drawing.

package svg

import (
	"encoding/xml"
	"math"
	"strconv"

	"rouleau/cmd/rouleau-desk/ui"
)

func (w *writer) op(op *ui.Op) {
	switch op.Kind {
	case ui.OpRect, ui.OpRectStroke:
		w.text(`<rect`)
		w.box(op.Rect)
		if op.Radius > 0 {
			w.text(` rx="`).num(min(op.Radius, op.Rect.W/2, op.Rect.H/2)).text(`"`)
		}
		if op.Kind == ui.OpRect {
			w.fill(op.Col)
		} else {
			w.stroke(op)
		}
		w.text("/>\n")
	case ui.OpCircle:
		c := op.Rect.Center()
		w.text(`<ellipse cx="`).num(c.X).text(`" cy="`).num(c.Y).text(`" rx="`).num(op.Rect.W / 2).text(`" ry="`).num(op.Rect.H / 2).text(`"`)
		w.fill(op.Col)
		w.text("/>\n")
	case ui.OpRing:
		w.ring(op)
	case ui.OpLine:
		w.line(op)
	case ui.OpPolygon:
		w.text(`<polygon points="`)
		w.points(w.l.PointsOf(op))
		w.text(`"`)
		w.fill(op.Col)
		w.text("/>\n")
	case ui.OpTriangles:
		w.text(`<path d="`)
		pts := w.l.PointsOf(op)
		for i := 0; i+2 < len(pts); i += 3 {
			w.text("M").at(pts[i]).text("L").at(pts[i+1]).text(" ").at(pts[i+2]).text("Z")
		}
		w.text(`"`)
		w.fill(op.Col)
		w.text("/>\n")
	case ui.OpHatch:
		w.hatched(op)
	case ui.OpText:
		w.words(op)
	}
}

func (w *writer) at(p ui.Vec) *writer { return w.num(p.X).text(" ").num(p.Y) }

func (w *writer) points(pts []ui.Vec) {
	for i, p := range pts {
		if i > 0 {
			w.text(" ")
		}
		w.num(p.X).text(",").num(p.Y)
	}
}

func (w *writer) line(op *ui.Op) {
	name := "polyline"
	if op.Closed {
		name = "polygon"
	}
	w.text(`<` + name + ` points="`)
	w.points(w.l.PointsOf(op))
	w.text(`"`)
	w.stroke(op)
	join := "bevel" // a sharp corner of a noisy line must not shoot out
	if op.Round {
		join = "round"
		w.text(` stroke-linecap="round"`)
	}
	w.text(` stroke-linejoin="` + join + `"/>` + "\n")
}

// ring is a sector of an annulus, its arcs as many short lines: that needs no rule for whole turns.
func (w *writer) ring(op *ui.Op) {
	c, outer := op.Rect.Center(), op.Rect.W/2
	n := max(8, int(math.Abs(float64(op.A1-op.A0))*float64(outer)/2))
	n = min(n, 180)
	w.text(`<path fill-rule="evenodd" d="`)
	for side, radius := range [...]float32{outer, op.Width} {
		for i := 0; i <= n; i++ {
			k := i
			if side == 1 {
				k = n - i
			}
			a := float64(op.A0) + float64(op.A1-op.A0)*float64(k)/float64(n)
			if side == 0 && i == 0 {
				w.text("M")
			} else {
				w.text("L")
			}
			w.at(ui.Vec{X: c.X + radius*float32(math.Cos(a)), Y: c.Y + radius*float32(math.Sin(a))})
		}
	}
	w.text(`Z"`)
	w.fill(op.Col)
	w.text("/>\n")
}

// hatched fills a polygon with parallel lines, by a pattern of its own.
func (w *writer) hatched(op *ui.Op) {
	w.hatch++
	id := "h" + strconv.Itoa(w.hatch)
	w.text(`<pattern id="` + id + `" patternUnits="userSpaceOnUse" width="`).num(op.Step).text(`" height="`).num(op.Step)
	w.text(`" patternTransform="rotate(`).num(float32(float64(op.A0) * 180 / math.Pi)).text(`)"><rect width="`).num(op.Step).text(`" height="`).num(op.Width).text(`"`)
	w.fill(op.Col)
	w.text(`/></pattern>` + "\n" + `<polygon points="`)
	w.points(w.l.PointsOf(op))
	w.text(`" fill="url(#` + id + `)"/>` + "\n")
}

// words is one line of text, held to the width it has in the window whatever typeface stands in.
func (w *writer) words(op *ui.Op) {
	w.text(`<text xml:space="preserve" x="`).num(op.Rect.X).text(`" y="`).num(op.Rect.Y).text(`" font-size="`).num(op.Size).text(`"`)
	if op.Weight == ui.SemiBold {
		w.text(` font-weight="600"`)
	}
	if op.Tab {
		w.text(` style="font-feature-settings:'tnum','kern' 0"`)
	}
	if wide := ui.TextWidth(op.Str, op.Size, op.Weight, op.Tab); wide > op.Size {
		w.text(` textLength="`).num(wide).text(`" lengthAdjust="spacingAndGlyphs"`)
	}
	w.fill(op.Col)
	w.text(">")
	xml.EscapeText(w, []byte(op.Str))
	w.text("</text>\n")
}
