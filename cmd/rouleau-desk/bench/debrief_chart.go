// Two courses over each other: the person's own drawn whole, the other dashed, in what they visibly differ in.

package bench

import (
	"cmp"
	"math"
	"slices"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

// overlay is what stays of a chart of two courses from frame to frame.
type overlay struct {
	of     *Courses
	view   ui.ChartView
	series []ui.ChartSeries
	marks  []ui.ChartMark
}

// take makes the chart of other courses than before.
func (o *overlay) take(k *Courses) {
	if o.of == k {
		return
	}
	o.of, o.view = k, ui.ChartView{To: max(k.EndS, 60), Cursor: math.NaN()}
	o.series, o.marks = o.series[:0], o.marks[:0]
	for i := range k.Lanes {
		l := &k.Lanes[i]
		name := l.Name
		if l.Unit != "" {
			name = words.Say("course.of", l.Name, l.Unit)
		}
		for n, label := range [...]string{name, k.Names[1]} {
			o.series = append(o.series, ui.ChartSeries{Label: label, Unit: k.Names[n], Digits: l.Digits, Track: &l.Values[n], DT: 1, Min: l.Least, Max: l.Most, Lane: i})
		}
	}
	if k.Part.Is {
		o.marks = append(o.marks, ui.ChartMark{T: k.Part.S, Label: words.Say("desk_debrief.part"), Kind: ui.MarkPoint})
	}
}

const (
	leastLane  = 38 // two names below each other
	rowOfChart = 20
)

// leastBarred is the height from which on bars, and the words about them, leave room for all lanes, which tell more.
func (k *Courses) leastBarred(said float32) float32 {
	return leastLane*float32(len(k.Lanes)) + rowOfChart*float32(len(k.Rows)+2) + said
}

// draw draws it.
func (o *overlay) draw(c *ui.Core, id ui.ID, label string, k *Courses, r ui.Rect) {
	o.take(k)
	for i := range o.series {
		o.series[i].Look = c.Pal.Series[i%2]
	}
	last := max(k.EndS, 60)
	g := ui.Chart{ID: id, Rect: r, Label: label, From: o.view.From, To: o.view.To, Last: last, Now: math.NaN(), Cursor: o.view.Cursor, TopLane: o.view.TopLane,
		Lanes: len(k.Lanes), LeastLane: leastLane, Series: o.series, Marks: o.marks, Zones: k.Targets, Size: stripText, Ends: true}
	if st, text := (ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted}), words.Say("desk_debrief.bars"); len(k.Rows) > 0 && r.H > k.leastBarred(c.LabelHeight(text, r.W, st)) {
		h := c.LabelHeight(text, r.W, st)
		c.Label(ui.Label{Rect: g.Rect.CutBottom(h), Text: text, Style: st})
		g.Rect.CutBottom(2)
		g.Bands, g.BandNames = k.Bars, k.Rows
	}
	o.view = c.Chart(g)
}

// marks puts the decisions of most weight among marks that are in order of time.
func (t *Told) marks(all []ui.ChartMark) []ui.ChartMark {
	for i := range t.Costs {
		if x := &t.Costs[i]; x.Marked {
			all = append(all, ui.ChartMark{T: x.At.S, Label: x.Points, Words: x.Points + "  " + x.Title, Kind: ui.MarkPoint, Row: 4})
		}
	}
	slices.SortStableFunc(all, func(a, b ui.ChartMark) int { return cmp.Compare(a.T, b.T) })
	return all
}
