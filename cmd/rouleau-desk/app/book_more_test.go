// The book by pointer: the debrief and back, an override, a second rater, one's own, no book, a damaged one, learner and educator.

package app_test

import (
	"crypto/rand"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau/ledger"
	"rouleau/cmd/rouleau/shelf"
	"rouleau/scoring/book"
)

// opens clicks the first row of a list that is called so.
func (w *window) opens(label string) {
	w.t.Helper()
	w.Idle()
	for _, m := range w.List.Marks {
		if m.Kind == ui.KindRow && m.Label == label {
			w.ClickAt(m.Shown.Center())
			w.Idle()
			return
		}
	}
	w.t.Fatalf("no row is called %q; there are: %v", label, w.Labels())
}

// point scrolls a control into view, as far as the focus takes it, and clicks it.
func (w *window) point(label string) {
	w.t.Helper()
	w.into(label)
	w.click(label)
}

// With the pointer: the result and its debrief and back to what was written, decided otherwise with a reason, signed, rated by a
// second rater, and what the attempt of the record was.
func TestAnAssessmentIsSignedByPointer(t *testing.T) {
	d := openDepartment(t, assessor, secondOne)
	d.plays(t, learner, 7, 5)
	d.plays(t, learner, 8, 2)
	w := d.sit(t, assessor)
	w.toBook("desk_book.tab_assessor")
	w.shows(words.Say("desk_book.awaiting", 2))
	w.opens(learner + " · " + briskCase)
	w.shows("Passed as computed")
	w.click("not yet competent")
	w.want(words.Say("desk_book.override_missing"))
	w.point(words.Say("desk_book.override"))
	w.Type("not calm under pressure")
	w.point(words.Say("desk_book.trains_for"))
	w.Type("perfusionist")
	w.click(words.Say("desk_book.see_result"))
	w.want("Passed 100")
	w.debrief()
	w.want(words.Say("desk_debrief.tab_questions"))
	w.click(words.Say("desk_book.back_to_book"))
	w.shows("Passed as computed")
	w.click(words.Say("desk_book.look_over"))
	w.shows(words.Say("desk_book.will_stand"))
	w.want("not calm under pressure")
	w.want(words.Say("desk_book.earlier", time.Now().Add(-5*time.Hour).Format(time.DateOnly), 100.0, words.Say("desk_book.passed"))) // the other attempt is listed
	w.click(words.Say("desk_book.back"))                                                                                             // and the form is as it was
	w.shows("Passed as computed")
	w.click(words.Say("desk_book.look_over"))
	w.shows(words.Say("desk_book.will_stand"))
	w.click(words.Say("desk_book.phrase", assessor))
	w.Type(phrase)
	w.click(words.Say("desk_book.sign"))
	w.shows(words.Say("desk_book.is_signed"))
	if err := d.book.Reread(); err != nil {
		t.Fatal(err)
	}
	e := d.book.Entries[len(d.book.Entries)-1]
	if b := e.Body.(*book.SignOff); b.Outcome != book.NotYet || b.Override != "not calm under pressure" || b.Number != 2 {
		t.Errorf("%+v", b)
	}
	w.click(words.Say("desk_book.show_record"))
	w.want("not calm under pressure")
	w.click(words.Say("desk_book.see_result_short"))
	w.shows(words.Say("desk_book.back_to_book"))
	if s := w.App.Session(); s.View.Screen != bench.Graded || s.View.Story.Title != briskCase {
		t.Errorf("the result of the record is %q", s.View.Story.Title)
	}
	w.click(words.Say("desk_book.back_to_book"))
	w.click(words.Say("desk_book.rate"))
	w.shows(words.Say("desk_book.rated_first", assessor))
	w.writes(words.Say("desk_book.signs_as"), learner)
	w.shows("no one signs their own")
	w.writes(words.Say("desk_book.signs_as"), secondOne)
	w.click("2  complete (enough)")
	w.point(words.Say("desk_book.phrase", secondOne))
	w.Type("nothing like it")
	w.click(words.Say("desk_book.sign_rating"))
	w.shows("this is not the passphrase of AS-2")
	w.point(words.Say("desk_book.phrase", secondOne))
	w.Type(phrase)
	w.click(words.Say("desk_book.sign_rating"))
	w.shows("The rating is in the book")
	if err := d.book.Reread(); err != nil {
		t.Fatal(err)
	}
	if r := d.book.Ratings(e.Leaf.ID); len(r) != 1 || r[0].Rated[0].Level != 2 || r[0].Assessor != secondOne {
		t.Errorf("%+v", r)
	}
	w.click(words.Say("desk_book.verify_one"))
	w.shows(words.Say("desk_book.verdict", words.Say("book_cli.verdict_exact")))
}

