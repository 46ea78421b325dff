// Every act of the core can be reached from the bench, and what cannot be done now says why.

package bench_test

import (
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/session"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
	"rouleau/scoring/operators"
	"rouleau/sim"
)

// taster presses every control and notes the acts that come of it, without doing them.
type taster struct {
	*table
	tried map[sim.Verb]bool
}

func taste(t *testing.T) *taster {
	t.Helper()
	x := &taster{table: &table{Desk: bench.New()}, tried: map[sim.Verb]bool{}}
	x.Session = session.New(spine(t), session.Options{Seed: 1})
	x.steady = operators.NewSteady(operators.SheetOf(spine(t), &x.Session.Run.Case))
	x.Driver = uitest.New(ui.Vec{X: 1280, Y: 800}, func(c *ui.Core) {
		x.Session.Refresh()
		for _, a := range x.Desk.Frame(c, &x.Session.View) {
			if a.Do == bench.Bench {
				x.tried[a.Sim.Do] = true
			}
		}
	})
	return x
}

// everything presses each control of the screen as it stands.
func (x *taster) everything(part sim.Part, tab int, dialog bench.Dialog) {
	back := func() {
		x.Desk.Select(part)
		x.Desk.Tab, x.Desk.Dialog = tab, dialog
		x.Idle()
		x.Idle()
	}
	back()
	marks := append([]ui.Mark(nil), x.List.Marks...)
	for _, m := range marks {
		if !m.Target() || m.ID == ui.Name("charts large") { // one that is disabled now may be enabled by those before it
			continue
		}
		x.Core.Focus(m.ID)
		switch m.Kind {
		case ui.KindSlider:
			x.Key(ui.KeyRight, ui.KeyLeft)
		case ui.KindChoice:
			if !m.Shown.Empty() {
				x.ClickAt(m.Shown.Center())
			}
		case ui.KindHold:
			x.Key(ui.KeyEnter, ui.KeyEnter)
		case ui.KindTextField:
			x.Type("z")
		default:
			x.Key(ui.KeyEnter)
		}
		if x.Desk.Part != part || x.Desk.Tab != tab || x.Desk.Dialog != dialog {
			back()
		}
	}
}

func TestEveryActCanBeReached(t *testing.T) {
	x := taste(t)
	r := x.Session.Run
	do := func(v sim.Verb, on sim.Part, value float64) {
		if why := r.Do(sim.Action{Do: v, On: on, Value: value}); why != "" {
			t.Fatalf("%s: %s", v, why)
		}
	}
	x.Session.Do([]bench.Act{{Do: bench.GoOn}})
	x.Idle()
	for _, k := range []string{"set up to process", "heparin in saline", "small"} {
		if err := x.Click(k); err != nil {
			t.Fatal(err)
		}
	}
	if err := x.Click("To the bench: time starts"); err != nil {
		t.Fatal(err)
	}
	x.Session.Do([]bench.Act{{Do: bench.GoOn}})
	x.everything(sim.ReservoirPart, bench.TabPart, bench.NoDialog) // sets still wrapped
	do(sim.Decide, 0, float64(sim.SetUpToProcess))
	do(sim.OpenSet, sim.CollectionSet, 0)
	x.passed(46)
	x.everything(sim.ReservoirPart, bench.TabPart, bench.NoDialog) // nothing connected yet
	moments := []func(){
		func() { x.until(300) },
		func() { x.until(1700); x.passed(30) },
		func() { do(sim.Fill, 0, 0); x.passed(120) },
		func() { do(sim.StopAll, 0, 0); x.passed(20) }, // a bowl that stands with blood in it
		func() { // and a bag it could be topped up from
			r.State.Bags[0].Fluid, r.State.Bags[0].CameML = sim.Saline.Of(80), 80
			x.passed(1)
		},
		func() { x.until(2300) },
		func() { x.until(3300) },
		func() { x.until(3470); x.passed(190) }, // a question waits
		func() { x.until(4250) },
		func() { // the blood of a pump is offered
			x.until(4600)
			x.passed(60)
			r.State.Team.PumpOfferTick, r.State.Team.PumpOfferEnds, r.State.Stores.Circuit = 1, r.Case.LastTick, sim.Saline.Of(500)
		},
	}
	for _, m := range moments {
		m()
		for _, p := range []sim.Part{sim.FieldPart, sim.AnticoagulantHook, sim.ReservoirPart, sim.PumpPart, sim.BowlPart, sim.WashHookA,
			sim.WashHookB, sim.FirstBag, sim.WasteBag, sim.PatientPart} {
			x.everything(p, bench.TabPart, bench.NoDialog)
		}
		x.everything(sim.FieldPart, bench.TabTeam, bench.NoDialog)
		x.everything(sim.FieldPart, bench.TabRecords, bench.NoDialog)
		if r.State.BagsUsed > 0 {
			x.everything(sim.FirstBag, bench.TabPart, bench.LabelDialog)
			x.everything(sim.FirstBag, bench.TabPart, bench.HandOverDialog)
		}
		if r.State.Tick >= r.Case.EndTick {
			x.everything(sim.FirstBag, bench.TabPart, bench.TallyDialog)
		}
	}
	for v := sim.NoVerb + 1; v.String() != "unknown"; v++ {
		if !x.tried[v] {
			t.Errorf("%s cannot be reached from the screens", v)
		}
	}
}

