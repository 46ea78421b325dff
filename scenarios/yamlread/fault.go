// This file holds what a reader of bad files gets to see: one Fault per slip,
// its place, the source line with a caret, what was expected and the nearest name.

// Package yamlread turns a YAML file into Go values and reports every fault of
// the file at once, each at its line and column. It works from struct tags and
// knows nothing about what the values mean; the meaning is checked by its
// callers, who add their own faults through Doc.
package yamlread

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/rivo/uniseg"
)

// Place is a position in a file: line and column count from one, the column in
// characters (not bytes, not screen cells).
type Place struct{ Line, Col int }

// Fault is one thing wrong with a file. Message says what is wrong, Expected
// what would be right, Nearest the likely intended word; the last two may be empty.
type Fault struct {
	File string
	Place
	Path     string // of the value, such as phases[2].bleeding_ml_min; empty for the whole file
	Message  string
	Expected string
	Nearest  string
	Source   string // the whole line the fault is on; empty where no line is to be shown
}

// Faults is a list of faults in the order of their places.
type Faults []Fault

// sort orders by place and leaves faults of one place in the order they were found.
func (fs Faults) sort() {
	slices.SortStableFunc(fs, func(a, b Fault) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Col, b.Col))
	})
}

// Err is nil where there are no faults, so that it can be returned as an error.
func (fs Faults) Err() error {
	if len(fs) == 0 {
		return nil
	}
	return fs
}

// Error is the text that WriteTo writes, without the last line end.
func (fs Faults) Error() string {
	var b strings.Builder
	for _, f := range fs {
		b.WriteString(f.String())
	}
	return strings.TrimSuffix(b.String(), "\n")
}

// WriteTo writes every fault as String gives it.
func (fs Faults) WriteTo(w io.Writer) (int64, error) {
	var sum int64
	for _, f := range fs {
		n, err := io.WriteString(w, f.String())
		sum += int64(n)
		if err != nil {
			return sum, err
		}
	}
	return sum, nil
}

// String is file:line:col: message, then the source line with a caret, then
// what was expected and the nearest name, each on its own line.
func (f Fault) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s:%d:%d: %s\n", printable(f.File), f.Line, f.Col, printable(f.Message))
	if f.Source != "" {
		text, pad := window(f.Source, f.Col)
		fmt.Fprintf(&b, "%5d | %s\n", f.Line, text)
		fmt.Fprintf(&b, "      | %s^\n", pad)
	}
	if f.Expected != "" {
		fmt.Fprintf(&b, "        expected: %s\n", printable(f.Expected))
	}
	if f.Nearest != "" {
		fmt.Fprintf(&b, "        nearest: %s\n", printable(f.Nearest))
	}
	return b.String()
}

// How much of a long source line is shown before and after the caret.
const (
	shownBefore = 60
	shownAfter  = 60
)

// window cuts the part of a source line around a column, and gives the blank
// text that brings a caret below that column on a screen of equal cells: a tab
// stays a tab, because both lines begin with the same number of cells, and a
// wide character takes two blanks.
func window(source string, col int) (text, pad string) {
	from, at, to := 0, len(source), len(source)
	n := 1 // the column that begins at byte i
	for i := range source {
		switch n {
		case col - shownBefore:
			from = i
		case col:
			at = i
		case col + shownAfter:
			to = i
		}
		if n++; to == i {
			break
		}
	}
	lead, tail := "", ""
	if from > 0 {
		lead = "…"
	}
	if to < len(source) {
		tail = "…"
	}
	before := lead + printable(source[from:at])
	var b strings.Builder
	for i, part := range strings.Split(before, "\t") {
		if i > 0 {
			b.WriteByte('\t')
		}
		b.WriteString(strings.Repeat(" ", uniseg.StringWidth(part)))
	}
	return strings.TrimRight(before+printable(source[at:to])+tail, " "), b.String()
}

// printable replaces what could confuse or command a terminal (control and
// direction characters, broken UTF-8) with a replacement mark; tabs stay.
func printable(s string) string {
	return strings.Map(func(c rune) rune {
		switch {
		case c == '\t' || unicode.IsPrint(c):
			return c
		case unicode.Is(unicode.Zs, c):
			return ' '
		}
		return utf8.RuneError
	}, s)
}

// shown quotes a piece of the file for a message, cut to a bearable length.
func shown(s string) string {
	s = strings.NewReplacer("\n", `\n`, "\r", `\r`, "\t", `\t`).Replace(clip(s))
	return `"` + printable(s) + `"`
}

// clip shortens a piece of the file for a message.
func clip(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		return string(r[:most]) + "…"
	}
	return s
}
