package page

import (
	"strings"

	"github.com/rivo/uniseg"
)

// This file turns blocks into what is put on sheets.

// Room between things, in mm.
const (
	lineRoom   = 1.2
	blockRoom  = 2.5
	headRoom   = 6.0
	bulletIn   = 4.5
	noteIn     = 3.0
	tickIn     = 6.0
	longest    = 219.0 // of lines of text: longer ones are hard to read
	nameWide   = 39.0
	briefly    = room / 4 // a head and its text up to this are not parted
	leastDrawn = 20.0     // height of a drawing, however long its caption is
	unit       = 25.4 / 96
)

var (
	textLook  = look{size: textSize, col: ink}
	smallLook = look{size: smallSize, col: soft}
)

// pieces are those of the whole page.
func (p *Page) pieces() (all []*piece) {
	all = lines(p.Title, look{size: titleSize, bold: true, col: ink}, wide, 0)
	for _, l := range p.Lead {
		all = append(all, lines(l, look{size: textSize, col: soft}, longest, lineRoom)...)
	}
	folded := false // the block before
	for i := range p.Blocks {
		b := &p.Blocks[i]
		ps := b.pieces(wide, true)
		if len(ps) > 0 {
			ps[0].sheet = ps[0].sheet || b.Sheet || b.Folded && !folded
			folded = b.Folded
		}
		all = append(all, ps...)
	}
	return all
}

// lines is a text, a piece for each line; no line of it stands alone on a sheet.
func lines(text string, k look, width, gap float64) (all []*piece) {
	wrapped := wrap(text, k, width)
	for i := range wrapped {
		l := &wrapped[i]
		p := &piece{high: k.high(), draw: l.draw, keep: i == 0 && len(wrapped) > 1 || i == len(wrapped)-2}
		if i == 0 {
			p.gap = gap
		}
		all = append(all, p)
	}
	return all
}

// pieces are those of a block; one that is not on top has a smaller head.
func (b *Block) pieces(width float64, top bool) (all []*piece) {
	if b.Note {
		width -= 2 * noteIn
	}
	all = append(all, b.head(width, top)...)
	for _, t := range b.Text {
		all = append(all, lines(t, textLook, min(width, longest), lineRoom)...)
	}
	if len(all) > 0 && len(b.Faults) == 0 && b.Drawing == nil && (len(b.Pairs) > 0 || b.Table != nil || len(b.List) > 0 || len(b.Ask) > 0 || b.Beside != nil) {
		all[len(all)-1].keep = true // what is said of a table stands with it
		for _, p := range all {
			p.keep = p.keep || height(all) < briefly
		}
	}
	for _, f := range b.Faults {
		all = append(all, fault(f, width))
	}
	if b.Drawing != nil {
		above := 0.0
		if len(b.Text)+len(b.Faults) == 0 {
			above = height(all) // the head, which has to stand on the same sheet
		}
		all = append(all, b.figure(width, room-above)...)
	}
	for _, p := range b.Pairs {
		all = append(all, p.pieces(width)...)
	}
	if b.Table != nil {
		all = append(all, b.Table.pieces(width)...)
	}
	for _, l := range b.List {
		ps := lines(l, textLook, min(width, longest)-bulletIn, lineRoom)
		for i, p := range ps {
			ps[i] = p.shifted(bulletIn, i == 0, func(c *canvas, x, y float64) {
				c.disc(x+1.6, y+textLook.high()/2, 0.55, ink)
			})
		}
		all = append(all, ps...)
	}
	for _, q := range b.Ask {
		all = append(all, q.pieces(width)...)
	}
	if b.Beside != nil {
		all = append(all, b.Beside.pieces(width, top && b.Head == "")...)
	}
	if b.Note {
		all = noted(all, width+2*noteIn)
	}
	if len(all) > 0 {
		all[0].gap = max(all[0].gap, blockRoom)
		if b.ID != "" {
			all[0].id = b.ID
		}
	}
	return all
}

// head is the head of a block, which stays with what follows.
func (b *Block) head(width float64, top bool) []*piece {
	k, gap := look{size: underSize, bold: true, col: ink}, blockRoom
	if top {
		k.size, gap = headSize, headRoom
	}
	all := lines(b.Head, k, width, gap)
	for i, p := range all {
		p.keep = true
		if top && i == len(all)-1 {
			inner := p.draw
			p.high += 1.6
			p.draw = func(c *canvas, x, y float64) {
				inner(c, x, y)
				c.rule(x, y+k.high()+0.5, width, 0.5, ink)
			}
		}
	}
	if top && len(all) > 0 {
		all[0].title = plain(b.Head)
	}
	return all
}

// shifted is a piece some way to the right, with something before it where first.
func (p *piece) shifted(by float64, first bool, before func(c *canvas, x, y float64)) *piece {
	inner := p.draw
	p.draw = func(c *canvas, x, y float64) {
		if first {
			before(c, x, y)
		}
		inner(c, x+by, y)
	}
	return p
}

