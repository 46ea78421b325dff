// A case whose window had gone is gone on with as if nothing had happened.

package session

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/journal"
	"rouleau/scenarios"
	"rouleau/scoring/attempt"
	"rouleau/scoring/operators"
	"rouleau/sim"
)

// frames plays a case by frames of time on the wall, an operator acting once a simulated second, up to a tick.
func frames(s *Session, now *time.Time, upTo int64) {
	who := operators.NewSteady(operators.SheetOf(s.scenario, &s.Run.Case))
	framesBy(s, who, now, upTo)
}

func framesBy(s *Session, who *operators.Steady, now *time.Time, upTo int64) {
	var seen sim.Seen
	acted := int64(-1)
	for s.Run.State.Tick < upTo && !s.Run.State.Ended {
		*now = now.Add(50 * time.Millisecond)
		s.Advance(*now)
		s.Refresh()
		if second := s.Run.State.Tick / sim.TicksPerSecond; second != acted {
			acted = second
			sim.View(&s.Run.Case, &s.Run.State, &seen)
			who.Act(&seen, func(a sim.Action) sim.Reason {
				why := s.View.May(a)
				s.Do([]bench.Act{{Sim: a}})
				return why
			})
		}
	}
}

// shown is what the screens show of the way of a case.
func shown(s *Session) string {
	v := &s.View
	return fmt.Sprintf("%+v %v %+v %+v %v %v", *v.Charts, v.Log, v.Said, v.Heard, v.Alarms, v.Screen)
}

func steadyCase(t *testing.T) *scenarios.Scenario {
	t.Helper()
	sc, err := scenarios.Open("steady-oozing-spine")
	if err != nil {
		t.Fatal(err)
	}
	return sc
}

// left gives the journal of a case as a killed window leaves it: never closed, so a copy of its file is opened.
func left(t *testing.T, path string) *journal.Journal {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	copied := filepath.Join(t.TempDir(), filepath.Base(path))
	if err := os.WriteFile(copied, text, 0o600); err != nil {
		t.Fatal(err)
	}
	j, err := journal.Open(copied)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(j.Close)
	return j
}

