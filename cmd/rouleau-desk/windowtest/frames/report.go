// The figures and the bounds they are held against.

package main

import (
	"errors"
	"fmt"

	"rouleau/cmd/rouleau-desk/costs"
)

// The bounds the window is built to.
const (
	mostOwnMS    = 4   // update and draw of our own, 99th percentile
	mostWhole    = 2   // times the whole frame of the bare window, in the middle
	mostMallocs  = 20  // a frame, above those of the bare window
	mostFirstS   = 1.5 // from the start to the first picture
	mostMemoryMB = 250 // after all cases
	leastPainted = 500 // frames; fewer say nothing
	leastInKind  = 2 * costs.Batch
)

type report struct {
	bare   costs.Report
	full   window
	firstS float64
	cases  int
	memory memory
}

func (r *report) print() error {
	var broken []error
	line := func(ok bool, format string, args ...any) {
		text := fmt.Sprintf(format, args...)
		mark := "   "
		if !ok {
			mark = "!! "
			broken = append(broken, errors.New(text))
		}
		fmt.Println(mark + text)
	}
	f, b := &r.full, &r.bare
	fmt.Printf("%d frames, %d painted; update and draw of our own in ms: middle, 99th percentile, longest\n", f.Frames, f.Painted)
	line(f.Own.P99 <= mostOwnMS && f.Painted >= leastPainted, "all          %6.2f %6.2f %6.2f   (99th at most %d)", f.Own.P50, f.Own.P99, f.Own.Max, mostOwnMS)
	line(true, "on the processor, without what rendering took of it meanwhile %6.2f %6.2f %6.2f", f.OwnCPU.P50, f.OwnCPU.P99, f.OwnCPU.Max)
	line(true, "painted      %6.2f %6.2f %6.2f", f.OwnPainted.P50, f.OwnPainted.P99, f.OwnPainted.Max)
	line(true, "washing      %6.2f %6.2f %6.2f", f.OwnWashing.P50, f.OwnWashing.P99, f.OwnWashing.Max)
	fmt.Println("whole frames that were painted, in ms: middle, 99th percentile, longest")
	line(f.Whole.P50 <= mostWhole*b.Whole.P50, "window       %6.2f %6.2f %6.2f   (middle %.2f times the bare one's, at most %d)", f.Whole.P50, f.Whole.P99, f.Whole.Max, f.Whole.P50/b.Whole.P50, mostWhole)
	line(true, "bare window  %6.2f %6.2f %6.2f", b.Whole.P50, b.Whole.P99, b.Whole.Max)
	fmt.Println("allocations a frame: middle of batches, mean")
	line(f.Changing.Frames >= leastInKind && f.Changing.Middle-b.Changing.Middle <= mostMallocs, "changing     %6.1f %6.1f   (%.1f above the bare window's, at most %d)", f.Changing.Middle, f.Changing.Mean, f.Changing.Middle-b.Changing.Middle, mostMallocs)
	line(f.Still.Frames >= leastInKind, "unchanged    %6.1f %6.1f", f.Still.Middle, f.Still.Mean)
	line(true, "bare window  %6.1f %6.1f", b.Changing.Middle, b.Changing.Mean)
	line(f.StillPainted == 0 && f.StillFrames > 0, "of %d frames in which nothing changed, %d were painted (at most 0)", f.StillFrames, f.StillPainted)
	line(r.firstS <= mostFirstS, "first picture after %.2f s (at most %.1f)", r.firstS, mostFirstS)
	if r.cases > 0 {
		line(r.memory.last > 0 && r.memory.last <= mostMemoryMB, "memory after %d cases in a row: %.0f MB, %.0f at its highest (at most %d)", r.cases, r.memory.last, r.memory.most, mostMemoryMB)
	}
	return errors.Join(broken...)
}
