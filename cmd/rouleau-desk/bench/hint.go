// Hints: a button beside the speeds, and a dialog that says one step at a time.

package bench

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

// hintButton opens the hint for what is the case now; it is drawn alike whether there is one or not, so that its look alone
// gives nothing away.
func (d *Desk) hintButton(c *ui.Core, v *View, r ui.Rect) {
	if c.Button(ui.Button{ID: ui.Name("hint"), Rect: r, Label: words.Say("top.hint"), Key: ui.K('H')}) {
		d.Dialog, d.hint, d.steps = HintDialog, "", 1
		if len(v.Hints) > 0 {
			d.hint = v.Hints[0].When
		}
	}
}

// hintDialog shows the steps asked for so far.
func (d *Desk) hintDialog(c *ui.Core, v *View) {
	steps := []string{words.Say("dialog.no_hint")}
	for i := range v.Hints {
		if v.Hints[i].When == d.hint {
			steps = v.Hints[i].Steps
		}
	}
	names := [...]string{words.Say("dialog.look"), words.Say("dialog.means"), words.Say("dialog.does")}
	n := min(d.steps, len(steps))
	body := ui.Style{Size: 15}
	const width = 560
	high := float32(0)
	for _, s := range steps[:n] {
		high += c.LabelHeight(s, width-48, body) + 40
	}
	in := d.window(c, v, words.Say("dialog.hint"), width, high+112)
	foot := in.CutBottom(44)
	for i, s := range steps[:n] {
		if len(steps) == len(names) {
			c.Text(in.CutTop(20), names[i], ui.Style{Size: ui.SizeSmall, Weight: ui.SemiBold, Col: c.Pal.Muted})
		}
		h := c.LabelHeight(s, in.W, body)
		c.Label(ui.Label{Rect: in.CutTop(h), Text: s, Style: body})
		in.CutTop(14)
	}
	if n < len(steps) {
		more := foot.CutRight(220)
		if c.Button(ui.Button{ID: ui.Name("hint more"), Rect: more, Label: words.Say("dialog.more"), Look: ui.LookDark}) {
			d.steps++
		}
	}
	d.close(c, foot.Place(200, 44, 0, 0))
}
