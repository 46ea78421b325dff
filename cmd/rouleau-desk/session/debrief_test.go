// The debrief beside the window: told of a real attempt in the order that it was played in, broken off when it is left, never
// before the verdict, and gone when it has been closed.

package session

import (
	"context"
	"errors"
	"math"
	"runtime"
	"strings"
	"testing"
	"time"

	"rouleau/cmd/forks"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/scoring/debrief"
	"rouleau/scoring/operators"
	"rouleau/sim"
)

// draws are the other drawings of the debriefs of these tests.
const draws = 3

// atEnd is a case that an operator has played to its end or to a time, with the verdict on the screen.
func atEnd(t testing.TB, name, operator string, untilS float64) *Session {
	t.Helper()
	sc, err := scenarios.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	op, err := operators.Open(operator)
	if err != nil {
		t.Fatal(err)
	}
	s := New(sc, Options{Seed: 3, Draws: draws, Finish: Grader(sc, false, "P-1", "", nil)})
	s.Do([]bench.Act{{Do: bench.GoOn}, {Do: bench.GoOn}})
	who := op.Play(operators.SheetOf(sc, &s.Run.Case))
	var seen sim.Seen
	for !s.Run.State.Ended && sim.Seconds(s.Run.State.Tick) < untilS {
		if s.Run.State.Tick%sim.TicksPerSecond == 0 {
			sim.View(&s.Run.Case, &s.Run.State, &seen)
			who.Act(&seen, s.Run.Do)
		}
		s.Tick()
	}
	if !s.Run.State.Ended {
		s.View.TimeOver = true // it is graded as it was left
	}
	s.Do([]bench.Act{{Do: bench.Finish}, {Do: bench.GiveMarks, Marks: &bench.Marks{}}})
	s.Refresh()
	return s
}

// askDebrief opens the debrief and waits until it has been told, or cannot be.
func (s *Session) askDebrief(t testing.TB) *bench.Debrief {
	t.Helper()
	s.Do([]bench.Act{{Do: bench.OpenDebrief}})
	s.waitFor(t, func() bool { return s.View.Debrief.Step != bench.DebriefPlaying })
	return &s.View.Debrief
}

// waitFor runs frames until something is so.
func (s *Session) waitFor(t testing.TB, is func() bool) {
	t.Helper()
	for end := time.Now().Add(2 * time.Minute); !is(); time.Sleep(time.Millisecond) {
		if time.Now().After(end) {
			t.Fatal("it never comes")
		}
		s.Refresh()
	}
}

// The list is that of the costs that were played, in their order, with what each changed.
func TestTheDebriefTellsWhatWasPlayed(t *testing.T) {
	s := atEnd(t, "lesson-the-bowl", "hasty", 1e9)
	told := s.askDebrief(t).Told
	d := debrief.New(debrief.OfRun(s.scenario, s.Run, false))
	costs, err := forks.Costs(context.Background(), d, forks.Plan{Draws: draws})
	if err != nil {
		t.Fatal(err)
	}
	want := debrief.Tell(d, costs)
	unsure := 0
	for i, l := range want.Lines {
		k := &told.Costs[i]
		if k.Group != costGroups[l.Group] || k.Points != l.Points || k.Title != sentence(l.Cost.Decision.Title) || k.Changes != strings.Join(l.Changes, ", ") || k.Sure != l.Sure || k.Unsure != l.Unsure {
			t.Errorf("%+v is told as %+v", l, k)
		}
		if k.Place < 0 || d.Decisions[k.Place].Title != l.Cost.Decision.Title || k.Marked != (l.Group == debrief.Gained && i < debrief.MostMarked) {
			t.Errorf("%q leads to %d, marked: %t", k.Title, k.Place, k.Marked)
		}
		if k.Unsure {
			unsure++
		}
	}
	if len(told.Costs) != len(want.Lines)+len(want.Left) || len(want.Of(debrief.Gained)) < 3 || len(want.Left) == 0 {
		t.Errorf("%d rows, %d decisions, %d of them gained, %d criteria left", len(told.Costs), len(want.Lines), len(want.Of(debrief.Gained)), len(want.Left))
	}
	for i, b := range want.Left {
		if k := &told.Costs[len(want.Lines)+i]; k.Group != bench.CostLeft || k.Points != b.Points || k.Title != sentence(d.Own.Grade.Criteria[b.Criterion].Meaning) || k.Place >= 0 {
			t.Errorf("%+v is told as %+v", b, k)
		}
	}
	if unsure == 0 {
		t.Error("nothing is unsure; this test wants a case in which something is")
	}
	if n := len(want.Questions); n != len(told.Questions) || n < 5 {
		t.Errorf("%d questions of %d", len(told.Questions), n)
	}
	if len(told.Figures) != len(want.Figures) {
		t.Errorf("%d figures of %d", len(told.Figures), len(want.Figures))
	}
	if !told.Good.Differ || len(told.Good.Lanes) < 2 || told.Good.Part.Is {
		t.Errorf("beside a good run: %+v", told.Good.Names)
	}
}

