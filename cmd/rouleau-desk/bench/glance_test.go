// What must be told without a press: agents, requests, supplies, refusals and allergies, other bags; and quick keys that
// work whatever is selected.

package bench_test

import (
	"testing"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

// shows draws a view that a change was made to, beside the bench as it was.
func shows(t *testing.T, b *table, text string, change func(v *bench.View)) {
	t.Helper()
	frame := func() {
		b.Core.Begin(ui.Input{Size: b.Size, Scale: 1})
		b.Desk.Frame(b.Core, &b.Session.View)
		b.List, _ = b.Core.End()
	}
	b.Session.Refresh()
	frame()
	if b.HasText(text) {
		t.Errorf("%q is said without cause", text)
	}
	change(&b.Session.View)
	frame()
	if !b.HasText(text) {
		t.Errorf("%q is not said", text)
	}
	b.Session.Refresh()
}

func TestAtAGlance(t *testing.T) {
	b := sit(t, ui.Vec{X: 1280, Y: 800}, true)
	b.begin()
	b.until(1500)
	if !b.HasText("allergy: Penicillin (rash)") {
		t.Error("the allergy of the case sheet is not in sight")
	}
	if !b.HasText("not for infusion") {
		t.Error("the anticoagulant is not marked as not for infusion")
	}
	if !b.HasText("surgeon lets it pool") {
		t.Error("what the surgeon is doing now is not in sight")
	}
	shows(t, b, "surgeon sucks as it comes", func(v *bench.View) { v.Seen.AgentSaid, v.Seen.Pooling = false, false })
	shows(t, b, "in the wound: not to be collected", func(v *bench.View) { v.Seen.AgentSaid = true })
	shows(t, b, "blood was asked for", func(v *bench.View) { v.Seen.BloodWantedTick = v.Seen.Tick - 20*60 })
	shows(t, b, "rinsing", func(v *bench.View) { v.Seen.SwabsML, v.Seen.Rinsing = 100, true })
	shows(t, b, "needs 700 mL", func(v *bench.View) {
		v.Seen.Pump.CycleOpen, v.Seen.Pump.WashML, v.Seen.Pump.WashedML = true, 1000, 300
	})
	shows(t, b, "washes left: 2", func(v *bench.View) {
		v.Seen.Pump.CycleOpen, v.Seen.Pump.WashML = false, 1000
		v.Seen.Bench.HookPack[sim.WashHookA], v.Seen.Bench.Open[sim.WashClampA], v.Seen.Bench.PackLeftML[2] = 2, true, 2500
	})
	shows(t, b, "no full wash", func(v *bench.View) {
		v.Seen.Pump.CycleOpen, v.Seen.Pump.WashML = false, 1000
		v.Seen.Bench.HookPack[sim.WashHookA], v.Seen.Bench.Open[sim.WashClampA], v.Seen.Bench.PackLeftML[2] = 2, true, 500
	})
	shows(t, b, "no full wash", func(v *bench.View) {
		v.Seen.Pump.CycleOpen, v.Seen.Pump.WashML = false, 1000
		v.Seen.Bench.HookPack[sim.WashHookA], v.Seen.Bench.Open[sim.WashClampA], v.Seen.Bench.PackLeftML[2] = 2, true, 0
	})
	shows(t, b, "500 mL for 50 min", func(v *bench.View) { v.Seen.DropsMin, v.Seen.DripMLMin, v.Seen.Bench.PackLeftML[0] = 200, 10, 500 })
}

// The other bags stand small beside the one on the line, and a press brings one after the other into the panel.
func TestOtherBagsAreInSight(t *testing.T) {
	b := sit(t, ui.Vec{X: 1280, Y: 800}, false)
	b.begin()
	b.until(2600)
	st := &b.Session.Run.State
	st.BagsUsed = 3
	for i := range 3 {
		st.Bags[i].Hung = true
	}
	b.Idle()
	if b.Desk.Select(sim.FieldPart); b.Click("product bag") != nil || !b.HasText("bag 3") {
		t.Error("a press on the bag on the line does not bring that bag into the panel")
	}
	for range 2 { // past the second wash hook and its clamp to the bag
		b.Desk.Select(sim.WashClampB)
		b.Key(ui.KeyRight)
	}
	b.Idle()
	if !b.HasText("bag 3") {
		t.Error("the arrows do not lead to the bag on the line")
	}
	want := []string{"bag 2", "bag 1", "bag 2"}
	b.Desk.Select(sim.FieldPart)
	for _, title := range want {
		if err := b.Click("other bags"); err != nil {
			t.Fatal(err)
		}
		b.Idle()
		if !b.HasText(title) {
			t.Errorf("after a press the panel does not show %s", title)
		}
	}
	st.Bags[1].Discarded = true
	b.Idle()
	if b.Desk.Select(sim.FieldPart); b.Click("other bags") != nil || !b.HasText("bag 1") {
		t.Error("a bag thrown away still stands in the rack")
	}
}

// Quick keys do the main acts whatever part is selected, and not while words are typed.
func TestQuickKeysWorkFromAnywhere(t *testing.T) {
	b := sit(t, ui.Vec{X: 1280, Y: 800}, false)
	b.begin()
	b.until(1500)
	r := b.Session.Run
	b.Desk.Select(sim.PatientPart)
	b.Idle()
	b.Key(ui.K('M').Key)
	b.Idle()
	if r.State.Reservoir.MixUntil <= r.State.Tick {
		t.Error("M does not turn the reservoir while the patient is selected")
	}
	n := len(r.Log)
	b.Key(ui.K('E').Key)
	b.Idle()
	if len(r.Log) != n+1 || r.Log[n].Kind != sim.Refused {
		t.Error("E with an empty bowl is not refused in the log")
	}
	b.Desk.Tab = bench.TabRecords
	b.Idle()
	b.Core.Focus(ui.Name("note"))
	b.Idle()
	n = len(r.Log)
	b.Key(ui.K('F').Key)
	b.Idle()
	if len(r.Log) != n {
		t.Error("a letter of a note was taken for a quick key")
	}
}
