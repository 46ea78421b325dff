package book

import (
	"fmt"
	"math"
	"slices"

	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/sim"
)

// Verifying a book: that nothing was changed, and that the attempts in it come out as they were judged when they are played again.

// Verdict is what is found of one record.
type Verdict uint8

// The verdicts, the better first.
const (
	Sound        Verdict = iota // as written; there is nothing to play
	Exact                       // as written, and the attempt comes out the same to the bit
	Forgotten                   // its body was deleted, and the book says on whose word
	SameDecision                // as written; the attempt comes to the same decisions with other bits
	NoModel                     // as written; the model that it was played with is not in this program
	Mismatch                    // as written, and its attempt comes out otherwise, or was not judged so
	Broken                      // not as it was written
)

var verdictNames = [...]string{"sound", "exact", "deleted", "same_decisions", "model_not_here", "mismatch", "damaged"}

// String is the name used in files.
func (v Verdict) String() string { return verdictNames[v] }

// Finding is what is found of one record, with where and what in words for anything that is not in order.
type Finding struct {
	Seq     int64
	ID      string // "" where it cannot be read
	Verdict Verdict
	What    string
}

// Check is everything that is found of a book without playing anything.
type Check struct {
	State    *State
	Findings []Finding // of each record
	Log      []string  // what is wrong with the log as a whole; empty when nothing is
}

// Read reads all rows and checkpoints of a store and finds everything that is not as it was written. Checkpoints that were kept
// elsewhere are compared too.
func Read(store Store, elsewhere ...[]byte) (*Check, error) {
	c := &Check{State: NewState(store.Origin())}
	c.State.fetch = store.Attachment
	kept, err := c.read(store)
	if err != nil {
		return nil, err
	}
	for i, e := range c.State.Entries {
		f := &c.Findings[i]
		switch {
		case f.Verdict == Broken:
		case e.Body == nil && e.ForgottenBy == "":
			f.Verdict, f.What = Broken, "its body is missing, and no record says that it was deleted"
		case e.Body == nil:
			f.Verdict = Forgotten
		case e.ForgottenBy != "":
			f.Verdict, f.What = Broken, "it was deleted, and what it said is there again"
		}
	}
	c.checkpoints(kept, elsewhere)
	return c, nil
}

// read reads all rows, then the checkpoints. Checkpoints that go further are of records that somebody has written in between: then it
// reads on, until nothing comes any more.
func (c *Check) read(store Store) (kept []Kept, err error) {
	for {
		before := c.State.Size()
		err := store.Rows(before, func(r Row) error {
			f := Finding{Seq: c.State.Size()}
			if err := c.State.Add(r); err != nil {
				f.Verdict, f.What = Broken, err.Error()
			}
			if l := c.State.Entries[f.Seq].Leaf; l != nil {
				f.ID = l.ID
			}
			c.Findings = append(c.Findings, f)
			return nil
		})
		if err != nil {
			return nil, err
		}
		if kept, err = store.Checkpoints(); err != nil {
			return nil, err
		}
		if n := c.State.Size(); len(kept) == 0 || kept[len(kept)-1].Size <= n || n == before {
			return kept, nil
		}
	}
}

// Broken says in words what first is not as it was written, "" where everything is.
func (c *Check) Broken() string {
	if len(c.Log) > 0 {
		return c.Log[0]
	}
	for _, f := range c.Findings {
		if f.Verdict == Broken {
			return fmt.Sprintf("record %d: %s", f.Seq, f.What)
		}
	}
	return ""
}

