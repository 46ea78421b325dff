// How a book comes to be open: it is looked for, opened and read; or, where there is none, begun.

package app

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ledgerdesk"
	"rouleau/cmd/rouleau/ledger"
	"rouleau/cmd/rouleau/shelf"
)

// openBook shows the pages. The book is looked for where the commands look for it.
func (a *App) openBook() {
	b := &a.book
	b.on = true
	b.view = ledgerdesk.View{Who: a.settings.Who, MaySign: a.mayBook, Work: b.view.Work}
	if b.job != nil {
		return // what goes on from the last time is waited for, and then the book is opened
	}
	past := a.bookPast()
	a.bookDo(words.Say("desk_book.reading"), false, func(*bookJob) func() {
		p, err := ledger.Find("", "")
		if err != nil {
			return func() { b.view.Stage, b.view.Fault = ledgerdesk.Shut, err.Error() }
		}
		if !shelf.IsURL(p.Book) {
			info, err := os.Stat(filepath.Join(p.Book, shelf.FileName))
			if errors.Is(err, fs.ErrNotExist) || err == nil && info.Size() == 0 { // an empty file is left where making one was broken off
				return func() { a.noBook(p, "") }
			}
		}
		l, err := ledger.Open(p)
		if err != nil {
			return func() {
				b.places, b.view.Place = p, placeOf(p)
				b.view.Stage, b.view.Fault = ledgerdesk.Shut, err.Error()
			}
		}
		if l.Size() == 0 { // making it was broken off before its first record
			l.Close()
			return func() { a.noBook(p, l.Origin) }
		}
		return a.opened(p, l, past)
	})
}

// noBook shows how to begin a book; where its making was broken off, under the name that it was given.
func (a *App) noBook(p ledger.Places, origin string) {
	b := &a.book
	b.places, b.view.Place, b.view.Book.Origin, b.view.Stage = p, placeOf(p), origin, ledgerdesk.NoBook
}

// placeOf is the place of a book that is not open, without a password.
func placeOf(p ledger.Places) string {
	if shelf.IsURL(p.Book) {
		return words.Say("desk_book.server")
	}
	return p.Book
}

// opened reads a book that has just been opened. It is for jobs.
func (a *App) opened(p ledger.Places, l *ledger.Ledger, past bookPast) func() {
	read, notice := readBook(l, past)
	where := l.Where()
	return func() {
		b := &a.book
		b.places, b.ledger, b.view.Place, b.view.Stage, b.view.Fault = p, l, where, ledgerdesk.Open, ""
		a.haveRead(read, notice)
	}
}

// foundBook begins a book at the place where there is none.
func (a *App) foundBook(f ledgerdesk.Founding) {
	b := &a.book
	p, past := b.places, a.bookPast()
	a.bookDo(words.Say("desk_book.founding"), false, func(*bookJob) func() {
		l, err := ledger.Found(p, f.Origin, f.Administrator, f.Phrase)
		if err != nil {
			return func() { b.view.Fault = err.Error() }
		}
		then := a.opened(p, l, past)
		return func() {
			then()
			b.view.Notice = words.Say("desk_book.founded")
		}
	})
}
