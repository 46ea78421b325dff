// How the person who played saw each objective: asked when the case has ended and is saved, before anything of the verdict is
// shown, and then kept in the file of the attempt.

package session

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/scenarios"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/scoring/debrief"
)

// SelfOf puts marks beside a grade, in the terms of the result page. A lesson asks for none.
func SelfOf(sc *scenarios.Scenario, g *scoring.Grade, self *attempt.Self) bench.Self {
	if sc.Lesson() {
		return bench.Self{}
	}
	s := bench.Self{Rule: debrief.SelfRule()}
	for m := attempt.WentWell; m < attempt.MarkCount; m++ {
		s.Choices = append(s.Choices, debrief.MarkWords(m))
	}
	for _, b := range debrief.SideBySide(sc, g, self) {
		measured := b.Measured.String()
		if len(b.Errors) > 0 {
			measured = words.Say("self.for_an_error", measured)
		}
		was := int(b.Measured)
		if b.Measured == debrief.NothingToJudge {
			was = -1
		}
		s.Rows = append(s.Rows, bench.SelfRow{ID: b.Objective.ID, Part: b.PartTitle, Text: b.Objective.Text, Measured: measured, Was: was, Points: b.Points, Of: b.Of})
	}
	if self != nil {
		mark(&s, self)
	}
	return s
}

// mark puts marks into rows that have none yet.
func mark(s *bench.Self, self *attempt.Self) {
	s.Given, s.Otherwise = true, self.Otherwise
	var all []debrief.Apart
	for i := range s.Rows {
		r := &s.Rows[i]
		own := self.Of(r.ID)
		level := debrief.NothingToJudge
		if r.Was >= 0 {
			level = debrief.Level(r.Was)
		}
		apart := debrief.Compare(own, level)
		r.Own, r.Seen, r.Apart = debrief.MarkWords(own), placeOf(own), ""
		if apart != debrief.NoMark {
			r.Apart = apart.String()
		}
		r.Parts = apart != debrief.Agree && apart != debrief.NoMark
		all = append(all, apart)
	}
	s.Sum = debrief.SumUp(all)
}

// placeOf is the place of a mark on the scale, -1 for none.
func placeOf(m attempt.Mark) int {
	switch m {
	case attempt.WentWell:
		return 2
	case attempt.WentPartly:
		return 1
	case attempt.NotWell:
		return 0
	}
	return -1
}

// ask has the objectives marked before the verdict, where the case was played by hand and graded.
func (s *Session) ask() {
	r := &s.View.Result
	if s.View.Watching {
		if self := s.options.WatchSelf; self != nil && len(r.Self.Rows) > 0 {
			mark(&r.Self, self)
		}
		return
	}
	r.Self.Asked = r.Graded && len(r.Self.Rows) > 0
}

// giveMarks keeps what was marked, and opens the verdict.
func (s *Session) giveMarks(m *bench.Marks) {
	r := &s.View.Result
	if !r.Self.Asked || m == nil {
		return
	}
	self := &attempt.Self{Otherwise: m.Otherwise}
	for i := range r.Self.Rows {
		own := attempt.NotMarked
		if i < len(m.Each) && m.Each[i] > 0 && m.Each[i] < int(attempt.MarkCount) {
			own = attempt.Mark(m.Each[i])
		}
		self.Marks = append(self.Marks, attempt.ObjectiveMark{Objective: r.Self.Rows[i].ID, Mark: own})
	}
	mark(&r.Self, self)
	r.Self.Asked, s.marks = false, self
	if r.SavedAs == "" {
		return
	}
	if err := s.KeepMarks(r.SavedAs); err != nil {
		r.Fault = words.Say("self.not_kept", err)
	}
}

// KeepMarks puts the marks that were given into the file of the attempt, where there are some.
func (s *Session) KeepMarks(path string) error {
	if s.marks == nil {
		return nil
	}
	return attempt.KeepSelf(path, *s.marks)
}
