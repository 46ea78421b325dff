package cli

import (
	"bytes"
	"encoding/json"
	"io"
	"strconv"

	"rouleau/scoring/attempt"
	"rouleau/sim"
)

// Results for other programs.

// runJSON is what run --json prints.
type runJSON struct {
	Format   int           `json:"format"`
	Model    string        `json:"model"`
	Scenario scenarioJSON  `json:"scenario"`
	Seed     string        `json:"seed"` // as text: some readers of JSON round large numbers
	Mode     string        `json:"mode"`
	Operator string        `json:"operator"`
	LengthS  attempt.Exact `json:"length_s"`
	Grade    attempt.Grade `json:"grade"`
	Refused  []refusedJSON `json:"refused,omitempty"`
	Left     int           `json:"acts_not_reached,omitempty"`
}

type scenarioJSON struct {
	ID      string `json:"id"`
	Version int    `json:"version"`
	SHA256  string `json:"sha256"`
	Title   string `json:"title"`
}

type refusedJSON struct {
	AtS    attempt.Exact `json:"at_s"`
	Act    string        `json:"act"`
	Reason string        `json:"reason"`
}

func (p *played) writeJSON(w io.Writer) {
	out := runJSON{Format: 1, Model: sim.ModelVersion, Seed: strconv.FormatUint(p.run.Seed, 10), Mode: p.by.Mode, Operator: p.by.Operator,
		Scenario: scenarioJSON{p.sc.ID, p.sc.Version, p.sc.Hash(), p.sc.Title},
		LengthS:  attempt.Exact(sim.Seconds(p.run.State.Tick)), Grade: p.grade}
	if p.script != nil {
		out.Left = p.script.Left()
		for _, r := range p.script.Refused {
			out.Refused = append(out.Refused, refusedJSON{attempt.Exact(sim.Seconds(r.Due)), actText(r.Act), string(r.Reason)})
		}
	}
	w.Write(indented(out))
}

// indented gives JSON for people to read as well, with a line end.
func indented(v any) []byte {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(v); err != nil {
		panic(err) // caught at the top as a fault of ours
	}
	return b.Bytes()
}
