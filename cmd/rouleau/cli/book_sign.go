package cli

import (
	"path/filepath"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/ledger"
	"rouleau/scoring/book"
)

// Signing off an attempt, and second ratings.

func (s *session) bookSign() *cobra.Command {
	var w booked
	var g ledger.Signing
	var outcome string
	var ratings, training []string
	c := &cobra.Command{
		Use:   "sign ATTEMPT",
		Short: words.Say("book_cli.sign_short"),
		Long:  words.Say("book_cli.sign_long"),
		Args:  exactly(1, "ATTEMPT"),
		RunE: func(c *cobra.Command, args []string) (err error) {
			if err := needed(c, "learner", "as", "for", "outcome"); err != nil {
				return err
			}
			g.Attempt, g.Assessor, g.Outcome = args[0], w.as, book.Outcome(outcome)
			if g.Earlier == "" {
				g.Earlier = filepath.Dir(args[0])
			}
			if g.Rated, err = readRatings(ratings); err != nil {
				return err
			}
			if g.Training, err = readTraining(training); err != nil {
				return err
			}
			return w.withBook(func(l *ledger.Ledger) error {
				d, err := l.Draft(g)
				if err != nil {
					return err
				}
				s.warn(d.Warnings...)
				e, err := l.Sign(d, s.signer(&w))
				if err != nil {
					return err
				}
				b := d.SignOff
				s.say("book_cli.signed", e.Leaf.ID, b.Learner, b.Scenario.ID, b.Scenario.Version, b.Number, outcomeWord(b.Outcome), b.Points, b.PassMark, b.Due)
				return nil
			})
		},
	}
	w.signFlags(c)
	f := c.Flags()
	f.StringVar(&g.Learner, "learner", "", words.Say("book_cli.flag_learner"))
	f.StringVar(&g.For, "for", "", words.Say("book_cli.flag_for"))
	f.StringVar(&outcome, "outcome", "", words.Say("book_cli.flag_outcome"))
	f.StringVar(&g.Override, "override", "", words.Say("book_cli.flag_override"))
	f.StringArrayVar(&ratings, "rated", nil, words.Say("book_cli.flag_rated"))
	f.StringVar(&g.Comments, "comments", "", words.Say("book_cli.flag_comments"))
	f.StringVar(&g.Feedback, "feedback", "", words.Say("book_cli.flag_feedback"))
	f.StringVar(&g.Due, "due", "", words.Say("book_cli.flag_due"))
	f.StringVar(&g.MarkSetBy, "mark-set-by", "", words.Say("book_cli.flag_mark"))
	f.StringVar(&g.Supersedes, "supersedes", "", words.Say("book_cli.flag_supersedes"))
	f.StringVar(&g.Earlier, "earlier", "", words.Say("book_cli.flag_earlier"))
	f.StringArrayVar(&training, "training", nil, words.Say("book_cli.flag_training"))
	return c
}

func (s *session) bookRate() *cobra.Command {
	var w booked
	var ratings []string
	var comments string
	c := &cobra.Command{
		Use:   "rate RECORD",
		Short: words.Say("book_cli.rate_short"),
		Long:  words.Say("book_cli.rate_long"),
		Args:  exactly(1, "RECORD"),
		RunE: func(c *cobra.Command, args []string) error {
			if err := needed(c, "rated", "as"); err != nil {
				return err
			}
			rated, err := readRatings(ratings)
			if err != nil {
				return err
			}
			return w.withBook(func(l *ledger.Ledger) error {
				texts := []string{comments}
				for _, r := range rated {
					texts = append(texts, r.Comment)
				}
				if err := s.warnOf(l, texts...); err != nil {
					return err
				}
				e, agreement, err := l.Rate(args[0], rated, comments, s.signer(&w))
				if err != nil {
					return err
				}
				s.say("book_cli.rated", e.Leaf.ID)
				s.sayAgreement(agreement)
				return nil
			})
		},
	}
	w.signFlags(c)
	c.Flags().StringArrayVar(&ratings, "rated", nil, words.Say("book_cli.flag_rated"))
	c.Flags().StringVar(&comments, "comments", "", words.Say("book_cli.flag_comments"))
	return c
}

// sayAgreement says how far the raters agree.
func (s *session) sayAgreement(a book.Agreement) {
	switch {
	case a.Computed:
		s.say("book_cli.kappa", a.Same, a.Items, a.Kappa)
	case a.Items > 0:
		s.say("book_cli.no_kappa", a.Same, a.Items)
	}
}

// readRatings reads ITEM=LEVEL[:comment].
func readRatings(texts []string) (all []book.Rated, err error) {
	for _, t := range texts {
		item, rest, ok := strings.Cut(t, "=")
		number, comment, _ := strings.Cut(rest, ":")
		level, bad := strconv.Atoi(strings.TrimSpace(number))
		if !ok || bad != nil {
			return nil, wrong(words.Say("book_cli.not_rated", t))
		}
		all = append(all, book.Rated{Item: strings.TrimSpace(item), Level: level, Comment: strings.TrimSpace(comment)})
	}
	return all, nil
}

// readTraining reads WHAT=TEXT.
func readTraining(texts []string) (all []book.Training, err error) {
	for _, t := range texts {
		what, text, ok := strings.Cut(t, "=")
		if !ok || strings.TrimSpace(what) == "" {
			return nil, wrong(words.Say("book_cli.not_training", t))
		}
		all = append(all, book.Training{What: strings.TrimSpace(what), Text: strings.TrimSpace(text)})
	}
	return all, nil
}

func outcomeWord(o book.Outcome) string {
	if o == book.Competent {
		return words.Say("book_cli.competent")
	}
	return words.Say("book_cli.not_yet")
}
