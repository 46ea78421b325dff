package group

import (
	"bytes"
	"cmp"
	"encoding/csv"
	"slices"
	"strconv"
	"strings"

	"rouleau/scoring/cells"
)

// This file writes the key to the letters for who teaches the class and asks for it: whose each is, and which file each attempt
// is. Nothing else that is made of a group says so.

var keyColumns = []string{"letter", "attempt", "played_by", "case", "version", "text", "mode", "played", "file"}

// Key is the key as CSV, a row for each attempt of which something is told, by letters.
func (g *Group) Key() ([]byte, error) {
	var rows [][]string
	for _, s := range g.told() {
		for _, e := range s.entries {
			rows = append(rows, []string{g.people[e.person], strconv.Itoa(e.number), cells.Text(strings.TrimSpace(e.attempt.Operator)), cells.Text(s.id), strconv.Itoa(s.version), s.text, s.mode,
				cells.Text(e.attempt.When), cells.Text(e.path)})
		}
	}
	slices.SortStableFunc(rows, func(a, b []string) int {
		return cmp.Or(cmp.Compare(len(a[0]), len(b[0])), strings.Compare(a[0], b[0])) // AA comes after Z
	})
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.Write(keyColumns)
	w.WriteAll(rows)
	return b.Bytes(), w.Error()
}
