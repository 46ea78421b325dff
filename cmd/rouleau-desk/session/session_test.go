// A session from the outside: time, the log, and an attempt that can be played again.

package session

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/scenarios"
	"rouleau/scoring/attempt"
	"rouleau/scoring/operators"
	"rouleau/sim"
)

func open(t *testing.T, o Options) *Session {
	t.Helper()
	sc, err := scenarios.Open("steady-oozing-spine")
	if err != nil {
		t.Fatal(err)
	}
	return New(sc, o)
}

func (s *Session) begin() { s.Do([]bench.Act{{Do: bench.GoOn}, {Do: bench.GoOn}}) }

var noon = time.Date(2031, 5, 14, 12, 0, 0, 0, time.UTC)

func TestTimeBecomesWholeTicks(t *testing.T) {
	s := open(t, Options{Seed: 1})
	now := noon
	pass := func(d time.Duration) { now = now.Add(d); s.Advance(now) }
	pass(0)
	pass(time.Second)
	if s.Run.State.Tick != 0 {
		t.Fatalf("time passed before the bench was begun: tick %d", s.Run.State.Tick)
	}
	s.begin()
	for range 100 {
		pass(17 * time.Millisecond) // 1.7 s in frames that are no whole ticks
	}
	if got := s.Run.State.Tick; got != 34 {
		t.Errorf("1.7 s are %d ticks, want 34", got)
	}
	s.Do([]bench.Act{{Do: bench.SetSpeed, Value: 20}})
	for range 10 {
		pass(100 * time.Millisecond)
	}
	if got := s.Run.State.Tick; got != 434 {
		t.Errorf("one more second at 20 times: tick %d, want 434", got)
	}
	s.Do([]bench.Act{{Do: bench.TogglePause}})
	pass(300 * time.Millisecond)
	if got := s.Run.State.Tick; got != 434 {
		t.Errorf("time passed in a pause: tick %d", got)
	}
}

func TestAStalledWindowLetsTimeGoAndSaysSo(t *testing.T) {
	s := open(t, Options{Seed: 1})
	s.begin()
	s.Advance(noon)
	s.Advance(noon.Add(time.Minute))
	if got, want := s.Run.State.Tick, int64(mostBehind/tick); got != want {
		t.Errorf("after a minute's stall: tick %d, want %d", got, want)
	}
	s.Refresh()
	told := slices.ContainsFunc(s.View.Log, func(l bench.Line) bool { return strings.Contains(l.Text, "late") })
	if !s.View.Behind || !told {
		t.Errorf("the stall is not told: %v", s.View.Log)
	}
}

func TestAnAssessmentHasNoPauseAndOneSpeed(t *testing.T) {
	s := open(t, Options{Seed: 1, Assessment: true})
	s.begin()
	s.Advance(noon)
	s.Do([]bench.Act{{Do: bench.TogglePause}, {Do: bench.SetSpeed, Value: 20}, {Do: bench.BackToCase}})
	s.Advance(noon.Add(400 * time.Millisecond))
	if got := s.Run.State.Tick; got != 8 {
		t.Errorf("tick %d, want 8: time goes on at one speed, on the case sheet too", got)
	}
}

func playOut(s *Session) {
	s.begin()
	who := operators.NewSteady(operators.SheetOf(s.scenario, &s.Run.Case))
	var seen sim.Seen
	for !s.Run.State.Ended {
		if s.Run.State.Tick%sim.TicksPerSecond == 0 {
			sim.View(&s.Run.Case, &s.Run.State, &seen)
			who.Act(&seen, s.Run.Do)
			s.Refresh()
		}
		s.Tick()
	}
	s.Refresh()
}

func TestTheAttemptCanBePlayedAgain(t *testing.T) {
	sc, err := scenarios.Open("steady-oozing-spine")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "attempt.json")
	s := New(sc, Options{Seed: 4, Finish: Grader(sc, false, "test", path, func() time.Time { return noon })})
	playOut(s)
	s.Do([]bench.Act{{Do: bench.Finish}})
	if r := &s.View.Result; r.SavedAs != path || r.Fault != "" || !r.Graded {
		t.Fatalf("saved as %q, fault %q", r.SavedAs, r.Fault)
	}
	a, err := attempt.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	report, err := attempt.Replay(a)
	if err != nil {
		t.Fatal(err)
	}
	if !report.Same() {
		t.Errorf("the replay parts from the attempt: %+v", report)
	}
}

