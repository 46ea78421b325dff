// A file of one's own is chosen and in view when its case is left, and F5 reads it again, whichever way it came into the window.

package app_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rouleau/cmd/rouleau-desk/line"
	"rouleau/cmd/rouleau-desk/ui"
)

// inList tells whether a case can be seen whole in the list and is the chosen one.
func (w *window) inList(title string) bool {
	for range 4 {
		w.Idle()
	}
	for _, m := range w.List.Marks {
		if m.Target() && m.Label == title && m.On && m.Shown == m.Rect {
			return true
		}
	}
	return false
}

// rereads changes the file that is chosen, breaks it and mends it, with F5 after each.
func (w *window) rereads(path string) {
	w.t.Helper()
	const rest = " oozing in a spine operation"
	step := func(title string) {
		w.t.Helper()
		own(w.t, path, title)
		w.Key(ui.KeyF5)
		w.Idle()
		if !w.inList(title + rest) {
			w.t.Errorf("%q is not chosen or not in view", title)
		}
		w.want(path)
	}
	if !w.inList("First" + rest) {
		w.t.Error("the file is not listed, chosen and in view")
	}
	step("Second")
	if w.HasText("First" + rest) {
		w.t.Error("the file is listed twice")
	}
	broken(w.t, path)
	w.Key(ui.KeyF5)
	w.Idle()
	w.want("This file cannot be played yet. Faults: 1")
	w.want("line 7, col 10")
	step("Third")
	broken(w.t, path)
	w.Key(ui.KeyF5)
	w.Idle()
	w.click("Close") // and from the list, where it stands as broken
	w.Idle()
	w.want("Cannot be played yet. Faults: 1")
	step("Fourth")
}

func TestAFileOfTheCommandLineIsReadAgainAtHome(t *testing.T) {
	path := filepath.Join(t.TempDir(), "mine.yaml")
	own(t, path, "First")
	w := open(t, line.Asked{Scenario: path, Seed: 1})
	w.click("Understood, to the case")
	w.click("To the home screen")
	w.rereads(path)
}

// Where nothing can be written the file cannot be remembered, and is in the list all the same.
func TestAFileOfTheCommandLineIsListedWhereNothingCanBeWritten(t *testing.T) {
	dir := t.TempDir()
	path, records := filepath.Join(dir, "mine.yaml"), filepath.Join(dir, "records")
	own(t, path, "First")
	if err := os.WriteFile(records, nil, 0o600); err != nil { // a file where the folder should be
		t.Fatal(err)
	}
	w := open(t, line.Asked{Folder: records, Scenario: path, Seed: 1})
	w.click("Understood, to the case")
	w.click("To the home screen")
	for w.Click("Read") == nil || w.Click("Next") == nil {
		w.Idle()
	}
	if !w.inList("First oozing in a spine operation") {
		t.Errorf("the file is not in the list: %v", w.Labels())
	}
}

func TestAnOpenedFileIsReadAgainAtHome(t *testing.T) {
	path := filepath.Join(t.TempDir(), "mine.yaml")
	own(t, path, "First")
	w := open(t, line.Asked{})
	w.click("Understood")
	w.opened(path)
	w.rereads(path)
}

func TestADroppedFileIsReadAgainAtHome(t *testing.T) {
	path := filepath.Join(t.TempDir(), "mine.yaml")
	own(t, path, "First")
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	w := open(t, line.Asked{})
	w.click("Understood")
	w.Frame(ui.Input{Dropped: []ui.Dropped{{Name: "mine.yaml", Path: path, Data: text}}})
	w.Idle()
	w.rereads(path)
	bad := filepath.Join(t.TempDir(), "bad.yaml")
	own(t, bad, "Bad")
	broken(t, bad)
	if text, err = os.ReadFile(bad); err != nil {
		t.Fatal(err)
	}
	w.Frame(ui.Input{Dropped: []ui.Dropped{{Name: "bad.yaml", Path: bad, Data: text}}})
	w.Idle()
	w.want("line 7, col 10")
	own(t, bad, "Mended")
	w.Key(ui.KeyF5)
	if !w.inList("Mended oozing in a spine operation") {
		t.Error("a file that was dropped with a fault does not come back mended")
	}
}

func TestWarningsOfAFileAreShown(t *testing.T) {
	path := filepath.Join(t.TempDir(), "mine.yaml")
	own(t, path, "First")
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	w := open(t, line.Asked{})
	w.click("Understood")
	w.opened(path)
	if w.HasText("Warnings in this file") {
		t.Error("a file that is right has warnings")
	}
	more := strings.Replace(string(text), "\nobjectives:\n", "\nobjectives:\n  - {id: shown_by_nothing, part: deciding, text: \"An objective that no criterion shows\"}\n", 1)
	if err := os.WriteFile(path, []byte(more), 0o600); err != nil {
		t.Fatal(err)
	}
	w.Key(ui.KeyF5)
	w.Idle()
	w.want("Warnings in this file: 1.")
	w.want("no criterion shows this objective")
}

// Looking for a file begins where the program was started if scenarios lie there, else where the last file was opened.
func TestWhereLookingForAFileBegins(t *testing.T) {
	here, there, records := t.TempDir(), t.TempDir(), filepath.Join(t.TempDir(), "records")
	path, other := filepath.Join(there, "mine.yaml"), filepath.Join(t.TempDir(), "other.yaml")
	own(t, path, "First")
	own(t, other, "Other")
	t.Chdir(here)
	begins := func(with, folder string) {
		t.Helper()
		w := open(t, line.Asked{Folder: records})
		w.click("Understood")
		w.click("Open a file")
		if !w.HasText(folder) {
			t.Errorf("%s: does not begin in %s", with, folder)
		}
		w.App.Close()
	}
	begins("nothing opened yet", here)
	w := open(t, line.Asked{Folder: records})
	w.click("Understood")
	w.opened(path)
	w.App.Close()
	begins("a file was opened", there)
	if err := os.Rename(other, filepath.Join(here, "other.yaml")); err != nil {
		t.Fatal(err)
	}
	begins("scenarios where it was started", here)
}
