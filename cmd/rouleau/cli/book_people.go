package cli

import (
	"path/filepath"

	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/ledger"
	"rouleau/cmd/rouleau/shelf"
	"rouleau/scoring/book"
)

// Making a book, keys and people.

func (s *session) bookInit() *cobra.Command {
	var w booked
	var origin string
	c := &cobra.Command{
		Use:   "init",
		Short: words.Say("book_cli.init_short"),
		Long:  words.Say("book_cli.init_long"),
		Args:  exactly(0, ""),
		RunE: func(c *cobra.Command, _ []string) error {
			if err := needed(c, "origin", "as"); err != nil {
				return err
			}
			p, err := ledger.Find(w.book, w.keys)
			if err != nil {
				return bookFault(err)
			}
			ask := s.newPhrase
			if shelf.KeyThere(p.Keys, w.as, book.Administrator) {
				ask = func(w *booked, person string, role book.Role) (string, error) {
					return s.signer(w).Phrase(person, role)
				}
			}
			phrase, err := ask(&w, w.as, book.Administrator)
			if err != nil {
				return err
			}
			l, err := ledger.Found(p, origin, w.as, phrase)
			if err != nil {
				return bookFault(err)
			}
			defer l.Close()
			s.say("book_cli.made", origin, l.Where(), w.as, filepath.Dir(shelf.PublicFile(p.Keys, w.as, book.Administrator)))
			return nil
		},
	}
	w.signFlags(c)
	c.Flags().StringVar(&origin, "origin", "", words.Say("book_cli.flag_origin"))
	return c
}

func (s *session) bookKey() *cobra.Command {
	var w booked
	var role string
	c := &cobra.Command{
		Use:   "key CODE",
		Short: words.Say("book_cli.key_short"),
		Long:  words.Say("book_cli.key_long"),
		Args:  exactly(1, "CODE"),
		RunE: func(c *cobra.Command, args []string) error {
			if err := needed(c, "role"); err != nil {
				return err
			}
			p, err := ledger.Find(w.book, w.keys)
			if err != nil {
				return bookFault(err)
			}
			r, err := ledger.ValidRole(role)
			if err != nil {
				return bookFault(err)
			}
			phrase, err := s.newPhrase(&w, args[0], r)
			if err != nil {
				return err
			}
			file, err := ledger.MakeKey(p.Keys, args[0], r, phrase)
			if err != nil {
				return bookFault(err)
			}
			s.say("book_cli.key_made", args[0], roleWord(r), file)
			return nil
		},
	}
	w.placeFlags(c)
	c.Flags().StringVar(&w.phrase, "passphrase-file", "", words.Say("book_cli.flag_phrase"))
	c.Flags().StringVar(&role, "role", "", words.Say("book_cli.flag_role"))
	return c
}

func (s *session) bookAdd() *cobra.Command {
	var w booked
	var role, public string
	c := &cobra.Command{
		Use:   "add CODE",
		Short: words.Say("book_cli.add_short"),
		Long:  words.Say("book_cli.add_long"),
		Args:  exactly(1, "CODE"),
		RunE: func(c *cobra.Command, args []string) error {
			if err := needed(c, "role", "as"); err != nil {
				return err
			}
			r, err := ledger.ValidRole(role)
			if err != nil {
				return bookFault(err)
			}
			return w.withBook(func(l *ledger.Ledger) error {
				e, err := l.AddPerson(args[0], r, public, s.signer(&w))
				if err != nil {
					return err
				}
				s.say("book_cli.added", args[0], roleWord(r), e.Leaf.ID)
				return nil
			})
		},
	}
	w.signFlags(c)
	c.Flags().StringVar(&role, "role", "", words.Say("book_cli.flag_role"))
	c.Flags().StringVar(&public, "public", "", words.Say("book_cli.flag_public"))
	return c
}

func (s *session) bookEnd() *cobra.Command {
	var w booked
	var role, reason string
	c := &cobra.Command{
		Use:   "end CODE",
		Short: words.Say("book_cli.end_short"),
		Long:  words.Say("book_cli.end_long"),
		Args:  exactly(1, "CODE"),
		RunE: func(c *cobra.Command, args []string) error {
			if err := needed(c, "role", "reason", "as"); err != nil {
				return err
			}
			r, err := ledger.ValidRole(role)
			if err != nil {
				return bookFault(err)
			}
			return w.withBook(func(l *ledger.Ledger) error {
				if err := s.warnOf(l, reason); err != nil {
					return err
				}
				if _, err := l.EndPerson(args[0], r, reason, s.signer(&w)); err != nil {
					return err
				}
				s.say("book_cli.ended", args[0], roleWord(r))
				return nil
			})
		},
	}
	w.signFlags(c)
	c.Flags().StringVar(&role, "role", "", words.Say("book_cli.flag_role"))
	c.Flags().StringVar(&reason, "reason", "", words.Say("book_cli.flag_reason"))
	return c
}

func (s *session) bookName() *cobra.Command {
	var w booked
	c := &cobra.Command{
		Use:   "name CODE [NAME]",
		Short: words.Say("book_cli.name_short"),
		Long:  words.Say("book_cli.name_long"),
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 2 {
				return nil
			}
			return exactly(1, "CODE")(c, args)
		},
		RunE: func(_ *cobra.Command, args []string) error {
			p, err := ledger.Find(w.book, w.keys)
			if err != nil {
				return bookFault(err)
			}
			if len(args) == 2 {
				if err := ledger.SetName(p.Keys, args[0], args[1]); err != nil {
					return bookFault(err)
				}
				s.say("book_cli.named", args[0])
				return nil
			}
			names, err := ledger.Names(p.Keys)
			if err != nil {
				return bookFault(err)
			}
			name, ok := names[args[0]]
			if !ok {
				return notRight(words.Say("book_cli.no_name", args[0]))
			}
			s.say("book_cli.is_called", args[0], name)
			return nil
		},
	}
	w.placeFlags(c)
	return c
}

// warnOf tells what in texts could tell who somebody is.
func (s *session) warnOf(l *ledger.Ledger, texts ...string) error {
	warnings, err := l.Warnings(texts...)
	s.warn(warnings...)
	return err
}
