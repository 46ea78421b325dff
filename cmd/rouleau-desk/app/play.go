// A case on the screen: begun from home or the command line, kept while it is played, graded and saved, and left for home.

package app

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/home"
	"rouleau/cmd/rouleau-desk/journal"
	"rouleau/cmd/rouleau-desk/session"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scenarios"
	"rouleau/scoring/attempt"
	"rouleau/scoring/play"
)

// begin plays a case of the list. A file of one's own is read again, so that what was mended since counts.
func (a *App) begin(act home.Act) {
	k := a.find(act.Key)
	if k == nil || k.scenario == nil {
		return
	}
	path := k.path
	if path != "" {
		fresh, err := scenarios.Load(path)
		if err != nil {
			a.mark(path, err)
			a.broken(path, err, true)
			return
		}
		k.scenario = fresh
	}
	seed := act.Seed
	if act.NewSeed {
		seed = a.machine.NewSeed()
	}
	a.play(k.scenario, seed, act.Assessment)
	a.begun.path = path
	a.begun.session.Do([]bench.Act{{Do: bench.GoOn}}) // the cautions were read on the way in
}

// play opens a case at its cautions.
func (a *App) play(sc *scenarios.Scenario, seed uint64, assessment bool) {
	a.sit(sc, session.Options{Seed: seed, Assessment: assessment})
}

// sit puts a session on the screen, with a journal of its own and a desk on which nothing is half written.
func (a *App) sit(sc *scenarios.Scenario, o session.Options) {
	a.begun = playing{scenario: sc, assessment: o.Assessment}
	a.begun.journal = a.newJournal(sc, o.Seed, o.Assessment)
	a.desk = a.desk.Again()
	a.begun.session = session.New(sc, a.options(o, a.begun.journal))
}

// newJournal is the journal of a case that begins now.
func (a *App) newJournal(sc *scenarios.Scenario, seed uint64, assessment bool) *journal.Journal {
	return journal.New(a.folder.RunningFolder(), journal.HeadOf(sc, seed, assessment, a.operator(), a.machine.Now()))
}

// options adds what all sessions share, and the journal of this one.
func (a *App) options(o session.Options, j *journal.Journal) session.Options {
	o.Finish, o.NewSeed, o.Journal, o.Draws = a.finish, a.machine.NewSeed, j, a.machine.Draws
	return o
}

// operator is who stands in the record.
func (a *App) operator() string {
	if a.settings.Who != "" {
		return a.settings.Who
	}
	return words.Say("desk.somebody")
}

// finish grades the run that has ended and saves it under the name of who began it.
func (a *App) finish(run *play.Run, breaks attempt.Breaks) bench.Result {
	b := &a.begun
	path := a.o.Out
	if path == "" {
		path = a.folder.AttemptPath(b.scenario.ID, a.machine.Now())
	}
	r := session.Grader(b.scenario, b.assessment, b.journal.Head().Operator, path, a.machine.Now)(run, breaks)
	if r.SavedAs != "" {
		a.o.Out = "" // the next attempt does not take the place of this one
	}
	return r
}

// caseFrame runs a frame of the case.
func (a *App) caseFrame(c *ui.Core) error {
	s := a.begun.session
	a.reloads(c)
	if s = a.begun.session; s == nil {
		return nil // its file cannot be played any more
	}
	s.Reading = a.desk.Dialog == bench.HintDialog || a.asking
	s.Advance(a.now)
	s.Refresh()
	s.View.Home = a.book.wayHome()
	for _, act := range a.desk.Frame(c, &s.View) {
		a.Do(act)
		if act.Do == bench.Again || act.Do == bench.AgainNewSeed || a.begun.session != s {
			c.Focus(0) // the screen it was on has gone
		}
	}
	if s = a.begun.session; s.View.Screen != bench.Cautions {
		a.home.Caution()
	}
	if a.asking {
		a.askReload(c)
		return nil
	}
	switch {
	case s.Left:
		return Quit
	case s.Home:
		a.leaveCase()
		c.Focus(0)
	}
	return nil
}

// Do carries out an act of the case's screens: what concerns files here, all else in the session.
func (a *App) Do(act bench.Act) {
	switch act.Do {
	case bench.ExportChart:
		a.exportChart(act.Value)
	case bench.SaveCopy:
		a.saveCopy(act.Text)
	case bench.Again, bench.AgainNewSeed:
		a.again(act)
	case bench.TryAgain:
		a.tryFrom(act.Value)
	case bench.SavePage:
		a.savePage(act.Text)
	default:
		a.begun.session.Do([]bench.Act{act})
	}
}

// again plays the scenario once more. From a recorded attempt that means to play it oneself.
func (a *App) again(act bench.Act) {
	b := a.begun
	if !b.session.View.Watching {
		b.session.Do([]bench.Act{act})
		a.desk = a.desk.Again()
		return
	}
	seed := b.session.Run.Seed
	if act.Do == bench.AgainNewSeed {
		seed = a.machine.NewSeed()
	}
	b.session.Close()
	a.play(b.scenario, seed, false)
	a.begun.session.Do([]bench.Act{{Do: bench.GoOn}})
}

// leaveCase goes home. A case under way is kept and offered there.
func (a *App) leaveCase() {
	b := a.begun
	if b.session == nil {
		return
	}
	b.session.Home = false
	if !a.safe() {
		a.held = append(a.held, b)
	} else {
		b.session.Close()
	}
	a.goHome()
	a.home.Select(b.scenario.ID)
	if b.path == "" {
		return
	}
	if a.find(fileKey(b.path)) == nil { // it could not be remembered
		a.list(own(b.path, b.scenario, nil))
	}
	a.home.Select(fileKey(b.path))
}

// safe tells whether nothing is lost when the case is let go: it is on disk, done with, or was not begun.
func (a *App) safe() bool {
	b := &a.begun
	s := b.session
	return b.journal.Path() != "" || s.View.Watching || s.View.Screen == bench.Graded || len(s.Run.Actions) == 0 && s.Run.State.Tick == 0
}

// Close is called when the window has closed. It says where a case under way is kept, or that it could not be; "" when there
// is none.
func (a *App) Close() string {
	a.book.shut()
	lost := len(a.held) > 0
	kept := ""
	if b := a.begun; b.session != nil {
		graded := b.session.View.Screen == bench.Graded
		b.session.Close()
		lost = lost || !a.safe()
		if !graded {
			kept = b.journal.Path()
		}
		a.begun = playing{}
	}
	switch {
	case lost:
		return words.Say("app.lost", a.folder.Path())
	case kept != "":
		return words.Say("app.kept", kept)
	}
	return ""
}
