package cli

import (
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime"
	"strings"

	"github.com/spf13/cobra"
	"golang.org/x/term"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/ledger"
	"rouleau/cmd/rouleau/shelf"
	"rouleau/scoring/book"
)

// The competency book. This file holds what its commands share: where the book is, who signs, and whose fault an error is.

// The exit codes of `book verify` beside those of all commands.
const (
	exitOtherBits = 4 // the same decisions with other bits
	exitNoModel   = 5 // played with a model that is not in this program
	exitMismatch  = 6 // an attempt comes out otherwise
)

// exitInterrupted is what shells give for a program that was interrupted.
const exitInterrupted = 130

// booked are the flags that the commands of the book share.
type booked struct {
	book, keys string
	as, phrase string // who signs, and the file of the passphrase
	clock      bool   // the clock of this machine is right, whatever the book says
}

func (s *session) bookCommand() *cobra.Command {
	c := &cobra.Command{
		Use:   "book COMMAND",
		Short: words.Say("book_cli.short"),
		Long:  words.Say("book_cli.long"),
		Args:  cobra.ArbitraryArgs,
	}
	c.RunE = func(c *cobra.Command, args []string) error {
		if len(args) == 0 {
			help(c, &s.out)
			return wrong(words.Say("cli.name_a_command"))
		}
		return unknownCommand(c, args[0])
	}
	c.AddCommand(s.bookInit(), s.bookKey(), s.bookAdd(), s.bookEnd(), s.bookName(), s.bookPlan(), s.bookSign(), s.bookRate(), s.bookVoid(), s.bookDelete(), s.bookCase(),
		s.bookEvent(), s.bookList(), s.bookShow(), s.bookStatus(), s.bookVerify(), s.bookCheckpoint(), s.bookProve(), s.bookCheckProof(), s.bookSheet(), s.bookExport(), s.bookSend(),
		s.bookBackup(), s.bookRestore())
	return c
}

// placeFlags are the flags that say where the book and its keys are.
func (w *booked) placeFlags(c *cobra.Command) {
	c.Flags().StringVar(&w.book, "book", "", words.Say("book_cli.flag_book", ledger.Variable))
	c.Flags().StringVar(&w.keys, "keys", "", words.Say("book_cli.flag_keys"))
}

// signFlags are those of commands that write to the book.
func (w *booked) signFlags(c *cobra.Command) {
	w.placeFlags(c)
	c.Flags().StringVar(&w.as, "as", "", words.Say("book_cli.flag_as"))
	c.Flags().StringVar(&w.phrase, "passphrase-file", "", words.Say("book_cli.flag_phrase"))
	c.Flags().BoolVar(&w.clock, "clock-is-right", false, words.Say("book_cli.flag_clock"))
}

// needed wants flags to be given.
func needed(c *cobra.Command, names ...string) error {
	for _, name := range names {
		if f := c.Flags().Lookup(name); f.Value.String() == "" || f.Value.String() == "[]" {
			return wrong(words.Say("book_cli.flag_missing", name, c.CommandPath()))
		}
	}
	return nil
}

// withBook opens the book for a command.
func (w *booked) withBook(do func(l *ledger.Ledger) error) error {
	p, err := ledger.Find(w.book, w.keys)
	if err != nil {
		return bookFault(err)
	}
	l, err := ledger.Open(p)
	if err != nil {
		return bookFault(err)
	}
	defer l.Close()
	l.ClockIsRight = w.clock
	return bookFault(do(l))
}

// bookFault gives an error its exit code.
func bookFault(err error) error {
	var worded *failure
	var t *shelf.Trouble
	var clock *book.ClockBehind
	switch {
	case err == nil, errors.As(err, &worded):
		return err
	case errors.As(err, &clock):
		return &failure{exitNotRight, words.Say("book_cli.clock_behind", err), err}
	case !errors.As(err, &t):
		return &failure{exitNotRight, err.Error(), err}
	case t.Kind == shelf.Wrong:
		return &failure{exitUsage, err.Error(), err}
	case t.Kind == shelf.NotRight:
		return &failure{exitNotRight, err.Error(), err}
	}
	return &failure{exitTrouble, err.Error(), err}
}

// signer is who signs, whose passphrase is asked for when it is needed.
func (s *session) signer(w *booked) ledger.As {
	return ledger.As{Person: w.as, Phrase: func(person string, role book.Role) (string, error) {
		if w.phrase != "" {
			return s.secretIn(w.phrase)
		}
		return s.ask(words.Say("book_cli.ask_phrase", person, roleWord(role)))
	}}
}

// newPhrase asks for the passphrase of a new key, twice, because nobody can see what was typed.
func (s *session) newPhrase(w *booked, person string, role book.Role) (string, error) {
	if w.phrase != "" {
		return s.secretIn(w.phrase)
	}
	first, err := s.ask(words.Say("book_cli.ask_new_phrase", person, roleWord(role)))
	if err != nil {
		return "", err
	}
	second, err := s.ask(words.Say("book_cli.ask_again"))
	if err == nil && first != second {
		err = notRight(words.Say("book_cli.not_twice"))
	}
	return first, err
}

// ask reads a secret from the terminal without showing it.
func (s *session) ask(question string) (string, error) {
	f, ok := s.stdin.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return "", wrong(words.Say("book_cli.no_terminal"))
	}
	defer showAgain(int(f.Fd()))()
	fmt.Fprint(s.notes, question+" ")
	secret, err := term.ReadPassword(int(f.Fd()))
	fmt.Fprintln(s.notes)
	if err != nil && !errors.Is(err, io.EOF) {
		return "", trouble(words.Say("book_cli.not_read", err))
	}
	return string(secret), nil
}

// showAgain sees to it that a terminal shows what is typed again when the program is interrupted while it does not. What it gives
// ends that.
func showAgain(terminal int) (end func()) {
	before, err := term.GetState(terminal)
	if err != nil {
		return func() {}
	}
	interrupted := make(chan os.Signal, 1)
	signal.Notify(interrupted, os.Interrupt)
	go func() {
		if _, really := <-interrupted; really {
			_ = term.Restore(terminal, before)
			os.Exit(exitInterrupted)
		}
	}()
	return func() {
		signal.Stop(interrupted)
		close(interrupted)
	}
}

// secretIn reads the one line of a file with a secret, and says when others may read it too.
func (s *session) secretIn(file string) (string, error) {
	info, err := os.Stat(file)
	if err != nil {
		return "", wrong(words.Say("cli.no_file", file))
	}
	data, err := os.ReadFile(file)
	if err != nil {
		return "", wrong(words.Say("book_cli.no_secret", file))
	}
	if runtime.GOOS != "windows" && info.Mode().Perm()&0o077 != 0 {
		s.warn(words.Say("book_cli.open_secret", file))
	}
	return strings.TrimRight(string(data), "\r\n"), nil
}

// warn tells of something to be looked at, on the error stream.
func (s *session) warn(texts ...string) {
	for _, t := range texts {
		fmt.Fprintf(s.notes, "%s\n", tame([]byte(wrap(words.Say("cli.warning", t), "", "  "))))
	}
}

// say adds a line to the output.
func (s *session) say(key string, args ...any) {
	fmt.Fprintln(&s.out, wrap(words.Say(key, args...), "", "  "))
}

func roleWord(r book.Role) string {
	switch r {
	case book.Assessor:
		return words.Say("book_cli.assessor")
	case book.Administrator:
		return words.Say("book_cli.administrator")
	}
	return words.Say("book_cli.learner")
}
