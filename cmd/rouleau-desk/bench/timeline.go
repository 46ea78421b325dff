// The timeline of a case that has ended: all of it on one axis, with what could not be seen, and the moments on which
// criteria and critical errors turned.

package bench

import (
	"math"
	"slices"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

// moment is one row of the grade on the timeline.
type moment struct {
	id   ui.ID // of the button that leads here
	s    float64
	name string
	why  string
}

// momentsKey is what the moments depend on.
type momentsKey struct {
	charts          *Charts
	total           float64
	parts, critical int
}

// find gathers the moments of a grade in order of time.
func (e *ending) find(v *View) {
	r := &v.Result
	key := momentsKey{v.Charts, r.Total, len(r.Parts), len(r.Criticals)}
	if key == e.made {
		return
	}
	e.made, e.moments, e.marks, e.moment = key, e.moments[:0], e.marks[:0], -1
	for i := range r.Criticals {
		if k := &r.Criticals[i]; k.Moment.Is {
			e.moments = append(e.moments, moment{criticalID(i), k.Moment.S, k.Name, k.Reason})
		}
	}
	for i := range r.Parts {
		for n := range r.Parts[i].Rows {
			if k := &r.Parts[i].Rows[n]; k.Moment.Is {
				e.moments = append(e.moments, moment{criterionID(i, n), k.Moment.S, k.Name, k.Reason})
			}
		}
	}
	slices.SortStableFunc(e.moments, func(a, b moment) int {
		switch {
		case a.s < b.s:
			return -1
		case a.s > b.s:
			return 1
		}
		return 0
	})
	for _, m := range e.moments {
		e.marks = append(e.marks, ui.ChartMark{T: m.s, Label: m.name, Kind: ui.MarkPoint, Row: 3})
	}
}

// goTo shows the moment a button of the grade leads to.
func (d *Desk) goTo(id ui.ID) {
	for i := range d.end.moments {
		if d.end.moments[i].id == id {
			d.end.tab, d.end.from = tabTimeline, id
			d.show(i)
			return
		}
	}
}

const aroundS = 420 // of the case, before and after a moment that is shown

// show puts the cursor on a moment, with what was before and after.
func (d *Desk) show(i int) {
	m := &d.end.moments[i]
	d.end.moment = i
	d.board.view.Cursor, d.board.chosen = m.s, true
	d.board.view.From, d.board.view.To = max(0, m.s-aroundS), max(0, m.s-aroundS)+2*aroundS
}

func (d *Desk) timeline(c *ui.Core, v *View, in ui.Rect) {
	d.timelineHead(c, &in)
	g := d.board.chart(c.Pal, v, true)
	g.Now = math.NaN()
	choose := ui.Button{ID: ui.Name("signals"), Label: words.Say("chart.choose")}
	w := min(in.W, 600)
	cell := ui.R(0, 0, w, 0).Col(0, 3, 8)
	high := max(c.ButtonHeight(choose, cell.W), exportHeight(c, 2*cell.W+8))
	foot := in.CutBottom(high)
	in.CutBottom(6)
	d.overTime(c, v, &g, in, d.end.marks)
	foot.W = w
	choose.Rect = foot.CutLeft(cell.W)
	foot.CutLeft(8)
	if c.Button(choose) {
		d.Dialog = ChartDialog
	}
	d.exportButtons(c, foot)
}

// timelineHead tells of the moment that was gone to, with the way back and to the moments before and after.
func (d *Desk) timelineHead(c *ui.Core, in *ui.Rect) {
	e := &d.end
	row := in.CutTop(42)
	in.CutTop(6)
	for _, k := range [...]struct {
		name, key string
		by        int
	}{{"later", "result.later", 1}, {"earlier", "result.earlier", -1}} {
		if len(e.moments) == 0 {
			break
		}
		button := ui.Button{ID: ui.Name(k.name), Label: words.Say(k.key)}
		button.Rect = row.CutRight(wideAs(c, &button))
		row.CutRight(8)
		if c.Button(button) {
			d.show(d.beside(k.by))
		}
	}
	if e.from != 0 {
		back := ui.Button{ID: ui.Name("back to grade"), Label: words.Say("result.back")}
		back.Rect = row.CutRight(wideAs(c, &back))
		row.CutRight(8)
		if c.Button(back) {
			c.Focus(e.from)
			e.tab, e.from, e.moment = tabGrade, 0, -1
		}
	}
	text, st := words.Say("result.timeline_help"), ui.Style{Size: 13, Col: c.Pal.Muted}
	if e.moment >= 0 && e.moment < len(e.moments) {
		m := &e.moments[e.moment]
		text, st = words.Say("result.moment", c.Clock(math.Floor(m.s)), m.name), ui.Style{Size: 13, Weight: ui.SemiBold}
		if m.why != "" {
			text += " – " + m.why
		}
	}
	c.Label(ui.Label{ID: ui.Name("moment"), Rect: row.Place(row.W, min(2*ui.LineHeight(13), 40), 0, 0.5), Text: text, Style: st})
}

// beside is the moment before or after the one that is told of, or the cursor.
func (d *Desk) beside(by int) int {
	n := len(d.end.moments)
	if at := d.end.moment; at >= 0 {
		return min(max(at+by, 0), n-1)
	}
	at := d.board.view.Cursor
	if math.IsNaN(at) {
		if by > 0 {
			return 0
		}
		return n - 1
	}
	for i := range d.end.moments {
		if d.end.moments[i].s > at {
			if by > 0 {
				return i
			}
			return max(i-1, 0)
		}
	}
	return n - 1
}
