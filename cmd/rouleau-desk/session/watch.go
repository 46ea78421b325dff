// A recorded attempt shown in the window: its acts are done at their ticks, and those of a hand refused. Whoever watches may
// go to any of its moments, or try again from one (again.go).

package session

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/scoring/debrief"
	"rouleau/sim"
)

const whileWatching sim.Reason = "watching"

// Recorded is a past attempt at a case, as far as it takes to show it and to try again from its moments.
type Recorded struct {
	Acts   []sim.Action // in order of time
	End    int64        // the tick to which it came
	From   string       // the file it is kept in
	Hashes []Hash       // that the state had on the way, in order of time
	Stale  string       // why it cannot be tried again, "" where it can
	Parts  string       // why what is shown of it can part from what was, "" where it cannot
	// Record plays it for a debrief, or says why it cannot; nil where playing the acts is enough.
	Record func() (*debrief.Record, error)
	Heed   string // what has to be known before its debrief, "" for nothing
}

// Hash is that of the state at a tick, acts of that tick included.
type Hash struct {
	Tick int64
	Is   uint64
}

// Recorded is the attempt on the screen, if it is a past one: it is watched, or the case has ended and is graded. Nil while
// a case is played.
func (s *Session) Recorded() *Recorded {
	switch {
	case s.View.Watching:
		return s.options.Watch
	case s.View.Screen == bench.Graded:
		return &Recorded{Acts: s.Run.Actions, End: s.Run.State.Tick}
	}
	return nil
}

// watch does the acts that are due.
func (s *Session) watch() {
	for acts := s.options.Watch.Acts; s.watched < len(acts) && acts[s.watched].Tick <= s.Run.State.Tick; s.watched++ {
		s.Run.Do(acts[s.watched])
	}
}

// watchOver says whether the recorded attempt has been shown to its end.
func (s *Session) watchOver() bool {
	return s.View.Watching && s.Run.State.Tick >= s.options.Watch.End
}

// watchEnds does what was done at the very end, after which no tick passed, and says that nothing follows.
func (s *Session) watchEnds() {
	if !s.watchOver() || s.watchTold {
		return
	}
	s.watchTold = true
	s.watch()
	if !s.Run.State.Ended {
		s.note(words.Say("log.watch_over"))
		s.View.Paused = true
	}
}

// watchCompares finds, when all of it has been shown, whether it came out as it was recorded. What did not is no base to try again
// from.
func (s *Session) watchCompares() {
	r := s.options.Watch
	s.watch()
	if n := len(r.Hashes); r.Stale != "" || n == 0 || r.Hashes[n-1].Is == s.Run.State.Hash() && len(s.Run.Actions) == len(r.Acts) {
		return
	}
	r.Stale, r.Parts = words.Say("again.recorded_otherwise"), words.Say("result.recorded_otherwise")
	s.View.Recorded.Stale, s.View.Recorded.Heed = r.Stale, r.Parts
}

// showRecorded gives the screens what they show of the attempt as a whole.
func (s *Session) showRecorded() {
	r := s.options.Watch
	if r == nil {
		return
	}
	v := &s.View.Recorded
	v.EndS, v.Stale, v.Heed = sim.Seconds(r.End), r.Stale, r.Parts
	for _, a := range r.Acts {
		v.ActsS = append(v.ActsS, sim.Seconds(a.Tick))
	}
}

// seek goes to a moment of the attempt that is watched, forwards or back. What the screens remember of its way is there as if
// it had been watched up to that moment.
func (s *Session) seek(to int64) {
	if !s.View.Watching || s.View.Screen != bench.AtBench {
		return
	}
	to = min(max(to, 0), s.options.Watch.End)
	known, back := s.known, to < s.Run.State.Tick
	s.owed = 0
	s.rewind(to)
	for s.Run.State.Tick < to && !s.Run.State.Ended {
		s.Tick()
	}
	for i := range known {
		if back { // what was acknowledged is so at any earlier moment of it
			s.known[i] = known[i] && s.Run.State.Alarms.On[i]
		}
	}
	s.watchEnds()
}
