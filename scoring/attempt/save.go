package attempt

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"syscall"

	"github.com/natefinch/atomic"
)

// Saving: the whole file or none of it.

// writeWhole puts a file in place at once. It can be replaced by tests, which cannot fill a disk.
var writeWhole = func(path string, content []byte) error {
	beside, err := fileBeside(path)
	if err != nil {
		return err
	}
	_, err = beside.Write(content)
	if err == nil {
		err = beside.Sync()
	}
	if closed := beside.Close(); err == nil {
		err = closed
	}
	if info, old := os.Stat(path); err == nil && old == nil {
		err = os.Chmod(beside.Name(), info.Mode().Perm())
	}
	if err == nil {
		err = atomic.ReplaceFile(beside.Name(), path)
	}
	if err != nil {
		os.Remove(beside.Name())
	}
	return err
}

// fileBeside makes a new file in the folder of another. Its rights are those that this person's new files have, so that who
// assesses can read what somebody else saved.
func fileBeside(path string) (*os.File, error) {
	for n := os.Getpid(); ; n++ {
		f, err := os.OpenFile(path+"."+strconv.Itoa(n)+".new", os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		if !errors.Is(err, fs.ErrExist) {
			return f, err
		}
	}
}

// CanSave says beforehand what would keep Save from writing to a path, as far as can be seen without writing.
func CanSave(path string) error {
	if path == "" || path == "-" {
		return fmt.Errorf("%q is no name for a file: give the path of the file to save to", path)
	}
	folder := filepath.Dir(path)
	switch info, err := os.Stat(folder); {
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%s: the folder %s is not there: make it first, or choose another", path, folder)
	case err == nil && !info.IsDir():
		return fmt.Errorf("%s: %s is a file: choose a folder", path, folder)
	}
	info, err := os.Stat(path)
	if err != nil {
		if _, link := os.Lstat(path); link == nil && errors.Is(err, fs.ErrNotExist) {
			return fmt.Errorf("%s: this is a link to a file that is not there: choose another name", path)
		}
		return nil
	}
	if !info.Mode().IsRegular() {
		return fmt.Errorf("%s: this is not a file that can be written: choose another name", path)
	}
	// Replacing a file asks only for rights in its folder, yet who made it read-only wants to keep it.
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if errors.Is(err, fs.ErrPermission) {
		return fmt.Errorf("%s: this file is there already and may not be written to: choose another name", path)
	}
	if err == nil {
		f.Close()
	}
	return nil
}

// Save writes the file. A reader finds the old file or the new one, never half of it.
func (a *Attempt) Save(path string) error {
	if err := CanSave(path); err != nil {
		return err
	}
	to := path
	if behind, err := filepath.EvalSymlinks(path); err == nil {
		to = behind // a link stays a link
	}
	err := writeWhole(to, a.Encode())
	switch {
	case err == nil:
		return nil
	case errors.Is(err, fs.ErrPermission) || errors.Is(err, syscall.EROFS):
		return fmt.Errorf("%s: nothing was saved: the folder %s may not be written to, choose another", path, filepath.Dir(to))
	}
	if inner := (*fs.PathError)(nil); errors.As(err, &inner) {
		err = inner.Err // without the name of a file that nobody has seen
	}
	return fmt.Errorf("%s: nothing was saved, and what was there before is as it was; the machine says: %v; see whether the disk is full", path, err)
}

// readAtMost reads a file that is no larger than a bound, and one byte more of a larger one.
func readAtMost(path string, most int64) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, most+1))
}
