// One window a case: a lock that the system lets go of when the program ends, however it ends.

package journal

import (
	"errors"
	"os"
	"time"

	"github.com/gofrs/flock"
)

var errBusy = errors.New("another window has it")

// lock is held beside the journal, in a file of its own, since some systems let nobody read a locked file.
type lock struct {
	path string
	held *flock.Flock
}

func lockPath(path string) string { return path + ".lock" }

func lockFor(path string) (*lock, error) {
	l := &lock{path: lockPath(path), held: flock.New(lockPath(path))}
	const tries = 4 // another window that only looks whether it is free has it for a moment
	for i := range tries {
		got, err := l.held.TryLock()
		switch {
		case errors.Is(err, errors.ErrUnsupported):
			return l, nil // such a system has one window
		case err != nil:
			return nil, err
		case got:
			return l, nil
		}
		if i < tries-1 {
			time.Sleep(20 * time.Millisecond)
		}
	}
	return nil, errBusy
}

// release lets go. The file is removed only together with the journal, or two windows could hold locks of one name.
func (l *lock) release(remove bool) {
	if remove {
		_ = os.Remove(l.path)
	}
	_ = l.held.Unlock()
	if remove {
		_ = os.Remove(l.path) // where an open file cannot be removed
	}
}

// busy tells whether somebody holds the lock of a journal.
func busy(path string) bool {
	if _, err := os.Stat(lockPath(path)); err != nil {
		return false
	}
	l := flock.New(lockPath(path))
	got, err := l.TryLock()
	if got {
		_ = l.Unlock()
	}
	return !got && err == nil
}
