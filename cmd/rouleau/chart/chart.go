// Package chart draws the course of a case on one axis of time, as SVG to stand in a page: bands, numbered moments, and lanes
// of curves. It draws with the widgets of the window and writes with its drawing, so a curve on paper looks as it does on the
// bench. The same course gives the same bytes. This file holds the chart and where its parts stand.
package chart

import (
	"bytes"
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/svg"
	"rouleau/cmd/rouleau-desk/ui"
)

// Chart is what is drawn. Times are in seconds.
type Chart struct {
	Title   string
	EndS    float64
	Moments []Moments
	Rows    []Row
	Lanes   []Lane
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
	Tall        bool // it stands alone below the others, twice as high
}

// Curve is one value a second. Look is the place of its run: it has the same colour and dashes in every lane.
type Curve struct {
	Name   string
	Values []float64 // not a number where there is none
	Look   int
}

// Zone is a range of values that matters, or a limit where both ends are the same.
type Zone struct {
	From, To float64
	Label    string
}

// Sizes in units of the drawing; it is as wide as a sheet of A4 on its side.
const (
	width   = 1120
	names   = 240
	ends    = 84
	size    = 13
	laneH   = 54
	bandH   = 20 // as the widget draws rows of bands
	footH   = 18
	gap     = 6
	epsilon = 1e-9
)

// SVG is the drawing, to be put into a page as it is.
func (ch *Chart) SVG() []byte {
	rows := make([]momentRow, len(ch.Moments))
	plot := ui.R(names, 0, width-names-ends, 0)
	high := float32(gap)
	for i := range ch.Moments {
		rows[i] = ch.place(&ch.Moments[i], plot, high)
		high += rows[i].high()
	}
	parts := ch.parts()
	foot := high
	for i := range parts {
		parts[i].Rect.Y = foot
		foot = parts[i].Rect.Bottom()
	}
	c := ui.New(ui.Paper())
	c.Pal.Ground = ui.Color{R: 255, G: 255, B: 255, A: 255} // the paper of the page
	c.Words = ui.Words{Decimal: words.Say("key.decimal")}
	c.Begin(ui.Input{Size: ui.Vec{X: width, Y: foot + gap}, Scale: 1, Pointer: ui.Vec{X: -1, Y: -1}})
	for i := range rows {
		rows[i].draw(c, foot-footH)
	}
	for i := range parts {
		c.Chart(parts[i])
	}
	l, _ := c.End()
	drawing := svg.Of(l, ch.Title)
	if _, inside, found := bytes.Cut(drawing, []byte("?>\n")); found {
		return inside
	}
	return drawing
}

// parts are the widgets the chart is made of, one below the other: bands with the lanes of one height, then each tall lane.
func (ch *Chart) parts() []ui.Chart {
	var low []Lane
	var tall [][]Lane
	for _, lane := range ch.Lanes {
		if lane.Tall {
			tall = append(tall, []Lane{lane})
		} else {
			low = append(low, lane)
		}
	}
	p := ui.Paper()
	parts := []ui.Chart{ch.widget(p, low, laneH)}
	ch.bands(&parts[0])
	for _, one := range tall {
		parts = append(parts, ch.widget(p, one, 2*laneH))
	}
	return parts
}

// widget is some lanes as the widget takes them.
func (ch *Chart) widget(p *ui.Palette, lanes []Lane, high float32) ui.Chart {
	g := ui.Chart{ID: ui.Name("course"), Rect: ui.R(0, 0, width, high*float32(len(lanes))+footH), Label: ch.Title, To: max(ch.EndS, 1), Last: max(ch.EndS, 1),
		Now: math.NaN(), Cursor: math.NaN(), Lanes: len(lanes), LabelW: names, EndW: ends, Size: size, Ends: true, Grid: true}
	for i := range lanes {
		lane := &lanes[i]
		g.ID = g.ID.With(lane.Name)
		least, most := lane.Least, lane.Most
		if most <= least {
			most = lane.reach()
		}
		for _, v := range lane.Curves {
			g.Series = append(g.Series, ui.ChartSeries{Label: v.Name, Unit: lane.Unit, Digits: lane.Digits, Track: ui.TrackOf(v.Values...), DT: 1,
				Min: least, Max: most, Lane: i, Look: p.Series[v.Look%len(p.Series)]})
		}
		for _, z := range lane.Zones {
			g.Zones = append(g.Zones, ui.ChartZone{Lane: i, From: z.From, To: z.To, Label: z.Label})
		}
	}
	return g
}

// bands puts the rows of bands above the lanes of a widget.
func (ch *Chart) bands(g *ui.Chart) {
	perUnit := float32(g.To) / (width - names - ends)
	for i, row := range ch.Rows {
		g.BandNames = append(g.BandNames, row.Name)
		for _, s := range row.Spans {
			text := s.Text
			if needs := (ui.Style{Size: size - 2, Tab: true}).Width(text) + 10; needs*perUnit > float32(s.ToS-s.FromS) {
				text = s.Short
			}
			g.Bands = append(g.Bands, ui.ChartBand{From: s.FromS, To: s.ToS, Label: text, Row: i, Fill: s.Fill})
		}
	}
	g.Rect.H += bandH * float32(len(ch.Rows))
}

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

// orLeast is a value, or another one where it is none.
func orLeast(v, other float64) float64 {
	if math.IsNaN(v) {
		return other
	}
	return v
}
