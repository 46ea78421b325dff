// Finding a row of a list by typing how it begins, as lists of files have it.

package ui

import (
	"strings"
	"unicode"
)

// seekMS is the pause after which letters begin a new search.
const seekMS = 1000

// seekState is what was typed to find a row.
type seekState struct {
	id    ID
	typed string
	last  float64 // clock of the newest letter
}

// seek takes the letters of this frame and gives the row they lead to: the next that begins with all that was typed; one
// letter again and again goes from each row that begins with it to the next.
func (c *Core) seek(b ListBox, sel int) int {
	c.typingNow = typesText
	if c.runesUsed || c.in.Mods&(ModCtrl|ModAlt) != 0 {
		return sel
	}
	k := &c.seeking
	for _, r := range c.in.Runes {
		if k.id != b.ID || c.clockMS-k.last > seekMS {
			*k = seekState{id: b.ID}
		}
		if !unicode.IsPrint(r) || r == ' ' && k.typed == "" {
			continue // the space bar presses a row
		}
		k.typed, k.last = k.typed+string(unicode.ToLower(r)), c.clockMS
		sel = k.find(b.Rows, sel)
		c.focusShown = true
	}
	c.runesUsed = true
	return sel
}

func (k *seekState) find(rows []Row, sel int) int {
	want, from := k.typed, max(sel, 0)
	if one := []rune(want); len(one) == 1 || strings.Count(want, string(one[0])) == len(one) {
		want, from = string(one[0]), sel+1
	}
	for i := range rows {
		at := (from + i) % len(rows)
		if strings.HasPrefix(strings.ToLower(rows[at].Label), want) {
			return at
		}
	}
	return sel
}
