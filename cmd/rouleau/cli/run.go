package cli

import (
	"errors"
	"io/fs"
	"os"
	"strconv"
	"time"

	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
)

// Playing a case without a window.

// wishes are the flags of run.
type wishes struct {
	scenario, operator, out   string
	seed                      uint64
	json, requirePass, assess bool
	save                      bool // out was given, be it empty
}

// seed is a flag that reads a seed as an attempt file does: decimal digits, so that 010 is ten and nothing else.
type seed uint64

func (n *seed) String() string { return strconv.FormatUint(uint64(*n), 10) }
func (n *seed) Type() string   { return "seed" }
func (n *seed) Set(text string) error {
	x, err := strconv.ParseUint(text, 10, 64)
	*n = seed(x)
	return err
}

func (s *session) runCommand() *cobra.Command {
	var w wishes
	c := &cobra.Command{
		Use:   "run SCENARIO",
		Short: words.Say("cli.run_short"),
		Long:  words.Say("cli.run_long"),
		Args:  exactly(1, "SCENARIO"),
		RunE: func(c *cobra.Command, args []string) error {
			w.scenario, w.save = args[0], c.Flags().Changed("out")
			return s.run(w)
		},
	}
	f := c.Flags()
	w.seed = 1
	f.Var((*seed)(&w.seed), "seed", words.Say("cli.run_seed"))
	f.StringVar(&w.operator, "operator", "steady", words.Say("cli.run_operator"))
	f.BoolVar(&w.json, "json", false, words.Say("cli.json"))
	f.StringVar(&w.out, "out", "", words.Say("cli.run_out"))
	f.BoolVar(&w.requirePass, "require-pass", false, words.Say("cli.run_require_pass"))
	f.BoolVar(&w.assess, "assess", false, words.Say("cli.run_assess"))
	return c
}

// played is a run with its grade and what was made of it.
type played struct {
	sc     *scenarios.Scenario
	run    *play.Run
	grade  attempt.Grade
	by     attempt.By
	script *operators.Script // nil for other operators
}

func (s *session) run(w wishes) error {
	sc, err := openScenario(w.scenario)
	if err != nil {
		return err
	}
	if w.assess && sc.Lesson() {
		return wrong(words.Say("cli.lesson_is_practice", w.scenario))
	}
	if w.save {
		if err := attempt.CanSave(w.out); err != nil {
			return wrong(err.Error())
		}
	}
	p := played{sc: sc, run: play.New(sc.Case(w.seed, w.assess), w.seed)}
	actor, err := p.operator(w.operator)
	if err != nil {
		return err
	}
	p.run.ToEnd(actor)
	grade := scoring.Judge(sc, p.run, scoring.PlayYardstick(sc, w.seed, w.assess))
	p.grade = attempt.GradeOf(grade)
	p.by.When, p.by.Mode = time.Now(), attempt.ModeOf(w.assess)
	if w.save {
		if err := attempt.Of(sc, p.run, grade, p.by).Save(w.out); err != nil {
			return trouble(err.Error())
		}
	}
	if w.json {
		p.writeJSON(&s.out)
	} else {
		p.writeText(&s.out)
	}
	if w.requirePass && !grade.Passed {
		return notRight("")
	}
	return nil
}

// operator finds who plays.
func (p *played) operator(name string) (play.Actor, error) {
	o, err := openOperator(name)
	if err != nil {
		return nil, err
	}
	p.by.Operator = o.Name
	actor := o.Play(operators.SheetOf(p.sc, &p.run.Case))
	p.script, _ = actor.(*operators.Script)
	return actor, nil
}

// openScenario gives a scenario by name or path; the error has its exit code.
func openScenario(nameOrPath string) (*scenarios.Scenario, error) {
	sc, err := scenarios.Open(nameOrPath)
	if err == nil {
		return sc, nil
	}
	var faults yamlread.Faults
	if errors.As(err, &faults) {
		return nil, &failure{exitNotRight, err.Error(), faults}
	}
	if info, missing := os.Stat(nameOrPath); missing != nil && errors.Is(missing, fs.ErrNotExist) || missing == nil && info.IsDir() {
		return nil, wrong(err.Error())
	}
	return nil, trouble(err.Error())
}
