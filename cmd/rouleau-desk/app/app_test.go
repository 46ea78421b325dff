// The whole window without a display: from home to a case and back, files dropped, cases broken off and gone on with.

package app_test

import (
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"rouleau/cmd/rouleau-desk/app"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/line"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
	"rouleau/scoring/attempt"
	"rouleau/sim"
)

const spine = "Steady oozing in a spine operation"

// draws are few, as each of them is much to play.
const draws = 1

var day = time.Date(2031, 5, 14, 8, 30, 0, 0, time.UTC)

// window is the app without a display, with a clock of its own.
type window struct {
	*uitest.Driver
	t    testing.TB
	App  *app.App
	now  time.Time
	quit bool
}

func open(t testing.TB, o line.Asked) *window {
	t.Helper()
	return openWith(t, o, draws)
}

// openWith opens one whose debriefs play so many other drawings.
func openWith(t testing.TB, o line.Asked, draws int) *window {
	t.Helper()
	if o.Folder == "" {
		o.Folder = filepath.Join(t.TempDir(), "records")
	}
	a, err := app.New(o, app.Machine{Now: func() time.Time { return day }, NewSeed: func() uint64 { return 4711 }, Draws: draws})
	if err != nil {
		t.Fatal(err)
	}
	w := &window{t: t, App: a, now: time.Now()}
	w.Driver = uitest.New(ui.Vec{X: 1280, Y: 800}, func(c *ui.Core) {
		w.now = w.now.Add(uitest.FrameMS * time.Millisecond)
		w.quit = w.App.Frame(c, w.now) != nil || w.quit
	})
	w.Core.Words = bench.CoreWords()
	return w
}

func (w *window) click(label string) {
	w.t.Helper()
	if err := w.Click(label); err != nil {
		w.t.Fatal(err)
	}
	w.Idle()
}

// choose takes a case of the list by hand: down with the arrow key until it is in view.
func (w *window) choose(title string) {
	w.t.Helper()
	for range 60 {
		if w.Click(title) == nil {
			w.Idle()
			return
		}
		w.Key(ui.KeyDown)
		w.Idle()
	}
	w.t.Fatalf("%q is not in the list; there are: %v", title, w.Labels())
}

func (w *window) want(words string) {
	w.t.Helper()
	if !w.HasText(words) {
		w.t.Errorf("%q is not on the screen", words)
	}
}

func (w *window) drop(name string, data []byte) {
	w.Frame(ui.Input{Dropped: []ui.Dropped{{Name: name, Data: data}}})
	w.Idle()
}

// endNow decides that nothing is salvaged, ends the case at its sheet, and goes to the verdict past the marks.
func (w *window) endNow() {
	w.t.Helper()
	w.endUnmarked()
	w.click("Show the verdict without marking")
	w.Idle()
}

func (w *window) endUnmarked() {
	w.t.Helper()
	w.click("do not salvage")
	if err := w.HoldDown("End the case here", 1000); err != nil {
		w.t.Fatal(err)
	}
	w.Idle()
}

func (w *window) toBench() {
	w.t.Helper()
	w.click("set up to process")
	w.click("To the bench: time starts")
	w.Wait(3000)
}

func files(t *testing.T, folder ...string) []string {
	t.Helper()
	found, err := filepath.Glob(filepath.Join(folder...))
	if err != nil {
		t.Fatal(err)
	}
	return found
}

func TestFromHomeToAResultAndBack(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "records")
	w := open(t, line.Asked{Folder: folder, Who: "P-17"})
	w.want("It must not be used to treat anyone")
	w.click("Understood")
	w.choose(spine)
	w.click("New")
	w.click("To the case sheet")
	if got := w.App.Title(); !strings.HasPrefix(got, spine) {
		t.Errorf("the title of the window is %q", got)
	}
	w.want("Your decisions")
	w.endNow()
	w.want("Not passed")
	made := files(t, folder, "attempts", "*.json")
	if len(made) != 1 {
		t.Fatalf("attempts: %v", made)
	}
	a, err := attempt.Load(made[0])
	if err != nil {
		t.Fatal(err)
	}
	if a.Operator != "P-17" || a.Seed != 4711 || a.Mode != attempt.Practice || a.When != "2031-05-14T08:30:00Z" {
		t.Errorf("the attempt is of %s, seed %d, %s, %s", a.Operator, a.Seed, a.Mode, a.When)
	}
	if left := files(t, folder, "running", "*"); len(left) != 0 {
		t.Errorf("of a case that is saved there still lies %v", left)
	}
	w.App.Session().Do([]bench.Act{{Do: bench.GoHome}})
	w.Idle()
	w.Idle()
	w.want("of 100, not passed")
	w.want("seed 4711")
	// The result is opened again, and the case played once more from there; then it is watched.
	w.click("Result")
	w.want("Not passed")
	w.act(bench.Act{Do: bench.Again})
	if s := w.App.Session(); s.View.Watching || s.Run.Seed != 4711 || s.View.Screen != bench.Sheet {
		t.Errorf("from a result the case is not played again: watching %v, seed %d, screen %d", s.View.Watching, s.Run.Seed, s.View.Screen)
	}
	w.App.Session().Do([]bench.Act{{Do: bench.GoHome}})
	w.Idle()
	w.Idle()
	w.click("Watch")
	if w.App.Session() == nil || !w.App.Session().View.Watching {
		t.Error("the attempt is not shown again")
	}
}

