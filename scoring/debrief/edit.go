package debrief

import (
	"slices"

	"rouleau/sim"
)

// What is otherwise in a fork: one decision put right.

// Edit is what one fork changes. All of it together puts one decision right; what it does not name stays as the person did it.
type Edit struct {
	Drop  []int    // own acts left out
	Swap  []Swap   // own acts done with another value, or at another time
	First []First  // acts done just before one's own, which waits for them
	Add   []Add    // acts put in at a time
	Stops []StopAt // own acts that end a filling or a wash, at another reading
	Rule  *Rule    // a small rule that acts once a second for a while
	Good  int64    // from this tick on steady plays instead, because nothing of the person's own could follow; 0 for never
}

// Swap replaces one of the person's acts.
type Swap struct {
	Own int        // which of Record.Run.Actions
	Act sim.Action // with the tick at which it is to be done
}

// First puts acts before one of the person's own.
type First struct {
	Own  int
	Acts []sim.Action
}

// Add puts an act in. It is tried from its tick on until it is possible, for at most PatienceS seconds (0: two minutes).
type Add struct {
	Act       sim.Action
	PatienceS int
}

// StopAt says at which reading one of the person's own acts, which ends filling or washing, is done instead.
type StopAt struct {
	Own      int
	Detector float64 // of the detector, when filling
	WashedML float64 // when washing
}

// Rule acts once a second from one tick to another.
type Rule struct {
	From, Until int64
	Act         func(v *sim.Seen, do func(sim.Action) sim.Reason)
	Waits       func(v *sim.Seen) bool // as long as it says so the tidy end waits; nil for never
	Does        line                   // the line of work that it does in its time, whose leftovers the hand leaves to it
}

// begins is the first tick at which anything is otherwise.
func (e *Edit) begins(rec *Record) int64 {
	at := rec.lastTick
	own := func(i int) { at = min(at, rec.Run.Actions[i].Tick) }
	for _, i := range e.Drop {
		own(i)
	}
	for _, s := range e.Swap {
		own(s.Own)
		at = min(at, s.Act.Tick)
	}
	for _, f := range e.First {
		own(f.Own)
	}
	for _, a := range e.Add {
		at = min(at, a.Act.Tick)
	}
	for _, s := range e.Stops {
		// it may have to be done earlier than the person did it: since the process that it ends began
		at = min(at, rec.began(s.Own))
	}
	if e.Rule != nil {
		at = min(at, e.Rule.From)
	}
	if e.Good > 0 {
		at = min(at, e.Good)
	}
	return max(0, at)
}

// began is when the process that one of the person's acts ended had begun.
func (rec *Record) began(own int) int64 {
	mode := rec.moments[own].seen.Pump.Mode
	tick := rec.Run.Actions[own].Tick
	for tick > 0 && rec.at(tick-sim.TicksPerSecond).PumpMode == mode {
		tick -= sim.TicksPerSecond
	}
	return max(0, tick-sim.TicksPerSecond)
}

func (e *Edit) drops(i int) bool { return slices.Contains(e.Drop, i) }
