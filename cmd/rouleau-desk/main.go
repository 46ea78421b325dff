// Command rouleau-desk is the window: home with its cases, and a case from the case sheet to the grade, played by hand.
// This file joins the command line, the app and the painter; it decides nothing.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"

	"github.com/hajimehoshi/ebiten/v2"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/app"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/line"
	_ "rouleau/cmd/rouleau-desk/line/first" // help and the like, before the graphics library looks for a display
	"rouleau/cmd/rouleau-desk/paint"
	"rouleau/cmd/rouleau-desk/system"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scoring/attempt"
)

func main() { os.Exit(run(os.Args[1:], os.Stderr)) }

func run(args []string, stderr io.Writer) int {
	s, err := line.Parse(args, io.Discard) // faults were told before main began
	if err != nil {
		return line.Usage
	}
	if s.Out != "" {
		if err := attempt.CanSave(s.Out); err != nil { // told now, and not after a case
			fmt.Fprintln(stderr, err)
			return line.Wrong
		}
	}
	a, err := app.New(s.Asked, app.Machine{Player: &system.Speaker{}, Draws: debriefDraws})
	if err != nil {
		fmt.Fprintln(stderr, err)
		return line.Wrong
	}
	err = show(a, s, stderr)
	if kept := a.Close(); kept != "" {
		fmt.Fprintln(stderr, kept)
	}
	if err != nil {
		fmt.Fprintln(stderr, words.Say("desk.no_window", err))
		return line.Fault
	}
	return line.Done
}

// show opens the window and returns when it is closed.
func show(a *app.App, s line.Line, stderr io.Writer) error {
	core := ui.New(ui.Paper())
	core.Words = bench.CoreWords()
	m := &measurement{Frames: s.Frames}
	title := ""
	w := paint.Window{Core: core, UserScale: a.Scale, Clipboard: &system.Clipboard{}, Frame: func(c *ui.Core) error {
		if err := a.Frame(c, m.now()); err != nil || m.over() {
			return ebiten.Termination
		}
		if now := a.Title(); now != title {
			title = now
			ebiten.SetWindowTitle(title)
		}
		return nil
	}}
	if s.Describe != "" {
		w.Shown = describer(s.Describe, func(err error) { fmt.Fprintln(stderr, words.Say("desk.not_described", err)) })
	}
	m.attach(&w, a)
	width, height := ebiten.Monitor().Size()
	ebiten.SetWindowSize(min(int(firstWidth*a.Scale()), width), min(int(firstHeight*a.Scale()), height))
	ebiten.SetRunnableOnUnfocused(true)
	err := w.Run()
	text, fault := m.report()
	if text != "" {
		fmt.Fprintln(stderr, text)
	}
	return errors.Join(err, fault)
}

// debriefDraws are the other drawings of a case in which a debrief plays the costliest decisions too.
const debriefDraws = 3

// Size of the window at its first start, in logical pixels.
const (
	firstWidth  = 1280
	firstHeight = 800
)
