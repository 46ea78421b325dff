// What a frame of the bench costs before painting.

package bench_test

import (
	"testing"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

// mostMade are the allocations of a frame: half of what the whole window may make above a bare one.
const mostMade = 10

// While a case is washed and given, whatever lies open in the panel, a frame is drawn from what earlier ones made.
func TestAFrameMakesLittle(t *testing.T) {
	x := sit(t, ui.Vec{X: 1280, Y: 800}, false)
	x.begin()
	x.Desk.ChartAll()
	for _, at := range []float64{900, 3300, 4700} {
		x.until(at)
		for tab := bench.TabPart; tab <= bench.TabRecords; tab++ {
			for p := sim.Part(0); p <= sim.FirstBag; p++ {
				if tab != bench.TabPart && p > 0 {
					break
				}
				x.Desk.Select(p)
				x.Desk.Tab = tab
				for range 3 {
					x.Idle()
				}
				if n := testing.AllocsPerRun(20, x.Idle); n > mostMade {
					t.Errorf("at %g s, tab %d, %v: %g allocations", at, tab, p, n)
				}
			}
		}
	}
}

func BenchmarkFrame(b *testing.B) {
	x := sit(b, ui.Vec{X: 1280, Y: 800}, false)
	x.begin()
	x.until(3300)
	b.ReportAllocs()
	for b.Loop() {
		x.Idle()
	}
}

// BenchmarkFrameMoving is a frame in which time passes and everything is charted, as at the greatest speed.
func BenchmarkFrameMoving(b *testing.B) {
	x := sit(b, ui.Vec{X: 1280, Y: 800}, false)
	x.begin()
	x.Desk.ChartAll()
	x.until(3300)
	b.ReportAllocs()
	for b.Loop() {
		x.Session.Tick()
		x.Idle()
	}
}
