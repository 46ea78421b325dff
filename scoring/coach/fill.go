// Readings in texts: {reservoir_ml} becomes what stands on the scale.

package coach

import (
	"strconv"
	"strings"

	"rouleau/scenarios"
)

// Fill puts what can be read now in the place of the names in braces.
func (s *Sight) Fill(text string) string {
	var b strings.Builder
	for {
		before, rest, found := strings.Cut(text, "{")
		name, after, closed := strings.Cut(rest, "}")
		if !found || !closed {
			b.WriteString(text)
			return b.String()
		}
		b.WriteString(before)
		b.WriteString(s.Shown(name))
		text = after
	}
}

// Shown is a reading with its unit, as a person writes it; a dash where there is none.
func (s *Sight) Shown(name string) string {
	v, ok := scenarios.VisibleNamed(name)
	x := s.Value(name)
	switch {
	case !ok || x != x:
		return "–"
	case v.Unit == scenarios.YesNo && x > 0:
		return "yes"
	case v.Unit == scenarios.YesNo:
		return "no"
	}
	number := strconv.FormatFloat(x, 'f', v.Digits, 64)
	if v.Unit == "" {
		return number
	}
	return number + " " + v.Unit
}
