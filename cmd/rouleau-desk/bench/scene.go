// The section drawing: the bench cut open, as an engineer would draw it on paper. Here are the tools it is drawn with; its
// places are given on a sheet of 960 × 500 units, which is scaled to the room there is, while words keep their size.

package bench

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

const (
	sheetW = 960
	sheetH = 500
	// mostSize is that of words in a large drawing, which is read from the back of a room.
	mostSize = 16
	// hooksLow is where the part of the sheet ends that hangs from its top; what is below moves down where there is room.
	hooksLow = 96
)

// scene is one frame of the drawing.
type scene struct {
	c      *ui.Core
	v      *View
	d      *Desk
	x, y   float32 // of the sheet's corner
	s      float32 // pixels a unit
	size   float32 // of words
	lift   float32 // how much lower all but the hooks hangs where the room is high, in units
	floor  float32 // the lowest place of the sheet
	moving bool    // dashes and the rotation mark move
	// wrapped is set while tubes are drawn whose sterile set has not been opened: they are not there yet.
	wrapped bool
	looked  ui.ID // the part that is looked at in this frame
	tipOf   sim.Part
	tip     string // what is said of it in full, where its words had no room
}

// drawScene draws the bench into r, blood's way from left to right.
func drawScene(c *ui.Core, v *View, d *Desk, r ui.Rect) {
	g := scene{c: c, v: v, d: d, s: min(r.W/sheetW, r.H/sheetH), size: ui.SizeSmall, moving: !v.Paused && !c.Still && !v.Seen.Ended}
	spare := min(r.H/g.s-sheetH, 150)
	g.lift = spare * 0.4
	g.floor = sheetH + spare - g.lift - 3
	g.x, g.y = r.X+(r.W-sheetW*g.s)/2, r.Y+(r.H-(sheetH+spare)*g.s)/2
	g.size = min(max(whole(11*g.s), ui.SizeSmall), mostSize)
	g.field()
	g.anticoagulant()
	g.reservoir()
	g.pump()
	g.bowl()
	g.washHooks()
	g.product()
	g.waste()
	g.patient()
	d.looked = g.looked
}

func (g *scene) px(x float32) float32 { return g.x + x*g.s }
func (g *scene) py(y float32) float32 {
	if y >= hooksLow {
		y += g.lift
	}
	return g.y + y*g.s
}
func (g *scene) r(x, y, w, h float32) ui.Rect {
	return ui.R(g.px(x), g.py(y), w*g.s, h*g.s)
}

// pen is the width of outlines.
func (g *scene) pen() float32 { return max(1.4, 1.8*g.s) }

// part makes a part of the drawing something that can be selected.
func (g *scene) part(p sim.Part, label string, x, y, w, h float32) {
	r := g.r(x, y, w, h)
	least := float32(40)
	if r.W < least {
		r.X, r.W = r.X-(least-r.W)/2, least
	}
	if r.H < least {
		r.Y, r.H = r.Y-(least-r.H)/2, least
	}
	on := g.d.Tab == TabPart && g.d.Part == p
	area := ui.HitArea{ID: partID(p), Rect: r, Label: label, Selected: on}
	if g.tipOf == p {
		area.Tip = g.tip
	}
	hit := g.c.Hit(area)
	if hit.Over || hit.Focused {
		g.looked = partID(p)
	}
	if hit.Pressed {
		g.d.Select(p)
	}
	switch {
	case on:
		g.corners(r.Inset(-2), g.c.Pal.Ink, 2.6)
	case hit.Over:
		g.corners(r.Inset(-2), g.c.Pal.Edge, 1.6)
	}
	g.alarmed(p, r)
	g.pointAt(p, r)
}

// corners brackets what is selected.
func (g *scene) corners(r ui.Rect, col ui.Color, width float32) {
	const l = 11
	for _, k := range [...][4]float32{{r.X, r.Y, 1, 1}, {r.Right(), r.Y, -1, 1}, {r.X, r.Bottom(), 1, -1}, {r.Right(), r.Bottom(), -1, -1}} {
		g.c.BeginPath()
		g.c.To(k[0], k[1]+l*k[3])
		g.c.To(k[0], k[1])
		g.c.To(k[0]+l*k[2], k[1])
		g.c.LineRound(width, col, false)
	}
}

// clamp is a valve on a tube: filled when closed, hollow when open, with the word beside it. A press turns it.
func (g *scene) clamp(p sim.Part, x, y float32, upright bool, wordX, wordY, room float32, align ui.Align) {
	c := g.c
	open := g.v.Seen.Bench.Open[p]
	cx, cy := g.px(x), g.py(y)
	r := ui.R(cx-20, cy-20, 40, 40)
	chosen := g.d.Tab == TabPart && g.d.Part == p
	to, word := 1.0, "bench.closed"
	if open {
		to, word = 0, "bench.open"
	}
	act := on(sim.Clamp, p, to)
	hit := c.Hit(ui.HitArea{ID: partID(p), Rect: r, Label: words.Say("part." + p.String()), Selected: chosen, Why: g.v.why(act.Sim)})
	if hit.Pressed {
		g.d.Select(p)
		g.d.do(act)
	}
	l, b := 11*max(g.s, 0.85), 7*max(g.s, 0.85)
	lx, ly := l, float32(0)
	bx, by := float32(0), b
	if upright {
		lx, ly, bx, by = 0, l, b, 0
	}
	for _, side := range [...]float32{-1, 1} {
		c.BeginPath()
		c.To(cx, cy)
		c.To(cx+side*lx+bx, cy+side*ly+by)
		c.To(cx+side*lx-bx, cy+side*ly-by)
		if open {
			c.Polygon(c.Pal.Well)
		} else {
			c.Polygon(c.Pal.Ink)
		}
		c.Line(1.8, c.Pal.Ink, ui.Dash{}, true)
	}
	switch {
	case chosen:
		g.corners(r.Inset(4), c.Pal.Ink, 2.4)
	case hit.Over:
		g.corners(r.Inset(4), c.Pal.Edge, 1.4)
	}
	g.pointAt(p, r.Inset(10))
	st := ui.Style{Col: c.Pal.Muted}
	if !open {
		st.Col, st.Weight = c.Pal.Ink, ui.SemiBold
	}
	g.word(words.Say(word), wordX, wordY, room, align, st)
}

// tube is a line through the points, cut open: its wall, what is in it, and dashes that move while it flows.
func (g *scene) tube(liquid Liquid, full bool, flowMLMin float64, pts ...float32) {
	c := g.c
	w := max(4.5, 7*g.s)
	path := func() {
		c.BeginPath()
		for i := 0; i+1 < len(pts); i += 2 {
			c.To(g.px(pts[i]), g.py(pts[i+1]))
		}
	}
	if path(); g.wrapped {
		c.Line(w, c.Pal.Line, ui.Dash{On: 4, Off: 4}, false)
		return
	}
	c.LineRound(w+2*g.pen()*0.8, c.Pal.Ink, false)
	inside := c.Pal.Well
	if full || flowMLMin > 0 {
		inside = liquid.Colour(depthTube)
	}
	path()
	c.LineRound(w, inside, false)
	if flowMLMin <= 0 {
		return
	}
	phase := float32(0)
	if g.moving {
		speed := 16 + min(flowMLMin, 1000)*0.09 // pixels a second; only its order tells
		phase = float32(math.Mod(g.c.ClockMS()/1000*speed, 14*1000))
	}
	col := c.Pal.Well
	if ui.Luminance(inside) > 0.35 {
		col = c.Pal.Ink
	}
	col.A = 215
	path()
	c.Line(max(1.6, 2*g.s), col, ui.Dash{On: 5, Off: 9, Phase: phase}, false)
}

// gap shows a line that is not connected: two blunt ends with paper between them.
func (g *scene) gap(x, y float32, upright bool) {
	w, h := float32(16), float32(16)
	r := g.r(x-w/2, y-h/2, w, h)
	g.c.Fill(r, 0, g.c.Pal.Ground)
	a, b := g.c.Pal.Ink, max(2, 2.4*g.s)
	if upright {
		g.c.Segment(r.X, r.Y, r.Right(), r.Y, b, a)
		g.c.Segment(r.X, r.Bottom(), r.Right(), r.Bottom(), b, a)
		return
	}
	g.c.Segment(r.X, r.Y, r.X, r.Bottom(), b, a)
	g.c.Segment(r.Right(), r.Y, r.Right(), r.Bottom(), b, a)
}

// bag is a hanging bag with a level.
func (g *scene) bag(x, y, w, h float32, share float64, liquid Liquid, wrapped bool) {
	c := g.c
	r := g.r(x, y, w, h)
	c.Segment(r.X+r.W/2, r.Y-8*g.s, r.X+r.W/2, r.Y, g.pen(), c.Pal.Ink)
	c.Circle(ui.R(r.X+r.W/2-3*g.s, r.Y-13*g.s, 6*g.s, 6*g.s), max(1, 1.2*g.s), c.Pal.Ink)
	radius := 9 * g.s
	if wrapped {
		c.Fill(r, radius, c.Pal.Ground)
		c.StrokeDash(r, radius, g.pen()*0.8, c.Pal.Edge, ui.Dash{On: 4, Off: 3})
		return
	}
	c.Fill(r, radius, c.Pal.Well)
	if share > 0 {
		h := (r.H - 4) * float32(min(max(share, 0), 1))
		c.PushClip(ui.R(r.X, r.Bottom()-2-h, r.W, h))
		c.Fill(r.Inset(2), radius-2, liquid.Colour(depthBag))
		c.PopClip()
		if h < r.H-8 {
			c.Segment(r.X+2, r.Bottom()-2-h, r.Right()-2, r.Bottom()-2-h, 1, c.Pal.Edge)
		}
	}
	c.Stroke(r, radius, g.pen(), c.Pal.Ink)
}

// num writes a number with its unit.
func (g *scene) num(x float64, digits int, unit string) string { return g.c.Num(x, digits, unit) }
