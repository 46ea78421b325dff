// Files of one's own in the list: reading one again, also from a case that is played, and those that cannot be played as they are.

package home

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

const ownHeight = 56

// ownFile says where the chosen case comes from, and reads it again.
func (h *Home) ownFile(c *ui.Core, v *View, k *Case, r ui.Rect) {
	r.CutBottom(8)
	r.CutRight(16)
	label := words.Say("home.own_again")
	button := r.CutRight(ui.TextWidth(label, ui.SizeBody, ui.SemiBold, false) + 72)
	r.CutRight(12)
	small := ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted}
	c.Text(r.CutTop(ui.LineHeight(ui.SizeSmall)), k.File, small)
	c.Label(ui.Label{ID: ui.Name("home own changed"), Rect: r, Text: words.Say("home.own_changed"), Style: small})
	key := ui.Chord{Key: ui.KeyF5}
	if h.dialog != noDialog || v.Broken.open() {
		key = ui.Chord{} // it is for what lies above
	}
	if c.Button(ui.Button{ID: ui.Name("home own again"), Rect: button.Place(button.W, 44, 0, 0), Label: label, Key: key}) {
		h.do(Act{Do: Open, Path: k.File})
	}
}

// brokenCase stands where a case would: the file cannot be played as it is now.
func (h *Home) brokenCase(c *ui.Core, k *Case, r ui.Rect) {
	put := func(text string, st ui.Style, gap float32) {
		c.Label(ui.Label{ID: ui.Name("home broken case").With(text), Rect: r.CutTop(c.LabelHeight(text, r.W-16, st)), Text: text, Style: st})
		r.CutTop(gap)
	}
	r.CutTop(4)
	put(k.Title, ui.Style{Size: 22, Weight: ui.SemiBold}, 2)
	put(k.File, ui.Style{Size: 13, Col: c.Pal.Muted}, 10)
	put(k.Broken, ui.Style{Size: 15}, 14)
	row := r.CutTop(46)
	if c.Button(ui.Button{ID: ui.Name("home own show"), Rect: row.CutLeft(min(row.W/2-8, 260)), Label: words.Say("home.own_show"), Look: ui.LookDark, Key: ui.Chord{Key: ui.KeyF5}}) {
		h.do(Act{Do: Open, Path: k.File})
	}
	row.CutLeft(12)
	if c.Button(ui.Button{ID: ui.Name("home own forget"), Rect: row.CutLeft(min(row.W, 240)), Label: words.Say("home.own_forget")}) {
		h.do(Act{Do: Forget, Key: k.Key})
	}
}

// ReloadBox asks above a case that is played whether its file is to be read again. It answers once with one of the two.
func ReloadBox(c *ui.Core) (again, goOn bool) {
	in := frame(c, words.Say("home.reload_title"), 520, 200)
	foot := in.CutBottom(44)
	in.CutBottom(8)
	c.Label(ui.Label{ID: ui.Name("reload text"), Rect: in, Text: words.Say("home.reload_text")})
	goOn = c.Button(ui.Button{ID: ui.Name("reload no"), Rect: foot.CutLeft(min(foot.W/2-6, 230)), Label: words.Say("home.reload_no"), Key: ui.Chord{Key: ui.KeyEscape}})
	foot.CutLeft(12)
	again = c.Button(ui.Button{ID: ui.Name("reload yes"), Rect: foot, Label: words.Say("home.reload_yes"), Look: ui.LookDark, Key: ui.Chord{Key: ui.KeyEnter}})
	c.EndOverlay()
	return again, goOn
}
