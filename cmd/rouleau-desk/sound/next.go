// When a burst is played: only the most urgent alarm is heard, one that was acknowledged is silent until a new one comes, and
// a burst that has begun is not cut short because its cause went away.

package sound

import (
	"time"

	"rouleau/sim"
)

// Alarms are those that are on, and of these the acknowledged.
type Alarms struct {
	On, Known [sim.AlarmCount]bool
}

// State is what must be remembered from one frame to the next. The zero State is silence.
type State struct {
	Heard    [sim.AlarmCount]bool // the alarms for which the burst is played
	Priority sim.Priority
	Ends     time.Duration // of the burst, while it lasts and after
	Again    time.Duration // when the next burst is due
}

// Order is what the device is to do now.
type Order struct {
	Hush bool    // be silent at once
	Play []int16 // then play these, if there are any
}

// breath is the silence between a burst that was broken off and another of lower priority.
const breath = time.Second

// Next says what to play at a time, which may be counted from any moment but must not run backwards.
func Next(was State, alarms *Alarms, now time.Duration) (State, Order) {
	heard, top, any := mostUrgent(alarms)
	playing := now < was.Ends
	if !any {
		if playing && silenced(&was, alarms) {
			return State{}, Order{Hush: true}
		}
		if playing {
			return was, Order{}
		}
		return State{}, Order{}
	}
	next := State{Heard: heard, Priority: top, Ends: was.Ends, Again: was.Again}
	var order Order
	switch {
	case was.Heard == [sim.AlarmCount]bool{}:
		next.Again = now
	case top > was.Priority:
		order.Hush, next.Again = playing, now
	case top < was.Priority && playing && silenced(&was, alarms):
		next.Ends, next.Again = now, now+breath
		return next, Order{Hush: true}
	case top < was.Priority:
		next.Again = was.Ends + breath
	case isNew(&was, &next): // another of the same priority does not wait for the turn of the first
		next.Again = min(was.Again, was.Ends+breath)
	}
	if now < next.Again {
		return next, Order{}
	}
	p := PatternOf(top)
	next.Ends = now + seconds(p.LengthS())
	next.Again = next.Ends + seconds(p.EveryS)
	order.Play = Burst(top)
	return next, order
}

// mostUrgent gives the alarms of the highest priority among those on and not acknowledged.
func mostUrgent(a *Alarms) (heard [sim.AlarmCount]bool, top sim.Priority, any bool) {
	for i := range sim.AlarmCount {
		if !a.On[i] || a.Known[i] {
			continue
		}
		switch p := i.Priority(); {
		case !any || p > top:
			heard, top, any = [sim.AlarmCount]bool{}, p, true
			heard[i] = true
		case p == top:
			heard[i] = true
		}
	}
	return heard, top, any
}

// silenced says whether one of the alarms heard was acknowledged, so that its burst must end.
func silenced(s *State, a *Alarms) bool {
	for i := range s.Heard {
		if s.Heard[i] && a.On[i] && a.Known[i] {
			return true
		}
	}
	return false
}

func isNew(was, now *State) bool {
	for i := range now.Heard {
		if now.Heard[i] && !was.Heard[i] {
			return true
		}
	}
	return false
}

func seconds(s float64) time.Duration { return time.Duration(s * float64(time.Second)) }
