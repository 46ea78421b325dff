// Hints in practice: which situations hold now, from what the trainee can see, and what the scenario has to say about them.

package session

import (
	"math"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/sim"
)

// Marks from which a situation is worth a hint; assumptions, meant to come a little before harm is done.
const (
	hintPrimeML       = 150.0
	hintDripLow       = 12.0 // mL per 100 mL of blood
	hintDripHigh      = 28.0
	hintClearShare    = 0.15
	hintSwabsML       = 150.0
	hintReservoirML   = 800.0
	hintDetector      = 0.85
	hintFullShare     = 0.85
	hintPackML        = 100.0
	hintUnwatchedS    = 120.0
	hintFirstBloodsML = 60.0
)

// hints fills in those that apply, in the scenario's order. An assessment has none.
func (s *Session) hints() {
	v := &s.View
	v.Hints = v.Hints[:0]
	if s.options.Assessment || !s.scenario.Modes.PracticeHints || !s.begun || s.Run.State.Ended {
		return
	}
	for i := range s.scenario.Hints {
		if h := &s.scenario.Hints[i]; s.holds(h.When) {
			v.Hints = append(v.Hints, bench.Hint{When: h.When, Steps: h.Steps})
		}
	}
}

// holds says whether a situation named by the scenario format is the case.
func (s *Session) holds(when string) bool {
	v := &s.View.Seen
	p := &v.Pump
	switch when {
	case "undecided":
		return v.Bench.Decision == sim.Undecided
	case "not_primed":
		return v.Bench.Opened[sim.CollectionSet] && v.PrimedML < hintPrimeML && v.TakenInML-v.DripML < hintFirstBloodsML
	case "drip_behind":
		return lastOf(s.charts.Drip) < hintDripLow
	case "drip_far_ahead":
		return lastOf(s.charts.Drip) > hintDripHigh
	case "clear_layer":
		return v.ReservoirML > 200 && v.ClearML > hintClearShare*v.ReservoirML
	case "agent_in_field":
		return v.AgentSaid && v.Route == sim.ToReservoir
	case "swabs_full":
		return v.SwabsML >= hintSwabsML && !v.Rinsing
	case "reservoir_ready":
		return v.ReservoirML >= hintReservoirML && !p.CycleOpen
	case "bowl_nearly_full":
		return p.Mode == sim.PumpFill && p.Detector > hintDetector
	case "filled_not_washed":
		return p.CycleOpen && p.Filled && !p.Washed && p.Mode == sim.PumpIdle
	case "washed_not_emptied":
		return p.CycleOpen && p.Washed && p.Mode == sim.PumpIdle
	case "reservoir_nearly_full":
		return v.ReservoirML > hintFullShare*s.View.Limits.ReservoirML
	case "operation_over":
		return v.OperationOver
	}
	return s.holdsAboutPeople(when)
}

// holdsAboutPeople are the situations about bags, packs, patient and team.
func (s *Session) holdsAboutPeople(when string) bool {
	v := &s.View.Seen
	switch when {
	case "not_labelled":
		for i := range v.Bags[:v.BagsUsed] {
			if b := &v.Bags[i]; b.ML > 0 && !b.Discarded && b.LabelBits != sim.LabelComplete {
				return true
			}
		}
	case "blood_wanted":
		return v.BloodWantedTick >= 0
	case "giving_unwatched":
		return v.Giving.FlowMLMin > 0 && s.sinceWatchedS() > hintUnwatchedS
	case "question_open":
		return s.View.Question.Open
	case "pack_nearly_empty":
		for hook := sim.AnticoagulantHook; hook <= sim.WashHookB; hook++ {
			if i := v.Bench.HookPack[hook]; i >= 0 && v.Bench.PackLeftML[i] < hintPackML {
				return true
			}
		}
	}
	return false
}

var nothing = math.NaN()

// sinceWatchedS is how long ago the trainee last looked at the patient.
func (s *Session) sinceWatchedS() float64 {
	for i := len(s.Run.Actions) - 1; i >= 0; i-- {
		if a := &s.Run.Actions[i]; a.Do == sim.Watch {
			return sim.Seconds(s.Run.State.Tick - a.Tick)
		}
	}
	return math.Inf(1)
}

// lastOf is the newest value of a series; where there is none every comparison with it fails.
func lastOf(values []float64) float64 {
	if len(values) == 0 {
		return nothing
	}
	return values[len(values)-1]
}
