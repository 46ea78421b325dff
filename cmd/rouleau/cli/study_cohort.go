package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/study"
	"rouleau/scenarios"
	"rouleau/scoring/attempt"
)

// Making the results of people from saved attempts.

func (s *session) cohortCommand() *cobra.Command {
	var out, scenario string
	var practice bool
	c := &cobra.Command{
		Use:   "cohort ATTEMPT...",
		Short: words.Say("study.collect_short"),
		Long:  words.Say("study.collect_long"),
		Args:  atLeastOne("ATTEMPT"),
		RunE:  func(_ *cobra.Command, args []string) error { return s.collect(args, out, scenario, practice) },
	}
	f := c.Flags()
	f.StringVar(&out, "out", "", words.Say("study.collect_out"))
	f.StringVar(&scenario, "scenario", "", words.Say("study.collect_scenario"))
	f.BoolVar(&practice, "practice", false, words.Say("study.collect_practice"))
	return c
}

// collect reads attempts of one case and writes what people earned. Attempts at other cases are left out where a case is named,
// and told of where none is.
func (s *session) collect(paths []string, out, scenario string, practice bool) error {
	if out == "" {
		return wrong(words.Say("study.collect_needs_out"))
	}
	var sc *scenarios.Scenario
	var err error
	if scenario != "" {
		if sc, err = openScenario(scenario); err != nil {
			return err
		}
	}
	var mine []*attempt.Attempt
	var bad []string
	others := 0
	for _, path := range paths {
		a, err := attempt.Load(path)
		var faults *attempt.Faults
		switch {
		case errors.As(err, &faults):
			bad = append(bad, err.Error())
			continue
		case errors.Is(err, fs.ErrNotExist), errors.Is(err, fs.ErrInvalid):
			return wrong(err.Error())
		case err != nil:
			return trouble(err.Error())
		}
		if sc == nil {
			parsed, faults := scenarios.Parse(path, []byte(a.Scenario.Text))
			if err := faults.Err(); err != nil {
				return notRight(err.Error())
			}
			sc = parsed
		}
		switch {
		case a.Scenario.SHA256 != sc.Hash() && scenario == "":
			bad = append(bad, words.Say("study.collect_other", path, a.Scenario.ID, a.Scenario.Version, paths[0], sc.ID, sc.Version))
		case a.Scenario.SHA256 != sc.Hash():
			others++
		case !a.Sealed():
			bad = append(bad, words.Say("study.collect_seal", path))
		default:
			mine = append(mine, a)
		}
	}
	if len(bad) > 0 {
		return notRight(strings.Join(bad, "\n"))
	}
	c, err := study.CollectCohort(sc, mine, practice)
	if err != nil {
		return trouble(err.Error())
	}
	left := words.Say("study.collect_left", c.Practice, c.Programs, c.Open, c.Begun, c.Nameless, c.Twice, others)
	if c.Lines == 0 {
		return notRight(wrap(words.Say("study.collect_none", sc.ID)+" "+left, "", "  "))
	}
	if err := study.Place(filepath.Clean(out), c.CSV); err != nil {
		return wrong(err.Error())
	}
	fmt.Fprintln(&s.out, wrap(words.Say("study.collect_done", out, sc.ID, c.Lines, c.People)+" "+left, "", "  "))
	return nil
}
