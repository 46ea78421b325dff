package chart

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

// This file puts the parts of a chart below each other and draws them. Each lane is a widget of its own; what stands in the
// column of names is drawn here, as paper has no pointer that could tell what a short name means.

// drawing is a chart on its way to a display list.
type drawing struct {
	ch   *Chart
	c    *ui.Core
	plot ui.Rect // the columns; its height means nothing
	rows []momentRow
	top  float32 // of the bands
	head float32 // of what could not be seen
	foot float32 // where the last lane ends
}

// List is the drawing as the widgets make it, with its size: for other ways onto paper than SVG.
func (ch *Chart) List() *ui.List {
	if ch.form == (form{}) {
		ch.form = wholeSheet
	}
	d := &drawing{ch: ch, plot: ui.R(ch.form.names, 0, ch.form.width-ch.form.names-ch.form.ends, 0)}
	d.place()
	d.c = ui.New(ui.Paper())
	d.c.Pal.Ground = paper
	d.c.Words = ui.Words{Decimal: words.Say("key.decimal")}
	d.c.Begin(ui.Input{Size: ui.Vec{X: ch.form.width, Y: d.foot + footH + gap}, Scale: 1, Pointer: ui.Vec{X: -1, Y: -1}})
	if len(ch.Hidden) > 0 {
		d.c.Fill(ui.R(0, d.head, ch.form.width, d.foot-d.head), 0, unseenGround)
	}
	for i := range d.rows {
		d.rows[i].draw(d.c, d.foot)
	}
	d.keys()
	d.bands()
	y := d.top + bandH*float32(len(ch.Rows))
	for i := range ch.Lanes {
		y = d.lane(&ch.Lanes[i], y, false, len(ch.Hidden) == 0 && i == len(ch.Lanes)-1)
	}
	if len(ch.Hidden) > 0 {
		d.c.Text(ui.R(ch.form.edge, d.head+1, ch.form.width-2*ch.form.edge, headH), words.Say("course.hidden_head"), ui.Style{Size: size, Weight: ui.SemiBold})
		d.c.Segment(0, d.head, ch.form.width, d.head, 1.5, d.c.Pal.Ink)
		d.c.Pal.Ground = unseenGround
		y = d.head + headH
		for i := range ch.Hidden {
			y = d.lane(&ch.Hidden[i], y, true, i == len(ch.Hidden)-1)
		}
		d.c.Pal.Ground = paper
	}
	d.parting()
	l, _ := d.c.End()
	return l
}

// Colours of the sheet. The ground of what could not be seen is a light grey, which also a printer without colours gives.
var (
	paper        = ui.Color{R: 255, G: 255, B: 255, A: 255}
	unseenGround = ui.Color{R: 0xEC, G: 0xEC, B: 0xE8, A: 255}
)

// place finds where each part stands.
func (d *drawing) place() {
	ch := d.ch
	y := float32(gap)
	if len(ch.key) > 0 {
		y += headH
	}
	if ch.part != nil {
		y += partH
	}
	for i := range ch.Moments {
		r := ch.place(&ch.Moments[i], d.plot, y)
		d.rows = append(d.rows, r)
		y += r.high()
	}
	d.top = y
	y += bandH * float32(len(ch.Rows))
	for i := range ch.Lanes {
		y += ch.Lanes[i].high()
	}
	d.head = y
	if len(ch.Hidden) > 0 {
		y += headH
		for i := range ch.Hidden {
			y += ch.Hidden[i].high()
		}
	}
	d.foot = y
}

// widget is what all widgets of a chart have in common. Under the part they are called for there is room for the times.
func (d *drawing) widget(name string, y, high float32) ui.Chart {
	end := max(d.ch.EndS, 1)
	return ui.Chart{ID: ui.Name("course").With(name).At(int(y)), Rect: ui.R(0, y, d.ch.form.width, high+footH), Label: d.ch.Title, To: end, Last: end,
		Now: math.NaN(), Cursor: math.NaN(), Lanes: 1, LabelW: d.ch.form.names, EndW: d.ch.form.ends, Size: size, Grid: true}
}

