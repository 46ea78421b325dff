// What a frame of the bench costs before painting.

package bench_test

import (
	"testing"

	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/glyphs"
	"rouleau/cmd/rouleau-desk/mesh"
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

// A case that stands still is not painted again, whatever goes on in it: the list of a frame is that of the one before. When
// time goes on, it is.
func TestAPausedCaseIsNotPainted(t *testing.T) {
	x := sit(t, ui.Vec{X: 1280, Y: 800}, false)
	x.begin()
	for _, at := range []float64{900, 3300} {
		x.until(at)
		x.Session.Do([]bench.Act{{Do: bench.TogglePause}})
		x.Idle()
		x.Idle()
		calm := x.Core.Still // an alarm flashes in a pause too, unless motion is reduced
		x.Core.Still = true
		x.Idle()
		for i := range 120 {
			if x.Idle(); x.Changed {
				t.Fatalf("at %g s the picture changes in frame %d of a pause", at, i)
			}
		}
		x.Core.Still = calm
		x.Session.Do([]bench.Act{{Do: bench.TogglePause}})
		x.Idle()
		x.Session.Tick()
		if x.Idle(); !x.Changed {
			t.Errorf("at %g s nothing changes when time goes on", at)
		}
	}
}

// What moves only for the eye does so thirty times a second, so that at sixty frames every second one is free.
func TestMovingDashesLeaveHalfTheFramesAlone(t *testing.T) {
	x := sit(t, ui.Vec{X: 1280, Y: 800}, false)
	x.begin()
	x.until(3300)
	changed := 0
	const frames = 240
	for range frames {
		x.Frame(ui.Input{DeltaMS: 1000.0 / 60})
		if x.Changed {
			changed++
		}
	}
	if changed < frames/4 || changed > frames/2+2 {
		t.Errorf("%d of %d frames change while liquid flows", changed, frames)
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

// BenchmarkMesh is what the painter does with the frame of a case before it hands it on: its triangles and letters.
func BenchmarkMesh(b *testing.B) {
	x := sit(b, ui.Vec{X: 1280, Y: 800}, false)
	x.begin()
	x.Desk.ChartAll()
	x.until(3300)
	m, letters := mesh.Builder{WhiteU: glyphs.WhiteAt, WhiteV: glyphs.WhiteAt, Width: 1280, Height: 800}, glyphs.New()
	b.ReportAllocs()
	for b.Loop() {
		m.Build(x.List, letters)
	}
	b.ReportMetric(float64(len(m.Verts)), "vertices")
}
