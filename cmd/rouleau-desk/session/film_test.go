// Going to any moment of an attempt that is watched shows what watching it up to there shows.

package session

import (
	"math/rand/v2"
	"testing"
	"time"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/sim"
)

func (s *Session) seekTo(seconds int) {
	s.Do([]bench.Act{{Do: bench.Seek, Value: seconds}})
	s.Refresh()
}

func TestAnyMomentIsTheOneThatIsWatchedUpTo(t *testing.T) {
	sc := steadyCase(t)
	r, _ := past(t, sc, 3)
	s := New(sc, Options{Seed: 3, Watch: r})
	s.begin()
	by := rand.New(rand.NewPCG(1, 2))
	moments := []int{1900, 1880, 1881, 600, 5200, 59, 60, 61, 0, 3000, 3000}
	for range 12 {
		moments = append(moments, by.IntN(int(sim.Seconds(r.End))))
	}
	for _, at := range moments {
		straight := New(sc, Options{Seed: 3, Watch: r})
		straight.begin()
		for straight.Run.State.Tick < sim.Ticks(float64(at)) {
			straight.Tick()
			if straight.Run.State.Tick%7 == 0 {
				straight.Refresh()
			}
		}
		straight.Refresh()
		s.seekTo(at)
		if s.Run.State.Tick != sim.Ticks(float64(at)) || s.Run.State.Hash() != straight.Run.State.Hash() || s.watched != straight.watched || s.trail != straight.trail {
			t.Fatalf("%d s: tick %d, %d acts, want %d", at, s.Run.State.Tick, s.watched, straight.watched)
		}
		if len(s.Run.Trace) != len(straight.Run.Trace) || len(s.Run.Log) != len(straight.Run.Log) || len(s.Run.Actions) != len(straight.Run.Actions) {
			t.Errorf("%d s: the run keeps another way", at)
		}
		if got, want := shown(s), shown(straight); got != want {
			t.Errorf("%d s: shown otherwise", at)
		}
	}
	// Watched on from there it comes to the same end.
	s.seekTo(4000)
	for !s.Run.State.Ended {
		s.Tick()
	}
	s.watchEnds()
	end := s.Run.State.Hash()
	s.seekTo(100)
	s.seekTo(1e6)
	if s.Run.State.Hash() != end || !s.Run.State.Ended || s.Run.State.Tick != r.End {
		t.Errorf("tick %d of %d, ended %v", s.Run.State.Tick, r.End, s.Run.State.Ended)
	}
	s.Do([]bench.Act{{Do: bench.Finish}})
	if s.View.Screen != bench.Graded {
		t.Error("from the end there is no way to the result")
	}
}

// An attempt that was left comes to its end again after one has gone back, and says so again; and a pause stays a pause.
func TestGoingBackFromTheEnd(t *testing.T) {
	sc := steadyCase(t)
	r, _ := past(t, sc, 3)
	s := New(sc, Options{Seed: 3, Watch: &Recorded{Acts: r.Acts, End: sim.Ticks(500)}})
	s.begin()
	s.seekTo(1e6)
	if s.Run.State.Tick != sim.Ticks(500) || !s.View.Paused || !logged(s, "ends here") {
		t.Fatalf("tick %d, paused %v", s.Run.State.Tick, s.View.Paused)
	}
	s.seekTo(499)
	if logged(s, "ends here") || !s.View.Paused || s.mayRun() == false {
		t.Error("before its end it is still over")
	}
	s.Do([]bench.Act{{Do: bench.TogglePause}})
	now := noon
	s.Advance(now)
	for range 40 {
		now = now.Add(100 * time.Millisecond)
		s.Advance(now)
	}
	if !logged(s, "ends here") || s.Run.State.Tick != sim.Ticks(500) {
		t.Errorf("tick %d, log %v", s.Run.State.Tick, s.View.Log)
	}
}

// Only what is watched can be gone through: a case that is played has one way.
func TestAPlayedCaseIsNotGoneThrough(t *testing.T) {
	s := open(t, Options{Seed: 1})
	s.begin()
	s.seekTo(600)
	if s.Run.State.Tick != 0 {
		t.Errorf("tick %d", s.Run.State.Tick)
	}
}

// An alarm that was acknowledged stays so at another moment at which it is on, and only there.
func TestAcknowledgedAlarmsStayKnown(t *testing.T) {
	sc := steadyCase(t)
	r, _ := past(t, sc, 3)
	for i, a := range r.Acts { // from then on nobody does anything, and alarms stay on
		if a.Tick > sim.Ticks(1500) {
			r.Acts = r.Acts[:i]
			break
		}
	}
	s := New(sc, Options{Seed: 3, Watch: r})
	s.begin()
	for (len(s.View.Alarms) == 0 || s.View.Alarms[0].SinceS < 4) && s.Run.State.Tick < r.End {
		s.Tick()
		s.Refresh()
	}
	if len(s.View.Alarms) == 0 {
		t.Fatal("no alarm stays on in this case: this test needs one that does")
	}
	alarm, from := s.View.Alarms[0].Is, int(sim.Seconds(s.Run.State.Tick))-3 // it is on then, for a second at most
	s.seekTo(from + 2)
	s.Do([]bench.Act{{Do: bench.Acknowledge, Alarm: alarm}})
	s.seekTo(from + 1)
	if !s.known[alarm] {
		t.Error("a second earlier it is not known any more")
	}
	s.seekTo(from - 2)
	s.seekTo(from + 1)
	if s.known[alarm] {
		t.Error("it comes again and counts as known")
	}
}

// BenchmarkSeek goes back and forth over a whole case, as a pointer on its axis does.
func BenchmarkSeek(b *testing.B) {
	sc, r := benchmarked(b)
	s := New(sc, Options{Seed: 3, Watch: r})
	s.begin()
	s.seekTo(int(sim.Seconds(r.End)))
	by := rand.New(rand.NewPCG(1, 2))
	for b.Loop() {
		s.seekTo(by.IntN(int(sim.Seconds(r.End))))
	}
}
