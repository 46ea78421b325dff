// Package ledgerdesk holds the pages of the competency book: what a learner stands at, what an assessor decides and signs, what an
// educator sees of all. They draw from a View and answer with acts; the book itself, its files and all that takes long are the
// business of package app.
//
// This file holds what the pages read and what they answer.
package ledgerdesk

import (
	"rouleau/cmd/rouleau/page"
	"rouleau/scoring/attempt"
	"rouleau/scoring/book"
)

// View is all that the pages are drawn from.
type View struct {
	Who    string // the code in the settings, "" while nobody said
	Stage  Stage
	Place  string // where the book is, or would be
	Fault  string // why there is none to be read
	Work   Work
	Notice string // what came of the last thing that was asked for

	Book   Book       // where there is none, its Origin is the name under which one was begun and got no further, else ""
	Review *Review    // the attempt that is looked at, nil for none
	Draft  *Draft     // what is to be signed, nil while nothing is
	Signed *Signed    // what has just been signed, nil for nothing
	Record *Record    // the record that is looked at, nil for none
	Check  *Check     // what came of verifying the whole book, nil before
	Class  *page.Page // what decisions cost the group, nil before
	NoCost string     // why that cannot be told, "" where it can

	MaySign func(learner, assessor string) string // why not, "" where nothing is in the way that can be known beforehand
}

// Stage is how far the book is.
type Stage uint8

// The stages.
const (
	Opening Stage = iota
	NoBook        // there is none at the place
	Shut          // it cannot be opened
	Open
)

// Work is what goes on beside the window; Text is "" while nothing does.
type Work struct {
	Text      string
	Done, All int  // 0 of 0 where it is not known
	Told      bool // it takes long enough to be told of
	Stops     bool // it can be broken off
}

// Book is what was read of the book last.
type Book struct {
	Serial       int // another whenever it was read anew
	Origin, Root string
	Records      int64
	Department   string // "" while no plan is in force
	Items        []book.Item
	Roles        map[string][]book.Role // of people, by code
	Standing     []book.Standing        // of all learners in all competencies, the learners in order
	Entries      []Entry                // sign-offs, the newest first
	Waiting      []Waiting              // attempts that are in no record, the newest first
	Agreement    book.Agreement         // of second raters in the whole book
	RatedPeople  int                    // learners in whose records two have rated
	Names        []string               // of people, to warn of them in what is written; they are shown nowhere
}

// Entry is a sign-off in a list.
type Entry struct {
	ID, Title, Learner, Assessor, Decided, Due string
	Points                                     float64
	Competent                                  bool
	State                                      string // what became of it, "" while it counts
	Seconds                                    int    // second ratings
}

// Waiting is an attempt in the person's folder that is in no record.
type Waiting struct {
	Path, Title, When, Operator string
	Learner                     string // of the book, "" where it is none
	Assessment, Passed, Ended   bool
	Points                      float64
}

// Review is an attempt that is being judged.
type Review struct {
	Waiting
	Attempt *attempt.Attempt
	Role    string // that the learner trained for the last time, "" where that is not known
	Due     string // when it is due again if nobody says otherwise and it is competent
}

// Draft is a record before it is signed.
type Draft struct {
	Record   *book.SignOff
	Warnings []string
	Fault    string // why the last try to sign came to nothing
	Tries    int    // how often it was tried: after each the passphrase is to be written anew
}

// Signed is a record that has just been written.
type Signed struct {
	ID, Verdict, What, Root string
	Good                    bool // it is as it was written, and the attempt came out the same
	Records                 int
	Log                     []string
}

// Record is one that is looked at.
type Record struct {
	Entry
	Page     *page.Page // its sheet, nil where what it said is gone
	Fault    string     // why the last try to write a second rating came to nothing
	Tries    int        // to write one
	Verified *Signed    // nil before
}

// Check is what came of verifying the whole book.
type Check struct {
	Good     bool
	Records  int
	Root     string
	Counts   []string // how many of each verdict, in words
	Findings []string // what is not in order
}

// Verb is what an act asks for.
type Verb uint8

// The verbs.
const (
	Leave      Verb = iota // the book
	Found                  // Founding: begin a book
	Again                  // try again to open the book, which was shut
	Look                   // Path: an attempt is to be judged
	LookAway               // from the attempt
	Result                 // Path: the result of an attempt, with its debrief
	ResultOf               // ID: the same of the attempt in a record
	LookOver               // Form: make the record that would be signed
	BackToForm             // from the record that would be signed
	Sign                   // Phrase
	Understood             // what came of signing was read
	Show                   // ID: a record
	ShowNone               // from the record
	VerifyOne              // ID
	Rate                   // ID, Form.Rated, Form.Comments, Form.Assessor, Phrase: a second rating
	Save                   // ID, Path, With: the sheet of a record
	Verify                 // the whole book
	Costs                  // what decisions cost the group
	Stop                   // what goes on
	Read                   // the notice was read
)

// Act is one thing that the person asks for.
type Act struct {
	Do       Verb
	ID, Path string
	With     bool // comments too
	Form     Form
	Phrase   string
	Founding Founding
}

// Founding is what a new book needs.
type Founding struct{ Origin, Administrator, Phrase string }

// Form is what an assessor says of an attempt.
type Form struct {
	Learner, Assessor, For, Override, Comments, Feedback, Due string
	Competent                                                 bool
	Rated                                                     []book.Rated
}
