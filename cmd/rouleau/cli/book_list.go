package cli

import (
	"fmt"
	"slices"
	"time"

	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/ledger"
	"rouleau/scoring/book"
)

// Lists: the records of the book in order, and who is due for what.

func (s *session) bookList() *cobra.Command {
	var w booked
	var learner string
	c := &cobra.Command{
		Use:   "list",
		Short: words.Say("book_cli.list_short"),
		Long:  words.Say("book_cli.list_long"),
		Args:  exactly(0, ""),
		RunE: func(*cobra.Command, []string) error {
			return w.withBook(func(l *ledger.Ledger) error {
				n := 0
				for _, e := range l.Entries {
					if learner == "" || e.Learner() == learner {
						n++
						s.line(e)
					}
				}
				if n == 0 && learner != "" {
					return notRight(words.Say("book_cli.none_of", learner))
				}
				return nil
			})
		},
	}
	w.placeFlags(c)
	c.Flags().StringVar(&learner, "learner", "", words.Say("book_cli.flag_only"))
	return c
}

// line is a record in a line or two: what people have written does not stand in it.
func (s *session) line(e *book.Entry) {
	fmt.Fprintln(&s.out, wrap(about(e)+becameOf(e), fmt.Sprintf("%s  %s  %-9s ", e.Leaf.ID[:8], onDay(e.Leaf.At), kindWord(e.Leaf.Kind)), "          "))
}

func kindWord(k book.Kind) string {
	switch k {
	case book.KindKey:
		return words.Say("book_cli.kind_key")
	case book.KindSignOff:
		return words.Say("book_cli.kind_signed")
	case book.KindRating:
		return words.Say("book_cli.kind_rated")
	case book.KindVoid:
		return words.Say("book_cli.kind_void")
	case book.KindForget:
		return words.Say("book_cli.kind_deleted")
	case book.KindCase:
		return words.Say("book_cli.kind_case")
	case book.KindEvent:
		return words.Say("book_cli.kind_event")
	}
	return words.Say("book_cli.kind_plan")
}

// onDay is a time as lists have it, in the zone in which it was written.
func onDay(at string) string {
	if t, err := time.Parse(time.RFC3339, at); err == nil {
		return t.Format("2006-01-02 15:04")
	}
	return at
}

func about(e *book.Entry) string {
	switch b := e.Body.(type) {
	case *book.Key:
		if b.Ended {
			return words.Say("book_cli.line_ended", b.Person, roleWord(b.Role))
		}
		return words.Say("book_cli.line_key", b.Person, roleWord(b.Role))
	case *book.SignOff:
		return words.Say("book_cli.line_signed", b.Learner, b.Assessor, b.Scenario.ID, b.Scenario.Version, b.Number, b.Points, outcomeWord(b.Outcome), b.Due)
	case *book.Rating:
		return words.Say("book_cli.line_rated", b.Learner, b.Assessor, b.Of[:8])
	case *book.Void:
		return words.Say("book_cli.line_void", b.Of[:8], b.Assessor)
	case *book.Forget:
		return words.Say("book_cli.line_deleted", b.Of[:8], b.By)
	case *book.Case:
		return words.Say("book_cli.line_case", b.Learner, b.Assessor, b.Competency, b.Date)
	case *book.Event:
		return words.Say("book_cli.line_event", eventWord(b.What), whom(b.Learner), b.Date, b.By)
	case *book.PlanText:
		return words.Say("book_cli.line_plan", b.By)
	}
	return words.Say("book_cli.line_gone")
}

// becameOf says what became of a record later.
func becameOf(e *book.Entry) string {
	switch {
	case e.ForgottenBy != "":
		return " " + words.Say("book_cli.became_deleted", e.ForgottenBy[:8])
	case e.VoidedBy != "":
		return " " + words.Say("book_cli.became_void", e.VoidedBy[:8])
	case e.SupersededBy != "":
		return " " + words.Say("book_cli.became_old", e.SupersededBy[:8])
	}
	return ""
}

func (s *session) bookStatus() *cobra.Command {
	var w booked
	var learner, on string
	c := &cobra.Command{
		Use:   "status",
		Short: words.Say("book_cli.status_short"),
		Long:  words.Say("book_cli.status_long"),
		Args:  exactly(0, ""),
		RunE: func(*cobra.Command, []string) error {
			today := time.Now()
			if on != "" {
				var err error
				if today, err = time.Parse(time.DateOnly, on); err != nil {
					return wrong(words.Say("book_cli.no_date", on))
				}
			}
			return w.withBook(func(l *ledger.Ledger) error { return s.status(l, learner, today) })
		},
	}
	w.placeFlags(c)
	c.Flags().StringVar(&learner, "learner", "", words.Say("book_cli.flag_only"))
	c.Flags().StringVar(&on, "on", "", words.Say("book_cli.flag_on"))
	return c
}

func (s *session) status(l *ledger.Ledger, learner string, today time.Time) error {
	p := l.Plan()
	if p == nil {
		return notRight(words.Say("book_cli.no_plan"))
	}
	y, m, d := today.Date()
	today = time.Date(y, m, d, 0, 0, 0, 0, time.UTC) // due dates are days
	all := l.Status(p, today)
	if learner != "" {
		all = slices.DeleteFunc(all, func(st book.Standing) bool { return st.Learner != learner })
	}
	if len(all) == 0 && learner != "" {
		return notRight(words.Say("book_cli.no_learner", learner))
	}
	fmt.Fprintln(&s.out, words.Say("book_cli.status_head", p.Department, today.Format(time.DateOnly)))
	due, last := 0, ""
	for i := range all {
		st := &all[i]
		if st.Learner != last {
			fmt.Fprintf(&s.out, "\n%s\n", st.Learner)
			last = st.Learner
		}
		if st.Due {
			due++
		}
		s.standing(st)
	}
	fmt.Fprintf(&s.out, "\n%s\n", words.Say("book_cli.status_sum", due, len(all)))
	if a := l.Agreement(""); a.Items > 0 && learner == "" {
		fmt.Fprintf(&s.out, "\n%s\n", words.Say("book_cli.second_raters"))
		s.sayAgreement(a)
	}
	return nil
}

// standing prints how somebody stands in a competency, and why.
func (s *session) standing(st *book.Standing) {
	tell := func(key string, args ...any) { fmt.Fprintln(&s.out, wrap(words.Say(key, args...), "    ", "      ")) }
	head := words.Say("book_cli.holds", st.Competency.Name, st.Until.Format(time.DateOnly))
	switch {
	case !st.Shown:
		head = words.Say("book_cli.not_shown", st.Competency.Name)
	case st.Due:
		head = words.Say("book_cli.due_again", st.Competency.Name)
	}
	fmt.Fprintln(&s.out, wrap(head, "  ", "    "))
	for _, why := range st.Why {
		tell("book_cli.because", why)
	}
	for _, what := range st.Missing {
		tell("book_cli.missing", what)
	}
	if st.Shown && st.Competency.SupervisedCases > 0 {
		tell("book_cli.cases", st.Cases, st.Competency.SupervisedCases)
	}
}