// Nobody signs their own: it is said before they try, and the record cannot even be made.
func TestNobodySignsTheirOwnInTheWindow(t *testing.T) {
	d := openDepartment(t)
	d.plays(t, assessor, 7, 2)
	w := d.sit(t, assessor)
	w.toBook("desk_book.tab_assessor")
	w.want("there is no key of AS-1 as assessor here")
	w.opens(assessor + " · " + briskCase)
	w.shows("no one signs their own, so let another assessor decide")
	if m, err := w.At(words.Say("desk_book.look_over")); err != nil || m.Enabled || m.Why != words.Say("desk_book.cannot_sign") {
		t.Errorf("%+v %v", m, err)
	}
	w.writes(words.Say("desk_book.signs_as"), "P-08")
	w.shows("P-08 is no assessor of this book")
	w.writes(words.Say("desk_book.signs_as"), "somebody")
	w.shows("is no code")
	w.writes(words.Say("desk_book.learner"), "P-99")
	w.writes(words.Say("desk_book.signs_as"), secondOne)
	w.shows("P-99 is no learner of this book")
}

// A book that was last written to by a clock that was ahead cannot be signed in here, and it is said what can be done.
func TestAClockThatWasAheadInTheWindow(t *testing.T) {
	d := openDepartment(t, assessor)
	ahead, err := book.Open(d.shelf, rand.Reader, func() time.Time { return time.Now().Add(time.Hour) })
	if err != nil {
		t.Fatal(err)
	}
	if _, err := ahead.Write(&book.Event{By: assessor, What: book.EventAway, Date: time.Now().Format(time.DateOnly), Reason: "x"}, nil, d.keys[assessor]); err != nil {
		t.Fatal(err)
	}
	d.plays(t, learner, 7, 2)
	w := d.sit(t, assessor)
	w.toBook("desk_book.tab_assessor")
	w.drafts()
	w.shows(words.Say("desk_book.will_stand"))
	w.writes(words.Say("desk_book.phrase", assessor), phrase)
	w.Key(ui.KeyEnter)
	w.shows("set the clock right, then sign again. If it is right, and the other one was not, sign once at the command line")
}

// withoutBook lets a learner look for a book where there is none.
func withoutBook(t *testing.T) (*department, *window) {
	t.Helper()
	d := &department{place: filepath.Join(t.TempDir(), "none"), folder: t.TempDir()}
	t.Setenv(ledger.Variable, d.place)
	w := d.sit(t, learner)
	w.click(words.Say("desk_book.to_book"))
	w.shows(words.Say("desk_book.none"))
	return d, w
}

// Where there is no book it says so, and one can be begun; where it cannot be opened it says why.
func TestNoBookAndADamagedOne(t *testing.T) {
	d, w := withoutBook(t)
	w.want(d.place)
	if _, err := os.Stat(d.place); err == nil {
		t.Error("looking for a book has made its folder")
	}
	w.writes(words.Say("desk_book.origin"), "department.example/practice")
	w.writes(words.Say("desk_book.administrator"), "ADM-1")
	w.writes(words.Say("desk_book.new_phrase"), "short")
	w.want(words.Say("desk_book.phrases_part"))
	w.writes(words.Say("desk_book.phrase_again"), "short")
	w.point(words.Say("desk_book.found_do"))
	w.shows("a passphrase needs at least 12 characters")
	w.writes(words.Say("desk_book.new_phrase"), phrase)
	w.writes(words.Say("desk_book.phrase_again"), phrase)
	w.point(words.Say("desk_book.found_do"))
	w.shows(words.Say("desk_book.founded"))
	w.want(words.Say("desk_book.no_plan"))
	w.Key(ui.KeyEscape)
	w.Idle()
	file := filepath.Join(d.place, shelf.FileName)
	for _, f := range []string{file, file + "-wal", file + "-shm"} {
		os.Remove(f)
	}
	if err := os.WriteFile(file, []byte(strings.Repeat("this is no database ", 400)), 0o600); err != nil {
		t.Fatal(err)
	}
	w.click(words.Say("desk_book.to_book"))
	w.shows(words.Say("desk_book.shut"))
	w.want("the file is damaged")
	w.click(words.Say("desk_book.again"))
	w.shows(words.Say("desk_book.shut"))
	w.Key(ui.KeyEscape)
	w.Idle()
	w.want(words.Say("home.lessons"))
}

