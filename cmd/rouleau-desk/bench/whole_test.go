// What a person must be able to do at every size: reach each part of the drawing, read what had no room in it, and stop.

package bench_test

import (
	"slices"
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

// No part of the drawing is hidden below another, and none reaches over a button.
func TestEachPartCanBePressed(t *testing.T) {
	b := sit(t, sizes[0], false)
	b.begin()
	for _, at := range []float64{1700, 3300} {
		b.until(at)
		b.atSizes(func() {
			b.Idle()
			b.Idle()
			seen := 0
			for i, m := range b.List.Marks {
				if m.Kind != ui.KindHit {
					continue
				}
				seen++
				for _, above := range b.List.Marks[i+1:] {
					if above.Target() && above.Layer == m.Layer && above.Shown.Has(m.Rect.Center()) {
						t.Errorf("%v: %q lies over the middle of %q", b.Size, above.Label, m.Label)
					}
				}
			}
			if seen < 16 {
				t.Errorf("%v: only %d parts", b.Size, seen)
			}
		})
	}
}

// Words that had no room in a small drawing stand in the tip of their part, for pointer and keyboard.
func TestWordsLeftOutAreInTheTip(t *testing.T) {
	speakLong(t)
	b := sit(t, sizes[0], false)
	b.begin()
	b.until(1900)
	left := stretched("clear on top")
	if b.HasText(left) {
		t.Fatal("there is room for all: this test needs a case in which there is not")
	}
	at := slices.IndexFunc(b.List.Marks, func(m ui.Mark) bool { return m.Kind == ui.KindHit && m.Label == stretched("reservoir") })
	if at < 0 {
		t.Fatal("no reservoir")
	}
	m := b.List.Marks[at]
	b.Move(m.Rect.Center())
	b.Wait(700)
	if !b.HasText(left) {
		t.Error("the pointer does not bring up what was left out")
	}
	b.Move(ui.Vec{X: 2, Y: 2})
	b.Wait(100)
	b.Core.Focus(m.ID)
	b.Key(ui.KeyTab)
	b.Frame(ui.Input{Keys: []ui.KeyEvent{{Key: ui.KeyTab, Mods: ui.ModShift}}, Mods: ui.ModShift})
	b.Idle()
	b.Idle()
	if !b.HasText(left) {
		t.Error("the keyboard's focus does not bring up what was left out")
	}
}

// The stop of pump and bowl can be pressed on every screen of a running case.
func TestStopIsAlwaysInSight(t *testing.T) {
	b := sit(t, sizes[0], false)
	b.begin()
	b.until(1850)
	check := func(where string) {
		b.atSizes(func() {
			b.Idle()
			b.Idle()
			m, err := b.At("Stop pump and bowl")
			if err != nil && b.Desk.Dialog == bench.NoDialog {
				t.Errorf("%v, %s: %v", b.Size, where, err)
				return
			}
			stops := 0
			for i := range b.List.Marks {
				k := &b.List.Marks[i]
				if k.Label != "Stop pump and bowl" || k.Kind != ui.KindButton {
					continue
				}
				stops++
				m = *k
			}
			for _, above := range b.List.Marks {
				if above.Layer == m.Layer && above.Kind == ui.KindPanel && above.ID == ui.Name("dialog panel") && !above.Rect.Intersect(m.Rect).Empty() {
					t.Errorf("%v, %s: the stop is covered", b.Size, where)
				}
			}
			if stops == 0 || !m.Enabled || m.Shown != m.Rect {
				t.Errorf("%v, %s: the stop is not whole", b.Size, where)
			}
		})
	}
	check("bench")
	for d := bench.LabelDialog; d <= bench.ChartDialog; d++ {
		b.Desk.Dialog = d
		check("dialog")
	}
	b.Desk.Dialog = bench.NoDialog
	b.Key(ui.K('C').Key)
	check("large charts")
	b.Key(ui.K('C').Key)
	b.Session.Do([]bench.Act{{Do: bench.BackToCase}})
	if !b.Session.View.Seen.Pump.Spinning {
		t.Fatal("the bowl stands: this test needs one that spins")
	}
	b.Session.View.Notice = "A file was dropped. Finish or leave this case first, then drop it again."
	check("case sheet")
	b.atSizes(func() { b.faults(t, "case sheet while the bowl spins") })
	if err := b.Click("Stop pump and bowl"); err != nil {
		t.Error(err)
	}
	b.Idle()
	if b.Session.View.Seen.Pump.Spinning {
		t.Error("the stop on the case sheet does not stop the bowl")
	}
}

// What the window offers beside the bench is offered where it makes sense, and not elsewhere.
func TestWaysOnAreOffered(t *testing.T) {
	b := sit(t, ui.Vec{X: 1280, Y: 800}, false)
	b.begin()
	b.until(1500)
	var acts []bench.Act
	frame := func(press string, change func(*bench.View)) {
		acts = acts[:0]
		b.Screen = func(c *ui.Core) {
			b.Session.Refresh()
			change(&b.Session.View)
			acts = append(acts, b.Desk.Frame(c, &b.Session.View)...)
		}
		b.Idle()
		if press != "" {
			if err := b.Click(press); err != nil {
				t.Error(err)
			}
		}
	}
	for _, k := range []struct {
		press  string
		do     bench.Verb
		change func(*bench.View)
	}{{"Jump to next", bench.JumpToNext, func(*bench.View) {}}, {"To the home screen", bench.GoHome, func(v *bench.View) { v.Paused = true }},
		{"Try again from here", bench.TryAgain, func(v *bench.View) { v.Watching, v.Recorded.EndS = true, 4000 }}} {
		frame(k.press, k.change)
		if !slices.ContainsFunc(acts, func(a bench.Act) bool { return a.Do == k.do }) {
			t.Errorf("%q does not ask for it", k.press)
		}
	}
	frame("", func(v *bench.View) { v.Assessment, v.Watching = true, false })
	for _, l := range b.Labels() {
		if strings.HasPrefix(l, "Jump") || l == "Try again from here" || l == "To the home screen" {
			t.Errorf("%q is offered in an assessment", l)
		}
	}
	frame("", func(v *bench.View) { v.Notice = "saved as attempt.json" })
	if !b.HasText("saved as attempt.json") {
		t.Error("the notice is not shown")
	}
}

// The plain warning of a supply that runs out stands in the panels that wash.
func TestAShortSupplyIsSaid(t *testing.T) {
	b := sit(t, ui.Vec{X: 1280, Y: 800}, false)
	b.begin()
	b.until(1500)
	b.Desk.Select(sim.BowlPart)
	shows(t, b, "saline 0.9 %: 540 mL left, this wash needs 580 mL.", func(v *bench.View) {
		v.Seen.Pump.CycleOpen, v.Seen.Pump.WashML, v.Seen.Pump.WashedML = true, 1000, 420
		v.Seen.Bench.HookPack[sim.WashHookA], v.Seen.Bench.Open[sim.WashClampA], v.Seen.Bench.PackLeftML[2] = 2, true, 540
	})
}

// What needs no press is in the drawing at every size, and in a language of longer words.
func TestAtAGlanceAtEverySize(t *testing.T) {
	look := func(t *testing.T) {
		b := sit(t, sizes[0], true)
		b.begin()
		b.until(3300)
		b.atSizes(func() {
			b.Idle()
			b.Idle()
			for _, any := range [][]string{{words.Say("bench.not_for_infusion")}, {words.Say("bench.to_reservoir")}, {words.Line("bench.allergy", "Penicillin (rash)")},
				{words.Line("bench.connected_bag", words.Say("part.bag_1")), words.Line("bench.connected_short", words.Say("part.bag_1")), words.Line("bench.giving", "")}} {
				if !slices.ContainsFunc(any, b.HasText) {
					t.Errorf("%v: %q is not in sight", b.Size, any)
				}
			}
			if !b.HasText("3:3") {
				t.Errorf("%v: how long the bag may be used is not in sight", b.Size)
			}
			clamps := 0
			for _, m := range b.List.Marks {
				if m.Kind == ui.KindText && (m.Label == words.Say("bench.open") || m.Label == words.Say("bench.closed")) {
					clamps++
				}
			}
			if clamps < 6 {
				t.Errorf("%v: %d clamps say how they stand, want 6", b.Size, clamps)
			}
		})
	}
	t.Run("English", look)
	t.Run("longer words", func(t *testing.T) {
		speakLong(t)
		look(t)
	})
}

// The keys on the glass have room at every size.
func TestKeysOnTheGlassFit(t *testing.T) {
	b := sit(t, sizes[0], false)
	b.begin()
	b.until(1500)
	b.Desk.Select(sim.AnticoagulantHook)
	b.atSizes(func() {
		b.Idle()
		b.Idle()
		m, err := b.At("drip")
		if err != nil {
			t.Fatal(err)
		}
		b.TapAt(ui.Vec{X: m.Rect.Right() - 12, Y: m.Rect.Y + 10})
		b.faults(t, "keys on the glass")
		if !slices.ContainsFunc(b.List.Marks, func(m ui.Mark) bool { return m.Layer > 0 && m.Label == "7" }) {
			t.Errorf("%v: no keys came up", b.Size)
		}
		b.Core.Focus(0)
		b.Idle()
	})
}
