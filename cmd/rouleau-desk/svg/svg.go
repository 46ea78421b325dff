// Package svg writes a display list as a drawing in SVG 1.1: the same picture the window shows, as text that any browser or
// word processor opens. The same list gives the same bytes.
package svg

import (
	"bytes"
	"encoding/xml"
	"math"
	"strconv"

	"rouleau/cmd/rouleau-desk/ui"
)

// fonts is the typeface of the window, and what stands in for it where it is not installed.
const fonts = "Inter, 'Helvetica Neue', Arial, sans-serif"

// writer puts one list into words.
type writer struct {
	bytes.Buffer
	l     *ui.List
	clips int
	hatch int
}

// Of is the drawing of a list. The title is said to people who cannot see it.
func Of(l *ui.List, title string) []byte {
	w := &writer{l: l}
	w.text(`<?xml version="1.0" encoding="UTF-8"?>` + "\n")
	w.text(`<svg xmlns="http://www.w3.org/2000/svg" role="img" width="`).num(l.Size.X).text(`" height="`).num(l.Size.Y)
	w.text(`" viewBox="0 0 `).num(l.Size.X).text(` `).num(l.Size.Y).text(`" font-family="` + fonts + `">` + "\n<title>")
	xml.EscapeText(w, []byte(title))
	w.text("</title>\n<rect")
	w.box(ui.Rect{W: l.Size.X, H: l.Size.Y})
	w.fill(l.Ground)
	w.text("/>\n")
	depth := 0
	for i := range l.Ops {
		switch op := &l.Ops[i]; op.Kind {
		case ui.OpClip:
			w.clip(op.Rect)
			depth++
		case ui.OpUnclip:
			if depth > 0 {
				w.text("</g>\n")
				depth--
			}
		default:
			w.op(op)
		}
	}
	for ; depth > 0; depth-- {
		w.text("</g>\n")
	}
	w.text("</svg>\n")
	return w.Bytes()
}

func (w *writer) text(s string) *writer {
	w.WriteString(s)
	return w
}

// num writes a number with two digits at most: a hundredth of a pixel is finer than any eye.
func (w *writer) num(v float32) *writer {
	x := math.Round(float64(v)*100) / 100
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		x = 0 // and no minus before it
	}
	w.Write(strconv.AppendFloat(w.AvailableBuffer(), x, 'f', -1, 64))
	return w
}

func (w *writer) box(r ui.Rect) {
	w.text(` x="`).num(r.X).text(`" y="`).num(r.Y).text(`" width="`).num(max(r.W, 0)).text(`" height="`).num(max(r.H, 0)).text(`"`)
}

const hex = "0123456789abcdef"

func (w *writer) colour(attr string, c ui.Color) {
	w.text(` ` + attr + `="#`)
	for _, v := range [...]uint8{c.R, c.G, c.B} {
		w.WriteByte(hex[v>>4])
		w.WriteByte(hex[v&15])
	}
	w.text(`"`)
	if c.A < 255 {
		w.text(` ` + attr + `-opacity="`).num(float32(c.A) / 255).text(`"`)
	}
}

func (w *writer) fill(c ui.Color) { w.colour("fill", c) }

func (w *writer) stroke(op *ui.Op) {
	w.text(` fill="none"`)
	w.colour("stroke", op.Col)
	w.text(` stroke-width="`).num(op.Width).text(`"`)
	if d := op.Dash; d.On > 0 && d.Off > 0 {
		w.text(` stroke-dasharray="`).num(d.On).text(` `).num(d.Off).text(`"`)
		if d.Phase != 0 {
			w.text(` stroke-dashoffset="`).num(-d.Phase).text(`"`)
		}
	}
}

func (w *writer) clip(r ui.Rect) {
	w.clips++
	id := "c" + strconv.Itoa(w.clips)
	w.text(`<clipPath id="` + id + `"><rect`)
	w.box(r)
	w.text(`/></clipPath>` + "\n" + `<g clip-path="url(#` + id + `)">` + "\n")
}
