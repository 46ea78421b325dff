package cli

import (
	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/ledger"
	"rouleau/scoring/book"
)

// Plans, supervised cases, events, and records that no longer count or are deleted.

func (s *session) bookPlan() *cobra.Command {
	var w booked
	c := &cobra.Command{
		Use:   "plan FILE",
		Short: words.Say("book_cli.plan_short"),
		Long:  words.Say("book_cli.plan_long"),
		Args:  exactly(1, "FILE"),
		RunE: func(c *cobra.Command, args []string) error {
			if err := needed(c, "as"); err != nil {
				return err
			}
			return w.withBook(func(l *ledger.Ledger) error {
				e, p, err := l.SetPlan(args[0], s.signer(&w))
				if err != nil {
					return err
				}
				s.say("book_cli.planned", p.Department, len(p.Competencies), len(p.Items), e.Leaf.ID)
				return nil
			})
		},
	}
	w.signFlags(c)
	return c
}

// undoing is a command that says with a reason that something is no longer so.
func (s *session) undoing(name, short, long, done string, do func(l *ledger.Ledger, id, reason string, as ledger.As) (*book.Entry, error)) *cobra.Command {
	var w booked
	var reason string
	c := &cobra.Command{
		Use:   name + " RECORD",
		Short: words.Say(short),
		Long:  words.Say(long),
		Args:  exactly(1, "RECORD"),
		RunE: func(c *cobra.Command, args []string) error {
			if err := needed(c, "reason", "as"); err != nil {
				return err
			}
			return w.withBook(func(l *ledger.Ledger) error {
				if err := s.warnOf(l, reason); err != nil {
					return err
				}
				e, err := do(l, args[0], reason, s.signer(&w))
				if err != nil {
					return err
				}
				s.say(done, ofWhat(e), e.Leaf.ID)
				return nil
			})
		},
	}
	w.signFlags(c)
	c.Flags().StringVar(&reason, "reason", "", words.Say("book_cli.flag_reason"))
	return c
}

// ofWhat is the number of the record that a void or a deletion is about.
func ofWhat(e *book.Entry) string {
	if b, ok := e.Body.(*book.Void); ok {
		return b.Of
	}
	return e.Body.(*book.Forget).Of
}

func (s *session) bookVoid() *cobra.Command {
	return s.undoing("void", "book_cli.void_short", "book_cli.void_long", "book_cli.voided", (*ledger.Ledger).Void)
}

func (s *session) bookDelete() *cobra.Command {
	return s.undoing("delete", "book_cli.delete_short", "book_cli.delete_long", "book_cli.deleted", (*ledger.Ledger).Delete)
}

func (s *session) bookCase() *cobra.Command {
	var w booked
	var competency, date string
	c := &cobra.Command{
		Use:   "case LEARNER",
		Short: words.Say("book_cli.case_short"),
		Long:  words.Say("book_cli.case_long"),
		Args:  exactly(1, "LEARNER"),
		RunE: func(c *cobra.Command, args []string) error {
			if err := needed(c, "competency", "as"); err != nil {
				return err
			}
			return w.withBook(func(l *ledger.Ledger) error {
				e, err := l.CountCase(args[0], competency, date, s.signer(&w))
				if err != nil {
					return err
				}
				b := e.Body.(*book.Case)
				s.say("book_cli.counted", b.Learner, b.Competency, b.Date, e.Leaf.ID)
				return nil
			})
		},
	}
	w.signFlags(c)
	c.Flags().StringVar(&competency, "competency", "", words.Say("book_cli.flag_competency"))
	c.Flags().StringVar(&date, "date", "", words.Say("book_cli.flag_date"))
	return c
}

func (s *session) bookEvent() *cobra.Command {
	var w booked
	var learner, date, reason string
	var everybody bool
	c := &cobra.Command{
		Use:   "event incident|equipment|away",
		Short: words.Say("book_cli.event_short"),
		Long:  words.Say("book_cli.event_long"),
		Args:  exactly(1, "incident|equipment|away"),
		RunE: func(c *cobra.Command, args []string) error {
			if err := needed(c, "reason", "as"); err != nil {
				return err
			}
			if everybody == (learner != "") {
				return wrong(words.Say("book_cli.who_is_meant"))
			}
			return w.withBook(func(l *ledger.Ledger) error {
				if err := s.warnOf(l, reason); err != nil {
					return err
				}
				e, err := l.Note(args[0], learner, date, reason, s.signer(&w))
				if err != nil {
					return err
				}
				s.say("book_cli.noted", eventWord(args[0]), whom(learner), e.Body.(*book.Event).Date, e.Leaf.ID)
				return nil
			})
		},
	}
	w.signFlags(c)
	c.Flags().StringVar(&learner, "learner", "", words.Say("book_cli.flag_learner"))
	c.Flags().BoolVar(&everybody, "everybody", false, words.Say("book_cli.flag_everybody"))
	c.Flags().StringVar(&date, "date", "", words.Say("book_cli.flag_date"))
	c.Flags().StringVar(&reason, "reason", "", words.Say("book_cli.flag_reason"))
	return c
}

func eventWord(what string) string {
	switch what {
	case book.EventIncident:
		return words.Say("book_cli.incident")
	case book.EventEquipment:
		return words.Say("book_cli.equipment")
	}
	return words.Say("book_cli.away")
}

// whom is a learner, or everybody.
func whom(learner string) string {
	if learner == "" {
		return words.Say("book_cli.everybody")
	}
	return learner
}
