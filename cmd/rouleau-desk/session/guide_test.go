// The lesson in the session: its clock, its pace, and that a lesson whose window had gone goes on at the same step.

package session

import (
	"reflect"
	"testing"
	"time"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/journal"
	"rouleau/scenarios"
	"rouleau/scoring/coach"
	"rouleau/sim"
)

func firstBowl(t *testing.T) *scenarios.Scenario {
	t.Helper()
	sc, err := scenarios.Open("first-bowl")
	if err != nil {
		t.Fatal(err)
	}
	return sc
}

// taught does what the card says until it stands at a step.
func taught(t *testing.T, s *Session, now *time.Time, step int) {
	t.Helper()
	for range 20000 {
		s.Refresh()
		g := &s.View.Guide
		if g.Step >= step || g.Done {
			return
		}
		if a, ok := coach.Asks(s.scenario, g.Step-1); g.Read {
			s.Do([]bench.Act{{Do: bench.GuideNext}})
		} else if ok && s.View.May(a) == "" {
			s.Do([]bench.Act{{Sim: a}})
		} else {
			*now = now.Add(50 * time.Millisecond)
			s.Advance(*now)
		}
	}
	t.Fatalf("step %d is never reached: %+v", step, s.View.Guide)
}

func TestALessonGoesOnWhereItsWindowWasLeft(t *testing.T) {
	sc := firstBowl(t)
	for _, step := range []int{3, 6, 13, 17, 20, 32, 40, 48} {
		j := journal.New(t.TempDir(), journal.HeadOf(sc, 2, false, "P-1", noon))
		s := New(sc, Options{Seed: 2, Journal: j})
		now := noon
		s.Advance(now)
		s.begin()
		taught(t, s, &now, step)
		s.Do([]bench.Act{{Do: bench.GuideFast}})
		s.Refresh()

		r, err := Resume(sc, left(t, j.Path()), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(r.View.Guide, s.View.Guide) || r.Run.State.Hash() != s.Run.State.Hash() || s.View.Guide.Step < step {
			t.Errorf("step %d: resumed at\n%+v, left at\n%+v", step, r.View.Guide, s.View.Guide)
		}
		j.Close()
	}
}

func TestTheLessonPacesItsWaits(t *testing.T) {
	s := New(firstBowl(t), Options{Seed: 1})
	now := noon
	pass := func(d time.Duration) int64 {
		at := s.Run.State.Tick
		for ; d > 0; d -= 50 * time.Millisecond {
			now = now.Add(50 * time.Millisecond)
			s.Advance(now)
			s.Refresh()
		}
		return s.Run.State.Tick - at
	}
	pass(time.Second)
	s.begin()
	if got := pass(time.Second); got != 0 || !s.View.Guide.Read {
		t.Errorf("while the sheet is read %d ticks pass", got)
	}
	taught(t, s, &now, 5)
	if got := pass(time.Second); got != 0 || s.View.Speed != 1 {
		t.Errorf("before the act %d ticks pass at %d times", got, s.View.Speed)
	}
	s.Do([]bench.Act{{Sim: sim.Action{Do: sim.OpenSet, On: sim.CollectionSet}}})
	s.Refresh()
	if got := pass(time.Second); got != 10*sim.TicksPerSecond || s.View.Speed != 10 {
		t.Errorf("while the set is opened %d ticks pass in a second, at %d times", got, s.View.Speed)
	}
	s.Do([]bench.Act{{Do: bench.GuideFast}})
	s.Refresh()
	if got := pass(time.Second); got != sim.TicksPerSecond || s.View.Speed != 1 {
		t.Errorf("asked not to hurry, %d ticks pass in a second, at %d times", got, s.View.Speed)
	}
	s.Do([]bench.Act{{Do: bench.GuideFast}})
	pass(5 * time.Second)
	if s.View.Seen.HandsBusy || s.View.Speed != 1 || pass(time.Second) != 0 {
		t.Errorf("after the wait: busy %v, %d times", s.View.Seen.HandsBusy, s.View.Speed)
	}
	s.Do([]bench.Act{{Do: bench.JumpToNext}})
	if got := pass(time.Second); got != 0 || s.View.Jumping {
		t.Errorf("time that stands is jumped over: %d ticks", got)
	}
}
