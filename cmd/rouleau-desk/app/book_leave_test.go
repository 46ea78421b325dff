// The book while something goes on beside it: looked away from, left, opened anew, and the window closed.

package app_test

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau/ledger"
	"rouleau/cmd/rouleau/shelf"
)

// drafts opens the one attempt, and has its record made.
func (w *window) drafts() {
	w.t.Helper()
	w.until(func() bool { // nothing is opened while the last job goes on
		for _, m := range w.List.Marks {
			if m.Kind == ui.KindRow && m.Label == learner+" · "+briskCase {
				w.ClickAt(m.Shown.Center())
				break
			}
		}
		if w.HasText(words.Say("desk_book.will_stand")) {
			w.t.Fatal("a record that nobody waits for is to be signed")
		}
		return w.HasText("Passed as computed")
	})
	w.writes(words.Say("desk_book.trains_for"), "perfusionist")
	w.into(words.Say("desk_book.look_over"))
	w.Key(ui.KeyEnter)
}

// leavesADraft lets an assessor go back to the list while the record of an attempt is made.
func leavesADraft(t *testing.T) (*department, *window) {
	t.Helper()
	d := openDepartment(t, assessor)
	d.plays(t, learner, 7, 2)
	w := d.sit(t, assessor)
	w.toBook("desk_book.tab_assessor")
	w.drafts()
	w.Key(ui.KeyEscape)
	return d, w
}

// Whoever looks away from an attempt while its record is made is not asked to sign it when it is there.
func TestLookedAwayWhileTheRecordIsMade(t *testing.T) {
	_, w := leavesADraft(t)
	w.want(words.Say("desk_book.awaiting", 1))
	w.drafts() // when the first is done; a page to sign on would be in the way
	w.shows(words.Say("desk_book.will_stand"))
}

// Whoever leaves the book while something goes on and comes back sees what it is, then the book; and no other stays open behind it.
func TestTheBookIsOpenedAnewDuringAJob(t *testing.T) {
	d, w := leavesADraft(t)
	w.Key(ui.KeyEscape)            // the book too
	w.now = w.now.Add(time.Second) // by now it takes long
	w.click(words.Say("desk_book.to_book"))
	told := false
	w.until(func() bool {
		told = told || w.HasText(words.Say("desk_book.drafting"))
		return w.HasText(words.Say("desk_book.tab_learner"))
	})
	if !told {
		t.Error("what goes on from the last time is not told")
	}
	w.Key(ui.KeyEscape)
	w.App.Close()
	d.shelf.Close()
	log := filepath.Join(d.place, shelf.FileName+"-wal") // is there as long as anybody has the book open
	for end := time.Now().Add(10 * time.Second); ; time.Sleep(10 * time.Millisecond) {
		if _, err := os.Stat(log); err != nil {
			break
		}
		if time.Now().After(end) {
			t.Fatal("the book was never closed")
		}
	}
}

// A window that is closed while a book is made leaves a whole one.
func TestClosedWhileABookIsMade(t *testing.T) {
	d, w := withoutBook(t)
	w.begins("department.example/practice")
	w.App.Close()
	l, err := ledger.Open(ledger.Places{Book: d.place, Keys: d.place})
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	if l.Size() != 1 {
		t.Errorf("it has %d records", l.Size())
	}
}

// begins writes what a new book needs, and has it made. The name is "" where it is not asked for.
func (w *window) begins(name string) {
	w.t.Helper()
	if name != "" {
		w.writes(words.Say("desk_book.origin"), name)
	}
	w.writes(words.Say("desk_book.administrator"), "ADM-1")
	w.writes(words.Say("desk_book.new_phrase"), phrase)
	w.writes(words.Say("desk_book.phrase_again"), phrase)
	w.into(words.Say("desk_book.found_do"))
	w.Key(ui.KeyEnter)
}

// A book whose making was broken off, before it had a name or before its first record, is begun from where it stands.
func TestABookWhoseMakingWasBrokenOff(t *testing.T) {
	for _, name := range []string{"", "department.example/practice"} {
		d := &department{place: filepath.Join(t.TempDir(), "begun"), folder: t.TempDir()}
		t.Setenv(ledger.Variable, d.place)
		if name == "" {
			if err := os.MkdirAll(d.place, 0o700); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(filepath.Join(d.place, shelf.FileName), nil, 0o600); err != nil {
				t.Fatal(err)
			}
		} else {
			s, err := shelf.Create(d.place, name)
			if err != nil {
				t.Fatal(err)
			}
			s.Close()
		}
		w := d.sit(t, learner)
		w.click(words.Say("desk_book.to_book"))
		w.shows(words.Say("desk_book.none"))
		if name == "" {
			w.begins("department.example/practice")
		} else {
			w.want(words.Say("desk_book.goes_on", name))
			w.begins("")
		}
		w.shows(words.Say("desk_book.founded"))
	}
}
