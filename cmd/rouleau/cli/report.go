package cli

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"github.com/natefinch/atomic"
	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/cmd/forks"
	"rouleau/cmd/rouleau/page"
	"rouleau/cmd/rouleau/report"
	"rouleau/cmd/rouleau/trace"
	"rouleau/scoring/attempt"
)

// The debrief of an attempt.

// output is a file that report can write.
type output struct {
	flag, path string
	usage      string // the key of its words
	make       func(r *report.Report, p func() *page.Page) ([]byte, error)
	private    bool // only its owner may read it
	content    []byte
}

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

// writeAll writes one file after the other. Where one cannot be written those before it stay, and the error names them.
func (s *session) writeAll(wanted []*output) error {
	var written []string
	for _, o := range wanted {
		err := o.write()
		if err != nil {
			text := words.Say("author.write_failed", o.path, reason(err))
			if len(written) == 0 {
				return trouble(words.Say("report.nothing_written", text))
			}
			return trouble(words.Say("report.written_before", text, strings.Join(written, ", ")))
		}
		written = append(written, o.path)
		fmt.Fprintln(&s.out, words.Say("author.schema_done", o.path))
	}
	return nil
}

// write replaces the file whole. What is new could be read by its writer alone, and what replaces another as that one could.
func (o *output) write() error {
	if o.private { // before there is anything in it
		if err := os.Chmod(o.path, 0o600); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
		return atomic.WriteFile(o.path, bytes.NewReader(o.content))
	}
	if err := atomic.WriteFile(o.path, bytes.NewReader(o.content)); err != nil {
		return err
	}
	return os.Chmod(o.path, 0o644)
}

// canWrite says beforehand what would keep the files from being written, as far as can be seen without writing.
func canWrite(read string, wanted []*output) error {
	for i, o := range wanted {
		if err := attempt.CanSave(o.path); err != nil {
			return wrong(err.Error())
		}
		if sameFile(o.path, read) {
			return wrong(words.Say("report.same_file", o.path))
		}
		for _, other := range wanted[:i] {
			if sameFile(o.path, other.path) {
				return wrong(words.Say("report.same_name", o.path, other.flag, o.flag))
			}
		}
	}
	return nil
}

// sameFile says whether two paths lead to one file, which need not be there yet.
func sameFile(one, other string) bool {
	a, err1 := os.Stat(one)
	b, err2 := os.Stat(other)
	if err1 == nil && err2 == nil {
		return os.SameFile(a, b)
	}
	if (err1 == nil) != (err2 == nil) {
		return false
	}
	a, err1 = os.Stat(filepath.Dir(one))
	b, err2 = os.Stat(filepath.Dir(other))
	return err1 == nil && err2 == nil && os.SameFile(a, b) && strings.EqualFold(filepath.Base(one), filepath.Base(other)) // some systems do not tell letters by their size
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
