// A recorded attempt shown in the window: its acts are done at their ticks, and those of a hand refused, until whoever
// watches takes over.

package session

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/sim"
)

const whileWatching sim.Reason = "watching"

// watch does the acts that are due.
func (s *Session) watch() {
	if !s.View.Watching {
		return
	}
	for acts := s.options.Watch; s.watched < len(acts) && acts[s.watched].Tick <= s.Run.State.Tick; s.watched++ {
		s.Run.Do(acts[s.watched])
	}
}

// watchOver says whether the recorded attempt has been shown to its end.
func (s *Session) watchOver() bool {
	return s.View.Watching && s.Run.State.Tick >= s.options.WatchEnd
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

// watchOn lets whoever watches play on from here, as practice. What was recorded after this moment is dropped.
func (s *Session) watchOn() {
	v := &s.View
	if !v.Watching || s.Run.State.Ended {
		return
	}
	s.watch()
	v.Watching, v.Paused = false, false
	s.options.Watch = nil
	s.tookOver = true
	s.keepFromStart()
	s.keepWindow(bench.Act{Do: bench.WatchOn})
	s.acting = false
	s.note(words.Say("log.watch_on"))
}
