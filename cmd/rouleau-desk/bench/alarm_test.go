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

// The part that an alarm is about carries its sign, and no other part does.
func TestAnAlarmStandsAtItsPart(t *testing.T) {
	b := sit(t, ui.Vec{X: 1280, Y: 800}, false)
	b.begin()
	b.until(1700)
	at := func(a sim.Alarm) (parts []string) {
		b.Session.Run.State.Alarms.On = [sim.AlarmCount]bool{}
		b.Session.Run.State.Alarms.On[a] = true
		b.Idle()
		b.Idle()
		for _, op := range b.List.Ops {
			if op.Rect.W != op.Rect.H || op.Rect.W != 26 || op.Width != 0 || !alarmGround(op.Col) { // the ground of a sign
				continue
			}
			for _, m := range b.List.Marks {
				if m.Kind == ui.KindHit && m.Rect.Inset(-30).Has(op.Rect.Center()) && (m.Rect.Has(op.Rect.Center()) || m.Label == "waste bag") {
					parts = append(parts, m.Label)
				}
			}
		}
		return parts
	}
	for _, k := range []struct {
		alarm sim.Alarm
		part  string
	}{{sim.AlarmAir, "pump"}, {sim.AlarmReaction, "patient"}, {sim.AlarmNoDrip, "heparin in saline"}, {sim.AlarmReservoirFull, "reservoir"},
		{sim.AlarmWasteFull, "waste bag"}, {sim.AlarmFieldHidden, "wound"}, {sim.AlarmInterface, "bowl"}} {
		if got := at(k.alarm); len(got) != 1 || got[0] != k.part {
			t.Errorf("%v: its sign is at %q, not at %q alone", k.alarm, got, k.part)
		}
	}
	if got := at(sim.AlarmExpiring); len(got) != 0 {
		t.Errorf("an alarm without a place has its sign at %q", got)
	}
}

func alarmGround(col ui.Color) bool {
	for _, k := range ui.Paper().Alarm {
		if col == k.On || col == k.Off {
			return true
		}
	}
	return false
}
