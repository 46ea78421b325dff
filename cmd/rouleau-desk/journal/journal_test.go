// What goes into a journal comes out again, whatever happens to the end of the file; and damage is told with its place.

package journal

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"rouleau/scenarios"
	"rouleau/sim"
)

var morning = time.Date(2031, 5, 14, 8, 30, 0, 0, time.UTC)

func head(t testing.TB) Head {
	t.Helper()
	sc, err := scenarios.Open("steady-oozing-spine")
	if err != nil {
		t.Fatal(err)
	}
	return HeadOf(sc, 1<<63+5, true, "P-17", morning)
}

// fill writes a line of every kind.
func fill(j *Journal) {
	j.Window(0, "go_on", 0, "")
	j.Act(sim.Action{Tick: 3, Do: sim.OpenSet, On: sim.CollectionSet}, "")
	j.Flush()
	j.Reached(20, 0, 0, 0)
	j.Flush()
	j.Act(sim.Action{Tick: 20, Do: sim.SetDrip, Value: 0.1 + 0.2}, "hands_are_busy")
	j.Act(sim.Action{Tick: 20, Do: sim.Reconcile, Item: uint8(sim.TallyWash), Value: 1200}, "")
	j.Act(sim.Action{Tick: 20, Do: sim.Note, Text: "a <line>\nof \"words\""}, "")
	j.Note(21, "late")
	j.Resumed(21, morning)
	j.Reached(1200, 1500*time.Millisecond, 2*time.Second, 0xfedcba9876543210)
	j.Flush()
}

func TestWhatIsWrittenIsRead(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "running")
	j := New(dir, head(t))
	fill(j)
	j.Close()
	r, err := Read(j.Path())
	if err != nil {
		t.Fatal(err)
	}
	if r.Head != head(t) {
		t.Errorf("head %+v", r.Head)
	}
	if r.Reached != 1200 || r.Spent != 1500*time.Millisecond || r.Lost != 2*time.Second || r.Resumed != 1 || r.Saved {
		t.Errorf("reached %d, spent %v, lost %v, resumed %d, saved %v", r.Reached, r.Spent, r.Lost, r.Resumed, r.Saved)
	}
	want := []Line{
		{Number: 2, Kind: Window, Do: "go_on"},
		{Number: 3, Kind: Act, Tick: 3, Act: sim.Action{Tick: 3, Do: sim.OpenSet, On: sim.CollectionSet}},
		{Number: 5, Kind: Act, Tick: 20, Act: sim.Action{Tick: 20, Do: sim.SetDrip, Value: 0.1 + 0.2}, Refused: "hands_are_busy"},
		{Number: 6, Kind: Act, Tick: 20, Act: sim.Action{Tick: 20, Do: sim.Reconcile, Item: uint8(sim.TallyWash), Value: 1200}},
		{Number: 7, Kind: Act, Tick: 20, Act: sim.Action{Tick: 20, Do: sim.Note, Text: "a <line>\nof \"words\""}},
		{Number: 8, Kind: Note, Tick: 21, Text: "late"},
		{Number: 9, Kind: Resumed, Tick: 21, When: "2031-05-14T08:30:00Z"},
		{Number: 10, Kind: Reached, Tick: 1200, Hash: 0xfedcba9876543210},
	}
	if fmt.Sprintf("%+v", r.Lines) != fmt.Sprintf("%+v", want) {
		t.Errorf("lines\n%+v, want\n%+v", r.Lines, want)
	}
	if _, err := r.Scenario(); err != nil {
		t.Error(err)
	}
	if info, err := os.Stat(dir); err != nil || info.Mode().Perm()&0o077 != 0 {
		t.Errorf("the folder is open to others: %v, %v", info.Mode(), err)
	}
}

// A file that ends anywhere behind its head is read up to its last whole line, and is gone on with from there.
func TestATornEndIsLeftOut(t *testing.T) {
	dir := t.TempDir()
	j := New(dir, head(t))
	fill(j)
	j.Close()
	whole, err := os.ReadFile(j.Path())
	if err != nil {
		t.Fatal(err)
	}
	first := bytes.IndexByte(whole, '\n') + 1
	for end := first; end <= len(whole); end++ {
		for _, tail := range []string{"", "\x00\x00\x00"} {
			r, err := Parse("x", append(bytes.Clone(whole[:end]), tail...))
			if err != nil {
				t.Fatalf("cut at %d: %v", end, err)
			}
			if want := int64(bytes.LastIndexByte(whole[:end], '\n') + 1); r.bytes != want {
				t.Fatalf("cut at %d: %d bytes are whole, want %d", end, r.bytes, want)
			}
		}
	}
	if err := os.WriteFile(j.Path(), whole[:len(whole)-7], 0o600); err != nil {
		t.Fatal(err)
	}
	again, err := Open(j.Path())
	if err != nil {
		t.Fatal(err)
	}
	again.Note(1300, "after")
	again.Flush()
	again.Close()
	r, err := Read(j.Path())
	if err != nil {
		t.Fatal(err)
	}
	if last := r.Lines[len(r.Lines)-1]; last.Text != "after" || last.Number != 10 || r.Reached != 1300 {
		t.Errorf("last line %+v, reached %d", last, r.Reached)
	}
}

