// What stands above the list until it is dealt with: cases that were broken off, and news about files.

package home

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scoring/attempt"
)

// strip offers the newest unfinished case; more of them lie in a dialog.
func (h *Home) strip(c *ui.Core, v *View, window *ui.Rect) {
	if len(v.Unfinished) == 0 {
		return
	}
	r := window.CutTop(68)
	c.Fill(r, 0, c.Pal.Tint)
	c.Segment(0, r.Bottom()-0.5, r.W, r.Bottom()-0.5, 1, c.Pal.Line)
	in := r.InsetXY(gap, 6)
	if n := len(v.Unfinished); n > 1 {
		label := words.Say("home.more_unfinished", n-1)
		w := ui.TextWidth(label, ui.SizeBody, ui.SemiBold, false) + 26
		if c.Button(ui.Button{ID: ui.Name("home more unfinished"), Rect: in.CutRight(w).Place(w, 46, 0, 0.5), Label: label}) {
			h.dialog = unfinishedDialog
		}
		in.CutRight(8)
	}
	h.unfinished(c, &v.Unfinished[0], in, ui.Name("home strip"), ui.K('G'))
}

// unfinished is one case that was broken off: what, when and how far, to be gone on with or put aside.
func (h *Home) unfinished(c *ui.Core, u *Unfinished, r ui.Rect, id ui.ID, key ui.Chord) {
	r = r.InsetXY(2, 0)
	aside := r.CutRight(196).Place(196, 46, 0, 0.5)
	r.CutRight(8)
	resume := r.CutRight(158).Place(158, 46, 0, 0.5)
	r.CutRight(14)
	mode := words.Say("home.practice")
	if u.Mode == attempt.Assessment {
		mode = words.Say("home.assessment")
	}
	head, small := ui.Style{Weight: ui.SemiBold}, ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted, Tab: true}
	text := words.Say("home.unfinished", u.Title)
	how := words.Say("home.unfinished_how", u.Began, mode, c.Clock(u.AtS))
	if u.Broken != "" {
		how = u.Broken
	}
	hh := min(c.LabelHeight(text, r.W, head), 2*ui.LineHeight(ui.SizeBody))
	hs := min(c.LabelHeight(how, r.W, small), max(r.H-hh, ui.LineHeight(ui.SizeSmall)))
	box := r.Place(r.W, min(hh+hs, r.H), 0, 0.5)
	c.Label(ui.Label{ID: id.With("title"), Rect: box.CutTop(hh), Text: text, Style: head})
	c.Label(ui.Label{ID: id.With("how"), Rect: box, Text: how, Style: small})
	if c.Button(ui.Button{ID: id.With("resume"), Rect: resume, Label: words.Say("home.resume"), Key: key, Look: ui.LookDark, Why: whyBroken(u)}) {
		h.do(Act{Do: Resume, Path: u.Path})
	}
	if c.Hold(ui.HoldButton{ID: id.With("aside"), Rect: aside, Label: words.Say("home.aside")}) {
		h.do(Act{Do: PutAside, Path: u.Path})
	}
}

func whyBroken(u *Unfinished) string {
	if u.Broken == "" {
		return ""
	}
	return words.Say("home.cannot_resume")
}

var unfinishedID = ui.Name("home unfinished")

// unfinishedBox lists all of them.
func (h *Home) unfinishedBox(c *ui.Core, v *View) {
	if len(v.Unfinished) == 0 {
		h.dialog = noDialog
		return
	}
	const rowH = 84
	in := frame(c, words.Say("home.unfinished_title"), 820, min(150+rowH*float32(len(v.Unfinished)), 640))
	foot := in.CutBottom(44)
	in.CutBottom(8)
	area := c.BeginScroll(ui.Scroll{ID: unfinishedID, Rect: in, Content: rowH * float32(len(v.Unfinished))})
	for i := range v.Unfinished {
		row := ui.R(area.X, area.Y+rowH*float32(i), area.W, rowH)
		if row.Bottom() < in.Y-rowH || row.Y > in.Bottom()+rowH {
			continue
		}
		if i > 0 {
			c.Segment(row.X, row.Y, row.Right(), row.Y, 1, c.Pal.Line)
		}
		h.unfinished(c, &v.Unfinished[i], row.InsetXY(4, 4), unfinishedID.With(v.Unfinished[i].Path), ui.Chord{})
	}
	c.EndScroll()
	h.closeButton(c, foot)
	c.EndOverlay()
}

// notices tells one piece of news after the other until it is read.
func (h *Home) notices(c *ui.Core, v *View, window *ui.Rect) {
	n := len(v.Notices)
	if n == 0 {
		return
	}
	label := words.Say("home.notice_read")
	if n > 1 {
		label = words.Say("home.notice_next", n-1)
	}
	wide := ui.TextWidth(label, ui.SizeBody, ui.SemiBold, false) + 26
	st := ui.Style{Size: 13}
	text := v.Notices[0]
	w := window.W - 2*gap - wide - 44
	hh := min(c.LabelHeight(text, w, st), 4*ui.LineHeight(13))
	r := window.CutTop(max(hh+16, 56))
	c.Fill(r, 0, c.Pal.Shade)
	c.Segment(0, r.Bottom()-0.5, r.W, r.Bottom()-0.5, 1, c.Pal.Line)
	in := r.InsetXY(gap, 0)
	button := in.CutRight(wide).Place(wide, 40, 0, 0.5)
	in.CutRight(14)
	exclaim(c, in.CutLeft(30).Place(20, 20, 0, 0.5))
	c.Label(ui.Label{ID: ui.Name("home notice").With(text), Rect: in.Place(in.W, hh, 0, 0.5), Text: text, Style: st})
	if c.Button(ui.Button{ID: ui.Name("home notice read"), Rect: button, Label: label}) {
		h.do(Act{Do: Understood})
	}
}

// exclaim is the sign of something to be read, in ink: it is no alarm.
func exclaim(c *ui.Core, r ui.Rect) {
	c.Circle(r, 1.6, c.Pal.Ink)
	x := r.X + r.W/2
	c.Segment(x, r.Y+5, x, r.Y+r.H*0.58, 2, c.Pal.Ink)
	c.Disc(ui.R(x-1.3, r.Y+r.H*0.68, 2.6, 2.6), c.Pal.Ink)
}
