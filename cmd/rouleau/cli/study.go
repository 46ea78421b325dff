package cli

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/study"
	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
	"rouleau/scoring/operators"
	rows "rouleau/scoring/study"
)

// Studying a case: many seeds, many operators.

// studied are the flags of study.
type studied struct {
	scenario, seeds, operators, out, shard, cohort string
	workers                                        int
	assess, table, require                         bool
}

func (s *session) studyCommand() *cobra.Command {
	var w studied
	c := &cobra.Command{
		Use:   "study SCENARIO",
		Short: words.Say("study.short"),
		Long:  words.Say("study.long"),
		Args: func(c *cobra.Command, args []string) error {
			if w.table {
				return exactly(0, "")(c, args)
			}
			return exactly(1, "SCENARIO")(c, args)
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if w.table {
				return s.studyTable(w)
			}
			w.scenario = args[0]
			return s.study(w)
		},
	}
	f := c.Flags()
	f.StringVar(&w.seeds, "seeds", "1..200", words.Say("study.flag_seeds"))
	f.StringVar(&w.operators, "operators", "all", words.Say("study.flag_operators"))
	f.StringVar(&w.out, "out", "", words.Say("study.flag_out"))
	f.StringVar(&w.shard, "shard", "", words.Say("study.flag_shard"))
	f.StringVar(&w.cohort, "cohort", "", words.Say("study.flag_cohort"))
	f.IntVar(&w.workers, "workers", 0, words.Say("study.flag_workers"))
	f.BoolVar(&w.assess, "assess", false, words.Say("study.flag_assess"))
	f.BoolVar(&w.table, "table", false, words.Say("study.flag_table"))
	f.BoolVar(&w.require, "require-rules", false, words.Say("study.flag_require"))
	c.AddCommand(s.mergeCommand(), s.cohortCommand())
	return c
}

// study plays one case and writes what it shows.
func (s *session) study(w studied) error {
	if w.out == "" {
		return wrong(words.Say("study.needs_out"))
	}
	sc, err := openScenario(w.scenario)
	if err != nil {
		return err
	}
	if w.assess && sc.Lesson() {
		return wrong(words.Say("cli.lesson_is_practice", w.scenario))
	}
	who, err := operatorsNamed(w.operators)
	if err != nil {
		return err
	}
	seeds, err := study.Seeds(w.seeds)
	if err == nil {
		seeds, err = study.Shard(seeds, w.shard)
	}
	if err != nil {
		return wrong(err.Error())
	}
	if len(seeds) == 0 {
		return wrong(words.Say("study.no_seeds"))
	}
	plan := study.Plan{Scenario: sc, Operators: who, Seeds: seeds, Assessment: w.assess, Folder: w.out, Workers: w.workers, Progress: s.progress()}
	t, err := plan.Run()
	if err != nil {
		return notRight(err.Error())
	}
	return s.show(w, sc, who, t)
}

