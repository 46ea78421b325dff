// The recorder sums up what it was told, and counts the allocations of frames of either kind apart.

package costs_test

import (
	"math"
	"testing"
	"time"

	"rouleau/cmd/rouleau-desk/costs"
)

var sink []byte

func TestAReportSumsUp(t *testing.T) {
	var r costs.Recorder
	at := time.Now()
	frames := 10 * costs.Batch
	for i := range frames {
		painted := i < 5*costs.Batch
		own := time.Millisecond
		if i%50 == 0 {
			own = 8 * time.Millisecond // a fiftieth: past the 99th percentile
		}
		if painted {
			for range 7 {
				sink = make([]byte, 64)
			}
		}
		r.Frame(at, costs.Cost{Wall: own, CPU: own / 2}, painted, i%10 == 0)
		at = at.Add(20 * time.Millisecond)
	}
	s := r.Report()
	near := func(what string, got, want float64) {
		if math.Abs(got-want) > 0.01*want {
			t.Errorf("%s is %g, want %g", what, got, want)
		}
	}
	near("frames", float64(s.Frames), float64(frames))
	near("painted frames", float64(s.Painted), float64(frames/2))
	near("frames of washing", float64(s.Washing), float64(frames/10))
	near("the middle of our own", s.Own.P50, 1)
	near("the 99th percentile of our own", s.Own.P99, 8)
	near("its 99th percentile on the processor", s.OwnCPU.P99, 4)
	near("the longest of our own", s.Own.Max, 8)
	near("a whole frame", s.Whole.P50, 20)
	near("allocations of a frame that changes", s.Changing.Middle, 7)
	if s.Still.Middle > 0.2 || s.Still.Frames < 3*costs.Batch {
		t.Errorf("frames that stand still: %+v", s.Still)
	}
	if s.FirstFrame.IsZero() || s.HeapMB <= 0 {
		t.Errorf("first picture at %v, heap %g MB", s.FirstFrame, s.HeapMB)
	}
}