// A control that cannot be used shows the reason, in words that stand on the screen.
func TestDisabledShowsTheReason(t *testing.T) {
	b := sit(t, ui.Vec{X: 1024, Y: 640}, true)
	b.begin()
	b.until(1700)
	seen := 0
	for _, p := range parts {
		b.Desk.Select(p)
		b.Idle()
		b.Idle()
		for _, m := range b.List.Marks {
			if !m.Target() || m.Enabled || m.Shown != m.Rect {
				continue
			}
			seen++
			shown := false
			for _, w := range b.List.Marks {
				shown = shown || w.Kind == ui.KindText && w.Owner != 0 && w.Label == m.Why && w.Rect.Intersect(m.Rect) == w.Rect
			}
			if !shown {
				t.Errorf("%s: %q does not show its reason %q", p, m.Label, m.Why)
			}
			if strings.HasPrefix(m.Why, "‹") {
				t.Errorf("%s: %q has no words for its reason", p, m.Label)
			}
		}
	}
	if seen < 10 {
		t.Errorf("only %d disabled controls were seen", seen)
	}
}

// An assessment shows nothing that a person could not see, has one speed and no pause.
func TestAssessmentHidesTheTruth(t *testing.T) {
	b := sit(t, ui.Vec{X: 1280, Y: 800}, true)
	b.begin()
	b.Session.Do([]bench.Act{{Do: bench.ToggleTruth}, {Do: bench.TogglePause}, {Do: bench.SetSpeed, Value: 20}})
	b.until(1800)
	v := &b.Session.View
	if v.ShowTruth || v.Paused || v.Speed != 1 {
		t.Errorf("truth %v, paused %v, speed %d", v.ShowTruth, v.Paused, v.Speed)
	}
	if v.Truth != (bench.Truth{}) || v.Charts.Tracks[bench.TrueHb].Len() > 0 {
		t.Error("hidden truth is in the view of an assessment")
	}
	if !v.Drawn.FromDetector {
		t.Error("the bed is not drawn from the detector")
	}
	offered := func(b *table) (all []string) {
		for _, text := range []string{"truth", "Pause", words.Say("top.hint"), words.Say("top.jump"), words.Line("top.times", 20)} {
			if b.HasText(text) {
				all = append(all, text)
			}
		}
		return all
	}
	if got := offered(b); len(got) > 0 {
		t.Errorf("an assessment offers %q", got)
	}
	p := sit(t, ui.Vec{X: 1280, Y: 800}, false)
	p.begin()
	if got := offered(p); len(got) != 5 {
		t.Errorf("practice offers only %q: this test looks for the wrong words", got)
	}
}

// In practice the drawing shows what a person sees, until hidden truth is asked for.
func TestTheDrawingShowsTheTruthOnRequestOnly(t *testing.T) {
	b := sit(t, ui.Vec{X: 1280, Y: 800}, false)
	b.begin()
	b.until(1700)
	if b.Idle(); !b.Session.View.Drawn.FromDetector {
		t.Error("with truth off the bed is not drawn from the detector")
	}
	b.Session.Do([]bench.Act{{Do: bench.ToggleTruth}})
	if b.Idle(); b.Session.View.Drawn.FromDetector {
		t.Error("with truth on the bed is drawn from the detector")
	}
}
