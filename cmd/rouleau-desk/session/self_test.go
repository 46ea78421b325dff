package session

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/journal"
	"rouleau/scenarios"
	"rouleau/scoring/attempt"
)

// played is the spine case at its end, to be saved at a path; journalled where a folder is given.
func played(t *testing.T, path, running string) *Session {
	t.Helper()
	sc, err := scenarios.Open("steady-oozing-spine")
	if err != nil {
		t.Fatal(err)
	}
	o := Options{Seed: 4, Finish: Grader(sc, false, "P-1", path, func() time.Time { return noon })}
	if running != "" {
		o.Journal = journal.New(running, journal.HeadOf(sc, 4, false, "P-1", noon))
	}
	s := New(sc, o)
	playOut(s)
	s.Do([]bench.Act{{Do: bench.Finish}})
	return s
}

// give marks the first two objectives.
func give(s *Session, otherwise string) {
	s.Do([]bench.Act{{Do: bench.GiveMarks, Marks: &bench.Marks{Each: []int{1, 3}, Otherwise: otherwise}}})
}

// The attempt is on disk before anything is marked, so that a window that is killed meanwhile loses nothing; the marks come
// into the same file.
func TestMarksComeIntoTheSavedAttempt(t *testing.T) {
	dir := t.TempDir()
	path, running := filepath.Join(dir, "a.json"), filepath.Join(dir, "running")
	s := played(t, path, running)
	r := &s.View.Result
	if !r.Self.Asked || r.Self.Given || len(r.Self.Rows) < 8 || len(r.Self.Choices) != 4 {
		t.Fatalf("asked %v, given %v, %d rows, %v", r.Self.Asked, r.Self.Given, len(r.Self.Rows), r.Self.Choices)
	}
	before, err := attempt.Load(path)
	if err != nil || before.Self != nil || !before.Sealed() {
		t.Fatalf("before the marks: %v", err)
	}
	if left, _ := filepath.Glob(filepath.Join(running, "*")); len(left) != 0 {
		t.Errorf("of a case that is saved there still lies %v", left)
	}
	give(s, " sooner ")
	after, err := attempt.Load(path)
	if err != nil || after.Self == nil || !after.Sealed() {
		t.Fatalf("after the marks: %v", err)
	}
	for i, m := range after.Self.Marks {
		want := attempt.NotMarked
		switch i {
		case 0:
			want = attempt.WentWell
		case 1:
			want = attempt.NotWell
		}
		if m.Mark != want || m.Objective != r.Self.Rows[i].ID {
			t.Errorf("%s is kept as %v, want %v", m.Objective, m.Mark, want)
		}
	}
	if after.Self.Otherwise != "sooner" || len(after.Self.Marks) != len(r.Self.Rows) {
		t.Errorf("kept %+v", after.Self)
	}
	report, err := attempt.Replay(after)
	if err != nil || !report.Same() {
		t.Errorf("with marks it is played again as another one: %v", err)
	}
	if after.Grade.Points != before.Grade.Points || after.When != before.When {
		t.Error("the marks changed more than themselves")
	}
	if r.Self.Asked || !r.Self.Given || r.Self.Rows[0].Own != r.Self.Choices[0] || r.Self.Rows[2].Own != words.Say("self.not_marked") || r.Self.Sum == "" || r.Fault != "" {
		t.Errorf("the page shows %+v, fault %q", r.Self, r.Fault)
	}
	// A second time nothing is asked, and nothing is taken.
	s.Do([]bench.Act{{Do: bench.GiveMarks, Marks: &bench.Marks{}}})
	if again, err := attempt.Load(path); err != nil || again.Seal != after.Seal {
		t.Error("marks can be given twice")
	}
}

// What was seen and what was measured stand beside each other as the marks say.
func TestRowsFollowTheMarks(t *testing.T) {
	s := played(t, "", "")
	r := &s.View.Result.Self
	was := r.Rows[0].Was
	if was < 0 || r.Rows[0].Of <= 0 || r.Rows[0].Part == "" {
		t.Fatalf("%+v", r.Rows[0])
	}
	give(s, "")
	for i, row := range r.Rows {
		switch {
		case i == 0 && (row.Seen != 2 || row.Was != was || row.Parts != (was != 2)):
			t.Errorf("%+v", row)
		case i == 1 && (row.Seen != 0 || row.Parts != (row.Was != 0)):
			t.Errorf("%+v", row)
		case i > 1 && (row.Seen != -1 || row.Parts || row.Apart != ""):
			t.Errorf("not marked, and %+v", row)
		}
	}
}

func TestMarksAreNotTakenBeforeTheEnd(t *testing.T) {
	sc, err := scenarios.Open("steady-oozing-spine")
	if err != nil {
		t.Fatal(err)
	}
	s := New(sc, Options{Seed: 4})
	give(s, "too soon")
	if s.View.Result.Self.Given {
		t.Error("marks are taken while the case is played")
	}
}

// An attempt that could not be saved keeps its marks for the copy, and one whose file has gone says that they were not kept.
func TestMarksWithoutAFile(t *testing.T) {
	s := played(t, filepath.Join(t.TempDir(), "none", "a.json"), "")
	give(s, "kept for later")
	if !s.View.Result.Self.Given || s.View.Result.SavedAs != "" {
		t.Fatal("without a file the marks are not taken")
	}
	path := filepath.Join(t.TempDir(), "a.json")
	other := played(t, path, "")
	if err := s.KeepMarks(path); err != nil {
		t.Error(err)
	}
	if a, err := attempt.Load(path); err != nil || a.Self == nil || a.Self.Otherwise != "kept for later" {
		t.Errorf("they are not in the copy: %v", err)
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	give(other, "lost")
	r := &other.View.Result
	if !r.Self.Given || r.Self.Asked || !strings.Contains(r.Fault, "were not kept") || !strings.Contains(r.Fault, "there is no such file") {
		t.Errorf("given %v, asked %v, fault %q", r.Self.Given, r.Self.Asked, r.Fault)
	}
}

// A lesson asks for nothing and shows nothing.
func TestALessonIsNotMarked(t *testing.T) {
	sc, err := scenarios.Open("first-bowl")
	if err != nil {
		t.Fatal(err)
	}
	s := New(sc, Options{Seed: 1, Finish: Grader(sc, false, "P-1", "", time.Now)})
	playOut(s)
	s.Do([]bench.Act{{Do: bench.Finish}})
	if r := &s.View.Result; !r.Graded || r.Self.Asked || len(r.Self.Rows) != 0 {
		t.Errorf("graded %v, asked %v, %d rows", r.Graded, r.Self.Asked, len(r.Self.Rows))
	}
}

// Again means to be asked again.
func TestAgainIsAskedAnew(t *testing.T) {
	s := played(t, "", "")
	give(s, "the first time")
	s.Do([]bench.Act{{Do: bench.Again}})
	if s.View.Result.Self.Given || s.marks != nil {
		t.Error("marks of the first time are still there")
	}
	playOut(s)
	s.Do([]bench.Act{{Do: bench.Finish}})
	if !s.View.Result.Self.Asked {
		t.Error("the second time nobody is asked")
	}
}
