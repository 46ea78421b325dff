// Dropped files: what is taken, what is left with a reason, and that no frame waits for a disk.

package system

import (
	"bytes"
	"errors"
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"rouleau/cmd/rouleau-desk/ui"
)

// await calls frames until something was read.
func await(t *testing.T, d *Drops) []ui.Dropped {
	t.Helper()
	for range 500 {
		if got := d.Frame(nil); got != nil {
			return got
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Fatal("nothing was read in five seconds")
	return nil
}

func TestDroppedFiles(t *testing.T) {
	var d Drops
	if d.Frame(nil) != nil {
		t.Error("something came of nothing")
	}
	files := fstest.MapFS{
		"a.yaml":         {Data: []byte("title: x\n")},
		"big.yaml":       {Data: bytes.Repeat([]byte("x"), mostDropBytes+1)},
		"empty":          {},
		"folder/in.yaml": {Data: []byte("y")},
		"just.json":      {Data: bytes.Repeat([]byte("x"), mostDropBytes)},
		"pipe":           {Mode: fs.ModeNamedPipe},
	}
	d.Frame(files)
	got := await(t, &d)
	want := []struct{ name, fault string }{{"a.yaml", ""}, {"big.yaml", "larger"}, {"empty", ""}, {"folder", "not a file"}, {"just.json", ""}, {"pipe", "not a file"}}
	if len(got) != len(want) {
		t.Fatalf("%d dropped, want %d: %+v", len(got), len(want), got)
	}
	for i, w := range want {
		g := got[i]
		if g.Name != w.name || (g.Fault == "") != (w.fault == "") || !strings.Contains(g.Fault, w.fault) {
			t.Errorf("%s: %q, want %s: %q", g.Name, g.Fault, w.name, w.fault)
		}
		if g.Fault != "" && g.Data != nil {
			t.Errorf("%s comes with a reason and with its bytes", g.Name)
		}
	}
	if string(got[0].Data) != "title: x\n" || len(got[4].Data) != mostDropBytes {
		t.Errorf("the bytes are not those of the files: %q, %d", got[0].Data, len(got[4].Data))
	}
	if d.Frame(nil) != nil {
		t.Error("they came twice")
	}
}

func TestNotTooManyAtATime(t *testing.T) {
	files := fstest.MapFS{}
	for i := range mostDrops + 5 {
		files[string(rune('a'+i))] = &fstest.MapFile{}
	}
	got := readDropped(files)
	if len(got) != mostDrops+1 || !strings.Contains(got[mostDrops].Fault, "5 more") {
		t.Errorf("%d dropped, the last with %q", len(got), got[len(got)-1].Fault)
	}
}

// holed is a list as the window gives it when a file is gone: a hole, and an error.
type holed struct{ fstest.MapFS }

func (h holed) ReadDir(string) ([]fs.DirEntry, error) {
	entries, err := h.MapFS.ReadDir(".")
	return append(entries, nil), errors.Join(err, &fs.PathError{Op: "stat", Path: "secret", Err: fs.ErrNotExist})
}

func TestAHoleInTheList(t *testing.T) {
	got := readDropped(holed{fstest.MapFS{"a": {Data: []byte("1")}}})
	if len(got) != 2 || got[0].Data == nil || got[1].Fault == "" || strings.Contains(got[1].Fault, "secret") {
		t.Errorf("%+v", got)
	}
}

// stuck is a disk that does not answer.
type stuck struct{ until chan struct{} }

func (s stuck) Open(string) (fs.File, error) {
	<-s.until
	return nil, fs.ErrNotExist
}

func TestNoFrameWaitsForADisk(t *testing.T) {
	var d Drops
	s := stuck{make(chan struct{})}
	done := make(chan []ui.Dropped)
	go func() { done <- d.Frame(s) }()
	select {
	case got := <-done:
		if got != nil {
			t.Errorf("read already: %v", got)
		}
	case <-time.After(5 * time.Second):
		t.Fatal("the frame waits")
	}
	close(s.until)
	if got := await(t, &d); len(got) != 1 || got[0].Fault == "" {
		t.Errorf("%+v", got)
	}
}
