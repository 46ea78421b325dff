// Package attempt keeps a run as a file: scenario, seed and every act with its tick, what the state was on the way, and the
// grade; and plays such a file again to say whether all of it comes out the same.
//
// Playing again only reads: a replay has the attempt in memory and answers with a [Report]. This file holds what an attempt is
// and how it is made from a run.
package attempt

import (
	"fmt"
	"strings"
	"time"

	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// FormatVersion is the version of the file format that this package writes and reads.
const FormatVersion = 1

// The modes of a run.
const (
	Practice   = "practice"
	Assessment = "assessment"
)

// Attempt is one run as its file holds it.
type Attempt struct {
	Model       string // of the equations that the run was played with
	When        string // as the caller told it, RFC 3339 in UTC
	Mode        string // Practice or Assessment
	Breaks      Breaks // what came between the person and the case
	Operator    string // who played: a name, a work number, or the name of an operator that is no person
	Scenario    Scenario
	Seed        uint64
	LengthTicks int64
	Ended       bool // the case was played to its end
	Actions     []sim.Action
	Quantities  []string // names of the values at each checkpoint
	Checkpoints []Checkpoint
	Grade       Grade
	Self        *Self  // how the person saw each objective before the verdict; nil where nobody was asked
	Seal        string // SHA-256 of everything above; shows a slip or a careless change, and is no signature
}

// Scenario is the scenario of an attempt, whole, so that the attempt can be played again after the library has changed.
type Scenario struct {
	ID      string `json:"id"`
	Version int    `json:"version"`
	SHA256  string `json:"sha256"` // of the text
	Text    string `json:"text"`
}

// Checkpoint is what the state was before a tick passed, acts of that tick included.
type Checkpoint struct {
	Tick   int64   `json:"tick"`
	Hash   string  `json:"hash,omitempty"` // of the whole state, once a minute and at the end
	Values []Exact `json:"values"`
}

// By says who played, how and when.
type By struct {
	Operator string
	When     time.Time
	Mode     string
	Breaks   Breaks
}

// Breaks are what came between the person and the case. Playing the acts again cannot show it, and whoever judges an
// assessment should know.
type Breaks struct {
	Interruptions int   `json:"interruptions"` // times it was gone on with after the window had been closed or killed
	LetGoS        Exact `json:"let_go_s"`      // simulated seconds that did not pass because the window could not keep up
	TakenOver     bool  `json:"taken_over"`    // it was begun by another attempt that was shown
}

// ModeOf names the mode of a case.
func ModeOf(assessment bool) string {
	if assessment {
		return Assessment
	}
	return Practice
}

// Assessment tells whether the run was an assessment.
func (a *Attempt) Assessment() bool { return a.Mode == Assessment }

const (
	quantityEvery = 10 * sim.TicksPerSecond
	hashEvery     = 60 * sim.TicksPerSecond
)

// Of makes the attempt of a run, finished or not. The checkpoints on the way come from playing the acts again; the last one is
// of the run itself, so that a run that cannot be played again shows as one.
func Of(sc *scenarios.Scenario, run *play.Run, grade scoring.Grade, by By) *Attempt {
	a := &Attempt{
		Model: sim.ModelVersion, When: by.When.UTC().Format(time.RFC3339), Mode: by.Mode, Operator: valid(by.Operator), Breaks: by.Breaks,
		Scenario: Scenario{ID: sc.ID, Version: sc.Version, SHA256: sc.Hash(), Text: string(sc.Source)},
		Seed:     run.Seed, LengthTicks: run.State.Tick, Ended: run.State.Ended, Grade: gradeOf(&grade),
	}
	a.Actions = append([]sim.Action{}, run.Actions...)
	for i := range a.Actions {
		a.Actions[i].Text = valid(a.Actions[i].Text)
	}
	for _, q := range quantities {
		a.Quantities = append(a.Quantities, q.name)
	}
	_, a.Checkpoints = playAgain(sc, a)
	last := checkpointOf(&run.State, true)
	a.Checkpoints = append(a.Checkpoints[:max(0, len(a.Checkpoints)-1)], last)
	a.Seal = a.seal()
	return a
}

// valid makes a text that is the same after it has been written and read.
func valid(s string) string { return strings.ToValidUTF8(s, "\ufffd") }

// playAgain plays the acts of an attempt and takes the checkpoints, the last one at the end.
func playAgain(sc *scenarios.Scenario, a *Attempt) (*play.Run, []Checkpoint) {
	run := play.New(sc.Case(a.Seed, a.Assessment()), a.Seed)
	var points []Checkpoint
	run.Again(a.Actions, a.LengthTicks-1, func(r *play.Run) {
		if t := r.State.Tick; t%quantityEvery == 0 && t < a.LengthTicks && !r.State.Ended {
			points = append(points, checkpointOf(&r.State, t%hashEvery == 0))
		}
	})
	// What was done at the very end had no tick after it: ending the case, and acts before saving an unfinished run.
	for _, act := range a.Actions {
		if !run.State.Ended && act.Tick == a.LengthTicks {
			run.Do(act)
		}
	}
	return run, append(points, checkpointOf(&run.State, true))
}

func checkpointOf(s *sim.State, hash bool) Checkpoint {
	p := Checkpoint{Tick: s.Tick, Values: make([]Exact, len(quantities))}
	for i, q := range quantities {
		p.Values[i] = Exact(q.of(s))
	}
	if hash {
		p.Hash = fmt.Sprintf("%016x", s.Hash())
	}
	return p
}

// checkpointTicks are the ticks at which an attempt of a length has its checkpoints, the end included.
func checkpointTicks(length int64) []int64 {
	var ticks []int64
	for t := int64(0); t < length; t += quantityEvery {
		ticks = append(ticks, t)
	}
	return append(ticks, length)
}
