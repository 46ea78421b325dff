// Package app joins the screens before a case, the case itself, and the person's folder into one value that a window or a test
// runs frame by frame. It knows files and time; it decides nothing about a case and draws nothing.
//
// This file holds the value and its frame.
package app

import (
	"errors"
	"math/rand/v2"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/home"
	"rouleau/cmd/rouleau-desk/journal"
	"rouleau/cmd/rouleau-desk/keep"
	"rouleau/cmd/rouleau-desk/line"
	"rouleau/cmd/rouleau-desk/session"
	"rouleau/cmd/rouleau-desk/sound"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scenarios"
)

// Quit is what Frame returns when the person wants the window closed.
var Quit = errors.New("the window is to be closed")

// Machine is what the window has of the machine it runs on.
type Machine struct {
	Player  sound.Player     // nil makes no sound
	Now     func() time.Time // for records; nil for the clock
	NewSeed func() uint64    // nil for chance
	Draws   int              // other drawings of a case in which a debrief plays the costliest decisions too
}

// App is the whole window but for its display.
type App struct {
	o        line.Asked
	machine  Machine
	folder   *keep.Folder
	settings keep.Settings
	home     *home.Home
	view     home.View
	desk     *bench.Desk
	cases    []known
	origin   string // path of the broken file, to read it again
	begun    playing
	held     []playing // cases that were left and could not be written down: they stay in memory
	book     bookPages
	asking   bool        // whether the file of the case is to be read again
	next     *recording  // to be shown once the cautions were read
	told     time.Time   // when the case was last given a notice
	page     chan string // what came of a page that is being made, nil for none
	now      time.Time   // of this frame
	ringer   sound.Ringer
	alarms   sound.Alarms
	paper    *ui.Palette
	strong   *ui.Palette
}

// playing is the case that is on the screen; session is nil on the home screens.
type playing struct {
	session    *session.Session
	path       string // of the file of one's own that it was read from
	scenario   *scenarios.Scenario
	assessment bool
	journal    *journal.Journal
	recorded   *recording // that is shown, nil for a case that is played from its start
}

// New opens the records and, where the command line names a case, that case. The error is for the command line: nothing was opened.
func New(o line.Asked, m Machine) (*App, error) {
	if m.Now == nil {
		m.Now = time.Now
	}
	if m.NewSeed == nil {
		m.NewSeed = func() uint64 { return 1 + rand.Uint64N(mostNewSeed) }
	}
	if why := keep.WhyNotWho(o.Who); o.Who != "" && why != "" {
		return nil, errors.New(words.Say("app.who", why))
	}
	a := &App{o: o, machine: m, home: home.New(), desk: bench.New(), book: newBookPages(), paper: ui.Paper(), strong: ui.HighContrast()}
	var err error
	if a.folder, err = keep.Open(o.Folder); err != nil {
		a.tell(err.Error())
	}
	if a.settings, err = a.folder.Settings(); err != nil {
		a.tell(err.Error())
	}
	if o.Who != "" {
		a.settings.Who = o.Who
	}
	if o.Scale > 0 {
		a.settings.Scale = o.Scale
	}
	a.settings.Still = a.settings.Still || o.Still
	a.view.Folder, a.ringer.Player = a.folder.Path(), m.Player
	return a, a.start()
}

// start goes where the command line wants to.
func (a *App) start() error {
	switch {
	case a.o.Watch != "":
		r, err := readAttempt(a.o.Watch)
		if err != nil {
			return err
		}
		a.next = &recording{r, a.o.Watch}
		a.goHome()
	case a.o.Scenario != "":
		sc, err := scenarios.Open(a.o.Scenario)
		if err != nil {
			return err
		}
		if why := a.whyNotAssess(sc); a.o.Assessment && why != "" {
			return errors.New(why)
		}
		a.play(sc, a.o.Seed, a.o.Assessment)
		if a.begun.path = fromFile(sc); a.begun.path != "" {
			a.tellError(a.folder.Remember(a.begun.path))
		}
	default:
		a.goHome()
	}
	return nil
}

// whyNotAssess says why a case named on the command line cannot be an assessment, "" when it can; home asks the same.
func (a *App) whyNotAssess(sc *scenarios.Scenario) string {
	switch {
	case sc.Lesson():
		return words.Say("cli.lesson_is_practice", a.o.Scenario)
	case a.settings.Who == "":
		return words.Say("app.assess_who")
	}
	return ""
}

// mostNewSeed keeps drawn seeds short enough to be read out in a teaching room.
const mostNewSeed = 999_999

