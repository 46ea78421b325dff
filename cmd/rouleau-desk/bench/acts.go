// Named actions: all that a person can make the window do. Screens return them; the session carries them out. Tests and
// the window speak the same language here.

package bench

import "rouleau/sim"

// Verb is what an act asks of the window itself; an act on the bench is Bench with the action beside it.
type Verb uint8

// The verbs.
const (
	Bench      Verb = iota // Sim: done before the next tick
	GoOn                   // from the cautions to the case sheet, from the sheet to the bench
	BackToCase             // from the bench to the sheet; time stands in practice
	SetSpeed               // Value: how many times as fast
	TogglePause
	Acknowledge // Alarm
	ToggleTruth
	Finish // to the result, after the case has ended
	Again  // the same case from its start
	Leave  // close the window
)

// Act is one act.
type Act struct {
	Do    Verb
	Sim   sim.Action
	Value int
	Alarm sim.Alarm
}

func on(do sim.Verb, part sim.Part, value float64) Act {
	return Act{Sim: sim.Action{Do: do, On: part, Value: value}}
}