// noted sets pieces off by a ground that goes through.
func noted(all []*piece, width float64) []*piece {
	const edge = 1.8
	for i, p := range all {
		if p.columns != nil {
			for k := range p.columns {
				p.columns[k].x += noteIn
			}
			continue
		}
		above := p.gap
		if i == 0 {
			above = edge
		}
		p.gap, p.high = 0, p.high+above
		if i == len(all)-1 {
			p.high += edge
		}
		high, inner := p.high, p.draw
		p.draw = func(c *canvas, x, y float64) {
			c.ground(x, y, width, high, ink)
			inner(c, x+noteIn, y+above)
		}
	}
	return all
}

// ground is the ground of what is set off, with a bar at its left.
func (c *canvas) ground(x, y, w, h float64, bar colour) {
	c.box(x, y, w, h, shade)
	c.box(x, y, 1, h, bar)
}

// fault is a fault as the terminal shows it; its caret stands under the letter that it means.
func fault(text string, width float64) *piece {
	const edge = 1.2
	k := look{size: 9 * point, col: ink}
	type mark struct {
		text textLine
		x, y float64
	}
	var marks []mark
	y, above := edge, ""
	put := func(x float64, text string) {
		for _, t := range wrap(strings.ReplaceAll(text, "  ", "\u00a0 "), k, width-2*noteIn-x) {
			marks = append(marks, mark{t, x, y})
			y += k.high()
		}
	}
	for l := range strings.SplitSeq(strings.TrimRight(text, "\n"), "\n") {
		if pad, found := strings.CutSuffix(l, "^"); found && above != "" && strings.Trim(pad, " |") == "" {
			put(under(above, uniseg.StringWidth(pad), k), "^")
			continue
		}
		rest := strings.TrimLeft(l, " ")
		put(k.width(l[:len(l)-len(rest)]), rest)
		above = l
	}
	p := &piece{gap: lineRoom, high: y + edge}
	p.draw = func(c *canvas, x, y float64) {
		c.ground(x, y, width, p.high, bad)
		for i := range marks {
			marks[i].text.draw(c, x+noteIn+marks[i].x, y+marks[i].y)
		}
	}
	return p
}

// under is where a caret stands that is to stand under what comes after so many cells of a terminal.
func under(above string, cells int, k look) float64 {
	rest, state, letter, w := above, -1, "", 0
	for cells >= 0 && rest != "" {
		letter, rest, w, state = uniseg.FirstGraphemeClusterInString(rest, state)
		cells -= w
	}
	before := above[:len(above)-len(rest)-len(letter)]
	return k.width(shown(before)) + (k.width(shown(letter))-k.width("^"))/2
}

// figure is a drawing with its caption, together at most so high.
func (b *Block) figure(width, most float64) []*piece {
	size := b.Drawing.List.Size
	caption := lines(b.Caption, smallLook, min(width, longest), lineRoom)
	for _, p := range caption {
		most -= p.gap + p.high
	}
	scale := min(width/float64(size.X), max(most-lineRoom, leastDrawn)/float64(size.Y), unit)
	drawing := &piece{gap: lineRoom, high: float64(size.Y) * scale, draw: func(c *canvas, x, y float64) { c.list(b.Drawing.List, x, y, scale) }}
	drawing.keep = len(caption) > 0
	return append([]*piece{drawing}, caption...)
}

// pieces are a question with its choices, all on one sheet.
func (q *Question) pieces(width float64) []*piece {
	k := textLook
	k.bold = true
	all := lines(q.Text, k, min(width, longest), headRoom/2)
	for _, choice := range q.Choices {
		ps := lines(choice, textLook, min(width, longest)-tickIn, lineRoom)
		for i, p := range ps {
			ps[i] = p.shifted(tickIn, i == 0, func(c *canvas, x, y float64) {
				const side = 3.2
				c.frame(x+0.4, y+(textLook.high()-side)/2, side, side, 0.35, ink)
			})
		}
		all = append(all, ps...)
	}
	for i, p := range all {
		p.keep = i < len(all)-1
	}
	return all
}

// pieces are rows of blocks beside each other.
func (b *Beside) pieces(width float64, top bool) (all []*piece) {
	const between = 7.0
	across := b.across()
	parts := b.shares()
	for from := 0; from < len(b.Blocks); from += across {
		row := &piece{gap: blockRoom}
		x, inner := 0.0, width-between*float64(across-1)
		for i, part := range parts {
			if from+i >= len(b.Blocks) {
				break
			}
			col := column{x: x, wide: part * inner, pieces: b.Blocks[from+i].pieces(part*inner, top)}
			if len(col.pieces) > 0 {
				col.pieces[0].gap = 0
			}
			x += col.wide + between
			row.columns = append(row.columns, col)
			row.high = max(row.high, height(col.pieces))
		}
		all = append(all, row)
	}
	return all
}
