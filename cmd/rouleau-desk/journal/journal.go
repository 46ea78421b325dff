// Package journal keeps a case on disk while it is played, so that nothing is lost when the window is killed: a file that
// only grows, one JSON object a line. The head says what is played; each act of the person follows as soon as it is done,
// and how far the case has come once a frame. Played again from the top it gives the same state to the last bit.
//
// This file holds what a journal is and what may be written into it. A journal belongs to one goroutine.
package journal

import (
	"os"
	"strconv"
	"time"

	"rouleau/scenarios"
	"rouleau/scoring/attempt"
	"rouleau/sim"
)

// FormatVersion is the version of the file format that this package writes and reads.
const FormatVersion = 1

// Head says what is played, and by whom.
type Head struct {
	Format   int              `json:"format"`
	Model    string           `json:"model"`
	Scenario attempt.Scenario `json:"scenario"`
	Seed     uint64           `json:"seed,string"` // as text: some readers of JSON round large numbers
	Mode     string           `json:"mode"`        // attempt.Practice or attempt.Assessment
	Operator string           `json:"operator"`
	Started  string           `json:"started"` // RFC 3339 in UTC
}

// HeadOf makes the head of a case that begins.
func HeadOf(sc *scenarios.Scenario, seed uint64, assessment bool, operator string, started time.Time) Head {
	return Head{Format: FormatVersion, Model: sim.ModelVersion, Seed: seed, Mode: attempt.ModeOf(assessment), Operator: operator,
		Scenario: attempt.Scenario{ID: sc.ID, Version: sc.Version, SHA256: sc.Hash(), Text: string(sc.Source)}, Started: stamp(started)}
}

func stamp(t time.Time) string { return t.UTC().Format(time.RFC3339) }

// Assessment tells whether the case is an assessment.
func (h *Head) Assessment() bool { return h.Mode == attempt.Assessment }

// Journal is the record of one case. What is written is gathered, and goes into the file at the next Flush.
type Journal struct {
	head   Head
	folder string
	record *Record // what the file held when it was opened, nil for a new one

	path    string
	lock    *lock
	file    *os.File
	size    int64  // bytes of whole lines in the file
	pending []byte // lines that are not in it yet
	reached []byte // the newest line of its kind, if it is not in it yet
	out     []byte
	saved   bool
	sync    *syncer

	failed  bool
	news    string
	retryAt time.Time
}

// New makes the journal of a case that begins in a folder. The file comes into being with the first line after the head.
func New(folder string, head Head) *Journal { return &Journal{folder: folder, head: head} }

// Head gives the head.
func (j *Journal) Head() Head { return j.head }

// Record is what the file held when it was opened; nil for a new journal.
func (j *Journal) Record() *Record { return j.record }

// Path is where the file is, "" as long as there is none.
func (j *Journal) Path() string { return j.path }

// Act notes an act on the bench, refused or not.
func (j *Journal) Act(a sim.Action, refused sim.Reason) {
	if a.Do.String() == "unknown" || a.On.String() == "unknown" {
		return // it was refused, and has no name to be found again by
	}
	to := actLine{Tick: a.Tick, Do: a.Do.String(), On: a.On.String(), Value: attempt.Exact(a.Value), Text: a.Text, Refused: string(refused)}
	if a.Do == sim.Reconcile {
		to.Item = sim.TallyItem(a.Item).String()
	}
	j.add(line{Act: &to})
}

// Window notes an act on the window itself, such as a change of speed, by a name the caller knows again.
func (j *Journal) Window(tick int64, do string, value int, what string) {
	j.add(line{Window: &windowLine{tick, do, value, what}})
}

// Note keeps a line of the log that nothing else would bring about again.
func (j *Journal) Note(tick int64, text string) { j.add(line{Note: &noteLine{tick, text}}) }

// Resumed notes that the case goes on after an interruption.
func (j *Journal) Resumed(tick int64, when time.Time) {
	j.add(line{Resumed: &resumedLine{tick, stamp(when)}})
}

// Saved notes that the attempt is safe elsewhere, so that the journal is not offered any more.
func (j *Journal) Saved() { j.saved = true; j.add(line{Saved: &j.saved}) }

func (j *Journal) add(l line) {
	j.pending = append(append(j.pending, marshal(l)...), '\n')
	j.reached = j.reached[:0] // an older moment than this line's
}

// Reached notes how far the case has come: the tick, the time on the wall an assessment has used, and the time the window
// let go. A hash of the state is left out with 0.
func (j *Journal) Reached(tick int64, spent, lost time.Duration, hash uint64) {
	b := append(j.reached[:0], reachedStart...)
	b = strconv.AppendInt(b, tick, 10)
	if spent != 0 {
		b = strconv.AppendInt(append(b, `,"spent_ms":`...), spent.Milliseconds(), 10)
	}
	if lost != 0 {
		b = strconv.AppendInt(append(b, `,"lost_ms":`...), lost.Milliseconds(), 10)
	}
	if hash != 0 {
		b = append(strconv.AppendUint(append(b, `,"hash":"`...), hash, 16), '"')
	}
	j.reached = append(b, "}\n"...)
}
