// An assessment gives no hint.

package session

import (
	"testing"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/sim"
)

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

// An alarm that presses goes before what the scenario says, until it is acknowledged.
func TestAnAlarmIsTheFirstHint(t *testing.T) {
	s := open(t, Options{Seed: 1})
	s.begin()
	s.Run.State.Alarms.On[sim.AlarmAir] = true
	s.Refresh()
	if len(s.View.Hints) < 2 || s.View.Hints[0].When != sim.AlarmAir.String() || len(s.View.Hints[0].Steps) != 3 {
		t.Fatalf("hints %v", s.View.Hints)
	}
	s.Do([]bench.Act{{Do: bench.Acknowledge, Alarm: sim.AlarmAir}})
	s.Refresh()
	if s.View.Hints[0].When == sim.AlarmAir.String() {
		t.Error("an alarm that is known is still the first hint")
	}
}
