package page

import (
	"fmt"
	"strings"
	"testing"
)

// laid puts a page on sheets.
func laid(p *Page) ([]*piece, []spot) {
	var f flow
	all := p.pieces()
	f.run(all, margin, cursor{page: 1, y: margin})
	return all, f.spots
}

// longTable is a table of so many rows.
func longTable(name string, rows int) *Table {
	t := &Table{Head: []string{name, "mL"}, Right: []bool{1: true}}
	for i := range rows {
		t.Add(fmt.Sprintf("%s %d", name, i), fmt.Sprint(i))
	}
	return t
}

// whole checks what is true of every page: each piece stands once, within the sheet, on no other, and with the next one where
// they belong together; the rows of a table stand under its head.
func whole(t *testing.T, name string, p *Page) []spot {
	t.Helper()
	all, spots := laid(p)
	times, heads := map[*piece]int{}, map[*piece]bool{}
	for i, s := range spots {
		times[s.piece]++
		if s.piece.again != nil {
			heads[s.piece.again] = true
		}
		if s.piece.columns != nil {
			continue
		}
		if s.y < margin-slack || s.y+s.piece.high > bottom+slack {
			t.Errorf("%s: on sheet %d something stands from %.1f to %.1f", name, s.page, s.y, s.y+s.piece.high)
		}
		for _, o := range spots[:i] {
			if o.page == s.page && o.x == s.x && o.piece.columns == nil && o.y < s.y+s.piece.high-slack && s.y < o.y+o.piece.high-slack {
				t.Errorf("%s: on sheet %d two things stand at %.1f and %.1f", name, s.page, o.y, s.y)
			}
		}
		if s.piece.again != nil && !above(spots, s) {
			t.Errorf("%s: on sheet %d a row has no head above it", name, s.page)
		}
	}
	page := map[*piece]int{}
	for _, s := range spots {
		if page[s.piece] == 0 { // where it stands first
			page[s.piece] = s.page
		}
	}
	var look func(all []*piece)
	look = func(all []*piece) {
		for i, p := range all {
			if times[p] != 1 && !heads[p] || times[p] == 0 {
				t.Errorf("%s: a piece stands %d times", name, times[p])
			}
			if p.keep && i+1 < len(all) && page[p] != page[all[i+1]] {
				t.Errorf("%s: what belongs together stands on sheets %d and %d", name, page[p], page[all[i+1]])
			}
			for _, c := range p.columns {
				look(c.pieces)
			}
		}
	}
	look(all)
	return spots
}

// above says whether the head of a row stands above it on its sheet.
func above(spots []spot, s spot) bool {
	for _, o := range spots {
		if o.piece == s.piece.again && o.page == s.page && o.x == s.x && o.y < s.y {
			return true
		}
	}
	return false
}

func TestPagesAreLaidOutWhole(t *testing.T) {
	whole(t, "everything", everything())
	// whatever stands before them, things stay together
	for lines := range 60 {
		p := &Page{Title: "t", Blocks: []Block{{Text: make([]string, lines)}, {Head: "head", Text: []string{strings.Repeat("some words ", 60)}, Table: longTable("row", 50)},
			{Head: "asked", Ask: []Question{{"which", []string{"a", "b", "c"}}}}, {Note: true, Text: []string{"noted", "and noted"}}}}
		for i := range p.Blocks[0].Text {
			p.Blocks[0].Text[i] = "line"
		}
		whole(t, fmt.Sprintf("%d lines before", lines), p)
	}
}

// What is folded on the screen stands on no sheet with what is open before it.
func TestFoldedBlocksHaveTheirSheets(t *testing.T) {
	p := &Page{Blocks: []Block{{Head: "asked", Text: []string{"before"}}, {Head: "answer", Folded: true, Table: longTable("row", 60)}, {Head: "more", Folded: true, Text: []string{"of the answer"}}, {Head: "other", Text: []string{"after"}}}}
	all, spots := laid(p)
	heads := map[string]int{}
	for _, s := range spots {
		if s.piece.title != "" {
			heads[s.piece.title] = s.page
		}
	}
	last := spots[len(spots)-1].page
	if heads["asked"] != 1 || heads["answer"] != 2 || heads["more"] != last || heads["other"] != last || last < 3 {
		t.Errorf("heads stand on sheets %v of %d", heads, last)
	}
	if !all[0].keep {
		t.Error("a head does not stay with its text")
	}
}

