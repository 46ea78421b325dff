// The command line of the window.

package main

import (
	"errors"
	"flag"
	"fmt"
	"io"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/app"
	"rouleau/cmd/rouleau-desk/keep"
	"rouleau/scoring/attempt"
)

// line is what the command line asks for, beside what the app is told.
type line struct {
	app      app.Options
	describe string
	measure  measurement
}

// parse reads the command line. Flags may stand before or behind the scenario.
func parse(args []string, stderr io.Writer) (s line, err error) {
	f := flag.NewFlagSet("rouleau-desk", flag.ContinueOnError)
	f.SetOutput(stderr)
	f.Usage = func() {
		fmt.Fprintln(stderr, words.Say("desk.usage"))
		f.PrintDefaults()
		fmt.Fprintln(stderr, words.Say("first.short"))
	}
	o := &s.app
	f.Uint64Var(&o.Seed, "seed", 1, words.Say("desk.seed"))
	f.BoolVar(&o.Assessment, "assess", false, words.Say("desk.assess"))
	f.StringVar(&o.Out, "out", "", words.Say("desk.out"))
	f.StringVar(&o.Folder, "folder", "", words.Say("desk.folder"))
	f.StringVar(&o.Who, "who", "", words.Say("desk.who"))
	f.StringVar(&o.Watch, "watch", "", words.Say("desk.watch"))
	f.Float64Var(&o.Scale, "scale", 0, words.Say("desk.scale"))
	f.BoolVar(&o.Still, "still", false, words.Say("desk.still"))
	f.StringVar(&s.describe, "describe", "", words.Say("desk.describe"))
	s.measure.flags(f)
	for len(args) > 0 {
		if err := f.Parse(args); err != nil {
			return s, err
		}
		args = f.Args()
		if len(args) == 0 {
			break
		}
		if o.Scenario != "" {
			return s, errors.New(words.Say("desk.one_case", o.Scenario, args[0]))
		}
		o.Scenario, args = args[0], args[1:]
	}
	given := map[string]bool{}
	f.Visit(func(g *flag.Flag) { given[g.Name] = true })
	switch {
	case given["scale"] && (o.Scale < keep.LeastScale || o.Scale > keep.MostScale):
		return s, errors.New(words.Say("desk.scale_range", keep.LeastScale, keep.MostScale))
	case o.Scenario != "" && o.Watch != "":
		return s, errors.New(words.Say("desk.case_or_watch"))
	case o.Scenario == "" && (given["seed"] || given["assess"]):
		return s, errors.New(words.Say("desk.which_case"))
	}
	return s, nil
}

// canSave says beforehand what would keep the attempt from being saved where the command line wants it.
func canSave(s line) error {
	if s.app.Out == "" {
		return nil
	}
	return attempt.CanSave(s.app.Out)
}
