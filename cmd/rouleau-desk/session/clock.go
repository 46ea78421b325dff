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
	if !s.runs() {
		return
	}
	s.View.Behind = gone > mostBehind
	if s.View.Behind {
		s.lag(gone - mostBehind)
		gone = mostBehind
	}
	s.owed += gone * time.Duration(s.View.Speed)
	for s.owed >= tick && s.runs() {
		s.owed -= tick
		s.Tick()
	}
}

// runs says whether time passes now. It does not before the bench is begun, in a pause, or on the case sheet in practice.
func (s *Session) runs() bool {
	if !s.begun || s.View.Paused || s.Run.State.Ended || s.View.TimeOver || s.View.Screen == bench.Graded {
		return false
	}
	return s.View.Screen == bench.AtBench || s.options.Assessment
}

// lag tells, now and then, that time was let go.
func (s *Session) lag(lost time.Duration) {
	if lost.Seconds()*float64(s.View.Speed) < 1 {
		return
	}
	if at := s.Run.State.Tick; s.toldLag == 0 || at-s.toldLag > lagTellS*sim.TicksPerSecond {
		s.note(words.Say("log.lag", lost.Seconds()*float64(s.View.Speed)))
		s.toldLag = max(1, at)
	}
}

// Tick lets one tick pass, and once a second adds to the charts.
func (s *Session) Tick() {
	if s.Run.State.Tick%sim.TicksPerSecond == 0 {
		s.sample()
	}
	s.Run.Step()
}
