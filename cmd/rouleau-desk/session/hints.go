// Hints in practice: what the scenario has to say about the situations that are the case now.

package session

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/scoring/coach"
	"rouleau/sim"
)

// sight is what the trainee can see, for hints and lessons.
func (s *Session) sight() *coach.Sight {
	return &coach.Sight{Seen: &s.View.Seen, DripPer100: s.charts.Tracks[bench.SignalDripPer100].Last(),
		UnwatchedS: coach.UnwatchedS(s.Run.Actions, s.Run.State.Tick), ReservoirML: s.View.Limits.ReservoirML}
}

// hints fills in those that apply: first the alarm that presses most, then those of the scenario, in its order. An assessment
// has none.
func (s *Session) hints() {
	v := &s.View
	v.Hints = v.Hints[:0]
	if s.options.Assessment || !s.scenario.Modes.PracticeHints || !s.begun || s.Run.State.Ended {
		return
	}
	for i := range v.Alarms { // the most urgent first
		if a := &v.Alarms[i]; !a.Known && a.Is.Priority() > sim.LowPriority {
			name := a.Is.String()
			v.Hints = append(v.Hints, bench.Hint{When: name, Steps: []string{words.Say("hint.alarm", words.Say("alarm."+name)),
				words.Say("means." + name), words.Say("check." + name)}})
			break
		}
	}
	sight := s.sight()
	for i := range s.scenario.Hints {
		if h := &s.scenario.Hints[i]; sight.Holds(h.When) {
			v.Hints = append(v.Hints, bench.Hint{When: h.When, Steps: h.Steps})
		}
	}
}
