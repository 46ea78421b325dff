// What frames cost: the time of update and draw of each, told at the end of a measurement.

package main

import (
	"slices"
	"time"

	"rouleau/assets/words"
)

// frameCosts keeps the cost of every frame of a measurement.
type frameCosts struct{ all, painted []time.Duration }

func (f *frameCosts) add(update, draw time.Duration, painted bool) {
	f.all = append(f.all, update+draw)
	if painted {
		f.painted = append(f.painted, update+draw)
	}
}

func (f *frameCosts) report() string {
	ms := func(costs []time.Duration, share float64) float64 {
		if len(costs) == 0 {
			return 0
		}
		return float64(costs[int(share*float64(len(costs)-1))].Microseconds()) / 1000
	}
	slices.Sort(f.all)
	slices.Sort(f.painted)
	return words.Say("desk.frames_cost", len(f.all), ms(f.all, 0.5), ms(f.all, 0.99), ms(f.all, 1), len(f.painted), ms(f.painted, 0.99))
}
