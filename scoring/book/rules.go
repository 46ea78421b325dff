package book

import (
	"errors"
	"fmt"
	"regexp"
	"time"
)

// Who may write what. No one signs their own.

// code is a pseudonymous code: letters, digits and hyphens with a digit in it, so that a name does not pass for one by chance.
var code = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9-]{0,22}[0-9]$`)

// ValidCode says whether a text can be somebody's code.
func ValidCode(text string) error {
	if !code.MatchString(text) {
		return fmt.Errorf("%q is no code: give 2 to 24 letters, digits and hyphens that begin with a letter and end with a digit, such as P-07, and no name", text)
	}
	return nil
}

const (
	mostText  = 4000
	dateForm  = "2006-01-02"
	mostLevel = 7
)

// allowed asks whether a record may stand where it stands.
func (s *State) allowed(e *Entry) error {
	who := s.signer(e)
	if e.Seq == 0 {
		k, ok := e.Body.(*Key)
		if !ok || k.Role != Administrator || k.Ended {
			return errors.New("the first record of a book must be the key of its administrator")
		}
		return ValidCode(k.Person)
	}
	if _, err := time.Parse(timeLayout, e.Leaf.At); err != nil {
		return fmt.Errorf("its time %q is no time with a zone", e.Leaf.At)
	}
	switch b := e.Body.(type) {
	case *Key:
		return s.mayKey(who, b)
	case *SignOff:
		return s.maySignOff(who, b)
	case *Rating:
		return s.mayRate(who, b)
	case *Void:
		return s.mayVoid(who, b)
	case *Forget:
		return s.mayForget(who, b)
	case *Case:
		return first(by(who, b.Assessor, Assessor), notOwn(b.Learner, b.Assessor), s.knownLearner(b.Learner), date(b.Date, "date"), need(b.Competency, "competency"))
	case *Event:
		return s.mayEvent(who, b)
	case *PlanText:
		_, err := ReadPlan("plan", []byte(b.YAML))
		return first(by(who, b.By, Administrator), err)
	}
	return errors.New("its kind is not known")
}

func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// by asks that a record is written by whom it names, in a role.
func by(who *Person, named string, roles ...Role) error {
	if who.Code != named {
		return fmt.Errorf("it names %s and is signed by %s", named, who.Code)
	}
	for _, r := range roles {
		if who.Role == r {
			return nil
		}
	}
	return fmt.Errorf("%s signs it as %s, and only an %s may", who.Code, who.Role, roles[0])
}

func notOwn(learner, other string) error {
	if learner == other {
		return fmt.Errorf("%s cannot sign for %s: no one signs their own", other, learner)
	}
	return nil
}

func bounded(texts ...string) error {
	for _, t := range texts {
		if len(t) > mostText {
			return fmt.Errorf("a text has %d bytes: %d are the most", len(t), mostText)
		}
	}
	return nil
}

func need(text, what string) error {
	if text == "" {
		return fmt.Errorf("the %s is missing", what)
	}
	return nil
}

func date(text, what string) error {
	if _, err := time.Parse(dateForm, text); err != nil {
		return fmt.Errorf("the %s %q is no date: write it as 2026-11-30", what, text)
	}
	return nil
}

func (s *State) knownLearner(who string) error {
	if !s.has(who, Learner) {
		return fmt.Errorf("%s is no learner of this book: add the person first", who)
	}
	return nil
}

func (s *State) mayKey(who *Person, b *Key) error {
	if who.Role != Administrator {
		return fmt.Errorf("%s signs it as %s, and only an administrator may add or end people", who.Code, who.Role)
	}
	if err := ValidCode(b.Person); err != nil {
		return err
	}
	has := s.has(b.Person, b.Role)
	switch {
	case b.Role != Learner && b.Role != Assessor && b.Role != Administrator:
		return fmt.Errorf("%q is no role: learner, assessor or administrator", b.Role)
	case b.Ended && !has:
		return fmt.Errorf("%s is no %s of this book", b.Person, b.Role)
	case b.Ended && b.Person == who.Code && b.Role == Administrator && s.administrators() == 1:
		return errors.New("this is the last administrator: add another one first")
	case b.Ended:
		return bounded(b.Reason)
	case has:
		return fmt.Errorf("%s is %s already", b.Person, b.Role)
	case b.Public == "" && b.Role == Learner:
		return nil
	}
	public, err := publicOf(b.Public)
	if err == nil && s.keys[KeyID(public)] != nil {
		err = errors.New("this key is of the book already: each role of a person has a key of its own")
	}
	return err
}

func (s *State) administrators() int {
	n := 0
	for _, p := range s.people {
		if p.Role == Administrator && !p.Ended {
			n++
		}
	}
	return n
}

func (s *State) maySignOff(who *Person, b *SignOff) error {
	if err := first(by(who, b.Assessor, Assessor), notOwn(b.Learner, b.Assessor), s.knownLearner(b.Learner), date(b.Due, "date due again"), need(b.For, "role that the learner trains for"),
		need(b.MarkSetBy, "way in which the pass mark was set"), bounded(b.For, b.MarkSetBy, b.Comments, b.Feedback, b.Override), rated(b.Rated), trained(b.Training)); err != nil {
		return err
	}
	if _, err := time.Parse(timeLayout, b.Date); err != nil {
		return fmt.Errorf("the date %q has no zone", b.Date)
	}
	old := s.byID[b.Supersedes]
	switch {
	case b.Outcome != Competent && b.Outcome != NotYet:
		return fmt.Errorf("%q is no outcome: competent or not_yet", b.Outcome)
	case (b.Outcome == Competent) != b.Passed && b.Override == "":
		return errors.New("the outcome is not the computed one: say why in the override")
	case (b.Outcome == Competent) == b.Passed && b.Override != "":
		return errors.New("the outcome is the computed one: there is nothing to override")
	case b.Mode != "assessment" && b.Outcome == Competent:
		return errors.New("practice shows no competence: sign off an assessment")
	case b.Number != len(b.Earlier)+1:
		return fmt.Errorf("it is attempt %d and lists %d before it", b.Number, len(b.Earlier))
	case b.Supersedes != "" && old == nil:
		return fmt.Errorf("there is no record %s to supersede", b.Supersedes)
	case old != nil && !old.stands():
		return fmt.Errorf("record %s is not in force any more", b.Supersedes)
	case old != nil && (old.Leaf.Kind != KindSignOff || old.about(b.Learner) != nil):
		return fmt.Errorf("record %s is no sign-off of %s", b.Supersedes, b.Learner)
	}
	return nil
}

// stands says whether nothing has been done to a record so far. The body of one that was deleted later is not there when the
// book is read again.
func (e *Entry) stands() bool { return e.VoidedBy == "" && e.SupersededBy == "" && e.ForgottenBy == "" }

// about asks that a record is about somebody, as far as that can still be known.
func (e *Entry) about(learner string) error {
	if e.Body != nil && e.Learner() != learner {
		return fmt.Errorf("record %s is none of %s", e.Leaf.ID, learner)
	}
	return nil
}

func rated(all []Rated) error {
	seen := map[string]bool{}
	for _, r := range all {
		switch {
		case r.Item == "" || seen[r.Item]:
			return fmt.Errorf("the item %q is rated twice, or has no name", r.Item)
		case r.Level < 1 || r.Level > mostLevel:
			return fmt.Errorf("%s has level %d", r.Item, r.Level)
		}
		seen[r.Item] = true
		if err := bounded(r.Comment, r.Anchor); err != nil {
			return err
		}
	}
	return nil
}

// trained checks what is kept for practice: nothing else than what it may be, and never without a text.
func trained(all []Training) error {
	for _, t := range all {
		switch t.What {
		case TrainingLot, TrainingOperator, TrainingIncident:
		default:
			return fmt.Errorf("%q is nothing that is kept for practice: %s, %s or %s", t.What, TrainingLot, TrainingOperator, TrainingIncident)
		}
		if err := first(need(t.Text, t.What), bounded(t.Text)); err != nil {
			return err
		}
	}
	return nil
}

func (s *State) mayRate(who *Person, b *Rating) error {
	of := s.byID[b.Of]
	switch {
	case of == nil || of.Leaf.Kind != KindSignOff || !of.stands():
		return fmt.Errorf("there is no signed-off record %s in force", b.Of)
	case len(b.Rated) == 0:
		return errors.New("nothing is rated")
	}
	if body, ok := of.Body.(*SignOff); ok && body.Assessor == b.Assessor {
		return fmt.Errorf("%s has rated it first: a second rater is somebody else", b.Assessor)
	}
	return first(of.about(b.Learner), by(who, b.Assessor, Assessor), notOwn(b.Learner, b.Assessor), rated(b.Rated), bounded(b.Comments))
}

func (s *State) mayVoid(who *Person, b *Void) error {
	of := s.byID[b.Of]
	switch {
	case of == nil || !of.stands() && of.SupersededBy == "":
		return fmt.Errorf("there is no record %s that could be made void", b.Of)
	case of.Leaf.Kind != KindSignOff && of.Leaf.Kind != KindRating && of.Leaf.Kind != KindCase && of.Leaf.Kind != KindEvent:
		return fmt.Errorf("a record of the kind %s cannot be made void", of.Leaf.Kind)
	}
	return first(of.about(b.Learner), by(who, b.Assessor, Assessor, Administrator), notOwn(b.Learner, b.Assessor), need(b.Reason, "reason"), bounded(b.Reason))
}

// Learner is whom a record is about, "" for nobody.
func (e *Entry) Learner() string {
	switch b := e.Body.(type) {
	case *SignOff:
		return b.Learner
	case *Rating:
		return b.Learner
	case *Case:
		return b.Learner
	case *Event:
		return b.Learner
	}
	return ""
}

func (s *State) mayForget(who *Person, b *Forget) error {
	of := s.byID[b.Of]
	switch {
	case of == nil || of.Leaf == nil:
		return fmt.Errorf("there is no record %s", b.Of)
	case of.Leaf.Kind == KindKey || of.Leaf.Kind == KindForget || of.Leaf.Kind == KindPlan || of.Leaf.Kind == KindVoid:
		return fmt.Errorf("a record of the kind %s holds the book together and cannot be deleted", of.Leaf.Kind)
	case of.ForgottenBy != "":
		return fmt.Errorf("record %s was deleted already", b.Of)
	}
	if so, ok := of.Body.(*SignOff); ok && so.Supersedes != "" {
		// what it took the place of is known from its body alone
		if old := s.byID[so.Supersedes]; old != nil && old.VoidedBy == "" && old.ForgottenBy == "" {
			return fmt.Errorf("record %s took the place of %s, which would count again: make that one void or delete it first", b.Of, so.Supersedes)
		}
	}
	return first(by(who, b.By, Administrator), notOwn(of.Learner(), b.By), need(b.Reason, "reason"), bounded(b.Reason))
}

func (s *State) mayEvent(who *Person, b *Event) error {
	if b.Learner != "" {
		if err := first(s.knownLearner(b.Learner), notOwn(b.Learner, b.By)); err != nil {
			return err
		}
	}
	switch b.What {
	case EventIncident, EventEquipment, EventAway:
	default:
		return fmt.Errorf("%q is no event: %s, %s or %s", b.What, EventIncident, EventEquipment, EventAway)
	}
	return first(by(who, b.By, Assessor, Administrator), date(b.Date, "date"), need(b.Reason, "reason"), bounded(b.Reason))
}

// What makes people due again.
const (
	EventIncident  = "incident"
	EventEquipment = "equipment"
	EventAway      = "away"
)

// What of a practice case is kept to practise keeping it.
const (
	TrainingLot      = "lot"
	TrainingOperator = "operator"
	TrainingIncident = "incident"
)
