// Trying again from a moment of a past attempt: the case is as it was then, to the bit, and what follows is practice.

package session

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/journal"
	"rouleau/scenarios"
	"rouleau/scoring/attempt"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// past is an assessment that steady has played to its end, and its hash at each moment before the acts of a second.
func past(t *testing.T, sc *scenarios.Scenario, seed uint64) (*Recorded, map[int64]uint64) {
	t.Helper()
	run := play.New(sc.Case(seed, true), seed)
	run.ToEnd(operators.NewSteady(operators.SheetOf(sc, &run.Case)))
	r := &Recorded{Acts: run.Actions, End: run.State.Tick}
	before := map[int64]uint64{}
	again := play.New(sc.Case(seed, true), seed)
	for next := 0; !again.State.Ended; again.Step() {
		at := again.State.Tick
		if at%(100*sim.TicksPerSecond) == 0 {
			before[at] = again.State.Hash()
		}
		for ; next < len(r.Acts) && r.Acts[next].Tick <= at; next++ {
			again.Do(r.Acts[next])
		}
		if at%(60*sim.TicksPerSecond) == 0 {
			r.Hashes = append(r.Hashes, Hash{at, again.State.Hash()})
		}
	}
	return r, before
}

func tryFrom(t *testing.T, sc *scenarios.Scenario, r *Recorded, seconds float64, o Options) *Session {
	t.Helper()
	s, err := TryFrom(sc, r, sim.Ticks(seconds), o)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestTheCaseIsAsItWasAtThatMoment(t *testing.T) {
	sc := steadyCase(t)
	r, before := past(t, sc, 3)
	watched := New(sc, Options{Seed: 3, Watch: r})
	watched.begin()
	for _, seconds := range []float64{100, 1800, 3000, 4800} {
		s := tryFrom(t, sc, r, seconds, Options{Seed: 3, Assessment: true})
		at := sim.Ticks(seconds)
		if s.Run.State.Tick != at || s.Run.State.Hash() != before[at] {
			t.Errorf("%.0f s: tick %d, hash %x, want %d, %x", seconds, s.Run.State.Tick, s.Run.State.Hash(), at, before[at])
		}
		v := &s.View
		if v.Assessment || v.Watching || !v.Paused || v.Screen != bench.AtBench || v.TimeLeftS != 0 || len(v.Speeds) < 2 || !s.Breaks().TakenOver {
			t.Errorf("%.0f s: it is not practice that stands at the bench: %+v", seconds, s.Breaks())
		}
		if n := len(s.Run.Actions); n == 0 || s.Run.Actions[n-1].Tick >= at || r.Acts[n].Tick < at {
			t.Errorf("%.0f s: %d acts are taken over, the first dropped is of tick %d", seconds, n, r.Acts[n].Tick)
		}
		// Charts and log are those of who watched up to there; only that it is tried again is new.
		watched.Do([]bench.Act{{Do: bench.Seek, Value: int(seconds)}})
		watched.Refresh()
		if mark := v.Charts.Marks[len(v.Charts.Marks)-1]; mark.S != seconds || mark.Text != "tried again" {
			t.Errorf("the last mark is %+v", mark)
		}
		v.Charts.Marks = v.Charts.Marks[:len(v.Charts.Marks)-1]
		if last := v.Log[len(v.Log)-1]; !strings.Contains(last.Text, "you try again from "+clockWords(at)) {
			t.Errorf("the log ends with %q", last.Text)
		}
		v.Log = v.Log[:len(v.Log)-1]
		if got, want := shown(s), shown(watched); got != want {
			t.Errorf("%.0f s: shown otherwise than to who watched", seconds)
		}
	}
}

// What follows is free: time can be stopped and run, hints are there, acts are done; and it is saved as an attempt of its own
// that can be played again.
func TestWhatFollowsIsPracticeAndSaved(t *testing.T) {
	sc := steadyCase(t)
	r, _ := past(t, sc, 3)
	path := filepath.Join(t.TempDir(), "again.json")
	j := journal.New(t.TempDir(), journal.HeadOf(sc, 3, false, "P-2", noon))
	s := tryFrom(t, sc, r, 1900, Options{Seed: 3, Journal: j, Finish: Grader(sc, false, "P-2", path, func() time.Time { return noon })})
	now := noon
	s.Advance(now)
	now = now.Add(time.Second)
	if s.Advance(now); s.Run.State.Tick != sim.Ticks(1900) {
		t.Fatal("time passes before it is let go on")
	}
	s.Do([]bench.Act{{Do: bench.TogglePause}, {Do: bench.SetSpeed, Value: 20}, {Sim: sim.Action{Do: sim.Note, Text: "another way"}}})
	acts := len(s.Run.Actions)
	if s.Run.Actions[acts-1].Text != "another way" {
		t.Fatal("an act by hand is not done")
	}
	frames(s, &now, 1<<40)
	if !s.Run.State.Ended || len(s.Run.Actions) <= acts {
		t.Fatalf("not played to its end: tick %d", s.Run.State.Tick)
	}
	s.Do([]bench.Act{{Do: bench.Finish}})
	a, err := attempt.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	if a.Mode != attempt.Practice || !a.Breaks.TakenOver || a.Operator != "P-2" {
		t.Errorf("it is kept as %s of %s, %+v", a.Mode, a.Operator, a.Breaks)
	}
	if report, err := attempt.Replay(a); err != nil || !report.Same() {
		t.Errorf("it is played again as another one: %+v, %v", report, err)
	}
	// The case once more from its start is nobody else's any more.
	if s.Do([]bench.Act{{Do: bench.Again}}); s.Breaks().TakenOver {
		t.Error("played from its start it still counts as begun by another attempt")
	}
}

// A window that is killed, at once or later, loses nothing of it.
func TestWhatIsTriedAgainIsInTheJournal(t *testing.T) {
	for id, moments := range map[string][]float64{"steady-oozing-spine": {0, 100, 1900}, "first-bowl": {900}} {
		sc, err := scenarios.Open(id)
		if err != nil {
			t.Fatal(err)
		}
		r, _ := past(t, sc, 3)
		for _, seconds := range moments {
			j := journal.New(t.TempDir(), journal.HeadOf(sc, 3, false, "P-2", noon))
			s := tryFrom(t, sc, r, seconds, Options{Seed: 3, Journal: j})
			look := func(when string) {
				t.Helper()
				s.Refresh()
				again, err := Resume(sc, left(t, j.Path()), Options{})
				if err != nil {
					t.Fatalf("%s at %.0f s, %s: %v", id, seconds, when, err)
				}
				again.View.Log = again.View.Log[:len(s.View.Log)] // that it was resumed, and stands
				if again.Run.State.Hash() != s.Run.State.Hash() || again.Run.State.Tick != s.Run.State.Tick || shown(again) != shown(s) {
					t.Errorf("%s at %.0f s, %s: another case goes on", id, seconds, when)
				}
				if !again.Breaks().TakenOver || again.View.Guide.On || again.View.Assessment {
					t.Errorf("%s at %.0f s, %s: %+v, lesson %v", id, seconds, when, again.Breaks(), again.View.Guide.On)
				}
			}
			if seconds > 0 {
				look("at once")
			} else {
				s.Do([]bench.Act{{Do: bench.GoOn}}) // from the case sheet
			}
			now := noon
			s.Advance(now)
			if s.View.Paused {
				s.Do([]bench.Act{{Do: bench.TogglePause}})
			}
			frames(s, &now, sim.Ticks(seconds+40))
			look("later")
			s.Close()
		}
	}
}

// The first moment is that of the case sheet, on which nothing is decided yet.
func TestFromTheStart(t *testing.T) {
	sc := steadyCase(t)
	r, _ := past(t, sc, 3)
	s := tryFrom(t, sc, r, 0, Options{Seed: 3})
	if s.View.Screen != bench.Sheet || len(s.Run.Actions) != 0 || s.View.Paused || s.begun {
		t.Errorf("screen %d, %d acts", s.View.Screen, len(s.Run.Actions))
	}
}

func TestWhatCannotBeTriedAgain(t *testing.T) {
	sc := steadyCase(t)
	good, _ := past(t, sc, 3)
	run := play.New(sc.Case(3, true), 3)
	for !run.State.Ended {
		run.Step()
	}
	idle := &Recorded{End: run.State.Tick}
	changed := func(change func(r *Recorded)) *Recorded {
		r := *good
		r.Acts, r.Hashes = slices.Clone(good.Acts), slices.Clone(good.Hashes)
		change(&r)
		return &r
	}
	for name, k := range map[string]struct {
		r    *Recorded
		says string
		seed uint64
	}{
		"an act that is refused": {changed(func(r *Recorded) {
			r.Acts = slices.Insert(r.Acts, 0, sim.Action{Do: sim.Wash})
		}), "is refused now", 3},
		"another seed":           {good, "comes out otherwise", 4},
		"a hash that is another": {changed(func(r *Recorded) { r.Hashes[20].Is++ }), "by 0:20:00", 3},
		"another model":          {changed(func(r *Recorded) { r.Stale = "of another model" }), "of another model", 3},
		"the end of the clock":   {idle, "is over at", 3},
	} {
		seconds := 1800.0
		if k.r == idle {
			seconds = 1e6
		}
		dir := t.TempDir()
		j := journal.New(dir, journal.HeadOf(sc, k.seed, false, "P-2", noon))
		s, err := TryFrom(sc, k.r, sim.Ticks(seconds), Options{Seed: k.seed, Journal: j})
		if s != nil || err == nil || !strings.Contains(err.Error(), k.says) {
			t.Errorf("%s: %v", name, err)
		}
		if made, _ := filepath.Glob(filepath.Join(dir, "*")); len(made) != 0 {
			t.Errorf("%s: something was written: %v", name, made)
		}
	}
	// Before the change nothing is wrong with it.
	if _, err := TryFrom(sc, changed(func(r *Recorded) { r.Hashes[40].Is++ }), sim.Ticks(1800), Options{Seed: 3}); err != nil {
		t.Error(err)
	}
}

// An attempt that somebody ended by hand can be gone on with right before that; one that was left, from its last moment.
func TestTheLastMoments(t *testing.T) {
	sc := steadyCase(t)
	r, _ := past(t, sc, 3)
	cut := &Recorded{Acts: r.Acts, End: sim.Ticks(2000.4)}
	s := tryFrom(t, sc, cut, 1e6, Options{Seed: 3})
	if s.Run.State.Tick != sim.Ticks(2000.4) || s.Run.State.Ended {
		t.Errorf("an attempt that was left is gone on with from tick %d", s.Run.State.Tick)
	}
	last := r.Acts[len(r.Acts)-1]
	if last.Do != sim.EndCase || last.Tick != r.End {
		t.Fatalf("steady ends the case otherwise: %+v", last)
	}
	s = tryFrom(t, sc, r, sim.Seconds(r.End), Options{Seed: 3})
	if s.Run.State.Tick != r.End || s.Run.State.Ended || !s.mayRun() {
		t.Errorf("before it is ended, at tick %d of %d, the case cannot be gone on with", s.Run.State.Tick, r.End)
	}
}

// What can be tried again: a case that is watched or over, never one that is being played.
func TestARunningCaseIsNotTriedAgain(t *testing.T) {
	s := open(t, Options{Seed: 1, Assessment: true})
	s.begin()
	if s.Recorded() != nil {
		t.Error("a running assessment can be tried again")
	}
	for !s.Run.State.Ended {
		s.Tick()
	}
	if s.Recorded() != nil {
		t.Error("before it is graded it can be tried again")
	}
	s.Do([]bench.Act{{Do: bench.Finish}})
	if r := s.Recorded(); r == nil || r.End != s.Run.State.Tick {
		t.Errorf("after its end: %+v", r)
	}
}

// benchmarked is a case that steady has played, of an hour and a half or more.
func benchmarked(b *testing.B) (*scenarios.Scenario, *Recorded) {
	b.Helper()
	sc, err := scenarios.Open("steady-oozing-spine")
	if err != nil {
		b.Fatal(err)
	}
	run := play.New(sc.Case(3, true), 3)
	run.ToEnd(operators.NewSteady(operators.SheetOf(sc, &run.Case)))
	return sc, &Recorded{Acts: run.Actions, End: run.State.Tick}
}

// BenchmarkTryFrom opens the end of such a case.
func BenchmarkTryFrom(b *testing.B) {
	sc, r := benchmarked(b)
	for b.Loop() {
		if _, err := TryFrom(sc, r, r.End, Options{Seed: 3}); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(sim.Seconds(r.End)/60, "case-min")
}
