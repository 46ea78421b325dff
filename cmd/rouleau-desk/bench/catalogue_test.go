// All that a bench says comes from the catalogue or from the scenario: in a language without a single English letter no
// English is left.

package bench_test

import (
	"regexp"
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
)

var (
	placeOfValue = regexp.MustCompile(`%[-+# 0-9.\[\]]*[a-zA-Z%]`)
	english      = regexp.MustCompile(`[A-Za-z][A-Za-z' ,.?!/-]*[A-Za-z]`)
)

// foreign is a text in a language of one letter; places for values stay.
func foreign(text string) string {
	strange := func(s string) string { return regexp.MustCompile(`[A-Za-z]`).ReplaceAllString(s, "à") }
	out := ""
	for text != "" {
		at := placeOfValue.FindStringIndex(text)
		if at == nil {
			return out + strange(text)
		}
		out, text = out+strange(text[:at[0]])+text[at[0]:at[1]], text[at[1]:]
	}
	return out
}

func TestAllWordsComeFromTheCatalogueOrTheScenario(t *testing.T) {
	all := words.Texts()
	for k, text := range all {
		all[k] = foreign(text)
	}
	if err := words.Use(all); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { words.Use(nil) })
	b := sit(t, sizes[3], false)
	source := strings.Join(strings.Fields(string(spine(t).Source)), " ")
	seen := map[string]bool{}
	look := func() {
		b.Idle()
		b.Idle()
		for _, m := range b.List.Marks {
			for _, phrase := range english.FindAllString(m.Label+"\n"+m.Value+"\n"+m.Why, -1) {
				if !seen[phrase] && !units[phrase] && !strings.Contains(source, phrase) {
					t.Errorf("%q in %q is in no catalogue", phrase, m.Label)
				}
				seen[phrase] = true
			}
		}
	}
	look()
	b.Session.Do([]bench.Act{{Do: bench.GoOn}})
	look()
	b.begin()
	for _, at := range []float64{0, 1850, 2600, 3700, 5000} {
		b.until(at)
		for _, p := range parts {
			b.Desk.Select(p)
			look()
		}
		for b.Desk.Tab = range 3 {
			look()
		}
		for b.Desk.Dialog = bench.LabelDialog; b.Desk.Dialog <= bench.ChartDialog; b.Desk.Dialog++ {
			look()
		}
		b.Desk.Dialog = bench.NoDialog
	}
	if len(seen) < 20 {
		t.Errorf("only %d phrases of the scenario were seen", len(seen))
	}
}
