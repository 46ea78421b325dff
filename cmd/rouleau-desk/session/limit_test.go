// The time allowed for an assessment: told beforehand, enforced by the wall's clock, and said.

package session

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/scenarios"
	"rouleau/scoring/attempt"
	"rouleau/sim"
)

func logged(s *Session, text string) bool {
	return slices.ContainsFunc(s.View.Log, func(l bench.Line) bool { return strings.Contains(l.Text, text) })
}

func TestAnAssessmentIsStoppedWhenItsTimeIsOver(t *testing.T) {
	sc, err := scenarios.Open("steady-oozing-spine")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "attempt.json")
	s := New(sc, Options{Seed: 1, Assessment: true, Finish: Grader(sc, true, "test", path, func() time.Time { return noon })})
	now := noon
	pass := func(d time.Duration) { now = now.Add(d); s.Advance(now); s.Refresh() }
	pass(0)
	pass(time.Hour) // at the cautions nothing counts
	s.Do([]bench.Act{{Do: bench.GoOn}})
	pass(time.Minute)
	allowed := time.Duration(sc.Modes.TimeLimitMin) * time.Minute
	if left := (allowed - time.Minute).Seconds(); s.View.TimeLeftS != left {
		t.Fatalf("%.0f s are left after a minute at the case sheet, want %.0f", s.View.TimeLeftS, left)
	}
	s.Do([]bench.Act{{Sim: sim.Action{Do: sim.Decide, Value: float64(sim.CollectOnly)}}, {Do: bench.GoOn}})
	pass(allowed - 11*time.Minute - 10*time.Second) // a stall of the window counts as well
	if logged(s, "10 min are left") {
		t.Error("ten minutes are announced too early")
	}
	pass(15 * time.Second)
	if !logged(s, "10 min are left") || s.View.TimeOver {
		t.Errorf("ten minutes before the end: told %v, over %v", logged(s, "10 min are left"), s.View.TimeOver)
	}
	pass(10 * time.Minute)
	if !s.View.TimeOver || !logged(s, "allowed for the assessment are over") {
		t.Fatalf("over %v, told %v", s.View.TimeOver, logged(s, "are over"))
	}
	at := s.Run.State.Tick
	s.Do([]bench.Act{{Sim: sim.Action{Do: sim.OpenSet, On: sim.CollectionSet}}})
	pass(time.Second)
	if s.Run.State.Tick != at || s.Run.State.Bench.Opened[sim.CollectionSet] || s.View.May(sim.Action{Do: sim.Mix}) != "case_is_over" {
		t.Error("the case went on after its time")
	}
	s.Do([]bench.Act{{Do: bench.Finish}})
	if s.View.Screen != bench.Graded || !s.View.Result.Graded || s.View.Result.Pass {
		t.Errorf("screen %v, result %+v", s.View.Screen, s.View.Result)
	}
	a, err := attempt.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	if report, err := attempt.Replay(a); err != nil || !report.Same() {
		t.Errorf("the replay of a stopped assessment parts: %+v, %v", report, err)
	}
}

func TestPracticeHasNoLimit(t *testing.T) {
	s := open(t, Options{Seed: 1})
	s.begin()
	s.Advance(noon)
	s.Advance(noon.Add(20 * time.Hour))
	if s.View.TimeOver || s.View.TimeLeftS != 0 {
		t.Errorf("over %v, %.0f s left", s.View.TimeOver, s.View.TimeLeftS)
	}
}

// A look is one line of the log: what it brought to light.
func TestALookIsLoggedOnce(t *testing.T) {
	s := open(t, Options{Seed: 1})
	s.begin()
	s.Do([]bench.Act{{Sim: sim.Action{Do: sim.Inspect, On: sim.DripClamp}}})
	s.Refresh()
	n := 0
	for _, l := range s.View.Log {
		if strings.Contains(l.Text, "drip clamp") {
			n++
		}
	}
	if n != 1 || s.View.Heard[sim.DripClamp] == "" {
		t.Errorf("%d lines about the look, heard %q", n, s.View.Heard[sim.DripClamp])
	}
}

// The drip is told per 100 mL of blood: irrigation that is sucked along does not make it look small.
func TestIrrigationIsCountedOffTheDrip(t *testing.T) {
	s := open(t, Options{Seed: 1})
	s.begin()
	st := &s.Run.State
	st.Field.IrrigationRateMLMin, st.Field.BleedMLMin = 35, 35
	for sec := range 120 { // 60 mL of irrigation and 60 mL of blood meet 12 mL of anticoagulant
		st.Drip.DrippedML = 12 * float64(sec) / 119
		st.Reservoir.TakenInML = 132 * float64(sec) / 119
		s.sample()
	}
	if got := s.charts.Tracks[bench.SignalDripPer100].At(119); got < 15 || got > 25 {
		t.Errorf("%.1f mL per 100 mL of blood, want about 20", got)
	}
}
