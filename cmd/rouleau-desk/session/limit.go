// The time an assessment may take on the wall, the case sheet included: told beforehand, and then enforced.

package session

import (
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/sim"
)

// warnings are how much time is left when it is told.
var warnings = [...]time.Duration{30 * time.Minute, 10 * time.Minute, 5 * time.Minute, time.Minute}

// limit counts the wall's time of an assessment, stalls of the window included, and stops the case when it is over.
func (s *Session) limit(gone time.Duration) {
	v := &s.View
	if !s.options.Assessment || v.Screen == bench.Cautions || v.Screen == bench.Graded || s.Run.State.Ended || v.TimeOver {
		return
	}
	allowed := time.Duration(s.scenario.Modes.TimeLimitMin) * time.Minute
	s.spent += gone
	left := allowed - s.spent
	v.TimeLeftS = max(0, left.Seconds())
	if left > 0 {
		s.warn(left, allowed)
		return
	}
	v.TimeOver = true
	s.note(words.Say("log.time_over", s.scenario.Modes.TimeLimitMin))
	s.apply(sim.Action{Do: sim.StopAll}) // refused where everything stands
	if v.Screen == bench.Sheet {
		v.Screen = bench.AtBench // where it is said, and from where the result is reached
	}
}

// warn tells once for each mark how much time is left.
func (s *Session) warn(left, allowed time.Duration) {
	for _, w := range warnings {
		if left <= w && w < allowed && (s.toldLeft == 0 || w < s.toldLeft) {
			s.toldLeft = w
			if left > w-30*time.Second {
				s.note(words.Say("log.time_left", int(w.Minutes())))
			}
		}
	}
}

// restoreLimit takes up the time of an assessment where it was left; what was warned of is not warned of again.
func (s *Session) restoreLimit(spent time.Duration) {
	if s.spent = spent; !s.options.Assessment {
		return
	}
	allowed := time.Duration(s.scenario.Modes.TimeLimitMin) * time.Minute
	left := allowed - spent
	s.View.TimeLeftS, s.View.TimeOver = max(0, left.Seconds()), left <= 0 && !s.Run.State.Ended
	if s.View.TimeOver && s.View.Screen == bench.Sheet {
		s.View.Screen = bench.AtBench
	}
	for _, w := range warnings {
		if left <= w && w < allowed {
			s.toldLeft = w
		}
	}
}
