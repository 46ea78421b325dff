// What a guided lesson shows: one step as the session fills it in before each frame.

package bench

import "rouleau/sim"

// Guide is the step of a lesson that is shown, or its end.
type Guide struct {
	On       bool
	Step, Of int    // counted from 1
	Do, Why  string // what to do, and what the physics does with it
	Then     string // what has just happened; not empty: it is being read
	Passed   string // what was done already and passed over
	Wait     string // what is waited for, in words; "" where something is read
	Stuck    string // not empty: why that cannot come any more, with the way on
	Ask      sim.Action
	Asks     bool // the step asks for Ask
	Look     sim.Part
	Tab      int
	Read     bool // the way on is to have read it
	Old      bool // an earlier step is read again
	First    bool // there is none before
	Sheet    bool // it is about the case sheet, or about no part of the bench
	Hurry    bool // the wait may be passed at ten times the pace
	Hurrying bool // and waits are
	Done     bool // the last step is over
	Summary  []string
	Longest  [3]string // the longest words of all steps: Do, Why, Then, by which room is made
}
