// What the screen shows, as text in a file: for scripts that play a case as a person does, by what stands on the screen
// and where. Nothing is in it that is not on the screen.

package main

import (
	"bytes"
	"encoding/json"
	"time"

	"github.com/natefinch/atomic"

	"rouleau/cmd/rouleau-desk/ui"
)

// describeEvery bounds how often the file is written.
const describeEvery = 100 * time.Millisecond

// described is one widget or run of words. Places are in logical pixels from the upper left corner of the window.
type described struct {
	Kind  string     `json:"kind"`
	Label string     `json:"label"`
	Value string     `json:"value,omitempty"`
	Why   string     `json:"why,omitempty"`
	On    bool       `json:"on,omitempty"`
	Off   bool       `json:"off,omitempty"` // cannot be used now
	Layer int        `json:"layer,omitempty"`
	Place [4]float32 `json:"place"` // x, y, width, height of what is in sight
}

// describer writes the marks of a frame to path, now and then. A file that cannot be written is told once, by report.
func describer(path string, report func(error)) func(*ui.List) {
	var last time.Time
	var told bool
	return func(list *ui.List) {
		if time.Since(last) < describeEvery {
			return
		}
		last = time.Now()
		all := make([]described, 0, len(list.Marks))
		for i := range list.Marks {
			m := &list.Marks[i]
			if m.Shown.Empty() {
				continue
			}
			all = append(all, described{Kind: m.Kind.String(), Label: m.Label, Value: m.Value, Why: m.Why, On: m.On, Off: m.Target() && !m.Enabled,
				Layer: m.Layer, Place: [4]float32{m.Shown.X, m.Shown.Y, m.Shown.W, m.Shown.H}})
		}
		text, err := json.Marshal(all)
		if err == nil {
			err = atomic.WriteFile(path, bytes.NewReader(text))
		}
		if err != nil && !told {
			told = true
			report(err)
		}
	}
}
