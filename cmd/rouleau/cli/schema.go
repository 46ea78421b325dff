package cli

import (
	"bytes"
	"fmt"
	"os"

	"github.com/natefinch/atomic"
	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/scenarios/schema"
)

// The format for editors and for people.

func (s *session) schemaCommand() *cobra.Command {
	page, out := false, ""
	c := &cobra.Command{
		Use:   "schema",
		Short: words.Say("author.schema_short"),
		Long:  words.Say("author.schema_long"),
		Args:  exactly(0, ""),
		RunE: func(c *cobra.Command, _ []string) error {
			text, err := schema.JSON()
			if page {
				text, err = schema.Page()
			}
			if err != nil {
				return trouble(err.Error())
			}
			if !c.Flags().Changed("out") {
				s.out.Write(text)
				return nil
			}
			return s.write(out, text)
		},
	}
	c.Flags().BoolVar(&page, "page", false, words.Say("author.schema_page"))
	c.Flags().StringVar(&out, "out", "", words.Say("author.schema_out"))
	return c
}

// write writes a whole file or none of it.
func (s *session) write(file string, content []byte) error {
	if info, err := os.Stat(file); err == nil && info.IsDir() {
		return wrong(words.Say("cli.folder", file))
	}
	err := atomic.WriteFile(file, bytes.NewReader(content))
	if err == nil {
		err = os.Chmod(file, 0o644) // else only its writer could read what is new
	}
	if err != nil {
		return trouble(words.Say("author.write_failed", file, reason(err)))
	}
	fmt.Fprintln(&s.out, words.Say("author.schema_done", file))
	return nil
}
