// Package cli is the command line: arguments and streams in, an exit code out. Nothing is printed to the output before a
// command has done its work, so that a failure never leaves half of it. This file holds the way in.
package cli

import (
	"bytes"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"rouleau/assets/words"
)

// session is one call of the program.
type session struct {
	stdin io.Reader
	out   bytes.Buffer // what the command has to say, printed when it is done
	notes io.Writer    // what goes to the error stream
}

// Run does what the arguments ask for and gives the exit code.
func Run(args []string, stdin io.Reader, stdout, stderr io.Writer) (code int) {
	defer func() {
		if trouble := recover(); trouble != nil {
			fmt.Fprintln(stderr, words.Say("cli.our_fault", trouble))
			code = exitTrouble
		}
	}()
	s := &session{stdin: stdin, notes: stderr}
	root := s.root()
	root.SetArgs(append([]string{}, args...))
	err := root.Execute()
	code = s.tell(err)
	if _, err := stdout.Write(tame(s.out.Bytes())); err != nil {
		fmt.Fprintln(stderr, words.Say("cli.no_output", err))
		return exitTrouble
	}
	return code
}

// root is the command with all its commands.
func (s *session) root() *cobra.Command {
	cobra.MousetrapHelpText = "" // a double click shows the help like an empty command line does
	root := &cobra.Command{
		Use:           "rouleau COMMAND",
		Short:         words.Say("cli.short"),
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          cobra.ArbitraryArgs,
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				help(c, &s.out)
				return wrong(words.Say("cli.name_a_command"))
			}
			return unknownCommand(c, args[0])
		},
	}
	root.CompletionOptions.DisableDefaultCmd = true
	root.SetOut(&s.out)
	root.SetErr(s.notes)
	root.SetHelpFunc(func(c *cobra.Command, _ []string) { help(c, &s.out) })
	root.SetFlagErrorFunc(flagFault)
	root.AddCommand(s.runCommand(), s.replayCommand(), s.reportCommand(), s.studyCommand(), s.newCommand(), s.checkCommand(), s.previewCommand(), s.fmtCommand(), s.schemaCommand(), s.calcCommand(), s.bookCommand(), s.listCommand(), s.versionCommand())
	root.SetHelpCommand(&cobra.Command{
		Use:   "help [COMMAND]",
		Short: words.Say("cli.help_short"),
		RunE: func(_ *cobra.Command, args []string) error {
			about, rest, err := root.Find(args)
			if err != nil || len(rest) > 0 {
				return unknownCommand(root, args[0])
			}
			help(about, &s.out)
			return nil
		},
	})
	explainHelp(root)
	return root
}

// explainHelp words the flag --help of a command and all below it.
func explainHelp(c *cobra.Command) {
	c.Flags().BoolP("help", "h", false, words.Say("cli.help_flag"))
	for _, inner := range c.Commands() {
		explainHelp(inner)
	}
}

// help prints what a command does, its commands and flags, the exit codes and the cautions.
func help(c *cobra.Command, w io.Writer) {
	fmt.Fprintf(w, "%s\n\n", wrap(c.Short, "", ""))
	fmt.Fprintf(w, "    %s\n", c.UseLine())
	if c.Long != "" {
		fmt.Fprintf(w, "\n%s\n", wrap(c.Long, "", ""))
	}
	var inner []*cobra.Command
	for _, sub := range c.Commands() {
		if sub.Name() != "help" && sub.IsAvailableCommand() {
			inner = append(inner, sub)
		}
	}
	if len(inner) > 0 {
		fmt.Fprintf(w, "\n%s\n", words.Say("cli.commands"))
		for _, sub := range inner {
			fmt.Fprintf(w, "%s\n", wrap(sub.Short, fmt.Sprintf("    %-14s", sub.Name()), fmt.Sprintf("    %-14s", "")))
		}
	}
	if usage := c.Flags().FlagUsagesWrapped(columns); usage != "" {
		fmt.Fprintf(w, "\n%s\n%s", words.Say("cli.flags"), usage)
	}
	fmt.Fprintf(w, "\n%s\n\n%s\n", wrap(words.Say("cli.exit_codes"), "", ""), wrap(words.Say("cli.caution"), "", ""))
}
