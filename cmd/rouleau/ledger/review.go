package ledger

import (
	"rouleau/cmd/rouleau/shelf"
	"rouleau/scoring/book"
)

// What the pages of the window ask beside what the commands do: who could sign before anybody tries, and one record verified by
// itself.

// LearnerNamed is the learner of the book who stands in an attempt as who played, by code or by name; "" for nobody. Names are
// those of Names.
func (l *Ledger) LearnerNamed(operator string, names map[string]string) string {
	for _, p := range l.People() {
		if p.Role == book.Learner && (p.Code == operator || sameName(operator, names[p.Code])) {
			return p.Code
		}
	}
	return ""
}

// MaySign says why somebody cannot sign here for a learner as assessor, nil where nothing stands in the way that can be known
// beforehand. Learner "" asks only whether they could sign for anybody.
func (l *Ledger) MaySign(learner, assessor string) error {
	if err := book.ValidCode(assessor); err != nil {
		return wrongCall(err)
	}
	if learner == assessor {
		return notRight("desk_book.own", assessor)
	}
	assesses, learns := false, learner == ""
	for _, p := range l.People() {
		assesses = assesses || p.Code == assessor && p.Role == book.Assessor
		learns = learns || p.Code == learner && p.Role == book.Learner
	}
	switch {
	case !assesses:
		return notRight("desk_book.no_assessor", assessor)
	case !learns:
		return notRight("desk_book.no_learner", learner)
	case !shelf.KeyThere(l.Keys, assessor, book.Assessor):
		_, err := shelf.LoadKey(l.Keys, assessor, book.Assessor, "") // says what is missing
		return err
	}
	return nil
}

// One is what came of verifying one record.
type One struct {
	book.Finding
	Log     []string // what is wrong with the log as a whole
	Root    string   // of the log
	Records int
}

// VerifyOne reads a whole book as it is stored, and plays the attempt of one of its records again.
func VerifyOne(p Places, id string) (*One, error) {
	s, err := shelf.Open(p.Book)
	if err != nil {
		return nil, err
	}
	defer s.Close()
	c, err := book.Read(s)
	if err != nil {
		return nil, err
	}
	e := c.State.Find(id)
	if e == nil {
		return nil, wrong("ledger.no_record", id)
	}
	root, err := c.State.Root()
	if err != nil {
		return nil, err
	}
	return &One{Finding: c.Replay(e.Seq), Log: c.Log, Root: root.String(), Records: len(c.Findings)}, nil
}

// DueOf is when a case is due again that is signed off as competent today, where the assessor says nothing else.
func (l *Ledger) DueOf(scenario string) string {
	return l.dueAfter(&book.SignOff{Scenario: book.Scenario{ID: scenario}, Outcome: book.Competent}, now())
}
