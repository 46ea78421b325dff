package ledger

import (
	"errors"
	"io/fs"
	"slices"
	"strings"
	"time"

	"rouleau/assets/words"
	"rouleau/scenarios"
	"rouleau/scoring/attempt"
	"rouleau/scoring/book"
	"rouleau/sim"
)

// Signing off an attempt: from a file and what the assessor says to a record that can be written.

// Signing is what an assessor says about an attempt.
type Signing struct {
	Attempt    string // path of its file
	Learner    string
	Assessor   string
	For        string // the role that the learner trains for
	Outcome    book.Outcome
	Override   string       // why the outcome is not the computed one
	Rated      []book.Rated // the words of each level are put in here
	Comments   string
	Feedback   string
	Due        string // yyyy-mm-dd; "" for the interval of the plan, or 36 months
	MarkSetBy  string // "" for how the scenario has it
	Supersedes string // number of a record, or its beginning
	Earlier    string // folder with attempts of the same learner; "" for none
	Training   []book.Training
}

// Drafted is a record before it is signed.
type Drafted struct {
	SignOff  *book.SignOff
	Attempt  []byte   // as it is attached: who played is the learner's code
	Warnings []string // what the assessor should look at before signing
}

// defaultMonths is how long a sign-off holds where no plan says otherwise.
const defaultMonths = 36

// Draft makes the record of a sign-off. The attempt is played again before anybody signs for it, and the name of who played, which
// the file may hold, is replaced by the learner's code.
func (l *Ledger) Draft(s Signing) (*Drafted, error) {
	a, sc, err := openAttempt(s.Attempt)
	if err != nil {
		return nil, err
	}
	names, err := Names(l.Keys)
	if err != nil {
		return nil, err
	}
	d := &Drafted{}
	if a.Operator != s.Learner && !sameName(a.Operator, names[s.Learner]) {
		d.warn("ledger.other_player", s.Learner)
	}
	if err := d.replayed(a); err != nil {
		return nil, err
	}
	a = a.PlayedBy(s.Learner)
	d.Attempt = a.Encode()
	b := book.Draft(a)
	d.SignOff = b
	today := now()
	b.Learner, b.Assessor, b.For, b.Date = s.Learner, s.Assessor, s.For, today.Format(time.RFC3339)
	b.Outcome, b.Override, b.Comments, b.Feedback = s.Outcome, s.Override, s.Comments, s.Feedback
	b.MarkSetBy = s.MarkSetBy
	if b.MarkSetBy == "" {
		b.MarkSetBy = words.Say("ledger.mark_of_scenario", sc.Pass.MarkPercent, sc.Pass.FloorPercent)
	}
	b.Training = append(b.Training, s.Training...)
	if b.Due = s.Due; b.Due == "" {
		b.Due = l.dueAfter(b, today)
	}
	if s.Supersedes != "" {
		old, err := l.find(s.Supersedes)
		if err != nil {
			return nil, err
		}
		b.Supersedes = old.Leaf.ID
	}
	if b.Rated, err = l.anchored(s.Rated); err != nil {
		return nil, err
	}
	if err := l.notTwice(a, b); err != nil {
		return nil, err
	}
	if b.Earlier, err = l.earlier(a, s, names[s.Learner], d); err != nil {
		return nil, err
	}
	b.Number = len(b.Earlier) + 1
	l.unrated(d)
	d.identify(a, names)
	return d, nil
}

// Sign writes the record of a draft.
func (l *Ledger) Sign(d *Drafted, as As) (*book.Entry, error) {
	key, err := l.signer(as, book.Assessor)
	if err != nil {
		return nil, err
	}
	return l.Write(d.SignOff, d.Attempt, key)
}

func (d *Drafted) warn(key string, args ...any) {
	d.Warnings = append(d.Warnings, words.Say(key, args...))
}

// openAttempt reads an attempt that is as it was written, with its scenario.
func openAttempt(path string) (*attempt.Attempt, *scenarios.Scenario, error) {
	a, err := attempt.Load(path)
	var faults *attempt.Faults
	switch {
	case errors.As(err, &faults):
		return nil, nil, err
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, fs.ErrInvalid):
		return nil, nil, wrongCall(err)
	case err != nil:
		return nil, nil, machine("ledger.no_read", path, plain(err))
	case !a.Sealed():
		return nil, nil, notRight("ledger.seal_broken", path)
	}
	sc, found := scenarios.Parse(a.Scenario.ID+".yaml", []byte(a.Scenario.Text))
	return a, sc, found.Err()
}

