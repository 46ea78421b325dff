// Package ledger is the work behind the competency book's commands and pages: opening a book with its keys, making records out of
// what somebody asks for, checking, sending, exporting. It asks nobody anything and prints nothing; passphrases are given to it.
// This file opens and makes books.
package ledger

import (
	"crypto/rand"
	"os"
	"path/filepath"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/shelf"
	"rouleau/scoring/book"
)

// now is the clock of this machine. Tests have their own.
var now = time.Now

// Variable names the variable of the environment that says where the book is.
const Variable = "ROULEAU_BOOK"

// Places are where a book and the keys of those who sign in it lie.
type Places struct {
	Book string // the path of a folder, or the URL of a database of PostgreSQL
	Keys string // a folder: keys and names lie in it
}

// Find settles the places: what is given, else what the environment says, else the user's configuration folder. Keys lie in the
// folder of the book; where the book is on a server, in the configuration folder.
func Find(bookPlace, keys string) (Places, error) {
	p := Places{bookPlace, keys}
	if p.Book == "" {
		p.Book = os.Getenv(Variable)
	}
	own := func() (string, error) {
		base, err := os.UserConfigDir()
		if err != nil {
			return "", wrong("ledger.no_place", Variable)
		}
		return filepath.Join(base, "rouleau", "book"), nil
	}
	var err error
	if p.Book == "" {
		if p.Book, err = own(); err != nil {
			return p, err
		}
	}
	switch {
	case p.Keys != "":
	case shelf.IsURL(p.Book):
		p.Keys, err = own()
	default:
		p.Keys = p.Book
	}
	return p, err
}

// Ledger is an open book with its keys and names.
type Ledger struct {
	*book.Book
	Places
	shelf *shelf.Shelf
}

// Open opens a book that is there. One that is not as it was written is not opened: see Verify.
func Open(p Places) (*Ledger, error) {
	s, err := shelf.Open(p.Book)
	if err != nil {
		return nil, err
	}
	l, err := over(s, p)
	if err != nil {
		s.Close()
		return nil, err
	}
	return l, nil
}

func over(s *shelf.Shelf, p Places) (*Ledger, error) {
	b, err := book.Open(s, rand.Reader, now)
	if err != nil {
		return nil, err
	}
	return &Ledger{b, p, s}, nil
}

// Close lets go of the book.
func (l *Ledger) Close() error { return l.shelf.Close() }

// Where is the place of the book in words, without a password.
func (l *Ledger) Where() string { return l.shelf.Where() }

// Found makes a new book with its first administrator. A key of the administrator that is there already is used; otherwise one is
// made. What goes wrong leaves nothing behind.
func Found(p Places, origin, administrator, phrase string) (l *Ledger, err error) {
	if err := book.ValidCode(administrator); err != nil {
		return nil, wrongCall(err)
	}
	there := shelf.KeyThere(p.Keys, administrator, book.Administrator)
	var key *book.Signer
	if there {
		key, err = shelf.LoadKey(p.Keys, administrator, book.Administrator, phrase)
	} else {
		key, err = book.NewSigner(rand.Reader)
	}
	if err != nil {
		return nil, err
	}
	s, err := newShelf(p.Book, origin)
	if err != nil {
		return nil, err
	}
	defer func() {
		if err == nil {
			return
		}
		if !there {
			shelf.RemoveKey(p.Keys, administrator, book.Administrator)
		}
		s.Discard()
	}()
	if !there {
		if err := saveKey(p.Keys, administrator, book.Administrator, key, phrase); err != nil {
			return nil, err
		}
	}
	if l, err = over(s, p); err != nil {
		return nil, err
	}
	_, err = l.Write(&book.Key{Person: administrator, Role: book.Administrator, Public: key.Public()}, nil, key)
	return l, err
}

// newShelf makes the place of a book. One whose making was broken off before its first record is gone on with.
func newShelf(place, origin string) (*shelf.Shelf, error) {
	s, err := shelf.Create(place, origin)
	if err == nil {
		return s, nil
	}
	there, broken := shelf.Open(place)
	if broken != nil {
		return nil, err
	}
	empty := true
	bad := there.Rows(0, func(book.Row) error {
		empty = false
		return nil
	})
	if bad != nil || !empty || there.Origin() != origin {
		there.Close()
		return nil, err
	}
	return there, nil
}

// Backup writes the book, without keys and names, to a new file.
func (l *Ledger) Backup(file string) error { return l.shelf.Backup(file) }

// Restore makes a book anew from a backup, and opens it.
func Restore(file string, p Places) (*Ledger, error) {
	s, err := shelf.Restore(file, p.Book)
	if err != nil {
		return nil, err
	}
	l, err := over(s, p)
	if err != nil {
		s.Discard()
		return nil, err
	}
	return l, nil
}

// find is the record of a number or its beginning.
func (l *Ledger) find(id string) (*book.Entry, error) {
	if e := l.Find(id); e != nil {
		return e, nil
	}
	return nil, wrong("ledger.no_record", id)
}

// Errors with whose fault they are. Any other error is about what was asked for: a rule of the book, or a book that is damaged.

func wrong(key string, args ...any) error {
	return &shelf.Trouble{Kind: shelf.Wrong, Text: words.Say(key, args...)}
}

func wrongCall(err error) error { return &shelf.Trouble{Kind: shelf.Wrong, Text: err.Error()} }

func machine(key string, args ...any) error {
	return &shelf.Trouble{Kind: shelf.Machine, Text: words.Say(key, args...)}
}

func notRight(key string, args ...any) error {
	return &shelf.Trouble{Kind: shelf.NotRight, Text: words.Say(key, args...)}
}
