package book

import "errors"

// What keeps a book. A store knows nothing of what rows mean.

// ErrMoved says that somebody else has written since the book was read: read what is new, and try again.
var ErrMoved = errors.New("somebody else has written to the book in between")

// Kept is a checkpoint as a store keeps it.
type Kept struct {
	Size   int64
	Signed []byte
}

// Store keeps rows in their order, and the checkpoint after each. All it does is whole or not done, and what it has answered
// for is on the disk.
type Store interface {
	// Origin is the name of the book.
	Origin() string
	// Rows gives those from one place on, one after the other, and stops at an error of what it gives them to, which it gives back
	// as it is. What it gives them to asks the store for nothing.
	Rows(from int64, each func(Row) error) error
	// Attachment is that of the row at a place, nil where it has none.
	Attachment(at int64) ([]byte, error)
	// Checkpoints are all that were kept, in order.
	Checkpoints() ([]Kept, error)
	// Append adds a row at a place with the checkpoint after it, and forgets the body and attachment of others at the same time.
	// It gives ErrMoved when there is a row at that place already.
	Append(at int64, row Row, after Kept, forget []int64) error
}
