// The window's loop: collect, run the screen, and paint only what changed.

package paint

import (
	"github.com/hajimehoshi/ebiten/v2"

	"rouleau/cmd/rouleau-desk/costs"
	"rouleau/cmd/rouleau-desk/ui"
)

// Limits of the person's own scale.
const (
	MinScale = 1.0
	MaxScale = 2.5
)

// Clipboard reaches the clipboard of the system, where there is one.
type Clipboard interface {
	Read() (string, bool)
	Write(string)
}

// Window runs a Core in a window. Core and Frame must be set.
type Window struct {
	Core  *ui.Core
	Frame func(c *ui.Core) error // the screen; ebiten.Termination closes the window
	// UserScale is the person's own scale, from MinScale to MaxScale; nil means 1.
	UserScale func() float64
	Clipboard Clipboard // nil keeps cut text inside the program
	// Observe, if set, is told what each frame cost and whether it was painted.
	Observe func(own costs.Cost, painted bool)
	// Shown, if set, is given the newest list of every frame.
	Shown func(*ui.List)

	painter       *Painter
	collector     Collector
	list          *ui.List
	dirty         bool
	width, height float64
	monitor       float64
	looked        int
	drawnW        int
	drawnH        int
	update        costs.Cost
	shape         ebiten.CursorShapeType
}

// Run opens the window and returns when it is closed. Title, size and the like
// are set through ebiten before.
func (w *Window) Run() error {
	p, err := NewPainter()
	if err != nil {
		return err
	}
	w.painter = p
	ebiten.SetScreenClearedEveryFrame(false)
	ebiten.SetWindowResizingMode(ebiten.WindowResizingModeEnabled)
	return ebiten.RunGame(w)
}

// Update runs the screen once.
func (w *Window) Update() error {
	start := costs.Begin()
	in := w.collector.Collect(w.width, w.height, w.scale())
	if w.Clipboard != nil && in.Mods&ui.ModCtrl != 0 && len(in.Keys) > 0 {
		in.Clipboard, in.HasClipboard = w.Clipboard.Read()
	}
	w.Core.Begin(in)
	err := w.Frame(w.Core)
	list, changed := w.Core.End()
	w.list, w.dirty = list, w.dirty || changed
	if s, ok := w.Core.TakeClipboard(); ok && w.Clipboard != nil {
		w.Clipboard.Write(s)
	}
	shape := ebiten.CursorShapeDefault
	if w.Core.OverText() {
		shape = ebiten.CursorShapeText
	}
	if shape != w.shape {
		w.shape = shape
		ebiten.SetCursorShape(shape)
	}
	w.update = w.update.Plus(start.Since())
	return err
}

// Draw paints the newest list if it differs from what the screen shows.
func (w *Window) Draw(screen *ebiten.Image) {
	start := costs.Begin()
	size := screen.Bounds().Size()
	painted := w.list != nil && (w.dirty || size.X != w.drawnW || size.Y != w.drawnH)
	if painted {
		w.painter.Draw(screen, w.list)
		w.dirty, w.drawnW, w.drawnH = false, size.X, size.Y
	}
	if w.Shown != nil && w.list != nil {
		w.Shown(w.list)
	}
	if w.Observe != nil {
		w.Observe(w.update.Plus(start.Since()), painted)
	}
	w.update = costs.Cost{}
}

// monitorEvery is how many frames go by between two looks at the monitor's own scale, which changes only when the window
// is taken to another one.
const monitorEvery = 30

// LayoutF makes one pixel of the picture one pixel of the monitor.
func (w *Window) LayoutF(outsideWidth, outsideHeight float64) (float64, float64) {
	if w.looked%monitorEvery == 0 {
		w.monitor = ebiten.Monitor().DeviceScaleFactor()
	}
	w.looked++
	w.width, w.height = outsideWidth*w.monitor, outsideHeight*w.monitor
	return w.width, w.height
}

// Layout is never called, as LayoutF is there; the interface asks for it.
func (w *Window) Layout(int, int) (int, int) { return int(w.width), int(w.height) }

func (w *Window) scale() float64 {
	s := max(w.monitor, 0.5)
	if w.UserScale != nil {
		s *= min(max(w.UserScale(), MinScale), MaxScale)
	}
	return s
}
