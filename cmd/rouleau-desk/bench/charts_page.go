// The page of charts that is saved: what the board shows, at one size whatever the window has, with the case it is of and
// the caution every output carries.

package bench

import (
	"errors"
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/raster"
	"rouleau/cmd/rouleau-desk/svg"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

// Formats a page of charts is saved in.
const (
	FormatPNG = iota
	FormatSVG
)

const (
	pageW, pageH = 1600, 900
	pageScale    = 2 // pixels of a picture to one of the page: sharp on paper and on a wall
)

// Export is the page of charts as a file of a format. It needs no display.
func (d *Desk) Export(v *View, format int) ([]byte, error) {
	switch format {
	case FormatPNG:
		return raster.PNG(d.page(v), pageScale)
	case FormatSVG:
		return svg.Of(d.page(v), v.Story.Title+" · "+words.Say("chart.name")), nil
	}
	return nil, errors.New(words.Line("chart.bad_format", format))
}

// page draws the page with a core of its own, so that nothing of the window's moves.
func (d *Desk) page(v *View) *ui.List {
	c := ui.New(ui.Paper())
	c.Words = CoreWords()
	c.Begin(ui.Input{Size: ui.Vec{X: pageW, Y: pageH}, Scale: 1})
	in := ui.R(0, 0, pageW, pageH).InsetXY(32, 24)
	c.Text(in.CutTop(34), v.Story.Title, ui.Style{Size: 24, Weight: ui.SemiBold})
	mode := words.Say("chart.practice")
	switch {
	case v.Watching:
		mode = words.Say("chart.recorded")
	case v.Assessment:
		mode = words.Say("chart.assessment")
	}
	muted := ui.Style{Size: 15, Col: c.Pal.Muted}
	under := in.CutTop(26)
	truth := v.ShowTruth || v.Screen == Graded
	page := Desk{board: board{shown: d.board.shown, looked: d.board.looked, view: d.board.view, chosen: d.board.chosen}}
	page.board.view.Cursor, page.board.view.TopLane = math.NaN(), 0
	caution := words.Say("first.short")
	c.Text(in.CutBottom(24), caution, muted)
	if truth {
		c.Text(in.CutBottom(24), words.Say("chart.page_truth"), muted)
	}
	in.CutTop(10)
	in.CutBottom(8)
	g := page.board.chart(c.Pal, v, truth)
	if v.Screen == Graded {
		g.Now = math.NaN()
	}
	upTo := min(g.To, sim.Seconds(v.Seen.Tick))
	c.Text(under, words.Say("chart.page_case", v.Story.Seed, mode, c.Clock(math.Floor(g.From)), c.Clock(math.Floor(upTo))), muted)
	page.overTime(c, v, &g, in, nil)
	l, _ := c.End()
	return l
}
