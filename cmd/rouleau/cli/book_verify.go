package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/ledger"
	"rouleau/scoring/book"
)

// Verifying a book, and what others can check: checkpoints and proofs.

func (s *session) bookVerify() *cobra.Command {
	var w booked
	var v ledger.Verification
	c := &cobra.Command{
		Use:   "verify",
		Short: words.Say("book_cli.verify_short"),
		Long:  words.Say("book_cli.verify_long"),
		Args:  exactly(0, ""),
		RunE: func(c *cobra.Command, _ []string) error {
			p, err := ledger.Find(w.book, w.keys)
			if err != nil {
				return bookFault(err)
			}
			v.Progress = s.progress()
			got, err := ledger.Verify(c.Context(), p, v)
			if err != nil {
				return bookFault(err)
			}
			return s.verified(got, v.NoReplay)
		},
	}
	w.placeFlags(c)
	c.Flags().BoolVar(&v.NoReplay, "no-replay", false, words.Say("book_cli.flag_no_replay"))
	c.Flags().StringArrayVar(&v.Against, "against", nil, words.Say("book_cli.flag_against"))
	c.Flags().IntVar(&v.Workers, "workers", 0, words.Say("book_cli.flag_workers"))
	return c
}

// verified prints the verdicts and everything that is not in order, and gives the exit code.
func (s *session) verified(got *ledger.Verified, noReplay bool) error {
	s.say("book_cli.verified", got.Origin, len(got.Findings), got.Root)
	if got.Kept > 0 && len(got.Log) == 0 {
		s.say("book_cli.agrees", got.Kept)
	}
	for v := range book.Broken + 1 {
		if n := got.Count(v); n > 0 {
			fmt.Fprintln(&s.out, wrap(ledger.VerdictWords(v), fmt.Sprintf("%6d  ", n), "        "))
		}
	}
	if noReplay {
		s.say("book_cli.not_replayed")
	}
	for _, what := range got.Log {
		s.say("book_cli.log_wrong", what)
	}
	for i := range got.Findings {
		f := &got.Findings[i]
		if f.What == "" {
			continue
		}
		id := f.ID
		if id == "" {
			id = words.Say("book_cli.unreadable")
		}
		s.say("book_cli.finding", f.Seq+1, id, strings.ReplaceAll(f.Verdict.String(), "_", " "), f.What)
	}
	switch got.Worst() {
	case book.Broken:
		s.say("book_cli.is_wrong")
		return &failure{code: exitNotRight}
	case book.Mismatch:
		s.say("book_cli.comes_otherwise")
		return &failure{code: exitMismatch}
	case book.NoModel:
		return &failure{code: exitNoModel}
	case book.SameDecision:
		return &failure{code: exitOtherBits}
	}
	s.say("book_cli.is_right")
	return nil
}

func (s *session) bookCheckpoint() *cobra.Command {
	var w booked
	var out string
	c := &cobra.Command{
		Use:   "checkpoint",
		Short: words.Say("book_cli.checkpoint_short"),
		Long:  words.Say("book_cli.checkpoint_long"),
		Args:  exactly(0, ""),
		RunE: func(*cobra.Command, []string) error {
			return w.withBook(func(l *ledger.Ledger) error {
				signed, err := l.Newest()
				if err != nil {
					return err
				}
				if out == "" {
					s.out.Write(signed)
					return nil
				}
				if err := ledger.Place(out, signed); err != nil {
					return err
				}
				s.say("book_cli.checkpointed", l.Size(), out)
				return nil
			})
		},
	}
	w.placeFlags(c)
	c.Flags().StringVar(&out, "out", "", words.Say("book_cli.flag_out"))
	return c
}

func (s *session) bookProve() *cobra.Command {
	var w booked
	var out string
	var body bool
	c := &cobra.Command{
		Use:   "prove RECORD",
		Short: words.Say("book_cli.prove_short"),
		Long:  words.Say("book_cli.prove_long"),
		Args:  exactly(1, "RECORD"),
		RunE: func(c *cobra.Command, args []string) error {
			if err := needed(c, "out"); err != nil {
				return err
			}
			return w.withBook(func(l *ledger.Ledger) error {
				e, err := l.ProveTo(args[0], body, out)
				if err != nil {
					return err
				}
				if body {
					s.warn(words.Say("book_cli.proof_shows"))
				}
				s.say("book_cli.proved", e.Leaf.ID, out)
				return nil
			})
		},
	}
	w.placeFlags(c)
	c.Flags().StringVar(&out, "out", "", words.Say("book_cli.flag_out"))
	c.Flags().BoolVar(&body, "with-body", false, words.Say("book_cli.flag_with_body"))
	return c
}

func (s *session) bookCheckProof() *cobra.Command {
	var against string
	c := &cobra.Command{
		Use:   "check-proof FILE",
		Short: words.Say("book_cli.check_proof_short"),
		Long:  words.Say("book_cli.check_proof_long"),
		Args:  exactly(1, "FILE"),
		RunE: func(_ *cobra.Command, args []string) error {
			p, e, kept, err := ledger.CheckProof(args[0], against)
			if err != nil {
				return bookFault(err)
			}
			s.say("book_cli.proof_holds", e.Leaf.ID, e.Seq+1, kept.Size, kept.Origin)
			if against == "" {
				s.say("book_cli.proof_alone", strings.Join(keysOf(p), ", "))
			} else {
				s.say("book_cli.proof_against", against)
			}
			fmt.Fprintln(&s.out)
			s.showRecord(nil, e)
			return nil
		},
	}
	c.Flags().StringVar(&against, "against", "", words.Say("book_cli.flag_proof_against"))
	return c
}

// keysOf are the short names of the keys in a proof.
func keysOf(p *book.Proof) []string {
	var all []string
	for _, k := range p.LogKeys {
		all = append(all, k[:min(16, len(k))])
	}
	return all
}
