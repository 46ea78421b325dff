// Recorded attempts in the window: looking at one leaves no second one behind, a copy is the attempt itself, and what is
// played on from one, or from a dropped file, is kept as what it was begun as.

package app_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/line"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// idler does nothing.
type idler struct{}

func (idler) Act(*sim.Seen, func(sim.Action) sim.Reason) {}

// assessed saves an assessment that somebody played to its end, and gives its text.
func assessed(t *testing.T, path string, idle bool) []byte {
	t.Helper()
	sc, err := scenarios.Open("steady-oozing-spine")
	if err != nil {
		t.Fatal(err)
	}
	run := play.New(sc.Case(3, true), 3)
	var who play.Actor = idler{}
	if !idle {
		who = operators.NewSteady(operators.SheetOf(sc, &run.Case))
	}
	run.ToEnd(who)
	grade := scoring.Judge(sc, run, scoring.PlayYardstick(sc, 3, true))
	if err := attempt.Of(sc, run, grade, attempt.By{Operator: "P-01", When: day, Mode: attempt.Assessment}).Save(path); err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// ended lets the case on the screen run to its end and goes to its result.
func (w *window) ended() {
	for s := w.App.Session(); !s.Run.State.Ended; {
		s.Tick()
	}
	w.Idle()
	w.act(bench.Act{Do: bench.Finish})
}

func loaded(t *testing.T, path string) *attempt.Attempt {
	t.Helper()
	a, err := attempt.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// A result without a single act is looked at as any other: nothing is graded and saved anew.
func TestLookingAtAResultSavesNothing(t *testing.T) {
	for _, idle := range []bool{true, false} {
		folder := filepath.Join(t.TempDir(), "records")
		w := open(t, line.Asked{Folder: folder, Who: "P-02"})
		text := assessed(t, filepath.Join(folder, "attempts", "a.json"), idle)
		w = open(t, line.Asked{Folder: folder, Who: "P-02"})
		w.click("Understood")
		w.choose(spine)
		w.click("Result")
		if s := w.App.Session(); s == nil || !s.View.Watching || s.View.Screen != bench.Graded {
			t.Fatal("the result is not shown as one of a recording")
		}
		w.drop("dropped.json", text)
		if s := w.App.Session(); s == nil || s.View.Screen != bench.Graded {
			t.Fatal("the result of a dropped attempt is not shown")
		}
		if got := files(t, folder, "attempts", "*"); len(got) != 1 {
			t.Errorf("idle %v: after looking there lie %v", idle, got)
		}
		// A copy of a dropped attempt is that attempt, whoever looks at it.
		to := filepath.Join(t.TempDir(), "copy.json")
		w.act(bench.Act{Do: bench.SaveCopy, Text: to})
		if a := loaded(t, to); a.Operator != "P-01" || !a.Assessment() || !a.Sealed() {
			t.Errorf("the copy is of %s, %s, sealed %v", a.Operator, a.Mode, a.Sealed())
		}
	}
}

func TestACopyOfWhatWasWatchedIsTheAttempt(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.json")
	text := assessed(t, path, false)
	w := open(t, line.Asked{Watch: path, Who: "P-02"})
	w.click("Understood")
	w.ended()
	to := filepath.Join(t.TempDir(), "copy.json")
	w.act(bench.Act{Do: bench.SaveCopy, Text: to})
	if got, err := os.ReadFile(to); err != nil || string(got) != string(text) {
		t.Errorf("the copy is another attempt (%v)", err)
	}
}

// What is played on from a recorded assessment is practice of who took over, also after its window has gone.
func TestTakingOverIsPractice(t *testing.T) {
	dir := t.TempDir()
	path, folder := filepath.Join(dir, "a.json"), filepath.Join(dir, "records")
	assessed(t, path, false)
	w := open(t, line.Asked{Watch: path, Folder: folder, Who: "P-02"})
	w.click("Understood")
	s := w.App.Session()
	for s.Run.State.Tick < sim.Ticks(1800) {
		s.Tick()
	}
	w.Idle()
	w.click("Try again from here")
	if s = w.App.Session(); !s.View.Paused || s.View.Watching {
		t.Fatal("what is tried again does not stand")
	}
	w.click("Go on")
	w.Wait(500)
	was := s.Run.State
	w.App.Close()
	w = open(t, line.Asked{Folder: folder, Who: "P-03"})
	w.click("Understood")
	w.click("Go on with it")
	if s = w.App.Session(); s == nil || s.Run.State.Hash() != was.Hash() || s.View.Assessment || s.View.Watching {
		t.Fatal("what was taken over does not go on where it was, as practice")
	}
	w.ended()
	made := files(t, folder, "attempts", "*.json")
	if len(made) != 1 {
		t.Fatalf("attempts: %v", made)
	}
	a := loaded(t, made[0])
	if a.Mode != attempt.Practice || a.Operator != "P-02" {
		t.Errorf("it is kept as %s of %s", a.Mode, a.Operator)
	}
	if !a.Breaks.TakenOver || a.Breaks.Interruptions != 1 {
		t.Errorf("it is not told that it was taken over and gone on with once: %+v", a.Breaks)
	}
	told := func() bool {
		return w.HasText(words.Say("result.taken_over")) && w.HasText(words.Say("result.interrupted_once"))
	}
	w.click("Show the verdict without marking")
	if w.Idle(); !told() {
		t.Error("the result page does not say that it was taken over and gone on with")
	}
	text, err := os.ReadFile(made[0])
	if err != nil {
		t.Fatal(err)
	}
	w.drop("again.json", text)
	if !told() {
		t.Error("nor does it when the result is opened again")
	}
	if r, err := attempt.Replay(a); err != nil || !r.Same() {
		t.Errorf("it is played again as another one: %+v, %v", r, err)
	}
	if left := files(t, folder, "running", "*"); len(left) != 0 {
		t.Errorf("of what is saved there still lies %v", left)
	}
}

// A dropped case that is begun as an assessment stays one: left, gone on with, graded, saved.
func TestADroppedCaseIsKeptAsWhatItWasBegunAs(t *testing.T) {
	text, err := os.ReadFile("../../../scenarios/library/steady-oozing-spine.yaml")
	if err != nil {
		t.Fatal(err)
	}
	own := []byte(strings.Replace(strings.Replace(string(text), "id: steady", "id: unsteady", 1), "title: Steady", "title: Unsteady", 1))
	folder := filepath.Join(t.TempDir(), "records")
	w := open(t, line.Asked{Folder: folder, Who: "P-02"})
	w.click("Understood")
	w.drop("case.yaml", own)
	w.click("Assessment")
	w.click("To the case sheet")
	w.drop("other.yaml", own)
	w.want("Finish or leave this case first")
	w.toBench()
	was := w.App.Session().Run.State
	w.App.Close()
	w = open(t, line.Asked{Folder: folder, Who: "P-03"})
	w.click("Understood")
	w.want("Not finished: Unsteady oozing in a spine operation")
	w.click("Go on with it")
	s := w.App.Session()
	if s == nil || s.Run.State.Hash() != was.Hash() || !s.View.Assessment || s.View.Paused {
		t.Fatal("the assessment does not go on where it was")
	}
	w.ended()
	made := files(t, folder, "attempts", "*.json")
	if len(made) != 1 {
		t.Fatalf("attempts: %v", made)
	}
	a := loaded(t, made[0])
	if !a.Assessment() || a.Operator != "P-02" || a.Scenario.ID != "unsteady-oozing-spine" || a.Scenario.Text != string(own) {
		t.Errorf("it is kept as %s of %s, case %s", a.Mode, a.Operator, a.Scenario.ID)
	}
	if r, err := attempt.Replay(a); err != nil || !r.Same() {
		t.Errorf("it is played again as another one: %+v, %v", r, err)
	}
}

// A file whose acts do not come out as they were recorded says so at the head of its result, opened or watched to the end, and is
// no base to try again from.
func TestAFileThatComesOutOtherwiseSaysSo(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.json")
	hurried(t, path, "first-bowl", 1e9)
	says := words.Say("result.recorded_otherwise")
	shown := func(changed bool) {
		t.Helper()
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		w := open(t, line.Asked{})
		w.click("Understood")
		w.drop("a.json", text)
		watched := open(t, line.Asked{Watch: path})
		watched.click("Understood")
		watched.ended()
		for _, k := range []*window{w, watched} {
			for _, tab := range []string{"result.tab_grade", "result.tab_timeline"} {
				if k.click(words.Say(tab)); k.HasText(says) != changed {
					t.Errorf("seed changed: %v, %s: it says so: %v", changed, words.Say(tab), !changed)
				}
			}
			v := &k.App.Session().View
			if (v.Recorded.Stale != "") != changed {
				t.Errorf("seed changed: %v, and of trying again it says %q", changed, v.Recorded.Stale)
			}
			k.act(bench.Act{Do: bench.TryAgain, Value: 60})
			if again := k.App.Session().View.Screen == bench.AtBench; again == changed {
				t.Errorf("seed changed: %v, and it is tried again: %v", changed, again)
			}
		}
	}
	shown(false)
	a := loaded(t, path)
	a.Seed++
	if err := a.Save(path); err != nil {
		t.Fatal(err)
	}
	shown(true)
}
