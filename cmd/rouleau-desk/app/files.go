// Files of one's own: walking through folders, opening a scenario, and what is dragged onto the window.

package app

import (
	"cmp"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/home"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
	"rouleau/scoring/attempt"
)

// look shows a folder in the file dialog; "" is the one it showed before.
func (a *App) look(folder string) {
	if folder == "" {
		folder = a.view.Browse.Folder
	}
	if folder == "" {
		folder = a.firstFolder()
	}
	a.view.Browse = listing(wholePath(folder))
}

// firstFolder is where looking for a file begins: where the program was started if scenarios lie there, else where the last
// file was opened, else where the program was started after all.
func (a *App) firstFolder() string {
	here, err := os.Getwd()
	if err == nil && slices.ContainsFunc(listing(here).Names, func(e home.Entry) bool { return !e.Folder }) {
		return here
	}
	files, fault := a.folder.Recent()
	a.tellError(fault)
	for _, path := range files {
		if l := listing(filepath.Dir(path)); l.Fault == "" {
			return l.Folder
		}
	}
	if err != nil {
		return "~"
	}
	return here
}

// wholePath makes a path as people write or paste it one that can be opened.
func wholePath(path string) string {
	path = strings.Trim(strings.TrimSpace(path), `"'`)
	if rest, ok := strings.CutPrefix(path, "~"); ok && (rest == "" || rest[0] == '/' || rest[0] == filepath.Separator) {
		if own, err := os.UserHomeDir(); err == nil {
			path = filepath.Join(own, rest)
		}
	}
	if whole, err := filepath.Abs(path); err == nil {
		return whole
	}
	return path
}

// listing is what of a folder the file dialog shows: folders, then scenario files.
func listing(folder string) home.Listing {
	l := home.Listing{Folder: folder}
	if up := filepath.Dir(folder); up != folder {
		l.Up = up
	}
	entries, err := os.ReadDir(folder)
	if err != nil {
		if inner := (*fs.PathError)(nil); errors.As(err, &inner) {
			err = inner.Err
		}
		l.Fault = words.Say("app.no_listing", err)
		return l
	}
	for _, e := range entries {
		path := filepath.Join(folder, e.Name())
		info, err := os.Stat(path) // a link counts as what it leads to
		if err != nil || strings.HasPrefix(e.Name(), ".") || !info.IsDir() && !isScenario(e.Name()) {
			continue
		}
		l.Names = append(l.Names, home.Entry{Name: e.Name(), Path: path, Folder: info.IsDir()})
	}
	slices.SortStableFunc(l.Names, func(x, y home.Entry) int {
		if x.Folder != y.Folder {
			if x.Folder {
				return -1
			}
			return 1
		}
		return strings.Compare(strings.ToLower(x.Name), strings.ToLower(y.Name))
	})
	return l
}

func isScenario(name string) bool {
	end := strings.ToLower(filepath.Ext(name))
	return end == ".yaml" || end == ".yml"
}

// open reads a scenario file and puts it into the list, or shows what is wrong with it.
func (a *App) open(path string) {
	path = wholePath(path)
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		a.look(path)
		return
	}
	sc, err := scenarios.Load(path)
	if err != nil {
		a.mark(path, err)
		a.broken(path, err, true)
		return
	}
	a.view.Broken = home.Broken{}
	a.add(sc, path, path)
}

// broken shows what is wrong with a file.
func (a *App) broken(name string, err error, again bool) {
	b := home.Broken{Name: name, Again: again}
	var faults yamlread.Faults
	if errors.As(err, &faults) {
		b.Faults = faults
	} else {
		b.Text = err.Error()
	}
	a.view.Broken, a.origin = b, name
}

// noticeS is how long a notice stays above a case, in seconds.
const noticeS = 15

// drops takes files that were dragged onto the window: scenarios and attempts. During a case they have to wait.
func (a *App) drops(c *ui.Core) {
	if s := a.begun.session; s != nil && s.View.Notice != "" && a.now.Sub(a.told) > noticeS*time.Second {
		s.View.Notice = ""
	}
	dropped := c.Input().Dropped
	if len(dropped) == 0 {
		return
	}
	if s := a.begun.session; s != nil && (s.View.Screen == bench.AtBench || s.View.Screen == bench.Sheet) {
		a.notice(words.Say("app.drop_later"))
		return
	}
	if a.book.on {
		a.bookDrop()
		return
	}
	a.leaveCase()
	for _, d := range dropped {
		if d.Fault != "" {
			a.broken(d.Name, errors.New(d.Fault), false)
			continue
		}
		if strings.EqualFold(filepath.Ext(d.Name), ".json") {
			r, err := attempt.Parse(d.Name, d.Data)
			switch {
			case err == nil && !a.home.Cautioned():
				a.next = &recording{r, d.Name} // the cautions come before any case
			case err == nil:
				err = a.result(&recording{r, d.Name})
			}
			if err != nil {
				a.broken(d.Name, err, false)
			}
			continue
		}
		a.dropped(&d)
	}
}

// dropped takes a scenario. With its place known it is as if it had been opened there.
func (a *App) dropped(d *ui.Dropped) {
	name := cmp.Or(d.Path, d.Name)
	sc, faults := scenarios.Parse(name, d.Data)
	if err := faults.Err(); err != nil {
		if d.Path != "" {
			a.mark(d.Path, err)
		}
		a.broken(name, err, d.Path != "")
		return
	}
	a.view.Broken = home.Broken{}
	a.add(sc, name, d.Path)
}

// notice is a line above the case for a while.
func (a *App) notice(text string) {
	a.begun.session.View.Notice, a.told = text, a.now
}
