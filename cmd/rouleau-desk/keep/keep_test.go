// The folder of records: settings survive a restart, damaged files are told and set aside, hundreds of results are listed at once.

package keep_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"rouleau/cmd/rouleau-desk/keep"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/scoring/play"
)

var day = time.Date(2031, 5, 14, 8, 30, 0, 0, time.UTC)

func folder(t *testing.T) *keep.Folder {
	t.Helper()
	f, err := keep.Open(filepath.Join(t.TempDir(), "records"))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func TestSettingsSurviveARestart(t *testing.T) {
	f := folder(t)
	if s, err := f.Settings(); err != nil || s != keep.Defaults() {
		t.Errorf("a first start: %+v, %v", s, err)
	}
	want := keep.Settings{Who: "P-17.b_x", Scale: 1.75, Contrast: true, Still: true}
	if err := f.SaveSettings(want); err != nil {
		t.Fatal(err)
	}
	again, err := keep.Open(f.Path())
	if err != nil {
		t.Fatal(err)
	}
	if s, err := again.Settings(); err != nil || s != want {
		t.Errorf("got %+v, %v", s, err)
	}
}

func TestDamagedSettingsAreSetAsideAndTold(t *testing.T) {
	for _, content := range []string{"", "{", "[]", `{"scale": 99}`, `{"scale": "large"}`, `{"who": "Some Body", "scale": 1}`, "\x00\x00\x00"} {
		f := folder(t)
		path := filepath.Join(f.Path(), "settings.json")
		for n := range 2 {
			if err := os.WriteFile(path, []byte(content), 0o600); err != nil {
				t.Fatal(err)
			}
			s, err := f.Settings()
			if err == nil || !strings.Contains(err.Error(), "damaged") || s != keep.Defaults() {
				t.Errorf("%q, time %d: %+v, %v", content, n+1, s, err)
			}
		}
		kept, _ := filepath.Glob(filepath.Join(f.Path(), "settings-damaged*"))
		if len(kept) != 2 {
			t.Fatalf("%q: two damaged files, set aside are %v", content, kept)
		}
		if was, _ := os.ReadFile(kept[0]); string(was) != content {
			t.Errorf("%q was changed to %q", content, was)
		}
	}
}

// A folder that cannot be made or written to is told, and what can be read is still read. A file stands in the way here, since
// whoever may do everything on the machine is not held by the rights of a folder.
func TestAFolderThatCannotBeWrittenIsTold(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "attempts"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	f, err := keep.Open(dir)
	if err == nil || !strings.Contains(err.Error(), "cannot be made") || !strings.Contains(err.Error(), "--folder") {
		t.Errorf("got %v", err)
	}
	if f == nil {
		t.Fatal("nothing could be read any more")
	}
	if _, faults := f.Past(); len(faults) != 1 {
		t.Errorf("the missing results were told as %v", faults)
	}
	f, err = keep.Open(filepath.Join(dir, "attempts", "below"))
	if err == nil {
		t.Error("a folder below a file was made")
	}
	if err := f.SaveSettings(keep.Defaults()); err == nil || !strings.Contains(err.Error(), "could not be saved") {
		t.Errorf("settings were saved below a file: %v", err)
	}
}

// made writes the attempt of a case that was ended at once.
func made(t *testing.T, path string, seed uint64, when time.Time, assessment bool) *attempt.Attempt {
	t.Helper()
	return takenOver(t, path, seed, when, assessment, false)
}

// takenOver saves an attempt that may have been begun by another one.
func takenOver(t *testing.T, path string, seed uint64, when time.Time, assessment, over bool) *attempt.Attempt {
	t.Helper()
	sc, err := scenarios.Open("steady-oozing-spine")
	if err != nil {
		t.Fatal(err)
	}
	run := play.New(sc.Case(seed, assessment), seed)
	for range 25 {
		run.Step()
	}
	grade := scoring.Grade{Points: 71.5, Passed: true, Reasons: []string{"\n  \"grade\": {\"passed\": false"}} // words that look like the end
	a := attempt.Of(sc, run, grade, attempt.By{Operator: "P-17", When: when, Mode: attempt.ModeOf(assessment), Breaks: attempt.Breaks{TakenOver: over}})
	if err := a.Save(path); err != nil {
		t.Fatal(err)
	}
	return a
}

func TestPastResultsAreListedNewestFirst(t *testing.T) {
	f := folder(t)
	first := f.AttemptPath("steady-oozing-spine", day)
	made(t, first, 3, day, false)
	if again := f.AttemptPath("steady-oozing-spine", day); again == first {
		t.Error("two attempts in one second get one path")
	}
	second := f.AttemptPath("steady-oozing-spine", day.Add(time.Hour))
	made(t, second, 18446744073709551615, day.Add(time.Hour), true)
	third := f.AttemptPath("steady-oozing-spine", day.Add(2*time.Hour))
	takenOver(t, third, 4, day.Add(2*time.Hour), false, true)
	past, faults := f.Past()
	want := []keep.Past{
		{ScenarioID: "steady-oozing-spine", Title: "Steady oozing in a spine operation", Mode: "practice", Operator: "P-17", When: "2031-05-14T10:30:00Z",
			Path: third, Version: past[0].Version, Seed: 4, Points: 71.5, Passed: true, TakenOver: true},
		{ScenarioID: "steady-oozing-spine", Title: "Steady oozing in a spine operation", Mode: "assessment", Operator: "P-17", When: "2031-05-14T09:30:00Z",
			Path: second, Version: past[0].Version, Seed: 18446744073709551615, Points: 71.5, Passed: true},
		{ScenarioID: "steady-oozing-spine", Title: "Steady oozing in a spine operation", Mode: "practice", Operator: "P-17", When: "2031-05-14T08:30:00Z",
			Path: first, Version: past[0].Version, Seed: 3, Points: 71.5, Passed: true},
	}
	if len(faults) != 0 || !slices.Equal(past, want) || past[0].Version < 1 {
		t.Errorf("got %+v and %v", past, faults)
	}
}

func TestDamagedAttemptsAreToldAndFatalToNothing(t *testing.T) {
	f := folder(t)
	path := f.AttemptPath("a", day)
	made(t, path, 1, day, false)
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for i, bad := range [][]byte{nil, []byte("{"), []byte("not json"), whole[:len(whole)/2], whole[:len(whole)-3], []byte(`{"when": 3}`), whole[len(whole)/3:]} {
		if err := os.WriteFile(filepath.Join(filepath.Dir(path), fmt.Sprintf("bad-%d.json", i)), bad, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(filepath.Join(filepath.Dir(path), "readme.txt"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	for range 2 {
		past, faults := f.Past()
		if len(past) != 1 || len(faults) != 7 {
			t.Errorf("%d results and %d faults: %v", len(past), len(faults), errors.Join(faults...))
		}
	}
	// A file that is mended is read again.
	if err := os.WriteFile(filepath.Join(filepath.Dir(path), "bad-0.json"), whole, 0o600); err != nil {
		t.Fatal(err)
	}
	if past, faults := f.Past(); len(past) != 2 || len(faults) != 6 {
		t.Errorf("after mending: %d results, %d faults", len(past), len(faults))
	}
}

// Two hundred results must not stall the window: the bound is generous for a slow disk, and a whole reading would break it.
func TestTwoHundredResultsAreListedQuickly(t *testing.T) {
	f := folder(t)
	path := f.AttemptPath("a", day)
	made(t, path, 1, day, false)
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	// As long as a real one: checkpoints and acts lie between head and grade.
	whole = []byte(strings.Replace(string(whole), "\n  \"quantities\"", "\n"+strings.Repeat(" ", 1<<20)+"  \"quantities\"", 1))
	for i := range 199 {
		if err := os.WriteFile(filepath.Join(filepath.Dir(path), fmt.Sprintf("copy-%d.json", i)), whole, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	began := time.Now()
	past, faults := f.Past()
	first := time.Since(began)
	if len(past) != 200 || len(faults) != 0 {
		t.Fatalf("%d results, %v", len(past), errors.Join(faults...))
	}
	began = time.Now()
	f.Past()
	second := time.Since(began)
	t.Logf("200 results: %v, and %v the second time", first, second)
	if first > 1500*time.Millisecond || second > 200*time.Millisecond {
		t.Errorf("200 results took %v, and %v the second time", first, second)
	}
}

func TestWhoIsAPseudonymOrACode(t *testing.T) {
	for _, good := range []string{"ab", "P-17", "k.r_9", "Möwe", strings.Repeat("a", 24)} {
		if why := keep.WhyNotWho(good); why != "" {
			t.Errorf("%q: %s", good, why)
		}
	}
	for bad, says := range map[string]string{"": "At least 2", "a": "At least 2", "Some Body": "pseudonymous", strings.Repeat("a", 25): "At most 24",
		"a/b": "cannot be used", "a\nb": "cannot be used", "<script>": "cannot be used"} {
		if why := keep.WhyNotWho(bad); !strings.Contains(why, says) {
			t.Errorf("%q: %q does not say %q", bad, why, says)
		}
	}
}

func TestAFileIsSetAsideAndNotDeleted(t *testing.T) {
	f := folder(t)
	for n := range 2 {
		path := filepath.Join(f.RunningFolder(), "case.journal")
		if err := os.WriteFile(path, []byte{byte(n)}, 0o600); err != nil {
			t.Fatal(err)
		}
		to, err := f.SetAside(path)
		if err != nil {
			t.Fatal(err)
		}
		if got, err := os.ReadFile(to); err != nil || got[0] != byte(n) {
			t.Errorf("%s: %v, %v", to, got, err)
		}
	}
	if _, err := f.SetAside(filepath.Join(f.RunningFolder(), "none")); err == nil || !strings.Contains(err.Error(), "by hand") {
		t.Errorf("got %v", err)
	}
}
