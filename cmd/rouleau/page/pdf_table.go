package page

// This file lays out tables and lists of pairs in PDF: how wide columns are, and rows that stand whole on a sheet.

// Room within cells, in mm.
const (
	cellX = 1.7
	cellY = 0.9
)

var (
	cellLook = look{size: tableSize, col: ink}
	headLook = look{size: tableSize, bold: true, col: ink}
)

// cellOf is the lines of a cell.
type cellOf struct {
	lines []textLine
	looks []look // of each line
	right bool
	tint  float64
}

// add adds lines to a cell.
func (c *cellOf) add(text string, k look, width float64) {
	for _, l := range wrap(text, k, width-2*cellX) {
		c.lines, c.looks = append(c.lines, l), append(c.looks, k)
	}
}

// high is how high so many lines of a cell are, from one of them on.
func (c *cellOf) high(from, n int) (sum float64) {
	for i := from; i < min(from+n, len(c.looks)); i++ {
		sum += c.looks[i].high()
	}
	return sum
}

// rowOf is a row that is ready to be put on sheets.
type rowOf struct {
	cells  []cellOf
	widths []float64
	thick  float64 // of the line under it
	under  colour
	ground bool
}

// pieces are the row as one piece, or, where no sheet could hold it, as many as it needs.
func (r *rowOf) pieces() (all []*piece) {
	most := 0
	for i := range r.cells {
		most = max(most, len(r.cells[i].lines))
	}
	whole := int((room - 30) / cellLook.high()) // lines of type of a table; a head has room beside them
	if most <= whole {
		return []*piece{r.part(0, most)}
	}
	for from := 0; from < most; from += whole {
		all = append(all, r.part(from, whole))
	}
	return all
}

// part is some lines of every cell.
func (r *rowOf) part(from, n int) *piece {
	p := &piece{}
	for i := range r.cells {
		p.high = max(p.high, r.cells[i].high(from, n))
	}
	p.high += 2 * cellY
	p.draw = func(c *canvas, x, y float64) {
		left := x
		for i := range r.cells {
			cell := &r.cells[i]
			if cell.tint > 0 {
				c.box(left, y, r.widths[i], p.high, tint(cell.tint))
			}
			left += r.widths[i]
		}
		if r.ground {
			c.box(x, y, left-x, p.high, shade)
		}
		c.rule(x, y+p.high, left-x, r.thick, r.under)
		for i := range r.cells {
			r.cells[i].draw(c, x, y+cellY, r.widths[i], from, n)
			x += r.widths[i]
		}
	}
	return p
}

func (cell *cellOf) draw(c *canvas, x, y, width float64, from, n int) {
	for i := from; i < min(from+n, len(cell.lines)); i++ {
		l := &cell.lines[i]
		at := x + cellX
		if cell.right {
			at = x + width - cellX - l.wide
		}
		l.draw(c, at, y)
		y += cell.looks[i].high()
	}
}

// look is how what stands in a column looks.
func (t *Table) look(column int, k look) look {
	k.tab = t.right(column)
	return k
}

// pieces are the head and the rows of a table; the head stands above the rows of each sheet.
func (t *Table) pieces(width float64) (all []*piece) {
	widths := t.widths(width)
	head := rowOf{widths: widths, thick: 0.4, under: ink}
	for i, text := range t.Head {
		c := cellOf{right: t.right(i)}
		c.add(text, headLook, widths[i])
		head.cells = append(head.cells, c)
	}
	top := head.part(0, 1000)
	top.gap, top.keep = blockRoom, true
	all = append(all, top)
	for i := range t.Rows {
		ps := t.row(&t.Rows[i], widths)
		for _, p := range ps {
			p.again = top
		}
		if t.Rows[i].ID != "" {
			ps[0].id = t.Rows[i].ID
		}
		if n := len(t.Rows); n > 1 && (i == 0 || i == n-2) {
			ps[len(ps)-1].keep = true // no row stands alone before or after a break
		}
		all = append(all, ps...)
	}
	return all
}

// row is a row, or the head of those that follow, which stays with the first of them.
func (t *Table) row(r *Row, widths []float64) []*piece {
	out := rowOf{widths: widths, thick: 0.2, under: line}
	if r.Group != "" {
		width := 0.0
		for _, w := range widths {
			width += w
		}
		out.widths, out.ground = []float64{width}, true
		c := cellOf{}
		c.add(r.Group, headLook, width)
		out.cells = []cellOf{c}
		ps := out.pieces()
		ps[len(ps)-1].keep = true
		return ps
	}
	for i := range widths {
		c := cellOf{right: t.right(i)}
		if i < len(r.Cells) {
			from := &r.Cells[i]
			c.tint = from.Tint
			small := smallLook
			if c.tint > 0 {
				small.col = ink
			}
			c.add(from.Text, t.look(i, cellLook), widths[i])
			c.add(from.Small, t.look(i, small), widths[i])
		}
		out.cells = append(out.cells, c)
	}
	return out.pieces()
}

// widths are those of the columns, by their shares or by what stands in them.
func (t *Table) widths(width float64) []float64 {
	n := len(t.Head)
	widths := make([]float64, n)
	if len(t.Share) == n {
		all := 0.0
		for _, s := range t.Share {
			all += float64(s)
		}
		for i, s := range t.Share {
			widths[i] = width * float64(s) / all
		}
		return widths
	}
	least, most := make([]float64, n), make([]float64, n)
	see := func(i int, text string, k look, whole bool) {
		one := 0.0
		for _, w := range wordsOf(text, k) {
			least[i] = max(least[i], w.wide()+2*cellX)
			one += w.wide() + k.width(" ")
		}
		most[i] = max(most[i], one+2*cellX)
		if whole && one < width/4 {
			least[i] = max(least[i], one+2*cellX)
		}
	}
	for i, text := range t.Head {
		see(i, text, headLook, false)
	}
	for _, r := range t.Rows {
		for i := range min(n, len(r.Cells)) { // a figure is not broken
			see(i, r.Cells[i].Text, t.look(i, cellLook), t.right(i))
			see(i, r.Cells[i].Small, t.look(i, smallLook), t.right(i))
		}
	}
	return fitted(least, most, width)
}

// fitted gives every column what it wants. Where there is not as much, every one gets what its longest word needs, and of the
// rest more the more it has to say; where even the words do not fit, all get less.
func fitted(least, most []float64, width float64) []float64 {
	needed, wanted := 0.0, 0.0
	for i := range least {
		needed += least[i]
		wanted += most[i] - least[i]
	}
	widths := make([]float64, len(least))
	for i := range widths {
		switch {
		case needed >= width:
			widths[i] = least[i] * width / needed
		case needed+wanted <= width:
			widths[i] = most[i]
		default:
			widths[i] = least[i] + (width-needed)*(most[i]-least[i])/wanted
		}
	}
	return widths
}

// pieces are a name and its lines beside it.
func (p *Pair) pieces(width float64) []*piece {
	name := min(nameWide, width/3)
	row := rowOf{widths: []float64{name, width - name}, thick: 0.2, under: line, cells: make([]cellOf, 2)}
	row.cells[0].add(p.Name, look{size: textSize, col: soft}, name)
	for _, l := range p.Lines {
		row.cells[1].add(l, textLook, width-name)
	}
	return row.pieces()
}
