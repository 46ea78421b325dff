package preview

import (
	"bytes"
	"encoding/xml"
	"errors"
	"html"
	"io"
	"regexp"
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
	"rouleau/scoring"
)

func pageOf(t *testing.T, sc *scenarios.Scenario, warnings yamlread.Faults) string {
	t.Helper()
	made, err := Page(sc, 1, warnings).HTML()
	if err != nil {
		t.Fatal(err)
	}
	return string(made)
}

func open(t *testing.T, name string) *scenarios.Scenario {
	t.Helper()
	sc, err := scenarios.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	return sc
}

// plainText is what a page says, without its tags.
func plainText(page string) string {
	return html.UnescapeString(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(page, "\n"))
}

// Everything an author wrote and everything that was found out stands on the page.
func TestThePageTellsTheWholeCase(t *testing.T) {
	for _, name := range []string{"steady-oozing-spine", "caesarean-rhd-negative", "first-bowl"} {
		sc := open(t, name)
		page := pageOf(t, sc, nil)
		says := plainText(page)
		need := func(what, text string) {
			if text = strings.TrimSpace(text); text != "" && !strings.Contains(says, text) {
				t.Errorf("%s: the page does not tell the %s %q", name, what, text)
			}
		}
		need("title", sc.Title)
		need("caution", words.Say("cli.caution"))
		need("background", sc.Story.Background)
		need("operation", sc.Story.Operation)
		for _, line := range append(append([]string{sc.Right.Why}, sc.Cautions...), sc.Sources...) {
			need("line", line)
		}
		for _, p := range sc.Phases {
			need("phase", p.Name)
		}
		for _, e := range sc.Events {
			need("words", e.Says)
		}
		for _, o := range sc.Objectives {
			need("objective", o.Text)
		}
		for i := range sc.Criteria {
			m, _ := scenarios.MeasureNamed(sc.Criteria[i].Measure)
			need("measure", sc.Criteria[i].Measure)
			need("meaning", m.Meaning)
			need("note", sc.Criteria[i].Note)
		}
		for _, v := range sc.Varies([]uint64{1}) {
			need("quantity", v.Doc)
		}
		if n := strings.Count(page, "<svg"); n != 1 {
			t.Errorf("%s: %d drawings", name, n)
		}
	}
}

func TestThePageSaysWhatBothCameTo(t *testing.T) {
	sc := open(t, "steady-oozing-spine")
	yard := scoring.PlayYardstick(sc, 1, false)
	says := plainText(pageOf(t, sc, nil))
	for _, want := range []string{
		words.Say("preview.failed", 0.0), scoring.ShowUnit(yard.LowestHbGDL, "g/dL"), "passed, ",
		"0:13:00 to 0:14:00", // when an event may come
		"350 to 1500 mL", "no point at 100 or 2500",
		"within 2 min; right answer: yes",
	} {
		if !strings.Contains(says, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
}

// The second sucker has a row of its own while it is in use, and none where there is none.
func TestTheSecondSuckerHasARow(t *testing.T) {
	row := words.Say("course.of", words.Say("course.second_sucker"), words.Say("preview.steady"))
	for name, want := range map[string]bool{"caesarean-rhd-negative": true, "steady-oozing-spine": false} {
		_, drawing, _ := strings.Cut(pageOf(t, open(t, name), nil), "<svg")
		drawing, _, _ = strings.Cut(drawing, "</svg>")
		if got := strings.Contains(plainText("<svg"+drawing), row); got != want {
			t.Errorf("%s: row %v, want %v", name, got, want)
		}
	}
}

func TestThePageLoadsAndRunsNothing(t *testing.T) {
	page := pageOf(t, open(t, "caesarean-rhd-negative"), nil)
	for _, bad := range []string{`<script`, `<link`, `<img`, `<iframe`, `<object`, `@import`, `src=`, `href=`, `javascript:`, `url("`, `url('`, `url(h`} {
		if strings.Contains(strings.ToLower(page), bad) {
			t.Errorf("the page holds %s", bad)
		}
	}
	for _, address := range regexp.MustCompile(`https?://[^"< ]*`).FindAllString(page, -1) {
		if address != "http://www.w3.org/2000/svg" { // the name of the format, which nothing fetches
			t.Errorf("the page names %s", address)
		}
	}
	if !strings.Contains(page, `content="default-src 'none'; style-src 'unsafe-inline';`) {
		t.Error("the page does not forbid loading")
	}
	_, drawing, _ := strings.Cut(page, "<svg")
	drawing, _, _ = strings.Cut(drawing, "</svg>")
	for d := xml.NewDecoder(strings.NewReader("<svg" + drawing + "</svg>")); ; {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatal(err)
		}
	}
}

func TestTheSamePageComesOutTwice(t *testing.T) {
	sc := open(t, "first-bowl")
	a, b := pageOf(t, sc, nil), pageOf(t, sc, nil)
	if a != b {
		t.Error("the same case and seed give another page")
	}
	other, err := Page(sc, 2, nil).HTML()
	if err != nil || bytes.Equal(other, []byte(a)) {
		t.Errorf("another seed gives the same page (%v)", err)
	}
}

// What a file says is shown and never obeyed.
func TestTextsOfTheFileStayTexts(t *testing.T) {
	sc := open(t, "first-bowl")
	const hostile = `<script>alert(1)</script>"'&`
	source := strings.Replace(string(sc.Source), "title: "+sc.Title, `title: '`+strings.ReplaceAll(hostile, "'", "''")+`'`, 1)
	changed, faults := scenarios.Parse("hostile.yaml", []byte(source))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if changed.Title != hostile {
		t.Fatalf("the title is %q", changed.Title)
	}
	warning := yamlread.Fault{File: "hostile.yaml", Place: yamlread.Place{Line: 3, Col: 1}, Message: "warning: " + hostile}
	page := pageOf(t, changed, yamlread.Faults{warning})
	if strings.Contains(page, "<script") {
		t.Error("a text of the file became part of the page")
	}
	if n := strings.Count(html.UnescapeString(page), hostile); n < 3 { // title, heading, warning
		t.Errorf("the title is shown %d times", n)
	}
}

func TestCountingInLetters(t *testing.T) {
	for n, want := range map[int]string{0: "a", 25: "z", 26: "aa", 27: "ab", 51: "az", 52: "ba", 701: "zz", 702: "aaa"} {
		if got := letters(n); got != want {
			t.Errorf("%d is %q, want %q", n, got, want)
		}
	}
}
