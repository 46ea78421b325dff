package book

import (
	"fmt"
	"math"
	"strings"

	"github.com/google/uuid"
)

// Statements for a learning record store: xAPI 1.0.3 (Advanced Distributed Learning 2016). What they are called, their ids, is worked
// out from the record, so that a statement that is sent twice is the same statement.

// The version of xAPI, as requests and statements name it.
const XAPIVersion = "1.0.3"

// Verbs and the kind of activity of the vocabulary of ADL.
const (
	verbs          = "http://adlnet.gov/expapi/verbs/"
	simulationKind = "http://adlnet.gov/expapi/activities/simulation"
)

// Statement is a statement, with its keys as the standard names them.
type Statement struct {
	ID        string   `json:"id"`
	Actor     Agent    `json:"actor"`
	Verb      Verb     `json:"verb"`
	Object    Object   `json:"object"`
	Result    *Result  `json:"result,omitempty"`
	Context   *Context `json:"context,omitempty"`
	Timestamp string   `json:"timestamp"`
	Version   string   `json:"version"`
}

// Agent is a person by a pseudonymous code.
type Agent struct {
	ObjectType string  `json:"objectType"`
	Account    Account `json:"account"`
}

// Account is a code within a department.
type Account struct {
	HomePage string `json:"homePage"`
	Name     string `json:"name"`
}

// Verb is what somebody did.
type Verb struct {
	ID      string            `json:"id"`
	Display map[string]string `json:"display"`
}

// Object is an activity, or another statement.
type Object struct {
	ObjectType string      `json:"objectType"`
	ID         string      `json:"id"`
	Definition *Definition `json:"definition,omitempty"`
}

// Definition says what an activity is.
type Definition struct {
	Type string            `json:"type"`
	Name map[string]string `json:"name"`
}

// Result is what came of it.
type Result struct {
	Score      *Score `json:"score,omitempty"`
	Success    *bool  `json:"success,omitempty"`
	Completion *bool  `json:"completion,omitempty"`
	Response   string `json:"response,omitempty"`
	Duration   string `json:"duration,omitempty"`
}

// Score is a score of 100.
type Score struct {
	Scaled float64 `json:"scaled"`
	Raw    float64 `json:"raw"`
	Min    float64 `json:"min"`
	Max    float64 `json:"max"`
}

// Context is in what connection.
type Context struct {
	Registration string         `json:"registration"`
	Instructor   *Agent         `json:"instructor,omitempty"`
	Platform     string         `json:"platform"`
	Language     string         `json:"language"`
	Extensions   map[string]any `json:"extensions"`
}

// Statements are those of a signed-off record, and those that take back the statements of a record which it supersedes, or which
// became void or was deleted; none for other kinds. Base is the IRI of the department, under which its people, cases and
// extensions have theirs. Comments are left out unless they are asked for.
func (s *State) Statements(e *Entry, base string, comments bool) ([]Statement, error) {
	if err := ValidBase(base); err != nil {
		return nil, err
	}
	x := &speaker{origin: s.Origin, base: strings.TrimSuffix(base, "/")}
	switch b := e.Body.(type) {
	case *SignOff:
		return append(x.takeBack(e, s.byID[b.Supersedes], b.Assessor), x.signOff(e, b, comments)...), nil
	case *Void:
		return x.takeBack(e, s.byID[b.Of], b.Assessor), nil
	case *Forget:
		return x.takeBack(e, s.byID[b.Of], b.By), nil
	}
	return nil, nil
}

// takeBack voids the statements of a record on the word of a later one.
func (x *speaker) takeBack(later, of *Entry, who string) (all []Statement) {
	if of == nil || of.Leaf.Kind != KindSignOff {
		return nil
	}
	for _, v := range x.verbsOf(of) {
		all = append(all, Statement{ID: x.id(later.Leaf.ID, "voided", v), Actor: x.agent(who), Verb: verb("voided"),
			Object: Object{ObjectType: "StatementRef", ID: x.id(of.Leaf.ID, v)}, Timestamp: later.Leaf.At, Version: XAPIVersion})
	}
	return all
}