// The courses of a decision are those of its fork, up to the moment at which they part.
func TestTheCoursesOfADecision(t *testing.T) {
	s := atEnd(t, "first-bowl", "hasty", 1e9)
	told := s.askDebrief(t).Told
	for row := range min(4, len(told.Costs)) {
		s.Do([]bench.Act{{Do: bench.ShowCourses, Value: row}})
		k := &told.Costs[row]
		s.waitFor(t, func() bool { return k.Courses != nil })
		other := s.otherwise.found.debrief.Course(k.Place)
		c := k.Courses
		if c.EndS < sim.Seconds(max(other.State.Tick, s.Run.State.Tick))-1 || c.Part.Is && c.Part.S > c.EndS {
			t.Errorf("%q: ends at %.0f s, parts at %.0f s", k.Title, c.EndS, c.Part.S)
		}
		for i := range c.Lanes {
			l := &c.Lanes[i]
			if l.Values[0].Len() != len(s.Run.Trace) || l.Values[1].Len() != len(other.Trace) {
				t.Errorf("%q, %s: %d and %d values", k.Title, l.Name, l.Values[0].Len(), l.Values[1].Len())
			}
			for n := range int(c.Part.S) - 1 {
				if a, b := l.Values[0].At(n), l.Values[1].At(n); a != b && !(math.IsNaN(a) && math.IsNaN(b)) {
					t.Fatalf("%q, %s: %g and %g at %d s, before they part at %.0f s", k.Title, l.Name, a, b, n, c.Part.S)
				}
			}
		}
	}
	// Of several wishes in a row the newest is fulfilled, whatever was being played.
	last := len(told.Costs) - 1
	for told.Costs[last].Place < 0 {
		last--
	}
	for row := 4; row <= last; row++ {
		s.Do([]bench.Act{{Do: bench.ShowCourses, Value: row}})
	}
	s.waitFor(t, func() bool { return told.Costs[last].Courses != nil })
	s.Do([]bench.Act{{Do: bench.ShowCourses, Value: -1}, {Do: bench.ShowCourses, Value: 999}})
}

// Leaving breaks it off: nothing is played to its end for nobody.
func TestLeavingBreaksTheDebriefOff(t *testing.T) {
	for name, leave := range map[string]func(s *Session){
		"home":  func(s *Session) { s.Close() },
		"again": func(s *Session) { s.Do([]bench.Act{{Do: bench.Again}}) },
	} {
		s := atEnd(t, "first-bowl", "hasty", 1e9)
		s.Do([]bench.Act{{Do: bench.OpenDebrief}})
		o := s.otherwise
		s.waitFor(t, func() bool { return s.View.Debrief.Done > 0 })
		leave(s)
		if s.otherwise != nil || s.View.Debrief.Step != bench.DebriefShut {
			t.Errorf("%s: something of it stays", name)
		}
		s.Refresh()
		select {
		case f := <-o.told:
			if !errors.Is(f.err, context.Canceled) || f.told != nil {
				t.Errorf("%s: it was told, %v", name, f.err)
			}
		case <-time.After(time.Minute):
			t.Fatalf("%s: it goes on", name)
		}
		if done, all := o.done.Load(), o.all.Load(); done >= all {
			t.Errorf("%s: all %d were played", name, all)
		}
	}
}

