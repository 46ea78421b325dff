package study

import (
	"bytes"
	"strings"
	"testing"

	"rouleau/scenarios"
)

// kept is a file of runs as a study keeps it.
func kept(t *testing.T) string {
	t.Helper()
	table := Table{Criteria: []string{"clot_ml", "fill_stop_fraction"}}
	for seed := uint64(1); seed <= 3; seed++ {
		table.Rows = append(table.Rows, Row{Case: "some case", Seed: seed, Operator: "steady", Digest: "0a", Passed: true, Points: 97.5,
			Parts: make([]float64, len(scenarios.Parts)), Criteria: []float64{1, 0.25}, Recovery: 0.75, LengthS: 5000})
	}
	var b bytes.Buffer
	if err := table.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// A damaged file is refused with the line, what is wrong there, and what can be done; never read in part.
func TestDamagedRunsAreRefused(t *testing.T) {
	whole := kept(t)
	if table, err := Read("runs.csv", strings.NewReader(whole)); err != nil || len(table.Rows) != 3 {
		t.Fatalf("%+v, %v", table, err)
	}
	lines := strings.SplitAfter(whole, "\n")
	for _, c := range []struct{ name, text, want string }{
		{"empty", "", "runs.csv:1: the first line cannot be read"},
		{"another table", "a,b\n1,2\n", "runs.csv:1: these are not the columns of a study"},
		{"cut off in a line", whole[:len(whole)-12], "runs.csv:4: this line cannot be read (wrong number of fields)"},
		{"cut off in a number", strings.TrimSuffix(whole, "0.25\n") + "0.\"", "runs.csv:4: this line cannot be read"},
		{"a word for a number", strings.Replace(whole, ",97.5,", ",many,", 1), `runs.csv:2: column points: "many" is not a number from 0 to 100`},
		{"no number", strings.Replace(whole, ",97.5,", ",NaN,", 1), `column points: "NaN" is not`},
		{"too many points", strings.Replace(whole, ",97.5,", ",975,", 1), `column points: "975" is not`},
		{"more than all came back", strings.Replace(whole, ",0.75,", ",1.23,", 1), `column recovery: "1.23" is not`},
		{"share of a criterion", strings.Replace(whole, ",0.25\n", ",-0.25\n", 1), `column fill_stop_fraction: "-0.25" is not a number from 0 to 1`},
		{"no seed", strings.Replace(whole, "some case,2,", "some case,-2,", 1), `runs.csv:3: column seed: "-2" is not a seed`},
		{"not yes nor no", strings.Replace(whole, ",true,", ",perhaps,", 1), `column passed: "perhaps" is not true or false`},
		{"the same run twice", whole + lines[2], "runs.csv:5: seed 2 played by steady stands in line 3 already"},
		{"zeros of a broken disk", lines[0] + strings.Repeat("\x00", 300), "runs.csv:2: "},
	} {
		table, err := Read("runs.csv", strings.NewReader(c.text))
		if err == nil || table != nil || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), "remove the file") {
			t.Errorf("%s: %v, want %s and what can be done", c.name, err, c.want)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add([]byte("case,seed\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		if table, err := Read("fuzz.csv", bytes.NewReader(data)); (table == nil) != (err != nil) {
			t.Error("neither runs nor a fault, or both")
		}
	})
}