func TestDamageIsToldWithItsPlace(t *testing.T) {
	line1 := string(marshal(line{Head: ptr(head(t))})) + "\n"
	for body, want := range map[string]string{
		"":                  "line 1",
		"{\"reached\":1}\n": "line 1",
		line1 + "{\"reached\":4}\n{\"reached\":3}\n":                           "line 3",
		line1 + "{\"reached\":4\n{\"reached\":5}\n":                            "line 2",
		line1 + "{\"reached\":-4}\n":                                           "line 2",
		line1 + "{\"act\":{\"tick\":1,\"do\":\"fly\",\"value\":0}}\n":          "\"fly\" is not an act",
		line1 + "{\"act\":{\"tick\":1,\"do\":\"fill\",\"on\":\"x\"}}\n":        "\"x\" is not a part",
		line1 + "{\"act\":{\"tick\":1,\"do\":\"reconcile\",\"item\":\"x\"}}\n": "line 2",
		line1 + "{\"act\":null}\n":                                             "no kind",
		line1 + "{\"reached\":5,\"more\":1}\n":                                 "more",
		line1 + "{\"reached\":5,\"hash\":\"x\"}\n":                             "hash",
		line1 + "{\"reached\":5} 7\n":                                          "something follows",
		line1 + "\n":                                                           "line 2",
		strings.Replace(line1, `"format":1`, `"format":2`, 1):                  "format 2",
		strings.Replace(line1, `"assessment"`, `"exam"`, 1):                    "exam",
	} {
		r, err := Parse("case.journal", []byte(body))
		damage := (*Damage)(nil)
		if r != nil || !errors.As(err, &damage) || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), "case.journal") {
			t.Errorf("%.60q: %v, want %q", strings.TrimPrefix(body, line1), err, want)
		}
	}
}

func ptr[T any](v T) *T { return &v }

func TestACaseThatCannotBeGoneOnWithIsRefused(t *testing.T) {
	for want, change := range map[string]func(h *Head){
		"version 0 of the model": func(h *Head) { h.Model = "0" },
		"cannot be read":         func(h *Head) { h.Scenario.Text = "format: 1\n" },
		"changed by hand":        func(h *Head) { h.Scenario.Text += "# \n" },
	} {
		h := head(t)
		change(&h)
		r := Record{Head: h}
		if sc, err := r.Scenario(); sc != nil || err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
	}
}

func TestOneWindowACase(t *testing.T) {
	dir := t.TempDir()
	j := New(dir, head(t))
	fill(j)
	if _, err := Open(j.Path()); err == nil || !strings.Contains(err.Error(), "another window") {
		t.Errorf("opened twice: %v", err)
	}
	if found, faults := List(dir); len(found) != 1 || !found[0].Busy || found[0].Reached != 1200 || len(faults) != 0 {
		t.Errorf("found %+v, %v", found, faults)
	}
	j.Close()
	if found, _ := List(dir); len(found) != 1 || found[0].Busy {
		t.Errorf("found %+v", found)
	}
	again, err := Open(j.Path())
	if err != nil {
		t.Fatal(err)
	}
	again.Saved()
	again.Remove()
	if left, _ := os.ReadDir(dir); len(left) != 0 {
		t.Errorf("left: %v", left)
	}
}

