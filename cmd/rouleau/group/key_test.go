package group

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"rouleau/scoring/attempt"
)

// The key leads from each letter to the person and the files, to those of whom something is told and to nobody else.
func TestTheKey(t *testing.T) {
	g := played(t, class(t), Wishes{})
	text, err := g.Key()
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil || len(rows) != 5 || !slices.Equal(rows[0], keyColumns) {
		t.Fatalf("%d rows, %v: %v", len(rows), err, rows)
	}
	whose := map[string]string{}
	for i, row := range rows[1:] {
		a, err := attempt.Load(row[8])
		if err != nil {
			t.Fatal(err)
		}
		if who := strings.TrimSpace(a.Operator); row[2] != who || whose[row[0]] != "" && whose[row[0]] != who || row[3] != a.Scenario.ID || row[6] != a.Mode || row[7] != a.When {
			t.Errorf("%q is an attempt of %s at %s", row, who, a.When)
		}
		whose[row[0]] = row[2]
		if i > 0 && rows[i][0] > row[0] {
			t.Errorf("%s stands before %s", rows[i][0], row[0])
		}
	}
	if got := slices.Sorted(maps.Keys(whose)); !slices.Equal(got, []string{"A", "B", "C"}) {
		t.Errorf("letters %v", got)
	}
	for _, s := range g.sections {
		for _, e := range s.entries {
			if !slices.ContainsFunc(rows, func(row []string) bool {
				return row[0] == g.people[e.person] && row[1] == fmt.Sprint(e.number) && row[8] == e.path
			}) {
				t.Errorf("%s is not in the key", e.path)
			}
		}
	}
}
