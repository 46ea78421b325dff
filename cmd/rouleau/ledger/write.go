package ledger

import (
	"errors"
	"slices"
	"strings"
	"time"

	"rouleau/assets/words"
	"rouleau/scenarios/yamlread"
	"rouleau/scoring/book"
)

// The other records: second ratings, records made void or deleted, supervised cases, events and plans.

// Rate writes a second rater's view of a sign-off, and says how far the two agree.
func (l *Ledger) Rate(id string, rated []book.Rated, comments string, as As) (*book.Entry, book.Agreement, error) {
	of, err := l.signedOff(id)
	if err != nil {
		return nil, book.Agreement{}, err
	}
	b := &book.Rating{Of: of.Leaf.ID, Learner: of.Body.(*book.SignOff).Learner, Assessor: as.Person, Comments: comments}
	if b.Rated, err = l.anchored(rated); err != nil {
		return nil, book.Agreement{}, err
	}
	e, err := l.write(b, as, book.Assessor)
	return e, l.Agreement(of.Leaf.ID), err
}

// signedOff finds a sign-off whose body is there.
func (l *Ledger) signedOff(id string) (*book.Entry, error) {
	e, err := l.find(id)
	if err != nil {
		return nil, err
	}
	if _, ok := e.Body.(*book.SignOff); !ok {
		return nil, notRight("ledger.no_sign_off", e.Leaf.ID)
	}
	return e, nil
}

// Void takes a record out of force; it stays in the book.
func (l *Ledger) Void(id, reason string, as As) (*book.Entry, error) {
	of, err := l.find(id)
	if err != nil {
		return nil, err
	}
	return l.write(&book.Void{Of: of.Leaf.ID, Learner: of.Learner(), Assessor: as.Person, Reason: reason}, as, book.Assessor, book.Administrator)
}

// Delete takes the body and the attempt of a record out of the book for good; that there was one stays.
func (l *Ledger) Delete(id, reason string, as As) (*book.Entry, error) {
	of, err := l.find(id)
	if err != nil {
		return nil, err
	}
	return l.write(&book.Forget{Of: of.Leaf.ID, By: as.Person, Reason: reason}, as, book.Administrator)
}

// CountCase counts a supervised real case of a learner, without anything about a patient.
func (l *Ledger) CountCase(learner, competency, date string, as As) (*book.Entry, error) {
	if p := l.Plan(); p != nil {
		var names []string
		for i := range p.Competencies {
			names = append(names, p.Competencies[i].Name)
		}
		if !slices.Contains(names, competency) {
			return nil, noneOf("ledger.no_competency", competency, names)
		}
	}
	return l.write(&book.Case{Learner: learner, Assessor: as.Person, Competency: competency, Date: dateOr(date)}, as, book.Assessor)
}

// Note writes an event after which a learner, or with "" everybody, is due again.
func (l *Ledger) Note(what, learner, date, reason string, as As) (*book.Entry, error) {
	return l.write(&book.Event{Learner: learner, By: as.Person, What: what, Date: dateOr(date), Reason: reason}, as, book.Assessor, book.Administrator)
}

// noneOf says that a word is none of those that there are, and which was probably meant.
func noneOf(key, word string, names []string) error {
	text := words.Say(key, word, strings.Join(names, ", "))
	if near := yamlread.Nearest(word, names); near != "" {
		text += ". " + words.Say("cli.did_you_mean", near)
	}
	return wrongCall(errors.New(text))
}

// dateOr is a date, today where none is given.
func dateOr(date string) string {
	if date == "" {
		return now().Format(time.DateOnly)
	}
	return date
}

// SetPlan puts a department's plan in force. A plan with faults is refused with all of them, each at its place.
func (l *Ledger) SetPlan(file string, as As) (*book.Entry, *book.Plan, error) {
	text, err := read(file)
	if err != nil {
		return nil, nil, err
	}
	p, err := book.ReadPlan(file, text)
	if err != nil {
		return nil, nil, err
	}
	e, err := l.write(&book.PlanText{By: as.Person, YAML: string(text)}, as, book.Administrator)
	return e, p, err
}

// Warnings gives what in texts could tell who a patient or a colleague is.
func (l *Ledger) Warnings(texts ...string) ([]string, error) {
	names, err := Names(l.Keys)
	if err != nil {
		return nil, err
	}
	return identifying(names, texts...), nil
}
