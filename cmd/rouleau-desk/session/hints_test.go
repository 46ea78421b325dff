// Every situation that the scenario format names can come, and an assessment gives no hint.

package session

import (
	"reflect"
	"strings"
	"testing"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/scenarios"
	"rouleau/sim"
)

// situations are the names the format allows, from its own tag.
func situations(t *testing.T) []string {
	t.Helper()
	f, ok := reflect.TypeOf(scenarios.Hint{}).FieldByName("When")
	if !ok {
		t.Fatal("hints have no situation any more")
	}
	_, list, ok := strings.Cut(f.Tag.Get("rule"), "oneof=")
	if !ok {
		t.Fatal("the situations are not listed in the tag any more")
	}
	return strings.Split(list, "|")
}

func TestEverySituationCanCome(t *testing.T) {
	ways := map[string]func(s *Session, v *sim.Seen){
		"undecided":             func(_ *Session, v *sim.Seen) {},
		"not_primed":            func(_ *Session, v *sim.Seen) { v.Bench.Opened[sim.CollectionSet] = true },
		"drip_behind":           func(s *Session, _ *sim.Seen) { s.charts.Drip = []float64{5} },
		"drip_far_ahead":        func(s *Session, _ *sim.Seen) { s.charts.Drip = []float64{50} },
		"clear_layer":           func(_ *Session, v *sim.Seen) { v.ReservoirML, v.ClearML = 500, 200 },
		"agent_in_field":        func(_ *Session, v *sim.Seen) { v.AgentSaid, v.Route = true, sim.ToReservoir },
		"swabs_full":            func(_ *Session, v *sim.Seen) { v.SwabsML = 300 },
		"reservoir_ready":       func(_ *Session, v *sim.Seen) { v.ReservoirML = 1000 },
		"bowl_nearly_full":      func(_ *Session, v *sim.Seen) { v.Pump.Mode, v.Pump.Detector = sim.PumpFill, 0.9 },
		"filled_not_washed":     func(_ *Session, v *sim.Seen) { v.Pump.CycleOpen, v.Pump.Filled = true, true },
		"washed_not_emptied":    func(_ *Session, v *sim.Seen) { v.Pump.CycleOpen, v.Pump.Washed = true, true },
		"not_labelled":          func(_ *Session, v *sim.Seen) { v.BagsUsed, v.Bags[0].ML = 1, 100 },
		"blood_wanted":          func(_ *Session, v *sim.Seen) { v.BloodWantedTick = 5 },
		"giving_unwatched":      func(_ *Session, v *sim.Seen) { v.Giving.FlowMLMin = 50 },
		"question_open":         func(s *Session, _ *sim.Seen) { s.View.Question.Open = true },
		"reservoir_nearly_full": func(_ *Session, v *sim.Seen) { v.ReservoirML = 2900 },
		"pack_nearly_empty":     func(_ *Session, v *sim.Seen) { v.Bench.HookPack[sim.WashHookA], v.Bench.PackLeftML[0] = 0, 40 },
		"operation_over":        func(_ *Session, v *sim.Seen) { v.OperationOver = true },
	}
	for _, when := range situations(t) {
		s := open(t, Options{Seed: 1})
		s.Do([]bench.Act{{Do: bench.GoOn}, {Do: bench.GoOn}})
		if when != "undecided" && s.holds(when) {
			t.Errorf("%s holds before anything happened", when)
		}
		way := ways[when]
		if way == nil {
			t.Errorf("%s is allowed by the format and nothing here knows it", when)
			continue
		}
		way(s, &s.View.Seen)
		if !s.holds(when) {
			t.Errorf("%s does not hold when it should", when)
		}
	}
}

func TestHintsOnlyInPractice(t *testing.T) {
	for _, assessment := range []bool{false, true} {
		s := open(t, Options{Seed: 1, Assessment: assessment})
		s.begin()
		s.Run.State.Field.Swabs = sim.Fluid{CellsML: 300}
		s.Refresh()
		if got := len(s.View.Hints) > 0; got == assessment {
			t.Errorf("assessment %v: hints %v", assessment, s.View.Hints)
		}
	}
}
