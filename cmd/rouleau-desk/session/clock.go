// Time: what the monotonic clock says becomes whole ticks, with a bound on catching up.

package session

import (
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/sim"
)

const (
	// mostBehind is how much of the wall's time one call makes up for; a window that stalled longer lets the rest go and
	// says so, rather than letting minutes of bleeding pass in one frame that nobody saw.
	mostBehind = 500 * time.Millisecond
	tick       = time.Second / sim.TicksPerSecond
	lagTellS   = 5
	leastLag   = time.Second // of the case's time; less is told together with the next
)

// Advance lets the simulated time pass that belongs to the time since the last call. The time must come from the
// monotonic clock.
func (s *Session) Advance(now time.Time) {
	gone := now.Sub(s.last)
	first := s.last.IsZero()
	s.last = now
	if first || gone <= 0 {
		return
	}
	s.limit(gone)
	switch {
	case s.View.Jumping:
		s.View.Behind = false
		s.runOn()
	case s.runs():
		s.pass(gone)
	}
	s.keep()
}

// pass turns time on the wall into ticks.
func (s *Session) pass(gone time.Duration) {
	s.View.Behind = gone > mostBehind
	if s.View.Behind {
		let := (gone - mostBehind) * time.Duration(s.View.Speed)
		s.lost += let
		s.untold += let
		s.View.LostS = s.lost.Seconds()
		gone = mostBehind
	}
	s.tellLag(leastLag)
	s.owed += gone * time.Duration(s.View.Speed)
	for s.owed >= tick && s.runs() {
		s.owed -= tick
		s.Tick()
	}
	s.watchEnds()
}

// runs says whether time passes now. It does not before the bench is begun, in a pause, behind a hint, or
// on the case sheet in practice.
func (s *Session) runs() bool {
	return s.mayRun() && !s.View.Paused && !s.Reading && !s.guideStands() && (s.View.Screen == bench.AtBench || s.options.Assessment)
}

// mayRun says whether there is time left to pass.
func (s *Session) mayRun() bool {
	return s.begun && !s.Run.State.Ended && !s.View.TimeOver && s.View.Screen != bench.Graded && !s.watchOver()
}

// tellLag tells, now and then, that time was let go; in the end all that was is told.
func (s *Session) tellLag(least time.Duration) {
	at := s.Run.State.Tick
	soon := s.toldLag != 0 && at-s.toldLag <= lagTellS*sim.TicksPerSecond
	if s.untold == 0 || s.untold < least || soon && least > 0 {
		return
	}
	s.note(words.Say("log.lag", s.untold.Seconds()))
	s.untold, s.toldLag = 0, max(1, at)
}

// Tick lets one tick pass, and once a second adds to the charts. All that the screens remember of the way of a case comes
// about here, so that a case that is played again from its journal looks the same.
func (s *Session) Tick() {
	if s.View.Watching {
		s.film()
		s.watch()
	}
	if s.Run.State.Tick%sim.TicksPerSecond == 0 {
		s.sample()
		s.guideLook()
	}
	s.Run.Step()
	for i := range s.known { // an alarm that comes back wants to be seen again
		s.known[i] = s.known[i] && s.Run.State.Alarms.On[i]
	}
}
