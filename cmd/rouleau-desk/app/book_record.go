// Records of the book: looked at, verified, saved as sheets, and their attempts opened as results.

package app

import (
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ledgerdesk"
	"rouleau/cmd/rouleau/ledger"
	"rouleau/cmd/rouleau/sheet"
	"rouleau/scoring/attempt"
	"rouleau/scoring/book"
)

// entry is a record of the book, nil where there is none or the book is in the hands of a job.
func (a *App) entry(id string) *book.Entry {
	if a.book.job != nil || a.book.ledger == nil {
		return nil
	}
	return a.book.ledger.Find(id)
}

// showRecord puts a record on the screen. But for the titles of cases what it needs lies in memory.
func (a *App) showRecord(id string) {
	b, e := &a.book, a.entry(id)
	if e == nil {
		return
	}
	r := &ledgerdesk.Record{Entry: entryOf(b.ledger, e, a.bookPast().titles)}
	if _, there := e.Body.(*book.SignOff); there {
		page, err := sheet.Of(b.ledger.State, e, true)
		if err != nil {
			b.view.Notice = err.Error()
			return
		}
		r.Page = page
	}
	if old := b.view.Signed; old != nil && old.ID == id {
		r.Verified = old
	}
	b.view.Record, b.view.Signed = r, nil
}

// verifiedOne verifies one record of a book.
func verifiedOne(p ledger.Places, id string) *ledgerdesk.Signed {
	one, err := ledger.VerifyOne(p, id)
	if err != nil {
		return &ledgerdesk.Signed{ID: id, What: words.Say("desk_book.unverified", err)}
	}
	return &ledgerdesk.Signed{ID: id, Verdict: ledger.VerdictWords(one.Verdict), What: one.What, Root: one.Root, Records: one.Records, Log: one.Log,
		Good: one.Verdict <= book.Exact && len(one.Log) == 0}
}

func (a *App) verifyRecord(id string) {
	b := &a.book
	p, r := b.places, b.view.Record
	a.bookDo(words.Say("desk_book.verifying_one"), false, func(*bookJob) func() {
		got := verifiedOne(p, id)
		return func() { r.Verified = got }
	})
}

// resultOfRecord opens the attempt of a record at its result.
func (a *App) resultOfRecord(id string) {
	b, e := &a.book, a.entry(id)
	if e == nil {
		return
	}
	a.bookDo(words.Say("desk_book.loading"), false, func(*bookJob) func() {
		name := "record-" + e.Leaf.ID[:8] + ".json"
		data, err := e.Attachment()
		var got *attempt.Attempt
		if err == nil {
			got, err = attempt.Parse(name, data)
		}
		return func() {
			if err == nil && b.on && a.begun.session == nil {
				err = a.result(&recording{got, name})
			}
			a.bookTell(err)
		}
	})
}

// saveSheet writes the sheet of a record as a page.
func (a *App) saveSheet(act ledgerdesk.Act) {
	b := &a.book
	if b.job != nil || b.ledger == nil {
		return
	}
	l, to := b.ledger, act.Path
	e := l.Find(act.ID)
	if e == nil {
		return
	}
	if filepath.Base(to) == to && !strings.HasPrefix(to, "~") {
		to = filepath.Join(a.folder.Path(), to)
	}
	to = wholePath(to)
	if info, err := os.Stat(to); err == nil && info.IsDir() {
		to = filepath.Join(to, "record-"+e.Leaf.ID[:8]+".html")
	}
	a.bookDo(words.Say("desk_book.saving"), false, func(*bookJob) func() {
		err := writeSheet(l, e, to, act.With)
		return func() {
			b.view.Notice = words.Say("desk_book.saved", to)
			if err != nil {
				b.view.Notice = err.Error()
			}
		}
	})
}

func writeSheet(l *ledger.Ledger, e *book.Entry, to string, comments bool) error {
	kind := kinds[strings.ToLower(filepath.Ext(to))]
	if kind == nil {
		return errors.New(words.Say("desk_book.save_kind", filepath.Base(to)))
	}
	page, err := sheet.Of(l.State, e, comments)
	if err != nil {
		return err
	}
	content, err := kind(page)
	if err != nil {
		return err
	}
	return ledger.Place(to, content)
}

// spare are the processors that work beside the window may take.
func spare() int { return max(1, runtime.GOMAXPROCS(0)-1) }
