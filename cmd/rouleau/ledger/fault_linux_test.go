package ledger

import (
	"fmt"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"rouleau/scoring/book/booktest"
)

// Faults of the machine that only a program of its own can have: a disk that takes no more, and a folder that may not be written to.

// limited bounds the files that this program may write, as a full disk does.
func limited(most string) error {
	if most == "" {
		return nil
	}
	n, err := strconv.ParseUint(most, 10, 64)
	if err != nil {
		return err
	}
	signal.Ignore(syscall.SIGXFSZ) // so that writing fails, and does not end the program
	return syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: n, Max: n})
}

func TestADiskThatTakesNoMore(t *testing.T) {
	k := started(t, filepath.Join(t.TempDir(), "book"))
	for _, most := range []int{300_000, 500_000, 1_000_000} {
		said := k.run(t, -1, fmt.Sprint(childLimit, "=", most))
		if !strings.Contains(said, "see whether it is full or failing") && !strings.Contains(said, "the disk is full") || !strings.Contains(said, "nothing was written") {
			t.Errorf("with %d bytes at most: %q", most, said)
		}
		before := len(k.told)
		if size := k.whole(t); size != 5+int64(before) {
			t.Errorf("%d records, %d acknowledged", size, before)
		}
	}
	if len(k.told) < 20 {
		t.Errorf("only %d records were written before the disk was full", len(k.told))
	}
	// and once there is room again, it can be written to
	before := len(k.told)
	k.run(t, time.Second)
	if k.whole(t); len(k.told) == before {
		t.Error("nothing is written any more")
	}
}

// nobody is somebody who owns nothing: the administrator of the machine may write everywhere.
const nobody = 65534

func TestAFolderThatMayNotBeWrittenTo(t *testing.T) {
	where, err := os.MkdirTemp("", "rouleau-read-only-") // outside of the test's own folder, into which nobody else may look
	if err != nil {
		t.Fatal(err)
	}
	defer os.RemoveAll(where)
	if err := os.Chmod(where, 0o755); err != nil {
		t.Fatal(err)
	}
	k := started(t, filepath.Join(where, "book"))
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	program, err := os.ReadFile(self)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(where, "program"), program, 0o755); err != nil {
		t.Fatal(err)
	}
	attempt := file(t, where, "attempt.json", attemptOf(t, done{seed: 7, by: booktest.Trainee}))
	if err := os.Chmod(attempt, 0o644); err != nil {
		t.Fatal(err)
	}
	owner := os.Getuid()
	if owner == 0 {
		owner = nobody
	}
	err = filepath.Walk(filepath.Join(where, "book"), func(path string, info os.FileInfo, err error) error {
		if err == nil && os.Getuid() == 0 {
			err = os.Chown(path, owner, owner)
		}
		if err == nil {
			err = os.Chmod(path, info.Mode().Perm()&0o500)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	defer os.Chmod(filepath.Join(where, "book"), 0o700)
	c := exec.Command(filepath.Join(where, "program"))
	c.Env = append(k.env, childReads+"=yes", childFile+"="+attempt)
	if os.Getuid() == 0 {
		c.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
	}
	out, err := c.CombinedOutput()
	if err == nil || !strings.Contains(string(out), "it may not be written to: nothing was written; ask for the right to, or give another place") {
		t.Errorf("%v: %s", err, out)
	}
	if !strings.HasPrefix(string(out), "sound 5\n") { // nobody needs to write to read
		t.Errorf("it cannot be verified: %s", out)
	}
	if size := k.whole(t); size != 5 {
		t.Errorf("%d records", size)
	}
}

// processorTime is what this program has taken of the processors so far.
func processorTime() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
