package attempt

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"strconv"

	"rouleau/scenarios"
	"rouleau/sim"
)

// The file as bytes: JSON with its keys in one order, one act or checkpoint a line, line ends LF. The same attempt always
// gives the same bytes.

// action is an act by the names of the file format.
type action struct {
	Tick  int64  `json:"tick"`
	Do    string `json:"do"`
	On    string `json:"on,omitempty"`
	Value any    `json:"value,omitempty"` // a number or the word for it, left out where the act has none
	Item  string `json:"item,omitempty"`
	Text  string `json:"text,omitempty"`
}

func actionOf(a *sim.Action) action {
	to := action{Tick: a.Tick, Do: a.Do.String(), On: a.On.String(), Text: a.Text}
	if scenarios.HasValue(a.Do) || a.Value != 0 {
		to.Value = Exact(a.Value)
		if word := scenarios.ValueWord(a.Do, a.Value); word != "" {
			to.Value = word
		}
	}
	if a.Do == sim.Reconcile {
		to.Item = sim.TallyItem(a.Item).String()
	}
	return to
}

// part is one key of the file.
type part struct {
	key   string
	value any
}

// Encode gives the file.
func (a *Attempt) Encode() []byte {
	return layOut(append(a.parts(), part{"seal", a.Seal}))
}

// seal is the hash of the file without its last key.
func (a *Attempt) seal() string {
	sum := sha256.Sum256(layOut(a.parts()))
	return hex.EncodeToString(sum[:])
}

// Sealed tells whether the seal is that of the content.
func (a *Attempt) Sealed() bool { return a.Seal == a.seal() }

// PlayedBy is the attempt with another code or name for who played, sealed anew. Nothing that is played again depends on it.
func (a *Attempt) PlayedBy(operator string) *Attempt {
	b := *a
	b.Operator = valid(operator)
	b.Seal = b.seal()
	return &b
}

func (a *Attempt) parts() []part {
	acts := make([]any, len(a.Actions))
	for i := range a.Actions {
		acts[i] = actionOf(&a.Actions[i])
	}
	points := make([]any, len(a.Checkpoints))
	for i := range a.Checkpoints {
		points[i] = &a.Checkpoints[i]
	}
	all := []part{
		{"format", FormatVersion}, {"model", a.Model}, {"when", a.When}, {"mode", a.Mode}, {"operator", a.Operator}, {"breaks", a.Breaks},
		{"scenario", a.Scenario}, {"seed", strconv.FormatUint(a.Seed, 10)}, // as text: some readers of JSON round large numbers
		{"ticks_per_second", sim.TicksPerSecond}, {"length_ticks", a.LengthTicks}, {"ended", a.Ended},
		{"actions", acts}, {"quantities", a.Quantities}, {"checkpoints", points}, {"grade", a.Grade},
	}
	if a.Self != nil {
		all = append(all, part{"self", a.Self})
	}
	return all
}

func layOut(parts []part) []byte {
	var b bytes.Buffer
	b.WriteString("{\n")
	for i, p := range parts {
		b.WriteString("  " + strconv.Quote(p.key) + ": ")
		if rows, ok := p.value.([]any); ok {
			layOutRows(&b, rows)
		} else {
			var inner bytes.Buffer
			// What was just marshalled is JSON, so indenting it cannot fail.
			_ = json.Indent(&inner, marshal(p.value), "  ", "  ")
			b.Write(inner.Bytes())
		}
		if i < len(parts)-1 {
			b.WriteByte(',')
		}
		b.WriteByte('\n')
	}
	b.WriteString("}\n")
	return b.Bytes()
}

func layOutRows(b *bytes.Buffer, rows []any) {
	b.WriteByte('[')
	for i, row := range rows {
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteString("\n    ")
		b.Write(marshal(row))
	}
	if len(rows) > 0 {
		b.WriteString("\n  ")
	}
	b.WriteByte(']')
}

// marshal gives JSON in which < > & stand as they are.
func marshal(v any) []byte {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		panic("attempt: a fault of ours: " + err.Error()) // only types of this package come here, and all of them can be written
	}
	return bytes.TrimSuffix(b.Bytes(), []byte("\n"))
}