func TestAResumedCaseIsTheCaseThatWasLeft(t *testing.T) {
	sc := steadyCase(t)
	for _, assessment := range []bool{false, true} {
		j := journal.New(t.TempDir(), journal.HeadOf(sc, 3, assessment, "P-1", noon))
		s := New(sc, Options{Seed: 3, Assessment: assessment, Journal: j})
		now := noon
		s.Advance(now)
		s.begin()
		s.Do([]bench.Act{{Do: bench.SetSpeed, Value: 10}})
		frames(s, &now, sim.Ticks(1500))
		now = now.Add(3 * time.Second) // a stall, which is told
		s.Advance(now)
		s.Do([]bench.Act{{Sim: sim.Action{Do: sim.Fill}}, {Do: bench.Acknowledge, Alarm: sim.AlarmLayered}, {Sim: sim.Action{Do: sim.Note, Text: "<b>"}}})
		s.Refresh()
		want, hash, acts, spent := shown(s), s.Run.State.Hash(), fmt.Sprint(s.Run.Actions), s.spent

		again := left(t, j.Path())
		r, err := Resume(sc, again, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if r.Run.State.Hash() != hash || fmt.Sprint(r.Run.Actions) != acts || r.Run.State.Tick != s.Run.State.Tick {
			t.Errorf("assessment %v: tick %d hash %x, want %d %x", assessment, r.Run.State.Tick, r.Run.State.Hash(), s.Run.State.Tick, hash)
		}
		lines := 2 // that it was resumed, and what of the time
		r.View.Log = r.View.Log[:len(r.View.Log)-lines]
		if got := shown(r); got != want {
			at := 0
			for at < min(len(got), len(want)) && got[at] == want[at] {
				at++
			}
			t.Errorf("assessment %v: shown otherwise: …%.200s, want …%.200s", assessment, got[max(0, at-50):], want[max(0, at-50):])
		}
		if r.View.Interrupted != 1 || r.View.LostS != s.View.LostS || r.View.LostS == 0 || r.View.Paused == assessment {
			t.Errorf("interrupted %d, lost %.1f of %.1f s, paused %v", r.View.Interrupted, r.View.LostS, s.View.LostS, r.View.Paused)
		}
		if assessment && (spent-r.spent > time.Millisecond || r.View.TimeLeftS-s.View.TimeLeftS > 0.01) {
			t.Errorf("spent %v, want %v", r.spent, spent)
		}
		j.Close()
	}
}

// A case that is interrupted twice grades and saves as one that is not.
func TestAResumedCaseGradesAsAnUninterruptedOne(t *testing.T) {
	sc := steadyCase(t)
	finish := func(path string) Options {
		return Options{Seed: 4, Finish: Grader(sc, false, "P-1", path, func() time.Time { return noon })}
	}
	who := operators.NewSteady(operators.SheetOf(sc, &New(sc, finish("")).Run.Case))
	play := func(s *Session, upTo int64) {
		var seen sim.Seen
		for !s.Run.State.Ended && s.Run.State.Tick < upTo {
			if s.Run.State.Tick%sim.TicksPerSecond == 0 {
				sim.View(&s.Run.Case, &s.Run.State, &seen)
				who.Act(&seen, func(a sim.Action) sim.Reason {
					why := s.View.May(a)
					s.Do([]bench.Act{{Sim: a}})
					return why
				})
			}
			s.Tick()
			s.keep()
		}
	}
	straight, broken := filepath.Join(t.TempDir(), "a.json"), filepath.Join(t.TempDir(), "b.json")
	s := New(sc, finish(straight))
	s.begin()
	play(s, 1<<40)
	s.Do([]bench.Act{{Do: bench.Finish}})

	who = operators.NewSteady(operators.SheetOf(sc, &s.Run.Case))
	o := finish(broken)
	o.Journal = journal.New(t.TempDir(), journal.HeadOf(sc, 4, false, "P-1", noon))
	b := New(sc, o)
	b.begin()
	for n, at := range []float64{700, 2400, 1e6} {
		play(b, sim.Ticks(at))
		path := o.Journal.Path()
		b.Close()
		j, err := journal.Open(path)
		if err != nil {
			t.Fatal(err)
		}
		o.Journal = j
		if b, err = Resume(sc, j, o); err != nil {
			t.Fatal(err)
		}
		if b.View.Interrupted != n+1 {
			t.Errorf("interrupted %d times, want %d", b.View.Interrupted, n+1)
		}
	}
	b.Do([]bench.Act{{Do: bench.Finish}})
	want, err := attempt.Load(straight)
	if err != nil {
		t.Fatal(err)
	}
	got, err := attempt.Load(broken)
	if err != nil {
		t.Fatal(err)
	}
	if want.Breaks != (attempt.Breaks{}) || got.Breaks != (attempt.Breaks{Interruptions: 3}) {
		t.Errorf("the attempts tell of breaks %+v and %+v", want.Breaks, got.Breaks)
	}
	got.Breaks, got.Seal = want.Breaks, want.Seal
	if string(got.Encode()) != string(want.Encode()) {
		t.Error("but for that, the attempt of the interrupted case is another one")
	}
	if _, err := os.Stat(o.Journal.Path()); err == nil {
		t.Error("the journal is still there after the attempt was saved")
	}
}

func TestAJournalIsKeptWhenTheAttemptCannotBeSaved(t *testing.T) {
	sc := steadyCase(t)
	j := journal.New(t.TempDir(), journal.HeadOf(sc, 4, false, "P-1", noon))
	s := New(sc, Options{Seed: 4, Journal: j, Finish: Grader(sc, false, "P-1", filepath.Join(t.TempDir(), "none", "a.json"), time.Now)})
	playOut(s)
	s.Do([]bench.Act{{Do: bench.Finish}})
	r, err := journal.Read(j.Path())
	if err != nil || r.Saved || r.Reached != s.Run.State.Tick {
		t.Errorf("%+v, %v", r, err)
	}
	s.Close()
}

func TestAJournalThatDoesNotFitIsRefusedAndKept(t *testing.T) {
	sc := steadyCase(t)
	j := journal.New(t.TempDir(), journal.HeadOf(sc, 1, false, "P-1", noon))
	s := New(sc, Options{Seed: 1, Journal: j})
	s.begin()
	s.Do([]bench.Act{{Sim: sim.Action{Do: sim.Decide, Value: float64(sim.CollectOnly)}}})
	s.Close()
	whole, err := os.ReadFile(j.Path())
	if err != nil {
		t.Fatal(err)
	}
	for want, text := range map[string]string{
		"version 0 of the model": strings.Replace(string(whole), `"model":"`+sim.ModelVersion, `"model":"0`, 1),
		"comes out otherwise":    string(whole) + `{"act":{"tick":0,"do":"fill","value":0}}` + "\n",
		"at tick 9999999":        string(whole) + `{"reached":9999999}` + "\n",
		"another scenario":       strings.Replace(string(whole), `"sha256":"`, `"sha256":"0`, 1),
	} {
		path := filepath.Join(t.TempDir(), "case.journal")
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		j, err := journal.Open(path)
		if err != nil {
			t.Fatal(err)
		}
		if r, err := Resume(sc, j, Options{}); r != nil || err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
		j.Close()
		if after, err := os.ReadFile(path); err != nil || string(after) != text {
			t.Errorf("%s: the file was changed", want)
		}
	}
}

// The seed of another drawing, and a journal for it.
func TestAgainWithANewSeed(t *testing.T) {
	sc := steadyCase(t)
	dir := t.TempDir()
	j := journal.New(dir, journal.HeadOf(sc, 1, false, "P-1", noon))
	s := New(sc, Options{Seed: 1, Journal: j, NewSeed: func() uint64 { return 77 },
		Finish: Grader(sc, false, "P-1", filepath.Join(t.TempDir(), "a.json"), time.Now)})
	playOut(s)
	s.Do([]bench.Act{{Do: bench.Finish}, {Do: bench.AgainNewSeed}})
	if s.Run.Seed != 77 || s.View.Story.Seed != 77 || s.View.Screen != bench.Sheet || s.Run.State.Tick != 0 {
		t.Fatalf("seed %d, screen %v, tick %d", s.Run.Seed, s.View.Screen, s.Run.State.Tick)
	}
	s.Do([]bench.Act{{Do: bench.GoOn}, {Sim: sim.Action{Do: sim.Decide, Value: float64(sim.CollectOnly)}}})
	s.Close()
	found, faults := journal.List(dir)
	if len(found) != 1 || len(faults) != 0 || found[0].Head.Seed != 77 {
		t.Fatalf("found %+v, %v", found, faults)
	}
	again, err := journal.Open(found[0].Path)
	if err != nil {
		t.Fatal(err)
	}
	defer again.Close()
	r, err := Resume(sc, again, Options{})
	if err != nil || r.Run.Seed != 77 || len(r.Run.Actions) != 1 || r.View.Screen != bench.AtBench {
		t.Errorf("%v, %+v", err, r)
	}
	s.Do([]bench.Act{{Do: bench.GoHome}})
	if !s.Home || s.Left {
		t.Errorf("home %v, left %v", s.Home, s.Left)
	}
}

// The time an assessment was allowed is not given again.
func TestTimeThatIsOverStaysOver(t *testing.T) {
	sc := steadyCase(t)
	j := journal.New(t.TempDir(), journal.HeadOf(sc, 1, true, "P-1", noon))
	s := New(sc, Options{Seed: 1, Assessment: true, Journal: j})
	s.Advance(noon)
	s.Do([]bench.Act{{Do: bench.GoOn}})
	s.Advance(noon.Add(time.Duration(sc.Modes.TimeLimitMin)*time.Minute - time.Minute))
	r, err := Resume(sc, left(t, j.Path()), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if r.View.Screen != bench.Sheet || r.View.TimeOver || r.View.TimeLeftS != 60 {
		t.Errorf("screen %v, over %v, %.1f s left", r.View.Screen, r.View.TimeOver, r.View.TimeLeftS)
	}
	s.Advance(noon.Add(20 * time.Hour))
	r, err = Resume(sc, left(t, j.Path()), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if !r.View.TimeOver || r.View.Screen != bench.AtBench || r.View.May(sim.Action{Do: sim.Mix}) != "case_is_over" {
		t.Errorf("over %v, screen %v", r.View.TimeOver, r.View.Screen)
	}
	s.Close()
}

// A disk that cannot be written to is told once, and the case goes on.
func TestACaseThatCannotBeKeptGoesOn(t *testing.T) {
	place := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(place, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	sc := steadyCase(t)
	s := New(sc, Options{Seed: 1, Journal: journal.New(place, journal.HeadOf(sc, 1, false, "P-1", noon))})
	now := noon
	s.Advance(now)
	s.begin()
	for range 100 {
		now = now.Add(50 * time.Millisecond)
		s.Advance(now)
		s.Do([]bench.Act{{Sim: sim.Action{Do: sim.Note, Text: "x"}}})
	}
	s.Refresh()
	told := 0
	for _, l := range s.View.Log {
		if strings.Contains(l.Text, "cannot be kept") {
			told++
		}
	}
	if told != 1 || s.Run.State.Tick != 100 {
		t.Errorf("told %d times, tick %d", told, s.Run.State.Tick)
	}
	s.Close()
}

// A lesson goes on at the step where it was.
func TestALessonIsResumedAtItsStep(t *testing.T) {
	sc, err := scenarios.Open("first-bowl")
	if err != nil {
		t.Fatal(err)
	}
	j := journal.New(t.TempDir(), journal.HeadOf(sc, 2, false, "P-1", noon))
	s := New(sc, Options{Seed: 2, Journal: j})
	who := operators.NewSteady(operators.SheetOf(sc, &s.Run.Case))
	var seen sim.Seen
	now := noon
	s.Advance(now)
	s.begin()
	for range 3000 {
		now = now.Add(50 * time.Millisecond)
		s.Advance(now)
		s.Refresh()
		sim.View(&s.Run.Case, &s.Run.State, &seen)
		who.Act(&seen, func(a sim.Action) sim.Reason {
			why := s.View.May(a)
			s.Do([]bench.Act{{Sim: a}})
			return why
		})
		if s.guideStands() {
			s.Do([]bench.Act{{Do: bench.GuideNext}})
		}
	}
	s.Refresh()
	r, err := Resume(sc, left(t, j.Path()), Options{})
	if err != nil {
		t.Fatal(err)
	}
	got, want := fmt.Sprintf("%+v", r.View.Guide), fmt.Sprintf("%+v", s.View.Guide)
	if got != want || s.View.Guide.Step < 3 || r.Run.State.Hash() != s.Run.State.Hash() {
		t.Errorf("resumed at %s, left at %s", got, want)
	}
	s.Close()
}
