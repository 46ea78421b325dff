package cli

import (
	"fmt"
	"io"

	"rouleau/assets/words"
	"rouleau/scoring"
	"rouleau/scoring/attempt"
	"rouleau/sim"
)

// A grade for people: the verdict, then what points never make up for, then parts and criteria.

func (p *played) writeText(w io.Writer) {
	g := &p.grade
	fmt.Fprintf(w, "%s\n", wrap(p.sc.Title, "", ""))
	fmt.Fprintf(w, "%s\n\n", wrap(words.Say("cli.played", p.sc.ID, p.sc.Version, p.run.Seed, modeWord(p.by.Mode), p.by.Operator,
		clock(p.run.State.Tick), sim.ModelVersion), "", ""))
	verdict := words.Say("cli.failed", float64(g.Points), float64(g.PassMark))
	if g.Passed {
		verdict = words.Say("cli.passed", float64(g.Points), float64(g.PassMark))
	}
	fmt.Fprintln(w, verdict)
	for _, r := range g.Reasons {
		fmt.Fprintln(w, wrap(r, "  - ", "    "))
	}
	fmt.Fprintf(w, "\n%s\n", words.Say("cli.critical"))
	for i := range g.Critical {
		writeCritical(w, &g.Critical[i])
	}
	if len(g.Critical) == 0 {
		fmt.Fprintf(w, "  %s\n", words.Say("cli.none"))
	}
	fmt.Fprintf(w, "\n%s\n", words.Say("cli.parts"))
	for _, part := range g.Parts {
		if part.Of <= 0 { // a lesson leaves it out
			continue
		}
		reached := words.Say("cli.reached")
		if !part.Reached {
			reached = words.Say("cli.not_reached")
		}
		fmt.Fprintf(w, "  %-26s%s\n", part.Title, words.Say("cli.part_points", float64(part.Points), float64(part.Of), float64(part.Floor), reached))
	}
	for _, part := range g.Parts {
		if part.Of <= 0 {
			continue
		}
		fmt.Fprintf(w, "\n%s\n", part.Title)
		for i := range g.Criteria {
			if g.Criteria[i].Part == part.Part {
				writeCriterion(w, &g.Criteria[i])
			}
		}
	}
	p.writeRefused(w)
	for _, caution := range append([]string{words.Say("cli.caution")}, p.sc.Cautions...) {
		fmt.Fprintf(w, "\n%s\n", wrap(caution, "", ""))
	}
}

func modeWord(mode string) string {
	if mode == attempt.Assessment {
		return words.Say("cli.assessment")
	}
	return words.Say("cli.practice")
}

func writeCritical(w io.Writer, c *attempt.Critical) {
	text := c.Reason
	if c.Tick >= 0 {
		text = words.Say("cli.at", clock(c.Tick), c.Reason)
	}
	fmt.Fprintln(w, wrap(text, "  ! ", "    "))
}

func writeCriterion(w io.Writer, c *attempt.CriterionGrade) {
	value := words.Say("cli.not_measured")
	if c.Measured {
		value = scoring.ShowUnit(float64(c.Value), c.Unit)
	}
	points := words.Say("cli.points", float64(c.Points), float64(c.Of))
	const indent = "                "
	fmt.Fprintln(w, wrap(words.Say("cli.criterion", c.Meaning, value, c.Target), fmt.Sprintf("  %-14s", points), indent))
	reason := c.Reason
	if c.Tick >= 0 {
		reason = words.Say("cli.at", clock(c.Tick), c.Reason)
	}
	fmt.Fprintln(w, wrap(reason, indent, indent))
	fmt.Fprintln(w, wrap(words.Say("cli.source", c.Source), indent, indent))
}

// writeRefused lists what a script could not do.
func (p *played) writeRefused(w io.Writer) {
	if p.script == nil {
		return
	}
	if len(p.script.Refused) > 0 {
		fmt.Fprintf(w, "\n%s\n", words.Say("cli.refused"))
		for _, r := range p.script.Refused {
			fmt.Fprintln(w, wrap(words.Say("cli.refused_act", clock(r.Due), actText(r.Act), words.Say("why."+string(r.Reason))), "  ", "    "))
		}
	}
	if n := p.script.Left(); n > 0 {
		fmt.Fprintf(w, "\n%s\n", wrap(words.Say("cli.left", n), "", ""))
	}
}

// actText names an act by the names of files.
func actText(a sim.Action) string {
	if a.On == sim.NoPart {
		return a.Do.String()
	}
	return a.Do.String() + " " + a.On.String()
}
