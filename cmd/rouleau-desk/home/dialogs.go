// What lies above home: who plays, and the settings.

package home

import (
	"math"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/keep"
	"rouleau/cmd/rouleau-desk/ui"
)

func (h *Home) dialogs(c *ui.Core, v *View) {
	switch {
	case v.Broken.open():
		h.faults(c, v)
	case h.dialog == whoDialog:
		h.whoBox(c, v)
	case h.dialog == settingsDialog:
		h.settingsBox(c, v)
	case h.dialog == openDialog:
		h.openBox(c, v)
	case h.dialog == unfinishedDialog:
		h.unfinishedBox(c, v)
	}
}

// frame opens a dialog in the middle of the window and gives the box for its content.
func frame(c *ui.Core, title string, w, h float32) ui.Rect {
	size := c.Size()
	r := ui.R(0, 0, size.X, size.Y).Place(min(w, size.X-48), min(h, size.Y-48), 0.5, 0.45)
	c.BeginOverlay(ui.Name("home dialog"), r, true)
	return c.Panel(ui.Panel{ID: ui.Name("home dialog panel"), Rect: r, Title: title})
}

// closeButton is the way out of a dialog, at the left of its foot.
func (h *Home) closeButton(c *ui.Core, foot ui.Rect) bool {
	if c.Button(ui.Button{ID: ui.Name("home dialog close"), Rect: foot.Place(min(foot.W, 150), 44, 0, 1), Label: words.Say("home.shut"), Key: ui.Chord{Key: ui.KeyEscape}}) {
		h.dialog = noDialog
		return true
	}
	return false
}

var whoFieldID = ui.Name("home who field")

func (h *Home) whoBox(c *ui.Core, v *View) {
	in := frame(c, words.Say("home.who_title"), 520, 330)
	foot := in.CutBottom(44)
	in.CutBottom(8)
	text := words.Say("home.who_text")
	if h.pending != nil {
		text = words.Say("home.who_first") + " " + text
	}
	c.Label(ui.Label{Rect: in.CutTop(c.LabelHeight(text, in.W, ui.Style{})), Text: text, Style: ui.Style{Col: c.Pal.Muted}})
	in.CutTop(10)
	who, entered := c.TextField(ui.TextField{ID: whoFieldID, Rect: in.CutTop(ui.TextFieldHeight), Label: words.Say("home.who_label"), Text: h.who, Most: 60})
	if who != h.who {
		h.who, h.whoWhy = who, ""
	}
	in.CutTop(8)
	if h.whoWhy != "" {
		c.Label(ui.Label{ID: ui.Name("home who why"), Rect: in, Text: h.whoWhy, Style: ui.Style{Weight: ui.SemiBold}})
	}
	save := foot.CutRight(foot.W - 158)
	pressed := c.Button(ui.Button{ID: ui.Name("home who save"), Rect: save, Label: words.Say("home.who_save"), Look: ui.LookDark})
	if h.closeButton(c, foot) {
		h.pending = nil
	}
	c.EndOverlay()
	if pressed || entered {
		h.saveWho(v)
	}
}

func (h *Home) saveWho(v *View) {
	who := strings.TrimSpace(h.who)
	if h.whoWhy = keep.WhyNotWho(who); h.whoWhy != "" {
		return
	}
	s := v.Settings
	s.Who = who
	h.do(Act{Do: SaveSettings, Settings: s})
	if h.pending != nil {
		h.do(*h.pending)
	}
	h.pending, h.dialog = nil, noDialog
}

// settingsBox shows the settings; each takes effect at once.
func (h *Home) settingsBox(c *ui.Core, v *View) {
	in := frame(c, words.Say("home.settings"), 540, 470)
	foot := in.CutBottom(44)
	in.CutBottom(8)
	s := v.Settings
	note := ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted}
	say := func(text string) {
		hh := c.LabelHeight(text, in.W, note)
		c.Label(ui.Label{ID: ui.Name("home settings note").With(text), Rect: in.CutTop(hh), Text: text, Style: note})
		in.CutTop(10)
	}
	in.CutTop(2)
	room := mostScale(c, s.Scale)
	scale, done := c.Slider(ui.Value{ID: ui.Name("home scale"), Rect: in.CutTop(ui.SliderHeight), Label: words.Say("home.scale"), Value: s.Scale,
		Min: keep.LeastScale, Max: keep.MostScale, Step: 0.1, Digits: 1})
	if done {
		s.Scale = max(keep.LeastScale, min(scale, room))
	}
	in.CutTop(8)
	if room < keep.MostScale {
		say(words.Say("home.scale_room", room))
	} else {
		say(words.Say("home.scale_means"))
	}
	toggle := func(id, label string, on *bool) {
		if c.Toggle(ui.Toggle{ID: ui.Name(id), Rect: in.CutTop(40), Label: label, OnWord: words.Say("log.on"), OffWord: words.Say("log.off"), On: *on}) {
			*on = !*on
		}
	}
	toggle("home contrast", words.Say("home.contrast"), &s.Contrast)
	toggle("home sound", words.Say("home.sound"), &s.Sound)
	if v.NoSound != "" {
		say(v.NoSound)
	}
	toggle("home still", words.Say("home.still"), &s.Still)
	in.CutTop(8)
	c.Text(in.CutTop(20), words.Say("home.folder"), ui.Style{Weight: ui.SemiBold})
	say(v.Folder)
	say(words.Say("home.folder_means"))
	h.closeButton(c, foot)
	c.EndOverlay()
	if s != v.Settings {
		h.do(Act{Do: SaveSettings, Settings: s})
	}
}

// mostScale is the largest scale at which the window still shows a whole screen.
func mostScale(c *ui.Core, now float64) float64 {
	size := c.Size()
	room := min(float64(size.X)*now/LeastWidth, float64(size.Y)*now/LeastHeight)
	return max(keep.LeastScale, min(keep.MostScale, math.Floor(room*10+0.01)/10))
}
