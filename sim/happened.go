package sim

// What happened, for the log: said by people, done by hands, brought about by the bench.

// OccurrenceKind sorts occurrences.
type OccurrenceKind uint8

// The kinds.
const (
	Said    OccurrenceKind = iota + 1 // by a person; Key in the catalogue, or Line of the scenario
	Done                              // an accepted action
	Refused                           // a rejected one; Key is the reason
	Came                              // brought about by the bench or the body
	Alarmed                           // an alarm came on; Key is its name
	Calmed                            // and went off
)

// Occurrence is one line of the log.
type Occurrence struct {
	Tick  int64
	Kind  OccurrenceKind
	Who   Speaker
	Key   string  // catalogue key, "" when Line says it
	Line  int     // index of the scenario's line, -1 for none
	Value float64 // what the key's text wants to show
	Act   Action
}

// Happened gathers occurrences; the caller owns and empties it.
type Happened struct{ List []Occurrence }

func (h *Happened) add(o Occurrence) { h.List = append(h.List, o) }

func (h *Happened) say(tick int64, who Speaker, key string) {
	h.add(Occurrence{Tick: tick, Kind: Said, Who: who, Key: key, Line: -1})
}

func (h *Happened) sayValue(tick int64, who Speaker, key string, value float64) {
	h.add(Occurrence{Tick: tick, Kind: Said, Who: who, Key: key, Line: -1, Value: value})
}

func (h *Happened) act(tick int64, key string, value float64) {
	h.add(Occurrence{Tick: tick, Kind: Came, Who: Bench, Key: key, Line: -1, Value: value})
}