func TestACaseBrokenOffIsOfferedAndGoneOnWith(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "records")
	w := open(t, line.Asked{Folder: folder, Scenario: "steady-oozing-spine", Seed: 7})
	w.click("Understood, to the case")
	w.toBench()
	was := w.App.Session().Run.State
	if was.Tick == 0 {
		t.Fatal("time does not pass")
	}
	if said := w.App.Close(); !strings.Contains(said, "offered at the next start") {
		t.Errorf("closing said %q", said)
	}
	if n := len(files(t, folder, "attempts", "*")); n != 0 {
		t.Errorf("%d attempts were made of a case that is not over", n)
	}
	w = open(t, line.Asked{Folder: folder})
	w.click("Understood")
	w.want("Not finished: " + spine)
	w.click("Go on with it")
	s := w.App.Session()
	if s == nil || s.Run.State.Hash() != was.Hash() || s.Run.Seed != 7 {
		t.Fatal("the case does not go on where it was")
	}
	s.Do([]bench.Act{{Do: bench.GoHome}})
	w.Idle()
	w.Idle()
	w.want("Not finished: " + spine)
	if err := w.HoldDown("Put aside", 1000); err != nil {
		t.Fatal(err)
	}
	w.Idle()
	w.want("is put aside and lies in")
	if kept := files(t, folder, "set-aside", "*"); len(kept) != 1 {
		t.Errorf("put aside: %v", kept)
	}
	if w.HasText("Not finished") {
		t.Error("a case put aside is still offered")
	}
}

// Where nothing can be written, a case that is left for home stays in memory and is not lost.
func TestACaseThatCannotBeWrittenStaysInMemory(t *testing.T) {
	dir := t.TempDir()
	inTheWay := filepath.Join(dir, "file")
	if err := os.WriteFile(inTheWay, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	w := open(t, line.Asked{Folder: filepath.Join(inTheWay, "records")})
	w.click("Understood")
	w.want("nothing will be kept")
	w.choose(spine)
	w.click("To the case sheet")
	w.toBench()
	was := w.App.Session().Run.State.Hash()
	w.App.Session().Do([]bench.Act{{Do: bench.GoHome}})
	w.Idle()
	w.Idle()
	w.want("Not finished: " + spine)
	w.click("Go on with it")
	if s := w.App.Session(); s == nil || s.Run.State.Hash() != was {
		t.Error("the case was lost")
	}
	if said := w.App.Close(); !strings.Contains(said, "could not be kept") {
		t.Errorf("a case that is lost when the window closes is told as %q", said)
	}
}

func TestSettingsActAtOnceAndSurviveARestart(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "records")
	w := open(t, line.Asked{Folder: folder})
	w.click("Understood")
	w.click("Settings")
	w.click("Strong contrast")
	w.click("Reduced motion: nothing flashes or slides")
	if w.Core.Pal.Ground != ui.HighContrast().Ground || !w.Core.Still {
		t.Error("contrast or stillness does not act at once")
	}
	w.Chord(ui.Chord{Key: ui.KeyEscape})
	w.Chord(ui.Chord{Key: ui.KeyPlus, Mods: ui.ModCtrl})
	if got := w.App.Scale(); got < 1.09 || got > 1.11 {
		t.Errorf("scale %g after one step", got)
	}
	again := open(t, line.Asked{Folder: folder})
	if again.Core.Pal.Ground != ui.HighContrast().Ground || !again.Core.Still || again.App.Scale() != w.App.Scale() {
		t.Error("settings do not survive a restart")
	}
}

