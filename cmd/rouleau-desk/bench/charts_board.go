// The board of charts: which signals a person has chosen, what part of the case is in sight, and the chart made of it.
// Its slices are filled anew only when something changed, so that a frame in which nothing happens costs nothing.

package bench

import (
	"math"

	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

// board is what stays of the charts from frame to frame.
type board struct {
	shown  Shown // at the bench
	looked Shown // of a case that has ended
	view   ui.ChartView
	chosen bool    // the person has moved the view away from the whole case
	at     float64 // the moment of the timeline that was chosen, NaN for none
	large  bool

	series []ui.ChartSeries
	lanes  int
	marks  []ui.ChartMark
	made   marksKey
	bands  []ui.ChartBand
	names  [5]string // of the rows of marks
	over   [3]string // of the rows of bars
}

// marksKey is what the marks of a chart depend on.
type marksKey struct {
	charts *Charts
	n      int
	last   Mark
	rows   bool
	extra  int
}

func newBoard() board {
	return board{shown: firstShown, looked: firstLooked, view: ui.ChartView{Cursor: math.NaN()}, at: math.NaN()}
}

// choice is what is charted on the screen that is shown, and what that is at first.
func (b *board) choice(v *View) (now *Shown, first Shown) {
	if v.Screen == Graded {
		return &b.looked, firstLooked
	}
	return &b.shown, firstShown
}

// ChartAll charts every signal there is, as a measurement of the window wants it.
func (d *Desk) ChartAll() { d.board.shown, d.board.looked = 1<<SignalCount-1, 1<<SignalCount-1 }

// Again is a desk for the next case: nothing on it is half written, and the choice of signals stays.
func (d *Desk) Again() *Desk {
	next := New()
	next.board.shown, next.board.looked = d.board.shown, d.board.looked
	return next
}

// looks gives every signal a colour and dashes of its own: those charted at first differ in colour, the rest in both.
var looks = func() (l [FirstTruth]uint8) {
	first := map[Signal]uint8{SignalReservoir: 0, SignalDetector: 1, SignalHb: 2, SignalDripPer100: 3, SignalBleeding: 4}
	next := uint8(len(first))
	for s := range l {
		if at, ok := first[Signal(s)]; ok {
			l[s] = at
		} else {
			l[s] = next
			next++
		}
	}
	return l
}()

// hues are the series of the palette that signals take; the black one is left to hidden truth.
var hues = [...]int{0, 1, 2, 3, 5}

const truthHue = 4

func (s Signal) look(p *ui.Palette) ui.Series {
	if s.Truth() {
		return p.Series[truthHue] // dotted, never in a signal's own colour
	}
	i := int(looks[s])
	look := p.Series[hues[i%len(hues)]]
	look.Dash = p.Series[hues[(i+i/len(hues))%len(hues)]].Dash
	return look
}

// fill makes the series of the chosen signals, each in a lane of its own; a hidden truth joins what it is the truth of, and what belongs together stands together.
func (b *board) fill(p *ui.Palette, v *View, truth bool) {
	h := v.Charts
	shown, _ := b.choice(v)
	b.series, b.lanes = b.series[:0], 0
	var laneOf [SignalCount]int
	for s := range SignalCount {
		if !shown.Has(s) || s.Truth() && !truth {
			continue
		}
		k := &signals[s]
		lane := b.lanes
		if with := s.joins(); with != s && shown.Has(with) {
			lane = laneOf[with]
		} else {
			b.lanes++
		}
		laneOf[s] = lane
		b.series = append(b.series, ui.ChartSeries{Label: s.Name(), Unit: s.Unit(), Digits: k.digits, Track: &h.Tracks[s], DT: h.Step(),
			Min: k.low, Max: h.top(s), Lane: lane, Look: s.look(p)})
	}
	// what shares a lane shares its scale
	for i := range b.series {
		for j := range b.series {
			if b.series[i].Lane == b.series[j].Lane {
				b.series[i].Max = max(b.series[i].Max, b.series[j].Max)
			}
		}
	}
}

// moments makes the marks: in rows of their own for acts, alarms and what was said, or acts and alarms in one.
func (b *board) moments(h *Charts, rows bool, extra []ui.ChartMark) {
	key := marksKey{charts: h, n: len(h.Marks), rows: rows, extra: len(extra)}
	if key.n > 0 {
		key.last = h.Marks[key.n-1]
	}
	if key == b.made {
		return
	}
	b.made, b.marks = key, b.marks[:0]
	next := 0
	add := func(m ui.ChartMark) {
		for ; next < len(extra) && extra[next].T <= m.T; next++ {
			b.marks = append(b.marks, extra[next])
		}
		b.marks = append(b.marks, m)
	}
	for i := range h.Marks {
		m := &h.Marks[i]
		k := ui.ChartMark{T: m.S, Label: m.Text, Words: m.Words, Kind: m.Kind}
		switch {
		case rows && m.Kind == ui.MarkAlarm:
			k.Row = 1
		case rows && m.Kind == ui.MarkSaid:
			k.Row = 2
		case m.Kind == ui.MarkSaid:
			continue // the log beside the strip has it
		}
		add(k)
	}
	b.marks = append(b.marks, extra[next:]...)
}

// stretches makes the bars of time.
func (b *board) stretches(h *Charts) {
	b.bands = b.bands[:0]
	for row, spans := range [...][]Span{h.Phases, h.Pump, h.Given} {
		for _, s := range spans {
			b.bands = append(b.bands, ui.ChartBand{From: s.FromS, To: s.ToS, Label: s.Text, Row: row, Fill: s.Fill})
		}
	}
}

// chart is the chart of the board, to be given a place and a size.
func (b *board) chart(p *ui.Palette, v *View, truth bool) ui.Chart {
	now := sim.Seconds(v.Seen.Tick)
	last := math.Max(now, 600)
	if v.Screen == Graded {
		last = math.Max(now, 60)
	}
	if !b.chosen {
		b.view.From, b.view.To = 0, last
	}
	b.fill(p, v, truth)
	return ui.Chart{From: b.view.From, To: b.view.To, Last: last, Now: now, Cursor: b.view.Cursor, TopLane: b.view.TopLane, Lanes: b.lanes, Series: b.series}
}

// take keeps what the person asked for.
func (b *board) take(g *ui.Chart, v ui.ChartView) {
	if v.From != g.From || v.To != g.To {
		b.chosen = v.From > g.First || v.To < g.Last
	}
	b.view = v
}
