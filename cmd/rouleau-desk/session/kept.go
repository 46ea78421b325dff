// Keeping a case while it is played: what the person does and how far the case has come goes into the journal, before the
// frame that shows it.

package session

import (
	"time"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/sim"
)

const (
	keepSpent = 500 * time.Millisecond // of an assessment's time while the case stands
	hashEvery = 60 * sim.TicksPerSecond
)

// kept is how far the journal is.
type kept struct {
	tick, hashed int64
	spent        time.Duration
}

// keptActs are the acts on the window that a case is not the same without, by their names in the journal.
var keptActs = map[bench.Verb]string{bench.GoOn: "go_on", bench.BackToCase: "back_to_case", bench.SetSpeed: "set_speed",
	bench.TogglePause: "toggle_pause", bench.Acknowledge: "acknowledge", bench.ToggleTruth: "toggle_truth", bench.GuideNext: "guide_next",
	bench.GuideBack: "guide_back", bench.GuideFast: "guide_fast"}

// keptTaken is the line of a case that was begun by another attempt, at the moment from which it is tried again.
const keptTaken = "watch_on"

// keepWindow puts an act on the window into the journal.
func (s *Session) keepWindow(a bench.Act) {
	name := keptActs[a.Do]
	if s.journal == nil || name == "" {
		return
	}
	what := ""
	if a.Do == bench.Acknowledge {
		what = a.Alarm.String()
	}
	s.journal.Window(s.Run.State.Tick, name, a.Value, what)
}

// keep brings the journal up to now. A case of practice that was not begun is not worth a file; of an assessment the time
// at the case sheet counts.
func (s *Session) keep() {
	j := s.journal
	if j == nil || !s.begun && (!s.options.Assessment || s.View.Screen == bench.Cautions) {
		return
	}
	at := s.Run.State.Tick
	if at != s.kept.tick || s.spent-s.kept.spent >= keepSpent {
		hash := uint64(0)
		if at-s.kept.hashed >= hashEvery {
			hash, s.kept.hashed = s.Run.State.Hash(), at
		}
		s.kept.tick, s.kept.spent = at, s.spent
		j.Reached(at, s.spent, s.lost, hash)
	}
	j.Flush()
	if news := j.News(); news != "" {
		s.tell(news)
	}
}

// keepFromStart puts what was done so far by another attempt into a journal that begins only now. It is written at once.
func (s *Session) keepFromStart() {
	j := s.options.Journal
	if s.journal = j; j == nil {
		return
	}
	j.Window(0, keptActs[bench.GoOn], 0, "") // past the cautions
	if s.begun {
		j.Window(0, keptActs[bench.GoOn], 0, "") // and the case sheet
	}
	for _, a := range s.Run.Actions {
		j.Act(a, "")
	}
	j.Window(s.Run.State.Tick, keptTaken, 0, "")
	s.kept = kept{tick: -1, hashed: -hashEvery}
}

// Close leaves the case as it is, in its journal, to be gone on with another time.
func (s *Session) Close() {
	s.closeDebrief()
	if s.options.Journal == nil {
		return
	}
	s.keep()
	s.options.Journal.Close()
	s.journal = nil
}
