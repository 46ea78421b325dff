// Files of one's own that were opened: their paths alone, so that they are still in the list of cases at the next start.

package keep

import (
	"encoding/json"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"rouleau/assets/words"
)

const (
	recentName = "recent.json"
	mostRecent = 20
	mostPath   = 4096 // bytes; more than any system takes
)

// recentFile is what the file holds.
type recentFile struct {
	Files []string `json:"files"` // newest first
}

// Recent gives the paths of the files that were opened, newest first. A damaged list is set aside and told; that there is none
// yet is no error.
func (f *Folder) Recent() ([]string, error) {
	path := filepath.Join(f.path, recentName)
	content, err := os.ReadFile(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, nil
	case err != nil:
		return nil, errors.New(words.Say("keep.recent_unread", path, reason(err)))
	}
	var r recentFile
	bad := func(p string) bool { return !filepath.IsAbs(p) || len(p) > mostPath }
	if err := json.Unmarshal(content, &r); err != nil || len(r.Files) > mostRecent || slices.ContainsFunc(r.Files, bad) {
		to, err := f.SetAside(path)
		if err != nil {
			return nil, err
		}
		return nil, errors.New(words.Say("keep.recent_damaged", to))
	}
	return r.Files, nil
}

// Remember puts a file at the head of the list; the oldest goes where there are too many.
func (f *Folder) Remember(file string) error {
	all, err := f.Recent()
	if err != nil {
		return err
	}
	all = append([]string{file}, slices.DeleteFunc(all, func(old string) bool { return old == file })...)
	return f.saveRecent(all[:min(len(all), mostRecent)])
}

// Forget takes a file off the list. The file itself stays.
func (f *Folder) Forget(file string) error {
	all, err := f.Recent()
	if err != nil || !slices.Contains(all, file) {
		return err
	}
	return f.saveRecent(slices.DeleteFunc(all, func(old string) bool { return old == file }))
}

func (f *Folder) saveRecent(all []string) error {
	return f.write(recentName, recentFile{Files: all}, func(why error) string { return words.Say("keep.recent_unsaved", f.path, why) })
}
