package schema

import (
	"flag"
	"fmt"
	"os"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
)

var update = flag.Bool("update", false, "write FORMAT.md anew, as go generate does")

func TestPageIsCurrent(t *testing.T) {
	got, err := Page()
	if err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile("../FORMAT.md", got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	kept, err := os.ReadFile("../FORMAT.md")
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(strings.Split(strings.ReplaceAll(string(kept), "\r\n", "\n"), "\n"), strings.Split(string(got), "\n")); diff != "" {
		t.Errorf("the types have changed: run go generate ./scenarios (- kept, + now):\n%s", diff)
	}
}

// Every key has a row with something in each cell, and every link leads somewhere.
func TestPageHoldsEveryKey(t *testing.T) {
	page, err := Page()
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(string(page), "\n")
	rows := 0
	if err := yamlread.Walk(reflect.TypeFor[scenarios.File](), func(f yamlread.Field) {
		for _, line := range lines {
			if strings.HasPrefix(line, "| `"+f.Key+"` | "+cell(f.Doc)+" |") {
				rows++
				cells := strings.Split(strings.ReplaceAll(line, `\|`, ""), "|")
				if len(cells) != 8 {
					t.Errorf("%s has %d cells: %s", f.Path, len(cells), line)
				}
				below := strings.Contains(line, "see [below]")
				if strings.HasSuffix(line, "| – |") && !below || strings.HasSuffix(line, "| `plain words` |") {
					t.Errorf("%s has no example", f.Path)
				}
				return
			}
		}
		t.Errorf("%s is not there", f.Path)
	}); err != nil || rows < 150 {
		t.Errorf("%d rows, %v", rows, err)
	}
	for _, part := range strings.Split(string(page), "(#")[1:] {
		link, _, _ := strings.Cut(part, ")")
		if !leads(lines, link) {
			t.Errorf("#%s leads nowhere", link)
		}
	}
}

// Every word of the lists is explained, and nothing else is.
func TestWordsOfListsAreExplained(t *testing.T) {
	for _, of := range []struct {
		what     string
		words    []string
		meanings map[string]string
	}{{"events", kinds(), eventMeanings}, {"situations", situations(), situationMeanings}, {"acts", scenarios.VerbNames(), actMeanings}} {
		if len(of.words) < 15 || len(of.words) != len(of.meanings) {
			t.Errorf("%s: %d words, %d meanings", of.what, len(of.words), len(of.meanings))
		}
		for _, w := range of.words {
			if len(of.meanings[w]) < 8 {
				t.Errorf("%s: %s is not explained", of.what, w)
			}
		}
	}
}

// What fails a run in every case, and the words that operators act on, stand on the page.
func TestPageListsWhatTheAuthorDoesNotWrite(t *testing.T) {
	page, err := Page()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range scenarios.Criticals {
		if !strings.Contains(string(page), "| `"+c.Name+"` | "+c.Meaning+" |") || len(c.Meaning) < 10 {
			t.Errorf("%s is not explained", c.Name)
		}
	}
	for _, p := range scenarios.Policies {
		if !strings.Contains(string(page), "| "+p.Words+" | they ") {
			t.Errorf("%q is not explained", p.Words)
		}
	}
	if c := scenarios.Criticals[len(scenarios.Criticals)-1]; !strings.Contains(c.Meaning, fmt.Sprintf("over %g mL", scenarios.ConcealedML)) {
		t.Errorf("the page says of %s: %s", c.Name, c.Meaning)
	}
}

func leads(lines []string, link string) bool {
	for _, line := range lines {
		title, ok := strings.CutPrefix(line, "## ")
		if ok && strings.ReplaceAll(anchor(strings.ToLower(strings.Trim(title, "`"))), " ", "-") == link {
			return true
		}
	}
	return false
}
