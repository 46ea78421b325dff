// The views of the debrief on the last page: what decisions cost, the run beside a good one, the questions for the talk. This file
// holds what they have in common, and what is shown until the case has been played otherwise.

package bench

import (
	"path/filepath"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

// talk is what stays of the views from frame to frame.
type talk struct {
	at     int  // row of the costs that is chosen
	follow bool // it is to be brought into view
	open   bool // where there is room for one of both, the chosen row is shown and not the list
	rows   costRows
	cost   overlay // the courses of the chosen row
	good   overlay
}

// debrief draws the view of a tab.
func (d *Desk) debrief(c *ui.Core, v *View, in ui.Rect) {
	b := &v.Debrief
	if b.Step == DebriefShut {
		d.do(Act{Do: OpenDebrief})
	}
	switch {
	case b.Step == DebriefNone:
		st := ui.Style{Size: 15}
		in = in.InsetXY(4, 12).Place(min(in.W-8, 760), in.H, 0, 0)
		h := c.LabelHeight(b.Why, in.W, st)
		c.Label(ui.Label{Rect: in.CutTop(h), Text: b.Why, Style: st})
		in.CutTop(12)
		c.Label(ui.Label{Rect: in, Text: words.Say("desk_debrief.none"), Style: ui.Style{Size: 13, Col: c.Pal.Muted}})
	case b.Step != DebriefTold:
		d.played(c, b, in)
	case d.end.tab == tabCosts:
		d.costs(c, v, in)
	case d.end.tab == tabGood:
		d.beside(c, v, in)
	default:
		d.questions(c, v, in)
	}
}

// played is how far the case has been played otherwise.
func (d *Desk) played(c *ui.Core, b *Debrief, in ui.Rect) {
	in = in.InsetXY(4, 16).Place(min(in.W-8, 760), in.H, 0, 0)
	label := func(text string, st ui.Style, gap float32) {
		c.Label(ui.Label{Rect: in.CutTop(c.LabelHeight(text, in.W, st)), Text: text, Style: st})
		in.CutTop(gap)
	}
	text := words.Say("desk_debrief.playing")
	if b.Drawings {
		text = words.Say("desk_debrief.drawing")
	}
	label(text, ui.Style{Size: 15}, 10)
	row := in.CutTop(22)
	count, st := words.Line("desk_debrief.played", b.Done, b.All), ui.Style{Weight: ui.SemiBold, Tab: true, Align: ui.AlignRight}
	if b.All == 0 {
		count = words.Say("desk_debrief.looking")
	}
	c.Text(row.CutRight(max(st.Width(count)+1, 120)), count, st)
	row.CutRight(14)
	bar := row.Place(row.W, 12, 0, 0.5)
	c.Fill(bar, 6, c.Pal.Shade)
	if b.All > 0 && b.Done > 0 {
		c.Fill(ui.R(bar.X, bar.Y, max(bar.W*float32(b.Done)/float32(b.All), 12), bar.H), 6, c.Pal.Dark)
	}
	c.Frame(bar, 6, 1, c.Pal.Edge)
	in.CutTop(12)
	label(words.Say("desk_debrief.meanwhile"), ui.Style{Size: 13, Col: c.Pal.Muted}, 0)
}

const mostLead = 900 // width of its words

// lead is what stands above a view: what must be known before it, what it is and how to read it, and the way to a page of the whole
// debrief.
func (d *Desk) lead(c *ui.Core, t *Told, text, reading string, in *ui.Rect) {
	save := ui.Button{ID: ui.Name("save page"), Label: words.Say("desk_debrief.save")}
	wide := min(wideAs(c, &save), in.W*0.3)
	muted, strong := ui.Style{Size: 13, Col: c.Pal.Muted}, ui.Style{Size: 13, Weight: ui.SemiBold}
	left := min(in.W-wide-16, mostLead)
	high := c.LabelHeight(text, left, muted)
	if reading != "" {
		high += c.LabelHeight(reading, left, muted)
	}
	for _, h := range t.Heed {
		high += c.LabelHeight(h, left, strong)
	}
	row := in.CutTop(max(high, c.ButtonHeight(save, wide)))
	in.CutTop(8)
	save.Rect = row.CutRight(wide)
	save.Rect.H = c.ButtonHeight(save, wide)
	row.W = left
	if c.Button(save) {
		d.ask(askPage)
	}
	if spare := row.H - high; spare > 0 {
		row.CutTop(spare / 2)
	}
	for _, h := range t.Heed {
		c.Label(ui.Label{Rect: row.CutTop(c.LabelHeight(h, row.W, strong)), Text: h, Style: strong})
	}
	c.Label(ui.Label{Rect: row.CutTop(c.LabelHeight(text, row.W, muted)), Text: text, Style: muted})
	if reading != "" {
		c.Label(ui.Label{Rect: row, Text: reading, Style: muted})
	}
}

// asking is what a place is being asked for.
type asking uint8

const (
	askNothing asking = iota
	askCopy           // of the attempt
	askPage           // for the debrief
)

// ask opens the dialog that asks for a place, with one to begin from.
func (d *Desk) ask(what asking) { d.end.asking, d.end.fresh = what, true }

// pagePath is the place of a page beside the attempt that it is of.
func pagePath(attempt string) string {
	if attempt == "" {
		return words.Say("desk_debrief.page_name") + ".html"
	}
	return strings.TrimSuffix(attempt, filepath.Ext(attempt)) + ".html"
}
