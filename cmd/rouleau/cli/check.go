package cli

import (
	"errors"
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
	"rouleau/scoring/attempt"
	"rouleau/scoring/coach"
	"rouleau/sim"
)

// Looking at scenario files, and at what comes with the program.

func (s *session) checkCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "check SCENARIO...",
		Short: words.Say("cli.check_short"),
		Long:  words.Say("cli.check_long"),
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return exactly(1, "SCENARIO")(c, args)
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error { return s.check(args) },
	}
}

// check looks at every file, whatever is wrong with those before it.
func (s *session) check(names []string) error {
	worst := exitDone
	for _, name := range names {
		worst = max(worst, s.checkOne(name))
	}
	if worst != exitDone {
		return &failure{code: worst}
	}
	return nil
}

func (s *session) checkOne(name string) int {
	sc, err := openScenario(name)
	if err == nil {
		warnings := append(slices.Clone(sc.Warnings), coach.Suspect(sc)...)
		for _, f := range warnings {
			f.Message = words.Say("cli.warning", f.Message)
			fmt.Fprint(&s.out, f.String())
		}
		fmt.Fprintln(&s.out, words.Say("cli.checked", name, sc.ID, sc.Version, len(warnings)))
		return exitDone
	}
	var faults yamlread.Faults
	if !errors.As(err, &faults) {
		return s.tell(err)
	}
	// The faults are what was asked for, so they go to the output.
	fmt.Fprintln(&s.out, faults.Error())
	fmt.Fprintln(&s.out, words.Say("cli.faults", name, len(faults)))
	return exitNotRight
}

func (s *session) listCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "list",
		Short: words.Say("cli.list_short"),
		Args:  exactly(0, ""),
		RunE: func(*cobra.Command, []string) error {
			for _, name := range scenarios.Library() {
				sc, err := scenarios.Open(name)
				if err != nil {
					return trouble(err.Error())
				}
				fmt.Fprintf(&s.out, "%s\n%s\n", wrap(words.Say("cli.listed", name, sc.Title, sc.Version, sc.Level, sc.Minutes), "", "  "),
					wrap(sc.Summary, "  ", "  "))
			}
			return nil
		},
	}
}

func (s *session) versionCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "version",
		Short: words.Say("cli.version_short"),
		Args:  exactly(0, ""),
		RunE: func(*cobra.Command, []string) error {
			fmt.Fprintln(&s.out, words.Say("cli.version", sim.ModelVersion, scenarios.FormatVersion, attempt.FormatVersion))
			return nil
		},
	}
}
