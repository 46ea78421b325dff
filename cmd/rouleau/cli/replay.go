package cli

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"rouleau/assets/words"
	"rouleau/scoring/attempt"
)

// Playing an attempt again, and saying what came of it.

func (s *session) replayCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "replay ATTEMPT",
		Short: words.Say("cli.replay_short"),
		Long:  words.Say("cli.replay_long"),
		Args:  exactly(1, "ATTEMPT"),
		RunE:  func(_ *cobra.Command, args []string) error { return s.replay(args[0]) },
	}
}

func (s *session) replay(path string) error {
	a, err := loadAttempt(path)
	if err != nil {
		return err
	}
	r, err := attempt.Replay(a)
	if err != nil {
		return notRight(err.Error())
	}
	say := func(key string, args ...any) { fmt.Fprintln(&s.out, wrap(words.Say(key, args...), "", "  ")) }
	say("cli.replayed", a.Scenario.ID, a.Scenario.Version, a.Seed, modeWord(a.Mode), a.Operator, a.When)
	if b := a.Breaks; b != (attempt.Breaks{}) {
		say("cli.breaks", b.Interruptions, float64(b.LetGoS))
		if b.TakenOver {
			say("cli.taken_over")
		}
	}
	if r.ModelRecorded != r.ModelNow {
		say("cli.other_model", r.ModelRecorded, r.ModelNow)
	}
	if len(r.Wording) > 0 {
		say("cli.other_wording", len(r.Wording))
	}
	if r.Same() {
		say("cli.same", r.Acts, r.Hashes, r.Points, len(a.Quantities))
		return nil
	}
	say("cli.not_same")
	if !r.Sealed {
		say("cli.seal_broken")
	}
	if f := r.Refused; f != nil {
		say("cli.act_refused", f.Act, clock(f.Tick), f.Tick, words.Say("why."+string(f.Reason)))
	}
	if r.Parting != nil {
		writeParting(&s.out, r.Parting)
	}
	if r.LengthRecorded != r.LengthNow || r.EndedRecorded != r.EndedNow {
		say("cli.other_length", r.LengthRecorded, ended(r.EndedRecorded), r.LengthNow, ended(r.EndedNow))
	}
	if len(r.Grade) > 0 {
		say("cli.other_grade", len(r.Grade))
		writeDifferent(&s.out, r.Grade)
	}
	return notRight("")
}

func ended(yes bool) string {
	if yes {
		return words.Say("cli.ended")
	}
	return words.Say("cli.not_ended")
}

func writeParting(w io.Writer, p *attempt.Parting) {
	text := words.Say("cli.parts_between", p.After, clock(max(0, p.After)), p.By, clock(p.By))
	if p.After < 0 {
		text = words.Say("cli.parts_at_start", p.By)
	}
	fmt.Fprintln(w, wrap(text, "", "  "))
	different := p.Quantities
	if p.Hash != nil {
		different = append(different[:len(different):len(different)], *p.Hash)
	}
	writeDifferent(w, different)
}

// writeDifferent is a table of what was recorded and what came out now.
func writeDifferent(w io.Writer, different []attempt.Different) {
	const most = 20
	row := "  %-50s %-24s %s\n"
	fmt.Fprintf(w, row, words.Say("cli.quantity"), words.Say("cli.recorded"), words.Say("cli.now"))
	for i, d := range different {
		if i == most {
			fmt.Fprintf(w, "  %s\n", words.Say("cli.more", len(different)-most))
			return
		}
		fmt.Fprintf(w, row, d.Name, d.Recorded, d.Now)
	}
}
