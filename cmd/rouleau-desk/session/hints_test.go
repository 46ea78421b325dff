// An assessment gives no hint.

package session

import (
	"testing"

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
