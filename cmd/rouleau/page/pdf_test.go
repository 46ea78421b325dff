package page

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"

	"rouleau/assets/words"
)

// letter is a stretch of text where it stands, in points from the lower left corner.
type letter struct {
	x, y float64
	text string
}

var (
	streams = regexp.MustCompile(`(?s)<<[^>]*/Filter /FlateDecode[^>]*>>\nstream\n(.*?)\nendstream`)
	shows   = regexp.MustCompile(`(?s)BT (\S+) (\S+) Td \(((?:\\.|[^\\)])*)\) Tj ET`)
	escaped = regexp.MustCompile(`(?s)\\(.)`)
)

// unescaped is a string of the file as text.
func unescaped(text string) string {
	text = escaped.ReplaceAllStringFunc(text, func(s string) string {
		if s[1] == 'r' {
			return "\r"
		}
		return s[1:]
	})
	var units []uint16
	for i := 0; i+1 < len(text); i += 2 {
		units = append(units, uint16(text[i])<<8|uint16(text[i+1]))
	}
	return string(utf16.Decode(units))
}

// sheets reads what is painted on each sheet of a file.
func sheets(t *testing.T, file []byte) (all []string) {
	t.Helper()
	for _, m := range streams.FindAllSubmatch(file, -1) {
		r, err := zlib.NewReader(bytes.NewReader(m[1]))
		if err != nil {
			t.Fatal(err)
		}
		inside, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		if shows.Match(inside) {
			all = append(all, string(inside))
		}
	}
	return all
}

// said reads the texts of a sheet.
func said(t *testing.T, sheet string) (all []letter) {
	t.Helper()
	for _, m := range shows.FindAllStringSubmatch(sheet, -1) {
		x, err := strconv.ParseFloat(m[1], 64)
		y, worse := strconv.ParseFloat(m[2], 64)
		if err != nil || worse != nil {
			t.Fatal(err, worse)
		}
		all = append(all, letter{x, y, unescaped(m[3])})
	}
	return all
}

// squeezed is a text without its spaces: where a line ends there is none.
func squeezed(text string) string { return strings.NewReplacer(" ", "", "\u00a0", "").Replace(text) }

// readBack is what a sheet says.
func readBack(t *testing.T, sheet string) string {
	var b strings.Builder
	for _, l := range said(t, sheet) {
		b.WriteString(l.text)
	}
	return squeezed(b.String())
}

func pdf(t *testing.T, p *Page) []byte {
	t.Helper()
	file, err := p.PDF()
	if err != nil {
		t.Fatal(err)
	}
	return file
}

func TestEverythingIsOnPaper(t *testing.T) {
	p := everything()
	file := pdf(t, p)
	if !bytes.Equal(file, pdf(t, everything())) {
		t.Error("the same page gives other bytes")
	}
	if bytes.Contains(file, []byte("Date")) {
		t.Error("the file says when it was made")
	}
	m := regexp.MustCompile(`(?s)/Producer [^\n]*\n/Title \(((?:\\.|[^\\)])*)\)`).FindSubmatch(file)
	if m == nil || strings.TrimPrefix(unescaped(string(m[1])), "\ufeff") != p.Title {
		t.Errorf("the file is called %q", m)
	}
	const edge = 28.0 // a centimetre
	all := sheets(t, file)
	whole := ""
	for i, sheet := range all {
		says := readBack(t, sheet)
		whole += says
		for _, want := range []string{words.Say("cli.caution"), words.Say("page.number", i+1, len(all))} {
			if !strings.Contains(says, squeezed(want)) {
				t.Errorf("sheet %d does not say %q", i+1, want)
			}
		}
		for _, l := range said(t, sheet) {
			if l.x < edge || l.x > 842-edge || l.y < edge || l.y > 595-edge {
				t.Errorf("sheet %d: %q stands at %g, %g", i+1, l.text, l.x, l.y)
			}
		}
	}
	if len(all) < 7 {
		t.Fatalf("%d sheets", len(all))
	}
	see := func(what, text string) {
		if text = squeezed(shown(plain(text))); !strings.Contains(whole, text) {
			t.Errorf("the %s %q is not on paper", what, text)
		}
	}
	see("title", p.Title)
	var look func(blocks []Block)
	look = func(blocks []Block) {
		for i := range blocks {
			b := &blocks[i]
			see("head", b.Head)
			see("caption", b.Caption)
			for _, text := range slices.Concat(b.Text, b.List) {
				see("text", text)
			}
			for _, f := range b.Faults {
				see("fault", strings.SplitN(f, "\n", 2)[0])
			}
			for _, pair := range b.Pairs {
				see("pair", pair.Name+strings.Join(pair.Lines, ""))
			}
			for _, q := range b.Ask {
				see("question", q.Text+strings.Join(q.Choices, ""))
			}
			if b.Table != nil {
				for _, r := range b.Table.Rows {
					see("group", r.Group)
					for _, c := range r.Cells {
						see("cell", c.Text+c.Small)
					}
				}
			}
			if b.Beside != nil {
				look(b.Beside.Blocks)
			}
		}
	}
	look(p.Blocks)
}

