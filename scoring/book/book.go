package book

import (
	"errors"
	"fmt"
	"io"
	"time"

	"golang.org/x/mod/sumdb/tlog"
)

// A book that is open: its state, and writing to it.

// Book is an open book.
type Book struct {
	*State
	store  Store
	chance io.Reader
	now    func() time.Time
	damage error // that was found in reading
	// ClockIsRight is said by somebody who writes although the book was last written to later than now: then it was the other
	// clock that was wrong.
	ClockIsRight bool
}

// Damaged is a book in which something is not as it was written. It can be verified, and nothing can be written to it.
type Damaged struct {
	Seq  int64
	What error
}

func (d *Damaged) Error() string {
	return fmt.Sprintf("record %d of the book is not as it was written (%v): nothing is written to a damaged book; verify it, and restore a backup", d.Seq, d.What)
}

func (d *Damaged) Unwrap() error { return d.What }

// ClockBehind is that the book was last written to later than now, so that one of two clocks is wrong. See Book.ClockIsRight.
type ClockBehind struct{ Now, Last time.Time }

func (c *ClockBehind) Error() string {
	return fmt.Sprintf("the clock of this machine says %s and the book was last written to at %s: set the clock right", c.Now.Format(timeLayout), c.Last.Format(timeLayout))
}

// Open reads a book. Chance draws numbers and salts; now tells the time with its zone.
func Open(store Store, chance io.Reader, now func() time.Time) (*Book, error) {
	b := &Book{State: NewState(store.Origin()), store: store, chance: chance, now: now}
	b.fetch = store.Attachment
	return b, b.Reread()
}

// Reread takes in what others have written. A book that was found damaged stays so, however often it is read.
func (b *Book) Reread() error {
	if b.damage != nil {
		return b.damage
	}
	err := b.store.Rows(b.Size(), func(r Row) error {
		if err := b.Add(r); err != nil {
			b.damage = &Damaged{b.Size() - 1, err}
		}
		return b.damage
	})
	if err != nil {
		return err
	}
	if at := b.State.unaccounted(); at >= 0 {
		b.damage = &Damaged{at, errors.New("its body is missing, and no record says that it was deleted")}
	}
	return b.damage
}

// unaccounted is a record whose body is gone without a word, -1 for none.
func (s *State) unaccounted() int64 {
	for _, e := range s.Entries {
		if e.Leaf != nil && e.Body == nil && e.ForgottenBy == "" {
			return e.Seq
		}
	}
	return -1
}

// tries is how often writing is tried again when others write at the same time.
const tries = 50

// skew is how far the clocks of workstations may be apart without anybody being asked.
const skew = 2 * time.Minute

var errBusy = errors.New("others write to the book all the time: try again in a moment")

// Write adds a record, signed with a key. What the rules do not allow is refused and nothing is written.
func (b *Book) Write(body any, attachment []byte, with *Signer) (*Entry, error) {
	for range tries {
		e, err := b.writeOnce(body, attachment, with)
		if !errors.Is(err, ErrMoved) {
			return e, err
		}
		if err := b.Reread(); err != nil {
			return nil, err
		}
	}
	return nil, errBusy
}

func (b *Book) writeOnce(body any, attachment []byte, with *Signer) (*Entry, error) {
	kind, err := kindOf(body)
	if err != nil {
		return nil, err
	}
	at := b.now()
	if last := b.lastAt(); at.Before(last.Add(-skew)) && !b.ClockIsRight {
		return nil, &ClockBehind{at, last}
	}
	salt, err := drawn(b.chance, saltBytes)
	if err != nil {
		return nil, err
	}
	if so, ok := body.(*SignOff); ok {
		if so.AttemptSHA, err = attach(salt, attachment); err != nil {
			return nil, err
		}
	}
	row, leaf, err := seal(kind, body, attachment, salt, at, with, b.chance)
	if err != nil {
		return nil, err
	}
	if _, err := b.judge(row); err != nil {
		return nil, err
	}
	var forget []int64
	if f, ok := body.(*Forget); ok {
		forget = []int64{b.byID[f.Of].Seq}
	}
	after := b.tree.copied()
	if err := after.add(row.Leaf); err != nil {
		return nil, err
	}
	c, err := after.checkpoint(b.Origin, after.size)
	if err != nil {
		return nil, err
	}
	signed, err := c.sign(with)
	if err != nil {
		return nil, err
	}
	if err := b.store.Append(b.Size(), row, Kept{after.size, signed}, forget); err != nil {
		return nil, err
	}
	if err := b.Add(row); err != nil {
		return nil, err
	}
	for _, seq := range forget {
		b.Entries[seq].Body, b.Entries[seq].row.Body = nil, nil
	}
	return b.byID[leaf.ID], nil
}

// lastAt is when the book was last written to.
func (b *Book) lastAt() time.Time {
	if len(b.Entries) == 0 {
		return time.Time{}
	}
	t, err := time.Parse(timeLayout, b.Entries[len(b.Entries)-1].Leaf.At)
	if err != nil {
		return time.Time{}
	}
	return t
}

func kindOf(body any) (Kind, error) {
	switch body.(type) {
	case *Key:
		return KindKey, nil
	case *SignOff:
		return KindSignOff, nil
	case *Rating:
		return KindRating, nil
	case *Void:
		return KindVoid, nil
	case *Forget:
		return KindForget, nil
	case *Case:
		return KindCase, nil
	case *Event:
		return KindEvent, nil
	case *PlanText:
		return KindPlan, nil
	}
	return "", fmt.Errorf("%T is no record", body)
}

// Root is the root of the whole log.
func (s *State) Root() (tlog.Hash, error) { return s.tree.root(s.Size()) }
