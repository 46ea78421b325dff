// Package line is the command line of the window. It knows nothing of the graphics library, which ends the program where there
// is no display before main begins: what can be said without a window is said here. So it needs little: see its package first.
package line

import (
	"errors"
	"flag"
	"fmt"
	"io"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/keep"
)

// Line is what the command line asks for.
type Line struct {
	Asked
	Describe string // a file that is kept saying what the screen shows
	Frames   Frames
	Version  bool // is to be told, and nothing else done
}

// Asked is what the window is to show, and how.
type Asked struct {
	Folder     string // where records are kept, "" for this system's place
	Who        string // "" for whom the settings name
	Scenario   string // a file or a case of the library that is gone to at once, "" for the home screen
	Seed       uint64 // of that case
	Assessment bool
	Out        string // where its attempt is saved, "" for the folder of records
	Watch      string // an attempt that is shown again at once
	Scale      float64
	Still      bool
}

// Frames is what is to be measured of them.
type Frames struct {
	Told  bool   // in words, at the end
	File  string // and in full here; then frames follow each other without waiting for the display
	Cases int    // how often the attempt is shown before the window closes
	Pace  float64
}

// Parse reads the command line. Flags may stand before or behind the scenario. Help goes to out and comes with flag.ErrHelp.
func Parse(args []string, out io.Writer) (s Line, err error) {
	f := flag.NewFlagSet("rouleau-desk", flag.ContinueOnError)
	f.SetOutput(out)
	f.Usage = func() {
		fmt.Fprintln(out, words.Say("desk.usage"))
		f.PrintDefaults()
		fmt.Fprintln(out, words.Say("first.short"))
	}
	o := &s.Asked
	f.Uint64Var(&o.Seed, "seed", 1, words.Say("desk.seed"))
	f.BoolVar(&o.Assessment, "assess", false, words.Say("desk.assess"))
	f.StringVar(&o.Out, "out", "", words.Say("desk.out"))
	f.StringVar(&o.Folder, "folder", "", words.Say("desk.folder"))
	f.StringVar(&o.Who, "who", "", words.Say("desk.who"))
	f.StringVar(&o.Watch, "watch", "", words.Say("desk.watch"))
	f.Float64Var(&o.Scale, "scale", 0, words.Say("desk.scale"))
	f.BoolVar(&o.Still, "still", false, words.Say("desk.still"))
	f.StringVar(&s.Describe, "describe", "", words.Say("desk.describe"))
	f.BoolVar(&s.Version, "version", false, words.Say("cli.version_short"))
	f.BoolVar(&s.Frames.Told, "frames", false, words.Say("desk.frames"))
	f.StringVar(&s.Frames.File, "frames-file", "", words.Say("desk.frames_file"))
	f.IntVar(&s.Frames.Cases, "frames-cases", 1, words.Say("desk.frames_cases"))
	f.Float64Var(&s.Frames.Pace, "frames-pace", 1, words.Say("desk.frames_pace"))
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
