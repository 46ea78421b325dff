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
	Finish       // to the result, after the case has ended
	Again        // the same case from its start
	Leave        // close the window
	JumpToNext   // practice: run on to the next thing worth attention
	AgainNewSeed // the same scenario, drawn anew
	GoHome       // to the home screen; a running case is kept
	GuideNext    // lesson: go on, or leave a step that waits
	GuideBack    // lesson: read the step before again
	GuideFast    // lesson: pass waits at ten times the pace, or no longer
	ExportChart  // Value: 0 a picture (PNG), 1 a drawing (SVG); [Desk.Export] makes it
	SaveCopy     // Text: the place where a copy of the attempt should go
	Seek         // Value: seconds of the recorded attempt that is watched, to go to
	TryAgain     // Value: seconds; play on as practice from this moment of the attempt that is watched or has ended
	GiveMarks    // Marks: how each objective went, before the verdict is shown
	OpenDebrief  // play the case otherwise, to tell what decisions cost
	ShowCourses  // Value: a row of the costs, of which both courses are wanted
	SavePage     // Text: the place where the debrief should go as a page
)

// Act is one act.
type Act struct {
	Do    Verb
	Sim   sim.Action
	Value int
	Alarm sim.Alarm
	Text  string
	Marks *Marks
}

func on(do sim.Verb, part sim.Part, value float64) Act {
	return Act{Sim: sim.Action{Do: do, On: part, Value: value}}
}
