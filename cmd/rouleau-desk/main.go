// Command rouleau-desk is the window: it opens a case and lets it be played by hand, from the case sheet to the grade.
// This file reads the command line and joins screens, session and painter; it decides nothing.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"time"

	"github.com/hajimehoshi/ebiten/v2"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/paint"
	"rouleau/cmd/rouleau-desk/session"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scenarios"
	"rouleau/scoring/attempt"
	"rouleau/sim"
)

const firstCase = "steady-oozing-spine"

// Exit codes, as those of the command line: 1 the case is not right, 2 wrong usage, 3 a fault of ours or of the machine.
const (
	exitWrong = 1
	exitUsage = 2
	exitFault = 3
)

func main() { os.Exit(run(os.Args[1:], os.Stderr)) }

type settings struct {
	scenario string
	seed     uint64
	assess   bool
	out      string
	scale    float64
	still    bool
	describe string
	frames   bool
}

// parse reads the command line. Flags may stand before or behind the scenario.
func parse(args []string, stderr io.Writer) (s settings, err error) {
	f := flag.NewFlagSet("rouleau-desk", flag.ContinueOnError)
	f.SetOutput(stderr)
	f.Usage = func() {
		fmt.Fprintln(stderr, words.Say("desk.usage"))
		f.PrintDefaults()
		fmt.Fprintln(stderr, words.Say("first.short"))
	}
	f.Uint64Var(&s.seed, "seed", 1, words.Say("desk.seed"))
	f.BoolVar(&s.assess, "assess", false, words.Say("desk.assess"))
	f.StringVar(&s.out, "out", "", words.Say("desk.out"))
	f.Float64Var(&s.scale, "scale", 1, words.Say("desk.scale"))
	f.BoolVar(&s.still, "still", false, words.Say("desk.still"))
	f.StringVar(&s.describe, "describe", "", words.Say("desk.describe"))
	f.BoolVar(&s.frames, "frames", false, words.Say("desk.frames"))
	for len(args) > 0 {
		if err := f.Parse(args); err != nil {
			return s, err
		}
		args = f.Args()
		if len(args) == 0 {
			break
		}
		if s.scenario != "" {
			return s, errors.New(words.Say("desk.one_case", s.scenario, args[0]))
		}
		s.scenario, args = args[0], args[1:]
	}
	if s.scenario == "" {
		s.scenario = firstCase
	}
	if s.scale < paint.MinScale || s.scale > paint.MaxScale {
		return s, errors.New(words.Say("desk.scale_range", paint.MinScale, paint.MaxScale))
	}
	return s, nil
}

func run(args []string, stderr io.Writer) int {
	s, err := parse(args, stderr)
	switch {
	case errors.Is(err, flag.ErrHelp):
		return 0
	case err != nil:
		fmt.Fprintln(stderr, err)
		return exitUsage
	}
	if s.out == "" {
		s.out = fmt.Sprintf("attempt-%s.json", time.Now().Format("20060102-150405"))
	}
	if err := attempt.CanSave(s.out); err != nil {
		fmt.Fprintln(stderr, err)
		return exitWrong
	}
	sc, err := scenarios.Open(s.scenario)
	if err != nil {
		fmt.Fprintln(stderr, err)
		return exitWrong
	}
	if err := open(sc, s); err != nil {
		fmt.Fprintln(stderr, words.Say("desk.no_window", err))
		return exitFault
	}
	return 0
}

// open shows the window and returns when it is closed.
func open(sc *scenarios.Scenario, s settings) error {
	se := session.New(sc, session.Options{Seed: s.seed, Assessment: s.assess,
		Finish: session.Grader(sc, s.assess, words.Say("desk.somebody"), s.out, time.Now)})
	desk := bench.New()
	core := ui.New(ui.Paper())
	core.Words, core.Still = bench.CoreWords(), s.still
	w := paint.Window{Core: core, UserScale: func() float64 { return s.scale }, Frame: func(c *ui.Core) error {
		se.Advance(time.Now())
		se.Refresh()
		se.Do(desk.Frame(c, &se.View))
		if se.Left {
			return ebiten.Termination
		}
		return nil
	}}
	if s.describe != "" {
		w.Shown = describer(s.describe, func(err error) { fmt.Fprintln(os.Stderr, words.Say("desk.not_described", err)) })
	}
	var costs frameCosts
	if s.frames {
		w.Observe = func(update, draw time.Duration, _ bool) {
			costs.add(update, draw, se.View.Seen.Pump.Mode == sim.PumpWash)
		}
	}
	ebiten.SetWindowTitle(words.Say("window.name"))
	width, height := ebiten.Monitor().Size()
	ebiten.SetWindowSize(min(int(1280*s.scale), width), min(int(800*s.scale), height))
	ebiten.SetRunnableOnUnfocused(true)
	err := w.Run()
	if s.frames {
		fmt.Fprintln(os.Stderr, costs.report())
	}
	if place, fault := se.Keep(); place != "" {
		fmt.Fprintln(os.Stderr, words.Say("desk.kept", place))
	} else if fault != "" {
		fmt.Fprintln(os.Stderr, fault)
	}
	return err
}
