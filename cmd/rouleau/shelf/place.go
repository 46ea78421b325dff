package shelf

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/natefinch/atomic"
)

// Files beside the book: keys, names, and what leaves it.

// Place writes a whole file or none, for its owner's eyes.
func Place(file string, content []byte) error {
	if info, err := os.Stat(file); err == nil && !info.Mode().IsRegular() {
		return wrong("ledger.no_file", file)
	}
	fresh, err := os.CreateTemp(filepath.Dir(file), ".rouleau-") // 0600
	if errors.Is(err, fs.ErrNotExist) {
		return wrong("ledger.no_folder", file, filepath.Dir(file))
	}
	if err != nil {
		return machine("ledger.no_write", file, plain(err))
	}
	_, err = bytes.NewReader(content).WriteTo(fresh)
	err = errors.Join(err, fresh.Sync(), fresh.Close())
	if err == nil {
		err = atomic.ReplaceFile(fresh.Name(), file)
	}
	if err != nil {
		os.Remove(fresh.Name())
		return machine("ledger.no_write", file, plain(err))
	}
	return nil
}
