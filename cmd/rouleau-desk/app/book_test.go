// The competency book in the whole window: from a finished assessment to a signed and verified record, with the pointer and by keys
// alone; what is refused and why; and what is lost when something goes wrong: nothing.

package app_test

import (
	"crypto/rand"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/app"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/line"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
	"rouleau/cmd/rouleau/ledger"
	"rouleau/cmd/rouleau/shelf"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/scoring/book"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
)

const (
	learner   = "P-07"
	assessor  = "AS-1"
	secondOne = "AS-2"
	phrase    = "four words together here"
	briskCase = "Short and brisk"
)

const bookPlan = `format: 1
department: D-1
items:
  - name: handover
    title: Hands over so that the other knows
    anchors: [leaves out what matters, complete, complete and understood]
    needs: 2
  - name: asepsis
    title: Keeps sterile what is sterile
    anchors: [breaks it, notices and mends, keeps it]
    needs: 2
competencies:
  - name: salvage
    title: Collecting, washing and giving back
    scenarios:
      - id: short-and-brisk
    items: [handover]
    interval_months: 36
    after: [incident]
`

// department is a book with people, at the place where the window looks for one, and a folder of records.
type department struct {
	place, folder string
	shelf         *shelf.Shelf
	book          *book.Book
	keys          map[string]*book.Signer
}

