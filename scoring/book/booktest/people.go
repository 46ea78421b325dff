// This file holds a book with people in it.

package booktest

import (
	"crypto/sha256"
	"encoding/binary"
	"testing"
	"time"

	"rouleau/scoring/attempt"
	"rouleau/scoring/book"
)

// Codes of the people of a test book.
const (
	Admin   = "ADM-1"
	First   = "AS-1"
	Second  = "AS-2"
	Trainee = "P-07"
	Other   = "P-08"
)

// Chance gives numbers that look like chance and are the same in every run.
type Chance struct{ N uint64 }

// Read fills b.
func (c *Chance) Read(b []byte) (int, error) {
	for done := 0; done < len(b); {
		c.N++
		sum := sha256.Sum256(binary.LittleEndian.AppendUint64(nil, c.N))
		done += copy(b[done:], sum[:])
	}
	return len(b), nil
}

// Bench is a book for tests, with people in it and their keys.
type Bench struct {
	*book.Book
	Store book.Store
	Keys  map[string]*book.Signer
	Clock time.Time // a minute later each time it is asked
}

// New fills an empty store with an administrator, two assessors and two learners.
func New(t testing.TB, store book.Store) *Bench {
	t.Helper()
	chance := &Chance{}
	b := &Bench{Store: store, Keys: map[string]*book.Signer{}, Clock: time.Date(2031, 5, 14, 9, 0, 0, 0, time.FixedZone("", 2*3600))}
	now := func() time.Time {
		b.Clock = b.Clock.Add(time.Minute)
		return b.Clock
	}
	var err error
	if b.Book, err = book.Open(store, chance, now); err != nil {
		t.Fatal(err)
	}
	for _, who := range []struct {
		code string
		role book.Role
	}{{Admin, book.Administrator}, {First, book.Assessor}, {Second, book.Assessor}, {Trainee, book.Learner}, {Other, book.Learner}} {
		k := &book.Key{Person: who.code, Role: who.role}
		if who.role != book.Learner {
			s, err := book.NewSigner(chance)
			if err != nil {
				t.Fatal(err)
			}
			b.Keys[who.code], k.Public = s, s.Public()
		}
		b.Must(t, k, nil, Admin)
	}
	return b
}

// Must writes a record that has to be allowed.
func (b *Bench) Must(t testing.TB, body any, attachment []byte, who string) *book.Entry {
	t.Helper()
	e, err := b.Write(body, attachment, b.Keys[who])
	if err != nil {
		t.Fatalf("%T by %s: %v", body, who, err)
	}
	return e
}

// SignOff is a sign-off of an attempt by an assessor.
func SignOff(t testing.TB, file []byte, learner, assessor string) *book.SignOff {
	t.Helper()
	a, err := attempt.Parse("attempt", file)
	if err != nil {
		t.Fatal(err)
	}
	s := book.Draft(a)
	s.Learner, s.Assessor, s.For, s.Date, s.Due = learner, assessor, "perfusionist", "2031-05-14T10:00:00+02:00", "2034-05-14"
	s.MarkSetBy = "as the scenario has it"
	s.Outcome = book.NotYet
	if s.Passed {
		s.Outcome = book.Competent
	}
	return s
}
