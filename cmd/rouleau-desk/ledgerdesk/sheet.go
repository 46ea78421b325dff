// A page that was made for paper, shown in the window: its words, pairs, lists and tables. Charts are left to the paper; what they
// show stands in the tables too.

package ledgerdesk

import (
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau/page"
)

const mostReadable = 1080 // wider lines are hard to read

// sheet draws a page.
func (f *column) sheet(p *page.Page) {
	f.w = min(f.w, mostReadable)
	for _, line := range p.Lead {
		f.muted(page.Plain(line))
	}
	f.gap(8)
	for i := range p.Blocks {
		f.block(&p.Blocks[i])
	}
}

func (f *column) block(b *page.Block) {
	if b.Head != "" {
		f.gap(6)
		f.head(page.Plain(b.Head))
	}
	for _, text := range b.Text {
		f.say(page.Plain(text), ui.Style{})
		f.gap(4)
	}
	for _, p := range b.Pairs {
		for i, line := range p.Lines {
			name := p.Name
			if i > 0 {
				name = ""
			}
			f.pair(page.Plain(name), page.Plain(line))
		}
	}
	if b.Table != nil {
		f.table(b.Table)
	}
	for _, text := range b.List {
		f.bullet(page.Plain(text))
	}
	if b.Beside != nil {
		for i := range b.Beside.Blocks {
			f.block(&b.Beside.Blocks[i])
		}
	}
	f.gap(8)
}

// cellGap is the room between columns.
const cellGap = 12

// table draws a table, its columns as wide as it says or as their words need.
func (f *column) table(t *page.Table) {
	wide := f.widths(t)
	if len(wide) == 0 {
		return
	}
	head := make([]page.Cell, len(t.Head))
	for i, h := range t.Head {
		head[i] = page.Cell{Text: h}
	}
	f.row(t, wide, head, ui.Style{Size: ui.SizeSmall, Col: f.c.Pal.Muted})
	for i := range t.Rows {
		r := &t.Rows[i]
		if r.Group != "" {
			f.gap(4)
			f.say(page.Plain(r.Group), ui.Style{Size: 13, Weight: ui.SemiBold})
			f.rule()
			continue
		}
		f.row(t, wide, r.Cells, ui.Style{Size: 13, Tab: true})
	}
	f.gap(4)
}

// widths shares the width among the columns.
func (f *column) widths(t *page.Table) []float32 {
	n := len(t.Head)
	if n == 0 {
		return nil
	}
	wide, all := make([]float32, n), float32(0)
	for i := range wide {
		if len(t.Share) == n {
			wide[i] = float32(t.Share[i])
		} else {
			wide[i] = needs(t, i)
		}
		all += wide[i]
	}
	part := (f.w - cellGap*float32(n-1)) / all
	if len(t.Share) != n {
		part = min(part, 1.2) // a few figures are not torn apart
	}
	for i := range wide {
		wide[i] *= part
	}
	return wide
}

// needs is how wide a column would like to be, within bounds.
func needs(t *page.Table, column int) float32 {
	const least, most = 56, 300
	st := ui.Style{Size: 13, Tab: true}
	w := st.Width(t.Head[column])
	for _, r := range t.Rows {
		if column < len(r.Cells) {
			w = max(w, st.Width(page.Plain(r.Cells[column].Text)), ui.Style{Size: ui.SizeSmall}.Width(page.Plain(r.Cells[column].Small)))
		}
	}
	return min(max(w+4, least), most)
}

// row draws the cells of a row and a line under them.
func (f *column) row(t *page.Table, wide []float32, cells []page.Cell, st ui.Style) {
	small := ui.Style{Size: ui.SizeSmall, Col: f.c.Pal.Muted}
	high := float32(0)
	for i := range min(len(cells), len(wide)) {
		high = max(high, f.c.LabelHeight(page.Plain(cells[i].Text), wide[i], st)+f.smallHeight(cells[i].Small, wide[i], small))
	}
	if f.far(high) {
		f.gap(high + 7)
		return
	}
	r := f.box(high)
	for i := range wide {
		cell := r.CutLeft(wide[i])
		r.X += cellGap
		if i >= len(cells) {
			continue
		}
		own := st
		if i < len(t.Right) && t.Right[i] {
			own.Align = ui.AlignRight
		}
		if text := page.Plain(cells[i].Text); text != "" {
			h := f.c.LabelHeight(text, cell.W, own)
			f.c.Label(ui.Label{Rect: cell.CutTop(h), Text: text, Style: own})
		}
		if text := page.Plain(cells[i].Small); text != "" {
			small.Align = own.Align
			f.c.Label(ui.Label{Rect: cell, Text: text, Style: small})
		}
	}
	f.gap(3)
	f.c.Segment(f.x, f.y, r.X-cellGap, f.y, 1, f.c.Pal.Line)
	f.gap(4)
}

func (f *column) smallHeight(text string, w float32, st ui.Style) float32 {
	if text == "" {
		return 0
	}
	return f.c.LabelHeight(page.Plain(text), w, st)
}
