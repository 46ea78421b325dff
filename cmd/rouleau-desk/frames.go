// What frames cost, measured in the real window: update and draw of each, the whole of it, allocations. A recorded attempt
// can be shown so many times in a row; then the window stands still for a while, in which nothing may be painted.

package main

import (
	"bytes"
	"encoding/json"
	"runtime"
	"time"

	"github.com/hajimehoshi/ebiten/v2"
	"github.com/natefinch/atomic"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/app"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/costs"
	"rouleau/cmd/rouleau-desk/line"
	"rouleau/cmd/rouleau-desk/paint"
	"rouleau/sim"
)

// stillFrames is how long the window stands still at the end of a measurement.
const stillFrames = 4 * costs.Batch

// firstFrames are enough to know when the first picture was shown; with no case to show, the window closes after them.
const firstFrames = 5

// fastest is how much of the clock one frame may be told: what a case lets pass in one frame at most.
const fastest = 490 * time.Millisecond

// measurement is what the command line asks to be measured, and what was.
type measurement struct {
	line.Frames

	app      *app.App
	recorder costs.Recorder
	began    time.Time // the update of this frame
	clock    time.Time // what the app was told it was
	frames   int
	still    int // frames since the last case ended
	painted  int // of them, after the picture of the end
}

// attach has the window tell what its frames cost.
func (m *measurement) attach(w *paint.Window, a *app.App) {
	m.app = a
	if !m.Told && m.File == "" {
		return
	}
	if m.File != "" {
		a.Caution()
		ebiten.SetVsyncEnabled(false)
		ebiten.SetTPS(ebiten.SyncWithFPS)
	}
	w.Observe = func(own costs.Cost, painted bool) {
		washing := a.Session() != nil && a.Session().View.Seen.Pump.Mode == sim.PumpWash
		m.recorder.Frame(m.began, own, painted, washing)
		if m.still > costs.Batch && painted {
			m.painted++
		}
	}
}

// now is the time the app is told; a measurement may let it run faster.
func (m *measurement) now() time.Time {
	was := m.began
	m.began = time.Now()
	switch gone := m.began.Sub(was); {
	case m.clock.IsZero():
		m.clock = m.began
		if m.File != "" {
			runtime.LockOSThread() // processor time is told by thread
		}
	default:
		if s := m.app.Session(); m.File != "" && s != nil && s.View.Watching { // a case that somebody plays has the clock's pace
			gone = min(time.Duration(float64(gone)*m.Pace), max(gone, fastest))
		}
		m.clock = m.clock.Add(gone)
	}
	return m.clock
}

// over brings the measurement on by a frame, and says whether it has come to its end.
func (m *measurement) over() bool {
	s := m.app.Session()
	if m.File == "" || s == nil || !s.View.Watching {
		return false
	}
	m.frames++
	if m.Cases < 1 {
		return m.frames > firstFrames
	}
	m.app.Desk().ChartAll()
	v := &s.View
	if most := mostOf(v.Speeds); v.Screen == bench.AtBench && !v.Paused && v.Speed != most {
		s.Do([]bench.Act{{Do: bench.SetSpeed, Value: most}})
	}
	if v.MayTruth && !v.ShowTruth {
		s.Do([]bench.Act{{Do: bench.ToggleTruth}})
	}
	if !s.Run.State.Ended && !s.View.Paused {
		return false
	}
	if m.Cases > 1 {
		m.Cases--
		s.Do([]bench.Act{{Do: bench.Finish}, {Do: bench.Again}, {Do: bench.GoOn}})
		return false
	}
	m.still++
	return m.still > stillFrames
}

func mostOf(speeds []int) (most int) {
	for _, n := range speeds {
		most = max(most, n)
	}
	return most
}

// measured is what the file of a measurement holds.
type measured struct {
	costs.Report
	StillFrames  int // after the last case
	StillPainted int
}

// report gives the measurement in words, "" where none is wanted, and writes its file.
func (m *measurement) report() (text string, err error) {
	r := m.recorder.Report()
	if m.File != "" {
		content, _ := json.Marshal(measured{r, m.still, m.painted}) // numbers and a time: nothing that could fail
		err = atomic.WriteFile(m.File, bytes.NewReader(content))
	}
	if m.Told {
		text = words.Say("desk.frames_all", r.Frames, r.Own.P50, r.Own.P99, r.Own.Max) + "\n" +
			words.Say("desk.frames_washing", r.Washing, r.OwnWashing.P50, r.OwnWashing.P99, r.OwnWashing.Max)
	}
	return text, err
}