// The learner sees where they stand, why, and opens a record and an attempt that is not in the book; the educator sees all, and has
// the whole book verified.
func TestLearnerAndEducator(t *testing.T) {
	d := openDepartment(t)
	w := d.sit(t, learner)
	w.toBook("desk_book.tab_learner")
	w.want(words.Say("desk_book.not_shown"))
	w.want("case short-and-brisk signed off 0 times of 1")
	w.Key(ui.KeyEscape)
	for i, who := range []string{learner, "P-08", assessor} {
		signs := assessor
		if who == assessor {
			signs = secondOne
		}
		l, err := ledger.Open(ledger.Places{Book: d.place, Keys: d.place})
		if err != nil {
			t.Fatal(err)
		}
		draft, err := l.Draft(ledger.Signing{Attempt: d.plays(t, who, uint64(3+i), 3), Learner: who, Assessor: signs, For: "perfusionist", Outcome: book.Competent, Rated: []book.Rated{{Item: "handover", Level: 2}}})
		l.Close()
		if err != nil {
			t.Fatal(err)
		}
		d.write(t, draft.SignOff, draft.Attempt, signs)
	}
	d.plays(t, learner, 9, 1)
	w.toBook("desk_book.tab_learner")
	w.want("holds until " + time.Now().AddDate(3, 0, 0).Format(time.DateOnly))
	d.write(t, &book.Event{Learner: learner, By: assessor, What: book.EventIncident, Date: time.Now().Format(time.DateOnly), Reason: "a bag was mixed up"}, nil, assessor)
	w.Key(ui.KeyEscape)
	w.toBook("desk_book.tab_learner")
	w.want("because: an incident on " + time.Now().Format(time.DateOnly) + ": a bag was mixed up")
	w.want(words.Say("desk_book.results", 1))
	w.want(words.Say("desk_book.outside", 1))
	today := words.Say("desk_book.row", time.Now().Format(time.DateOnly), briskCase)
	w.into(words.Say("desk_book.results_list"))
	w.Key(ui.KeyEnter)
	w.shows(words.Say("sheet.parts"))
	w.want(words.Say("desk_book.record_head", learner, briskCase))
	w.Key(ui.KeyEscape)
	w.shows(today)
	w.into(words.Say("desk_book.outside_list"))
	w.Key(ui.KeyEnter)
	w.shows("Passed 100")
	w.click(words.Say("desk_book.back_to_book"))
	w.click(words.Say("desk_book.tab_educator"))
	w.want("P-08")
	w.want(words.Say("desk_book.not_shown"))
	w.click(words.Say("desk_book.part_due"))
	w.want(words.Say("desk_book.due_head", learner, "Collecting, washing and giving back", words.Say("desk_book.not_shown")))
	w.click(words.Say("desk_book.part_book"))
	w.want(words.Say("desk_book.agree_none"))
	w.click(words.Say("desk_book.verify_do"))
	w.shows(words.Say("desk_book.is_right"))
	w.want(words.Say("desk_book.count", 3, words.Say("book_cli.verdict_exact")))
	w.click(words.Say("desk_book.part_cost"))
	t.Setenv("TMPDIR", t.TempDir())
	w.click(words.Say("desk_book.cost_do"))
	w.shows(words.Say("desk_book.stop"))
	w.click(words.Say("desk_book.stop"))
	w.shows(words.Say("desk_book.cost_stopped"))
	w.click(words.Say("desk_book.cost_do"))
	w.shows("3 attempts of 3 people")
	for _, m := range w.List.Marks {
		if strings.Contains(m.Label, learner) {
			t.Errorf("what decisions cost the group names somebody: %q", m.Label)
		}
	}
	w.drop("a.json", []byte("{}"))
	w.want(words.Say("desk_book.drop_later"))
	w.click(words.Say("desk_book.cost_do"))
	if w.HasText("3 attempts of 3 people") {
		t.Error("the old figures stay while new ones are worked out")
	}
	w.shows(words.Say("desk_book.stop"))
	w.App.Close()
	if left, err := filepath.Glob(filepath.Join(os.TempDir(), "rouleau-book-*")); err != nil || len(left) > 0 {
		t.Error("a window that is closed leaves", left, err)
	}
}
