// Trying again in the window: from a case that has just ended, from a result that is opened, from an attempt that is watched; kept
// like any other case, and what cannot be is said and leaves all as it was.

package app_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/line"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// hashBefore plays acts from the start of a run up to a tick, before the acts of that tick.
func hashBefore(run *play.Run, acts []sim.Action, tick int64) uint64 {
	for ; run.State.Tick < tick; run.Step() {
		for ; len(acts) > 0 && acts[0].Tick <= run.State.Tick; acts = acts[1:] {
			run.Do(acts[0])
		}
	}
	return run.State.Hash()
}

// From an assessment of one's own that is opened at its result.
func TestTryingAgainFromAResult(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "records")
	w := open(t, line.Asked{Folder: folder, Who: "P-02"})
	path := filepath.Join(folder, "attempts", "a.json")
	was := assessed(t, path, false)
	w = open(t, line.Asked{Folder: folder, Who: "P-02"})
	w.click("Understood")
	w.choose(spine)
	w.click("Result")
	w.act(bench.Act{Do: bench.TryAgain, Value: 1800})
	s := w.App.Session()
	if s.View.Screen != bench.AtBench || s.View.Watching || s.View.Assessment || !s.View.Paused || s.Run.State.Tick != sim.Ticks(1800) {
		t.Fatalf("it does not stand at the bench as practice: screen %d, tick %d", s.View.Screen, s.Run.State.Tick)
	}
	a := loaded(t, path)
	sc := scenarioOf(t, a)
	if want := hashBefore(play.New(sc.Case(a.Seed, true), a.Seed), a.Actions, sim.Ticks(1800)); s.Run.State.Hash() != want {
		t.Errorf("hash %x, want %x", s.Run.State.Hash(), want)
	}
	w.want("you try again from 0:30:00")
	// The window is killed now: nothing of it is lost, as its file is written already.
	kept := files(t, folder, "running", "*.journal")
	if len(kept) != 1 {
		t.Fatalf("kept: %v", kept)
	}
	w.click("Go on")
	w.Wait(400)
	hash := s.Run.State.Hash()
	w.App.Close()
	w = open(t, line.Asked{Folder: folder, Who: "P-03"})
	w.click("Understood")
	w.click("Go on with it")
	if s = w.App.Session(); s.Run.State.Hash() != hash {
		t.Fatal("another case goes on")
	}
	w.ended()
	made := files(t, folder, "attempts", "*.json")
	if len(made) != 2 {
		t.Fatalf("attempts: %v", made)
	}
	if now, err := os.ReadFile(path); err != nil || string(now) != string(was) {
		t.Errorf("the attempt it was tried again from is another one now (%v)", err)
	}
	for _, p := range made {
		if p == path {
			continue
		}
		if a = loaded(t, p); a.Mode != attempt.Practice || a.Operator != "P-02" || !a.Breaks.TakenOver {
			t.Errorf("it is kept as %s of %s, %+v", a.Mode, a.Operator, a.Breaks)
		}
		if r, err := attempt.Replay(a); err != nil || !r.Same() {
			t.Errorf("it is played again as another one: %+v, %v", r, err)
		}
	}
}

// From a case that has just ended in this window, more than once.
func TestTryingAgainFromACaseJustEnded(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "records")
	w := open(t, line.Asked{Folder: folder, Who: "P-02", Scenario: "steady-oozing-spine", Seed: 7, Assessment: true})
	w.click("Understood, to the case")
	w.toBench()
	w.act(bench.Act{Do: bench.TryAgain, Value: 1}) // a case that is played cannot be tried again
	if s := w.App.Session(); !s.View.Assessment || s.View.Paused {
		t.Fatal("a running assessment was left for practice")
	}
	for n, at := range []int{1200, 300} {
		w.ended()
		w.act(bench.Act{Do: bench.TryAgain, Value: at})
		s := w.App.Session()
		if s.View.Assessment || s.Run.State.Tick != sim.Ticks(float64(at)) || s.Run.Seed != 7 || !s.Breaks().TakenOver {
			t.Fatalf("%d s: tick %d, seed %d", at, s.Run.State.Tick, s.Run.Seed)
		}
		if made := files(t, folder, "attempts", "*.json"); len(made) != n+1 {
			t.Errorf("attempts: %v", made)
		}
		w.click("Go on")
	}
	// From the first moment the case sheet comes, and nothing is kept of a case that is not begun.
	w.ended()
	w.act(bench.Act{Do: bench.TryAgain})
	w.want("Your decisions")
	if left := files(t, folder, "running", "*.journal"); len(left) != 0 {
		t.Errorf("kept: %v", left)
	}
}

