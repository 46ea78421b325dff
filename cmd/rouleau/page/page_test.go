package page

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
)

// everything is a page with each kind of thing in it, some of it on several sheets.
func everything() *Page {
	p := &Page{Title: "A <title> & more: Zwölf Boxkämpfer – 5 °C, µ, ≥ 0.5", Lead: []string{"What this is.", "AV To Wa Ty 1:11 0:00, " + Ref("m3", "moment 3")}}
	note := Block{Note: true, Text: []string{Sign(Grave, "never made up for") + ": air was given at " + Ref("m2", "0:41:10") + ". " + strings.Repeat("What follows is long enough for a second line. ", 6)},
		List: []string{Sign(Well, "well done") + " the haemostat was kept out", Sign(Slight, "small") + " one label was late", Sign(Serious, "serious") + " the wash was cut short"}}
	fault := "case.yaml:12:7: warning: something is \"odd\"\n   12 |       - {kind: agent_on, at: 0:27:00}\n      |       ^\n        expected: another thing\n"
	caret := "case.yaml:3:9: warning: wide letters\n    3 | name: Wäscheleine 漢字 iiii\n      |                        ^\n"
	first := Block{ID: "first", Head: "What happened", Text: []string{"A text with " + Strong("strong words") + ", and a link to " + Ref("nowhere", "nothing") + ".",
		strings.Repeat("Sentences that go on for some time. ", 12)}, Faults: []string{fault, caret}, Drawing: small("a chart with a dash", 560, 120), Caption: "What the chart shows."}
	pairs := Block{Head: "Pairs", Pairs: []Pair{{"patient", []string{"62 kg, 4.1 L"}}, {"history", []string{"first line", "second line " + strings.Repeat("of many words ", 30)}}}}
	moments := &Table{Head: []string{"moment", "when", "what was done", "weight", "points"}, Right: []bool{0: true, 4: true}, Named: true}
	for i := range 60 {
		if i%20 == 0 {
			moments.Rows = append(moments.Rows, Row{Group: fmt.Sprintf("Part %d", i/20+1)})
		}
		moments.Rows = append(moments.Rows, Row{ID: fmt.Sprintf("m%d", i+1), Cells: []Cell{{Text: fmt.Sprint(i + 1)}, {Text: fmt.Sprintf("0:%02d:11", i)},
			{Text: "The sucker went to the reservoir.", Small: strings.Repeat("why that matters, ", 1+i%9)}, {Text: Sign(Weight(i%4), []string{"well", "small", "serious", "grave"}[i%4])}, {Text: fmt.Sprintf("%d.%d", i*7%13, i%10), Tint: float64(i%5) / 4}}})
	}
	two := func(name string) Block {
		t := &Table{Head: []string{name, "mL"}, Right: []bool{1: true}}
		t.Add("shed", "1111")
		t.Add("given back", "640")
		return Block{Head: name, Table: t}
	}
	compared := Block{Head: "Side by side", Beside: &Beside{Blocks: []Block{two("you"), two("steady")}}}
	chart := Block{Beside: &Beside{Share: []int{60, 40}, Blocks: []Block{
		{Head: "At 0:23:10", Text: []string{strings.Repeat("The reservoir held less than one bowl takes. ", 5)}}, {Drawing: small("a small chart", 400, 130), Caption: "clot, mL"}}}}
	many := Block{Head: "Many", Beside: &Beside{Across: 3}}
	for i := range 5 {
		many.Beside.Blocks = append(many.Beside.Blocks, Block{Drawing: small(fmt.Sprintf("chart %d", i+1), 280, 90), Caption: fmt.Sprintf("number %d", i+1)})
	}
	asked := Block{Head: "Before you read on", Ask: []Question{{"Where should the sucker have gone at 0:23:10?", []string{"To the reservoir", "Elsewhere, " + strings.Repeat("because of the haemostat ", 10), "Nowhere"}}, {"And then?", []string{"Yes", "No"}}}}
	answer := Block{Head: "The answer", Folded: true, Text: []string{"Elsewhere."}, Table: moments}
	p.Blocks = []Block{note, first, pairs, compared, chart, many, asked, answer, {Head: "After the answer", Text: []string{"The end. " + strings.Repeat("unbrokenwordwithoutend", 30)}, Sheet: true}}
	return p
}

