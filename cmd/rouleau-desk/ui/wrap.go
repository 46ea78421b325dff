// Breaking text into lines. Lines are parts of the given string, so wrapping
// allocates nothing; a word wider than the line (long compound words of some
// languages) is broken where a hyphen or a slash stands, else between letters.

package ui

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// NextLine splits off the first line of s that fits into width. A newline ends
// a line. It always takes at least one letter, so that it comes to an end.
func NextLine(s string, width, size float32, w Weight, tab bool) (line, rest string) {
	limit := strings.IndexByte(s, '\n')
	para := s
	if limit >= 0 {
		para = s[:limit]
	}
	n, _ := FitText(para, width, size, w, tab)
	if n == len(para) {
		if limit >= 0 {
			return para, s[limit+1:]
		}
		return para, ""
	}
	// The space that did not fit is a good place to break.
	if para[n] == ' ' {
		n = withUnit(para, n)
		return strings.TrimRight(para[:n], " "), strings.TrimLeft(s[n:], " ")
	}
	if i := strings.LastIndexByte(para[:n], ' '); i > 0 {
		i = withUnit(para, i)
		return strings.TrimRight(para[:i], " "), s[i+1:]
	}
	if i := strings.LastIndexAny(para[:n], "-/–"); i > 0 {
		_, l := utf8.DecodeRuneInString(para[i:])
		return para[:i+l], s[i+l:]
	}
	if n == 0 {
		_, n = utf8.DecodeRuneInString(para)
	}
	return para[:n], s[n:]
}

// units are what is kept on the line of its number.
var units = [...]string{"mL", "mL/min", "L", "s", "min", "h", "%", "g/dL", "g/L", "mmol/L", "IU/mL", "mmHg", "mm", "rpm", "drops/min", "/min"}

// withUnit moves a break between a number and its unit to the space before the number.
func withUnit(para string, i int) int {
	if i == 0 || para[i-1] < '0' || para[i-1] > '9' {
		return i
	}
	next, _, _ := strings.Cut(para[i+1:], " ")
	if !slices.Contains(units[:], strings.TrimRight(next, ".,:;")) {
		return i
	}
	if j := strings.LastIndexByte(para[:i], ' '); j > 0 {
		return j
	}
	return i
}

// CountLines is the number of lines s takes at width.
func CountLines(s string, width, size float32, w Weight, tab bool) int {
	n := 0
	for s != "" {
		_, s = NextLine(s, width, size, w, tab)
		n++
	}
	return n
}
