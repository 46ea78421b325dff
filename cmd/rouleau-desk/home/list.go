// The list of cases at the left: lessons first, then the library, then files of one's own.

package home

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/keep"
	"rouleau/cmd/rouleau-desk/ui"
)

var (
	listID  = ui.Name("home list")
	rowsID  = ui.Name("home rows")
	groupOf = [...]string{Lesson: "home.lessons", Library: "home.library", Own: "home.own"}
)

// groupHeight is the room that the name of a group takes above its first case.
const groupHeight = 34

func (h *Home) list(c *ui.Core, v *View, r ui.Rect) {
	h.listKeys(c, v)
	r.CutTop(4)
	area := c.BeginScroll(ui.Scroll{ID: listID, Rect: r, Content: h.heights[listID]})
	y := area.Y
	for i := range v.Cases {
		k := &v.Cases[i]
		if i == 0 || v.Cases[i-1].Group != k.Group {
			y += groupHeight - 26
			c.Text(ui.R(area.X+2, y, area.W-4, 22), words.Say(groupOf[k.Group]), ui.Style{Size: 13, Weight: ui.SemiBold, Col: c.Pal.Muted})
			y += 26
		}
		height := h.row(c, k, i, area.X+3, y, area.W-6)
		if k.Key == h.key && h.seek > 0 {
			c.BringIn(ui.R(area.X, y-groupHeight, area.W, height+groupHeight))
		}
		y += height + 6
	}
	h.seek = max(0, h.seek-1)
	h.heights[listID] = y - area.Y + 4
	c.EndScroll()
}

// row is one case; it returns its height.
func (h *Home) row(c *ui.Core, k *Case, i int, x, y, w float32) float32 {
	on := k.Key == h.key
	name := ui.Style{Weight: ui.SemiBold}
	small := ui.Style{Size: ui.SizeSmall, Col: c.Pal.Muted}
	const pad = 12
	wide := w - 2*pad - 4
	meta := words.Say("home.level", k.Level, k.Minutes)
	if k.Broken != "" {
		meta = k.Broken
	}
	result := resultWords(k)
	nameH := c.LabelHeight(k.Title, wide, name)
	metaH := c.LabelHeight(meta, wide, small)
	height := 9 + nameH + metaH + 9
	if result != "" {
		height += c.LabelHeight(result, wide-16, small) + 2
	}
	box := ui.R(x, y, w, height)
	st := c.Hit(ui.HitArea{ID: rowsID.At(i), Rect: box, Label: k.Title, Selected: on})
	if st.Pressed {
		h.key = k.Key
	}
	switch {
	case on:
		c.Fill(box, 6, c.Pal.Tint)
		c.Frame(box, 6, 1.5, c.Pal.Ink)
		c.Fill(ui.R(box.X+5, box.Y+8, 4, box.H-16), 2, c.Pal.Ink)
	case st.Over:
		c.Fill(box, 6, c.Pal.Shade)
		c.Frame(box, 6, 1, c.Pal.Edge)
	default:
		c.Fill(box, 6, c.Pal.Panel)
		c.Frame(box, 6, 1, c.Pal.Line)
	}
	at := ui.R(x+pad+4, y+9, wide, nameH)
	c.Label(ui.Label{Rect: at, Text: k.Title, Style: name})
	at.Y += nameH
	at.H = metaH
	c.Label(ui.Label{Rect: at, Text: meta, Style: small})
	if result != "" {
		at.Y += metaH + 2
		at.H = c.LabelHeight(result, wide-16, small)
		passedSign(c, ui.R(at.X, at.Y+2, 11, 11), anyPassed(k.Past))
		at.X, at.W = at.X+16, wide-16
		c.Label(ui.Label{Rect: at, Text: result, Style: ui.Style{Size: ui.SizeSmall}})
	}
	return height
}

// passedSign is a filled box with a tick for passed, an empty one else: told apart by shape.
func passedSign(c *ui.Core, r ui.Rect, passed bool) {
	if !passed {
		c.Frame(r, 2, 1.2, c.Pal.Edge)
		return
	}
	c.Fill(r, 2, c.Pal.Ink)
	c.BeginPath()
	c.To(r.X+r.W*0.2, r.Y+r.H*0.54)
	c.To(r.X+r.W*0.42, r.Y+r.H*0.76)
	c.To(r.X+r.W*0.82, r.Y+r.H*0.26)
	c.LineRound(1.6, c.Pal.OnDark, false)
}

func anyPassed(past []keep.Past) bool {
	for i := range past {
		if past[i].Passed {
			return true
		}
	}
	return false
}

// resultWords are the best and the last result, "" when there is none.
func resultWords(k *Case) string {
	past := k.Past
	if len(past) == 0 {
		return ""
	}
	best := &past[0]
	for i := range past {
		if p := &past[i]; p.Passed && !best.Passed || p.Passed == best.Passed && p.Points > best.Points {
			best = p
		}
	}
	text := verdict(k, best)
	if best.TakenOver {
		text = words.Say("home.taken_over", text)
	}
	if len(past) == 1 {
		return words.Say("home.once", text)
	}
	return words.Say("home.best_last", text, past[0].Points)
}

// verdict says how it went. A lesson shows points and judges nobody.
func verdict(k *Case, p *keep.Past) string {
	switch {
	case k.Guided:
		return words.Say("home.not_judged", p.Points)
	case p.Passed:
		return words.Say("home.passed", p.Points)
	}
	return words.Say("home.not_passed", p.Points)
}

// listKeys moves the choice with the arrow keys while the focus is in the list or nowhere.
func (h *Home) listKeys(c *ui.Core, v *View) {
	at, inList := -1, c.Focused() == 0
	for i := range v.Cases {
		if v.Cases[i].Key == h.key {
			at = i
		}
		inList = inList || c.Focused() == rowsID.At(i)
	}
	if !inList || h.dialog != noDialog || v.Broken.open() || len(v.Cases) == 0 {
		return
	}
	to := at
	switch {
	case c.Pressed(ui.KeyUp):
		to--
	case c.Pressed(ui.KeyDown):
		to++
	case c.Pressed(ui.KeyHome):
		to = 0
	case c.Pressed(ui.KeyEnd):
		to = len(v.Cases) - 1
	default:
		return
	}
	to = min(max(to, 0), len(v.Cases)-1)
	h.Select(v.Cases[to].Key) // also the one that is chosen: it may have been scrolled out of view
	c.Focus(rowsID.At(to))
}
