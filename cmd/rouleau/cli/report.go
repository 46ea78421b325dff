package cli

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/cmd/forks"
	"rouleau/cmd/rouleau/report"
	"rouleau/scoring/attempt"
)

// The debrief of an attempt.

// reported are the flags of report.
type reported struct {
	out, pdf, csv  string
	draws, workers int
}

func (s *session) reportCommand() *cobra.Command {
	var w reported
	c := &cobra.Command{
		Use:   "report ATTEMPT",
		Short: words.Say("report.short"),
		Long:  words.Say("report.long"),
		Args:  exactly(1, "ATTEMPT"),
		RunE:  func(_ *cobra.Command, args []string) error { return s.report(args[0], w) },
	}
	f := c.Flags()
	f.StringVar(&w.out, "out", "", words.Say("report.flag_out"))
	f.StringVar(&w.pdf, "pdf", "", words.Say("report.flag_pdf"))
	f.StringVar(&w.csv, "csv", "", words.Say("report.flag_csv"))
	f.IntVar(&w.draws, "draws", 3, words.Say("report.flag_draws"))
	f.IntVar(&w.workers, "workers", 0, words.Say("study.flag_workers"))
	return c
}

// report plays the debrief of an attempt and writes what was asked for, after all of it has been made.
func (s *session) report(path string, w reported) error {
	if w.draws < 0 || w.draws > 50 {
		return wrong(words.Say("report.draws_range", w.draws))
	}
	a, err := loadAttempt(path)
	if err != nil {
		return err
	}
	for _, name := range []string{w.out, w.pdf, w.csv} {
		if err := notOver(name, path); err != nil {
			return err
		}
	}
	began := time.Now()
	plan := forks.Plan{Draws: w.draws, Workers: w.workers}
	if tell := s.progress(); tell != nil {
		plan.Progress = func(done, all int) {
			if time.Since(began) > time.Second { // what is done at once needs no bar
				tell(done, all, began)
			}
		}
	}
	r, err := report.Of(context.Background(), a, plan)
	if err != nil {
		return notRight(fmt.Sprintf("%s: %v", path, err))
	}
	for _, line := range r.Lines() {
		if under, ok := strings.CutPrefix(line, "- "); ok {
			fmt.Fprintln(&s.out, wrap(under, "  - ", "    "))
			continue
		}
		fmt.Fprintln(&s.out, wrap(line, "", ""))
	}
	return nil
}

// loadAttempt reads an attempt; the error has its exit code.
func loadAttempt(path string) (*attempt.Attempt, error) {
	a, err := attempt.Load(path)
	var faults *attempt.Faults
	switch {
	case errors.As(err, &faults):
		return nil, notRight(err.Error())
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, fs.ErrInvalid):
		return nil, wrong(err.Error())
	case err != nil:
		return nil, trouble(err.Error())
	}
	return a, nil
}

// notOver refuses to write over the attempt that is read.
func notOver(name, path string) error {
	if name == "" {
		return nil
	}
	a, err1 := os.Stat(name)
	b, err2 := os.Stat(path)
	if err1 == nil && err2 == nil && os.SameFile(a, b) {
		return wrong(words.Say("report.same_file", name))
	}
	return nil
}