// replayed plays the attempt again: nobody signs for what comes out otherwise. One of another model cannot be played here, which is
// told.
func (d *Drafted) replayed(a *attempt.Attempt) error {
	if a.Model != sim.ModelVersion {
		d.warn("ledger.other_model", a.Model, sim.ModelVersion)
	} else {
		r, err := attempt.Replay(a)
		switch {
		case err != nil:
			return err
		case !r.Same() && !r.SameDecisions():
			return notRight("ledger.comes_out_otherwise", r.Difference())
		case !r.Same():
			d.warn("ledger.other_bits", r.Difference())
		}
	}
	if !a.Ended {
		d.warn("ledger.not_ended")
	}
	if b := a.Breaks; b.Interruptions > 0 || b.LetGoS > 0 || b.TakenOver {
		d.warn("ledger.breaks", b.Interruptions, float64(b.LetGoS))
	}
	return nil
}

func sameName(a, b string) bool {
	return b != "" && strings.EqualFold(strings.Join(strings.Fields(a), " "), b)
}

// dueAfter is when a sign-off as competent is to be shown again: after the shortest interval of the competencies that ask for the
// case. One that is not competent is due from the day it was decided.
func (l *Ledger) dueAfter(b *book.SignOff, today time.Time) string {
	months := 0
	if p := l.Plan(); p != nil {
		for i := range p.Competencies {
			c := &p.Competencies[i]
			if slices.ContainsFunc(c.Scenarios, func(pc book.PlanCase) bool { return pc.ID == b.Scenario.ID }) && (months == 0 || c.IntervalMonths < months) {
				months = c.IntervalMonths
			}
		}
	}
	if months == 0 {
		months = defaultMonths
	}
	if b.Outcome != book.Competent {
		months = 0
	}
	return today.AddDate(0, months, 0).Format(time.DateOnly)
}

// unrated warns of items that the plan asks for beside the case and that are not rated: without them the competency is not shown.
func (l *Ledger) unrated(d *Drafted) {
	p := l.Plan()
	if p == nil {
		return
	}
	var asked []string
	for i := range p.Competencies {
		c := &p.Competencies[i]
		if !slices.ContainsFunc(c.Scenarios, func(pc book.PlanCase) bool { return pc.ID == d.SignOff.Scenario.ID }) {
			continue
		}
		for _, name := range c.Items {
			if !slices.Contains(asked, name) && !slices.ContainsFunc(d.SignOff.Rated, func(r book.Rated) bool { return r.Item == name }) {
				asked = append(asked, name)
			}
		}
	}
	for i := range p.Items {
		if it := &p.Items[i]; slices.Contains(asked, it.Name) {
			d.warn("ledger.not_rated", it.Name, scale(it.Anchors))
		}
	}
}

// anchored puts the words of its level to each rating.
func (l *Ledger) anchored(rated []book.Rated) ([]book.Rated, error) {
	items := l.Items()
	var names []string
	for i := range items {
		names = append(names, items[i].Name)
	}
	out := []book.Rated{}
	for _, r := range rated {
		at := slices.Index(names, r.Item)
		switch {
		case at < 0:
			return nil, noneOf("ledger.no_item", r.Item, names)
		case r.Level < 1 || r.Level > len(items[at].Anchors):
			return nil, wrong("ledger.no_level", r.Item, len(items[at].Anchors), scale(items[at].Anchors))
		}
		r.Anchor = items[at].Anchors[r.Level-1]
		out = append(out, r)
	}
	return out, nil
}

// scale lists the levels with their words.
func scale(anchors []string) string {
	var all []string
	for i, a := range anchors {
		all = append(all, words.Say("ledger.level", i+1, a))
	}
	return strings.Join(all, "; ")
}

// identify warns of what in the texts could tell who a patient or a colleague is.
func (d *Drafted) identify(a *attempt.Attempt, names map[string]string) {
	b := d.SignOff
	texts := []string{b.For, b.Comments, b.Feedback, b.Override, b.MarkSetBy}
	for _, r := range b.Rated {
		texts = append(texts, r.Comment)
	}
	for _, t := range b.Training {
		texts = append(texts, t.Text)
	}
	if a.Self != nil {
		texts = append(texts, a.Self.Otherwise)
	}
	d.Warnings = append(d.Warnings, identifying(names, texts...)...)
}

// identifying gives what in texts could tell who somebody is.
func identifying(names map[string]string, texts ...string) (warnings []string) {
	var known []string
	for _, name := range names {
		known = append(known, name)
	}
	slices.Sort(known)
	for _, t := range texts {
		for _, w := range book.Identifying(t, known) {
			if w = words.Say("ledger.identifies", w); !slices.Contains(warnings, w) {
				warnings = append(warnings, w)
			}
		}
	}
	return warnings
}