func TestAPlaceThatCannotBeWrittenIsTold(t *testing.T) {
	sc, err := scenarios.Open("steady-oozing-spine")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "missing", "attempt.json")
	s := New(sc, Options{Seed: 4, Finish: Grader(sc, false, "test", path, time.Now)})
	playOut(s)
	s.Do([]bench.Act{{Do: bench.Finish}})
	if r := &s.View.Result; r.SavedAs != "" || !strings.Contains(r.Fault, "folder") || !r.Graded {
		t.Errorf("saved as %q, fault %q", r.SavedAs, r.Fault)
	}
}

// Everything that happens in a whole case can be said, and nothing is said with a gap in it.
func TestTheLogHasWordsForEverything(t *testing.T) {
	s := open(t, Options{Seed: 2})
	playOut(s)
	if len(s.View.Log) < 50 {
		t.Fatalf("only %d lines", len(s.View.Log))
	}
	for _, l := range s.View.Log {
		if strings.Contains(l.Text, "‹") || strings.Contains(l.Text, "%!") || strings.TrimSpace(l.Text) == "" {
			t.Errorf("a line with a gap: %q", l.Text)
		}
	}
}

func TestAlarmsAreListedUrgentFirstAndAcknowledged(t *testing.T) {
	s := open(t, Options{Seed: 1})
	s.begin()
	a := &s.Run.State.Alarms
	a.On[sim.AlarmLayered], a.On[sim.AlarmNoDrip], a.On[sim.AlarmNoFlow] = true, true, true
	s.Refresh()
	v := &s.View
	if len(v.Alarms) != 3 || v.Alarms[0].Is != sim.AlarmNoDrip || v.Alarms[2].Is != sim.AlarmLayered {
		t.Fatalf("order %v", v.Alarms)
	}
	s.Do([]bench.Act{{Do: bench.Acknowledge, Alarm: sim.AlarmNoDrip}})
	s.Refresh()
	if !v.Alarms[0].Known || v.Alarms[1].Known {
		t.Errorf("acknowledged: %v", v.Alarms)
	}
	a.On[sim.AlarmNoDrip] = false
	s.Tick()
	a.On[sim.AlarmNoDrip] = true
	s.Refresh()
	if v.Alarms[0].Known {
		t.Error("an alarm that came back counts as acknowledged")
	}
}

func TestPlayAgainStartsAfresh(t *testing.T) {
	s := open(t, Options{Seed: 1})
	playOut(s)
	s.Do([]bench.Act{{Do: bench.Finish}, {Do: bench.Again}})
	s.Refresh()
	if s.Run.State.Tick != 0 || s.View.Screen != bench.Sheet || s.View.Charts.Tracks[bench.SignalReservoir].Len() != 0 || len(s.Run.Actions) != 0 {
		t.Errorf("tick %d, screen %d, %d chart values", s.Run.State.Tick, s.View.Screen, s.View.Charts.Tracks[bench.SignalReservoir].Len())
	}
}

// An alarm that comes and goes in a short while is one line with a count; later it is a line of its own.
func TestAFlickeringAlarmIsOneLine(t *testing.T) {
	s := open(t, Options{Seed: 1})
	s.begin()
	come := func(atS float64, kind sim.OccurrenceKind) {
		s.Run.Log = append(s.Run.Log, sim.Occurrence{Tick: sim.Ticks(atS), Kind: kind, Key: sim.AlarmNoDrip.String()})
		s.Refresh()
	}
	before := len(s.View.Log)
	for _, at := range []float64{10, 34, 58} {
		come(at, sim.Alarmed)
		come(at+4, sim.Calmed)
	}
	if got := s.View.Log[before:]; len(got) != 2 || got[0].Times != 3 || !strings.Contains(got[0].Text, "3 times") || got[1].Kind != sim.Calmed {
		t.Errorf("three alarms within a minute: %+v", got)
	}
	come(400, sim.Alarmed)
	if got := s.View.Log[before:]; len(got) != 3 || got[2].Times != 0 {
		t.Errorf("an alarm much later: %+v", got)
	}
}
