// Tests of a field for what nobody may read over a shoulder: shown as dots, told to no reader of marks, never copied.

package ui_test

import (
	"strings"
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/cmd/rouleau-desk/ui/uitest"
)

func TestASecretIsShownToNobody(t *testing.T) {
	text := ""
	d := uitest.New(window, func(c *ui.Core) {
		text, _ = c.TextField(ui.TextField{ID: ui.Name("s"), Rect: ui.R(10, 10, 300, ui.TextFieldHeight), Label: "Passphrase", Text: text, Secret: true})
	})
	d.Key(ui.KeyTab)
	d.Type("fünf Wörter")
	look := func(when string) {
		t.Helper()
		d.Idle()
		for _, op := range d.List.Ops {
			if strings.Contains(op.Str, "W") || strings.Contains(op.Str, "ü") {
				t.Errorf("%s: %q is drawn", when, op.Str)
			}
		}
		for _, m := range d.List.Marks {
			if strings.Contains(m.Label+m.Value, "ü") {
				t.Errorf("%s: a mark tells %q %q", when, m.Label, m.Value)
			}
		}
	}
	look("while it is written")
	if m, err := d.At("Passphrase"); err != nil || m.Value != strings.Repeat("•", 11) {
		t.Errorf("%q %v", m.Value, err)
	}
	if missing := ui.Missing("•"); len(missing) > 0 {
		t.Error("the typeface has no such dot")
	}
	d.Chord(ui.Ctrl('A'))
	d.Chord(ui.Ctrl('C'))
	d.Chord(ui.Ctrl('X'))
	if got, ok := d.Core.TakeClipboard(); ok {
		t.Errorf("%q was copied", got)
	}
	m, _ := d.At("Passphrase")
	box := m.Rect
	// behind the second dot: a letter of two bytes lies before it
	d.ClickAt(ui.Vec{X: box.X + 10 + ui.TextWidth("••", ui.SizeBody, ui.Regular, false) + 0.5, Y: box.Bottom() - 20})
	d.Type("x")
	if text != "füxnf Wörter" {
		t.Errorf("a letter went to another place than the pointer: %q", text)
	}
	d.Key(ui.KeyEnd, ui.KeyBackspace, ui.KeyHome, ui.KeyDelete)
	if text != "üxnf Wörte" {
		t.Errorf("%q", text)
	}
	d.Core.Focus(0)
	look("afterwards")
}
