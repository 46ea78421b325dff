// The file: made late, written in whole lines with one plain write a frame, put on the disk now and then by a goroutine of
// its own. A disk that is full or read-only is told once, and the case goes on; what could not be written is kept and tried
// again.

package journal

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"rouleau/assets/words"
)

const (
	extension  = ".journal"
	retryAfter = 2 * time.Second
	syncEvery  = time.Second // what a power cut may cost
)

// Flush writes what was gathered. After it returns, a kill of the program loses nothing of it.
func (j *Journal) Flush() {
	if len(j.pending) == 0 && (j.file == nil || len(j.reached) == 0) {
		return // how far a case came in which nothing was done is not worth a file
	}
	if j.failed && time.Now().Before(j.retryAt) {
		return
	}
	if err := j.write(); err != nil {
		if !j.failed {
			j.news = words.Say("journal.fails", reasonOf(err))
		}
		j.failed, j.retryAt = true, time.Now().Add(retryAfter)
		return
	}
	if j.failed {
		j.failed, j.news = false, words.Say("journal.works")
	}
}

// News is what the person should hear about the writing, once; "" when there is nothing.
func (j *Journal) News() string {
	n := j.news
	j.news = ""
	return n
}

func (j *Journal) write() error {
	if j.file == nil {
		if err := j.begin(); err != nil {
			return err
		}
	}
	j.out = append(append(j.out[:0], j.pending...), j.reached...)
	// written at a place of its own, so that half a line that a full disk left is overwritten
	if _, err := j.file.WriteAt(j.out, j.size); err != nil {
		_ = j.file.Truncate(j.size)
		return err
	}
	j.size += int64(len(j.out))
	j.pending, j.reached = j.pending[:0], j.reached[:0]
	j.sync.soon()
	return nil
}

// begin makes the file, with its head.
func (j *Journal) begin() error {
	if err := os.MkdirAll(j.folder, 0o700); err != nil {
		return err
	}
	name := j.head.Scenario.ID + "-" + strings.NewReplacer("-", "", ":", "").Replace(j.head.Started)
	for n := 1; ; n++ {
		path := filepath.Join(j.folder, name+extension)
		if n > 1 {
			path = filepath.Join(j.folder, name+"-"+strconv.Itoa(n)+extension)
		}
		// locked before it is there, so that no other window offers it
		l, err := lockFor(path)
		if errors.Is(err, errBusy) {
			continue
		}
		if err != nil {
			return err
		}
		f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o600)
		if errors.Is(err, fs.ErrExist) {
			l.release(false)
			continue
		}
		if err != nil {
			l.release(true)
			return err
		}
		j.path, j.lock, j.file, j.size = path, l, f, 0
		j.sync = startSync(f)
		j.pending = append(append(marshal(line{Head: &j.head}), '\n'), j.pending...)
		return nil
	}
}

// Close writes what is left and leaves the file for another time.
func (j *Journal) Close() {
	j.retryAt = time.Time{}
	if j.file != nil || j.failed { // a case that was never flushed was not begun
		j.Flush()
	}
	if j.file != nil {
		_ = j.file.Sync()
	}
	j.leave()
	if j.lock != nil {
		j.lock.release(false)
		j.lock = nil
	}
}

// Remove ends a journal that is not needed any more.
func (j *Journal) Remove() {
	j.leave()
	j.pending, j.reached = nil, nil
	if j.lock == nil {
		return
	}
	_ = os.Remove(j.path) // one that stays is marked as saved, and tidied away later
	j.lock.release(true)
	j.lock = nil
}

// leave lets go of the file.
func (j *Journal) leave() {
	if j.file == nil {
		return
	}
	j.sync.stop()
	j.file.Close()
	j.file, j.sync = nil, nil
}

// Restart leaves the case for another run of it. What was saved is removed, the rest kept.
func (j *Journal) Restart(seed uint64, started time.Time) {
	if j.saved {
		j.Remove()
	} else {
		j.Close()
	}
	head := j.head
	head.Seed, head.Started = seed, stamp(started)
	*j = Journal{folder: j.folder, head: head}
}

// reasonOf gives what the machine says, without the names it says it of.
func reasonOf(err error) error {
	if inner := (*fs.PathError)(nil); errors.As(err, &inner) {
		return inner.Err
	}
	return err
}

// syncer puts a file on the disk now and then, away from the frames.
type syncer struct{ wake, quit, end chan struct{} }

func startSync(f *os.File) *syncer {
	s := &syncer{wake: make(chan struct{}, 1), quit: make(chan struct{}), end: make(chan struct{})}
	go func() {
		defer close(s.end)
		for {
			select {
			case <-s.quit:
				return
			case <-s.wake:
				_ = f.Sync() // that a disk cannot be written to shows at the next write
			}
			select {
			case <-s.quit:
				return
			case <-time.After(syncEvery):
			}
		}
	}()
	return s
}

func (s *syncer) soon() {
	select {
	case s.wake <- struct{}{}:
	default: // it is on its way already
	}
}

func (s *syncer) stop() {
	close(s.quit)
	<-s.end
}
