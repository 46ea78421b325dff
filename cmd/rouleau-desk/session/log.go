// The log as the window keeps it: lines of the run in words, lines of its own, and alarms that flicker drawn together.

package session

import (
	"slices"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/sim"
)

// note puts a line of the window's own into the log. Those of the person's own acts come about again with them.
func (s *Session) note(text string) {
	if s.journal != nil && !s.acting {
		s.journal.Note(s.Run.State.Tick, text)
	}
	s.tell(text)
}

// tell puts a line into the log that is not kept.
func (s *Session) tell(text string) {
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
