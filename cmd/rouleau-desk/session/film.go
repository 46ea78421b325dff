// What is kept of a recorded attempt while it is watched, so that going to any of its moments takes no longer than a frame: once
// a second what the charts take, and once a minute the state.

package session

import (
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scoring/coach"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// frameEvery is the time between the states that are kept. One is 23 KB, and a minute of ticks takes about a millisecond.
const frameEvery = 60 * sim.TicksPerSecond

// film is what has been kept so far, from the first tick on without a gap.
type film struct {
	seconds []second
	frames  []*frame
	last    *play.Run // that came furthest of those that were gone back from
}

// second is what the charts take of one.
type second struct {
	atS         float64
	values      [bench.SignalCount]float64
	phase, pump string
	fill        ui.BandFill
	given       string
}

// frame is where everything stood before the acts of a tick.
type frame struct {
	mark    play.Mark
	trail   coach.Trail
	watched int
}

// film keeps the moment before a tick, if it is one to keep and is not kept yet.
func (s *Session) film() {
	f := &s.filmed
	if s.Run.State.Tick == int64(len(f.frames))*frameEvery {
		f.frames = append(f.frames, &frame{s.Run.Mark(), s.trail, s.watched})
	}
}

// filmSecond keeps one second of the charts.
func (s *Session) filmSecond(k *second) {
	f := &s.filmed
	if s.Run.State.Tick == int64(len(f.seconds))*sim.TicksPerSecond {
		f.seconds = append(f.seconds, *k)
	}
}

// rewind goes to the last moment that was kept before a tick. From one that lies ahead of it, by less than is kept, the
// session goes on as it is.
func (s *Session) rewind(to int64) {
	f, at := &s.filmed, s.Run.State.Tick
	if len(f.frames) == 0 {
		return // at the very beginning
	}
	k := f.frames[min(to/frameEvery, int64(len(f.frames)-1))]
	if to >= at && k.mark.State.Tick <= at {
		return
	}
	if f.last == nil || at > f.last.State.Tick {
		f.last = s.Run
	}
	s.Run, s.trail, s.watched, s.watchTold = f.last.From(&k.mark), k.trail, k.watched, false
	s.charts, s.read = bench.Charts{}, 0
	for i := range f.seconds[:k.mark.State.Tick/sim.TicksPerSecond] {
		s.chart(&f.seconds[i])
	}
	v := &s.View
	v.Log, v.Said, v.Heard = v.Log[:0], v.Said[:0], [len(v.Heard)]string{}
	for i := range s.known {
		s.known[i] = s.known[i] && s.Run.State.Alarms.On[i]
	}
}
