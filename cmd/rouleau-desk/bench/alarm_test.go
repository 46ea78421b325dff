// Alarms on the bench: words, a shape by priority, what to look at first, and acknowledging.

package bench_test

import (
	"testing"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

func TestAlarmsAreShownAndAcknowledged(t *testing.T) {
	for _, size := range sizes {
		b := sit(t, size, false)
		b.begin()
		b.until(1700)
		for i := range b.Session.Run.State.Alarms.On {
			b.Session.Run.State.Alarms.On[i] = true // the worst that can be
		}
		b.faults(t, "all alarms")
		b.Session.Run.State.Alarms.On = [sim.AlarmCount]bool{sim.AlarmNoDrip: true}
		b.faults(t, "one alarm")
		if err := b.Click("sucking without anticoagulant"); err != nil {
			t.Fatal(err)
		}
		b.Idle()
		b.faults(t, "alarm dialog")
		if !b.HasText("Look at the pack, its clamp and the drip rate") {
			t.Error("the dialog does not say what to look at first")
		}
		if err := b.Click("Acknowledge"); err != nil {
			t.Fatal(err)
		}
		b.Idle()
		if !b.Session.View.Alarms[0].Known {
			t.Error("the alarm was not acknowledged")
		}
		b.Key(ui.KeyEscape)
		if b.Desk.Dialog != bench.NoDialog {
			t.Error("escape does not close the dialog")
		}
	}
}
