// The lines of a journal as they stand in the file.

package journal

import (
	"bytes"
	"encoding/json"

	"rouleau/scoring/attempt"
)

// line is one line; one of the fields is set.
type line struct {
	Head    *Head        `json:"head,omitempty"`
	Act     *actLine     `json:"act,omitempty"`
	Window  *windowLine  `json:"window,omitempty"`
	Note    *noteLine    `json:"note,omitempty"`
	Resumed *resumedLine `json:"resumed,omitempty"`
	Saved   *bool        `json:"saved,omitempty"`
	reachedLine
}

type actLine struct {
	Tick    int64         `json:"tick"`
	Do      string        `json:"do"`
	On      string        `json:"on,omitempty"`
	Value   attempt.Exact `json:"value"`
	Item    string        `json:"item,omitempty"`
	Text    string        `json:"text,omitempty"`
	Refused string        `json:"refused,omitempty"` // why
}

type windowLine struct {
	Tick  int64  `json:"tick"`
	Do    string `json:"do"`
	Value int    `json:"value,omitempty"`
	What  string `json:"what,omitempty"`
}

type noteLine struct {
	Tick int64  `json:"tick"`
	Text string `json:"text"`
}

type resumedLine struct {
	Tick int64  `json:"tick"`
	When string `json:"when"`
}

// reachedLine is by far the most frequent one, and has no braces of its own.
type reachedLine struct {
	Reached *int64 `json:"reached,omitempty"`
	SpentMS int64  `json:"spent_ms,omitempty"`
	LostMS  int64  `json:"lost_ms,omitempty"`
	Hash    string `json:"hash,omitempty"`
}

const reachedStart = `{"reached":`

// marshal gives JSON in which < > & stand as they are.
func marshal(l line) []byte {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(l); err != nil {
		panic("journal: a fault of ours: " + err.Error()) // only types of this file come here, and all of them can be written
	}
	return bytes.TrimSuffix(b.Bytes(), []byte("\n"))
}
