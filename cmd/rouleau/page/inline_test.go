package page

import (
	"bytes"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

func TestTextsAreTakenApart(t *testing.T) {
	anchors := map[string]bool{"m7": true}
	for text, want := range map[string]string{
		"plain & <simple>": "plain &amp; &lt;simple&gt;",
		"at " + Ref("m7", "0:23:10") + ", " + Strong("late"): `at <a href="#m7">0:23:10</a>, <b>late</b>`,
		Ref("m8", "nowhere"):           "nowhere",
		Ref(`m7" onclick="x`, "words"): "words",
		Sign(Grave, "air <given>"):     `<span class="sign grave"><span aria-hidden="true">◆</span> air &lt;given&gt;</span>`,
		Sign(77, "x"):                  `<span class="sign grave"><span aria-hidden="true">◆</span> x</span>`,
		"a\x02b":                       "ab",
		"a\x02sb\x03c":                 "asbc",
		"\x02q1\x1fodd\x03":            "odd",
		"\x02w\x1fno weight\x03":       `<span class="sign"><span aria-hidden="true">○</span> no weight</span>`,
		"\x02s\x1fnever closed":        "snever closed",
		"tab\tnew\nline\x00\x1b[31m":   "tab new line[31m",
		"cut off \xe2\x82":             "cut off �",
	} {
		if got := string(rich(text, anchors)); got != want {
			t.Errorf("%q becomes %s, want %s", text, got, want)
		}
	}
}

// filled is a page with one text wherever a text may stand.
func filled(text string) *Page {
	t := &Table{Head: []string{text, text}, Right: []bool{1: true}, Named: true}
	t.Rows = []Row{{Group: text}, {ID: text, Cells: []Cell{{Text: text, Small: text}, {Text: text, Tint: 1}}}, {Cells: []Cell{{Text: text}, {Text: text}, {Text: text}}}}
	all := Block{ID: text, Head: text, Text: []string{text}, Faults: []string{text + "\n  1 | " + text + "\n    | ^"}, Caption: text, Pairs: []Pair{{text, []string{text}}},
		Table: t, List: []string{text}, Ask: []Question{{text, []string{text}}}}
	return &Page{Title: text, Lead: []string{text}, Blocks: []Block{all, {Beside: &Beside{Blocks: []Block{{Head: text, Text: []string{Ref(text, text)}}, {Note: true, Text: []string{Strong(text)}}}}},
		{Folded: true, Head: text, Text: []string{Sign(Serious, text)}}}}
}

// Whatever is written in a case stays a text, in HTML and in PDF, and ends up as a file.
func FuzzTextsStayTexts(f *testing.F) {
	for _, text := range []string{"", " ", "<script>alert(1)</script>", `"><img src=x onerror=y>`, "a 😀 b", "\xe2\x82", "\xff\xfe", "e\u0301 \u202e x", "漢字", "\\ ( ) \r\n",
		strings.Repeat("long", 300), strings.Repeat("long ", 300), "\u00a0\u00a0", Ref("x", "y"), "\x02s\x1f\x02r\x1f\x03", "^\n^", "{nb}", "%!d(MISSING)"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		p := filled(text)
		made, err := p.HTML()
		if err != nil || !utf8.Valid(made) {
			t.Fatalf("%v", err)
		}
		if text != "" && clean(text) == text { // nothing in it marks anything
			simple, err := filled("x").HTML()
			if err != nil || !slices.Equal(tags(made), tags(simple)) {
				t.Fatalf("%q became more than a text (%v)", text, err)
			}
		}
		file, err := p.PDF()
		if err != nil || !bytes.HasPrefix(file, []byte("%PDF-")) {
			t.Fatalf("%q: %v", text, err)
		}
	})
}

// tags are the names of the elements of a page, in their order.
func tags(made []byte) (all []string) {
	for _, part := range bytes.Split(made, []byte("<"))[1:] {
		name, _, _ := bytes.Cut(part, []byte(">"))
		word, _, _ := bytes.Cut(name, []byte(" "))
		all = append(all, string(word))
	}
	return all
}
