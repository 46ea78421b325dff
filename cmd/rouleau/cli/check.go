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
	"rouleau/scoring/operators"
	"rouleau/scoring/trial"
	"rouleau/sim"
)

// Looking at scenario files, and at what comes with the program.

func (s *session) checkCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "check FILE...",
		Short: words.Say("cli.check_short"),
		Long:  words.Say("cli.check_long"),
		Args:  atLeastOne("FILE"),
		RunE:  func(_ *cobra.Command, args []string) error { return s.each(args, s.checkOne) },
	}
}

// checkOne looks at one file: a scenario by its name or path, or an operator or a script by its path.
func (s *session) checkOne(name string) int {
	if data, err := yamlread.ReadFile(name); err == nil && kindOf(data) != scenarioFile {
		return s.checkOperator(name)
	}
	sc, err := openScenario(name)
	if err == nil {
		warnings := warningsOf(sc)
		for _, f := range warnings {
			fmt.Fprint(&s.out, f.String())
		}
		fmt.Fprintln(&s.out, words.Say("cli.checked", name, sc.ID, sc.Version, len(warnings)))
		return exitDone
	}
	return s.notChecked(name, err)
}

// warningsOf are what is legal in a scenario and looks like a slip, in the file or when it is played.
func warningsOf(sc *scenarios.Scenario) yamlread.Faults {
	warnings := append(slices.Clone(sc.Warnings), trial.Suspect(sc)...)
	for i := range warnings {
		warnings[i].Message = words.Say("cli.warning", warnings[i].Message)
	}
	return warnings
}

// checkOperator looks at an operator or a script.
func (s *session) checkOperator(name string) int {
	o, err := operators.Open(name)
	if err == nil {
		if o.Failing != "" && len(o.Shows) == 0 && o.Name != "steady" {
			fmt.Fprintln(&s.out, wrap(name+": "+words.Say("cli.warning", words.Say("study.no_shows")), "", "  "))
		}
		fmt.Fprintln(&s.out, words.Say("author.operator_checked", name, o.Name))
		return exitDone
	}
	return s.notChecked(name, err)
}

// notChecked tells the faults of a file, or why it could not be read.
func (s *session) notChecked(name string, err error) int {
	var faults yamlread.Faults
	if !errors.As(err, &faults) {
		return s.tell(err)
	}
	s.faults(name, faults)
	return exitNotRight
}

// faults tells the faults of a file. They are what was asked for, so they go to the output.
func (s *session) faults(name string, faults yamlread.Faults) {
	fmt.Fprintln(&s.out, faults.Error())
	fmt.Fprintln(&s.out, words.Say("cli.faults", name, len(faults)))
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
