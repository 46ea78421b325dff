// Package page makes pages of what was found out about a case or a run: as one file of HTML that loads nothing and runs
// nothing, reads well on a screen and prints on sheets of A4 on their side; and as PDF on such sheets. A page is a list of
// blocks, so that all pages look alike and none is written twice. This file holds what a page is made of.
package page

// Page is a whole page.
type Page struct {
	Title  string
	Lead   []string // lines under the title
	Blocks []Block
}

// Block is one part of a page. What is empty in it is left out; what there is stands in the order of the fields. Any text may
// hold what Strong, Ref and Sign make.
type Block struct {
	ID      string // for Ref
	Head    string
	Text    []string
	Faults  []string // with places and carets, as the terminal shows them
	Drawing *Drawing
	Caption string
	Pairs   []Pair
	Table   *Table
	List    []string
	Ask     []Question
	Beside  *Beside
	Note    bool // set off from the others by its ground
	Sheet   bool // begins on a new sheet of paper
	Folded  bool // shut on a screen until its Head is pressed; on paper open, and on no sheet with what stands before it
}

// Pair is a name with what belongs to it, one line each.
type Pair struct {
	Name  string
	Lines []string
}

// Question is something asked, with choices of which one is ticked: on the screen, or with a pen.
type Question struct {
	Text    string
	Choices []string
}

// Beside sets blocks next to each other: two tables, a small chart beside its text, many small charts. Under a head a block of
// it has a smaller one.
type Beside struct {
	Across int   // in a row; 0 for all
	Share  []int // of the width, in percent, for each of a row; where there is none all are as wide
	Blocks []Block
}

// Table is a table. Columns named in Right hold figures.
type Table struct {
	Head  []string
	Right []bool
	Share []int // of the width, in percent; where there is none columns take what their texts need
	Named bool  // the first cell of a row names the row
	Rows  []Row
}

// Row is a row of a table, or with Group the head of those that follow.
type Row struct {
	ID    string // for Ref
	Group string
	Cells []Cell
}

// Cell is what stands in a cell, what is said under it in small type, and how strong a tint lies behind it, 0 to 1.
type Cell struct {
	Text, Small string
	Tint        float64
}

// Add adds a row of plain texts.
func (t *Table) Add(cells ...string) {
	var r Row
	for _, c := range cells {
		r.Cells = append(r.Cells, Cell{Text: c})
	}
	t.Rows = append(t.Rows, r)
}

// right says whether a column holds figures.
func (t *Table) right(column int) bool { return column < len(t.Right) && t.Right[column] }

// across is how many stand in a row.
func (b *Beside) across() int {
	if b.Across <= 0 || b.Across > len(b.Blocks) {
		return len(b.Blocks)
	}
	return b.Across
}

// shares are the parts of the width that the blocks of a row take, 1 in all.
func (b *Beside) shares() []float64 {
	parts, all := make([]float64, b.across()), 0.0
	for i := range parts {
		parts[i] = 1
		if len(b.Share) == len(parts) {
			parts[i] = float64(b.Share[i])
		}
		all += parts[i]
	}
	for i := range parts {
		parts[i] /= all
	}
	return parts
}

// anchors are the names that Ref can lead to.
func (p *Page) anchors() map[string]bool {
	found := map[string]bool{}
	var look func(blocks []Block)
	look = func(blocks []Block) {
		for i := range blocks {
			b := &blocks[i]
			found[b.ID] = true
			if b.Table != nil {
				for _, r := range b.Table.Rows {
					found[r.ID] = true
				}
			}
			if b.Beside != nil {
				look(b.Beside.Blocks)
			}
		}
	}
	look(p.Blocks)
	delete(found, "")
	return found
}
