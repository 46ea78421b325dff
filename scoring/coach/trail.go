// The trail: what scales and counters showed over the last minutes, from which the drip for each 100 mL of blood is read.

package coach

import (
	"math"

	"rouleau/sim"
)

const (
	trailS       = 300 // seconds over which the drip per 100 mL of blood is read off the scales
	leastBloodML = 25  // in them: less says nothing
)

// spot is what scales and counters showed at one second.
type spot struct{ drawnML, takenML, addedML float64 }

// Trail remembers one spot a second. Its zero value is the start of a case.
type Trail struct {
	spots   [trailS]spot
	seconds int
	addedML float64 // irrigation and rinse that went to the reservoir
	basinML float64 // rinse that waited a second ago
	takenML float64 // what scales showed a second ago
	drawnML float64
}

// Add takes one second and gives the anticoagulant for each 100 mL of blood, not a number where too little came.
func (t *Trail) Add(seen *sim.Seen) float64 {
	// what is sucked is not all blood: the rinse of swabs is counted off, and irrigation by its share of what wells up
	rinse := max(0, t.basinML-seen.BasinML)
	t.basinML = seen.BasinML
	sucked := seen.TakenInML - t.takenML - (seen.DripML - t.drawnML) - rinse
	t.takenML, t.drawnML = seen.TakenInML, seen.DripML
	t.addedML += rinse
	if all := seen.BriskMLMin + seen.IrrigationMLMin; all > 0 && sucked > 0 {
		t.addedML += float64(sucked*seen.IrrigationMLMin) / all
	}
	now := spot{seen.DripML, seen.TakenInML, t.addedML}
	before := t.spots[t.seconds%trailS]
	t.spots[t.seconds%trailS] = now
	t.seconds++
	drawn, blood := now.drawnML-before.drawnML, now.takenML-before.takenML-(now.addedML-before.addedML)
	if blood -= drawn; blood >= leastBloodML && t.seconds > 1 {
		return 100 * drawn / blood
	}
	return math.NaN()
}

// UnwatchedS is how long ago the trainee last looked at the patient, infinite where it never was.
func UnwatchedS(acts []sim.Action, tick int64) float64 {
	for i := len(acts) - 1; i >= 0; i-- {
		if acts[i].Do == sim.Watch {
			return sim.Seconds(tick - acts[i].Tick)
		}
	}
	return math.Inf(1)
}
