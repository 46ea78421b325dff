package cli

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/group"
)

// The report of a class: report --group DIR.

// withGroup lets report take a folder instead of one attempt.
func (s *session) withGroup(c *cobra.Command) *cobra.Command {
	var dir string
	var w group.Wishes
	f, one, single := c.Flags(), c.Args, c.RunE
	f.StringVar(&dir, "group", "", words.Say("group.flag_group"))
	f.BoolVar(&w.Small, "small", false, words.Say("group.flag_small"))
	f.String("key", "", words.Say("group.flag_key"))
	f.BoolVar(&w.Programs, "programs", false, words.Say("group.flag_programs"))
	c.Use = words.Say("group.usage")
	c.Long += "\n\n" + words.Say("group.long")
	c.Args = func(c *cobra.Command, args []string) error {
		switch {
		case !f.Changed("group"):
			return one(c, args)
		case len(args) > 0:
			return wrong(words.Say("group.no_attempt", args[0]))
		case f.Changed("draws"):
			return wrong(words.Say("group.no_draws"))
		}
		return nil
	}
	c.RunE = func(c *cobra.Command, args []string) error {
		if f.Changed("group") {
			w.Workers, _ = f.GetInt("workers")
			return s.reportGroup(c, dir, w)
		}
		for _, flag := range []string{"small", "programs", "key"} {
			if f.Changed(flag) {
				return wrong(words.Say("group.needs_group", flag))
			}
		}
		return single(c, args)
	}
	return c
}

// groupOutputs are the files that were asked for.
func groupOutputs(c *cobra.Command) (wanted []*output) {
	for _, flag := range []string{"out", "pdf", "csv", "key"} {
		if c.Flags().Changed(flag) {
			wanted = append(wanted, &output{flag: flag, path: c.Flag(flag).Value.String(), private: flag == "key"})
		}
	}
	return wanted
}

// reportGroup plays the attempts of a folder and writes what was asked for, after all of it has been made.
func (s *session) reportGroup(c *cobra.Command, dir string, w group.Wishes) error {
	wanted := groupOutputs(c)
	if err := canWrite(dir, wanted); err != nil {
		return err
	}
	switch info, err := os.Stat(dir); {
	case errors.Is(err, fs.ErrNotExist):
		return wrong(words.Say("group.no_folder", dir))
	case err == nil && !info.IsDir():
		return wrong(words.Say("group.not_a_folder", dir))
	}
	folder, err := group.Read(dir, w)
	if err != nil {
		return trouble(words.Say("group.folder_unread", dir, reason(err)))
	}
	if len(folder.Paths) == 0 {
		return notRight(words.Say("group.no_files", dir))
	}
	for _, path := range folder.Paths {
		if err := canWrite(path, wanted); err != nil {
			return err
		}
	}
	if err := tryFolders(wanted); err != nil {
		return err
	}
	if tell := s.progress(); tell != nil {
		began := time.Now()
		w.Progress = func(done, all int) { tell(done, all, began) }
	}
	g, err := folder.Play(context.Background(), w)
	for _, line := range g.LeftLines() {
		fmt.Fprintf(s.notes, "%s\n", tame([]byte(wrap(line, "", "  "))))
	}
	switch {
	case errors.Is(err, group.ErrNobody):
		text := words.Say("group.none_usable", dir, len(folder.Paths))
		if slices.ContainsFunc(g.Left, func(l group.Left) bool { return l.Why == group.Program }) {
			text += " " + words.Say("group.none_programs")
		}
		return notRight(text)
	case errors.Is(err, group.ErrFew):
		return notRight(words.Say("group.too_few", dir, group.LeastPeople))
	case err != nil:
		return trouble(err.Error())
	}
	for _, o := range wanted {
		switch o.flag {
		case "out":
			o.content, err = g.Page().HTML()
		case "pdf":
			o.content, err = g.Page().PDF()
		case "csv":
			o.content, err = g.CSV()
		case "key":
			o.content, err = g.Key()
		}
		if err != nil {
			return trouble(words.Say("report.nothing_written", err.Error()))
		}
	}
	for _, line := range g.Lines() {
		if under, ok := strings.CutPrefix(line, "- "); ok {
			fmt.Fprintln(&s.out, wrap(under, "  - ", "    "))
			continue
		}
		fmt.Fprintln(&s.out, wrap(line, "", ""))
	}
	return s.writeAll(wanted)
}
