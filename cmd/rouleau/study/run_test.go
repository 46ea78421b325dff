package study

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rouleau/scenarios"
	"rouleau/scoring/operators"
)

// planOf plays a lesson, which is short, with idle over some seeds.
func planOf(t *testing.T, folder string, seeds ...uint64) Plan {
	t.Helper()
	sc, err := scenarios.Open("first-bowl")
	if err != nil {
		t.Fatal(err)
	}
	o, err := operators.Open("idle")
	if err != nil {
		t.Fatal(err)
	}
	return Plan{Scenario: sc, Operators: []*operators.Operator{o}, Seeds: seeds, Folder: folder}
}

// What is kept is not played again: points that no run has are there afterwards.
func TestAStoppedStudyGoesOn(t *testing.T) {
	folder := t.TempDir()
	half := planOf(t, folder, 1, 2)
	table, err := half.Run()
	if err != nil {
		t.Fatal(err)
	}
	table.Rows[0].Points = 12.5
	if err := WriteRuns(folder, table); err != nil {
		t.Fatal(err)
	}
	whole := planOf(t, folder, 1, 2, 3)
	if table, err = whole.Run(); err != nil || len(table.Rows) != 3 || table.Rows[0].Points != 12.5 || table.Rows[1].Points == 12.5 {
		t.Errorf("%v, %+v", err, table)
	}
	// an operator whose file has changed since plays anew
	whole.Operators[0].Digest = "changed"
	if table, err = whole.Run(); err != nil || table.Rows[0].Points == 12.5 {
		t.Errorf("%v, %+v", err, table)
	}
}

// A damaged file stops a study before anything is played, and stays as it is.
func TestAStudyDoesNotGoOnFromADamagedFile(t *testing.T) {
	folder := t.TempDir()
	plan := planOf(t, folder, 1, 2)
	if _, err := plan.Run(); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(folder, RunsFile)
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	torn := data[:len(data)-40]
	if err := os.WriteFile(path, torn, 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := plan.Run(); err == nil || !strings.Contains(err.Error(), "runs.csv:3:") || !strings.Contains(err.Error(), "take this line out") {
		t.Errorf("%v", err)
	}
	if now, err := os.ReadFile(path); err != nil || string(now) != string(torn) {
		t.Errorf("%v: the damaged file was changed", err)
	}
}
