//go:build unix

package yamlread

import (
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"syscall"
	"testing"
	"time"
)

// What never ends, never begins or is huge is refused at once.
func TestEndlessFilesAreNotRead(t *testing.T) {
	dir := t.TempDir()
	pipe := filepath.Join(dir, "pipe.yaml")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(dir, "link.yaml")
	if err := os.Symlink("/dev/zero", link); err != nil {
		t.Fatal(err)
	}
	for _, file := range []string{pipe, "/dev/zero", link} {
		read := make(chan error, 1)
		go func() {
			_, err := ReadFile(file)
			read <- err
		}()
		select {
		case err := <-read:
			if !errors.Is(err, errNoFile) {
				t.Errorf("%s: %v", file, err)
			}
		case <-time.After(5 * time.Second):
			t.Fatalf("%s: the reader waits", file)
		}
	}
	huge := filepath.Join(dir, "huge.yaml")
	f, err := os.Create(huge)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := f.Truncate(10 << 30); err != nil { // takes no room on a disk
		t.Fatal(err)
	}
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	data, err := ReadFile(huge)
	runtime.ReadMemStats(&after)
	if err != nil || len(data) != MaxBytes+1 || after.TotalAlloc-before.TotalAlloc > 4<<20 {
		t.Errorf("%d bytes read, %v, %d bytes of memory", len(data), err, after.TotalAlloc-before.TotalAlloc)
	}
	if faults := Decode(huge, data, new(sample)); len(faults) != 1 || faults[0].Message != "the file is too large: more than 256 KiB" {
		t.Errorf("%v", faults)
	}
}
