// Package page makes pages of what was found out about a case or a run: one file of HTML that loads nothing and runs nothing,
// reads well on a screen and prints on sheets of A4 on their side. A page is a list of blocks, so that all pages look alike.
package page

import (
	"bytes"
	_ "embed"
	"html/template"

	"rouleau/assets/words"
)

// Page is a whole page.
type Page struct {
	Title  string
	Lead   []string // lines under the title
	Blocks []Block
}

// Block is one part of a page. What is empty in it is left out.
type Block struct {
	Head    string
	Text    []string
	Faults  []string // with places and carets, as the terminal shows them
	Drawing template.HTML
	Caption string
	Pairs   []Pair
	Table   *Table
	List    []string
	Sheet   bool // begins on a new sheet of paper
}

// Pair is a name with what belongs to it, one line each.
type Pair struct {
	Name  string
	Lines []string
}

// Table is a table. Columns named in Right hold figures.
type Table struct {
	Head  []string
	Right []bool
	Share []int // of the width, in percent; where there is none columns take what their texts need
	Rows  []Row
}

// Row is a row of a table, or with Group the head of those that follow.
type Row struct {
	Group string
	Cells []Cell
}

// Cell is what stands in a cell, and what is said under it in small type.
type Cell struct{ Text, Small string }

// Add adds a row of plain texts.
func (t *Table) Add(cells ...string) {
	var r Row
	for _, c := range cells {
		r.Cells = append(r.Cells, Cell{Text: c})
	}
	t.Rows = append(t.Rows, r)
}

// Drawing marks SVG that the program drew itself as fit to stand in a page.
func Drawing(svg []byte) template.HTML { return template.HTML(svg) }

//go:embed page.css
var style string

//go:embed page.html
var layout string

var form = template.Must(template.New("page").Funcs(template.FuncMap{
	"style":   func() template.CSS { return template.CSS(style) },
	"caution": func() string { return words.Say("cli.caution") },
	"at": func(columns []bool, i int) bool {
		return i < len(columns) && columns[i]
	},
}).Parse(layout))

// HTML is the page as a file.
func (p *Page) HTML() ([]byte, error) {
	var b bytes.Buffer
	err := form.Execute(&b, p)
	return b.Bytes(), err
}
