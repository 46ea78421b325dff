// Filling the view: what a person could see, and in practice the truth beside it.

package session

import (
	"math"
	"slices"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
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
}

// readLog puts new lines of the run's log into words.
func (s *Session) readLog() {
	for ; s.read < len(s.Run.Log); s.read++ {
		o := &s.Run.Log[s.read]
		l := s.line(o)
		if o.Kind == sim.Came && o.Act.Do == sim.Inspect && int(o.Act.On) < len(s.View.Heard) {
			s.View.Heard[o.Act.On] = filled("came."+o.Key, o.Value)
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
		s.mark(o)
	}
}

// marked are the acts that stand as marks on the charts.
var marked = map[sim.Verb]string{sim.Fill: "mark.fill", sim.Wash: "mark.wash", sim.Empty: "mark.empty", sim.Mix: "mark.mix", sim.Prime: "mark.prime",
	sim.GiveRate: "mark.give", sim.Route: "mark.route", sim.SetDrip: "mark.drip", sim.Hook: "mark.hook"}

func (s *Session) mark(o *sim.Occurrence) {
	if o.Kind != sim.Done || marked[o.Act.Do] == "" {
		return
	}
	m := bench.Mark{S: sim.Seconds(o.Tick), Text: words.Say(marked[o.Act.Do])}
	if n := len(s.charts.Marks); n > 0 && s.charts.Marks[n-1].Text == m.Text && m.S-s.charts.Marks[n-1].S < 30 {
		s.charts.Marks[n-1] = m // a value turned in steps is one mark
		return
	}
	s.charts.Marks = append(s.charts.Marks, m)
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
			s.known[i] = false
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

const (
	trailS       = 300 // seconds over which the drip per 100 mL of blood is read off the scales
	leastBloodML = 25  // in them: less says nothing
)

// trail is what scales and counters showed at one second.
type trail struct{ drawnML, takenML, addedML float64 }

// sample adds one second to the charts.
func (s *Session) sample() {
	seen := &s.seen
	sim.View(&s.Run.Case, &s.Run.State, seen)
	h := &s.charts
	sec := len(h.Reservoir)
	// what is sucked is not all blood: the rinse of swabs is counted off, and irrigation by its share of what wells up
	rinse := max(0, s.basin-seen.BasinML)
	s.basin = seen.BasinML
	sucked := seen.TakenInML - s.taken - (seen.DripML - s.drawn) - rinse
	s.taken, s.drawn = seen.TakenInML, seen.DripML
	s.added += rinse
	if all := seen.BriskMLMin + seen.IrrigationMLMin; all > 0 && sucked > 0 {
		s.added += sucked * seen.IrrigationMLMin / all
	}
	now := trail{seen.DripML, seen.TakenInML, s.added}
	before := s.drip[sec%trailS]
	s.drip[sec%trailS] = now
	per := math.NaN()
	drawn, blood := now.drawnML-before.drawnML, now.takenML-before.takenML-(now.addedML-before.addedML)
	if blood -= drawn; blood >= leastBloodML && sec > 0 {
		per = 100 * drawn / blood
	}
	h.Reservoir = append(h.Reservoir, seen.ReservoirML)
	h.Drip = append(h.Drip, per)
	detector := math.NaN() // it reads only while the bowl spins
	if seen.Pump.Detector > 0 {
		detector = seen.Pump.Detector
	}
	h.Detector = append(h.Detector, detector)
	hb := math.NaN()
	if seen.Gas.Tick >= 0 && seen.Gas.HbGDL > 0 {
		hb = seen.Gas.HbGDL
	}
	h.Hb = append(h.Hb, hb)
	h.Bleed = append(h.Bleed, seen.BriskMLMin)
	if s.options.Assessment {
		return
	}
	st := &s.Run.State
	h.TrueBed = append(h.TrueBed, st.Bowl.FillFraction())
	h.TrueHb = append(h.TrueHb, st.Patient.Blood.HbGPerDL())
	h.TrueB = append(h.TrueB, st.Field.BleedMLMin)
}
