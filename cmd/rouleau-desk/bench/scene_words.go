// Words of the drawing. Each part has a box for them that no other words reach into. What does not fit on one line wraps; what
// does not fit into the box is said shorter; and what still has no room is left to the tip of the part, the least weighty first.
// What must be seen at a glance is never left out.

package bench

import (
	"strings"

	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

// fact is one line about a part; short is the same in fewer words, where there are fewer.
type fact struct {
	text, short string
	strong      bool // must be seen at a glance
}

func plain(texts ...string) fact {
	if len(texts) > 1 {
		return fact{text: texts[0], short: texts[1]}
	}
	return fact{text: texts[0]}
}

func weighty(texts ...string) fact {
	f := plain(texts...)
	f.strong = true
	return f
}

// said is how a fact is said: in full, short, or not at all.
func (f *fact) said(short, left bool) string {
	switch {
	case left && !f.strong:
		return ""
	case short && f.short != "":
		return f.short
	}
	return f.text
}

// box is a place for words on the sheet: left, top, right and bottom.
type box struct{ x0, y0, x1, y1 float32 }

func (g *scene) rect(b box) ui.Rect {
	return ui.R(g.px(b.x0), g.py(b.y0), (b.x1-b.x0)*g.s, g.py(b.y1)-g.py(b.y0))
}

const maxFacts = 7

// words sets a title and facts into a box, from its top or, with low, from its bottom.
func (g *scene) words(p sim.Part, b box, align ui.Align, low bool, title fact, facts ...fact) {
	r := g.rect(b)
	title.strong = true
	var all [maxFacts]fact
	all[0] = title
	n := 1 + copy(all[1:], facts)
	var short, left [maxFacts]bool
	height := func() (h float32) {
		for i := range all[:n] {
			h += g.high(&all[i], i == 0, short[i], left[i], r.W)
		}
		return h
	}
	wraps := func(i int) bool {
		return all[i].short != "" && !short[i] && g.wide(&all[i], i == 0, false) > r.W
	}
	const over = 4 // words may reach so far beyond their box
	full := true
	for i := range all[:n] {
		if all[i].short != "" && ui.BreaksWord(all[i].text, r.W, g.styleOf(&all[i], i == 0, align)) {
			short[i], full = true, false
		}
	}
	for i := n - 1; i >= 0 && height() > r.H+over; i-- { // those that wrap are said shorter first
		if wraps(i) {
			short[i], full = true, false
		}
	}
	for i := n - 1; i >= 0 && height() > r.H+over; i-- {
		if all[i].text != "" && !all[i].strong {
			left[i], full = true, false
		}
	}
	if height() > r.H+over {
		left[0], all[0].strong, full = true, false, false // the title stands for what can be seen
	}
	if low {
		r.Y += max(0, r.H-height())
	}
	for i := range all[:n] {
		f := &all[i]
		g.lines(f.said(short[i], left[i]), &r, g.styleOf(f, i == 0, align))
	}
	if !full && g.d.looked == partID(p) {
		g.tipOf, g.tip = p, tipText(facts)
	}
}

func tipText(facts []fact) string {
	var b strings.Builder
	for i := range facts {
		if facts[i].text == "" {
			continue
		}
		if b.Len() > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(facts[i].text)
	}
	return b.String()
}

func (g *scene) styleOf(f *fact, title bool, align ui.Align) ui.Style {
	st := ui.Style{Size: g.size, Tab: true, Col: g.c.Pal.Muted, Align: align}
	switch {
	case title:
		st = ui.Style{Size: g.size + 1, Weight: ui.SemiBold, Col: g.c.Pal.Ink, Align: align}
	case f.strong:
		st.Weight, st.Col = ui.SemiBold, g.c.Pal.Ink
	}
	return st
}

func (g *scene) step(st ui.Style) float32 { return ui.LineHeight(st.Size) - 1 }

func (g *scene) wide(f *fact, title, short bool) float32 {
	return g.styleOf(f, title, 0).Width(f.said(short, false))
}

func (g *scene) high(f *fact, title, short, left bool, width float32) float32 {
	st := g.styleOf(f, title, 0)
	return g.highOf(ui.CountLines(f.said(short, left), width, st.Size, st.Weight, st.Tab), st)
}

// highOf is the height of some lines: a single one needs no air below it.
func (g *scene) highOf(n int, st ui.Style) float32 {
	if n == 1 {
		return g.step(st)
	}
	return float32(n) * ui.LineHeight(st.Size)
}

// lines draws wrapped text and cuts its place off the top of r.
func (g *scene) lines(text string, r *ui.Rect, st ui.Style) {
	if ui.BreaksWord(text, r.W, st) {
		st.Size = leastSize
	}
	n := ui.CountLines(text, r.W, st.Size, st.Weight, st.Tab)
	row := ui.R(r.X, r.Y, r.W, g.highOf(n, st))
	r.Y += row.H
	if n > 1 {
		g.c.Label(ui.Label{Rect: row, Text: text, Style: st})
	} else if n == 1 {
		g.c.Text(row, text, st)
	}
}

// word is a single word at a point, its middle at y; in the least size where it would not fit into room.
func (g *scene) word(text string, x, y, room float32, align ui.Align, st ui.Style) {
	st.Size, st.Align = g.size, align
	if st.Width(text) > room*g.s {
		st.Size = min(st.Size, leastSize)
	}
	g.c.TextAt(g.px(x), g.py(y)+st.Size*0.36, text, st)
}

// leastSize is the least type in the window.
const leastSize = 11
