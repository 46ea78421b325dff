// The lesson in the window: when the clock stands, when waits are passed quickly, and the card that the bench shows.

package session

import (
	"slices"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/scenarios"
	"rouleau/scoring/coach"
	"rouleau/sim"
)

// hurry is how many times as fast a wait passes.
const hurry = 10

// course is the order in which lessons are meant to be played, and the case that comes after them.
var course = [...]string{"first-bowl", "lesson-anticoagulation", "lesson-the-bowl", "lesson-washing", "steady-oozing-spine"}

// after is what is played after a lesson.
func after(id string) string {
	return course[min(slices.Index(course[:], id)+1, len(course)-1)]
}

// startGuide begins the lesson, which is for practice only. Waits pass quickly until somebody wants to watch them.
func (s *Session) startGuide() {
	s.guide, s.hurrying, s.slowed = nil, true, 0
	if s.options.Assessment || s.View.Watching {
		return
	}
	if s.guide = coach.NewGuide(s.scenario); s.guide == nil {
		return
	}
	if next, err := scenarios.Open(after(s.scenario.ID)); err == nil {
		s.follows = next.Title
	}
	s.guideLook()
}

// guideLook lets the lesson go on as far as it can.
func (s *Session) guideLook() {
	if s.guide == nil {
		return
	}
	sim.View(&s.Run.Case, &s.Run.State, &s.View.Seen)
	s.guide.Look(s.sight(), s.Run.Actions)
}

// guideStands says whether the clock stands for somebody who reads.
func (s *Session) guideStands() bool { return s.guide != nil && s.guide.Stands() }

func (s *Session) guideAct(do bench.Verb) {
	if s.guide == nil {
		return
	}
	s.guideLook() // what came by itself comes before what the person does
	switch do {
	case bench.GuideNext:
		s.guide.Next()
		s.guideLook()
	case bench.GuideBack:
		s.guide.Back()
	case bench.GuideFast:
		s.hurrying = !s.hurrying
	}
}

// pace makes waits quick and gives the person's own pace back after them.
func (s *Session) pace(hurrying bool) {
	v := &s.View
	switch {
	case hurrying && s.slowed == 0 && slices.Contains(v.Speeds, hurry):
		s.slowed, v.Speed = v.Speed, hurry
	case !hurrying && s.slowed != 0:
		v.Speed, s.slowed = s.slowed, 0
	}
}

// showGuide fills in the card.
func (s *Session) showGuide() {
	g := &s.View.Guide
	if s.guide == nil { // watched, or tried again from its middle, a lesson has no cards, and is passed by nobody all the same
		*g = bench.Guide{Done: s.scenario.Lesson() && s.View.Screen == bench.Graded}
		return
	}
	card := s.guide.Card()
	longest := g.Longest
	if longest[0] == "" {
		longest = longestOf(s.guide.Steps())
	}
	hurrying := s.guide.Hurry() && s.hurrying && s.begun
	s.pace(hurrying)
	*g = bench.Guide{On: true, Step: card.N, Of: card.Of, Then: card.Then, Passed: card.Passed, Old: card.Old, First: card.N == 1,
		Hurry: s.guide.Hurry() && slices.Contains(s.View.Speeds, hurry), Hurrying: s.hurrying, Longest: longest}
	if card.Step == nil {
		g.Done, g.Summary = true, s.summary()
		return
	}
	sight := s.sight()
	g.Do, g.Why = sight.Fill(card.Step.Do), sight.Fill(card.Step.Why)
	g.Look, _ = sim.PartNamed(card.Step.Look)
	switch card.Step.Panel {
	case "team":
		g.Tab = bench.TabTeam
	case "records":
		g.Tab = bench.TabRecords
	}
	g.Sheet = card.Step.Look == "" && card.Step.Panel == ""
	g.Read = card.Step.Until.Read || card.Then != ""
	if !g.Read && !g.Old {
		g.Wait = s.waitsFor(card.Step, sight)
		g.Ask, g.Asks = coach.Asks(s.scenario, card.N-1)
		g.Stuck = s.cannotCome(card, g)
	}
}

// cannotCome says why a step does not come to its end, and the way on; "" where it does.
func (s *Session) cannotCome(card coach.Card, g *bench.Guide) string {
	if card.Stuck != "" {
		return words.Line("guide.stuck", words.Say("stuck."+card.Stuck))
	}
	if !g.Asks || s.View.Seen.HandsBusy || !s.guide.Stands() {
		return ""
	}
	if why := s.View.May(g.Ask); why != "" { // the clock stands, so it stays so until something else is done
		return words.Line("guide.stuck", words.Line("guide.stuck_refused", words.Say("why."+string(why))))
	}
	return ""
}

// waitsFor says what a step waits for, with where it stands.
func (s *Session) waitsFor(step *scenarios.Step, sight *coach.Sight) string {
	u := &step.Until
	switch {
	case s.View.Seen.HandsBusy:
		return words.Say("guide.wait_hands")
	case s.View.Seen.Pump.Braking:
		return words.Say("guide.wait_bowl")
	case u.Act != nil && step.Look != "":
		return words.Say("guide.wait_act_at", words.Say("part."+step.Look))
	case u.Act != nil:
		return words.Say("guide.wait_act")
	case u.Reads != nil:
		v, _ := scenarios.VisibleNamed(u.Reads.What)
		return words.Say("guide.wait_reads", v.Meaning, sight.Shown(v.Name))
	}
	return words.Say("guide.wait_holds")
}

// longestOf finds the longest words of each kind, so that the card keeps its size through the lesson.
func longestOf(steps []scenarios.Step) (longest [3]string) {
	for i := range steps {
		for k, text := range [...]string{steps[i].Do, steps[i].Why, steps[i].Then} {
			if len(text) > len(longest[k]) {
				longest[k] = text
			}
		}
	}
	return longest
}

// summary is what came of the lesson, and what to play next.
func (s *Session) summary() []string {
	v := &s.View.Seen
	sum := words.Say("guide.sum_collected", v.TakenInML, v.DripML)
	switch {
	case v.Giving.GivenML > 0:
		sum = words.Say("guide.sum", v.TakenInML, v.DripML, v.Pump.FedML, v.Pump.WashUsedML, v.Giving.GivenML)
	case v.Pump.FedML > 0:
		sum = words.Say("guide.sum_washed", v.TakenInML, v.DripML, v.Pump.FedML, v.Pump.WashUsedML)
	}
	return []string{words.Say("guide.next", s.follows), sum}
}
