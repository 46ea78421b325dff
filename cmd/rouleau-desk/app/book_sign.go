// From an attempt to a signed record, and second ratings.

package app

import (
	"errors"
	"path/filepath"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ledgerdesk"
	"rouleau/cmd/rouleau/ledger"
	"rouleau/scoring/attempt"
	"rouleau/scoring/book"
)

// reviewBook opens an attempt to be judged.
func (a *App) reviewBook(path string) {
	b := &a.book
	var waiting *ledgerdesk.Waiting
	for i := range b.view.Book.Waiting {
		if w := &b.view.Book.Waiting[i]; w.Path == path {
			waiting = w
		}
	}
	l := b.ledger
	if waiting == nil || l == nil {
		return
	}
	r := &ledgerdesk.Review{Waiting: *waiting}
	a.bookDo(words.Say("desk_book.loading"), false, func(*bookJob) func() {
		got, err := attempt.Load(path)
		if err != nil {
			return func() { b.view.Notice = err.Error() }
		}
		r.Attempt, r.Due, r.Role = got, l.DueOf(got.Scenario.ID), roleOf(l, r.Learner)
		return func() { b.view.Review = r }
	})
}

// roleOf is what a learner trained for the last time, or else what anybody did.
func roleOf(l *ledger.Ledger, learner string) (role string) {
	for i := len(l.Entries) - 1; i >= 0; i-- {
		s, ok := l.Entries[i].Body.(*book.SignOff)
		if ok && s.Learner == learner {
			return s.For
		}
		if ok && role == "" {
			role = s.For
		}
	}
	return role
}

// draftBook makes the record that would be signed. The attempt is played again before anybody signs for it, and earlier ones are
// looked for beside it.
func (a *App) draftBook(act ledgerdesk.Act) {
	b, f := &a.book, &act.Form
	l, r := b.ledger, b.view.Review
	if l == nil || r == nil || b.job != nil {
		return
	}
	g := ledger.Signing{Attempt: act.Path, Learner: f.Learner, Assessor: f.Assessor, For: strings.TrimSpace(f.For), Outcome: book.NotYet, Override: strings.TrimSpace(f.Override),
		Rated: f.Rated, Comments: strings.TrimSpace(f.Comments), Feedback: strings.TrimSpace(f.Feedback), Due: f.Due, Earlier: filepath.Dir(act.Path)}
	if f.Competent {
		g.Outcome = book.Competent
	}
	past := a.bookPast()
	b.view.Notice = ""
	here := func() bool { return b.view.Review == r } // else it was looked away from meanwhile, and nobody waits for the record
	a.bookDo(words.Say("desk_book.drafting"), false, func(*bookJob) func() {
		if err := l.Reread(); err != nil { // others may have signed it meanwhile
			return func() {
				if here() {
					b.view.Notice = err.Error()
				}
			}
		}
		read, notice := readBook(l, past)
		d, err := l.Draft(g)
		return func() {
			a.haveRead(read, notice)
			switch {
			case !here():
			case err != nil:
				b.view.Notice = err.Error()
			default:
				b.draft, b.view.Draft = d, &ledgerdesk.Draft{Record: d.SignOff, Warnings: d.Warnings}
			}
		}
	})
}

// signer is somebody who signs with a passphrase that was given.
func signer(person, phrase string) ledger.As {
	return ledger.As{Person: person, Phrase: func(string, book.Role) (string, error) { return phrase, nil }}
}

// refused says why something was not written. What a flag of the commands answers is told as what to do from here.
func refused(err error) string {
	if clock := (*book.ClockBehind)(nil); errors.As(err, &clock) {
		return words.Say("desk_book.clock_behind", err)
	}
	return err.Error()
}

// signBook signs the record and verifies it at once. What goes wrong is told, and the record stays as it is to be signed.
func (a *App) signBook(phrase string) {
	b := &a.book
	l, d, r := b.ledger, b.draft, b.view.Review
	if l == nil || d == nil || r == nil || b.job != nil {
		return
	}
	past, view, path := a.bookPast(), b.view.Draft, r.Path
	view.Fault = ""
	a.bookDo(words.Say("desk_book.signing"), false, func(*bookJob) func() {
		e, err := l.Sign(d, signer(d.SignOff.Assessor, phrase))
		if err != nil {
			return func() {
				view.Fault = refused(err)
				view.Tries++
			}
		}
		signed := verifiedOne(l.Places, e.Leaf.ID)
		read, notice := readBook(l, past)
		return func() {
			b.draft, b.view.Draft, b.view.Review, b.view.Signed = nil, nil, nil, signed
			b.desk.Done(path)
			a.haveRead(read, notice)
		}
	})
}

// rateRecord writes a second rating and says how far the two agree.
func (a *App) rateRecord(act ledgerdesk.Act) {
	b := &a.book
	l, r := b.ledger, b.view.Record
	if l == nil || r == nil || b.job != nil {
		return
	}
	past := a.bookPast()
	r.Fault = ""
	a.bookDo(words.Say("desk_book.rating"), false, func(*bookJob) func() {
		_, agreement, err := l.Rate(act.ID, act.Form.Rated, strings.TrimSpace(act.Form.Comments), signer(act.Form.Assessor, act.Phrase))
		if err != nil {
			return func() {
				r.Fault = refused(err)
				r.Tries++
			}
		}
		read, notice := readBook(l, past)
		return func() {
			b.desk.Rated(act.ID)
			a.haveRead(read, notice)
			a.showRecord(act.ID)
			b.view.Notice = words.Say("desk_book.rated", agreedWords(agreement))
		}
	})
}

// agreedWords say how far two raters agree.
func agreedWords(g book.Agreement) string {
	switch {
	case g.Computed:
		return words.Say("book_cli.kappa", g.Same, g.Items, g.Kappa)
	case g.Items > 0:
		return words.Say("book_cli.no_kappa", g.Same, g.Items)
	}
	return ""
}
