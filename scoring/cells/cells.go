// Package cells holds what may stand in a cell of CSV, so that a spreadsheet shows it and runs nothing.
package cells

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// formulaSigns begin a formula; the wide ones of East Asian keyboards too, which some spreadsheets take for the same.
const formulaSigns = "=+-@\t\r\n'＝＋－＠"

// Text is a text for a cell: one that a spreadsheet would take for a formula has ' before it. Numbers that we made ourselves
// need none.
func Text(text string) string {
	if first, _ := utf8.DecodeRuneInString(text); text != "" && strings.ContainsRune(formulaSigns, first) {
		return "'" + text
	}
	return text
}

// Read is the text of a cell that Text made.
func Read(cell string) string { return strings.TrimPrefix(cell, "'") }

// Number is a number for a cell, as short as can be and read back as the same number.
func Number(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }
