// Opening a scenario file of one's own: a path to write, and folders to walk through.

package home

import (
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
)

var (
	pathFieldID = ui.Name("home path")
	filesID     = ui.Name("home files")
)

func (h *Home) openBox(c *ui.Core, v *View) {
	in := frame(c, words.Say("home.open_title"), 760, 640)
	foot := in.CutBottom(44)
	in.CutBottom(8)
	row := in.CutTop(ui.TextFieldHeight)
	ok := row.CutRight(120)
	row.CutRight(8)
	path, entered := c.TextField(ui.TextField{ID: pathFieldID, Rect: row, Label: words.Say("home.path"), Text: h.path, Hint: words.Say("home.path_hint"), Most: 4096})
	h.path = path
	why := ""
	if strings.TrimSpace(path) == "" {
		why = words.Say("home.path_missing")
	}
	ok = ok.CutBottom(40)
	if c.Button(ui.Button{ID: ui.Name("home path open"), Rect: ok, Label: words.Say("home.path_open"), Look: ui.LookDark, Why: why}) || entered && why == "" {
		h.do(Act{Do: Open, Path: strings.TrimSpace(path)})
	}
	in.CutTop(10)
	b := &v.Browse
	where := ui.Style{Weight: ui.SemiBold}
	c.Label(ui.Label{ID: ui.Name("home folder").With(b.Folder), Rect: in.CutTop(min(c.LabelHeight(b.Folder, in.W, where), 3*ui.LineHeight(ui.SizeBody))), Text: b.Folder, Style: where})
	in.CutTop(6)
	row = in.CutTop(40)
	whyUp := ""
	if b.Up == "" {
		whyUp = words.Say("home.top")
	}
	if c.Button(ui.Button{ID: ui.Name("home up"), Rect: row.CutLeft(190), Label: words.Say("home.up"), Why: whyUp}) {
		h.look(c, b.Up)
	}
	row.CutLeft(8)
	if c.Button(ui.Button{ID: ui.Name("home own folder"), Rect: row.CutLeft(190), Label: words.Say("home.own_folder")}) {
		h.look(c, "~")
	}
	in.CutTop(8)
	h.files(c, b, in)
	h.closeButton(c, foot)
	foot.CutLeft(166)
	c.Label(ui.Label{ID: ui.Name("home drag"), Rect: foot.Place(foot.W, min(foot.H, c.LabelHeight(words.Say("home.drag"), foot.W, ui.Style{Size: 13})), 0, 0.5), Text: words.Say("home.drag"), Style: ui.Style{Size: 13, Col: c.Pal.Muted}})
	c.EndOverlay()
}

func (h *Home) look(c *ui.Core, folder string) {
	c.SetScroll(filesID, 0)
	h.do(Act{Do: Look, Path: folder})
}

func (h *Home) files(c *ui.Core, b *Listing, r ui.Rect) {
	c.Fill(r, 6, c.Pal.Well)
	c.Frame(r, 6, 1, c.Pal.Line)
	r = r.InsetXY(4, 4)
	if b.Fault != "" || len(b.Names) == 0 {
		text := words.Say("home.empty")
		if b.Fault != "" {
			text = b.Fault
		}
		c.Label(ui.Label{ID: ui.Name("home no files"), Rect: r.InsetXY(10, 8), Text: text, Style: ui.Style{Col: c.Pal.Muted}})
		return
	}
	area := c.BeginScroll(ui.Scroll{ID: filesID, Rect: r, Content: h.heights[filesID]})
	y := area.Y
	for i := range b.Names {
		e := &b.Names[i]
		st := ui.Style{}
		wide := area.W - 48
		hh := max(40, c.LabelHeight(e.Name, wide, st)+16)
		box := ui.R(area.X, y, area.W, hh)
		y += hh
		if box.Bottom() < r.Y-60 || box.Y > r.Bottom()+60 {
			continue // far out of sight: a folder may hold thousands
		}
		hit := c.Hit(ui.HitArea{ID: filesID.At(i), Rect: box.InsetXY(3, 0), Label: e.Name})
		if hit.Over {
			c.Fill(box.InsetXY(3, 1), 4, c.Pal.Shade)
		}
		if hit.Pressed {
			if e.Folder {
				h.look(c, e.Path)
			} else {
				h.do(Act{Do: Open, Path: e.Path})
			}
		}
		sign(c, ui.R(box.X+14, box.Y+(hh-14)/2, 16, 14), e.Folder)
		lh := c.LabelHeight(e.Name, wide, st)
		c.Label(ui.Label{Rect: ui.R(box.X+40, box.Y+(hh-lh)/2, wide, lh), Text: e.Name, Style: st})
	}
	h.heights[filesID] = y - area.Y
	c.EndScroll()
}

// sign is a plain outline of a folder or of a sheet.
func sign(c *ui.Core, r ui.Rect, folder bool) {
	if folder {
		c.BeginPath()
		c.To(r.X, r.Bottom())
		c.To(r.X, r.Y)
		c.To(r.X+6, r.Y)
		c.To(r.X+8, r.Y+3)
		c.To(r.Right(), r.Y+3)
		c.To(r.Right(), r.Bottom())
		c.LineRound(1.4, c.Pal.Ink, true)
		return
	}
	c.Frame(ui.R(r.X+2, r.Y-1, 12, 16), 1, 1.4, c.Pal.Ink)
	for i := range 3 {
		yy := r.Y + 3 + float32(i)*3.5
		c.Segment(r.X+5, yy, r.X+11, yy, 1, c.Pal.Muted)
	}
}
