package cli

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"sync"
	"time"

	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/cmd/forks"
	"rouleau/cmd/rouleau/page"
	"rouleau/cmd/rouleau/report"
	"rouleau/cmd/rouleau/trace"
	"rouleau/scoring/attempt"
)

// The debrief of an attempt.

// outputs are all there are.
func outputs() []*output {
	return []*output{
		{flag: "out", usage: "report.flag_out", make: func(_ *report.Report, p func() *page.Page) ([]byte, error) { return p().HTML() }},
		{flag: "pdf", usage: "report.flag_pdf", make: func(_ *report.Report, p func() *page.Page) ([]byte, error) { return p().PDF() }},
		{flag: "csv", usage: "report.flag_csv", make: func(r *report.Report, _ func() *page.Page) ([]byte, error) {
			var b bytes.Buffer
			err := trace.Write(&b, r.Debrief.Record.Run)
			return b.Bytes(), err
		}},
	}
}

func (s *session) reportCommand() *cobra.Command {
	plan, all := forks.Plan{}, outputs()
	c := &cobra.Command{
		Use:   "report ATTEMPT",
		Short: words.Say("report.short"),
		Long:  words.Say("report.long"),
		Args:  exactly(1, "ATTEMPT"),
		RunE: func(c *cobra.Command, args []string) error {
			var wanted []*output
			for _, o := range all {
				if c.Flags().Changed(o.flag) {
					wanted = append(wanted, o)
				}
			}
			return s.report(args[0], plan, wanted)
		},
	}
	f := c.Flags()
	for _, o := range all {
		f.StringVar(&o.path, o.flag, "", words.Say(o.usage))
	}
	f.IntVar(&plan.Draws, "draws", 3, words.Say("report.flag_draws"))
	f.IntVar(&plan.Workers, "workers", 0, words.Say("study.flag_workers"))
	return s.withGroup(c)
}

// report plays the debrief of an attempt and writes what was asked for, after all of it has been made.
func (s *session) report(path string, plan forks.Plan, wanted []*output) error {
	if plan.Draws < 0 || plan.Draws > 50 {
		return wrong(words.Say("report.draws_range", plan.Draws))
	}
	a, err := loadAttempt(path)
	if err != nil {
		return err
	}
	if err := canWrite(path, wanted); err != nil {
		return err
	}
	if err := tryFolders(wanted); err != nil {
		return err
	}
	began := time.Now()
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
	once := sync.OnceValue(r.Page)
	for _, o := range wanted {
		if o.content, err = o.make(r, once); err != nil {
			return trouble(words.Say("report.nothing_written", err.Error()))
		}
	}
	for _, line := range r.Lines() {
		if under, ok := strings.CutPrefix(line, "- "); ok {
			fmt.Fprintln(&s.out, wrap(under, "  - ", "    "))
			continue
		}
		fmt.Fprintln(&s.out, wrap(line, "", ""))
	}
	return s.writeAll(wanted)
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
