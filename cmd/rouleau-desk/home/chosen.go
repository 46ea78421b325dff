// The chosen case at the right: what it is, what it is for, what one has done with it before, and how to begin.

package home

import (
	"strconv"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/keep"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scoring/attempt"
)

var caseID = ui.Name("home case")

func (h *Home) chosenCase(c *ui.Core, v *View, k *Case, r ui.Rect) {
	r.CutTop(8)
	if k.Broken != "" {
		h.brokenCase(c, k, r)
		return
	}
	if k.File != "" {
		h.ownFile(c, v, k, r.CutTop(ownHeight))
	}
	foot := r.CutBottom(startHeight)
	r.CutBottom(8)
	h.about(c, k, r)
	r.CutTop(r.H)
	h.start(c, v, k, foot)
}

func (h *Home) about(c *ui.Core, k *Case, r ui.Rect) {
	id := caseID.With(k.Key)
	if h.dialog == noDialog {
		c.PageKeys(id, r.H)
	}
	area := c.BeginScroll(ui.Scroll{ID: id, Rect: r, Content: h.heights[id]})
	w := min(area.W, r.W-16)
	y := area.Y + 4
	put := func(text string, st ui.Style, indent, gap float32) {
		hh := c.LabelHeight(text, w-indent, st)
		c.Label(ui.Label{Rect: ui.R(area.X+indent, y, w-indent, hh), Text: text, Style: st})
		y += hh + gap
	}
	put(k.Title, ui.Style{Size: 22, Weight: ui.SemiBold}, 0, 2)
	put(words.Say("home.about", k.Level, k.Minutes, k.Version), ui.Style{Size: 13, Col: c.Pal.Muted}, 0, 10)
	put(k.Summary, ui.Style{Size: 15}, 0, 14)
	head := ui.Style{Weight: ui.SemiBold}
	bullets := func(title string, items []string) {
		if len(items) == 0 {
			return
		}
		put(title, head, 0, 4)
		for _, o := range items {
			c.Fill(ui.R(area.X+4, y+7, 5, 5), 1, c.Pal.Muted)
			put(o, ui.Style{}, 18, 4)
		}
		y += 10
	}
	bullets(words.Say("home.own_warnings", len(k.Warnings)), k.Warnings)
	if len(k.Past) > 0 {
		y = h.past(c, k, area.X, y, w, r)
	}
	bullets(words.Say("sheet.objectives"), k.Objectives)
	bullets(words.Say("home.case_cautions"), k.Cautions)
	h.heights[id] = y - area.Y + 4
	c.EndScroll()
}

const (
	pastHeight  = 60 // at least
	fewPast     = 3  // shown before the objectives; the rest on request
	pastButtons = 92
)

// past is the list of results for a case. Rows far out of sight are not drawn, so that hundreds cost nothing; the next ones
// are, so that the focus can walk into them.
func (h *Home) past(c *ui.Core, k *Case, x, y, w float32, view ui.Rect) float32 {
	id := caseID.With(k.Key).With("past")
	c.Text(ui.R(x, y, w, 22), words.Say("home.past", len(k.Past)), ui.Style{Weight: ui.SemiBold})
	y += 26
	show := len(k.Past)
	if show > fewPast+1 && h.heights[id] == 0 {
		show = fewPast
	}
	for i := range show {
		text := pastWords(&k.Past[i])
		hh := max(pastHeight, 32+c.LabelHeight(text, w-pastRoom, ui.Style{Size: ui.SizeSmall, Tab: true}))
		if y+hh > view.Y-2*pastHeight && y < view.Bottom()+2*pastHeight {
			h.pastRow(c, k, &k.Past[i], text, id.At(i), ui.R(x, y, w, hh))
		}
		y += hh
	}
	if show < len(k.Past) {
		if c.Button(ui.Button{ID: id.With("all"), Rect: ui.R(x+3, y+2, min(w-6, 280), 40), Label: words.Say("home.past_all", len(k.Past))}) {
			h.heights[id] = 1
			c.Focus(id.At(show).With("result"))
		}
		y += 48
	}
	return y + 10
}

// pastRoom is the width that the words of a row do not have: its sign, two buttons, and the gaps between them.
const pastRoom = 6 + 20 + 2*pastButtons + 20

func (h *Home) pastRow(c *ui.Core, k *Case, p *keep.Past, text string, id ui.ID, r ui.Rect) {
	c.Segment(r.X, r.Y+0.5, r.Right(), r.Y+0.5, 1, c.Pal.Line)
	r = r.InsetXY(3, 0)
	watch := r.CutRight(pastButtons).Place(pastButtons, 40, 0, 0.5)
	r.CutRight(8)
	result := r.CutRight(pastButtons).Place(pastButtons, 40, 0, 0.5)
	r.CutRight(12)
	r.CutTop(6)
	line := r.CutTop(20)
	passedSign(c, ui.R(line.X, line.Y+4, 12, 12), p.Passed)
	line.CutLeft(20)
	c.Text(line, verdict(k, p), ui.Style{Weight: ui.SemiBold, Tab: true})
	r.CutLeft(20)
	c.Label(ui.Label{ID: id.With("how"), Rect: r, Text: text, Style: ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted, Tab: true}})
	if c.Button(ui.Button{ID: id.With("result"), Rect: result, Label: words.Say("home.result")}) {
		h.do(Act{Do: ShowResult, Path: p.Path})
	}
	if c.Button(ui.Button{ID: id.With("watch"), Rect: watch, Label: words.Say("home.watch")}) {
		h.do(Act{Do: Watch, Path: p.Path})
	}
}

// pastWords say when, how and by whom a case was played.
func pastWords(p *keep.Past) string {
	how := words.Say("home.practice")
	if p.Mode == attempt.Assessment {
		how = words.Say("home.assessment")
	}
	if !p.Ended {
		how = words.Say("home.broken_off", how)
	}
	if p.TakenOver {
		how = words.Say("home.taken_over", how)
	}
	return words.Say("home.past_row", whenWords(p.When), how, strconv.FormatUint(p.Seed, 10), p.Version, p.Operator)
}

// whenWords is a time of a file in the person's own zone.
func whenWords(when string) string {
	t, err := time.Parse(time.RFC3339, when)
	if err != nil {
		return when
	}
	return t.Local().Format("2006-01-02 15:04")
}
