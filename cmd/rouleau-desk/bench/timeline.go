// The timeline of a case that has ended: all of it on one axis, with what could not be seen, and the moments on which
// criteria and critical errors turned.

package bench

import (
	"math"
	"slices"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
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
	told            *Told
}

// find gathers the moments of a grade in order of time.
func (e *ending) find(v *View) {
	r := &v.Result
	key := momentsKey{v.Charts, r.Total, len(r.Parts), len(r.Criticals), v.Debrief.Told}
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
	if t := v.Debrief.Told; t != nil {
		e.marks = t.marks(e.marks)
	}
}

// goTo shows the moment a button of the grade leads to.
func (d *Desk) goTo(id ui.ID) {
	for i := range d.end.moments {
		if d.end.moments[i].id == id {
			d.end.tab, d.end.from, d.end.back = tabTimeline, id, tabGrade
			d.show(i)
			return
		}
	}
}

const aroundS = 420 // of the case, before and after a moment that is shown

// show puts the cursor on a moment of the grade.
func (d *Desk) show(i int) {
	d.end.moment, d.end.told = i, ""
	d.around(d.end.moments[i].s)
}

// around puts the cursor on a moment, with what was before and after.
func (d *Desk) around(s float64) {
	d.board.view.Cursor, d.board.at, d.board.chosen = s, s, true
	d.board.view.From, d.board.view.To = max(0, s-aroundS), max(0, s-aroundS)+2*aroundS
}

// showAt shows a moment that another tab tells of, with the way back to what led there.
func (d *Desk) showAt(s float64, told string, from ui.ID) {
	e := &d.end
	e.from, e.back, e.tab, e.moment, e.told = from, e.tab, tabTimeline, -1, told
	d.around(s)
}

func (d *Desk) timeline(c *ui.Core, v *View, in ui.Rect) {
	d.timelineHead(c, &in)
	d.timeArrows(c, v)
	b := &d.board
	g := b.chart(c.Pal, v, true)
	if g.Now = b.at; math.IsNaN(g.Cursor) { // no pointer is over the charts
		g.Cursor = b.at
	}
	foot := in.CutBottom(d.timelineFootHeight(c, v, in.W))
	in.CutBottom(6)
	d.overTime(c, v, &g, in, d.end.marks)
	if b.view.Picked {
		b.at, d.end.moment, d.end.told = b.view.Cursor, -1, ""
	}
	d.timelineFoot(c, v, foot)
}

// moveTo chooses a moment of the timeline and brings it into sight.
func (d *Desk) moveTo(v *View, s float64) {
	b := &d.board
	s = min(max(s, 0), sim.Seconds(v.Seen.Tick))
	b.at, b.view.Cursor, d.end.moment, d.end.told = s, s, -1, ""
	span := b.view.To - b.view.From
	switch {
	case s < b.view.From:
		b.view.From, b.view.To = s, s+span
	case s > b.view.To:
		b.view.From, b.view.To = s-span, s
	}
}

// timeArrows move the chosen moment while nothing else wants the arrow keys.
func (d *Desk) timeArrows(c *ui.Core, v *View) {
	if c.Focused() != 0 || d.Dialog != NoDialog || d.end.asking != askNothing {
		return
	}
	b := &d.board
	from, step := b.at, (b.view.To-b.view.From)/100
	if math.IsNaN(from) {
		from = sim.Seconds(v.Seen.Tick)
	}
	switch {
	case c.Pressed(ui.KeyLeft):
		d.moveTo(v, from-step)
	case c.Pressed(ui.KeyRight):
		d.moveTo(v, from+step)
	}
}

// backKeys are the ways back from the timeline, by the tab that led there.
var backKeys = map[int]string{tabGrade: "result.back", tabCosts: "desk_debrief.back_costs", tabQuestions: "desk_debrief.back_questions"}

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
			d.show(d.nextTo(k.by))
		}
	}
	if e.from != 0 {
		back := ui.Button{ID: ui.Name("back to grade"), Label: words.Say(backKeys[e.back])}
		back.Rect = row.CutRight(wideAs(c, &back))
		row.CutRight(8)
		if c.Button(back) {
			c.Focus(e.from)
			e.tab, e.from, e.moment, e.told = e.back, 0, -1, ""
			e.talk.follow = true
		}
	}
	text, st := words.Say("result.timeline_help"), ui.Style{Size: 13, Col: c.Pal.Muted}
	if e.told != "" {
		text, st = words.Line("result.moment", c.Clock(math.Floor(d.board.at)), e.told), ui.Style{Size: 13, Weight: ui.SemiBold}
	}
	if e.moment >= 0 && e.moment < len(e.moments) {
		m := &e.moments[e.moment]
		text, st = words.Say("result.moment", c.Clock(math.Floor(m.s)), m.name), ui.Style{Size: 13, Weight: ui.SemiBold}
		if m.why != "" {
			text += " – " + m.why
		}
	}
	c.Label(ui.Label{ID: ui.Name("moment"), Rect: row.Place(row.W, min(2*ui.LineHeight(13), 40), 0, 0.5), Text: text, Style: st})
}

// nextTo is the moment before or after the one that is told of, or the cursor.
func (d *Desk) nextTo(by int) int {
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
