package attempt

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// short is a case of a few minutes, so that it can be played again many times.
var short = filepath.Join("testdata", "short.yaml")

// recorded is that case played by steady, with a note and a refused act in it, saved and not yet read.
var recorded = sync.OnceValues(func() ([]byte, error) {
	sc, err := scenarios.Load(short)
	if err != nil {
		return nil, err
	}
	run := play.New(sc.Case(7, true), 7)
	run.Do(sim.Action{Do: sim.Note, Text: "started <on time> & rested\n"})
	run.Do(sim.Action{Do: sim.Empty}) // refused: nothing is open yet
	run.ToEnd(operators.NewSteady(operators.SheetOf(sc, &run.Case)))
	grade := scoring.Judge(sc, run, scoring.PlayYardstick(sc, 7, true))
	a := Of(sc, run, grade, By{Operator: "steady", When: time.Date(2031, 5, 14, 9, 0, 0, 0, time.UTC), Mode: Assessment})
	return a.Encode(), nil
})

func file(t testing.TB) []byte {
	t.Helper()
	data, err := recorded()
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func read(t testing.TB, data []byte) *Attempt {
	t.Helper()
	a, err := Parse("attempt.json", data)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func replayed(t testing.TB, a *Attempt) *Report {
	t.Helper()
	r, err := Replay(a)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestWrittenAndReadIsTheSame(t *testing.T) {
	data := file(t)
	a := read(t, data)
	if again := a.Encode(); !bytes.Equal(again, data) {
		t.Fatal("an attempt that was read is written otherwise")
	}
	if bytes.Contains(data, []byte("\r")) || !bytes.HasSuffix(data, []byte("}\n")) {
		t.Error("line ends are not LF alone")
	}
	if a.Actions[0].Text != "started <on time> & rested\n" || !a.Ended || a.Mode != Assessment || a.Seed != 7 {
		t.Errorf("read %+v", a.Actions[0])
	}
	if len(a.Actions) < 50 || len(a.Checkpoints) < 100 || len(a.Quantities) < 24 {
		t.Errorf("%d acts, %d checkpoints, %d quantities: too few for a whole case", len(a.Actions), len(a.Checkpoints), len(a.Quantities))
	}
}

func TestReplayIsTheSame(t *testing.T) {
	a := read(t, file(t))
	r := replayed(t, a)
	if !r.Same() || len(r.Wording) > 0 {
		t.Fatalf("parting %+v, refused %+v, grade %v, wording %v, sealed %v, %d to %d", r.Parting, r.Refused, r.Grade, r.Wording, r.Sealed, r.LengthRecorded, r.LengthNow)
	}
	if r.Points != len(a.Checkpoints) || r.Hashes < int(a.LengthTicks/hashEvery) {
		t.Errorf("compared %d checkpoints and %d hashes", r.Points, r.Hashes)
	}
}

// An unfinished run, saved in the middle of a second with an act after the last tick, can be played again too.
func TestUnfinishedRun(t *testing.T) {
	sc, err := scenarios.Load(short)
	if err != nil {
		t.Fatal(err)
	}
	run := play.New(sc.Case(3, false), 3)
	run.Do(sim.Action{Do: sim.Decide, Value: float64(sim.SetUpToProcess)})
	for range 1213 {
		run.Step()
	}
	run.Do(sim.Action{Do: sim.OpenSet, On: sim.CollectionSet})
	grade := scoring.Judge(sc, run, scoring.PlayYardstick(sc, 3, false))
	a := read(t, Of(sc, run, grade, By{Operator: "a trainee", When: time.Unix(0, 0), Mode: Practice}).Encode())
	if r := replayed(t, a); !r.Same() || a.Ended || a.LengthTicks != 1213 || len(a.Actions) != 2 {
		t.Errorf("%+v", r)
	}
}

// A run that the clock ends has its last tick at the end; one ended by hand has an act there.
func TestRunEndedByTheClock(t *testing.T) {
	sc, err := scenarios.Load(short)
	if err != nil {
		t.Fatal(err)
	}
	run := play.New(sc.Case(5, false), 5)
	run.Do(sim.Action{Do: sim.Decide, Value: float64(sim.CollectOnly)})
	run.ToEnd(operators.Idle{})
	grade := scoring.Judge(sc, run, scoring.PlayYardstick(sc, 5, false))
	a := read(t, Of(sc, run, grade, By{Operator: "idle", When: time.Unix(0, 0), Mode: Practice}).Encode())
	if r := replayed(t, a); !r.Same() || !a.Ended || a.LengthTicks != run.Case.LastTick {
		t.Errorf("%+v", r)
	}
}

// A new field of a grade must be kept too: every field is set here to something of its own and must come out otherwise
// when it is changed.
func TestEveryFieldOfAGradeIsKept(t *testing.T) {
	var g scoring.Grade
	set(reflect.ValueOf(&g).Elem())
	base := GradeOf(g)
	count := 0
	each(reflect.ValueOf(&g).Elem(), func(v reflect.Value, name string) {
		old := reflect.New(v.Type()).Elem()
		old.Set(v)
		switch v.Kind() {
		case reflect.Bool:
			v.SetBool(!v.Bool())
		case reflect.String:
			v.SetString(v.String() + "x")
		case reflect.Float64:
			v.SetFloat(v.Float() + 1e-9)
		case reflect.Int64:
			v.SetInt(v.Int() + 1)
		default:
			t.Fatalf("%s is a %s: say here how to change it", name, v.Kind())
		}
		now := GradeOf(g)
		values, wording := gradesDiffer(&base, &now)
		if len(values)+len(wording) == 0 {
			t.Errorf("%s is not kept or not compared", name)
		}
		v.Set(old)
		count++
	})
	if count < 25 {
		t.Errorf("only %d fields were tried", count)
	}
}

// set gives every list one entry.
func set(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			set(v.Field(i))
		}
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 1, 1))
		set(v.Index(0))
	}
}