// A link leads to the sheet on which its row stands, and heads stand in the list of contents.
func TestLinksLeadToTheirSheet(t *testing.T) {
	file := pdf(t, everything())
	links := regexp.MustCompile(`/Subtype /Link .*?/Dest \[(\d+) 0 R`).FindAllSubmatch(file, -1)
	if len(links) != 2 { // to moments 3 and 2; what leads nowhere is none
		t.Fatalf("%d links", len(links))
	}
	for _, l := range links {
		object, _ := strconv.Atoi(string(l[1]))
		sheet := sheets(t, file)[(object-1)/2-1]
		if says := readBack(t, sheet); !strings.Contains(says, "20:01:11") || !strings.Contains(says, "30:02:11") {
			t.Errorf("a link leads to a sheet that says %.80s", says)
		}
	}
	if !bytes.Contains(file, []byte("/PageMode /UseOutlines")) {
		t.Error("there is no list of contents")
	}
}

// The caret of a fault stands under the letter that it means, though letters have their own widths here.
func TestCaretsStandUnderTheirLetter(t *testing.T) {
	k := look{size: 1}
	for _, c := range []struct {
		above, before, letter string
		cells                 int
	}{
		{"   12 |       - {kind: agent_on}", "   12 |       ", "-", 14},
		{"    3 | name: Wäscheleine 漢字 iiii", "    3 | name: Wäscheleine □□ ", "i", 31},
		{"    1 | iiiiiiiiWWWW", "    1 | iiiiiiii", "W", 16},
		{"    1 | x", "    1 | ", "x", 8},
	} {
		want := k.width(c.before) + (k.width(c.letter)-k.width("^"))/2
		if got := under(c.above, c.cells, k); got < want-1e-6 || got > want+1e-6 {
			t.Errorf("%q: the caret of column %d stands at %g, want %g", c.above, c.cells, got, want)
		}
	}
}

// A page with nothing in it is a sheet with its cautions.
func TestAnEmptyPageIsOneSheet(t *testing.T) {
	for _, p := range []*Page{{}, {Blocks: []Block{{}, {Folded: true}, {Sheet: true}}}, {Blocks: []Block{{Table: &Table{}, Beside: &Beside{}}}}} {
		all := sheets(t, pdf(t, p))
		if len(all) != 1 || !strings.Contains(readBack(t, all[0]), squeezed(words.Say("page.number", 1, 1))) {
			t.Errorf("%d sheets", len(all))
		}
	}
	if got := fmt.Sprint(len(sheets(t, pdf(t, &Page{Blocks: []Block{{Head: "a"}, {Head: "b", Folded: true}, {Head: "c"}}})))); got != "2" {
		t.Errorf("a folded block between two others takes %s sheets in all", got)
	}
}

// A word whose figures are put one by one, as those of one width are, can be searched for.
func TestFiguresCanBeSearchedFor(t *testing.T) {
	p := &Page{Blocks: []Block{{Table: &Table{Head: []string{"time", "figure"}, Right: []bool{true, true}, Rows: []Row{{Cells: []Cell{{Text: "1:01:11 to 1:16:41"}, {Text: "11.1 mL"}}}}}}}}
	sheet := strings.Join(sheets(t, pdf(t, p)), "\n")
	for _, word := range []string{"1:01:11 ", "1:16:41", "11.1 "} {
		if !strings.Contains(sheet, "/ActualText <FEFF"+hex16(word)+">") {
			t.Errorf("%q is not named whole", word)
		}
	}
	if begun, ended := strings.Count(sheet, " BDC"), strings.Count(sheet, "EMC"); begun != ended {
		t.Errorf("%d words begin and %d end", begun, ended)
	}
}