// checkpoints compares the log with every checkpoint.
func (c *Check) checkpoints(kept []Kept, elsewhere [][]byte) {
	wrong := func(form string, args ...any) { c.Log = append(c.Log, fmt.Sprintf(form, args...)) }
	keys := c.State.publicKeys()
	compare := func(name string, signed []byte) {
		cp, err := openCheckpoint(signed, c.State.Origin, keys)
		switch {
		case err != nil:
			wrong("%s: %v", name, err)
			return
		case cp.Size > c.State.Size():
			wrong("%s is of %d records and there are %d: records at the end are missing", name, cp.Size, c.State.Size())
			return
		}
		root, err := c.State.tree.root(cp.Size)
		if err != nil || root != cp.Root {
			wrong("%s: the first %d records are not those it was made of", name, cp.Size)
		}
	}
	sizes := map[int64]bool{}
	for _, k := range kept {
		name := fmt.Sprintf("the checkpoint kept for %d records", k.Size)
		if sizes[k.Size] {
			wrong("%s stands twice", name)
		}
		sizes[k.Size] = true
		if cp, err := openCheckpoint(k.Signed, c.State.Origin, keys); err == nil && cp.Size != k.Size {
			wrong("%s is of %d", name, cp.Size)
		}
		compare(name, k.Signed)
	}
	for n := int64(1); n <= c.State.Size(); n++ {
		if !sizes[n] {
			wrong("the checkpoint for %d records is missing", n)
		}
	}
	for i, signed := range elsewhere {
		compare(fmt.Sprintf("checkpoint %d kept elsewhere", i+1), signed)
	}
}

// Replay plays the attempt of a record again and says how it compares. It only reads, so that several can be played at once.
// Nothing is judged anew by a newer model: what was played with another one is said to be so.
func (c *Check) Replay(seq int64) Finding { return c.ReplayBeside(seq, scoring.PlayYardstick) }

// ReplayBeside is Replay with a yardstick that the caller gives, as attempt.ReplayBeside has it.
func (c *Check) ReplayBeside(seq int64, yardstick func(sc *scenarios.Scenario, seed uint64, assessment bool) scoring.Yardstick) Finding {
	f := c.Findings[seq]
	e := c.State.Entries[seq]
	b, ok := e.Body.(*SignOff)
	if !ok || f.Verdict != Sound {
		return f
	}
	data, err := e.Attachment()
	if err != nil {
		f.Verdict, f.What = Broken, err.Error()
		return f
	}
	a, err := attempt.Parse("attempt", data)
	if err != nil {
		f.Verdict, f.What = Mismatch, "the attempt cannot be read: "+err.Error()
		return f
	}
	if what := b.differsFrom(a); what != "" {
		f.Verdict, f.What = Mismatch, what
		return f
	}
	if a.Model != sim.ModelVersion {
		f.Verdict, f.What = NoModel, fmt.Sprintf("it was played with model version %s and this program has %s", a.Model, sim.ModelVersion)
		return f
	}
	r, err := attempt.ReplayBeside(a, yardstick)
	switch {
	case err != nil:
		f.Verdict, f.What = Mismatch, err.Error()
	case r.Same():
		f.Verdict = Exact
	case !r.Sealed:
		f.Verdict, f.What = Mismatch, "the seal of the attempt does not fit it"
	case r.SameDecisions():
		f.Verdict, f.What = SameDecision, r.Difference()
	default:
		f.Verdict, f.What = Mismatch, r.Difference()
	}
	return f
}

// differsFrom says what in a record is not what its attempt holds, "" for nothing.
func (b *SignOff) differsFrom(a *attempt.Attempt) string {
	want := ofAttempt(a)
	switch {
	case b.Scenario != want.Scenario:
		return "the record names another scenario than its attempt"
	case b.Model != want.Model || b.Seed != want.Seed || b.Mode != want.Mode || b.Played != want.Played || b.LengthS != want.LengthS || b.Breaks != want.Breaks:
		return "the record tells otherwise than its attempt how it was played"
	case math.Float64bits(b.Points) != math.Float64bits(want.Points) || b.PassMark != want.PassMark || b.Passed != want.Passed:
		return fmt.Sprintf("the record has %g points and its attempt %g", b.Points, want.Points)
	case !slices.Equal(b.Criteria, want.Criteria):
		return "a criterion of the record is not as in its attempt"
	case !slices.Equal(b.Critical, want.Critical):
		return "the errors that points never make good are not those of its attempt"
	case !slices.Equal(b.Parts, want.Parts):
		return "the sums of the parts are not those of its attempt"
	}
	return ""
}
