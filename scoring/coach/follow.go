// Follow: a player that does what a lesson says, to the letter and nothing else. It shows that a lesson can be finished, and
// how long that takes a trainee.

package coach

import (
	"math"

	"rouleau/scenarios"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// Walked is one step as it was played.
type Walked struct {
	Then   string // what the trainee read when it was over
	Passed bool   // it was over before it came
	Stuck  string // it was told that it could not come any more
	AtS    float64
}

// Played is a lesson played to its end, or to where it could not go on.
type Played struct {
	Run   *play.Run
	Steps []Walked // those that are over
	Done  bool
	Why   sim.Reason // why the bench refused the act of the step that was not over; "" when it never came
	WallS float64    // what it takes a trainee: reading, acting and waiting
}

const (
	hurry     = 10.0    // how many times as fast a wait passes where the lesson allows it
	patienceS = 20 * 60 // what a step may take of the case's time
)

// Follow plays the lesson of a scenario. Nothing is played where there is none.
func Follow(sc *scenarios.Scenario, seed uint64) Played {
	f := &follower{g: NewGuide(sc), out: Played{Run: play.New(sc.Case(seed, false), seed)}}
	if f.g == nil {
		return f.out
	}
	r := f.out.Run
	f.sight = Sight{Seen: &f.seen, DripPer100: math.NaN(), ReservoirML: r.Case.Faults.ReservoirML}
	for {
		f.look()
		f.move()
		f.out.Done = f.g.Done()
		if f.out.Done || r.State.Ended || f.g.Stands() || sim.Seconds(r.State.Tick-f.since) > patienceS {
			return f.out
		}
		for range sim.TicksPerSecond {
			r.Step()
		}
		f.pass()
	}
}

type follower struct {
	g     *Guide
	out   Played
	seen  sim.Seen
	sight Sight
	trail Trail
	since int64 // tick at which the step came
	met   int   // steps noted
	stuck string
}

// look sees the bench and lets the lesson go on.
func (f *follower) look() {
	r := f.out.Run
	sim.View(&r.Case, &r.State, &f.seen)
	f.sight.UnwatchedS = UnwatchedS(r.Actions, r.State.Tick)
	if r.State.Tick%sim.TicksPerSecond == 0 && f.trail.seconds == int(r.State.Tick/sim.TicksPerSecond) {
		f.sight.DripPer100 = f.trail.Add(&f.seen)
	}
	f.g.Look(&f.sight, r.Actions)
	if told := f.g.Card().Stuck; told != "" {
		f.stuck = told
	}
	f.note()
}

// note keeps which steps are over, with what was said.
func (f *follower) note() {
	for f.met < f.g.at {
		passed := f.met < f.g.at-1 || f.g.passed != ""
		f.over(Walked{Then: f.g.passed, Passed: passed})
	}
	if f.g.met && f.met == f.g.at {
		f.over(Walked{Then: f.g.then})
	}
}

func (f *follower) over(w Walked) {
	step := &f.g.steps[f.met]
	f.out.WallS += step.TraineeS()
	w.Stuck, f.stuck = f.stuck, ""
	w.AtS = sim.Seconds(f.out.Run.State.Tick)
	f.out.Steps = append(f.out.Steps, w)
	f.met++
	f.since = f.out.Run.State.Tick
	f.out.Why = ""
}

// move does all that the card asks for and that takes no time.
func (f *follower) move() {
	for !f.g.Done() {
		before, met := f.g.at, f.g.met
		step := &f.g.steps[before]
		switch {
		case met || step.Until.Read:
			f.g.Next()
			f.note()
		case step.Until.Act == nil:
			return
		default:
			if f.out.Why = f.out.Run.Do(f.g.asks(step.Until.Act)); f.out.Why != "" {
				return
			}
		}
		if f.look(); f.g.at == before && f.g.met == met {
			return // what was done did not count yet
		}
	}
}

// pass counts what a second of the case takes of the trainee's time.
func (f *follower) pass() {
	if f.g.Hurry() {
		f.out.WallS += 1 / hurry
		return
	}
	f.out.WallS++
}
