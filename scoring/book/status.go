package book

import (
	"fmt"
	"slices"
	"time"

	"rouleau/assets/words"
)

// Who is due for what, and why. A competency is shown when all that the plan asks for is there and nothing has happened since.

// Standing is how somebody stands in a competency on a day.
type Standing struct {
	Learner    string
	Competency *Competency
	Shown      bool      // all that is asked for is there
	Due        bool      // it is not shown, or has to be shown again
	Until      time.Time // it holds until this day, zero where it was never shown
	Missing    []string  // what is not there yet, in words
	Why        []string  // why it is due, in words
	Cases      int       // supervised cases counted
}

// Status gives the standing of every learner in every competency of the plan in force, in the order of the plan.
func (s *State) Status(p *Plan, today time.Time) []Standing {
	var all []Standing
	for _, who := range s.learners() {
		for i := range p.Competencies {
			all = append(all, s.standing(p, &p.Competencies[i], who, today))
		}
	}
	return all
}

// learners are the codes of all learners, in order.
func (s *State) learners() []string {
	var all []string
	for _, p := range s.people {
		if p.Role == Learner && !p.Ended && !slices.Contains(all, p.Code) {
			all = append(all, p.Code)
		}
	}
	slices.Sort(all)
	return all
}

// standing works out one learner and one competency. What was shown before an event that asks for it to be shown again does not
// count; on the day of the event the order in the book decides.
func (s *State) standing(p *Plan, c *Competency, who string, today time.Time) Standing {
	st := Standing{Learner: who, Competency: c}
	since, why := s.askedAgain(c, who, today)
	var last time.Time // when the newest part of what is asked for was shown
	for _, pc := range c.Scenarios {
		done, newest := s.passes(pc.ID, who, since, today)
		if done < max(1, pc.Passes) {
			st.Missing = append(st.Missing, words.Say("book.missing_case", pc.ID, done, max(1, pc.Passes)))
		}
		last = later(last, newest)
	}
	for _, name := range c.Items {
		ok, at := s.reached(p, name, who, since, today)
		if !ok {
			st.Missing = append(st.Missing, words.Say("book.missing_item", name))
		}
		last = later(last, at)
	}
	var newest time.Time
	st.Cases, newest = s.cases(c.Name, who, today)
	if st.Cases < c.SupervisedCases {
		st.Missing = append(st.Missing, words.Say("book.missing_cases", st.Cases, c.SupervisedCases))
	}
	last = later(last, newest)
	st.Shown = len(st.Missing) == 0
	if !st.Shown {
		st.Due = true
		if why != "" {
			st.Why = append(st.Why, why)
		}
		return st
	}
	st.Until = s.holds(c, who, last, since, today)
	if c.InactivityMonths > 0 && last.AddDate(0, c.InactivityMonths, 0).Before(today) {
		st.Due = true
		st.Why = append(st.Why, words.Say("book.due_inactive", c.InactivityMonths, last.Format(dateForm)))
	}
	if st.Until.Before(today) {
		st.Due = true
		st.Why = append(st.Why, words.Say("book.due_interval", st.Until.Format(dateForm)))
	}
	return st
}

func later(a, b time.Time) time.Time {
	if b.After(a) {
		return b
	}
	return a
}

// dueAfter are the words for each event.
var dueAfter = map[string]string{EventIncident: "book.due_incident", EventEquipment: "book.due_equipment", EventAway: "book.due_away"}

// moment is when an event was: its day, and its place in the book.
type moment struct {
	day time.Time
	seq int64
}

// before says whether something was shown after it: on a later day, or on the same one by a later record.
func (m moment) before(e *Entry, day time.Time) bool {
	return day.After(m.day) || day.Equal(m.day) && e.Seq > m.seq
}

