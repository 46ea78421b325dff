// Files of one's own over restarts, and read again on request from the list and from a case that is played.

package app_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/line"
	"rouleau/cmd/rouleau-desk/ui"
)

// own writes a case of one's own under a title.
func own(t testing.TB, path, title string) {
	t.Helper()
	text, err := os.ReadFile("../../../scenarios/library/steady-oozing-spine.yaml")
	if err != nil {
		t.Fatal(err)
	}
	changed := strings.Replace(strings.Replace(string(text), "id: steady", "id: my", 1), "title: Steady", "title: "+title, 1)
	if err := os.WriteFile(path, []byte(changed), 0o600); err != nil {
		t.Fatal(err)
	}
}

func broken(t testing.TB, path string) {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(strings.Replace(string(text), "minutes: 105", "minutes: many", 1)), 0o600); err != nil {
		t.Fatal(err)
	}
}

// opened opens a file by hand, in a window that has just begun.
func (w *window) opened(path string) {
	w.t.Helper()
	w.click("Open a file")
	w.Type(path)
	w.Key(ui.KeyEnter)
	w.Idle()
}

func TestFilesOfOnesOwnAreStillListedAfterARestart(t *testing.T) {
	dir := t.TempDir()
	records, one, two, gone := filepath.Join(dir, "records"), filepath.Join(dir, "one.yaml"), filepath.Join(dir, "two.yaml"), filepath.Join(dir, "gone.yaml")
	w := open(t, line.Asked{Folder: records})
	w.click("Understood")
	for path, title := range map[string]string{one: "One", two: "Two", gone: "Gone"} {
		own(t, path, title)
		w.opened(path)
	}
	w.App.Close()
	broken(t, two)
	if err := os.Remove(gone); err != nil {
		t.Fatal(err)
	}
	w = open(t, line.Asked{Folder: records})
	w.click("Understood")
	w.want("gone.yaml, which was in your list, is not there any more")
	w.click("Read")
	w.choose("two.yaml")
	w.want("One oozing in a spine operation")
	w.want("two.yaml")
	w.want("Cannot be played yet. Faults: 1")
	// What is wrong is shown in its place, and mended there.
	w.click("Show what is wrong")
	w.want("line 7, col 10")
	own(t, two, "Twice")
	w.Key(ui.KeyF5)
	w.Idle()
	w.want("Twice oozing in a spine operation")
	w.App.Close()
	w = open(t, line.Asked{Folder: records})
	w.click("Understood")
	if w.HasText("which was in your list") {
		t.Error("a file that is gone is told twice")
	}
	w.choose("Twice oozing in a spine operation")
	w.want("Twice oozing in a spine operation")
	// One that stays broken can be taken off the list, and stays on the disk.
	broken(t, two)
	w.Key(ui.KeyF5)
	w.Idle()
	w.want("line 7, col 10")
	w.click("Close")
	w.click("Take it off the list")
	w.App.Close()
	w = open(t, line.Asked{Folder: records})
	w.click("Understood")
	w.choose("One oozing in a spine operation")
	if w.HasText("two.yaml") || !w.HasText("One oozing in a spine operation") {
		t.Error("the wrong files are listed")
	}
	if _, err := os.Stat(two); err != nil {
		t.Error(err)
	}
}

func TestAChangedFileIsReadAgainFromTheList(t *testing.T) {
	path := filepath.Join(t.TempDir(), "mine.yaml")
	own(t, path, "First")
	w := open(t, line.Asked{})
	w.click("Understood")
	w.opened(path)
	w.want("First oozing in a spine operation")
	own(t, path, "Second")
	w.Key(ui.KeyF5)
	w.Idle()
	w.want("Second oozing in a spine operation")
	if w.HasText("First oozing") {
		t.Error("the file is listed twice")
	}
}

func TestAChangedFileIsReadAgainFromAPractice(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "mine.yaml")
	own(t, path, "First")
	w := open(t, line.Asked{Folder: filepath.Join(dir, "records")})
	w.click("Understood")
	w.opened(path)
	w.click("New")
	w.click("To the case sheet")
	own(t, path, "Second")
	w.Key(ui.KeyF5) // nothing was done yet: nothing is asked
	w.Idle()
	w.want("Second oozing in a spine operation")
	w.toBench()
	before, seed := w.App.Session(), w.App.Session().Run.Seed
	w.Key(ui.KeyF5)
	w.want("Read the file again?")
	tick := before.Run.State.Tick
	w.Wait(2000)
	if before.Run.State.Tick != tick {
		t.Error("time passes behind the question")
	}
	w.click("Go on with this case")
	w.Wait(1000)
	if w.App.Session() != before || before.Run.State.Tick == tick {
		t.Fatal("the case does not go on")
	}
	own(t, path, "Third")
	w.Key(ui.KeyF5)
	w.click("Read it and begin anew")
	s := w.App.Session()
	if s == nil || s == before || s.View.Screen != bench.Sheet || s.Run.Seed != seed || !strings.HasPrefix(w.App.Title(), "Third") {
		t.Fatalf("the case is not begun anew: %q", w.App.Title())
	}
	// With a fault the list of cases comes back, and shows it in its place; the case that was broken off is offered.
	w.toBench()
	broken(t, path)
	w.Key(ui.KeyF5)
	w.click("Read it and begin anew")
	w.want("This file cannot be played yet. Faults: 1")
	w.want("line 7, col 10")
	own(t, path, "Fourth")
	w.Key(ui.KeyF5)
	w.Idle()
	w.want("Fourth oozing in a spine operation")
	w.want("Not finished")
}

func TestAnAssessmentGoesOnWithTheFileAsItWas(t *testing.T) {
	path := filepath.Join(t.TempDir(), "mine.yaml")
	own(t, path, "First")
	w := open(t, line.Asked{Who: "P-01"})
	w.click("Understood")
	w.opened(path)
	w.click("Assessment")
	w.click("To the case sheet")
	w.toBench()
	own(t, path, "Second")
	before := w.App.Session()
	w.Key(ui.KeyF5)
	w.Idle()
	if w.App.Session() != before || w.HasText("Read the file again?") {
		t.Error("an assessment can be begun anew")
	}
	w.want("This assessment goes on with the file as it was")
}

// A case of the library has no file that could have changed.
func TestACaseOfTheLibraryIsNotReadAgain(t *testing.T) {
	w := open(t, line.Asked{})
	w.click("Understood")
	w.choose(spine)
	w.click("To the case sheet")
	before := w.App.Session()
	w.Key(ui.KeyF5)
	w.Idle()
	if w.App.Session() != before || w.HasText("Read the file again?") {
		t.Error("F5 does something")
	}
}
