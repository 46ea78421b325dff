package shelf

import (
	"context"
	"errors"

	"rouleau/assets/words"
	"rouleau/scoring/book"
)

// What stands in the way, in words that say what to do.

// Kind is whose fault a trouble is.
type Kind uint8

// The kinds.
const (
	Wrong    Kind = iota // the call: something is not there, or is there already
	NotRight             // what was asked about
	Machine              // a disk, a server, rights
)

// Trouble is an error of this package.
type Trouble struct {
	Kind Kind
	Text string
}

func (t *Trouble) Error() string { return t.Text }

func wrong(key string, args ...any) error    { return &Trouble{Wrong, words.Say(key, args...)} }
func notRight(key string, args ...any) error { return &Trouble{NotRight, words.Say(key, args...)} }
func machine(key string, args ...any) error  { return &Trouble{Machine, words.Say(key, args...)} }

// cause is why a database refused.
type cause uint8

const (
	otherCause cause = iota
	taken            // somebody else has written this place a moment before
	full
	readOnly
	locked
	damaged
	disk // it cannot be read or written
)

// trouble words an error of a database.
func (s *Shelf) trouble(err error) error {
	var worded *Trouble
	if err == nil || errors.Is(err, book.ErrMoved) || errors.As(err, &worded) {
		return err
	}
	if answered, why, ok := refusal(err); ok && !errors.Is(err, context.DeadlineExceeded) {
		if answered {
			return machine("shelf.not_let_in", s.where, why)
		}
		return machine("shelf.no_server", s.where, why)
	}
	switch causeOf(err) {
	case taken:
		return book.ErrMoved
	case full:
		return machine("shelf.full", s.where)
	case readOnly:
		if s.barred != nil {
			return s.barred
		}
		return machine("shelf.read_only", s.where)
	case locked:
		return machine("shelf.locked", s.where)
	case damaged:
		return notRight("shelf.damaged", s.where)
	case disk:
		return machine("shelf.disk", s.where, plain(err))
	}
	return machine("shelf.trouble", s.where, plain(err))
}
