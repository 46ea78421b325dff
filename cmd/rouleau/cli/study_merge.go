package cli

import (
	"errors"
	"io/fs"
	"os"
	"slices"

	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/study"
	"rouleau/scenarios"
	"rouleau/scoring/operators"
	rows "rouleau/scoring/study"
)

// Putting the shards of a study together.

func (s *session) mergeCommand() *cobra.Command {
	var out string
	c := &cobra.Command{
		Use:   "merge FOLDER...",
		Short: words.Say("study.merge_short"),
		Long:  words.Say("study.merge_long"),
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return exactly(1, "FOLDER")(c, args)
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error { return s.merge(args, out) },
	}
	c.Flags().StringVar(&out, "out", "", words.Say("study.merge_out"))
	return c
}

func (s *session) merge(folders []string, out string) error {
	if out == "" {
		return wrong(words.Say("study.needs_out"))
	}
	var whole *rows.Table
	for _, folder := range folders {
		t, err := study.ReadRuns(folder)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			return wrong(err.Error())
		case err != nil:
			return notRight(err.Error())
		case len(t.Rows) == 0:
			continue
		case whole == nil:
			whole = t
			continue
		}
		if a, b := whole.Rows[0].Case, t.Rows[0].Case; a != b || !slices.Equal(whole.Criteria, t.Criteria) {
			return notRight(words.Say("study.not_alike", folder, folders[0], b, a))
		}
		for _, r := range t.Rows {
			i := slices.IndexFunc(whole.Rows, func(have rows.Row) bool { return have.Seed == r.Seed && have.Operator == r.Operator })
			switch {
			case i < 0:
				whole.Rows = append(whole.Rows, r)
			case whole.Rows[i].Points != r.Points || whole.Rows[i].Digest != r.Digest:
				return notRight(words.Say("study.apart", folder, r.Seed, r.Operator))
			}
		}
	}
	if whole == nil {
		return notRight(words.Say("study.no_seeds"))
	}
	if err := os.MkdirAll(out, 0o777); err != nil {
		return wrong(err.Error())
	}
	if err := study.WriteRuns(out, whole); err != nil {
		return trouble(err.Error())
	}
	return s.mergedFigures(out, whole)
}

// mergedFigures makes figures and page where case and operators come with the program; those of an educator are made by the
// command study, which finds the runs in the folder and plays none again.
func (s *session) mergedFigures(out string, t *rows.Table) error {
	for _, name := range scenarios.Library() {
		sc, err := scenarios.Open(name)
		if err != nil || rows.Identity(sc, false) != t.Rows[0].Case && rows.Identity(sc, true) != t.Rows[0].Case {
			continue
		}
		who, err := operatorsNamed("all")
		if err != nil {
			return err
		}
		who = slices.DeleteFunc(who, func(o *operators.Operator) bool {
			return !slices.ContainsFunc(t.Rows, func(r rows.Row) bool { return r.Operator == o.Name })
		})
		return s.show(studied{out: out}, sc, who, t)
	}
	s.out.WriteString(words.Say("study.done", t.Rows[0].Case, len(t.Rows), out) + "\n")
	return nil
}
