// The guide: where a trainee stands in a lesson. It is looked at once a second and after each act, and goes on when what its
// step waits for has come.

package coach

import (
	"rouleau/scenarios"
	"rouleau/sim"
)

// Guide leads through the steps of a lesson. Use NewGuide.
type Guide struct {
	steps  []scenarios.Step
	packs  []pack
	at     int    // the step now; as many as there are steps when all are over
	shown  int    // the step being read, at or before it
	fresh  bool   // it was not looked at before
	met    bool   // what it waits for has come, and what it says then is being read
	then   string // that, with the readings of that moment
	passed string // what was done already, for the steps passed over last
	used   []used // acts that have counted for a step
	busy   bool   // hands or bowl are finishing something
	stuck  stuck  // what is known of a wait that does not come
	tick   int64
}

// pack is what is printed on a pack.
type pack struct {
	solution string
	expired  bool
}

// used is how far the log has counted for steps about one act.
type used struct {
	do  sim.Verb
	on  sim.Part
	log int
}

// NewGuide begins the lesson of a scenario, nil where it has none.
func NewGuide(sc *scenarios.Scenario) *Guide {
	if !sc.Lesson() {
		return nil
	}
	g := &Guide{steps: sc.Guidance, fresh: true}
	for _, p := range sc.Bench.Packs {
		g.packs = append(g.packs, pack{p.Solution, p.Expires.Before(sc.Day)})
	}
	return g
}

// Look goes on as far as what can be seen and what was done so far allow.
func (g *Guide) Look(s *Sight, acts []sim.Action) {
	g.busy = s.Seen.HandsBusy || s.Seen.Pump.Braking || s.Seen.Mixing
	g.tick = s.Seen.Tick
	for g.at < len(g.steps) && !g.met {
		step := &g.steps[g.at]
		fresh := g.fresh
		g.fresh = false
		if step.Until.Read || !g.holds(&step.Until, s, acts) {
			g.stuck.watch(&step.Until, s, fresh)
			return
		}
		g.use(&step.Until, len(acts))
		then := s.Fill(step.Then)
		switch {
		case fresh:
			g.passed = then
			if then == "" {
				g.passed = step.Do
			}
			g.forward()
		case then == "":
			g.passed = ""
			g.forward()
		default:
			g.met, g.then = true, then
		}
	}
}

// forward goes to the next step.
func (g *Guide) forward() {
	g.at++
	g.shown, g.fresh, g.met, g.then = g.at, true, false, ""
}

// Next is the trainee going on: from what is read again, from what was read, or past a wait. Look must follow.
func (g *Guide) Next() {
	switch {
	case g.shown < g.at:
		g.shown++
	case g.at < len(g.steps):
		g.passed = ""
		g.forward()
	}
}

// Back reads the step before again.
func (g *Guide) Back() { g.shown = max(0, g.shown-1) }

// Done says whether all steps are over.
func (g *Guide) Done() bool { return g.at >= len(g.steps) }

// Stands says whether the clock of the case must stand, so that nothing happens to somebody who reads. What the hands have
// begun is always finished.
func (g *Guide) Stands() bool {
	switch {
	case g.shown < g.at:
		return true
	case g.Done():
		return false
	}
	step := &g.steps[g.at]
	if g.met {
		return step.Time != "runs"
	}
	return step.Stands() && (step.Until.Read || !g.busy)
}

// Hurry says whether what goes on now may be passed at ten times the pace.
func (g *Guide) Hurry() bool {
	if g.shown < g.at || g.Done() || g.met || g.steps[g.at].Until.Read {
		return false
	}
	return g.steps[g.at].Fast && g.stuck.told == "" || g.steps[g.at].Stands() && g.busy
}

// Card is what is shown of a lesson now.
type Card struct {
	Step   *scenarios.Step // nil when all are over
	N, Of  int             // counted from 1
	Then   string          // not empty: it has come, and this is what happened
	Passed string          // what was done already and passed over
	Old    bool            // an earlier step is read again
	Stuck  string          // not empty: what it waits for cannot come any more, for this reason
}

// Card gives the step that is shown.
func (g *Guide) Card() Card {
	c := Card{N: min(g.shown+1, len(g.steps)), Of: len(g.steps), Old: g.shown < g.at}
	if g.shown < len(g.steps) {
		c.Step = &g.steps[g.shown]
	}
	if !c.Old {
		c.Then, c.Passed = g.then, g.passed
		if c.Step != nil && !g.met {
			c.Stuck = g.stuck.told
		}
	}
	return c
}

// Steps are all steps, for who needs to make room for the longest.
func (g *Guide) Steps() []scenarios.Step { return g.steps }
