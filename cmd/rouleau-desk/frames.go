// What frames cost: the time of update and draw of each, told at the end of a measurement.

package main

import (
	"slices"
	"time"

	"rouleau/assets/words"
)

// frameCosts keeps the cost of every frame of a measurement, and apart those of washing, when most of the drawing moves.
type frameCosts struct{ all, washing []time.Duration }

func (f *frameCosts) add(update, draw time.Duration, washing bool) {
	f.all = append(f.all, update+draw)
	if washing {
		f.washing = append(f.washing, update+draw)
	}
}

func (f *frameCosts) report() string {
	line := func(key string, costs []time.Duration) string {
		slices.Sort(costs)
		return words.Say(key, len(costs), shareMS(costs, 0.5), shareMS(costs, 0.99), shareMS(costs, 1))
	}
	return line("desk.frames_all", f.all) + "\n" + line("desk.frames_washing", f.washing)
}

// shareMS is the cost that this share of the frames stays within, in milliseconds.
func shareMS(costs []time.Duration, share float64) float64 {
	if len(costs) == 0 {
		return 0
	}
	return float64(costs[int(share*float64(len(costs)-1))].Microseconds()) / 1000
}