// bands are the rows of bands.
func (d *drawing) bands() {
	if len(d.ch.Rows) == 0 {
		return
	}
	high := bandH * float32(len(d.ch.Rows))
	g := d.widget("bands", d.top, high)
	g.Grid = false
	perUnit := float32(g.To) / d.plot.W
	for i, row := range d.ch.Rows {
		d.rowName(row.Name, d.top+bandH*float32(i), bandH)
		for _, s := range row.Spans {
			text := s.Text
			if needs := (ui.Style{Size: small, Tab: true}).Width(text) + 10; needs*perUnit > float32(s.ToS-s.FromS) {
				text = s.Short
			}
			g.Bands = append(g.Bands, ui.ChartBand{From: s.FromS, To: s.ToS, Label: text, Row: i, Fill: s.Fill})
		}
	}
	d.c.PushClip(ui.R(d.plot.X-2, d.top, d.ch.form.width, high))
	d.c.Chart(g)
	d.c.PopClip()
}

func (d *drawing) rowName(name string, y, high float32) {
	d.c.Text(ui.R(d.ch.form.edge, y, d.plot.X-d.ch.form.edge-10, high), name, ui.Style{Size: small, Col: d.c.Pal.Muted})
}

// lane draws one lane, with the times of the axis under it if it is the last, and returns where the next one begins. Of what
// could not be seen the first curve is the truth; it lies on the others, which would cover its dots.
func (d *drawing) lane(lane *Lane, y float32, hidden, last bool) float32 {
	high := lane.high()
	g := d.widget(lane.Name, y, high)
	least, most := lane.scale()
	for i := range lane.Curves {
		v := &lane.Curves[i]
		if hidden {
			v = &lane.Curves[len(lane.Curves)-1-i]
		}
		unit := lane.Unit
		if v.ends != "" { // the unit stands with the name of the lane
			unit = v.ends
		}
		g.Series = append(g.Series, ui.ChartSeries{Unit: unit, Digits: lane.Digits, Track: ui.TrackOf(v.Values...), DT: 1, Min: least, Max: most, Look: d.look(v.Look)})
		g.ID = g.ID.At(i)
	}
	for _, z := range lane.Zones {
		g.Zones = append(g.Zones, ui.ChartZone{From: z.From, To: z.To, Label: z.Label})
	}
	seen := high
	if last {
		seen += footH
	}
	d.c.PushClip(ui.R(d.plot.X-20, y-1, d.ch.form.width, seen+1))
	d.layers(lane, ui.R(d.plot.X, y, d.plot.W, high), least, most)
	d.c.Chart(g)
	for _, v := range lane.Curves {
		d.beyond(v.Values, y, most, d.look(v.Look).Col)
	}
	d.c.PopClip()
	d.names(lane, y, least, most)
	return y + high
}

// beyond draws a sign at the upper edge of a lane for each stretch in which a curve goes on above the scale.
func (d *drawing) beyond(values []float64, y float32, most float64, col ui.Color) {
	const wide, high = 7, 5
	from := -1
	for i := 0; i <= len(values); i++ {
		above := i < len(values) && values[i] > most+epsilon
		switch {
		case above && from < 0:
			from = i
		case !above && from >= 0:
			x := d.plot.X + d.plot.W*float32(float64(from+i)/2/max(d.ch.EndS, 1))
			d.c.BeginPath()
			d.c.To(x-wide/2, y+high)
			d.c.To(x+wide/2, y+high)
			d.c.To(x, y)
			d.c.Polygon(col)
			from = -1
		}
	}
}

const (
	sampleW = 22 // of a piece of line beside its name
	scaleW  = 36
	nameH   = 15
)

