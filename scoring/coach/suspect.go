// What is suspicious about a lesson and shows only when it is played: steps that do not come to an end, and more time than
// the lesson says.

package coach

import (
	"fmt"

	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
)

// Suspect plays the lesson of a scenario to the letter and tells what is wrong with it, at its place in the file.
func Suspect(sc *scenarios.Scenario) yamlread.Faults {
	if !sc.Lesson() {
		return nil
	}
	var file scenarios.File
	doc := yamlread.Read(sc.Name, sc.Source, &file)
	p := Follow(sc, 1)
	n := len(p.Steps)
	path := fmt.Sprintf("guidance[%d].until", n)
	const wanted = "a step that somebody who does just what the lesson says can finish"
	switch {
	case p.Done:
		if minutes := p.WallS / 60; minutes >= float64(sc.Minutes)+0.5 {
			doc.Fault("minutes", fmt.Sprintf("with its waits the lesson takes about %.0f minutes", minutes), "more minutes, fast: true on long waits, or fewer words")
		}
	case p.Why != "":
		doc.Fault(path, fmt.Sprintf("the bench refuses this act to somebody who does just what the lesson says (%s)", p.Why), wanted)
	case p.Run.State.Ended:
		doc.Fault(path, "the case ends before this step is over", wanted)
	default:
		doc.Fault(path, "this does not come within twenty minutes of the case", wanted)
	}
	return doc.Faults()
}
