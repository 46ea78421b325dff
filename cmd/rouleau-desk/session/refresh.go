// Filling the view: what a person could see, and in practice the truth beside it.

package session

import (
	"slices"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/says"
	"rouleau/sim"
)

// Refresh brings the view up to the state of the run. It is called before each frame.
func (s *Session) Refresh() {
	v, st := &s.View, &s.Run.State
	sim.View(&s.Run.Case, st, &v.Seen)
	s.readLog()
	s.look(&v.Drawn)
	v.Truth = bench.Truth{}
	if v.ShowTruth {
		s.truth(&v.Truth)
	}
	v.BusyLeftS = max(0, sim.Seconds(st.Bench.HandsUntil-st.Tick))
	for i := range st.Tally {
		v.Tally[i] = st.Tally[i].ML
	}
	s.question()
	s.alarms()
	s.hints()
	s.showGuide()
	s.lookAtDebrief()
}

// readLog puts new lines of the run's log into words.
func (s *Session) readLog() {
	for ; s.read < len(s.Run.Log); s.read++ {
		o := &s.Run.Log[s.read]
		l := s.line(o)
		if o.Kind == sim.Came && o.Act.Do == sim.Inspect && int(o.Act.On) < len(s.View.Heard) {
			s.View.Heard[o.Act.On] = says.Came(o)
		}
		if o.Kind == sim.Said {
			s.View.Said = append(s.View.Said, l)
			if n := len(s.View.Said); n > 8 {
				s.View.Said = append(s.View.Said[:0], s.View.Said[n-4:]...)
			}
			l.Text = words.Say("log.said", words.Say("speaker."+l.Who), l.Text)
		}
		if o.Kind != sim.Done || o.Act.Do != sim.Inspect { // what a look brought to light says it all
			s.add(l)
		}
		s.mark(o, &l)
	}
}

// question is the oldest question that waits.
func (s *Session) question() {
	t := &s.Run.State.Team
	s.View.Question = bench.Question{}
	i := t.OpenQuestion()
	if i < 0 {
		return
	}
	q := &t.Questions[i]
	text := ""
	if q.Line >= 0 && int(q.Line) < len(s.View.Story.Lines) {
		text = s.View.Story.Lines[q.Line]
	}
	s.View.Question = bench.Question{Open: true, Who: q.Who.String(), Text: text, Loss: q.Kind == sim.EventAskLoss,
		SinceS: sim.Seconds(s.Run.State.Tick - q.AskedTick)}
}

// alarms lists what is on, most urgent first, newest first among equals.
func (s *Session) alarms() {
	v, a := &s.View, &s.Run.State.Alarms
	v.Alarms = v.Alarms[:0]
	for i := sim.Alarm(0); i < sim.AlarmCount; i++ {
		if !a.On[i] {
			continue
		}
		v.Alarms = append(v.Alarms, bench.Alarm{Is: i, SinceS: sim.Seconds(s.Run.State.Tick - a.Since[i]), Known: s.known[i]})
	}
	slices.SortStableFunc(v.Alarms, func(x, y bench.Alarm) int {
		if p := int(y.Is.Priority()) - int(x.Is.Priority()); p != 0 {
			return p
		}
		return int(x.SinceS - y.SinceS)
	})
}
