// The debrief in the whole window: of a dropped attempt, a past result and a case just ended; to a page on disk; to practice from
// the moment of a decision; and gone when the result is left.

package app_test

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/line"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// hurried saves an attempt at a case by the operator hasty, to its end or up to a time, and gives its text.
func hurried(t *testing.T, path, name string, untilS float64) []byte {
	t.Helper()
	sc, err := scenarios.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	op, err := operators.Open("hasty")
	if err != nil {
		t.Fatal(err)
	}
	run := play.New(sc.Case(3, false), 3)
	who := op.Play(operators.SheetOf(sc, &run.Case))
	var seen sim.Seen
	for ; !run.State.Ended && sim.Seconds(run.State.Tick) < untilS; run.Step() {
		if run.State.Tick%sim.TicksPerSecond == 0 {
			sim.View(&run.Case, &run.State, &seen)
			who.Act(&seen, run.Do)
		}
	}
	grade := scoring.Judge(sc, run, scoring.PlayYardstick(sc, 3, false))
	if err := attempt.Of(sc, run, grade, attempt.By{Operator: "P-01", When: day, Mode: attempt.Practice}).Save(path); err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// until runs frames until something is so.
func (w *window) until(is func() bool) {
	w.t.Helper()
	for end := time.Now().Add(2 * time.Minute); !is(); time.Sleep(time.Millisecond) {
		if time.Now().After(end) {
			w.t.Fatal("it never comes")
		}
		w.Idle()
	}
	w.Idle()
}

// debrief opens the costs and waits until they are told.
func (w *window) debrief() *bench.Told {
	w.t.Helper()
	w.click(words.Say("desk_debrief.tab_costs"))
	w.until(func() bool { return w.App.Session().View.Debrief.Step != bench.DebriefPlaying })
	return w.App.Session().View.Debrief.Told
}

func TestTryingAgainFromADecision(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.json")
	text := hurried(t, path, "first-bowl", 1e9)
	w := open(t, line.Asked{Who: "P-02"})
	w.click("Understood")
	w.drop("a.json", text)
	told := w.debrief()
	w.Core.Focus(0)
	w.Key(ui.KeyDown)
	w.until(func() bool { return told.Costs[1].Courses != nil })
	part := told.Costs[1].Courses.Part
	if !part.Is || part.S < 30 {
		t.Fatalf("%q parts at %+v: this test wants another", told.Costs[1].Title, part)
	}
	w.Key(ui.K('A').Key)
	w.Idle()
	s := w.App.Session()
	at := sim.Ticks(math.Floor(part.S - 20))
	if s.View.Screen != bench.AtBench || !s.View.Paused || s.View.Assessment || s.View.Watching || s.Run.State.Tick != at {
		t.Fatalf("screen %d, tick %d, want %d", s.View.Screen, s.Run.State.Tick, at)
	}
	a := loaded(t, path)
	sc := scenarioOf(t, a)
	if want := hashBefore(play.New(sc.Case(a.Seed, false), a.Seed), a.Actions, at); s.Run.State.Hash() != want {
		t.Error("it is not the case as it was at that moment")
	}
	if d := &s.View.Debrief; d.Step != bench.DebriefShut {
		t.Error("of the debrief something stays at the bench")
	}
}

func TestTheDebriefBecomesAPage(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.json")
	text := hurried(t, path, "lesson-the-bowl", 1e9)
	w := open(t, line.Asked{})
	w.click("Understood")
	w.drop("a.json", text)
	w.act(bench.Act{Do: bench.SavePage, Text: filepath.Join(dir, "early.html")}) // there is nothing to be made a page of
	told := w.debrief()
	for name, begins := range map[string]string{"page.html": "<!", "sheet.PDF": "%PDF-", "bare": "<!"} {
		to := filepath.Join(dir, name)
		w.act(bench.Act{Do: bench.SavePage, Text: to})
		w.want(words.Say("desk_debrief.saving"))
		if name == "bare" {
			to += ".html"
		}
		w.until(func() bool { return w.HasText(words.Say("app.saved", to)) })
		made, err := os.ReadFile(to)
		if err != nil || !strings.HasPrefix(strings.ToLower(string(made[:5])), strings.ToLower(begins)) {
			t.Errorf("%s begins %q, %v", name, made[:min(20, len(made))], err)
		}
		if strings.HasSuffix(to, ".html") && !bytes.Contains(made, []byte(told.Questions[1].Text)) {
			t.Errorf("%s does not ask %q", name, told.Questions[1].Text)
		}
	}
	w.act(bench.Act{Do: bench.SavePage, Text: dir}) // beside the attempt, and called as it is
	w.until(func() bool { return w.HasText(words.Say("app.saved", filepath.Join(dir, "a.html"))) })
	for to, says := range map[string]string{filepath.Join(dir, "page.json"): "end the name in .html", filepath.Join(dir, "none", "page.html"): "is not there"} {
		w.act(bench.Act{Do: bench.SavePage, Text: to})
		w.want(says)
	}
	left, _ := filepath.Glob(filepath.Join(dir, "*"))
	if len(left) != 5 {
		t.Errorf("there lie %v", left)
	}
	if now, err := os.ReadFile(path); err != nil || !bytes.Equal(now, text) {
		t.Error("the attempt is another one now")
	}
}

// A case that has just ended, and the same opened as a past result, tell the same.
func TestACaseJustEndedAndItsPastResultTellTheSame(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "records")
	w := open(t, line.Asked{Folder: folder, Who: "P-17"})
	w.click("Understood")
	w.choose("He said no")
	w.click("To the case sheet")
	w.click("do not salvage")
	w.click("To the bench: time starts")
	w.ended() // without a word to the team or in the notes
	w.act(bench.Act{Do: bench.OpenDebrief})
	if w.App.Session().View.Debrief.Step != bench.DebriefShut {
		t.Fatal("a debrief before the marks")
	}
	w.click("Show the verdict without marking")
	own := w.debrief()
	if len(own.Costs) == 0 || own.Costs[0].Group != bench.CostGained {
		t.Fatalf("saying and writing nothing cost nothing: %+v", own.Costs)
	}
	to := filepath.Join(folder, "page.html")
	w.act(bench.Act{Do: bench.SavePage, Text: to})
	w.until(func() bool { return w.HasText(words.Say("app.saved", to)) })
	w.home()
	w.click("Result")
	past := w.debrief()
	if len(past.Costs) != len(own.Costs) || len(past.Questions) != len(own.Questions) {
		t.Fatalf("%d costs and %d questions, were %d and %d", len(past.Costs), len(past.Questions), len(own.Costs), len(own.Questions))
	}
	for i := range own.Costs {
		if a, b := own.Costs[i], past.Costs[i]; a.Title != b.Title || a.Points != b.Points || a.Changes != b.Changes || a.Sure != b.Sure {
			t.Errorf("%q %s is %q %s", a.Title, a.Points, b.Title, b.Points)
		}
	}
}

