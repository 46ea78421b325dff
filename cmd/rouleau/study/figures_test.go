package study

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"rouleau/scenarios"
	"rouleau/scoring/operators"
	"rouleau/scoring/study"
)

// planted makes rows of the spine case: steady earns everything, others as told.
func planted(t *testing.T, seeds int, other func(r *study.Row)) (*scenarios.Scenario, []*operators.Operator, *study.Table) {
	t.Helper()
	sc, err := scenarios.Open("steady-oozing-spine")
	if err != nil {
		t.Fatal(err)
	}
	var who []*operators.Operator
	for _, name := range []string{"steady", "hasty", "idle"} {
		o, err := operators.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		who = append(who, o)
	}
	table := &study.Table{Criteria: study.Columns(sc)}
	for seed := range seeds {
		for _, o := range who {
			r := study.Row{Case: study.Identity(sc, false), Seed: uint64(seed), Operator: o.Name, Passed: o.Name == "steady", Points: 100, Parts: make([]float64, 6)}
			r.Criteria = slices.Repeat([]float64{1}, len(table.Criteria))
			if o.Name != "steady" {
				r.Points = 60 + float64(seed)
				other(&r)
			}
			table.Rows = append(table.Rows, r)
		}
	}
	return sc, who, table
}

func TestACriterionThatPartsNobodyIsToldOf(t *testing.T) {
	sc, who, table := planted(t, 10, func(r *study.Row) {
		for k := range r.Criteria {
			if k != 0 { // the first criterion gives everybody everything
				r.Criteria[k] = 0
			}
		}
		r.Critical = []string{"air_given"}
	})
	f := Of(sc, who, table)
	broken := f.Broken()
	if len(broken) != 1 || !strings.HasPrefix(broken[0], "nobody who played is told from steady by: "+table.Criteria[0]+" (best AUC 0.50). ") || !slices.Equal(f.Rules, broken) {
		t.Errorf("%q, %q", broken, f.Rules)
	}
	if len(f.Warnings) > 0 { // what breaks a rule is not told once more
		t.Errorf("%q", f.Warnings)
	}
	if v := f.Verdict(); !strings.Contains(v, "does not keep the rules") || !strings.Contains(v, "to mend: 1") {
		t.Error(v)
	}
	if c := f.Criteria[1]; c.Best != 1 || c.AUC[1].N != 10 || c.Difficulty.Value != 0.5 {
		t.Errorf("%+v", c)
	}
	if len(f.Critical) != 1 || f.Critical[0].Share[1].Value != 1 || f.Critical[0].Share[0].Value != 0 {
		t.Errorf("%+v", f.Critical)
	}
	if h := f.Operators[0].Histogram; h[bins-1] != 10 {
		t.Errorf("100 points are not in the last band: %v", h)
	}
}

func TestOneWhoPassesBreaksTheRules(t *testing.T) {
	sc, who, table := planted(t, 10, func(r *study.Row) { r.Passed = true; r.Criteria = make([]float64, len(r.Criteria)) })
	text := strings.Join(Of(sc, who, table).Broken(), "\n")
	for _, want := range []string{"doing nothing passes 100.0 %", "hasty passes 100.0 %"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not among\n%s", want, text)
		}
	}
}

// Rows come back from their file bit for bit, also those of operators whose names a spreadsheet would compute.
func TestRowsComeBack(t *testing.T) {
	_, _, table := planted(t, 3, func(r *study.Row) { r.Points = 100.0 / 3; r.Recovery = 1e-7 })
	table.Rows[0].Operator = "=1+1"
	var b bytes.Buffer
	if err := table.Write(&b); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(b.String(), ",=1") {
		t.Error("a spreadsheet would take an operator's name for a formula")
	}
	again, err := study.Read("runs.csv", &b)
	if err != nil {
		t.Fatal(err)
	}
	slices.SortFunc(table.Rows, study.Less)
	for i := range table.Rows {
		if fmt.Sprint(table.Rows[i]) != fmt.Sprint(again.Rows[i]) {
			t.Errorf("%+v came back as %+v", table.Rows[i], again.Rows[i])
		}
	}
}

func TestSeeds(t *testing.T) {
	got, err := Seeds("3, 1..2,2")
	if err != nil || !slices.Equal(got, []uint64{1, 2, 3}) {
		t.Errorf("%v, %v", got, err)
	}
	for _, bad := range []string{"", "2..1", "a", "1..", "-1", "0..18446744073709551615"} {
		if _, err := Seeds(bad); err == nil {
			t.Errorf("%q was read", bad)
		}
	}
	var all []uint64
	seeds, _ := Seeds("1..10")
	for _, part := range []string{"1/3", "2/3", "3/3"} {
		mine, err := Shard(seeds, part)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, mine...)
	}
	slices.Sort(all)
	if !slices.Equal(all, seeds) {
		t.Errorf("the shares hold %v", all)
	}
}
