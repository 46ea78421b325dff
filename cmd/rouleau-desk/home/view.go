// Package home holds the screens before and between cases: cautions, the list of cases with past results, who plays,
// settings, files of one's own, and cases that were broken off. They draw from a View and answer with acts; what an act does,
// and every file, is the business of package app.
//
// This file holds what the screens read and what they answer.
package home

import (
	"rouleau/cmd/rouleau-desk/keep"
	"rouleau/scenarios/yamlread"
)

// View is all that the screens are drawn from.
type View struct {
	Cases      []Case // in the order they are listed: lessons, the library, own files
	Settings   keep.Settings
	Folder     string // where records are kept
	Unfinished []Unfinished
	Notices    []string // what went wrong with files and wants to be known, oldest first
	Browse     Listing
	Broken     Broken
	NoSound    string // why no sound can be made, "" when it can
}

// Case is a case that can be played.
type Case struct {
	Key             string // names it to the app
	Group           Group
	Guided          bool // a lesson, wherever it stands: for practice only
	Title, Level    string
	Summary         string
	Minutes         int
	Version         int
	Objectives      []string
	Cautions        []string
	Speeds          []int // to choose from in practice
	AssessmentSpeed int
	LimitMin        int         // of an assessment, on the wall
	Past            []keep.Past // newest first
	File            string      // of one's own, "" for a case of the library
	Warnings        []string    // what looks like a slip in a file of one's own, each with its line
	Broken          string      // why a file of one's own cannot be played as it is now, "" where it can
}

// Group is the part of the list in which a case stands.
type Group uint8

// The groups, in their order.
const (
	Lesson Group = iota // it carries guidance
	Library
	Own
)

// Unfinished is a case that was broken off and can be gone on with.
type Unfinished struct {
	Path, Title string
	Mode        string // as keep.Past has it
	Began       string // as people read it
	AtS         float64
	Broken      string // why it cannot be gone on with, "" when it can
}

// Listing is a folder as the file dialog shows it.
type Listing struct {
	Folder string
	Up     string // the folder above, "" at the top
	Names  []Entry
	Fault  string // why it cannot be looked into
}

// Entry is one line of a listing.
type Entry struct {
	Name, Path string
	Folder     bool
}

// Broken is a file of one's own that cannot be played.
type Broken struct {
	Name   string // path, or the name of a file that was dropped
	Text   string // what is wrong, where it cannot be said by places
	Faults []yamlread.Fault
	Again  bool // it can be read again: its place is known
}

func (b *Broken) open() bool { return b.Text != "" || len(b.Faults) > 0 }

// Verb is what an act asks for.
type Verb uint8

// The verbs.
const (
	Begin        Verb = iota // Key, Assessment, Seed or NewSeed
	SaveSettings             // Settings: what the person chose now
	Look                     // Path: a folder for the file dialog, "" for the one it was in
	Open                     // Path: a scenario file
	ReadAgain                // the broken file
	LeaveBroken              // it is put away
	Forget                   // Key: a file of one's own, which is taken off the list
	Resume                   // Path of a journal
	PutAside                 // Path of a journal
	Watch                    // Path of an attempt
	ShowResult               // Path of an attempt
	Understood               // the notice on the screen, the oldest, was read
	OpenBook                 // the competency book
	Close                    // the window
)

// Act is one thing that the person asks for.
type Act struct {
	Do         Verb
	Key, Path  string
	Assessment bool
	Seed       uint64
	NewSeed    bool
	Settings   keep.Settings
}
