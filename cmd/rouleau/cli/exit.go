package cli

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"rouleau/assets/words"
	"rouleau/scenarios/yamlread"
)

// How the program ends, and the words for calls that are not right.

// The exit codes.
const (
	exitDone     = 0
	exitNotRight = 1 // the thing asked about is not right
	exitUsage    = 2 // the call is not right
	exitTrouble  = 3 // a fault of ours or of the machine
)

// failure is an error with its exit code. Without text everything has been said in the output.
type failure struct {
	code  int
	text  string
	cause error
}

func (f *failure) Error() string { return f.text }
func (f *failure) Unwrap() error { return f.cause }

func notRight(text string) error { return &failure{code: exitNotRight, text: text} }
func wrong(text string) error    { return &failure{code: exitUsage, text: text} }
func trouble(text string) error  { return &failure{code: exitTrouble, text: text} }

// tell prints an error and gives its exit code.
func (s *session) tell(err error) int {
	var f *failure
	switch {
	case err == nil:
		return exitDone
	case !errors.As(err, &f):
		f = &failure{code: exitUsage, text: err.Error()} // only the library that reads arguments gives errors of its own
	}
	if f.text != "" {
		fmt.Fprintf(s.notes, "%s\n", tame([]byte(f.text)))
	}
	return f.code
}

// unknownCommand says which command was probably meant.
func unknownCommand(c *cobra.Command, got string) error {
	var known []string
	for _, sub := range c.Commands() {
		if sub.Name() != "help" {
			known = append(known, sub.Name())
		}
	}
	return wrong(withNearest(words.Say("cli.unknown_command", got, c.CommandPath()), yamlread.Nearest(got, known)))
}

// withNearest adds the word that was probably meant.
func withNearest(text, nearest string) string {
	if nearest == "" {
		return text
	}
	return text + " " + words.Say("cli.did_you_mean", nearest)
}

// exactly wants a number of arguments; what names one of them.
func exactly(n int, what string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		switch {
		case len(args) < n:
			return wrong(words.Say("cli.argument_missing", what, c.CommandPath()))
		case len(args) > n:
			return wrong(words.Say("cli.argument_too_many", args[n], c.CommandPath()))
		}
		return nil
	}
}

// flagFault puts a slip in a flag into our own words.
func flagFault(c *cobra.Command, err error) error {
	var (
		unknown *pflag.NotExistError
		empty   *pflag.ValueRequiredError
		invalid *pflag.InvalidValueError
	)
	switch {
	case errors.As(err, &unknown) && unknown.GetSpecifiedShortnames() != "":
		return wrong(words.Say("cli.one_dash", unknown.GetSpecifiedShortnames(), c.CommandPath()))
	case errors.As(err, &unknown):
		var known []string
		c.Flags().VisitAll(func(f *pflag.Flag) { known = append(known, f.Name) })
		nearest := yamlread.Nearest(unknown.GetSpecifiedName(), known)
		if nearest != "" {
			nearest = "--" + nearest
		}
		return wrong(withNearest(words.Say("cli.unknown_flag", unknown.GetSpecifiedName(), c.CommandPath()), nearest))
	case errors.As(err, &empty):
		return wrong(words.Say("cli.flag_needs_value", empty.GetSpecifiedName(), c.CommandPath()))
	case errors.As(err, &invalid):
		return wrong(words.Say("cli.flag_value", invalid.GetFlag().Name, invalid.GetValue(), kindOfFlag(invalid.GetFlag())))
	}
	return wrong(words.Say("cli.flag_other", err, c.CommandPath()))
}

// kindOfFlag says what a flag wants.
func kindOfFlag(f *pflag.Flag) string {
	switch f.Value.Type() {
	case "seed":
		return words.Say("cli.kind_seed")
	case "bool":
		return words.Say("cli.kind_bool")
	case "string":
		return words.Say("cli.kind_text")
	}
	return words.Say("cli.kind_number")
}
