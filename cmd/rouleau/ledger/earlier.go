package ledger

import (
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"rouleau/scoring/attempt"
	"rouleau/scoring/book"
)

// All attempts before the one that is signed off: those in a folder, and those that the book knows of. An attempt is told from others
// by its seal, worked out with the learner's code as who played and without what the learner marked after the case, so that it is
// the same wherever it was found.

// seal is what an attempt of a learner is told from others by.
func seal(a *attempt.Attempt, learner string) string {
	b := *a
	b.Self = nil
	return b.PlayedBy(learner).Seal
}

// earlierOf says what a record keeps of an earlier attempt.
func earlierOf(a *attempt.Attempt, learner string) book.Earlier {
	e := book.Earlier{Played: a.When, Mode: a.Mode, Points: float64(a.Grade.Points), Passed: a.Grade.Passed, Seal: seal(a, learner)}
	for _, c := range a.Grade.Critical {
		if !c.Mended {
			e.Critical++
		}
	}
	return e
}

// earlier gives the attempts of the same learner at the same scenario that were played before this one, in the order in which they
// were played.
func (l *Ledger) earlier(a *attempt.Attempt, s Signing, name string, d *Drafted) ([]book.Earlier, error) {
	all := []book.Earlier{}
	own := seal(a, s.Learner)
	put := func(e book.Earlier) {
		if e.Seal != own && !played(e.Played).After(played(a.When)) && !slices.ContainsFunc(all, func(o book.Earlier) bool { return o.Seal == e.Seal }) {
			all = append(all, e)
		}
	}
	for _, e := range l.Entries {
		b, ok := e.Body.(*book.SignOff)
		if !ok || e.VoidedBy != "" || b.Learner != s.Learner || b.Scenario.ID != a.Scenario.ID {
			continue
		}
		signed, err := attemptIn(e)
		if err != nil {
			return nil, err
		}
		put(earlierOf(signed, s.Learner))
		for _, before := range b.Earlier {
			put(before)
		}
	}
	if s.Earlier != "" {
		kept, err := l.inFolder(a, s, name, d)
		if err != nil {
			return nil, err
		}
		for _, e := range kept {
			put(e)
		}
	}
	slices.SortStableFunc(all, func(x, y book.Earlier) int {
		if c := played(x.Played).Compare(played(y.Played)); c != 0 {
			return c
		}
		return strings.Compare(x.Seal, y.Seal)
	})
	return all, nil
}

// attemptIn is the attempt of a sign-off.
func attemptIn(e *book.Entry) (*attempt.Attempt, error) {
	data, err := e.Attachment()
	if err != nil {
		return nil, err
	}
	return attempt.Parse(e.Leaf.ID, data)
}

// played is when an attempt was played; its file was read strictly, so that it is a time.
func played(when string) time.Time {
	t, _ := time.Parse(time.RFC3339, when)
	return t
}

// inFolder gives the learner's attempts at the scenario in a folder. A file that cannot be read is told of: it may be one of them.
func (l *Ledger) inFolder(a *attempt.Attempt, s Signing, name string, d *Drafted) ([]book.Earlier, error) {
	files, err := os.ReadDir(s.Earlier)
	switch {
	case errors.Is(err, os.ErrNotExist):
		return nil, wrong("ledger.no_earlier", s.Earlier)
	case err != nil:
		return nil, machine("ledger.no_read", s.Earlier, plain(err))
	}
	var all []book.Earlier
	for _, f := range files {
		if f.IsDir() || !strings.EqualFold(filepath.Ext(f.Name()), ".json") {
			continue
		}
		path := filepath.Join(s.Earlier, f.Name())
		if otherCase(path, a.Scenario.ID) {
			continue
		}
		other, err := attempt.Load(path)
		switch {
		case err != nil:
			d.warn("ledger.earlier_unread", f.Name())
		case other.Operator != s.Learner && !sameName(other.Operator, name):
		case !other.Sealed():
			d.warn("ledger.earlier_changed", f.Name())
		default:
			all = append(all, earlierOf(other, s.Learner))
		}
	}
	return all, nil
}

// otherCase says whether a file is whole and surely no attempt at a scenario: one at another, or something else that lies there.
func otherCase(path, scenario string) bool {
	var is struct {
		Scenario struct {
			ID string `json:"id"`
		} `json:"scenario"`
	}
	data, err := os.ReadFile(path)
	return err == nil && json.Valid(data) && (json.Unmarshal(data, &is) != nil || is.Scenario.ID != scenario)
}

// notTwice refuses an attempt that is signed off already, for this learner or for another, unless the new record takes the place of
// that one.
func (l *Ledger) notTwice(a *attempt.Attempt, b *book.SignOff) error {
	for _, e := range l.Entries {
		old, ok := e.Body.(*book.SignOff)
		if !ok || !e.InForce() || e.Leaf.ID == b.Supersedes || old.Played != a.When || old.Seed != b.Seed {
			continue
		}
		signed, err := attemptIn(e)
		if err != nil {
			return err
		}
		if seal(signed, b.Learner) != seal(a, b.Learner) {
			continue
		}
		if old.Learner != b.Learner {
			return notRight("ledger.signed_for_another", old.Learner, e.Leaf.ID)
		}
		return notRight("ledger.signed_already", e.Leaf.ID, e.Leaf.ID[:8])
	}
	return nil
}
