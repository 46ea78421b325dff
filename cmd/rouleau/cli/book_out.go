package cli

import (
	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/ledger"
	"rouleau/cmd/rouleau/sheet"
)

// What leaves the book: exports, statements for a learning record store, backups; and a book made anew from one.

func (s *session) bookExport() *cobra.Command {
	var w booked
	var out, base string
	var comments bool
	c := &cobra.Command{
		Use:   "export csv|xapi",
		Short: words.Say("book_cli.export_short"),
		Long:  words.Say("book_cli.export_long"),
		Args:  exactly(1, "csv|xapi"),
		RunE: func(c *cobra.Command, args []string) error {
			if err := needed(c, "out"); err != nil {
				return err
			}
			var do func(l *ledger.Ledger) (int, error)
			switch args[0] {
			case "csv":
				do = func(l *ledger.Ledger) (int, error) { return l.CSV(out, comments) }
			case "xapi":
				if err := needed(c, "base"); err != nil {
					return err
				}
				do = func(l *ledger.Ledger) (int, error) { return l.XAPI(out, base, comments) }
			default:
				return wrong(words.Say("book_cli.no_form", args[0]))
			}
			return w.withBook(func(l *ledger.Ledger) error {
				n, err := do(l)
				if err != nil {
					return err
				}
				if args[0] == "csv" {
					s.say("book_cli.exported_csv", out, n)
				} else {
					s.say("book_cli.exported_xapi", out, n)
				}
				return nil
			})
		},
	}
	w.placeFlags(c)
	c.Flags().StringVar(&out, "out", "", words.Say("book_cli.flag_out"))
	c.Flags().StringVar(&base, "base", "", words.Say("book_cli.flag_base"))
	c.Flags().BoolVar(&comments, "comments", false, words.Say("book_cli.flag_with_comments"))
	return c
}

func (s *session) bookSheet() *cobra.Command {
	var w booked
	var out, pdf string
	var comments bool
	c := &cobra.Command{
		Use:   "sheet RECORD",
		Short: words.Say("book_cli.sheet_short"),
		Long:  words.Say("book_cli.sheet_long"),
		Args:  exactly(1, "RECORD"),
		RunE: func(c *cobra.Command, args []string) error {
			if out == "" && pdf == "" {
				return needed(c, "out")
			}
			return w.withBook(func(l *ledger.Ledger) error {
				e := l.Find(args[0])
				if e == nil {
					return wrong(words.Say("ledger.no_record", args[0]))
				}
				page, err := sheet.Of(l.State, e, comments)
				if err != nil {
					return err
				}
				files := []struct {
					path    string
					make    func() ([]byte, error)
					content []byte
				}{{path: out, make: page.HTML}, {path: pdf, make: page.PDF}}
				for i := range files {
					if f := &files[i]; f.path != "" {
						if f.content, err = f.make(); err != nil {
							return err
						}
					}
				}
				for _, f := range files {
					if f.path == "" {
						continue
					}
					if err := ledger.Place(f.path, f.content); err != nil {
						return err
					}
					s.say("book_cli.sheet_made", e.Leaf.ID, f.path)
				}
				return nil
			})
		},
	}
	w.placeFlags(c)
	c.Flags().StringVar(&out, "out", "", words.Say("book_cli.flag_html"))
	c.Flags().StringVar(&pdf, "pdf", "", words.Say("book_cli.flag_pdf"))
	c.Flags().BoolVar(&comments, "comments", false, words.Say("book_cli.flag_with_comments"))
	return c
}

func (s *session) bookSend() *cobra.Command {
	var w booked
	var to ledger.Sending
	var secretFile string
	c := &cobra.Command{
		Use:   "send",
		Short: words.Say("book_cli.send_short"),
		Long:  words.Say("book_cli.send_long"),
		Args:  exactly(0, ""),
		RunE: func(c *cobra.Command, _ []string) (err error) {
			if err := needed(c, "base", "to", "user", "secret-file"); err != nil {
				return err
			}
			if to.Secret, err = s.secretIn(secretFile); err != nil {
				return err
			}
			return w.withBook(func(l *ledger.Ledger) error {
				got, err := l.Send(to)
				if err != nil {
					return err
				}
				return s.sent(got)
			})
		},
	}
	w.placeFlags(c)
	c.Flags().StringVar(&to.Base, "base", "", words.Say("book_cli.flag_base"))
	c.Flags().StringVar(&to.To, "to", "", words.Say("book_cli.flag_to"))
	c.Flags().StringVar(&to.User, "user", "", words.Say("book_cli.flag_user"))
	c.Flags().StringVar(&secretFile, "secret-file", "", words.Say("book_cli.flag_secret"))
	return c
}

// sent says what was sent and what waits.
func (s *session) sent(got *ledger.Sent) error {
	s.say("book_cli.sent", got.Delivered, len(got.Refused)+got.Left)
	for _, r := range got.Refused {
		s.say("book_cli.refused", r.Statement, r.Record, r.Why)
	}
	switch {
	case got.Trouble != "":
		return trouble(wrap(words.Say("book_cli.stopped", got.Trouble), "", "  "))
	case len(got.Refused) > 0:
		return notRight(wrap(words.Say("book_cli.some_refused", len(got.Refused)), "", "  "))
	}
	return nil
}

func (s *session) bookBackup() *cobra.Command {
	var w booked
	c := &cobra.Command{
		Use:   "backup FILE",
		Short: words.Say("book_cli.backup_short"),
		Long:  words.Say("book_cli.backup_long"),
		Args:  exactly(1, "FILE"),
		RunE: func(_ *cobra.Command, args []string) error {
			return w.withBook(func(l *ledger.Ledger) error {
				if err := l.Backup(args[0]); err != nil {
					return err
				}
				s.say("book_cli.backed_up", l.Size(), args[0])
				return nil
			})
		},
	}
	w.placeFlags(c)
	return c
}

func (s *session) bookRestore() *cobra.Command {
	var w booked
	c := &cobra.Command{
		Use:   "restore FILE",
		Short: words.Say("book_cli.restore_short"),
		Long:  words.Say("book_cli.restore_long"),
		Args:  exactly(1, "FILE"),
		RunE: func(_ *cobra.Command, args []string) error {
			p, err := ledger.Find(w.book, w.keys)
			if err != nil {
				return bookFault(err)
			}
			l, err := ledger.Restore(args[0], p)
			if err != nil {
				return bookFault(err)
			}
			defer l.Close()
			s.say("book_cli.restored", l.Size(), l.Where())
			return nil
		},
	}
	w.placeFlags(c)
	return c
}
