// A window that is killed, as it is: the next one offers the case, and goes on with it exactly where it was.

package windowtest

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"rouleau/cmd/rouleau-desk/journal"
	"rouleau/scoring/play"
)

// kept is the one journal of a folder.
func kept(t *testing.T, folder string) *journal.Record {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(folder, "running", "*"))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if r, err := journal.Read(f); err == nil {
			return r
		}
	}
	t.Fatalf("no case is kept in %v", files)
	return nil
}

// hashAt plays the acts of a record up to a tick.
func hashAt(t *testing.T, r *journal.Record, tick int64) string {
	t.Helper()
	sc, err := r.Scenario()
	if err != nil {
		t.Fatal(err)
	}
	run := play.New(sc.Case(r.Head.Seed, r.Head.Assessment()), r.Head.Seed)
	for i := range r.Lines {
		if l := &r.Lines[i]; l.Act.Do != 0 && l.Act.Tick <= tick {
			for run.State.Tick < l.Act.Tick {
				run.Step()
			}
			run.Do(l.Act)
		}
	}
	for run.State.Tick < tick {
		run.Step()
	}
	return fmt.Sprintf("%016x", run.State.Hash())
}

func TestAKilledWindowGoesOnWhereItWas(t *testing.T) {
	program, screen, folder := build(t), display(t), t.TempDir()
	words := filepath.Join(t.TempDir(), "screen.json")
	w := open(t, program, screen, "steady-oozing-spine", "--folder", folder)
	w.keys("Return", "Tab", "Down", "Down") // set up to process
	w.keys("b")                             // to the bench
	time.Sleep(1500 * time.Millisecond)
	w.cmd.Process.Kill()
	<-w.done
	killed := kept(t, folder)
	if killed.Reached < 5 || len(killed.Lines) == 0 {
		t.Fatalf("the case was kept up to tick %d, with %d lines", killed.Reached, len(killed.Lines))
	}

	w = open(t, program, screen, "--folder", folder, "--describe", words)
	says := func(what string) func() bool {
		return func() bool {
			text, _ := os.ReadFile(words)
			return bytes.Contains(text, []byte(what))
		}
	}
	w.keys("Return") // the cautions
	w.wait("the case to be offered", says("Not finished: "))
	w.keys("g")
	w.wait("the case to go on", says("goes on where it was"))
	w.keys("p") // time stands until it is let go on
	time.Sleep(time.Second)
	w.cmd.Process.Kill()
	<-w.done
	again := kept(t, folder)
	if again.Resumed != 1 || again.Reached <= killed.Reached {
		t.Errorf("gone on %d times, from tick %d to %d", again.Resumed, killed.Reached, again.Reached)
	}
	if a, b := hashAt(t, killed, killed.Reached), hashAt(t, again, killed.Reached); a != b {
		t.Errorf("at tick %d the state was %s when the window was killed, and is %s after it", killed.Reached, a, b)
	}
}
