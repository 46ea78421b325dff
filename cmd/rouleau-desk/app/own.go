// Files of one's own: remembered from start to start, read again on request, also while their case is played, and kept in the
// list while they cannot be played.

package app

import (
	"errors"
	"os"
	"path/filepath"
	"slices"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/home"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
)

// recent lists the files that were opened at another time. One that is not there any more is told once and forgotten.
func (a *App) recent() {
	files, err := a.folder.Recent()
	a.tellError(err)
	for _, path := range files {
		sc, err := scenarios.Load(path)
		if _, gone := os.Stat(path); errors.Is(gone, os.ErrNotExist) {
			a.tell(words.Say("app.recent_gone", path))
			a.tellError(a.folder.Forget(path))
			continue
		}
		a.cases = append(a.cases, own(path, sc, err))
	}
}

// own is a file of one's own as the list has it: with its case, or why there is none.
func own(path string, sc *scenarios.Scenario, err error) known {
	k := known{key: fileKey(path), group: home.Own, path: path, scenario: sc}
	if faults := (yamlread.Faults)(nil); errors.As(err, &faults) {
		k.broken = words.Say("home.own_faults", len(faults))
	} else if err != nil {
		k.broken = words.Say("home.own_unread")
	}
	return k
}

func fileKey(name string) string { return "file " + name }

// mark keeps a file in the list that cannot be played as it is now.
func (a *App) mark(path string, err error) {
	if info, bad := os.Stat(path); bad != nil || !info.Mode().IsRegular() || !isScenario(path) {
		return
	}
	a.tellError(a.folder.Remember(path))
	a.list(own(path, nil, err))
}

// list puts a file into the list in the place of what was there of it.
func (a *App) list(k known) {
	a.cases = slices.DeleteFunc(a.cases, func(old known) bool { return old.key == k.key })
	a.cases = append(a.cases, k)
	a.goHome()
	a.home.Select(k.key)
}

// forget takes a file off the list; the file stays where it is.
func (a *App) forget(key string) {
	k := a.find(key)
	if k == nil || k.path == "" {
		return
	}
	a.tellError(a.folder.Forget(k.path))
	a.cases = slices.DeleteFunc(a.cases, func(old known) bool { return old.key == key })
	a.goHome()
}

// fromFile is the path of the file that a scenario of the command line was read from, "" for a case of the library.
func fromFile(sc *scenarios.Scenario) string {
	if info, err := os.Stat(sc.Name); err != nil || !info.Mode().IsRegular() {
		return ""
	}
	whole, err := filepath.Abs(sc.Name)
	if err != nil {
		return ""
	}
	return whole
}

// reloads reads the file of the case on the screen again when F5 asks for it. Where something would be broken off it asks first.
func (a *App) reloads(c *ui.Core) {
	s := a.begun.session
	if a.begun.path == "" || s.View.Watching || a.desk.Dialog != bench.NoDialog || a.asking {
		return
	}
	if !c.Shortcut(ui.Chord{Key: ui.KeyF5}) {
		return
	}
	switch under := s.View.Screen == bench.AtBench || s.View.Screen == bench.Sheet && len(s.Run.Actions) > 0; {
	case a.begun.assessment && s.View.Screen != bench.Graded:
		a.notice(words.Say("app.reload_later"))
	case under:
		a.asking = true
	default:
		a.reload(c)
	}
}

// askReload draws the question and does what was chosen.
func (a *App) askReload(c *ui.Core) {
	again, goOn := home.ReloadBox(c)
	if again || goOn {
		a.asking = false
		c.Focus(0)
	}
	if again {
		a.reload(c)
	}
}

// reload begins the case anew with what its file says now, on the same seed, or shows what is wrong with it.
func (a *App) reload(c *ui.Core) {
	path, act := a.begun.path, home.Act{Do: home.Begin, Key: fileKey(a.begun.path), Seed: a.begun.session.Run.Seed}
	a.leaveCase()
	a.open(path)
	if a.view.Broken.Name != path {
		a.begin(act)
	}
	c.Focus(0)
}
