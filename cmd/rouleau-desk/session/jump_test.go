// Running on to the next thing, late windows, and recorded attempts that are watched.

package session

import (
	"strings"
	"testing"
	"time"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/scoring/attempt"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// jumpOnce runs on until the jump ends and gives the frames it took and what it says.
func jumpOnce(s *Session, now *time.Time) (frames int, why string) {
	s.Do([]bench.Act{{Do: bench.JumpToNext}})
	for s.View.Jumping && frames < 1000 {
		*now = now.Add(16 * time.Millisecond)
		before := s.Run.State.Tick
		s.Advance(*now)
		s.Refresh()
		if s.Run.State.Tick-before > jumpSlice {
			return -1, "too much in one frame"
		}
		frames++
	}
	return frames, s.View.Log[len(s.View.Log)-1].Text
}

// An operator who has decided to do nothing sees the operation go by in jumps, each with its reason and none too long.
func TestJumpsStopAtWhatComes(t *testing.T) {
	s := open(t, Options{Seed: 1})
	now := noon
	s.Advance(now)
	s.begin()
	s.Do([]bench.Act{{Do: bench.SetSpeed, Value: 20}})
	reasons := map[string]int{}
	for range 200 {
		from := s.Run.State.Tick
		n, why := jumpOnce(s, &now)
		if s.Run.State.Ended {
			break
		}
		if n < 1 || !strings.HasPrefix(why, "time ran on by") {
			t.Fatalf("%d frames: %q", n, why)
		}
		if gone := s.Run.State.Tick - from; gone < 1 || gone > jumpAtMost {
			t.Fatalf("%d ticks in one jump: %q", gone, why)
		}
		reasons[why[strings.LastIndex(why, ": ")+2:]]++
		if s.View.Speed != 1 {
			t.Fatalf("after a jump time runs at %d times", s.View.Speed)
		}
	}
	if !s.Run.State.Ended || reasons["something is said"] == 0 || reasons["the operation goes on to its next part"] == 0 {
		t.Errorf("ended %v, reasons %v", s.Run.State.Ended, reasons)
	}
}

// What the person began ends a jump when it is done: hands, a mixing, a filling that stops by itself.
func TestJumpsStopWhereAStepEnds(t *testing.T) {
	for want, set := range map[string]func(st *sim.State){
		"your hands are free": func(st *sim.State) { st.Bench.HandsUntil = st.Tick + 100 },
		"a step has ended":    func(st *sim.State) { st.Reservoir.MixUntil = st.Tick + 100 },
		"an alarm":            func(st *sim.State) { st.Bench.Power, st.Bench.Opened[sim.ProcessingSet] = false, true },
		"a supply is low": func(st *sim.State) {
			st.Bench.Packs[0].Used, st.Bench.Packs[0].Fluid = true, sim.Saline.Of(jumpPackML-1)
		},
	} {
		s := open(t, Options{Seed: 1})
		now := noon
		s.Advance(now)
		s.begin()
		for range 30 {
			s.Tick()
		}
		s.Do([]bench.Act{{Do: bench.JumpToNext}})
		set(&s.Run.State)
		for s.View.Jumping {
			now = now.Add(16 * time.Millisecond)
			s.Advance(now)
		}
		s.Refresh()
		if !logged(s, want) {
			t.Errorf("%s: %v", want, s.View.Log)
		}
	}
}

func TestAnyActEndsAJump(t *testing.T) {
	s := open(t, Options{Seed: 1})
	s.begin()
	s.Advance(noon)
	for _, act := range []bench.Act{{Sim: sim.Action{Do: sim.Fill}}, {Do: bench.TogglePause}, {Do: bench.JumpToNext}} {
		s.View.Paused = false
		s.Do([]bench.Act{{Do: bench.JumpToNext}})
		if !s.View.Jumping {
			t.Fatal("no jump")
		}
		s.Do([]bench.Act{act})
		if s.View.Jumping {
			t.Errorf("%v does not end a jump", act)
		}
	}
}

func TestAnAssessmentHasNoJumps(t *testing.T) {
	s := open(t, Options{Seed: 1, Assessment: true})
	s.begin()
	s.Advance(noon)
	s.Do([]bench.Act{{Do: bench.JumpToNext}})
	s.Advance(noon.Add(100 * time.Millisecond))
	if s.View.Jumping || s.Run.State.Tick != 2 {
		t.Errorf("jumping %v, tick %d", s.View.Jumping, s.Run.State.Tick)
	}
}

// In an assessment every second that does not pass is counted and told: what passed and what is told lost add up to what
// passed on the wall.
func TestNoSecondOfAnAssessmentIsLostInSilence(t *testing.T) {
	s := open(t, Options{Seed: 1, Assessment: true})
	s.begin()
	now := noon
	s.Advance(now)
	told := 0.0
	for i := range 400 {
		now = now.Add([]time.Duration{16 * time.Millisecond, 900 * time.Millisecond, 510 * time.Millisecond, 2 * time.Second}[i%4])
		s.Advance(now)
		s.Refresh()
	}
	s.tellLag(0)
	wall := now.Sub(noon).Seconds()
	passed := sim.Seconds(s.Run.State.Tick)
	if diff := wall - passed - s.View.LostS; diff < 0 || diff > 0.05 {
		t.Errorf("%.2f s on the wall, %.2f s passed, %.2f s counted as lost", wall, passed, s.View.LostS)
	}
	for _, l := range s.View.Log {
		told += lateIn(l.Text)
	}
	if n := float64(len(s.View.Log)); told < s.View.LostS-n/2 || told > s.View.LostS+n/2 {
		t.Errorf("%.2f s are lost and %.0f told", s.View.LostS, told)
	}
}

// lateIn reads the seconds from a line about a late window.
func lateIn(text string) (seconds float64) {
	rest, ok := strings.CutPrefix(text, "the window was late: ")
	if !ok {
		return 0
	}
	for _, c := range strings.Fields(rest)[0] {
		seconds = 10*seconds + float64(c-'0')
	}
	return seconds
}

// recorded plays a case by an operator and gives what an attempt holds of it.
func recorded(s *Session) *play.Run {
	run := play.New(s.scenario.Case(1, true), 1)
	run.ToEnd(operators.NewSteady(operators.SheetOf(s.scenario, &run.Case)))
	return run
}

func TestARecordedAttemptIsWatched(t *testing.T) {
	run := recorded(open(t, Options{Seed: 1}))
	saved := false
	s := open(t, Options{Seed: 1, Assessment: true, Watch: &Recorded{Acts: run.Actions, End: run.State.Tick},
		Finish: func(*play.Run, attempt.Breaks) bench.Result { saved = true; return bench.Result{} }})
	s.begin()
	now := noon
	s.Advance(now)
	if !s.View.Watching || s.View.Assessment || s.View.May(sim.Action{Do: sim.Mix}) != "watching" {
		t.Fatalf("watching %v, assessment %v", s.View.Watching, s.View.Assessment)
	}
	s.Do([]bench.Act{{Sim: sim.Action{Do: sim.Decide, Value: float64(sim.CollectOnly)}}, {Do: bench.SetSpeed, Value: 20}})
	if len(s.Run.Actions) != 0 || !logged(s, "recorded: try again from here first") {
		t.Errorf("an act by hand was done: %v", s.View.Log)
	}
	for s.mayRun() {
		now = now.Add(500 * time.Millisecond)
		s.Advance(now)
		s.Refresh()
	}
	if s.Run.State.Hash() != run.State.Hash() || !s.Run.State.Ended {
		t.Errorf("tick %d of %d, ended %v", s.Run.State.Tick, run.State.Tick, s.Run.State.Ended)
	}
	s.Do([]bench.Act{{Do: bench.Finish}})
	if saved || !s.View.Result.Graded || s.View.Screen != bench.Graded {
		t.Errorf("saved %v, result %v", saved, s.View.Result.Graded)
	}
}

// An attempt that was left before its end is shown up to there.
func TestAnUnfinishedAttemptEndsWhereItEnded(t *testing.T) {
	run := recorded(open(t, Options{Seed: 1}))
	s := open(t, Options{Seed: 1, Watch: &Recorded{Acts: run.Actions, End: sim.Ticks(60)}})
	s.begin()
	now := noon
	s.Advance(now)
	for range 200 {
		now = now.Add(500 * time.Millisecond)
		s.Advance(now)
	}
	s.Refresh()
	if s.Run.State.Tick != sim.Ticks(60) || !logged(s, "ends here") {
		t.Errorf("tick %d, log %v", s.Run.State.Tick, s.View.Log)
	}
}
