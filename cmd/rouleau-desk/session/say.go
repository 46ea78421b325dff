// What happened, in words: lines of the log.

package session

import (
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/says"
	"rouleau/sim"
)

// line puts one occurrence into words.
func (s *Session) line(o *sim.Occurrence) bench.Line {
	l := bench.Line{S: sim.Seconds(o.Tick), LastS: sim.Seconds(o.Tick), Kind: o.Kind, Auto: o.Act.Auto, Text: says.Occurrence(o, s.View.Story.Lines)}
	switch o.Kind {
	case sim.Said:
		l.Who = o.Who.String()
	case sim.Alarmed, sim.Calmed:
		l.Alarm = o.Key
	}
	return l
}
