// A file that cannot be played: every fault with its place, its line and what was expected.

package home

import (
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scenarios/yamlread"
)

var faultsID = ui.Name("home faults")

func (h *Home) faults(c *ui.Core, v *View) {
	b := &v.Broken
	title := words.Say("home.broken")
	if n := len(b.Faults); n > 0 {
		title = words.Say("home.broken_faults", n)
	}
	in := frame(c, title, 820, 680)
	foot := in.CutBottom(44)
	in.CutBottom(8)
	st := ui.Style{Size: 13, Col: c.Pal.Muted}
	c.Label(ui.Label{ID: ui.Name("home broken name").With(b.Name), Rect: in.CutTop(min(c.LabelHeight(b.Name, in.W, st), 3*ui.LineHeight(13))), Text: b.Name, Style: st})
	in.CutTop(8)
	c.PageKeys(faultsID, in.H)
	area := c.BeginScroll(ui.Scroll{ID: faultsID, Rect: in, Content: h.heights[faultsID]})
	y := area.Y
	if b.Text != "" {
		hh := c.LabelHeight(b.Text, area.W, ui.Style{})
		c.Label(ui.Label{Rect: ui.R(area.X, y, area.W, hh), Text: b.Text})
		y += hh + 8
	}
	for i := range b.Faults {
		y = fault(c, &b.Faults[i], area, in, y)
	}
	h.heights[faultsID] = y - area.Y
	c.EndScroll()
	again := foot.CutRight(foot.W - 158)
	why := ""
	if !b.Again {
		why = words.Say("home.was_dropped")
	}
	if c.Button(ui.Button{ID: ui.Name("home again"), Rect: again, Label: words.Say("home.read_again"), Look: ui.LookDark, Key: ui.Chord{Key: ui.KeyF5}, Why: why}) {
		h.do(Act{Do: ReadAgain})
	}
	was := h.dialog
	if h.closeButton(c, foot) {
		h.dialog = was // the file dialog it came from is still there
		h.do(Act{Do: LeaveBroken})
	}
	c.EndOverlay()
}

// fault draws one fault and gives the place below it. What is out of sight is measured and not drawn.
func fault(c *ui.Core, f *yamlread.Fault, area, view ui.Rect, y float32) float32 {
	body, small := ui.Style{}, ui.Style{Size: 13, Col: c.Pal.Muted}
	place := ui.Style{Size: 13, Weight: ui.SemiBold, Tab: true}
	const left = 124
	x, w := area.X+left, area.W-left
	type line struct {
		text string
		st   ui.Style
	}
	lines := [...]line{{f.Message, body}, {"", small}, {"", small}}
	if f.Nearest != "" { // before what may be a long list
		lines[1] = line{words.Say("home.nearest", f.Nearest), ui.Style{Size: 13, Weight: ui.SemiBold}}
	}
	if f.Expected != "" {
		lines[2].text = words.Say("home.expected", f.Expected)
	}
	h := float32(0)
	for i := range lines {
		h += c.LabelHeight(lines[i].text, w, lines[i].st)
	}
	if f.Source != "" {
		h += sourceHeight
	}
	if y+h < view.Y || y > view.Bottom() {
		return y + h + 14
	}
	if f.Line > 0 {
		c.Text(ui.R(area.X, y, left-8, ui.LineHeight(13)), words.Say("home.place", f.Line, f.Col), place)
	}
	for i := range lines {
		if lines[i].text == "" {
			continue
		}
		hh := c.LabelHeight(lines[i].text, w, lines[i].st)
		c.Label(ui.Label{Rect: ui.R(x, y, w, hh), Text: lines[i].text, Style: lines[i].st})
		y += hh
		if i == 0 && f.Source != "" {
			source(c, f, ui.R(x, y+3, w, sourceHeight-8))
			y += sourceHeight
		}
	}
	y += 7
	c.Segment(area.X, y, area.Right(), y, 1, c.Pal.Line)
	return y + 7
}

const (
	sourceHeight = 38
	sourceBefore = 30 // letters of the line before the fault that are always shown
)

// source draws the line the fault is on, with a mark under its column.
func source(c *ui.Core, f *yamlread.Fault, r ui.Rect) {
	c.Fill(r, 4, c.Pal.Shade)
	in := r.InsetXY(8, 0)
	st := ui.Style{Size: 13}
	letters := []rune(strings.ReplaceAll(f.Source, "\t", "    "))
	from := 0
	if f.Col-1 > sourceBefore {
		from = min(f.Col-1-sourceBefore, len(letters))
	}
	text := string(letters[from:])
	if from > 0 {
		text = "…" + text
	}
	room := in.W - st.Width("…")
	n, _ := ui.FitText(text, room, st.Size, st.Weight, false)
	shown := text
	if n < len(text) {
		shown = text[:n] + "…"
	}
	line := ui.R(in.X, in.Y, in.W, ui.LineHeight(13)+2)
	c.Text(line, shown, st)
	before := min(max(f.Col-1-from, 0), len(letters)-from)
	lead := string(letters[from : from+before])
	if from > 0 {
		lead = "…" + lead
	}
	at := in.X + min(st.Width(lead), room)
	c.BeginPath()
	c.To(at, r.Bottom()-8)
	c.To(at+4, r.Bottom()-2)
	c.To(at-4, r.Bottom()-2)
	c.Polygon(c.Pal.Ink)
}
