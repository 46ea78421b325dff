package report

import (
	"bytes"
	"context"
	"html"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"rouleau/assets/words"
	"rouleau/cmd/forks"
	"rouleau/cmd/rouleau/trace"
	"rouleau/scenarios"
	"rouleau/scoring/debrief"
	"rouleau/sim"
)

// unfit are traces of a value that was not there, or of words that did not fit.
var unfit = []string{"%!", "NaN", "+Inf", "-Inf", "∞", "‹", "<no value>", "<nil>", " ,", ", ,", "..", " ;", ": ;"}

var (
	tags     = regexp.MustCompile(`(?s)<style>.*?</style>|<svg .*?</svg>|<[^>]*>`)
	svgTexts = regexp.MustCompile(`(?s)<text[^>]*>(.*?)</text>`)
	heads    = regexp.MustCompile(`(?s)<(h[1-6]|th|dt|legend|title)[^>]*>(.*?)</(?:h[1-6]|th|dt|legend|title)>`)
	emptyRow = regexp.MustCompile(`(?s)<tr[^>]*>(?:\s*<t[dh][^>]*></t[dh]>)+\s*</tr>`)
)

// readable is what a person reads on a page.
func readable(text string) string {
	return html.UnescapeString(tags.ReplaceAllString(text, " "))
}

// Every case of the library, played by one who works too fast, has a debrief that can be read; the longest is left after a while.
func TestEveryCaseHasADebrief(t *testing.T) {
	for _, name := range scenarios.Library() {
		t.Run(name, func(t *testing.T) {
			stop := int64(0)
			if name == "pelvis-loss-over-hours" { // it takes as long as all others together
				stop = 3600 * sim.TicksPerSecond
			}
			r, err := Of(context.Background(), attemptOf(t, name, "hasty", 1, stop), forks.Plan{})
			if err != nil {
				t.Fatal(err)
			}
			made := r.Page()
			file, err := made.HTML()
			if err != nil {
				t.Fatal(err)
			}
			text := string(file)
			readsWell(t, text)
			everyDecision(t, r, text)
			paper, err := made.PDF()
			if err != nil || !bytes.HasPrefix(paper, []byte("%PDF-")) || !bytes.HasSuffix(bytes.TrimSpace(paper), []byte("%%EOF")) {
				t.Errorf("the PDF of %d bytes is not whole: %v", len(paper), err)
			}
			var table bytes.Buffer
			if err := trace.Write(&table, r.Debrief.Record.Run); err != nil {
				t.Fatal(err)
			}
			if rows := bytes.Count(table.Bytes(), []byte("\n")); rows != len(r.Debrief.Record.Run.Trace)+1 {
				t.Errorf("the trace has %d rows for %d seconds", rows, len(r.Debrief.Record.Run.Trace))
			}
			for what, content := range map[string]string{"the trace": table.String(), "the terminal": strings.Join(r.Lines(), "\n")} {
				for _, bad := range []string{"%!", "NaN", "Inf,", "+Inf", "‹"} {
					if strings.Contains(content, bad) {
						t.Errorf("%s holds %q", what, bad)
					}
				}
			}
		})
	}
}

// readsWell looks for what nobody should read: words that did not fit, heads without words, rows without a cell that says anything.
func readsWell(t *testing.T, text string) {
	t.Helper()
	said := readable(text)
	for _, m := range svgTexts.FindAllStringSubmatch(text, -1) {
		said += "\n" + html.UnescapeString(m[1])
	}
	for _, bad := range unfit {
		if k := strings.Index(said, bad); k >= 0 {
			t.Errorf("the page says %q: …%.80s", bad, said[max(0, k-40):])
		}
	}
	for _, m := range heads.FindAllStringSubmatch(text, -1) {
		if strings.TrimSpace(readable(m[2])) == "" && m[1] != "th" { // a column of signs needs no head
			t.Errorf("a head says nothing: %s", m[0])
		}
	}
	if row := emptyRow.FindString(text); row != "" {
		t.Errorf("a row says nothing: %s", row)
	}
	if k := strings.Index(text, "<p></p>"); k >= 0 || strings.Contains(text, "<li></li>") {
		t.Error("a paragraph says nothing")
	}
}

// everyDecision requires each decision on the page, in words that begin and end as part of a sentence does.
func everyDecision(t *testing.T, r *Report, text string) {
	t.Helper()
	said := readable(text)
	for i := range r.Told.Lines {
		l := &r.Told.Lines[i]
		title := l.Cost.Decision.Title
		if !strings.Contains(said, title) {
			t.Errorf("the page does not hold %q", title)
		}
		first, _ := utf8.DecodeRuneInString(title)
		last, _ := utf8.DecodeLastRuneInString(title)
		if title != strings.TrimSpace(title) || unicode.IsUpper(first) || strings.ContainsRune(".,;:", last) || slices.Contains(strings.Fields(title), "instead") && strings.HasSuffix(title, "instead of") {
			t.Errorf("%q does not read as a part of a sentence", title)
		}
		changed := r.changed(l)
		if changed == "" && l.Points != debrief.PointsText(0) {
			t.Errorf("%q: %s points, and it is not said of what", title, l.Points)
		}
		if strings.HasPrefix(changed, strings.TrimSuffix(words.Say("changes.but", ""), " ")+" ") {
			t.Errorf("%q: what it changed begins with %q", title, changed)
		}
	}
	for _, key := range []string{"report.verdict_head", "report.timeline_head", "report.good_head", "report.costs_head", "report.questions_head", "report.method_head"} {
		if !strings.Contains(said, words.Say(key)) {
			t.Errorf("the section %q is missing", words.Say(key))
		}
	}
}
