// The measures must be able to find what they look for.

package uitest

import (
	"strings"
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
)

func TestFaultsAreFound(t *testing.T) {
	d := New(ui.Vec{X: 400, Y: 300}, func(c *ui.Core) {
		c.Button(ui.Button{ID: ui.Name("a"), Rect: ui.R(10, 10, 100, 30), Label: "low"})
		c.Button(ui.Button{ID: ui.Name("b"), Rect: ui.R(10, 60, 100, 40), Label: "under"})
		c.Button(ui.Button{ID: ui.Name("c"), Rect: ui.R(100, 60, 100, 40), Label: "over"})
		c.Button(ui.Button{ID: ui.Name("d"), Rect: ui.R(350, 120, 100, 40), Label: "out"})
		c.Text(ui.R(10, 200, 40, 20), "far too long for it", ui.Style{})
		c.Text(ui.R(200, 200, 200, 20), "words", ui.Style{})
		c.Text(ui.R(205, 205, 200, 20), "on words", ui.Style{})
	})
	all := strings.Join(Faults(d.List), "\n")
	for _, want := range []string{`"low" is only 100 × 30`, `"under" lies on button "over"`, `"out" reaches out`,
		`"far too long for it" is cut`, `"words" lies on text "on words"`} {
		if !strings.Contains(all, want) {
			t.Errorf("not found: %s in\n%s", want, all)
		}
	}
	if n := len(Faults(d.List)); n != 5 {
		t.Errorf("%d faults, want 5:\n%s", n, all)
	}
}