// names writes at the left of a lane what its curves and layers are called, and the ends of its scale.
func (d *drawing) names(lane *Lane, y float32, least, most float64) {
	c := d.c
	st := ui.Style{Size: small, Tab: true, Col: c.Pal.Muted, Align: ui.AlignRight}
	right := d.plot.X - 6
	c.TextAt(right, y+12, c.Num(most, lane.Digits, ""), st)
	c.TextAt(right, y+lane.high()-3, c.Num(least, lane.Digits, ""), st)
	at := ui.R(d.ch.form.edge, y+2, right-scaleW-d.ch.form.edge, nameH)
	if len(d.ch.key) > 0 { // dashes are explained above all
		name := lane.Name
		if lane.Unit != "" {
			name = words.Say("course.of", name, lane.Unit)
		}
		c.Label(ui.Label{Rect: ui.R(at.X, at.Y, at.W, 2*ui.LineHeight(size)), Text: name, Style: ui.Style{Size: size}})
		return
	}
	for _, v := range lane.Curves {
		line := at
		d.sample(line.CutLeft(sampleW), d.look(v.Look))
		line.CutLeft(8)
		name := v.Name
		if n := len(v.Values); lane.Unit != "" && name == lane.Name && n > 0 && math.IsNaN(v.Values[n-1]) { // else the unit stands behind the last value
			name = words.Say("course.of", name, lane.Unit)
		}
		c.Text(line, name, ui.Style{Size: size})
		at.Y += nameH
	}
	at.X += sampleW + 8
	for i := len(lane.layers) - 1; i >= 0; i-- { // in the order in which they lie
		k := &lane.layers[i]
		box := ui.R(at.X, at.Y+3, 10, 10)
		k.shade.fill(c, box)
		c.Frame(box, 0, 1, c.Pal.Edge)
		w := (ui.Style{Size: small}).Width(k.name)
		c.TextAt(box.Right()+4, at.Y+12, k.name, ui.Style{Size: small})
		at.X = box.Right() + 4 + w + 8
	}
}

// sample is a piece of line in one look.
func (d *drawing) sample(in ui.Rect, s ui.Series) {
	d.c.BeginPath()
	d.c.To(in.X, in.Y+in.H/2)
	d.c.To(in.Right(), in.Y+in.H/2)
	d.c.Line(2.5, s.Col, s.Dash, false)
}

// Looks beside those of the window.
const (
	unseenLook = 100 + iota // dotted, as the window draws what nobody could see
	unseenOtherLook
	limitLook // of what is no measurement
)

func (d *drawing) look(i int) ui.Series {
	ink := d.c.Pal.Ink
	switch i {
	case unseenLook:
		return ui.Series{Col: ink, Dash: ui.Dash{On: 2, Off: 2.5}}
	case limitLook:
		return ui.Series{Col: d.c.Pal.Muted, Dash: ui.Dash{On: 6, Off: 3}}
	case unseenOtherLook:
		return ui.Series{Col: ink, Dash: ui.Dash{On: 8, Off: 2.5}}
	}
	return d.c.Pal.Series[i%len(d.c.Pal.Series)]
}

// keys says which look is whose.
func (d *drawing) keys() {
	x := d.plot.X
	for i, name := range d.ch.key {
		d.sample(ui.R(x, gap, 2*sampleW, nameH), d.look(i))
		st := ui.Style{Size: size, Weight: ui.SemiBold, Col: d.look(i).Col}
		x += 2*sampleW + 6
		d.c.TextAt(x, gap+12, name, st)
		x += st.Width(name) + 18
	}
}

// parting draws the moment at which two courses part through everything.
func (d *drawing) parting() {
	p := d.ch.part
	if p == nil {
		return
	}
	c, x, top := d.c, d.plot.X+d.plot.W*float32(p.s/max(d.ch.EndS, 1)), float32(gap+headH+5)
	c.Segment(x, top, x, d.foot, 1.2, c.Pal.Ink)
	c.BeginPath()
	c.To(x-5, top-3)
	c.To(x+5, top-3)
	c.To(x, top+5)
	c.Polygon(c.Pal.Ink)
	st := ui.Style{Size: small, Tab: true}
	at := min(x+8, d.ch.form.width-st.Width(p.text)-2)
	if at < x+8 { // no room behind it
		at = x - 8 - st.Width(p.text)
	}
	c.TextAt(at, top+5, p.text, st)
}
