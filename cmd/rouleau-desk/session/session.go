// Package session holds the case being played in the window: it lets time pass, carries out the acts of the screens, and
// fills the view they are drawn from. It imports no window, so a whole case can be played in a test.
package session

import (
	"slices"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/scenarios"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// Options say how a case is played.
type Options struct {
	Seed       uint64
	Assessment bool
	// Finish grades the run that has ended and saves it; nil leaves it ungraded.
	Finish func(*play.Run) bench.Result
}

// Session is one case from the cautions to the grade.
type Session struct {
	Run  *play.Run
	View bench.View
	Left bool // the person wants to close the window

	scenario *scenarios.Scenario
	options  Options
	charts   bench.Charts
	read     int // lines of the run's log already put into words
	known    [sim.AlarmCount]bool
	owed     time.Duration // of simulated time, less than a tick
	last     time.Time
	begun    bool
	drip     [trailS]trail
	added    float64 // irrigation and rinse that went to the reservoir, mL
	basin    float64 // rinse that waited a second ago, mL
	taken    float64 // what scales showed a second ago, mL
	drawn    float64
	toldLag  int64
	spent    time.Duration // of an assessment's time on the wall
	toldLeft time.Duration // the last warning that was given
	seen     sim.Seen
}

// New opens a case at the cautions.
func New(s *scenarios.Scenario, o Options) *Session {
	n := &Session{scenario: s, options: o}
	n.start(bench.Cautions)
	return n
}

// start begins the case from its first tick.
func (s *Session) start(screen bench.Screen) {
	s.Run = play.New(s.scenario.Case(s.options.Seed, s.options.Assessment), s.options.Seed)
	s.charts, s.read, s.known, s.owed, s.begun = bench.Charts{}, 0, [sim.AlarmCount]bool{}, 0, false
	s.added, s.basin, s.taken, s.drawn = 0, 0, 0, 0
	s.drip, s.toldLag, s.spent, s.toldLeft = [trailS]trail{}, 0, 0, 0
	speed := 1
	if s.options.Assessment {
		speed = max(1, s.scenario.Modes.AssessmentSpeed)
	}
	s.View = bench.View{Screen: screen, Story: storyOf(s.scenario, s.options.Seed), Speed: speed, Assessment: s.options.Assessment,
		Speeds: s.scenario.Modes.PracticeSpeeds, MayTruth: s.scenario.Modes.PracticeTruth && !s.options.Assessment,
		Packs: packsOf(s.scenario), Limits: limitsOf(&s.Run.Case), Charts: &s.charts}
	if s.options.Assessment {
		s.View.TimeLeftS = 60 * float64(s.scenario.Modes.TimeLimitMin)
	}
	s.View.May = func(a sim.Action) sim.Reason {
		if s.View.TimeOver {
			return "case_is_over"
		}
		return sim.May(&s.Run.Case, &s.Run.State, a)
	}
	s.Refresh()
}

// Do carries out what the screens asked for.
func (s *Session) Do(acts []bench.Act) {
	for _, a := range acts {
		s.act(a)
	}
}

func (s *Session) act(a bench.Act) {
	v := &s.View
	switch a.Do {
	case bench.Bench:
		if !v.TimeOver {
			s.Run.Do(a.Sim)
		}
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
		s.start(bench.Sheet)
	case bench.Leave:
		s.Left = true
	}
}

// finish grades a run that has ended.
func (s *Session) finish() {
	if !s.Run.State.Ended && !s.View.TimeOver {
		return
	}
	if s.View.Screen != bench.Graded && s.options.Finish != nil {
		if s.Run.State.Ended {
			s.Run.Step() // as a replay does after the end: the last second is noted, nothing changes
		}
		s.View.Result = s.options.Finish(s.Run)
	}
	s.View.Screen = bench.Graded
}

// Keep saves a case that was begun and is left before its end, and gives the place; "" when there is nothing to keep.
func (s *Session) Keep() (place, fault string) {
	if !s.begun || s.View.Screen == bench.Graded || s.options.Finish == nil || len(s.Run.Actions) == 0 {
		return "", ""
	}
	r := s.options.Finish(s.Run)
	return r.SavedAs, r.Fault
}

// note puts a line of the window's own into the log.
func (s *Session) note(text string) {
	s.readLog() // what happened before stands before
	s.add(bench.Line{S: sim.Seconds(s.Run.State.Tick), Text: text, Kind: sim.Came})
}

// An alarm that comes and goes is one line of the log with a count, so that it does not push out all else.
const (
	againS     = 120 // seconds from one coming to the next
	againLines = 12  // looked back
)

// again adds an alarm that came a short while ago to its line, and takes its end out. It says whether it did.
func (s *Session) again(l bench.Line) bool {
	log := s.View.Log
	for i := len(log) - 1; i >= max(0, len(log)-againLines); i-- {
		if log[i].Alarm != l.Alarm || log[i].Kind != sim.Alarmed {
			continue
		}
		if l.S-log[i].LastS > againS {
			return false
		}
		log[i].LastS, log[i].Times = l.S, max(1, log[i].Times)+1
		log[i].Text = words.Say("log.alarm_times", words.Say("alarm."+l.Alarm), log[i].Times)
		s.View.Log = slices.DeleteFunc(log, func(k bench.Line) bool { return k.Kind == sim.Calmed && k.Alarm == l.Alarm && k.S >= log[i].S })
		return true
	}
	return false
}

// maxLines bounds the log that is kept in words; the run keeps all of it.
const maxLines = 400

func (s *Session) add(l bench.Line) {
	v := &s.View
	if l.Kind == sim.Alarmed && s.again(l) {
		return
	}
	if len(v.Log) >= maxLines {
		n := copy(v.Log, v.Log[maxLines/4:])
		v.Log = v.Log[:n]
	}
	v.Log = append(v.Log, l)
}
