// The display list: what a frame looks like, as plain values. A painter turns
// it into triangles, a test reads it, and two lists can be compared so that an
// unchanged frame need not be drawn again.

package ui

import (
	"image/color"
	"slices"
)

// Color is a colour with straight (not premultiplied) alpha.
type Color = color.NRGBA

// OpKind says what an Op draws.
type OpKind uint8

// The kinds of Op, with the fields each reads beside Kind and Col.
const (
	OpRect       OpKind = iota // Rect, Radius: filled rounded rectangle
	OpRectStroke               // Rect, Radius, Width, Dash: outline, centred on the edge
	OpLine                     // points, Width, Dash, Closed, Round: polyline
	OpPolygon                  // points: filled simple polygon, convex or not
	OpTriangles                // points, three by three: filled triangles
	OpCircle                   // Rect: filled ellipse inscribed in Rect
	OpRing                     // Rect (outer circle), Width (inner radius), A0, A1: sector of an annulus
	OpHatch                    // points (the region), Width, Step, A0: parallel lines inside a polygon
	OpText                     // Rect.X and Rect.Y (left end of the baseline), Str, Size, Weight, Tab
	OpClip                     // Rect: nothing outside Rect is drawn until the matching OpUnclip
	OpUnclip                   // ends the newest OpClip
)

// Weight is the weight of the typeface.
type Weight uint8

// The two weights shipped.
const (
	Regular Weight = iota
	SemiBold
)

// Dash is a dash pattern in logical pixels; the zero Dash is a whole line. A
// Phase that grows moves the dashes towards the end of the line.
type Dash struct{ On, Off, Phase float32 }

// Op is one thing to draw. It is comparable: no slices, no pointers.
type Op struct {
	Kind   OpKind
	Weight Weight
	Tab    bool
	Closed bool
	Round  bool
	Col    Color
	Rect   Rect
	Radius float32
	Width  float32
	Step   float32
	Size   float32
	A0, A1 float32
	Dash   Dash
	P0, P1 int32 // the points List.Points[P0:P1]
	Str    string
}

// List is the display list of one frame. It is reused from frame to frame.
type List struct {
	Ops    []Op
	Points []Vec
	Size   Vec     // of the window, logical pixels
	Scale  float32 // device pixels per logical pixel
	Ground Color   // what the window is filled with before the first Op

	// Marks tell tests and assistive code what was drawn; they are no part of
	// what the frame looks like and Equal does not compare them.
	Marks []Mark
}

// Reset empties the list and keeps its memory.
func (l *List) Reset() {
	l.Ops = l.Ops[:0]
	l.Points = l.Points[:0]
	l.Marks = l.Marks[:0]
}

// Equal reports whether both lists draw the same picture.
func (l *List) Equal(o *List) bool {
	return l.Size == o.Size && l.Scale == o.Scale && l.Ground == o.Ground &&
		slices.Equal(l.Ops, o.Ops) && slices.Equal(l.Points, o.Points)
}

// PointsOf is the slice of points an Op refers to.
func (l *List) PointsOf(op *Op) []Vec { return l.Points[op.P0:op.P1] }

// append adds the Ops, points and marks of o behind those of l.
func (l *List) append(o *List) {
	shift := int32(len(l.Points))
	from := len(l.Ops)
	l.Ops = append(l.Ops, o.Ops...)
	for i := from; i < len(l.Ops); i++ {
		l.Ops[i].P0 += shift
		l.Ops[i].P1 += shift
	}
	l.Points = append(l.Points, o.Points...)
	l.Marks = append(l.Marks, o.Marks...)
}
