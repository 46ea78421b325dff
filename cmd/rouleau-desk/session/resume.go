// Going on with a case whose window had gone: everything in its journal is done again, and comes out the same.

package session

import (
	"errors"
	"slices"
	"time"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/journal"
	"rouleau/scenarios"
	"rouleau/sim"
)

// Resume opens the case of a journal where it was left; seed and mode are the journal's. The scenario is that of the
// journal's record. With an error the journal is as it was, and still open.
func Resume(sc *scenarios.Scenario, j *journal.Journal, o Options) (*Session, error) {
	r := j.Record()
	if r == nil {
		return nil, errors.New(words.Say("journal.no_head"))
	}
	h := &r.Head
	if h.Model != sim.ModelVersion {
		return nil, errors.New(words.Say("journal.model", h.Model, sim.ModelVersion))
	}
	if sc.Hash() != h.Scenario.SHA256 {
		return nil, errors.New(words.Say("journal.other"))
	}
	o.Seed, o.Assessment, o.Journal, o.Watch = h.Seed, h.Assessment(), j, nil
	s := &Session{scenario: sc, options: o}
	s.start(bench.Cautions)
	s.journal = nil
	if err := s.replay(r); err != nil {
		return nil, err
	}
	s.restoreLimit(r.Spent)
	s.lost, s.View.LostS = r.Lost, r.Lost.Seconds()
	at := s.Run.State.Tick
	s.kept = kept{tick: at, hashed: at, spent: s.spent}
	s.journal = j
	now := time.Now()
	j.Resumed(at, now)
	s.View.Interrupted++
	s.note(words.Say("log.resumed", now.Format("15:04"), s.View.Interrupted))
	switch {
	case s.options.Assessment:
		s.note(words.Say("log.resumed_assessed"))
	case s.begun && s.mayRun():
		s.note(words.Say("log.resumed_paused"))
		s.View.Paused = true
	}
	s.keep()
	s.Refresh()
	return s, nil
}

// replay does what a record holds, in the order in which it was done.
func (s *Session) replay(r *journal.Record) error {
	for i := range r.Lines {
		l := &r.Lines[i]
		s.runTo(l.Tick)
		if s.Run.State.Tick != l.Tick || !s.redo(l) {
			return errors.New(words.Say("journal.parts", l.Tick, l.Number))
		}
	}
	if s.runTo(r.Reached); s.Run.State.Tick != r.Reached {
		return errors.New(words.Say("journal.parts", r.Reached, 0))
	}
	return nil
}

func (s *Session) runTo(tick int64) {
	for s.Run.State.Tick < tick && !s.Run.State.Ended {
		s.Tick()
	}
}

// redo does what one line says, and says whether it came out as it was recorded.
func (s *Session) redo(l *journal.Line) bool {
	switch l.Kind {
	case journal.Act:
		return s.apply(l.Act) == l.Refused
	case journal.Window:
		if l.Do == keptTaken {
			s.takeOver()
			return true
		}
		for verb, name := range keptActs {
			if name == l.Do {
				s.act(bench.Act{Do: verb, Value: l.Value, Alarm: alarmNamed(l.What)})
				return true
			}
		}
		return false
	case journal.Note:
		s.tell(l.Text)
	case journal.Resumed:
		s.View.Interrupted++
	case journal.Reached:
		return s.Run.State.Hash() == l.Hash
	}
	return true
}

// alarmNamed finds an alarm by its name; where none is meant it is never asked for.
func alarmNamed(name string) sim.Alarm {
	all := make([]string, sim.AlarmCount)
	for i := range all {
		all[i] = sim.Alarm(i).String()
	}
	return sim.Alarm(max(0, slices.Index(all, name)))
}
