// Package sim is the bench and the patient: a pure, deterministic model of a bleeding patient, the wound, the sucker, the
// anticoagulant drip, the reservoir, a spinning bowl, the bags, the return and the people around them.
//
// It knows no files, no clock and no window. A [Case] says what does not change during a run, a [State] is everything that
// does, as one plain copyable value, and an [Action] is the only way in. The loop is always the same:
//
//	state := sim.Start(&theCase, seed)
//	for !state.Ended {
//	    sim.Apply(&theCase, &state, action, &happened)   // the actions stamped with this tick
//	    sim.Step(&theCase, &state, &happened)            // one tick of 50 ms
//	}
//
// The same case, seed and actions give the same bits on every processor: only + - * / and math.Sqrt are used beside package
// guarded, and every product that is added to something is rounded first by an explicit conversion, float64(a*b) + c.
//
// Constants carry a mark: [S] published source, [P] common practice, [C] calibrated, [A] assumption, [M] from memory.
package sim

// ModelVersion names the equations and constants of this package. It changes whenever a run may come out otherwise, so that
// old attempts are never silently judged by a newer model.
const ModelVersion = "3"

// TicksPerSecond is the fixed step of the model: 50 ms.
const TicksPerSecond = 20

// tickS is one tick in seconds.
const tickS = 1.0 / TicksPerSecond

// Seconds turns a tick count into seconds.
func Seconds(tick int64) float64 { return float64(tick) / TicksPerSecond }

// Ticks turns seconds into whole ticks, rounded to the nearest.
func Ticks(seconds float64) int64 { return int64(float64(seconds*TicksPerSecond) + 0.5) }
