package cli

import (
	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/preview"
)

// The page for those who write cases.

func (s *session) previewCommand() *cobra.Command {
	number, out := uint64(1), ""
	c := &cobra.Command{
		Use:   "preview FILE",
		Short: words.Say("preview.short"),
		Long:  words.Say("preview.long"),
		Args:  exactly(1, "FILE"),
		RunE: func(c *cobra.Command, args []string) error {
			sc, err := openScenario(args[0])
			if err != nil {
				return &failure{code: s.notChecked(args[0], err)}
			}
			if !c.Flags().Changed("out") {
				out = sc.ID + "-preview.html"
			}
			html, err := preview.Page(sc, number, warningsOf(sc)).HTML()
			if err != nil {
				return trouble(err.Error())
			}
			return s.write(out, html)
		},
	}
	c.Flags().Var((*seed)(&number), "seed", words.Say("preview.seed"))
	c.Flags().StringVar(&out, "out", "", words.Say("preview.out"))
	return c
}
