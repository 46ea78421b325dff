// Hints in practice: what the scenario has to say about the situations that are the case now.

package session

import (
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/scoring/coach"
)

// sight is what the trainee can see, for hints and lessons.
func (s *Session) sight() *coach.Sight {
	return &coach.Sight{Seen: &s.View.Seen, DripPer100: s.charts.Tracks[bench.SignalDripPer100].Last(),
		UnwatchedS: coach.UnwatchedS(s.Run.Actions, s.Run.State.Tick), ReservoirML: s.View.Limits.ReservoirML}
}

// hints fills in those that apply, in the scenario's order. An assessment has none.
func (s *Session) hints() {
	v := &s.View
	v.Hints = v.Hints[:0]
	if s.options.Assessment || !s.scenario.Modes.PracticeHints || !s.begun || s.Run.State.Ended {
		return
	}
	sight := s.sight()
	for i := range s.scenario.Hints {
		if h := &s.scenario.Hints[i]; sight.Holds(h.When) {
			v.Hints = append(v.Hints, bench.Hint{When: h.When, Steps: h.Steps})
		}
	}
}
