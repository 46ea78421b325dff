// Cases that were broken off: offered on the home screen, gone on with, or put aside.

package app

import (
	"errors"
	"path/filepath"
	"slices"
	"strconv"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/home"
	"rouleau/cmd/rouleau-desk/journal"
	"rouleau/cmd/rouleau-desk/session"
	"rouleau/scenarios"
	"rouleau/sim"
)

// unfinished lists the journals of cases under way that no other window plays.
func (a *App) unfinished() {
	found, faults := journal.List(a.folder.RunningFolder())
	a.view.Unfinished = a.view.Unfinished[:0]
	for i := range a.held {
		b := &a.held[i]
		h := b.journal.Head()
		a.view.Unfinished = append(a.view.Unfinished, home.Unfinished{Path: heldPath(i), Title: b.scenario.Title, Mode: h.Mode,
			Began: beganWords(h.Started), AtS: sim.Seconds(b.session.Run.State.Tick)})
	}
	for i := range found {
		f := &found[i]
		if f.Busy {
			continue
		}
		u := home.Unfinished{Path: f.Path, Title: f.Head.Scenario.ID, Mode: f.Head.Mode, Began: beganWords(f.Head.Started), AtS: sim.Seconds(f.Reached)}
		if sc, faults := scenarios.Parse(f.Head.Scenario.ID, []byte(f.Head.Scenario.Text)); len(faults) == 0 {
			u.Title = sc.Title
		}
		a.view.Unfinished = append(a.view.Unfinished, u)
	}
	for _, err := range faults {
		damage := (*journal.Damage)(nil)
		if !errors.As(err, &damage) {
			a.tell(err.Error())
			continue
		}
		a.view.Unfinished = append(a.view.Unfinished, home.Unfinished{Path: damage.File, Title: filepath.Base(damage.File), Broken: damage.Error()})
	}
}

func beganWords(stamp string) string {
	t, err := time.Parse(time.RFC3339, stamp)
	if err != nil {
		return stamp
	}
	return t.Local().Format("2006-01-02 15:04")
}

// putAside moves a journal out of the way. It is not deleted.
func (a *App) putAside(path string) {
	if a.heldAt(path) >= 0 {
		a.tell(words.Say("app.not_put_aside"))
		return
	}
	to, err := a.folder.SetAside(path)
	if err == nil {
		a.tell(words.Say("app.put_aside", filepath.Base(path), to))
	}
	a.tellError(err)
	a.goHome()
}

// resume goes on with a case exactly where it was.
func (a *App) resume(path string) {
	if i := a.heldAt(path); i >= 0 {
		a.begun = a.held[i]
		a.held = slices.Delete(a.held, i, i+1)
		a.desk = bench.New()
		a.begun.session.View.Paused = !a.begun.assessment
		return
	}
	if err := a.resumeJournal(path); err != nil {
		a.goHome()
		a.tell(err.Error())
	}
}

func (a *App) resumeJournal(path string) error {
	j, err := journal.Open(path)
	if err != nil {
		return err
	}
	sc, err := j.Record().Scenario()
	if err != nil {
		j.Close()
		return err
	}
	h := j.Head()
	a.begun = playing{scenario: sc, assessment: h.Assessment(), journal: j}
	for i := range a.cases {
		if k := &a.cases[i]; k.path != "" && k.is(sc.ID) {
			a.begun.path = k.path
		}
	}
	if a.begun.session, err = session.Resume(sc, j, a.options(session.Options{}, j)); err != nil {
		j.Close()
		return err
	}
	a.desk = bench.New()
	return nil
}

// heldPath names a case that is in memory alone.
func heldPath(i int) string { return "held " + strconv.Itoa(i) }

// heldAt is the place of a case that is in memory alone, -1 for any other.
func (a *App) heldAt(path string) int {
	for i := range a.held {
		if heldPath(i) == path {
			return i
		}
	}
	return -1
}
