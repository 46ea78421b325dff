// Files that come into the window and leave it: dropped, opened, mended, exported, copied.

package app_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/line"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scoring/attempt"
)

func TestFilesAreDropped(t *testing.T) {
	good, err := os.ReadFile("../../../scenarios/library/steady-oozing-spine.yaml")
	if err != nil {
		t.Fatal(err)
	}
	good = []byte(strings.Replace(strings.Replace(string(good), "id: steady", "id: unsteady", 1), "title: Steady", "title: Unsteady", 1))
	w := open(t, line.Asked{})
	w.drop("case.yaml", good) // even before the cautions are read
	w.click("Understood")
	w.Wait(100)
	w.want("Unsteady oozing in a spine operation")
	w.want("Files of your own")
	w.drop("broken.yaml", []byte(strings.Replace(string(good), "minutes: 105", "minutes: many", 1)))
	w.want("This file cannot be played yet. Faults: 1")
	w.want("line 7, col 10")
	w.click("Close")
	w.drop("picture.png", []byte{0, 1, 2})
	w.want("This file cannot be played yet")
	w.click("Close")
	w.drop("attempt.json", []byte("{"))
	w.want("This file cannot be opened")
	w.click("Close")
	w.click("To the case sheet")
	before := w.App.Session()
	w.drop("case.yaml", good)
	if w.App.Session() != before || w.App.Session().View.Notice == "" {
		t.Error("a file dropped on a case is not told, or ends the case")
	}
	w.Wait(16000)
	if w.App.Session().View.Notice != "" {
		t.Error("the notice stays for ever")
	}
}

func TestAFileOfOnesOwnIsOpenedMendedAndReadAgain(t *testing.T) {
	good, err := os.ReadFile("../../../scenarios/library/steady-oozing-spine.yaml")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "mine.yaml")
	if err := os.WriteFile(path, []byte("format: 1\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	w := open(t, line.Asked{})
	w.click("Understood")
	w.click("Open a file")
	w.Type(filepath.Dir(path))
	w.Key(ui.KeyEnter)
	w.Idle()
	w.click("mine.yaml")
	w.want("Faults:")
	if err := os.WriteFile(path, []byte(strings.Replace(string(good), "title: Steady", "title: Mended", 1)), 0o600); err != nil {
		t.Fatal(err)
	}
	w.click("Read it again")
	w.want("Mended oozing in a spine operation")
	// What is changed after that counts when the case begins.
	if err := os.WriteFile(path, []byte(strings.Replace(string(good), "title: Steady", "title: Changed", 1)), 0o600); err != nil {
		t.Fatal(err)
	}
	w.click("To the case sheet")
	w.want("Changed oozing in a spine operation")
}

func TestChartsAndCopiesAreSaved(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "records")
	w := open(t, line.Asked{Folder: folder, Scenario: "steady-oozing-spine", Seed: 1})
	w.click("Understood, to the case")
	w.endNow()
	w.act(bench.Act{Do: bench.ExportChart, Value: bench.FormatPNG}, bench.Act{Do: bench.ExportChart, Value: bench.FormatSVG})
	w.want("saved as " + folder)
	for _, end := range []string{"*.png", "*.svg"} {
		if n := len(files(t, folder, "charts", end)); n != 1 {
			t.Errorf("%d files %s", n, end)
		}
	}
	to := t.TempDir()
	w.act(bench.Act{Do: bench.SaveCopy, Text: to})
	copies := files(t, to, "*.json")
	if len(copies) != 1 {
		t.Fatalf("copies: %v", copies)
	}
	if _, err := attempt.Load(copies[0]); err != nil {
		t.Error(err)
	}
	w.act(bench.Act{Do: bench.SaveCopy, Text: filepath.Join(to, "none", "a.json")})
	w.want("make it first")
}

// A result that could not be kept is saved by hand, and its case is then not offered again.
func TestAnAttemptThatWasNotKeptIsSavedByHand(t *testing.T) {
	dir := t.TempDir()
	w := open(t, line.Asked{Folder: filepath.Join(dir, "records"), Scenario: "steady-oozing-spine", Seed: 1, Out: filepath.Join(dir, "gone", "a.json")})
	w.click("Understood, to the case")
	w.endNow()
	w.want("nothing")
	w.act(bench.Act{Do: bench.SaveCopy, Text: filepath.Join(dir, "by-hand.json")})
	if _, err := attempt.Load(filepath.Join(dir, "by-hand.json")); err != nil {
		t.Fatal(err)
	}
	w.App.Close()
	again := open(t, line.Asked{Folder: filepath.Join(dir, "records")})
	again.click("Understood")
	if again.HasText("Not finished") {
		t.Error("a case whose result is safe is offered again")
	}
}