// ValidBase says whether a text can be the IRI of a department.
func ValidBase(base string) error {
	host, web := strings.CutPrefix(base, "https://")
	if !web {
		host, web = strings.CutPrefix(base, "http://")
	}
	if !web || host == "" || host[0] == '/' || strings.ContainsAny(host, "?# \t\r\n\"<>\\^`{|}") {
		return fmt.Errorf("%q is no base IRI: give an address that your department owns, such as https://department.example/practice", base)
	}
	return nil
}

// speaker puts records into statements.
type speaker struct{ origin, base string }

// id is the id of a statement or a registration: UUID version 5, of the book's name and what it is about.
func (x *speaker) id(about ...string) string {
	return uuid.NewSHA1(uuid.NewSHA1(uuid.NameSpaceURL, []byte(x.base)), []byte(x.origin+"\n"+strings.Join(about, "\n"))).String()
}

func (x *speaker) agent(code string) Agent {
	return Agent{"Agent", Account{x.base, code}}
}

func verb(name string) Verb { return Verb{verbs + name, map[string]string{"en": name}} }

// verbsOf are the verbs of the statements of a signed-off record; without its body, which was deleted, all that there may have been.
func (x *speaker) verbsOf(e *Entry) []string {
	b, ok := e.Body.(*SignOff)
	switch {
	case !ok:
		return []string{"attempted", "completed", "passed", "failed"}
	case b.Outcome == Competent:
		return []string{"attempted", "completed", "passed"}
	}
	return []string{"attempted", "completed", "failed"}
}

func (x *speaker) signOff(e *Entry, b *SignOff, comments bool) []Statement {
	object := Object{"Activity", fmt.Sprintf("%s/scenarios/%s/%d", x.base, b.Scenario.ID, b.Scenario.Version),
		&Definition{simulationKind, map[string]string{"en": b.Scenario.ID}}}
	instructor := x.agent(b.Assessor)
	context := &Context{Registration: x.id(b.Learner, b.Scenario.ID), Instructor: &instructor, Platform: "rouleau", Language: "en", Extensions: map[string]any{
		x.base + "/extensions/record": e.Leaf.ID, x.base + "/extensions/model": b.Model, x.base + "/extensions/mode": b.Mode,
		x.base + "/extensions/attempt": b.Number, x.base + "/extensions/critical": len(unmended(b.Critical)), x.base + "/extensions/pass-mark": b.PassMark}}
	yes := true
	success := b.Outcome == Competent
	var all []Statement
	for _, v := range x.verbsOf(e) {
		s := Statement{ID: x.id(e.Leaf.ID, v), Actor: x.agent(b.Learner), Verb: verb(v), Object: object, Context: context, Timestamp: b.Date, Version: XAPIVersion}
		switch v {
		case "attempted":
			s.Timestamp = b.Played
		case "completed":
			s.Result = &Result{Completion: &yes, Duration: duration(b.LengthS)}
		default:
			s.Result = &Result{Success: &success, Completion: &yes, Duration: duration(b.LengthS), Score: b.score()}
			if comments {
				s.Result.Response = b.Comments
			}
		}
		all = append(all, s)
	}
	return all
}

func unmended(all []Critical) (left []Critical) {
	for _, c := range all {
		if !c.Mended {
			left = append(left, c)
		}
	}
	return left
}

// score is the score to be told, nil where it would contradict what was decided: points over the mark of somebody who failed for an
// error that points never make good, or under it of somebody who was passed.
func (b *SignOff) score() *Score {
	if (b.Points >= b.PassMark) != (b.Outcome == Competent) {
		return nil
	}
	raw := math.Round(b.Points*100) / 100
	if (raw >= b.PassMark) != (b.Points >= b.PassMark) {
		raw = math.Floor(b.Points*100) / 100 // rounding must not lift it over the mark
	}
	return &Score{Scaled: raw / 100, Raw: raw, Min: 0, Max: 100}
}

// duration is a time as ISO 8601 has it.
func duration(s float64) string { return fmt.Sprintf("PT%.2fS", s) }