// openDepartment makes one. Keys that lie in files cost a second each, so only those of the assessors who are named do.
func openDepartment(t *testing.T, assessors ...string) *department {
	t.Helper()
	d := &department{place: filepath.Join(t.TempDir(), "book"), folder: filepath.Join(t.TempDir(), "records"), keys: map[string]*book.Signer{}}
	t.Setenv(ledger.Variable, d.place)
	s, err := shelf.Create(d.place, "department.example/practice")
	if err != nil {
		t.Fatal(err)
	}
	d.shelf = s
	t.Cleanup(func() { s.Close() })
	if d.book, err = book.Open(s, rand.Reader, time.Now); err != nil {
		t.Fatal(err)
	}
	for _, p := range []book.Key{{Person: "ADM-1", Role: book.Administrator}, {Person: assessor, Role: book.Assessor}, {Person: secondOne, Role: book.Assessor},
		{Person: learner, Role: book.Learner}, {Person: "P-08", Role: book.Learner}, {Person: assessor, Role: book.Learner}} {
		if p.Role != book.Learner {
			key, err := book.NewSigner(rand.Reader)
			if err != nil {
				t.Fatal(err)
			}
			d.keys[p.Person], p.Public = key, key.Public()
		}
		d.write(t, &p, nil, "ADM-1")
	}
	d.write(t, &book.PlanText{By: "ADM-1", YAML: bookPlan}, nil, "ADM-1")
	for _, who := range assessors {
		if err := shelf.SaveKey(d.place, who, book.Assessor, d.keys[who], phrase); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.MkdirAll(filepath.Join(d.folder, "attempts"), 0o700); err != nil {
		t.Fatal(err)
	}
	return d
}

func (d *department) write(t *testing.T, body any, attached []byte, who string) *book.Entry {
	t.Helper()
	if err := d.book.Reread(); err != nil {
		t.Fatal(err)
	}
	e, err := d.book.Write(body, attached, d.keys[who])
	if err != nil {
		t.Fatal(err)
	}
	return e
}

var brisk = sync.OnceValues(func() (*scenarios.Scenario, error) {
	return scenarios.Load(filepath.Join("..", "..", "..", "scoring", "attempt", "testdata", "short.yaml"))
})

// plays saves an attempt at the short case by steady, as an assessment of somebody, some hours ago.
func (d *department) plays(t *testing.T, who string, seed uint64, hoursAgo int) string {
	t.Helper()
	sc, err := brisk()
	if err != nil {
		t.Fatal(err)
	}
	run := play.New(sc.Case(seed, true), seed)
	o, err := operators.Open("steady")
	if err != nil {
		t.Fatal(err)
	}
	run.ToEnd(o.Play(operators.SheetOf(sc, &run.Case)))
	grade := scoring.Judge(sc, run, scoring.PlayYardstick(sc, seed, true))
	a := attempt.Of(sc, run, grade, attempt.By{Operator: who, When: time.Now().Add(-time.Duration(hoursAgo) * time.Hour), Mode: attempt.Assessment})
	path := filepath.Join(d.folder, "attempts", who+"-"+time.Duration(hoursAgo).String()+".json")
	if err := a.Save(path); err != nil {
		t.Fatal(err)
	}
	return path
}

// sit opens the window of the department as somebody, past the cautions, with the true clock, by which the book goes too.
func (d *department) sit(t *testing.T, who string) *window {
	t.Helper()
	a, err := app.New(line.Asked{Folder: d.folder, Who: who}, app.Machine{NewSeed: func() uint64 { return 4711 }})
	if err != nil {
		t.Fatal(err)
	}
	w := &window{t: t, App: a, now: time.Now()}
	w.Driver = uitest.New(ui.Vec{X: 1280, Y: 800}, func(c *ui.Core) {
		w.now = w.now.Add(uitest.FrameMS * time.Millisecond)
		w.quit = w.App.Frame(c, w.now) != nil || w.quit
	})
	w.Core.Words = bench.CoreWords()
	t.Cleanup(func() { a.Close() })
	w.click("Understood")
	return w
}

// shows waits until words stand on the screen.
func (w *window) shows(text string) {
	w.t.Helper()
	for end := time.Now().Add(time.Minute); !w.HasText(text); time.Sleep(time.Millisecond) {
		if time.Now().After(end) {
			w.t.Fatalf("%q never comes; there is: %v", text, w.texts())
		}
		w.Idle()
	}
	w.Idle()
}

func (w *window) texts() (all []string) {
	for _, m := range w.List.Marks {
		if m.Kind == ui.KindText && !m.Shown.Empty() {
			all = append(all, m.Label)
		}
	}
	return all
}

// toBook goes to a page of the book.
func (w *window) toBook(tab string) {
	w.t.Helper()
	w.click(words.Say("desk_book.to_book"))
	w.shows(words.Say("desk_book.tab_learner"))
	w.click(words.Say(tab))
}

// into clicks a control that may have to be scrolled to: the focus goes through all until it is there.
func (w *window) into(label string) {
	w.t.Helper()
	for range 80 {
		if w.focused().Label == label {
			return
		}
		w.Key(ui.KeyTab)
	}
	w.t.Fatalf("%q cannot be reached; there are: %v", label, w.Labels())
}

// focused is the control that the keyboard is at.
func (w *window) focused() ui.Mark {
	for _, m := range w.List.Marks {
		if m.ID == w.Core.Focused() && m.ID != 0 {
			return m
		}
		if m.Kind == ui.KindChoice && m.Focus >= 0 && w.Core.Focused() != 0 && m.On {
			for i := range 8 {
				if w.Core.Focused().At(i) == m.ID {
					return m
				}
			}
		}
	}
	return ui.Mark{}
}

// writes puts the focus on a field with keys and writes into it in the place of what is there.
func (w *window) writes(label, text string) {
	w.t.Helper()
	w.into(label)
	w.Chord(ui.Ctrl('A'))
	w.Type(text)
}

// By keys alone: from home to the book, the attempt, items, decision, a wrong passphrase, the right one, verified, the sheet, and
// home again.
func TestAnAssessmentIsSignedByKeysAlone(t *testing.T) {
	d := openDepartment(t, assessor)
	path := d.plays(t, learner, 7, 2)
	w := d.sit(t, assessor)
	w.Key(ui.K('T').Key)
	w.shows(words.Say("desk_book.tab_learner"))
	w.Key(ui.K('A').Key)
	w.shows(words.Say("desk_book.can_sign"))
	w.into(words.Say("desk_book.awaiting_list"))
	w.Key(ui.KeyEnter)
	w.shows("Passed as computed: 100.0 points")
	w.into(words.Say("desk_book.not_rated"))
	w.Key(ui.KeyDown, ui.KeyDown)
	if m := w.focused(); !strings.Contains(m.Label, "complete (enough)") {
		t.Errorf("the item is at %q", m.Label)
	}
	w.writes(words.Say("desk_book.trains_for"), "perfusionist")
	w.writes(words.Say("desk_book.comments"), "calm; Mr Miller was content")
	w.shows("looks like somebody's name")
	w.writes(words.Say("desk_book.feedback"), "talked through")
	w.into(words.Say("desk_book.look_over"))
	w.Key(ui.KeyEnter)
	w.shows(words.Say("desk_book.will_stand"))
	w.want("looks like somebody's name") // the book warns too, before anybody signs
	field := words.Say("desk_book.phrase", assessor)
	w.writes(field, "not the passphrase")
	if m := w.focused(); strings.Contains(m.Value, "passphrase") || !strings.HasPrefix(m.Value, "••••") {
		t.Errorf("the passphrase shows: %q", m.Value)
	}
	w.Key(ui.KeyEnter)
	w.shows("this is not the passphrase of AS-1")
	if m := w.focused(); m.Value != "" {
		t.Errorf("%q is left of the wrong passphrase", m.Value)
	}
	w.writes(field, phrase)
	w.Key(ui.KeyEnter)
	w.shows(words.Say("desk_book.is_signed"))
	w.want(words.Say("desk_book.verdict", words.Say("book_cli.verdict_exact")))
	if err := d.book.Reread(); err != nil {
		t.Fatal(err)
	}
	root, err := d.book.Root()
	if err != nil {
		t.Fatal(err)
	}
	w.want(root.String())
	e := d.book.Entries[len(d.book.Entries)-1]
	b := e.Body.(*book.SignOff)
	if b.Learner != learner || b.Assessor != assessor || b.Outcome != book.Competent || b.For != "perfusionist" || b.Feedback != "talked through" || b.Comments != "calm; Mr Miller was content" ||
		len(b.Rated) != 1 || b.Rated[0].Level != 2 || b.Number != 1 {
		t.Errorf("%+v", b)
	}
	w.Key(ui.K('S').Key)
	w.Idle()
	w.writes(words.Say("result.save_path"), "sheet.pdf")
	w.Key(ui.KeyEnter)
	w.shows(words.Say("desk_book.saved", filepath.Join(d.folder, "sheet.pdf")))
	if made, err := os.ReadFile(filepath.Join(d.folder, "sheet.pdf")); err != nil || !strings.HasPrefix(string(made), "%PDF-") {
		t.Error(err)
	}
	w.Key(ui.KeyEscape)
	w.shows(words.Say("desk_book.awaiting", 0))
	w.shows(words.Say("desk_book.signed", 1))
	w.Key(ui.KeyEscape)
	w.Idle()
	w.want(words.Say("home.lessons"))
	if _, err := os.Stat(path); err != nil {
		t.Error("the attempt is gone from the folder")
	}
	v, err := ledger.Verify(t.Context(), ledger.Places{Book: d.place, Keys: d.place}, ledger.Verification{})
	if err != nil || v.Worst() > book.Exact || v.Count(book.Exact) != 1 {
		t.Error(v, err)
	}
}