// Columns longer than a sheet go on side by side, and what follows stands below the longest.
func TestLongColumnsGoOnSideBySide(t *testing.T) {
	p := &Page{Blocks: []Block{{Head: "both", Beside: &Beside{Blocks: []Block{{Table: longTable("left", 90)}, {Table: longTable("right", 40)}}}}, {Text: []string{"after"}}}}
	spots := whole(t, "columns", p)
	first, last := map[float64]int{}, map[float64]int{}
	for _, s := range spots[2:] { // after the head and what holds the columns
		if first[s.x] == 0 {
			first[s.x] = s.page
		}
		last[s.x] = s.page
	}
	left, right := margin, margin+wide/2+3.5
	if len(first) != 2 || first[left] != first[right] || last[left] != first[left]+3 || last[right] != first[left]+1 {
		t.Errorf("columns go from %v to %v", first, last)
	}
}

// A drawing takes as much of a sheet as its head and its caption leave, and stands with both.
func TestHighDrawingsFillASheet(t *testing.T) {
	for _, caption := range []string{"", "one line", strings.Repeat("several lines of it ", 60)} {
		p := &Page{Title: "t", Blocks: []Block{{Text: []string{"before"}}, {Head: "high", Drawing: small("high", 1120, 1500), Caption: caption}}}
		spots := whole(t, "drawing", p)
		last := spots[len(spots)-1]
		if end := last.y + last.piece.high; last.page != 2 || end < bottom-0.1 {
			t.Errorf("caption %.10q: what ends at %.1f on sheet %d could go on to %.1f", caption, end, last.page, bottom)
		}
	}
	p := &Page{Blocks: []Block{{Drawing: small("small", 280, 90)}}}
	if high := whole(t, "small", p)[0].piece.high; high < 90*unit-slack || high > 90*unit+slack {
		t.Errorf("a small drawing is %.1f mm high, want %.1f", high, 90*unit)
	}
}

// A row that no sheet could hold goes on, and none of its lines is lost.
func TestARowLongerThanASheetGoesOn(t *testing.T) {
	long := strings.Repeat("a word and another one ", 2500)
	table := &Table{Head: []string{"short", "long"}, Share: []int{20, 80}}
	table.Add("name", long)
	table.Add("next", "short")
	p := &Page{Blocks: []Block{{Table: table}, {Pairs: []Pair{{"pair", []string{long}}}}}}
	whole(t, "long row", p)
	text := ""
	for _, s := range sheets(t, pdf(t, p)) {
		text += readBack(t, s)
	}
	if got := strings.Count(text, "awordandanotherone"); got < 2*2400 { // those broken between lines and sheets may be parted by a foot
		t.Errorf("%d of 5000 stretches of the long row are on paper", got)
	}
}

// Columns take what they need, figures are not broken, and where there is less room all share it.
func TestColumnsOfTables(t *testing.T) {
	table := &Table{Head: []string{"name", "n", "text"}, Right: []bool{1: true}}
	table.Rows = []Row{{Cells: []Cell{{Text: "steady"}, {Text: "100.0", Small: "88.6 – 100.0"}, {Text: strings.Repeat("many words ", 40)}}}}
	widths := table.widths(100)
	sum := widths[0] + widths[1] + widths[2]
	if sum < 99.9 || sum > 100.1 {
		t.Errorf("the widths %v add up to %g", widths, sum)
	}
	if need := smallLook.width("88.6 – 100.0") + 2*cellX; widths[1] < need-0.1 || len(wrap("88.6 – 100.0", table.look(1, smallLook), widths[1]-2*cellX)) != 1 {
		t.Errorf("the figure needs %g and has %g", need, widths[1])
	}
	table.Rows[0].Cells[2].Text = "few"
	if widths := table.widths(100); widths[0]+widths[1]+widths[2] > 60 {
		t.Errorf("a small table takes %v", widths)
	}
	table.Share = []int{1, 1, 2}
	if widths := table.widths(100); widths[0] != 25 || widths[2] != 50 {
		t.Errorf("shares give %v", widths)
	}
	if widths := fitted([]float64{60, 60}, []float64{90, 90}, 100); widths[0] != 50 || widths[1] != 50 {
		t.Errorf("with too little room the widths are %v", widths)
	}
}