func TestWhereThereIsNoDebriefItSaysSo(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.json")
	hurried(t, path, "first-bowl", 200)
	a := loaded(t, path)
	a.Model = "0"
	if err := a.Save(path); err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	w := open(t, line.Asked{})
	w.click("Understood")
	w.drop("a.json", text)
	if w.debrief() != nil {
		t.Error("it is told")
	}
	w.want("played with model version 0")
	w.home()
	w.choose(spine) // ended on its sheet
	w.click("To the case sheet")
	w.endNow()
	if w.debrief() == nil {
		t.Error("a case in which no time has passed has no debrief")
	}
	hurried(t, path, "first-bowl", 200) // left unfinished
	w = open(t, line.Asked{Watch: path})
	w.click("Understood")
	w.act(bench.Act{Do: bench.Seek, Value: 9999}, bench.Act{Do: bench.Finish})
	if told := w.debrief(); told == nil || len(told.Heed) == 0 {
		t.Fatal("an unfinished attempt is not told of as one")
	}
	w.want("was left at 0:03:20")
	changed := bytes.Replace(hurried(t, path, "lesson-the-bowl", 100), []byte("P-01"), []byte("P-09"), 1)
	w.drop("changed.json", changed)
	w.debrief()
	w.want(words.Say("report.not_sealed"))
}

// Results that are opened and left again, played to the end or not, leave nothing behind.
func TestDebriefsThatAreLeftLeaveNothingBehind(t *testing.T) {
	text := hurried(t, filepath.Join(t.TempDir(), "a.json"), "lesson-the-bowl", 1e9)
	w := open(t, line.Asked{})
	w.click("Understood")
	once := func(whole bool) {
		w.drop("a.json", text)
		w.click(words.Say("desk_debrief.tab_costs"))
		if whole {
			w.debrief()
		}
		w.home()
	}
	routines := runtime.NumGoroutine()
	used := func() uint64 {
		for end := time.Now().Add(time.Minute); runtime.NumGoroutine() > routines && time.Now().Before(end); {
			time.Sleep(5 * time.Millisecond) // what was broken off comes to its end
		}
		var m runtime.MemStats
		runtime.GC()
		runtime.GC()
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	once(true)
	once(false)
	heap := used()
	for i := range 10 {
		once(i%3 == 0)
	}
	grown := int64(used()) - int64(heap)
	if left := runtime.NumGoroutine() - routines; grown > 3_000_000 || left > 0 {
		t.Errorf("after ten of them %d bytes and %d goroutines more", grown, left)
	}
}