// Frame runs one frame at a time of the monotonic clock, between Begin and End of the core. It returns Quit, or nil.
func (a *App) Frame(c *ui.Core, now time.Time) error {
	a.now = now
	c.Pal, c.Still = a.paper, a.settings.Still
	if a.settings.Contrast {
		c.Pal = a.strong
	}
	a.drops(c)
	a.pageMade()
	a.bookCame()
	a.scaleKeys(c)
	defer a.ring()
	switch {
	case a.begun.session != nil:
		return a.caseFrame(c)
	case a.book.on:
		a.bookFrame(c)
		return nil
	}
	return a.homeFrame(c)
}

func (a *App) homeFrame(c *ui.Core) error {
	a.view.Settings, a.view.NoSound = a.settings, ""
	if a.machine.Player != nil && a.settings.Sound {
		a.view.NoSound = a.machine.Player.Why()
	}
	for _, act := range a.home.Frame(c, &a.view) {
		if act.Do == home.Close {
			return Quit
		}
		a.homeAct(act)
		if act.Do == home.Understood && len(a.view.Notices) == 0 {
			c.Focus(0) // its button is gone, and the arrows are for the list again
		}
		if a.begun.session != nil || a.book.on {
			c.Focus(0)
			return nil
		}
	}
	if a.next != nil && a.home.Cautioned() {
		a.tellError(a.watch(a.next))
		a.next = nil
		c.Focus(0)
	}
	return nil
}

func (a *App) homeAct(act home.Act) {
	switch act.Do {
	case home.Begin:
		a.begin(act)
	case home.SaveSettings:
		a.save(act.Settings)
	case home.Look:
		a.look(act.Path)
	case home.Open:
		a.open(act.Path)
	case home.ReadAgain:
		a.open(a.origin)
	case home.Forget:
		a.forget(act.Key)
	case home.LeaveBroken:
		a.view.Broken = home.Broken{}
	case home.Understood:
		a.view.Notices = a.view.Notices[1:]
	case home.Resume:
		a.resume(act.Path)
	case home.PutAside:
		a.putAside(act.Path)
	case home.OpenBook:
		a.openBook()
	case home.Watch:
		a.tellError(a.watchFile(act.Path))
	case home.ShowResult:
		a.tellError(a.resultOfFile(act.Path))
	}
}

// save takes settings over and keeps them.
func (a *App) save(s keep.Settings) {
	a.settings = s
	a.tellError(a.folder.SaveSettings(s))
}

// tell puts a piece of news above the list of cases, once.
func (a *App) tell(text string) {
	for _, t := range a.view.Notices {
		if t == text {
			return
		}
	}
	a.view.Notices = append(a.view.Notices, text)
}

func (a *App) tellError(err error) {
	if err != nil {
		a.tell(err.Error())
	}
}

// scaleKeys make everything larger or smaller from any screen.
func (a *App) scaleKeys(c *ui.Core) {
	by := 0.0
	for _, k := range [...]struct {
		key ui.Key
		by  float64
	}{{ui.KeyPlus, scaleStep}, {ui.KeyMinus, -scaleStep}} {
		if c.Shortcut(ui.Chord{Key: k.key, Mods: ui.ModCtrl}) || c.Shortcut(ui.Chord{Key: k.key, Mods: ui.ModCtrl | ui.ModShift}) {
			by = k.by
		}
	}
	if by == 0 {
		return
	}
	s := a.settings
	s.Scale = min(max(s.Scale+by, keep.LeastScale), keep.MostScale)
	if s != a.settings {
		a.save(s)
	}
}

const scaleStep = 0.1

// Scale is the person's own scale, now.
func (a *App) Scale() float64 { return a.settings.Scale }

// ring lets the alarms of the case be heard while it runs.
func (a *App) ring() {
	s := a.begun.session
	if s == nil || s.View.Paused || s.View.Screen != bench.AtBench || s.Run.State.Ended {
		a.ringer.Frame(a.settings.Sound, nil, a.now)
		return
	}
	a.alarms = sound.Alarms{}
	for _, k := range s.View.Alarms {
		a.alarms.On[k.Is], a.alarms.Known[k.Is] = true, k.Known
	}
	a.ringer.Frame(a.settings.Sound, &a.alarms, a.now)
}

// Session is the case on the screen, nil on the home screens.
func (a *App) Session() *session.Session { return a.begun.session }

// Caution takes the cautions for read, for a measurement at which nobody sits.
func (a *App) Caution() { a.home.Caution() }

// Desk is what stays of the bench from frame to frame.
func (a *App) Desk() *bench.Desk { return a.desk }

// Title is what stands in the frame of the window.
func (a *App) Title() string {
	switch {
	case a.begun.session == nil && a.book.on:
		return words.Line("app.title", words.Say("desk_book.title"))
	case a.begun.session == nil:
		return words.Say("window.name")
	}
	return words.Line("app.title", a.begun.scenario.Title)
}
