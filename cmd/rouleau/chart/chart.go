// Package chart draws the course of a case on one axis of time, to stand in a page: bands, numbered moments, and lanes of curves
// and layers. It draws with the widgets of the window, so a curve on paper looks as it does on the bench. The same course gives
// the same drawing. This file holds what a chart is made of.
package chart

import (
	"math"

	"rouleau/cmd/rouleau-desk/ui"
)

// Chart is what is drawn. Times are in seconds.
type Chart struct {
	Title   string
	Caption string // says what grounds, dashes and fills mean; to be printed under the drawing
	EndS    float64
	Moments []Moments
	Rows    []Row
	Lanes   []Lane
	Hidden  []Lane // apart from the others, on a ground of their own: what could not be seen at the time

	form form
	key  []string // names of the looks, in a line above all
	part *part
}

// Row is a row of bands.
type Row struct {
	Name  string
	Spans []Span
}

// Span is a stretch of time. Short stands in it where Text has no room.
type Span struct {
	FromS, ToS  float64
	Text, Short string
	Fill        Fill
}

// Fill tells bands apart without colour.
type Fill = ui.BandFill

// The fills.
const (
	Plain = ui.BandPlain
	Tint  = ui.BandTint
	Hatch = ui.BandHatch
	Dark  = ui.BandDark
)

// Lane holds curves on one scale. Without Most the scale reaches as far as the values do.
type Lane struct {
	Name, Unit  string
	Digits      int
	Least, Most float64
	Curves      []Curve
	Zones       []Zone
	layers      []layer // filled, the first at the bottom; they add up
	tall        float32 // in units of the drawing, 0 for the usual
}

// Curve is one value a second. Look is the place of its run: it has the same colour and dashes in every lane.
type Curve struct {
	Name   string
	Values []float64 // not a number where there is none
	Look   int
	ends   string // said behind its last value
}

// layer is how much of a whole lies between the layer below and the one above, a value a second.
type layer struct {
	name   string
	values []float64
	shade  shade
}

// Zone is a range of values that matters, or a limit where both ends are the same.
type Zone struct {
	From, To float64
	Label    string
}

// part is a moment at which two courses part.
type part struct {
	s    float64
	text string
}

// form is how wide the columns of a chart are, in units of the drawing, and how far from the edge names begin. The widest is
// as wide as a sheet of A4 on its side.
type form struct{ width, names, ends, edge float32 }

var (
	wholeSheet = form{1120, 240, 84, 0}
	timeSheet  = form{1120, 210, 94, 8}
	halfSheet  = form{552, 136, 118, 0} // two stand beside each other with a gap
)

// Sizes in units of the drawing. On a sheet of A4 on its side, with a centimetre left at the edges, a unit is 0.7 pt.
const (
	size    = 13
	small   = size - 2 // as the widgets have it
	laneH   = 54
	bandH   = 20 // as the widget draws rows of bands
	footH   = 18 // and the times of the axis
	headH   = 18
	partH   = 17 // for the words about a moment, clear of the line above
	gap     = 6
	epsilon = 1e-9
)

// reach is a round number no value of a lane is above.
func (lane *Lane) reach() float64 {
	top := lane.Least
	for _, c := range lane.Curves {
		for _, v := range c.Values {
			top = max(top, orLeast(v, top))
		}
	}
	for _, z := range lane.Zones {
		top = max(top, z.To)
	}
	if top <= lane.Least+epsilon {
		return lane.Least + 1
	}
	step := math.Pow(10, math.Floor(math.Log10(top)))
	for _, part := range []float64{1, 1.5, 2, 2.5, 3, 4, 5, 6, 8} {
		if top <= part*step+epsilon {
			return part * step
		}
	}
	return 10 * step
}

// scale are the ends of a lane's scale.
func (lane *Lane) scale() (least, most float64) {
	if lane.Most > lane.Least {
		return lane.Least, lane.Most
	}
	return lane.Least, lane.reach()
}

func (lane *Lane) high() float32 {
	if lane.tall > 0 {
		return lane.tall
	}
	return laneH
}

// orLeast is a value, or another one where it is none.
func orLeast(v, other float64) float64 {
	if math.IsNaN(v) {
		return other
	}
	return v
}
