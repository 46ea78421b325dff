package cli

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/natefinch/atomic"
	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
	"rouleau/scoring/operators"
)

// What somebody who writes cases starts from, and the layout of what was written.

func (s *session) newCommand() *cobra.Command {
	lesson := false
	c := &cobra.Command{
		Use:   "new NAME",
		Short: words.Say("author.new_short"),
		Long:  words.Say("author.new_long"),
		Args:  exactly(1, "NAME"),
		RunE:  func(_ *cobra.Command, args []string) error { return s.newFile(args[0], lesson) },
	}
	c.Flags().BoolVar(&lesson, "lesson", false, words.Say("author.new_lesson"))
	return c
}

// newFile writes a case to start from, never over a file.
func (s *session) newFile(name string, lesson bool) error {
	const extension = ".yaml"
	id := strings.TrimSuffix(name, extension)
	text, err := scenarios.Template(id, lesson)
	if err != nil {
		return wrong(err.Error())
	}
	file := id + extension
	f, err := os.OpenFile(file, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	switch {
	case errors.Is(err, fs.ErrExist):
		return notRight(words.Say("author.new_exists", file))
	case err != nil:
		return trouble(words.Say("author.new_failed", file, reason(err)))
	}
	_, err = f.Write(text)
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err != nil {
		os.Remove(file)
		return trouble(words.Say("author.new_failed", file, reason(err)))
	}
	fmt.Fprintln(&s.out, words.Say("author.new_done", file, file, file))
	return nil
}

// reason is why something could not be done with a file, without its name.
func reason(err error) error {
	if inner := (*fs.PathError)(nil); errors.As(err, &inner) {
		return inner.Err
	}
	return err
}

func (s *session) fmtCommand() *cobra.Command {
	only := false
	c := &cobra.Command{
		Use:   "fmt FILE...",
		Short: words.Say("author.fmt_short"),
		Long:  words.Say("author.fmt_long"),
		Args:  atLeastOne("FILE"),
		RunE: func(_ *cobra.Command, args []string) error {
			return s.each(args, func(name string) int { return s.fmtOne(name, only) })
		},
	}
	c.Flags().BoolVar(&only, "check", false, words.Say("author.fmt_check"))
	return c
}

// atLeastOne wants one argument or more; what names one of them.
func atLeastOne(what string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		if len(args) == 0 {
			return exactly(1, what)(c, args)
		}
		return nil
	}
}

// each does something to every file, whatever comes of those before it, and ends with the worst code.
func (s *session) each(names []string, do func(name string) int) error {
	worst := exitDone
	for _, name := range names {
		worst = max(worst, do(name))
	}
	if worst != exitDone {
		return &failure{code: worst}
	}
	return nil
}

// fmtOne lays out one file.
func (s *session) fmtOne(name string, only bool) int {
	data, err := yamlread.ReadFile(name)
	if err != nil {
		if slices.Contains(scenarios.Library(), strings.TrimSuffix(name, ".yaml")) && errors.Is(err, fs.ErrNotExist) {
			return s.tell(wrong(words.Say("author.fmt_library", name)))
		}
		return s.tell(unread(name, err))
	}
	laid, faults := layout(name, data)
	if len(faults) > 0 {
		s.faults(name, faults)
		return exitNotRight
	}
	if bytes.Contains(data, []byte("\r\n")) { // as the editor of its author saves it
		laid = bytes.ReplaceAll(laid, []byte("\n"), []byte("\r\n"))
	}
	switch {
	case bytes.Equal(data, laid):
		fmt.Fprintln(&s.out, words.Say("author.fmt_same", name))
		return exitDone
	case only:
		fmt.Fprintln(&s.out, words.Say("author.fmt_would", name, name))
		return exitNotRight
	}
	if err := replace(name, laid); err != nil {
		return s.tell(trouble(words.Say("author.fmt_failed", name, reason(err))))
	}
	fmt.Fprintln(&s.out, words.Say("author.fmt_done", name))
	return exitDone
}

// layout gives a scenario, an operator or a script in canonical form, or its faults.
func layout(name string, data []byte) ([]byte, yamlread.Faults) {
	switch kindOf(data) {
	case scriptFile:
		if _, faults := operators.ParseScript(name, data); len(faults) > 0 {
			return nil, faults
		}
		return yamlread.Format(name, data, new(operators.ScriptFile))
	case operatorFile:
		if _, faults := operators.Parse(name, data); len(faults) > 0 {
			return nil, faults
		}
		return yamlread.Format(name, data, new(operators.File))
	}
	return scenarios.Format(name, data)
}

// The kinds of files that people write.
type fileKind int

const (
	scenarioFile fileKind = iota
	operatorFile
	scriptFile
)

// kindOf tells a file by its keys at the top: only an operator has habits or rules, only a script acts.
func kindOf(data []byte) fileKind {
	kind := scenarioFile
	for line := range strings.Lines(string(data)) {
		key, _, found := strings.Cut(line, ":")
		switch {
		case !found:
		case slices.Contains([]string{"id", "story", "patient", "phases", "criteria", "bench"}, key):
			return scenarioFile
		case slices.Contains([]string{"habits", "rules", "failing"}, key):
			kind = operatorFile
		case key == "acts" && kind == scenarioFile:
			kind = scriptFile
		}
	}
	return kind
}

// unread says why a file cannot be read.
func unread(name string, err error) error {
	if info, bad := os.Stat(name); bad == nil && info.IsDir() {
		return wrong(words.Say("cli.folder", name))
	}
	if errors.Is(err, fs.ErrNotExist) {
		return wrong(words.Say("cli.no_file", name))
	}
	return trouble(words.Say("cli.unreadable", name, reason(err)))
}

// replace puts new content in the place of a file at once. A link stays one, and a file that may not be written is left.
func replace(name string, content []byte) error {
	path, err := filepath.EvalSymlinks(name)
	if err != nil {
		return err
	}
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	f.Close()
	return atomic.WriteFile(path, bytes.NewReader(content))
}
