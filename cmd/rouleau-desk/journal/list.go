// What can be gone on with: the journals of a folder.

package journal

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"rouleau/assets/words"
)

// Found is a journal that waits in the folder.
type Found struct {
	Path    string
	Head    Head
	Reached int64 // tick
	Resumed int   // times so far
	Busy    bool  // another window is playing it
}

// List gives the journals of a folder, the newest first, and the faults of those that cannot be read; these stay where they
// are. One whose attempt is safe elsewhere is tidied away. A folder that is not there holds none.
func List(folder string) ([]Found, []error) {
	entries, err := os.ReadDir(folder)
	if err != nil {
		if errors.Is(err, fs.ErrNotExist) {
			return nil, nil
		}
		return nil, []error{errors.New(words.Say("journal.unread", folder, reasonOf(err)))}
	}
	var all []Found
	var faults []error
	for _, e := range entries {
		if !e.Type().IsRegular() || !strings.HasSuffix(e.Name(), extension) {
			continue
		}
		path := filepath.Join(folder, e.Name())
		isBusy := busy(path)
		r, err := Read(path)
		switch {
		case err != nil && isBusy: // it is just being begun
		case err != nil:
			faults = append(faults, err)
		case r.Saved:
			tidy(path)
		default:
			all = append(all, Found{Path: path, Head: r.Head, Reached: r.Reached, Resumed: r.Resumed, Busy: isBusy})
		}
	}
	slices.SortStableFunc(all, func(a, b Found) int { return strings.Compare(b.Head.Started, a.Head.Started) })
	return all, faults
}

// tidy removes a journal unless somebody has it.
func tidy(path string) {
	if l, err := lockFor(path); err == nil {
		_ = os.Remove(path)
		l.release(true)
	}
}