// small is a drawing with each kind of thing a list may hold.
func small(says string, w, h float32) *Drawing {
	return Draw(w, h, says, func(c *ui.Core) {
		ink := c.Pal.Ink
		c.Stroke(ui.R(1, 1, w-2, h-2), 6, 1, c.Pal.Edge)
		c.PushClip(ui.R(10, 10, w-20, h-20))
		c.BeginPath()
		for i := range 60 {
			c.To(float32(i)*w/60, h/2+float32(i*i%17-8)*h/40)
		}
		c.Line(2, c.Pal.Series[1].Col, c.Pal.Series[1].Dash, false)
		c.BeginPath()
		c.To(20, h-20)
		c.To(60, 20)
		c.To(100, h-20)
		c.LineRound(5, c.Pal.Series[0].Col, true)
		c.PopClip()
		c.HatchRect(ui.R(w/2, 20, 60, 30), 5, -0.8, 1, ink)
		c.Fill(ui.R(w/2+70, 20, 30, 30), 4, ui.Color{R: 200, A: 128})
		c.Disc(ui.R(w/2+60, 30, 30, 30), ui.Color{B: 200, A: 128})
		c.Ring(ui.Vec{X: w - 50, Y: 40}, 10, 20, 0, 5, ink)
		c.TextAt(20, h-12, "1111 mL AV Ta", ui.Style{Size: 13})
		c.TextAt(w-20, h-12, "24.5 mL/min", ui.Style{Size: 13, Tab: true, Weight: ui.SemiBold, Align: ui.AlignRight})
	})
}

// html is a page as HTML.
func html(t *testing.T, p *Page) string {
	t.Helper()
	made, err := p.HTML()
	if err != nil {
		t.Fatal(err)
	}
	return string(made)
}

func TestThePageLoadsAndRunsNothing(t *testing.T) {
	text := html(t, everything())
	if want := `content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'"`; !strings.Contains(text, want) {
		t.Errorf("the page does not forbid loading with %s", want)
	}
	text = strings.ReplaceAll(text, `xmlns="http://www.w3.org/2000/svg"`, "") // the name of the format, which nothing fetches
	for _, bad := range []string{"<script", "<link", "<img", "<iframe", "<object", "<form", "@import", "src=", "javascript:", "http:", "https:", " on", "url(h"} {
		if at := strings.Index(text, bad); at >= 0 && (bad != " on" || regexp.MustCompile(` on[a-z]+=`).MatchString(text)) {
			t.Errorf("the page holds %s: %.80s", bad, text[at:])
		}
	}
	for _, to := range regexp.MustCompile(`href="([^"]*)"`).FindAllStringSubmatch(text, -1) {
		if to[1][0] != '#' {
			t.Errorf("a link leads to %s", to[1])
		}
	}
}

// Names are there once, and what refers to one finds it: links, grounds of drawings.
func TestNamesOfThePageAreWhole(t *testing.T) {
	text := html(t, everything())
	ids := map[string]bool{}
	for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(text, -1) {
		if ids[m[1]] {
			t.Errorf("the id %s stands twice", m[1])
		}
		ids[m[1]] = true
	}
	refs := regexp.MustCompile(`(?:href="|"url\()#([^")]*)`).FindAllStringSubmatch(text, -1)
	if len(refs) < 16 { // two links and two grounds for each of seven drawings
		t.Errorf("only %d references were found", len(refs))
	}
	for _, m := range refs {
		if !ids[m[1]] {
			t.Errorf("nothing is called %s", m[1])
		}
	}
	if !strings.Contains(text, "a link to nothing.") {
		t.Error("a link to what the page does not have is no plain text")
	}
}

