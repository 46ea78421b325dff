package cli

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
	"unicode"

	"github.com/rivo/uniseg"

	"rouleau/sim"
)

// How text and numbers are laid out.

// columns is the widest a line may be.
const columns = 100

// wrap breaks a text into lines that begin with first and then with rest. Line ends of the text stay.
func wrap(text, first, rest string) string {
	var b strings.Builder
	for i, paragraph := range strings.Split(text, "\n") {
		line := rest
		if i == 0 {
			line = first
		} else {
			b.WriteByte('\n')
		}
		used, empty := uniseg.StringWidth(line), true
		b.WriteString(line)
		for _, word := range strings.Fields(paragraph) {
			width := uniseg.StringWidth(word)
			if !empty && used+1+width > columns {
				b.WriteString("\n" + rest)
				used, empty = uniseg.StringWidth(rest), true
			}
			if !empty {
				b.WriteByte(' ')
				used++
			}
			b.WriteString(word)
			used, empty = used+width, false
		}
	}
	return b.String()
}

// tame replaces what a terminal would obey and not show: names and texts come from files that anybody may have written.
func tame(text []byte) []byte {
	return bytes.Map(func(r rune) rune {
		if unicode.IsControl(r) && r != '\n' && r != '\t' {
			return '\ufffd'
		}
		return r
	}, text)
}

// clock writes the time of a tick as hours, minutes, seconds.
func clock(tick int64) string {
	s := tick / sim.TicksPerSecond
	return fmt.Sprintf("%d:%02d:%02d", s/3600, s/60%60, s%60)
}

// digits writes a computed value with four digits, more of them only before the point.
func digits(v float64) string {
	switch a := max(v, -v); {
	case a >= 1000:
		return strconv.FormatFloat(v, 'f', 0, 64)
	case a >= 1e-7 && a < 1e-4: // where four digits would bring an exponent
		return strings.TrimRight(strconv.FormatFloat(v, 'f', 8, 64), "0")
	}
	return strconv.FormatFloat(v, 'g', 4, 64)
}
