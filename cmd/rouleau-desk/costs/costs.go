// Package costs keeps what frames of a window cost while it is measured, and sums it up. It knows no display, so that the
// window and the bare one it is compared with count in the same way.
package costs

import (
	"runtime"
	"slices"
	"time"
)

// Batch is how many frames lie between two looks at the count of allocations, which are themselves too dear for each.
const Batch = 120

// Recorder is told of every frame. The zero Recorder is ready.
type Recorder struct {
	own, cpu, painted, whole, washing []time.Duration
	first                             time.Time
	last                              time.Time
	lastPainted                       bool
	batch                             batch
	changing, still                   counts
}

type batch struct {
	frames, painted int
	mallocs         uint64
}

// counts are the batches of one kind.
type counts struct {
	frames   int
	mallocs  uint64
	eachLast []float64 // allocations a frame, by batch
}

// Frame adds one frame: when its update began, what update and draw of our own
// took, whether anything was painted, and
// whether the bowl is washed now, when most of the drawing moves.
func (r *Recorder) Frame(began time.Time, own Cost, painted, washing bool) {
	if r.first.IsZero() && r.lastPainted {
		r.first = began // the first picture has been handed to the display by now
	}
	if !r.last.IsZero() && r.lastPainted {
		r.whole = append(r.whole, began.Sub(r.last))
	}
	r.last, r.lastPainted = began, painted
	r.own = append(r.own, own.Wall)
	r.cpu = append(r.cpu, own.CPU)
	if painted {
		r.painted = append(r.painted, own.Wall)
	}
	if washing {
		r.washing = append(r.washing, own.Wall)
	}
	r.count(painted)
}

// count looks at the allocations once a batch. A batch counts only if all of its frames were of one kind.
func (r *Recorder) count(painted bool) {
	b := &r.batch
	b.frames++
	if painted {
		b.painted++
	}
	if b.frames < Batch {
		return
	}
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	if b.mallocs > 0 {
		c := &r.changing
		if b.painted == 0 {
			c = &r.still
		}
		if b.painted == 0 || 2*b.painted >= b.frames {
			c.frames += b.frames
			c.mallocs += m.Mallocs - b.mallocs
			c.eachLast = append(c.eachLast, float64(m.Mallocs-b.mallocs)/float64(b.frames))
		}
	}
	// Taken anew, so that what the recorder itself grows by is not counted.
	r.room()
	runtime.ReadMemStats(&m)
	*b = batch{mallocs: m.Mallocs}
	r.last = time.Time{} // the look itself is no part of a frame
}

// room makes place for a batch in every list.
func (r *Recorder) room() {
	for _, l := range [...]*[]time.Duration{&r.own, &r.cpu, &r.painted, &r.whole, &r.washing} {
		*l = slices.Grow(*l, Batch)
	}
}

// Spread is the middle, the 99th percentile and the longest, in milliseconds.
type Spread struct{ P50, P99, Max float64 }

// Report sums up a measurement.
type Report struct {
	Frames, Painted int
	Washing         int
	Own             Spread // update and draw of our own, all frames
	OwnCPU          Spread // the same on the processor: what other programs took meanwhile left out
	OwnPainted      Spread // of those that were painted
	OwnWashing      Spread // while the bowl is washed
	Whole           Spread // from update to update, of frames that were painted
	Changing, Still Mallocs
	FirstFrame      time.Time // when the first picture had been handed to the display
	HeapMB          float64
	SysMB           float64
}

// Mallocs is how many allocations a frame made, in the middle of the batches and on average, in so many frames.
type Mallocs struct {
	Frames       int
	Middle, Mean float64
}

// Report sums up what was told so far.
func (r *Recorder) Report() Report {
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return Report{Frames: len(r.own), Painted: len(r.painted), Washing: len(r.washing), Own: spread(r.own), OwnCPU: spread(r.cpu), OwnPainted: spread(r.painted), OwnWashing: spread(r.washing),
		Whole: spread(r.whole), Changing: r.changing.sum(), Still: r.still.sum(), FirstFrame: r.first, HeapMB: float64(m.HeapAlloc) / 1e6, SysMB: float64(m.Sys) / 1e6}
}

func (c *counts) sum() Mallocs {
	if c.frames == 0 {
		return Mallocs{}
	}
	each := slices.Sorted(slices.Values(c.eachLast))
	return Mallocs{Frames: c.frames, Middle: each[len(each)/2], Mean: float64(c.mallocs) / float64(c.frames)}
}

func spread(costs []time.Duration) Spread {
	if len(costs) == 0 {
		return Spread{}
	}
	sorted := slices.Sorted(slices.Values(costs))
	at := func(share float64) float64 {
		return float64(sorted[int(share*float64(len(sorted)-1))].Nanoseconds()) / 1e6
	}
	return Spread{at(0.5), at(0.99), at(1)}
}