// What those need who cannot see, or not well: a language, heads in order, heads of tables with their direction, names of
// drawings, questions with names of their own.
func TestThePageCanBeRead(t *testing.T) {
	text := html(t, everything())
	if !strings.HasPrefix(text, "<!doctype html>\n<html lang=\"en\">") {
		t.Errorf("the page begins with %.40q", text)
	}
	level := 0
	heads := regexp.MustCompile(`<h([1-6])>`).FindAllStringSubmatch(text, -1)
	for _, m := range heads {
		next := int(m[1][0] - '0')
		if next > level+1 || next == 1 && level > 0 {
			t.Errorf("a head of level %d follows one of level %d", next, level)
		}
		level = next
	}
	if len(heads) < 10 {
		t.Errorf("only %d heads", len(heads))
	}
	scopes := map[string]int{}
	for _, m := range regexp.MustCompile(`<th( scope="(col|row|rowgroup)")?[ >]`).FindAllStringSubmatch(text, -1) {
		scopes[m[2]]++
	}
	if scopes[""] > 0 || scopes["col"] != 9 || scopes["row"] != 60 || scopes["rowgroup"] != 3 {
		t.Errorf("heads of tables by their direction: %v", scopes)
	}
	drawings := strings.Split(text, "<svg ")[1:]
	if len(drawings) != 7 {
		t.Errorf("%d drawings", len(drawings))
	}
	for _, d := range drawings {
		if !strings.Contains(d[:strings.Index(d, ">")], `role="img"`) || !regexp.MustCompile(`^[^>]*>\s*<title>[^<]+</title>`).MatchString(d) {
			t.Errorf("a drawing has no name: %.120s", d)
		}
	}
	for name, want := range map[string]int{`<fieldset>`: 2, `<legend>`: 2, `<input type="radio" name="q1">`: 3, `<input type="radio" name="q2">`: 2, `<details>`: 1, `<summary><h2>The answer</h2></summary>`: 1} {
		if got := strings.Count(text, name); got != want {
			t.Errorf("%s stands %d times, want %d", name, got, want)
		}
	}
}

// Every text keeps the contrast that small letters need (WCAG 2.2 AA, 4.5) on every ground it may stand on.
func TestColoursCanBeRead(t *testing.T) {
	for name, pair := range map[string][2]colour{
		"ink on white": {ink, white}, "soft on white": {soft, white}, "ink on shade": {ink, shade}, "soft on shade": {soft, shade},
		"grave on white": {bad, white}, "grave on shade": {bad, shade}, "link on white": {accent, white}, "link on shade": {accent, shade},
		"ink on the deepest tint": {ink, tint(1)}, "link on a tint": {accent, tint(0)},
	} {
		if c := ui.Contrast(pair[0], pair[1]); c < 4.5 {
			t.Errorf("%s: %.2f", name, c)
		}
	}
	if light, deep := tint(0.2), tint(0.9); ui.Luminance(light) <= ui.Luminance(deep) || tint(7) != tint(1) || tint(-1) != white {
		t.Errorf("tints: %v, %v, beyond the ends %v and %v", light, deep, tint(7), tint(-1))
	}
	for _, use := range regexp.MustCompile(`[^-]color:([^;}]*)`).FindAllStringSubmatch(style, -1) {
		if !strings.HasPrefix(use[1], "var(--") {
			t.Errorf("the form names the colour %s, which this test does not see", use[1])
		}
	}
}

// Weights are told by shapes and words; a row of blocks shares the width as it is told.
func TestWeightsHaveShapes(t *testing.T) {
	seen := map[string]bool{}
	for w := Well; w <= Grave; w++ {
		if seen[shapes[w]] || len(ui.Missing(shapes[w])) > 0 {
			t.Errorf("weight %d has the shape %q", w, shapes[w])
		}
		seen[shapes[w]] = true
		if got := string(rich(Sign(w, "word"), nil)); !strings.Contains(got, shapes[w]+"</span> word") {
			t.Errorf("weight %d is shown as %s", w, got)
		}
		if got := Plain("a " + Sign(w, "word") + " and " + Strong("more") + Ref("x", "!")); got != "a "+shapes[w]+" word and more!" {
			t.Errorf("weight %d is told as %q", w, got)
		}
	}
}

func TestBlocksShareTheWidth(t *testing.T) {
	for _, c := range []struct {
		b    Beside
		want []float64
	}{
		{Beside{Blocks: make([]Block, 2)}, []float64{0.5, 0.5}},
		{Beside{Blocks: make([]Block, 5), Across: 3}, []float64{1. / 3, 1. / 3, 1. / 3}},
		{Beside{Blocks: make([]Block, 2), Share: []int{30, 10}}, []float64{0.75, 0.25}},
		{Beside{Blocks: make([]Block, 2), Share: []int{30}}, []float64{0.5, 0.5}},
		{Beside{Blocks: make([]Block, 2), Across: 9}, []float64{0.5, 0.5}},
	} {
		got := c.b.shares()
		if len(got) != len(c.want) {
			t.Errorf("%+v: %v", c.b, got)
			continue
		}
		for i := range got {
			if d := got[i] - c.want[i]; d > 1e-9 || d < -1e-9 {
				t.Errorf("%+v: %v, want %v", c.b, got, c.want)
			}
		}
	}
}
