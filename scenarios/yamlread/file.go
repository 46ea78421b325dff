// This file reads the bytes of a file that anybody can have named: of a huge one no more than shows that it is too large, and of
// a pipe or a device nothing, since it may never end or never begin.

package yamlread

import (
	"errors"
	"io"
	"io/fs"
	"os"
)

var errNoFile = errors.New("it is a pipe or a device, not a file: save what comes from it as a file")

// ReadFile gives the content of a file, cut behind MaxBytes so that Read says it is too large. A folder is fs.ErrInvalid.
func ReadFile(name string) ([]byte, error) {
	info, err := os.Stat(name) // before it is opened: opening a pipe that nobody writes to waits for ever
	switch {
	case err != nil:
		return nil, err
	case info.IsDir():
		return nil, &fs.PathError{Op: "read", Path: name, Err: fs.ErrInvalid}
	case !info.Mode().IsRegular():
		return nil, &fs.PathError{Op: "read", Path: name, Err: errNoFile}
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, MaxBytes+1))
}
