// What the pages show of the book: read from it as plain values, beside the window.

package app

import (
	"slices"
	"strconv"
	"strings"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/keep"
	"rouleau/cmd/rouleau-desk/ledgerdesk"
	"rouleau/cmd/rouleau/ledger"
	"rouleau/scoring/attempt"
	"rouleau/scoring/book"
)

// bookPast is what the window knows beside the book: attempts in the folder, the names of cases, and what day it is.
type bookPast struct {
	past   []keep.Past
	titles map[string]string
	today  time.Time
}

func (a *App) bookPast() bookPast {
	past, faults := a.folder.Past()
	for _, err := range faults {
		a.tell(err.Error())
	}
	titles := map[string]string{}
	for _, p := range past {
		titles[p.ScenarioID] = p.Title
	}
	for i := range a.cases {
		if sc := a.cases[i].scenario; sc != nil {
			titles[sc.ID] = sc.Title
		}
	}
	y, m, d := a.machine.Now().Date()
	return bookPast{past, titles, time.Date(y, m, d, 0, 0, 0, 0, time.UTC)}
}

// readBook reads all that the pages show, and says what could not be read.
func readBook(l *ledger.Ledger, past bookPast) (b ledgerdesk.Book, notice string) {
	names, err := ledger.Names(l.Keys)
	if err != nil {
		notice = err.Error()
	}
	for _, name := range names {
		b.Names = append(b.Names, name)
	}
	slices.Sort(b.Names)
	b.Origin, b.Records, b.Items = l.Origin, l.Size(), l.Items()
	if root, err := l.Root(); err == nil {
		b.Root = root.String()
	}
	b.Roles = map[string][]book.Role{}
	for _, p := range l.People() {
		b.Roles[p.Code] = append(b.Roles[p.Code], p.Role)
	}
	if p := l.Plan(); p != nil {
		b.Department = p.Department
		b.Standing = l.Status(p, past.today)
	}
	b.Agreement = l.Agreement("")
	inBook, twice := map[string]bool{}, map[string]bool{}
	for i := len(l.Entries) - 1; i >= 0; i-- {
		e := l.Entries[i]
		if e.Leaf.Kind != book.KindSignOff {
			continue
		}
		k := entryOf(l, e, past.titles)
		b.Entries = append(b.Entries, k)
		if s, ok := e.Body.(*book.SignOff); ok && e.InForce() {
			inBook[attemptKey(s.Scenario.ID, s.Played, s.Seed)] = true
			if k.Seconds > 0 {
				twice[s.Learner] = true
			}
		}
	}
	b.RatedPeople = len(twice)
	for i := range past.past {
		p := &past.past[i]
		if inBook[attemptKey(p.ScenarioID, p.When, strconv.FormatUint(p.Seed, 10))] {
			continue
		}
		b.Waiting = append(b.Waiting, ledgerdesk.Waiting{Path: p.Path, Title: p.Title, When: p.When, Operator: p.Operator, Learner: l.LearnerNamed(p.Operator, names),
			Assessment: p.Mode == attempt.Assessment, Passed: p.Passed, Ended: p.Ended, Points: p.Points})
	}
	return b, notice
}

// attemptKey tells attempts apart as far as their heads do.
func attemptKey(scenario, played, seed string) string {
	return strings.Join([]string{scenario, played, seed}, "\n")
}

// entryOf is a sign-off as lists have it.
func entryOf(l *ledger.Ledger, e *book.Entry, titles map[string]string) ledgerdesk.Entry {
	k := ledgerdesk.Entry{ID: e.Leaf.ID, Decided: e.Leaf.At}
	switch {
	case e.ForgottenBy != "" || e.Body == nil:
		k.State = words.Say("desk_book.state_gone")
	case e.VoidedBy != "":
		k.State = words.Say("desk_book.state_void")
	case e.SupersededBy != "":
		k.State = words.Say("desk_book.state_old")
	}
	s, ok := e.Body.(*book.SignOff)
	if !ok {
		k.Title, k.Learner, k.Assessor = words.Say("book_cli.line_gone"), "–", "–"
		return k
	}
	k.Title, k.Learner, k.Assessor, k.Due, k.Points = titles[s.Scenario.ID], s.Learner, s.Assessor, s.Due, s.Points
	if k.Title == "" {
		k.Title = s.Scenario.ID
	}
	k.Competent = s.Outcome == book.Competent
	k.Seconds = len(l.Ratings(e.Leaf.ID))
	return k
}
