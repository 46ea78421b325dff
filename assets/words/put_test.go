// Lines said in every frame are those Say gives, and cost nothing when they were said before.

package words_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"rouleau/assets/words"
)

var verbs = regexp.MustCompile(`%[0-9.]*[a-z]`)

// Every text with a place for a value is filled in both ways.
func TestALineIsWhatSayGives(t *testing.T) {
	n := 0
	for _, key := range words.Keys() {
		var args []any
		for i, v := range verbs.FindAllString(strings.ReplaceAll(words.Say(key), "%%", ""), -1) {
			switch v[len(v)-1] {
			case 'd':
				args = append(args, []any{0, -7, int64(123456), uint64(18446744073709551615)}[i%4])
			case 's', 'q':
				args = append(args, []string{"saline", "", "µ “quoted” \"too\""}[i%3])
			default:
				args = append(args, []float64{0, 12.345678, -0.05, 1e21, 99.995}[i%5])
			}
		}
		if len(args) == 0 {
			continue
		}
		n++
		for range 2 {
			if got, want := words.Line(key, args...), words.Say(key, args...); got != want {
				t.Errorf("%s: %q, want %q", key, got, want)
			}
		}
	}
	if n < 50 {
		t.Errorf("only %d texts have places for values", n)
	}
}

func TestALineSaidBeforeCostsNothing(t *testing.T) {
	name, seconds, count := fmt.Sprint("pack"), 61.5, 300
	n := testing.AllocsPerRun(100, func() {
		words.Line("top.times", count)
		words.Line("log.lag", seconds)
		words.Line("log.acknowledged", name)
	})
	if n != 0 {
		t.Errorf("%g allocations", n)
	}
	if got := words.Line("log.acknowledged"); got != words.Say("log.acknowledged") {
		t.Errorf("without values: %q", got)
	}
	if got := words.Line("no.such"); got != "‹no.such›" {
		t.Errorf("a missing key: %q", got)
	}
	if got := words.Line("log.acknowledged", struct{}{}); !strings.Contains(got, "‹?›") {
		t.Errorf("a value of no known kind is not shown as a gap: %q", got)
	}
}