func TestDamagedSettingsAndAttemptsAreTold(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "records")
	open(t, line.Asked{Folder: folder})
	for path, content := range map[string]string{"settings.json": "{", "attempts/a.json": "{", "running/case.journal": "{"} {
		if err := os.WriteFile(filepath.Join(folder, filepath.FromSlash(path)), []byte(content), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	w := open(t, line.Asked{Folder: folder})
	w.click("Understood")
	w.want("the settings were damaged")
	w.want("case.journal, line 1")
	w.click("Read, 1 more")
	w.want("a.json is left out of your results")
	w.click("Read")
	if w.HasText("left out of your results") {
		t.Error("news that was read stays")
	}
}

// An attempt to be watched, named on the command line or dropped, waits until the cautions were read.
func TestTheCautionsComeBeforeAnAttempt(t *testing.T) {
	out := filepath.Join(t.TempDir(), "attempt.json")
	w := open(t, line.Asked{Scenario: "steady-oozing-spine", Seed: 1, Out: out})
	w.click("Understood, to the case")
	w.endNow()
	data, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	w = open(t, line.Asked{Watch: out})
	w.want("It must not be used to treat anyone")
	w.click("Understood")
	if s := w.App.Session(); s == nil || !s.View.Watching {
		t.Error("the attempt is not shown after the cautions")
	}
	w = open(t, line.Asked{})
	w.drop("attempt.json", data)
	w.want("It must not be used to treat anyone")
	w.click("Understood")
	if s := w.App.Session(); s == nil || !s.View.Watching {
		t.Error("the dropped attempt is not shown after the cautions")
	}
}

// act has the app do what a screen would ask for.
func (w *window) act(acts ...bench.Act) {
	for _, a := range acts {
		w.App.Do(a)
	}
	w.Idle()
	w.Idle()
}

func TestWrongCasesAreToldBeforeTheWindow(t *testing.T) {
	for _, o := range []line.Asked{{Scenario: "no-such-case"}, {Watch: "no-such-attempt.json"}, {Who: "Some Body"},
		{Scenario: "steady-oozing-spine", Assessment: true}, {Scenario: "first-bowl", Assessment: true, Who: "P-17"}} {
		o.Folder = t.TempDir()
		if _, err := app.New(o, app.Machine{}); err == nil {
			t.Errorf("%+v is taken", o)
		}
	}
}

// Sixteen cases in a row leave no more behind than one does.
func TestSixteenCasesInARowStayBounded(t *testing.T) {
	w := open(t, line.Asked{Who: "P-17"})
	w.click("Understood")
	heap := func() uint64 {
		var m runtime.MemStats
		runtime.GC()
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	one := func() {
		w.choose(spine)
		w.click("To the case sheet")
		w.click("set up to process")
		w.click("To the bench: time starts")
		s := w.App.Session()
		for range 20 * 60 * sim.TicksPerSecond {
			s.Tick()
		}
		s.Do([]bench.Act{{Sim: sim.Action{Do: sim.EndCase}}})
		for !s.Run.State.Ended {
			s.Tick()
		}
		s.Do([]bench.Act{{Do: bench.Finish}})
		w.Idle()
		s.Do([]bench.Act{{Do: bench.GoHome}})
		w.Idle()
		w.Idle()
	}
	one()
	first := heap()
	for range 15 {
		one()
	}
	last := heap()
	grown := (float64(last) - float64(first)) / (1 << 20)
	t.Logf("heap after one case %.1f MB, after sixteen %.1f MB", float64(first)/(1<<20), float64(last)/(1<<20))
	if grown > 8 {
		t.Errorf("fifteen more cases left %.1f MB behind", grown)
	}
}

func TestNoTimePassesBehindAHint(t *testing.T) {
	w := open(t, line.Asked{Folder: filepath.Join(t.TempDir(), "records")})
	w.click("Understood")
	w.choose(spine)
	w.click("To the case sheet")
	w.toBench()
	tick := func() int64 { return w.App.Session().Run.State.Tick }
	w.click("Hint")
	at := tick()
	w.Wait(5000)
	if now := tick(); now > at+2 {
		t.Errorf("%d ticks passed behind a hint", now-at)
	}
	w.click("Close")
	w.Wait(5000)
	if now := tick(); now < at+50 {
		t.Errorf("time still stands after the hint was closed: %d ticks in 5 s", now-at)
	}
}