// What cannot be tried again is said, and is on the screen as before.
func TestWhatCannotBeTriedAgainIsSaid(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.json")
	assessed(t, path, false)
	for name, k := range map[string]struct {
		change func(a *attempt.Attempt)
		says   string
	}{
		"another model":          {func(a *attempt.Attempt) { a.Model = "0" }, "played with version 0 of the model"},
		"an act that is refused": {func(a *attempt.Attempt) { a.Actions[0] = sim.Action{Do: sim.Wash} }, "is refused now"},
		"another way":            {func(a *attempt.Attempt) { a.Checkpoints[60].Hash = fmt.Sprintf("%016x", 5) }, "comes out otherwise"},
	} {
		a := loaded(t, path)
		k.change(a)
		bad, folder := filepath.Join(dir, "bad.json"), filepath.Join(t.TempDir(), "records")
		if err := a.Save(bad); err != nil {
			t.Fatal(err)
		}
		w := open(t, line.Asked{Folder: folder, Watch: bad})
		w.click("Understood")
		s := w.App.Session()
		w.act(bench.Act{Do: bench.TogglePause}, bench.Act{Do: bench.Seek, Value: 1900})
		hash := s.Run.State.Hash()
		w.act(bench.Act{Do: bench.TryAgain, Value: 1900})
		w.want(k.says)
		if now := w.App.Session(); now != s || !now.View.Watching || now.Run.State.Hash() != hash || now.View.Screen != bench.AtBench {
			t.Errorf("%s: it is not watched as before", name)
		}
		if left := files(t, folder, "running", "*"); len(left) != 0 {
			t.Errorf("%s: something was written: %v", name, left)
		}
	}
}

// An attempt that was left before its end is gone through and tried again like any other.
func TestAnUnfinishedAttemptIsTriedAgain(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.json")
	assessed(t, path, false)
	whole := loaded(t, path)
	sc := scenarioOf(t, whole)
	run := play.New(sc.Case(whole.Seed, true), whole.Seed)
	left := hashBefore(run, whole.Actions, sim.Ticks(2000))
	if err := attempt.Of(sc, run, judged(sc, run), attempt.By{Operator: "P-01", When: day, Mode: attempt.Assessment}).Save(path); err != nil {
		t.Fatal(err)
	}
	w := open(t, line.Asked{Watch: path, Who: "P-02"})
	w.click("Understood")
	w.act(bench.Act{Do: bench.Seek, Value: 9999})
	s := w.App.Session()
	if s.Run.State.Hash() != left {
		t.Fatal("its end is another one")
	}
	w.want("To the result")
	w.click("−1 min")
	w.click("Try again from here")
	if s = w.App.Session(); s.Run.State.Tick != sim.Ticks(1940) || s.View.Watching {
		t.Errorf("tick %d", s.Run.State.Tick)
	}
	if !strings.HasPrefix(w.App.Title(), spine) {
		t.Errorf("the window is called %q", w.App.Title())
	}
}

func scenarioOf(t *testing.T, a *attempt.Attempt) *scenarios.Scenario {
	t.Helper()
	sc, faults := scenarios.Parse(a.Scenario.ID, []byte(a.Scenario.Text))
	if err := faults.Err(); err != nil {
		t.Fatal(err)
	}
	return sc
}

func judged(sc *scenarios.Scenario, run *play.Run) scoring.Grade {
	return scoring.Judge(sc, run, scoring.PlayYardstick(sc, run.Seed, true))
}
