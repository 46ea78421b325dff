// Package keep is the person's folder on this computer: settings, finished attempts, journals of cases under way. Nothing in
// it is ever overwritten half or deleted: files are replaced whole, and what is damaged is set aside and told.
//
// This file holds the folder itself and the places in it.
package keep

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"rouleau/assets/words"
)

// Names inside the folder.
const (
	attemptsName = "attempts"
	runningName  = "running"
	asideName    = "set-aside"
	settingsName = "settings.json"
)

// Only the person may look into the folder.
const (
	folderMode = 0o700
	fileMode   = 0o600
)

// Folder is where one person's records are kept.
type Folder struct {
	path   string
	cache  map[fileKey]headed
	titles map[string]string // of scenarios, by the hash of their text
	tail   []byte            // of the file being read
}

// Open makes the folder where it is not there yet; "" stands for the place this system keeps such things. Where it cannot be
// written to, the folder comes back all the same beside the error: what lies in it can be read, and the window opens and says so.
func Open(path string) (*Folder, error) {
	f := &Folder{path: path, cache: map[fileKey]headed{}, titles: map[string]string{}}
	if path == "" {
		base, err := os.UserConfigDir()
		if err != nil {
			f.path = filepath.Join(os.TempDir(), "rouleau")
			return f, errors.New(words.Say("keep.no_place", f.path))
		}
		f.path = filepath.Join(base, "rouleau")
	}
	if whole, err := filepath.Abs(f.path); err == nil {
		f.path = whole
	}
	for _, p := range []string{f.path, f.attempts(), f.RunningFolder()} {
		if err := os.MkdirAll(p, folderMode); err != nil {
			return f, errors.New(words.Say("keep.not_made", p, reason(err)))
		}
		if err := probe(p); err != nil {
			return f, errors.New(words.Say("keep.not_written", p, reason(err)))
		}
	}
	return f, nil
}

// probe writes into a folder and takes it away again: rights alone do not say whether a disk can be written to.
func probe(folder string) error {
	t, err := os.CreateTemp(folder, ".probe-")
	if err != nil {
		return err
	}
	t.Close()
	return os.Remove(t.Name())
}

// reason is what the machine says, without the name of the file, which our own words give.
func reason(err error) error {
	if inner := (*fs.PathError)(nil); errors.As(err, &inner) {
		return inner.Err
	}
	if inner := (*os.LinkError)(nil); errors.As(err, &inner) {
		return inner.Err
	}
	return err
}

// Path is the folder.
func (f *Folder) Path() string { return f.path }

// RunningFolder is where journals of cases under way lie.
func (f *Folder) RunningFolder() string { return filepath.Join(f.path, runningName) }

func (f *Folder) attempts() string { return filepath.Join(f.path, attemptsName) }

// AttemptPath is a path at which no file stands yet.
func (f *Folder) AttemptPath(scenarioID string, when time.Time) string {
	return unused(f.attempts(), plain(scenarioID)+"-"+when.Format("20060102-150405"), ".json")
}

// SetAside moves a file out of the way into a folder of its own and gives the new place. Nothing is deleted.
func (f *Folder) SetAside(path string) (string, error) {
	folder := filepath.Join(f.path, asideName)
	if err := os.MkdirAll(folder, folderMode); err != nil {
		return "", errors.New(words.Say("keep.not_aside", path, reason(err)))
	}
	name := filepath.Base(path)
	end := filepath.Ext(name)
	to := unused(folder, strings.TrimSuffix(name, end), end)
	if err := os.Rename(path, to); err != nil {
		return "", errors.New(words.Say("keep.not_aside", path, reason(err)))
	}
	return to, nil
}

// unused is a path in a folder that is not taken, counted up where it is.
func unused(folder, name, end string) string {
	for n := 1; ; n++ {
		p := filepath.Join(folder, name+end)
		if n > 1 {
			p = filepath.Join(folder, name+"-"+strconv.Itoa(n)+end)
		}
		if _, err := os.Lstat(p); err != nil {
			return p
		}
	}
}

// plain makes a name that every file system takes: the id of a scenario is one already, but a file can say anything.
func plain(id string) string {
	const most = 60
	s := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', r == '-', r == '_':
			return r
		}
		return '-'
	}, id)
	if s == "" {
		s = "case"
	}
	return fmt.Sprintf("%.*s", most, s)
}