func TestNoDebriefBeforeTheVerdict(t *testing.T) {
	sc, err := scenarios.Open("salvage-declined")
	if err != nil {
		t.Fatal(err)
	}
	s := New(sc, Options{Seed: 1, Finish: Grader(sc, false, "P-1", "", nil)})
	s.Do([]bench.Act{{Do: bench.OpenDebrief}, {Do: bench.GoOn}, {Do: bench.GoOn}, {Do: bench.OpenDebrief}})
	playOut(s)
	s.Do([]bench.Act{{Do: bench.Finish}, {Do: bench.OpenDebrief}})
	if !s.View.Result.Self.Asked || s.otherwise != nil || s.View.Debrief.Step != bench.DebriefShut {
		t.Fatal("it is played before the marks were given")
	}
	s.Do([]bench.Act{{Do: bench.GiveMarks, Marks: &bench.Marks{}}})
	if s.otherwise != nil {
		t.Error("it is played though nobody has asked for it")
	}
	if d := s.askDebrief(t); d.Step != bench.DebriefTold || len(d.Told.Costs) > 0 || len(d.Told.Questions) < 5 {
		t.Errorf("after the marks of somebody who did all of it right: %+v", d)
	}
}

// What cannot be played again says so, and what was left unfinished is told with that beside it.
func TestWhatADebriefSaysOfOddAttempts(t *testing.T) {
	s := atEnd(t, "lesson-the-bowl", "hasty", 1e9)
	a := attempt.Of(s.scenario, s.Run, scoring.Judge(s.scenario, s.Run, scoring.PlayYardstick(s.scenario, 3, false)), attempt.By{Operator: "P-1", When: noon, Mode: attempt.Practice})
	for name, k := range map[string]struct {
		change func(a *attempt.Attempt)
		says   string
	}{
		"another model": {func(a *attempt.Attempt) { a.Model = "0" }, "was played with model version 0"},
		"another way":   {func(a *attempt.Attempt) { a.Checkpoints[len(a.Checkpoints)-1].Hash = "00000000000000ff" }, "does not come out as it was recorded"},
	} {
		b := *a
		b.Checkpoints = append([]attempt.Checkpoint{}, a.Checkpoints...)
		k.change(&b)
		w := New(s.scenario, Options{Seed: 3, Watch: &Recorded{Acts: b.Actions, End: b.LengthTicks, Record: func() (*debrief.Record, error) { return debrief.Of(&b) }}})
		w.View.Screen = bench.Graded
		if d := w.askDebrief(t); d.Step != bench.DebriefNone || !strings.Contains(d.Why, k.says) {
			t.Errorf("%s: %+v", name, d)
		}
	}
	for _, untilS := range []float64{0, 0.05, 1, 30, 150} {
		s = atEnd(t, "lesson-the-bowl", "hasty", untilS)
		d := s.askDebrief(t)
		if d.Step != bench.DebriefTold || len(d.Told.Heed) == 0 || !strings.Contains(d.Told.Heed[0], clockWords(s.Run.State.Tick)) {
			t.Errorf("left after %g s: %+v", untilS, d)
		}
	}
}

// A debrief that was closed leaves nothing behind, however often.
func TestDebriefsLeaveNothingBehind(t *testing.T) {
	s := atEnd(t, "salvage-declined", "hasty", 1e9)
	once := func() {
		told := s.askDebrief(t).Told
		s.Do([]bench.Act{{Do: bench.ShowCourses}})
		s.waitFor(t, func() bool { return told.Costs[0].Courses != nil })
		s.closeDebrief()
	}
	routines := runtime.NumGoroutine()
	used := func() uint64 {
		for end := time.Now().Add(time.Minute); runtime.NumGoroutine() > routines && time.Now().Before(end); {
			time.Sleep(time.Millisecond)
		}
		var m runtime.MemStats
		runtime.GC()
		runtime.GC()
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	once()
	heap := used()
	for range 10 {
		once()
	}
	grown := int64(used()) - int64(heap)
	if left := runtime.NumGoroutine() - routines; grown > 400_000 || left > 0 {
		t.Errorf("after ten of them %d bytes and %d goroutines more", grown, left)
	}
}

// A fault of ours in a debrief is told where the debrief would stand, and takes nothing else with it.
func TestAFaultInADebriefIsTold(t *testing.T) {
	o := &otherwise{record: func() (*debrief.Record, error) { panic("cannot be borne") }}
	if p := o.play(); p.err == nil || !strings.Contains(p.err.Error(), "cannot be borne") || p.told != nil {
		t.Errorf("it ends with %v", p.err)
	}
}
