// Every screen of a case at several sizes: nothing overlaps, nothing is cut, every control is large enough.

package bench_test

import (
	"fmt"
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/session"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
	"rouleau/scenarios"
	"rouleau/scoring/operators"
	"rouleau/sim"
)

// table is a window without a display in which a case is played.
type table struct {
	*uitest.Driver
	Session *session.Session
	Desk    *bench.Desk
	steady  *operators.Steady
	told    map[string]bool // faults reported already
}

func spine(t testing.TB) *scenarios.Scenario {
	t.Helper()
	sc, err := scenarios.Open("steady-oozing-spine")
	if err != nil {
		t.Fatal(err)
	}
	return sc
}

func sit(t testing.TB, size ui.Vec, assessment bool) *table {
	t.Helper()
	sc := spine(t)
	b := &table{Desk: bench.New(), told: map[string]bool{}}
	b.Session = session.New(sc, session.Options{Seed: 1, Assessment: assessment, Finish: session.Grader(sc, assessment, "test", "", nil)})
	b.steady = operators.NewSteady(operators.SheetOf(sc, &b.Session.Run.Case))
	b.Driver = uitest.New(size, func(c *ui.Core) {
		b.Session.Refresh()
		b.Session.Do(b.Desk.Frame(c, &b.Session.View))
	})
	b.Core.Words = bench.CoreWords()
	return b
}

// begin goes to the bench without choosing anything by hand.
func (b *table) begin() {
	b.Session.Do([]bench.Act{{Do: bench.GoOn}, {Do: bench.GoOn}})
	b.Idle()
}

// until lets the competent operator play up to a time.
func (b *table) until(seconds float64) {
	var seen sim.Seen
	r := b.Session.Run
	for !r.State.Ended && sim.Seconds(r.State.Tick) < seconds {
		if r.State.Tick%sim.TicksPerSecond == 0 {
			sim.View(&r.Case, &r.State, &seen)
			b.steady.Act(&seen, r.Do)
		}
		b.Session.Tick()
	}
	b.Idle()
	b.Idle()
}

// sizes are logical sizes of the window, each with a scale of its display.
var sizes = []ui.Vec{{X: 900, Y: 600}, {X: 1024, Y: 640}, {X: 1280, Y: 720}, {X: 1280, Y: 800}, {X: 1536, Y: 864}, {X: 1920, Y: 1080}, {X: 900, Y: 1200}}

var scales = []float32{1, 1.25, 2, 1, 2.5, 1, 1.25}

// faults looks for faults in the newest frame.
func (b *table) faults(t *testing.T, where string) {
	t.Helper()
	b.Idle()
	b.Idle() // heights of scrolled areas settle
	for _, f := range append(uitest.Faults(b.List), wordless(b.List)...) {
		key := fmt.Sprintf("%v %s", b.Size, f)
		if b.told[key] {
			continue
		}
		b.told[key] = true
		t.Errorf("%.0f × %.0f, %s: %s", b.Size.X, b.Size.Y, where, f)
	}
}

// wordless are texts in which words or a value are missing.
func wordless(l *ui.List) (faults []string) {
	for _, m := range l.Marks {
		if text := m.Label + m.Value + m.Why; strings.Contains(text, "‹") || strings.Contains(text, "%!") {
			faults = append(faults, "words are missing in "+text)
		}
	}
	return faults
}

// atSizes does look at each size of the window.
func (b *table) atSizes(look func()) {
	for i, size := range sizes {
		b.Size, b.Scale = size, scales[i]
		look()
	}
}

var parts = []sim.Part{sim.FieldPart, sim.AnticoagulantHook, sim.ReservoirPart, sim.PumpPart, sim.BowlPart, sim.WashHookA, sim.WashHookB,
	sim.FirstBag, sim.WasteBag, sim.PatientPart}

// panels looks at each panel and the large charts as the case stands now, at each size.
func (b *table) panels(t *testing.T, where string) {
	t.Helper()
	b.atSizes(func() {
		for _, p := range parts {
			b.Desk.Select(p)
			b.faults(t, where+", "+p.String())
		}
		b.Desk.Tab = bench.TabTeam
		b.faults(t, where+", team")
		b.Desk.Tab = bench.TabRecords
		b.faults(t, where+", records")
	})
}