func each(v reflect.Value, visit func(v reflect.Value, name string)) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			f := v.Type().Field(i).Name
			each(v.Field(i), func(v reflect.Value, name string) { visit(v, f+"."+name) })
		}
	case reflect.Slice:
		each(v.Index(0), visit)
	default:
		visit(v, "")
	}
}

func TestSave(t *testing.T) {
	a := read(t, file(t))
	folder := t.TempDir()
	path := filepath.Join(folder, "attempt.json")
	for range 2 { // the second time over the first
		if err := a.Save(path); err != nil {
			t.Fatal(err)
		}
	}
	b, err := Load(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(b.Encode(), file(t)) {
		t.Error("what was saved is not what was read")
	}
	if entries, _ := os.ReadDir(folder); len(entries) != 1 {
		t.Errorf("saving left %d files", len(entries))
	}
}

func TestSaveSaysWhyNot(t *testing.T) {
	a := read(t, file(t))
	folder := t.TempDir()
	taken := filepath.Join(folder, "file")
	if err := os.WriteFile(taken, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{
		filepath.Join(folder, "nowhere", "a.json"): "is not there: make it first",
		filepath.Join(taken, "a.json"):             "is a file: choose a folder",
		folder:                                     "not a file that can be written",
	} {
		if err := a.Save(path); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", path, err, want)
		}
	}
	if got, _ := os.ReadFile(taken); string(got) != "mine" {
		t.Error("a file in the way was touched")
	}
}

// A disk that is full and a folder that may not be written to, which a test run by root cannot have in earnest.
func TestSaveThatFailsLeavesWhatWasThere(t *testing.T) {
	a := read(t, file(t))
	path := filepath.Join(t.TempDir(), "attempt.json")
	if err := os.WriteFile(path, []byte("before"), 0o600); err != nil {
		t.Fatal(err)
	}
	whole := writeWhole
	defer func() { writeWhole = whole }()
	for want, trouble := range map[string]error{
		"may not be written to":        &fs.PathError{Op: "open", Path: path, Err: fs.ErrPermission},
		"see whether the disk is full": errors.New("no space left on device"),
	} {
		writeWhole = func(string, []byte) error { return trouble }
		err := a.Save(path)
		if err == nil || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), "nothing was saved") {
			t.Errorf("%v, want %q", err, want)
		}
		if got, _ := os.ReadFile(path); string(got) != "before" {
			t.Error("the old file was touched")
		}
	}
}

// A link stays a link, and a file takes the rights it had: what is saved anew can be read by whoever could read it before.
func TestSaveThroughALinkAndOverAFile(t *testing.T) {
	a := read(t, file(t))
	folder := t.TempDir()
	path, link := filepath.Join(folder, "attempt.json"), filepath.Join(folder, "link.json")
	if err := os.WriteFile(path, []byte("before"), 0o640); err != nil {
		t.Fatal(err)
	}
	to := path
	if err := os.Symlink(path, link); err == nil { // on some systems only an administrator may
		to = link
	}
	if err := a.Save(to); err != nil {
		t.Fatal(err)
	}
	info, err := os.Lstat(path)
	if err != nil || info.Size() < 1000 || runtime.GOOS != "windows" && info.Mode() != 0o640 {
		t.Errorf("%v, %v", info, err)
	}
	if entries, _ := os.ReadDir(folder); to == link && len(entries) != 2 || to == path && len(entries) != 1 {
		t.Errorf("%v: something was left beside it", entries)
	}
	if info, err := os.Lstat(link); to == link && (err != nil || info.Mode()&fs.ModeSymlink == 0) {
		t.Errorf("the link is gone: %v", err)
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	if err := CanSave(to); to == link && (err == nil || !strings.Contains(err.Error(), "a link to a file that is not there")) {
		t.Error(err)
	}
	for _, name := range []string{"", "-"} {
		if err := CanSave(name); err == nil || !strings.Contains(err.Error(), "no name for a file") {
			t.Errorf("%q: %v", name, err)
		}
	}
}