// operatorsNamed finds who plays; steady always does.
func operatorsNamed(list string) ([]*operators.Operator, error) {
	names := operators.Library()
	if list != "all" {
		names = []string{"steady"}
		for name := range strings.SplitSeq(list, ",") {
			if name = strings.TrimSpace(name); !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	var who []*operators.Operator
	for _, name := range names {
		o, err := openOperator(name)
		if err != nil {
			return nil, err
		}
		if slices.ContainsFunc(who, func(other *operators.Operator) bool { return other.Name == o.Name }) {
			return nil, wrong(words.Say("study.same_name", o.Name))
		}
		who = append(who, o)
	}
	if list == "all" {
		o, err := operators.Unrinsed()
		if err != nil {
			return nil, trouble(err.Error())
		}
		who = append(who, o)
	}
	return who, nil
}

// show writes figures and page into the folder, and a line for each operator.
func (s *session) show(w studied, sc *scenarios.Scenario, who []*operators.Operator, t *rows.Table) error {
	f := study.Of(sc, who, t)
	if w.cohort != "" {
		file, err := os.Open(w.cohort)
		if err != nil {
			return wrong(err.Error())
		}
		defer file.Close()
		if err := f.ReadCohort(w.cohort, file, t); err != nil {
			return notRight(err.Error())
		}
	}
	html, err := f.Page().HTML()
	if err != nil {
		return trouble(err.Error())
	}
	for name, content := range map[string][]byte{"figures.json": indented(f), "study.html": html} {
		if err := study.Place(filepath.Join(w.out, name), content); err != nil {
			return trouble(err.Error())
		}
	}
	fmt.Fprintln(&s.out, words.Say("study.done", sc.ID, len(t.Rows), w.out))
	for i := range f.Operators {
		o := &f.Operators[i]
		fmt.Fprintln(&s.out, words.Say("study.operator_line", fmt.Sprintf("%-20s", o.Name), o.N, 100*o.Pass.Value, 100*o.Pass.Low, 100*o.Pass.High, o.Points.Value, o.Points.Low, o.Points.High))
	}
	if c := f.Cohort; c != nil {
		fmt.Fprintln(&s.out, words.Say("study.cohort_read", w.cohort, c.N, c.Later))
	}
	broken := f.Broken()
	for _, line := range slices.Concat(broken, f.NotJudged(), f.Warnings) {
		fmt.Fprintln(&s.out, wrap(words.Say("cli.warning", line), "", "  "))
	}
	if w.require && len(broken) > 0 {
		return notRight("")
	}
	return nil
}

// progress tells how far a study is, on a terminal only.
func (s *session) progress() func(done, all int, since time.Time) {
	f, ok := s.notes.(*os.File)
	if !ok {
		return nil
	}
	if info, err := f.Stat(); err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return nil
	}
	return func(done, all int, since time.Time) {
		fmt.Fprint(f, "\r"+progressLine(done, all, time.Since(since)))
		if done == all {
			fmt.Fprintln(f)
		}
	}
}

// progressLine is a bar with the time left, if all goes on as it went so far. It is padded, so that it covers a longer one
// before it.
func progressLine(done, all int, passed time.Duration) string {
	const width, whole = 30, 72
	left := time.Duration(float64(passed) / float64(done) * float64(all-done)).Round(time.Second)
	full := width * done / all
	return fmt.Sprintf("%-*s", whole, "["+strings.Repeat("#", full)+strings.Repeat(".", width-full)+"] "+words.Say("study.progress", done, all, left))
}

// studyTable plays the whole library.
func (s *session) studyTable(w studied) error {
	if w.out != "" || w.shard != "" || w.cohort != "" {
		return wrong(words.Say("study.table_alone"))
	}
	who, err := operatorsNamed(w.operators)
	if err != nil {
		return err
	}
	seeds, err := study.Seeds(w.seeds)
	if err != nil {
		return wrong(err.Error())
	}
	var entries []study.Entry
	broken := 0
	for _, name := range scenarios.Library() {
		sc, err := scenarios.Open(name)
		if err != nil {
			return trouble(err.Error())
		}
		plan := study.Plan{Scenario: sc, Operators: who, Seeds: seeds, Assessment: w.assess && !sc.Lesson(), Workers: w.workers, Progress: s.progress()}
		t, err := plan.Run()
		if err != nil {
			return trouble(err.Error())
		}
		e := study.Entry{Lesson: sc.Lesson(), Figures: study.Of(sc, who, t)}
		if !e.Lesson {
			broken += len(e.Broken())
		}
		entries = append(entries, e)
	}
	study.WriteTable(&s.out, w.seeds, entries)
	if w.require && broken > 0 {
		return notRight("")
	}
	return nil
}

// openOperator gives an operator by name or path; the error has its exit code.
func openOperator(name string) (*operators.Operator, error) {
	o, err := operators.Open(name)
	var faults yamlread.Faults
	switch {
	case err == nil:
		return o, nil
	case errors.As(err, &faults):
		return nil, notRight(err.Error())
	case errors.Is(err, os.ErrInvalid):
		return nil, wrong(err.Error())
	case errors.Is(err, os.ErrNotExist):
		return nil, wrong(withNearest(words.Say("study.no_operator", name), yamlread.Nearest(name, operators.Library())))
	}
	return nil, trouble(err.Error())
}
