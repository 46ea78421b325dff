// Package session holds the case being played in the window: it lets time pass, carries out the acts of the screens, and
// fills the view they are drawn from. It imports no window, so a whole case can be played in a test.
package session

import (
	"slices"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/journal"
	"rouleau/cmd/says"
	"rouleau/scenarios"
	"rouleau/scoring/attempt"
	"rouleau/scoring/coach"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// Options say how a case is played.
type Options struct {
	Seed       uint64
	Assessment bool
	// Finish grades the run that has ended and saves it; nil leaves it ungraded.
	Finish func(*play.Run, attempt.Breaks) bench.Result
	// Journal keeps the case while it is played; nil keeps nothing. The session removes it when the attempt is saved.
	Journal *journal.Journal
	// NewSeed gives the seed of another drawing of the same scenario; nil takes the next number.
	NewSeed func() uint64
	// Draws are the other drawings of the case in which a debrief plays the costliest decisions too.
	Draws int
	// Watch is a recorded attempt, which is shown instead of being played by hand; nil is none.
	Watch     *Recorded
	WatchSelf *attempt.Self // the marks it holds
}

// Session is one case from the cautions to the grade.
type Session struct {
	Run  *play.Run
	View bench.View
	Left bool // the person wants to close the window
	Home bool // the person wants to go to the home screen
	// Reading is set while a hint is open: no time passes behind it. An assessment has no hints.
	Reading bool

	scenario *scenarios.Scenario
	options  Options
	charts   bench.Charts
	whole    bench.Charts // with hidden truth, kept back in an assessment until it has ended
	read     int          // lines of the run's log already put into words
	known    [sim.AlarmCount]bool
	owed     time.Duration // of simulated time, less than a tick
	last     time.Time
	begun    bool
	trail    coach.Trail
	guide    *coach.Guide // of a lesson; nil where there is none
	hurrying bool         // waits of the lesson pass at ten times the pace
	follows  string       // title of the case to play after it
	slowed   int          // the speed to go back to after such a wait, 0 for none
	toldLag  int64
	lost     time.Duration // of the case's time that a late window let go
	untold   time.Duration // of it
	spent    time.Duration // of an assessment's time on the wall
	toldLeft time.Duration // the last warning that was given
	seen     sim.Seen
	journal  *journal.Journal // nil while nothing is to be kept
	kept     kept
	acting   bool // an act of the person is being carried out
	jump     jump
	watched  int // acts of the recorded attempt that are done
	filmed   film

	watchTold bool // that it is over

	marks     *attempt.Self // given before the verdict
	otherwise *otherwise    // the debrief, nil until somebody asks for it
}

// New opens a case at the cautions.
func New(s *scenarios.Scenario, o Options) *Session {
	n := &Session{scenario: s, options: o}
	if o.Watch != nil {
		n.options.Assessment = false // whoever watches may stop and look closely
	}
	n.start(bench.Cautions)
	return n
}

// start begins the case from its first tick.
func (s *Session) start(screen bench.Screen) {
	s.closeDebrief()
	s.Run = play.New(s.scenario.Case(s.options.Seed, s.options.Assessment), s.options.Seed)
	s.charts, s.whole = bench.Charts{}, bench.Charts{}
	s.read, s.known, s.owed, s.begun = 0, [sim.AlarmCount]bool{}, 0, false
	s.trail, s.toldLag, s.spent, s.toldLeft, s.marks = coach.Trail{}, 0, 0, 0, nil
	s.lost, s.untold, s.kept, s.jump = 0, 0, kept{}, jump{}
	s.watched, s.watchTold, s.filmed = 0, false, film{}
	speed := 1
	if s.options.Assessment {
		speed = max(1, s.scenario.Modes.AssessmentSpeed)
	}
	s.View = bench.View{Screen: screen, Story: storyOf(s.scenario, s.options.Seed), Speed: speed, Assessment: s.options.Assessment,
		Speeds: s.scenario.Modes.PracticeSpeeds, MayTruth: s.scenario.Modes.PracticeTruth && !s.options.Assessment,
		Packs: packsOf(s.scenario), Limits: limitsOf(&s.Run.Case), Charts: &s.charts, Watching: s.options.Watch != nil}
	s.journal = s.options.Journal
	if s.View.Watching {
		s.journal = nil
	}
	if s.options.Assessment {
		s.View.TimeLeftS = 60 * float64(s.scenario.Modes.TimeLimitMin)
	}
	s.View.May = func(a sim.Action) sim.Reason {
		if s.View.Watching {
			return whileWatching
		}
		if s.View.TimeOver {
			return "case_is_over"
		}
		return sim.May(&s.Run.Case, &s.Run.State, a)
	}
	s.showRecorded()
	s.startGuide()
	s.Refresh()
}

// Do carries out what the screens asked for. When it returns, all of it is in the journal.
func (s *Session) Do(acts []bench.Act) {
	for _, a := range acts {
		if s.View.Jumping {
			s.endJump("")
			if a.Do == bench.JumpToNext {
				continue // the second press stops it
			}
		}
		s.act(a)
	}
	s.keep()
}

func (s *Session) act(a bench.Act) {
	v := &s.View
	s.keepWindow(a)
	s.acting = true
	defer func() { s.acting = false }()
	switch a.Do {
	case bench.Bench:
		s.byHand(a.Sim)
	case bench.GoOn:
		if v.Screen == bench.Cautions {
			v.Screen = bench.Sheet // from here on the time of an assessment counts
			return
		}
		v.Screen, s.begun = bench.AtBench, true
	case bench.BackToCase:
		v.Screen = bench.Sheet
	case bench.SetSpeed:
		if !s.options.Assessment && slices.Contains(v.Speeds, a.Value) {
			v.Speed = a.Value
		}
	case bench.TogglePause:
		v.Paused = !v.Paused && !s.options.Assessment
	case bench.Acknowledge:
		s.known[a.Alarm] = true
		s.note(words.Say("log.acknowledged", words.Say("alarm."+a.Alarm.String())))
	case bench.ToggleTruth:
		v.ShowTruth = !v.ShowTruth && v.MayTruth
	case bench.Finish:
		s.finish()
	case bench.Again:
		s.anew(s.options.Seed)
	case bench.AgainNewSeed:
		s.anew(s.newSeed())
	case bench.JumpToNext:
		s.jumpToNext()
	case bench.GuideNext, bench.GuideBack, bench.GuideFast:
		s.guideAct(a.Do)
	case bench.Seek:
		s.seek(sim.Ticks(float64(a.Value)))
	case bench.GoHome:
		s.Home = true
	case bench.GiveMarks:
		s.giveMarks(a.Marks)
	case bench.OpenDebrief:
		s.openDebrief()
	case bench.ShowCourses:
		s.showCourses(a.Value)
	case bench.Leave:
		s.Left = true
	}
}

// byHand does an act on the bench before the next tick.
func (s *Session) byHand(a sim.Action) {
	switch {
	case s.View.Watching:
		s.note(words.Say("log.refused", says.Act(&a), words.Say("why.watching")))
	case !s.View.TimeOver:
		s.apply(a)
	}
}

// apply does an act, keeps it, and says why not when it is refused.
func (s *Session) apply(a sim.Action) sim.Reason {
	a.Tick = s.Run.State.Tick
	why := s.Run.Do(a)
	if s.journal != nil {
		s.journal.Act(a, why)
	}
	s.guideLook()
	return why
}

// anew begins the scenario once more.
func (s *Session) anew(seed uint64) {
	s.options.Seed = seed
	if j := s.options.Journal; j != nil {
		j.Restart(seed, time.Now())
	}
	s.start(bench.Sheet)
	s.keepWindow(bench.Act{Do: bench.GoOn}) // past the cautions
}

func (s *Session) newSeed() uint64 {
	if s.options.NewSeed == nil {
		return s.options.Seed + 1
	}
	return s.options.NewSeed()
}

// finish grades a run that has ended.
func (s *Session) finish() {
	v := &s.View
	if !s.Run.State.Ended && !v.TimeOver && !s.watchOver() {
		return
	}
	if v.Screen != bench.Graded {
		if v.Watching {
			s.watchCompares()
		}
		s.tellLag(0)
		s.keep()
		s.grade()
		s.reveal()
	}
	v.Screen = bench.Graded
}

// Breaks are what came between the person and the case so far.
func (s *Session) Breaks() attempt.Breaks {
	return attempt.Breaks{Interruptions: s.View.Interrupted, LetGoS: attempt.Exact(s.lost.Seconds()), TakenOver: s.View.TakenOver}
}

func (s *Session) grade() {
	finish := s.options.Finish
	if s.View.Watching { // it is saved already, by whoever played it
		finish = Grader(s.scenario, s.options.Assessment, "", "", time.Now)
	}
	if finish != nil {
		s.View.Result = finish(s.Run, s.Breaks())
	}
	if s.View.Watching {
		s.View.Result.SavedAs = s.options.Watch.From
	}
	s.ask()
	if s.journal != nil && s.View.Result.Fault == "" {
		s.journal.Saved()
		s.journal.Flush()
		s.journal.Remove()
		s.journal = nil
	}
}