func TestTheListTidiesWhatIsSavedAndKeepsWhatIsDamaged(t *testing.T) {
	dir := t.TempDir()
	for range 3 {
		j := New(dir, head(t))
		fill(j)
		j.Close()
	}
	entries, _ := filepath.Glob(filepath.Join(dir, "*"+extension))
	if len(entries) != 3 {
		t.Fatalf("%v", entries)
	}
	j, err := Open(entries[0])
	if err != nil {
		t.Fatal(err)
	}
	j.Saved()
	j.Close()
	if err := os.WriteFile(entries[1], []byte("x\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	found, faults := List(dir)
	if len(found) != 1 || len(faults) != 1 || found[0].Path != entries[2] {
		t.Errorf("found %+v, faults %v", found, faults)
	}
	if left, _ := filepath.Glob(filepath.Join(dir, "*"+extension)); len(left) != 2 {
		t.Errorf("left %v", left)
	}
	if found, faults := List(filepath.Join(dir, "none")); found != nil || faults != nil {
		t.Errorf("%v, %v", found, faults)
	}
}

// A place that cannot be written to is told once, and what could not be written is written when it can be.
func TestAFullDiskIsToldOnceAndNothingIsLost(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "running")
	if err := os.WriteFile(dir, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	j := New(dir, head(t))
	fill(j)
	if n := j.News(); !strings.Contains(n, "cannot be kept") {
		t.Errorf("news %q", n)
	}
	j.retryAt = time.Time{}
	j.Note(1200, "still full")
	j.Flush()
	if n := j.News(); n != "" {
		t.Errorf("told twice: %q", n)
	}
	if err := os.Remove(dir); err != nil {
		t.Fatal(err)
	}
	j.retryAt = time.Time{}
	j.Flush()
	if n := j.News(); !strings.Contains(n, "kept again") {
		t.Errorf("news %q", n)
	}
	// now a disk that fails with the file open
	good := j.file
	bad, err := os.Open(j.Path())
	if err != nil {
		t.Fatal(err)
	}
	j.file = bad
	j.Note(1201, "fails")
	j.Reached(1205, 0, 0, 0)
	j.Flush()
	bad.Close()
	j.file, j.retryAt = good, time.Time{}
	j.Note(1206, "works")
	j.Flush()
	j.Close()
	r, err := Read(j.Path())
	if err != nil {
		t.Fatal(err)
	}
	var notes []string
	for _, l := range r.Lines {
		if l.Kind == Note {
			notes = append(notes, l.Text)
		}
	}
	if got := strings.Join(notes, ","); got != "late,still full,fails,works" || r.Reached != 1206 {
		t.Errorf("notes %q, reached %d", got, r.Reached)
	}
}

func TestACaseThatWasNotBegunLeavesNoFile(t *testing.T) {
	dir := t.TempDir()
	j := New(dir, head(t))
	j.Window(0, "go_on", 0, "")
	j.Close()
	if left, _ := os.ReadDir(dir); len(left) != 0 {
		t.Errorf("left: %v", left)
	}
}

func TestRestartBeginsAFileOfItsOwn(t *testing.T) {
	dir := t.TempDir()
	j := New(dir, head(t))
	fill(j)
	j.Restart(9, morning.Add(time.Hour))
	fill(j)
	j.Saved()
	j.Restart(10, morning.Add(2*time.Hour))
	found, faults := List(dir)
	if len(found) != 1 || len(faults) != 0 || found[0].Head.Seed != 1<<63+5 {
		t.Errorf("found %+v, %v", found, faults)
	}
}

func TestAFrameAllocatesNothing(t *testing.T) {
	j := New(t.TempDir(), head(t))
	fill(j)
	at := int64(1200)
	if n := testing.AllocsPerRun(100, func() {
		at++
		j.Reached(at, time.Second, 0, 0)
		j.Flush()
	}); n != 0 {
		t.Errorf("%.1f allocations", n)
	}
	j.Close()
}

func FuzzParse(f *testing.F) {
	j := New(f.TempDir(), head(f))
	fill(j)
	j.Close()
	whole, err := os.ReadFile(j.Path())
	if err != nil {
		f.Fatal(err)
	}
	first := bytes.IndexByte(whole, '\n') + 1
	short := head(f)
	short.Scenario.Text = "x" // or each turn would be spent on the text of the scenario
	start := append(marshal(line{Head: &short}), '\n')
	f.Add([]byte{}, false)
	f.Add(whole[first:], true)
	f.Add([]byte("{\"reached\":99999999999999999}\n{\"act\":{\"tick\":1,\"do\":\"fill\",\"value\":\"NaN\"}}\n"), true)
	f.Fuzz(func(t *testing.T, body []byte, headed bool) {
		data := body
		if headed {
			data = append(bytes.Clone(start), body...)
		}
		r, err := Parse("x", data)
		if (r == nil) != (err != nil) {
			t.Fatal("neither a record nor a damage")
		}
		if r == nil {
			return
		}
		at := int64(0)
		for _, l := range r.Lines {
			if l.Tick < at || l.Tick > r.Reached || l.Kind == 0 {
				t.Fatalf("line %+v, reached %d", l, r.Reached)
			}
			at = l.Tick
		}
	})
}
