package attempt

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"

	"github.com/natefinch/atomic"
)

// Saving: the whole file or none of it.

// writeWhole puts a file in place at once. It can be replaced by tests, which cannot fill a disk.
var writeWhole = func(path string, content []byte) error { return atomic.WriteFile(path, bytes.NewReader(content)) }

// CanSave says beforehand what would keep Save from writing to a path, as far as can be seen without writing.
func CanSave(path string) error {
	folder := filepath.Dir(path)
	switch info, err := os.Stat(folder); {
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%s: the folder %s is not there: make it first, or choose another", path, folder)
	case err == nil && !info.IsDir():
		return fmt.Errorf("%s: %s is a file: choose a folder", path, folder)
	}
	if info, err := os.Stat(path); err == nil && !info.Mode().IsRegular() {
		return fmt.Errorf("%s: this is not a file that can be written: choose another name", path)
	}
	return nil
}

// Save writes the file. A reader finds the old file or the new one, never half of it.
func (a *Attempt) Save(path string) error {
	if err := CanSave(path); err != nil {
		return err
	}
	err := writeWhole(path, a.Encode())
	folder := filepath.Dir(path)
	switch {
	case err == nil:
		return nil
	case errors.Is(err, fs.ErrPermission) || !writable(folder):
		return fmt.Errorf("%s: nothing was saved: the folder %s may not be written to, choose another", path, folder)
	}
	return fmt.Errorf("%s: nothing was saved, and what was there before is as it was; the machine says: %v; see whether the disk is full", path, err)
}

// writable tells whether a file can be made in a folder; the library that saves does not say why it could not.
func writable(folder string) bool {
	f, err := os.CreateTemp(folder, ".rouleau-*")
	if err != nil {
		return !errors.Is(err, fs.ErrPermission) && !errors.Is(err, syscall.EROFS)
	}
	f.Close()
	return os.Remove(f.Name()) == nil
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
