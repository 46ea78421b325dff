// Longer languages: every text is stretched by a third, and the bench must still show all of it.

package bench_test

import (
	"strings"
	"testing"
	"unicode"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
)

// stretch is the share by which texts become longer: what translations from English into German or Finnish take (common
// practice of those who translate screens).
const stretch = 0.35

// units and signs stay what they are in any language.
var units = map[string]bool{"mL": true, "mL/min": true, "mmHg": true, "g/dL": true, "g/L": true, "mmol/L": true, "IU/mL": true,
	"rpm": true, "Hct": true, "Hb": true, "L": true, "s": true, "h": true, "min": true, "mm": true, "kg": true}

// stretched is a text with each of its words longer by a third; places for values stay.
func stretched(text string) string {
	tokens := strings.Split(text, " ")
	owed := 0.0
	for i, t := range tokens {
		word := strings.TrimFunc(t, func(r rune) bool { return !unicode.IsLetter(r) })
		if word == "" || units[strings.Trim(t, ",.;:()")] || strings.ContainsAny(t, "%×\n") {
			continue
		}
		letters := []rune(word)
		owed += stretch * float64(len(letters)+1)
		n := min(int(owed), len(letters))
		owed -= float64(n)
		tokens[i] = strings.Replace(t, word, word+strings.ToLower(string(letters[len(letters)-n:])), 1)
	}
	return strings.Join(tokens, " ")
}

func speakLong(t *testing.T) {
	t.Helper()
	long := words.Texts()
	plain, more := 0, 0
	for k, text := range long {
		if strings.HasPrefix(k, "key.") && k != "key.hold" && k != "key.again" {
			continue
		}
		long[k] = stretched(text)
		plain, more = plain+len(text), more+len(long[k])
	}
	if by := float64(more)/float64(plain) - 1; by < 0.3 || by > 0.4 {
		t.Fatalf("texts became longer by %.0f %%, want about 35", 100*by)
	}
	if err := words.Use(long); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { words.Use(nil) })
}

func TestLongWordsFitToo(t *testing.T) {
	speakLong(t)
	b := sit(t, sizes[0], false)
	b.everyScreen(t, 0, 400, 1850, 2600, 3300, 3700, 5000)
	if !b.HasText(words.Say("panel.stop")) {
		t.Error("the screens do not speak the language in use")
	}
	b.Session.Do([]bench.Act{{Do: bench.ToggleTruth}})
	b.panels(t, "truth")
}
