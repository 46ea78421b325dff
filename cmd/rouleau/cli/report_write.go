package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"

	"github.com/natefinch/atomic"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/page"
	"rouleau/cmd/rouleau/report"
	"rouleau/scoring/attempt"
)

// This file writes what a report makes: all of it or nothing, and what would keep it from that is said before anything is played.

// output is a file that report can write.
type output struct {
	flag, path string
	usage      string // the key of its words
	make       func(r *report.Report, p func() *page.Page) ([]byte, error)
	private    bool // only its owner may read it
	content    []byte
}

// canWrite says beforehand what would keep the files from being written, as far as can be seen without writing.
func canWrite(read string, wanted []*output) error {
	for i, o := range wanted {
		if err := attempt.CanSave(o.path); err != nil {
			return wrong(err.Error())
		}
		if sameFile(o.path, read) {
			return wrong(words.Say("report.same_file", o.path))
		}
		for _, other := range wanted[:i] {
			if sameFile(o.path, other.path) {
				return wrong(words.Say("report.same_name", o.path, other.flag, o.flag))
			}
		}
	}
	return nil
}

// tryFolders tries whether the folders take new files, and the names.
func tryFolders(wanted []*output) error {
	for _, o := range wanted {
		if _, err := os.Lstat(o.path); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return wrong(cannot(o.path, err))
		}
		beside, err := fresh(o.path)
		if err != nil {
			return wrong(cannot(o.path, err))
		}
		beside.Close()
		os.Remove(beside.Name())
	}
	return nil
}

// fresh makes a new file in the folder of another, which its maker alone can read.
func fresh(path string) (*os.File, error) {
	return os.CreateTemp(filepath.Dir(path), ".rouleau-*.new")
}

// cannot says why a file cannot be written, and what to do about it.
func cannot(path string, err error) string {
	for _, k := range [...]struct {
		is  error
		key string
	}{{fs.ErrPermission, "report.may_not"}, {syscall.EROFS, "report.read_only"}, {syscall.ENOSPC, "report.no_room"}, {syscall.ENAMETOOLONG, "report.long_name"}} {
		if errors.Is(err, k.is) {
			return words.Say(k.key, path)
		}
	}
	return words.Say("author.write_failed", path, reason(err))
}

// writeAll writes all files, or none: first each under another name beside its own, and when all are whole each takes its name.
func (s *session) writeAll(wanted []*output) error {
	ready := make([]string, len(wanted))
	defer func() {
		for _, name := range ready {
			if name != "" {
				os.Remove(name)
			}
		}
	}()
	for i, o := range wanted {
		name, err := o.prepare()
		if ready[i] = name; err != nil {
			return trouble(words.Say("report.nothing_written", cannot(o.path, err)))
		}
	}
	var written []string
	for i, o := range wanted {
		if err := atomic.ReplaceFile(ready[i], o.path); err != nil {
			text := cannot(o.path, err)
			if len(written) == 0 {
				return trouble(words.Say("report.nothing_written", text))
			}
			return trouble(words.Say("report.written_before", text, strings.Join(written, ", ")))
		}
		ready[i] = ""
		written = append(written, o.path)
	}
	for _, path := range written {
		fmt.Fprintln(&s.out, words.Say("author.schema_done", path))
	}
	return nil
}

// prepare writes the whole file under another name and says which, also where it did not come to its end.
func (o *output) prepare() (name string, err error) {
	f, err := fresh(o.path)
	if err != nil {
		return "", err
	}
	if _, err = f.Write(o.content); err == nil {
		err = f.Sync()
	}
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err == nil && !o.private { // a new file is its writer's alone
		err = os.Chmod(f.Name(), 0o644)
	}
	return f.Name(), err
}

// sameFile says whether two paths lead to one file, which need not be there yet.
func sameFile(one, other string) bool {
	a, err1 := os.Stat(one)
	b, err2 := os.Stat(other)
	if err1 == nil && err2 == nil {
		return os.SameFile(a, b)
	}
	if (err1 == nil) != (err2 == nil) {
		return false
	}
	a, err1 = os.Stat(filepath.Dir(one))
	b, err2 = os.Stat(filepath.Dir(other))
	return err1 == nil && err2 == nil && os.SameFile(a, b) && strings.EqualFold(filepath.Base(one), filepath.Base(other)) // some systems do not tell letters by their size
}