// askedAgain is the newest event after which the competency has to be shown again.
func (s *State) askedAgain(c *Competency, who string, today time.Time) (since moment, why string) {
	since.seq = -1
	for _, e := range s.Entries {
		b, ok := e.Body.(*Event)
		if !ok || !e.InForce() || b.Learner != "" && b.Learner != who || !slices.Contains(c.After, b.What) {
			continue
		}
		if at := day(b.Date); !at.After(today) && !at.Before(since.day) {
			since, why = moment{at, e.Seq}, words.Say(dueAfter[b.What], b.Date, b.Reason)
		}
	}
	return since, why
}

// passes counts the sign-offs of a case as competent, each seed once.
func (s *State) passes(scenario, who string, since moment, today time.Time) (n int, newest time.Time) {
	var seeds []string
	for _, e := range s.Entries {
		b, ok := e.Body.(*SignOff)
		if !ok || !e.InForce() || b.Learner != who || b.Scenario.ID != scenario || b.Outcome != Competent {
			continue
		}
		at := day(b.Date)
		if !since.before(e, at) || at.After(today) || slices.Contains(seeds, b.Seed) {
			continue
		}
		seeds = append(seeds, b.Seed)
		newest = later(newest, at)
	}
	return len(seeds), newest
}

// reached says whether an item has its level in the newest record that rates it.
func (s *State) reached(p *Plan, item, who string, since moment, today time.Time) (ok bool, at time.Time) {
	needs := mostLevel
	for i := range p.Items {
		if p.Items[i].Name == item {
			needs = p.Items[i].Needs
		}
	}
	for _, e := range s.Entries {
		b, is := e.Body.(*SignOff)
		if !is || !e.InForce() || b.Learner != who || !since.before(e, day(b.Date)) || day(b.Date).After(today) {
			continue
		}
		for _, r := range b.Rated {
			if r.Item == item && !day(b.Date).Before(at) {
				ok, at = r.Level >= needs, day(b.Date)
			}
		}
	}
	return ok, at
}

// cases counts supervised cases; they stay counted after an event.
func (s *State) cases(competency, who string, today time.Time) (n int, newest time.Time) {
	for _, e := range s.Entries {
		if b, ok := e.Body.(*Case); ok && e.InForce() && b.Learner == who && b.Competency == competency && !day(b.Date).After(today) {
			n++
			newest = later(newest, day(b.Date))
		}
	}
	return n, newest
}

// holds is until when what was shown holds: the interval from the newest, or an earlier date that an assessor has set for one of
// the cases.
func (s *State) holds(c *Competency, who string, last time.Time, since moment, today time.Time) time.Time {
	until := last.AddDate(0, max(1, c.IntervalMonths), 0)
	for _, pc := range c.Scenarios {
		var due time.Time
		for _, e := range s.Entries {
			b, ok := e.Body.(*SignOff)
			if ok && e.InForce() && b.Learner == who && b.Scenario.ID == pc.ID && b.Outcome == Competent && since.before(e, day(b.Date)) && !day(b.Date).After(today) {
				due = later(due, day(b.Due))
			}
		}
		if !due.IsZero() && due.Before(until) {
			until = due
		}
	}
	return until
}

// day is the day of a date or a time, zero where it is neither.
func day(text string) time.Time {
	if len(text) >= len(dateForm) {
		if t, err := time.Parse(dateForm, text[:len(dateForm)]); err == nil {
			return t
		}
	}
	return time.Time{}
}

// Plan is the plan in force, nil where none was set.
func (s *State) Plan() *Plan {
	for i := len(s.Entries) - 1; i >= 0; i-- {
		if b, ok := s.Entries[i].Body.(*PlanText); ok && s.Entries[i].InForce() {
			p, err := ReadPlan("plan", []byte(b.YAML))
			if err == nil {
				return p
			}
		}
	}
	return nil
}

// String tells a standing in one line, for logs and tests.
func (st *Standing) String() string {
	return fmt.Sprintf("%s %s shown %v due %v until %s %v %v", st.Learner, st.Competency.Name, st.Shown, st.Due, st.Until.Format(dateForm), st.Missing, st.Why)
}