// everyScreen goes through a case and looks at all its screens at each size.
func (b *table) everyScreen(t *testing.T, times ...float64) {
	t.Helper()
	look := func(where string) { b.atSizes(func() { b.faults(t, where) }) }
	b.Session.View.Screen = bench.Cautions
	look("cautions")
	b.Session.Do([]bench.Act{{Do: bench.GoOn}})
	look("case sheet")
	b.begin()
	for _, at := range times {
		b.until(at)
		b.panels(t, fmt.Sprintf("bench at %.0f s", at))
	}
	b.Key(ui.K('C').Key)
	look("large charts")
	b.Key(ui.K('C').Key)
	for d := bench.LabelDialog; d <= bench.ChartDialog; d++ {
		b.Desk.Dialog = d
		look(fmt.Sprintf("dialog %d", d))
	}
	b.Desk.Dialog = bench.NoDialog
	v := &b.Session.View
	v.Watching, v.Notice = true, "The charts were saved as a very long name of a file in a folder with a long name, charts-20310514-120000.png"
	v.Recorded = bench.Recorded{EndS: 7300, ActsS: []float64{0, 12, 400, 3000, 7299}}
	look("watching, with a notice")
	v.Recorded.Stale = words.Say("app.stale", "12")
	look("watching what cannot be tried again")
	v.Watching, v.Notice, v.Recorded = false, "", bench.Recorded{}
	b.Session.Do([]bench.Act{{Do: bench.TogglePause}})
	look("paused")
	b.Session.Do([]bench.Act{{Do: bench.TogglePause}})
	for i := range b.Session.Run.State.Alarms.On {
		b.Session.Run.State.Alarms.On[i] = true // the worst that can be
	}
	look("all alarms")
}

func TestNothingOverlapsOnAnyScreen(t *testing.T) {
	b := sit(t, sizes[0], false)
	b.everyScreen(t, 0, 400, 1700, 1850, 2000, 2600, 3300, 3700, 4500, 5000)
	b.until(1e6)
	b.finish()
	b.atSizes(func() { b.faults(t, "result") })
	if !b.HasText("of 100") {
		t.Errorf("the result page shows no points")
	}
}

func TestHiddenTruthFitsToo(t *testing.T) {
	b := sit(t, sizes[0], false)
	b.begin()
	b.Session.Do([]bench.Act{{Do: bench.ToggleTruth}})
	for _, at := range []float64{1800, 2900, 3600} {
		b.until(at)
		b.panels(t, "truth")
	}
}

// A case in which nobody acts fails, and says so with its critical errors and reasons.
func TestTheResultOfDoingNothingFits(t *testing.T) {
	for _, size := range sizes {
		b := sit(t, size, true)
		b.begin()
		for !b.Session.Run.State.Ended {
			b.Session.Tick()
		}
		b.finish()
		b.faults(t, "result of doing nothing")
		if !b.HasText("Not passed") || !b.HasText("This is feedback. A person leads the debriefing.") {
			t.Error("the result page does not say that the case was not passed, or who leads the debriefing")
		}
		r := &b.Session.View.Result
		if len(r.Reasons) == 0 || !b.HasText(r.Reasons[0]) || !b.HasText("too few") {
			t.Errorf("the result page does not say at once why the case was not passed: %v", r.Reasons)
		}
		r.Criticals = append(r.Criticals, bench.CriticalResult{Name: "120 mL were given before two people had checked who the blood was for", Mended: true})
		r.Fault, r.SavedAs = "a very long folder/with a very long name/attempt-20310514-120000.json: nothing was saved: the folder may not be written to, choose another", ""
		b.faults(t, "result with a fault")
	}
}

// Words that are only read can be paged with the keyboard.
func TestWordsArePagedByKeys(t *testing.T) {
	b := sit(t, ui.Vec{X: 1024, Y: 640}, false)
	b.begin()
	b.until(1e6)
	b.finish()
	b.Idle()
	b.Idle()
	id := ui.Name("result")
	b.Key(ui.KeyPageDown)
	b.Idle()
	if off := b.Core.ScrollOffset(id); off < 200 {
		t.Errorf("page down scrolled the result to %.0f", off)
	}
	b.Key(ui.KeyPageUp)
	b.Idle()
	if off := b.Core.ScrollOffset(id); off != 0 {
		t.Errorf("page up left the result at %.0f", off)
	}
}

func TestSmallWindowsSaySo(t *testing.T) {
	b := sit(t, ui.Vec{X: 800, Y: 500}, false)
	b.begin()
	if !b.HasText("This window needs") {
		t.Error("a window too small for the bench does not say so")
	}
}
