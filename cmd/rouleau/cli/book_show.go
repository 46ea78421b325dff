package cli

import (
	"fmt"

	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/ledger"
	"rouleau/scoring"
	"rouleau/scoring/book"
	"rouleau/sim"
)

// One record, with everything in it.

func (s *session) bookShow() *cobra.Command {
	var w booked
	c := &cobra.Command{
		Use:   "show RECORD",
		Short: words.Say("book_cli.show_short"),
		Long:  words.Say("book_cli.show_long"),
		Args:  exactly(1, "RECORD"),
		RunE: func(_ *cobra.Command, args []string) error {
			return w.withBook(func(l *ledger.Ledger) error {
				e := l.Find(args[0])
				if e == nil {
					return wrong(words.Say("ledger.no_record", args[0]))
				}
				s.showRecord(l, e)
				return nil
			})
		},
	}
	w.placeFlags(c)
	return c
}

// field prints what a record says about something, nothing where it says nothing.
func (s *session) field(key, value string) {
	if value != "" {
		fmt.Fprintln(&s.out, wrap(value, fmt.Sprintf("%-26s", words.Say(key)), fmt.Sprintf("%-26s", "")))
	}
}

// showRecord prints a record; without its book, as from a proof, what others say of it is left out.
func (s *session) showRecord(l *ledger.Ledger, e *book.Entry) {
	fmt.Fprintf(&s.out, "%s\n\n", wrap(words.Say("book_cli.is", kindWord(e.Leaf.Kind), about(e)+becameOf(e)), "", "  "))
	s.field("book_cli.field_record", words.Say("book_cli.place", e.Leaf.ID, e.Seq+1))
	s.field("book_cli.field_written", e.Leaf.At)
	s.field("book_cli.field_key", e.Leaf.Key)
	switch b := e.Body.(type) {
	case *book.SignOff:
		s.showSignOff(l, e, b)
	case *book.Rating:
		s.showRated(b.Rated)
		s.field("book_cli.field_comments", b.Comments)
	case *book.Void:
		s.field("book_cli.field_reason", b.Reason)
	case *book.Forget:
		s.field("book_cli.field_reason", b.Reason)
	case *book.Event:
		s.field("book_cli.field_reason", b.Reason)
	case *book.Key:
		s.field("book_cli.field_reason", b.Reason)
	case *book.PlanText:
		fmt.Fprintf(&s.out, "\n%s", b.YAML)
	}
}

func (s *session) showSignOff(l *ledger.Ledger, e *book.Entry, b *book.SignOff) {
	s.field("book_cli.field_for", b.For)
	s.field("book_cli.field_decided", b.Date)
	s.field("book_cli.field_scenario", words.Say("book_cli.scenario", b.Scenario.ID, b.Scenario.Version, b.Scenario.SHA256))
	s.field("book_cli.field_played", words.Say("book_cli.played", b.Played, modeWord(b.Mode), b.Seed, b.Model, clock(int64(b.LengthS*sim.TicksPerSecond))))
	if k := b.Breaks; k != (book.Breaks{}) {
		s.field("book_cli.field_breaks", words.Say("cli.breaks", k.Interruptions, k.LetGoS))
	}
	s.field("book_cli.field_number", words.Say("book_cli.number", b.Number))
	for _, k := range b.Earlier {
		s.field("book_cli.field_earlier", words.Say("book_cli.earlier", k.Played, modeWord(k.Mode), k.Points, yes(k.Passed), k.Critical))
	}
	s.field("book_cli.field_points", words.Say("book_cli.points", b.Points, b.PassMark, yes(b.Passed)))
	s.field("book_cli.field_mark", b.MarkSetBy)
	s.field("book_cli.field_outcome", outcomeWord(b.Outcome))
	s.field("book_cli.field_override", b.Override)
	s.field("book_cli.field_due", b.Due)
	s.field("book_cli.field_supersedes", b.Supersedes)
	s.field("book_cli.field_comments", b.Comments)
	s.field("book_cli.field_feedback", b.Feedback)
	for _, t := range b.Training {
		s.field("book_cli.field_training", words.Say("book_cli.training", t.What, t.Text))
	}
	s.showRated(b.Rated)
	if l != nil {
		s.showSecond(l, e)
	}
	fmt.Fprintf(&s.out, "\n%s\n", words.Say("cli.critical"))
	for _, k := range b.Critical {
		fmt.Fprintln(&s.out, wrap(words.Say("book_cli.critical", k.Reason, mended(k.Mended), atSecond(k.AtS)), "  - ", "    "))
	}
	if len(b.Critical) == 0 {
		fmt.Fprintf(&s.out, "  %s\n", words.Say("cli.none"))
	}
	for _, p := range b.Parts {
		if p.Of <= 0 {
			continue
		}
		fmt.Fprintf(&s.out, "\n%s\n", words.Say("book_cli.part", p.Part, p.Points, p.Of, p.Floor))
		for i := range b.Criteria {
			if k := &b.Criteria[i]; k.Part == p.Part {
				s.showCriterion(k)
			}
		}
	}
}

// showSecond prints second ratings, and how far they agree with the first.
func (s *session) showSecond(l *ledger.Ledger, e *book.Entry) {
	for _, second := range l.Entries {
		if r, ok := second.Body.(*book.Rating); ok && r.Of == e.Leaf.ID && second.InForce() {
			fmt.Fprintf(&s.out, "\n%s\n", words.Say("book_cli.second", r.Assessor, second.Leaf.ID[:8]))
			s.showRated(r.Rated)
			s.field("book_cli.field_comments", r.Comments)
		}
	}
	s.sayAgreement(l.Agreement(e.Leaf.ID))
}

func (s *session) showCriterion(k *book.Criterion) {
	value := words.Say("cli.not_measured")
	if k.Measured {
		value = scoring.ShowUnit(k.Value, k.Unit)
	}
	fmt.Fprintln(&s.out, wrap(words.Say("book_cli.criterion", k.Points, k.Of, k.Measure, value, k.Target, atSecond(k.AtS)), "  ", "    "))
	fmt.Fprintln(&s.out, wrap(k.Reason+" "+words.Say("cli.source", k.Source), "    ", "    "))
}

func (s *session) showRated(all []book.Rated) {
	for _, r := range all {
		text := words.Say("book_cli.level", r.Level, r.Anchor)
		if r.Comment != "" {
			text += ". " + r.Comment
		}
		fmt.Fprintln(&s.out, wrap(text, fmt.Sprintf("%-26s", r.Item), fmt.Sprintf("%-26s", "")))
	}
}

func yes(b bool) string {
	if b {
		return words.Say("cli.yes")
	}
	return words.Say("cli.no")
}

func mended(b bool) string {
	if b {
		return words.Say("book_cli.mended")
	}
	return words.Say("book_cli.not_mended")
}

// atSecond is a moment of the case, a dash for none.
func atSecond(at float64) string {
	if at < 0 {
		return "–"
	}
	return clock(int64(at * sim.TicksPerSecond))
}
