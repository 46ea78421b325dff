// Files dropped on the window are read beside the frames, since a disk may be slow and a drop may be anything; what is too
// large to be a scenario or an attempt, or no file, comes with the reason instead.

package system

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

const (
	mostDropBytes = 1 << 20
	mostDrops     = 16 // at a time
)

// Drops reads what is dropped. Its zero value is ready.
type Drops struct {
	read chan []ui.Dropped
}

// Frame takes what was dropped in this frame, if anything, and gives what has been read since.
func (d *Drops) Frame(files fs.FS) []ui.Dropped {
	if files != nil {
		if d.read == nil {
			d.read = make(chan []ui.Dropped, 64)
		}
		go func() { d.read <- readDropped(files) }()
	}
	select {
	case got := <-d.read:
		return got
	default:
		return nil
	}
}

func readDropped(files fs.FS) (got []ui.Dropped) {
	entries, err := fs.ReadDir(files, ".")
	for i, e := range entries {
		if e == nil { // the window's list has holes where one could not be looked at; err says why
			continue
		}
		if i == mostDrops {
			return append(got, ui.Dropped{Name: e.Name(), Fault: words.Say("drop.many", len(entries)-mostDrops, mostDrops)})
		}
		got = append(got, readOne(files, e))
	}
	if err != nil {
		got = append(got, ui.Dropped{Fault: words.Say("drop.unlisted", reason(err))})
	}
	return got
}

func readOne(files fs.FS, e fs.DirEntry) ui.Dropped {
	d := ui.Dropped{Name: e.Name()}
	info, err := e.Info()
	switch {
	case err != nil:
		d.Fault = words.Say("drop.unread", d.Name, reason(err))
		return d
	case !info.Mode().IsRegular(): // opening a pipe would wait for whoever writes into it
		d.Fault = words.Say("drop.folder", d.Name)
		return d
	case info.Size() > mostDropBytes:
		d.Fault = words.Say("drop.big", d.Name, mostDropBytes>>10)
		return d
	}
	f, err := files.Open(d.Name)
	if err != nil {
		d.Fault = words.Say("drop.unread", d.Name, reason(err))
		return d
	}
	defer f.Close()
	if real, ok := f.(*os.File); ok {
		if whole, err := filepath.Abs(real.Name()); err == nil {
			d.Path = whole
		}
	}
	data, err := io.ReadAll(io.LimitReader(f, mostDropBytes+1))
	switch {
	case err != nil:
		d.Fault = words.Say("drop.unread", d.Name, reason(err))
	case len(data) > mostDropBytes: // it grew meanwhile, or does not say how large it is
		d.Fault = words.Say("drop.big", d.Name, mostDropBytes>>10)
	default:
		d.Data = data
	}
	return d
}

// reason is what went wrong without the path, which the reader knows.
func reason(err error) error {
	var at *fs.PathError
	if errors.As(err, &at) {
		return at.Err
	}
	return err
}
