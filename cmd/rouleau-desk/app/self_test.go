// Marks of one's own in the whole window: kept with the attempt, shown when it is opened again, and asked for once.

package app_test

import (
	"path/filepath"
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/line"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scoring/attempt"
)

// toMarks plays the spine case to its end at the sheet, where the marks are asked for.
func (w *window) toMarks() {
	w.t.Helper()
	w.choose(spine)
	w.click("To the case sheet")
	w.endUnmarked()
	w.want(words.Say("self.title"))
	if w.HasText("Not passed") {
		w.t.Error("the verdict shows before the marks")
	}
}

// home goes there from a result; the case stays chosen.
func (w *window) home() {
	w.t.Helper()
	w.click("To the home screen")
	w.Idle()
	w.Idle()
}

// resultFromHome opens the newest result of the chosen case.
func (w *window) resultFromHome() {
	w.t.Helper()
	w.click("Result")
	w.Idle()
	w.Idle()
	w.want("Not passed")
	if w.HasText(words.Say("self.title")) {
		w.t.Error("a past result asks for marks")
	}
}

func TestMarksAreKeptAndShownAgain(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "records")
	w := open(t, line.Asked{Folder: folder, Who: "P-17"})
	w.click("Understood")
	w.toMarks()
	rows := len(w.App.Session().View.Result.Self.Rows)
	for range rows {
		w.Type("1")
	}
	w.Key(ui.KeyDown)
	w.Type("decide for it")
	w.Key(ui.KeyEnter)
	w.Idle()
	w.Idle()
	w.want("Not passed")
	w.want("decide for it")
	sum := w.App.Session().View.Result.Self.Sum
	w.want(sum)
	made := files(t, folder, "attempts", "*.json")
	if len(made) != 1 {
		t.Fatalf("attempts: %v", made)
	}
	a := loaded(t, made[0])
	if a.Self == nil || len(a.Self.Marks) != rows || a.Self.Marks[0].Mark != attempt.WentWell || a.Self.Otherwise != "decide for it" || !a.Sealed() {
		t.Errorf("kept %+v", a.Self)
	}
	to := filepath.Join(t.TempDir(), "copy.json")
	w.act(bench.Act{Do: bench.SaveCopy, Text: to})
	if c := loaded(t, to); c.Seal != a.Seal {
		t.Error("a copy is another attempt")
	}
	w.home()
	w.resultFromHome()
	w.want(sum)
	w.want("decide for it")
	w.want(words.Say("self.beside"))
	w.home()
	// Watched to its end, it shows them too.
	w.click("Watch")
	w.ended()
	w.want(sum)
	if w.HasText(words.Say("self.title")) {
		t.Error("whoever watches is asked for marks")
	}
}

// A window that is closed or killed while marks are asked for loses nothing but them, and nobody is asked later, when the
// verdict may have been seen.
func TestAWindowClosedWhileMarking(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "records")
	w := open(t, line.Asked{Folder: folder, Who: "P-17"})
	w.click("Understood")
	w.toMarks()
	w.Type("12")
	w.App.Close()
	w = open(t, line.Asked{Folder: folder, Who: "P-17"})
	w.click("Understood")
	if w.HasText("Not finished") {
		t.Error("a case that is saved is offered to be gone on with")
	}
	made := files(t, folder, "attempts", "*.json")
	if len(made) != 1 || loaded(t, made[0]).Self != nil {
		t.Fatalf("attempts: %v", made)
	}
	w.choose(spine)
	w.resultFromHome()
	if w.HasText(words.Say("self.beside")) || w.HasText(words.Say("self.sum_none")) {
		t.Error("of marks that were never given something is said")
	}
}

// An attempt that could not be kept takes its marks along to where it is saved at last.
func TestMarksOfAnAttemptSavedLater(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "records")
	w := open(t, line.Asked{Folder: folder, Who: "P-17", Scenario: "steady-oozing-spine", Out: filepath.Join(t.TempDir(), "none", "a.json")})
	w.Key(ui.KeyEnter)
	w.Idle()
	w.endUnmarked()
	w.Type("3")
	w.click(words.Say("self.rest_unmarked"))
	w.Idle()
	if r := &w.App.Session().View.Result; r.SavedAs != "" || r.Fault == "" {
		t.Fatalf("saved as %q: this test needs a place that cannot be written to", r.SavedAs)
	}
	to := filepath.Join(t.TempDir(), "later.json")
	w.act(bench.Act{Do: bench.SaveCopy, Text: to})
	if a := loaded(t, to); a.Self == nil || a.Self.Marks[0].Mark != attempt.NotWell || !a.Sealed() {
		t.Errorf("kept %+v", a.Self)
	}
}
