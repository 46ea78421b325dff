// The card of a guided lesson: a band at the lower edge, so that it lies on no part, on no control and on no alarm. It says
// what to do, why, and what is waited for; the part it is about is bracketed in the drawing and put into the panel.

package bench

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

// Sizes of the card. On a wide one the buttons stand at the right, on a narrow one in a row below the words.
const (
	guideHead    = 20
	guideGap     = 6
	guideButton  = 42
	guideColumn  = 220
	guideWide    = 880  // from here on
	guideShare   = 0.28 // of the room that it always may take, as charts and log would
	guideBracket = 5
	guideLead    = 3 // bar beside the control that a step asks for
)

// guided is what the desk remembers of a lesson.
type guided struct {
	step  int
	title string
	lead  int // frames in which the panel still scrolls to the control that the step asks for
}

// leadFrames is how long that is: the height of a panel is known only when it was drawn once.
const leadFrames = 3

// guideLook is how a card is set.
type guideLook struct {
	wide    bool
	pad     float32
	do, why ui.Style
	textW   float32
}

func guideLookOf(w float32) guideLook {
	if w >= guideWide {
		return guideLook{wide: true, pad: 12, do: ui.Style{Size: 17, Weight: ui.SemiBold}, why: ui.Style{Size: 14}, textW: w - guideColumn - 60}
	}
	return guideLook{pad: 8, do: ui.Style{Size: 16, Weight: ui.SemiBold}, why: ui.Style{Size: 13}, textW: w - 24}
}

// guide draws the card into the lower edge of r and gives the rest. Without a lesson that is all of it.
func (d *Desk) guide(c *ui.Core, v *View, r ui.Rect) ui.Rect {
	if !v.Guide.On {
		return r
	}
	d.follow(v)
	look := guideLookOf(r.W)
	band := r.CutBottom(d.guideHeight(c, v, r))
	c.Fill(band, 0, c.Pal.Panel)
	c.Segment(band.X, band.Y, band.Right(), band.Y, 2, c.Pal.Ink)
	in := band.InsetXY(12, look.pad)
	if look.wide {
		column := in.CutRight(guideColumn)
		in.CutRight(24)
		d.guideButtons(c, v, column, false)
		d.guideAside(c, v, in.CutTop(guideHead))
	} else {
		row := in.CutBottom(guideButton)
		in.CutBottom(4)
		d.guideAside(c, v, d.guideButtons(c, v, row, true))
	}
	d.guideWords(c, v, in, look)
	return r
}

// guideHeight is the height of the card, the same for every step of a lesson: enough for its longest words, as long as the
// drawing keeps what it needs. Words beyond that scroll.
func (d *Desk) guideHeight(c *ui.Core, v *View, r ui.Rect) float32 {
	look := guideLookOf(r.W)
	l := &v.Guide.Longest
	h := c.LabelHeight(l[0], look.textW, look.do) + guideGap + max(c.LabelHeight(l[1], look.textW, look.why), c.LabelHeight(l[2], look.textW, look.why))
	if look.wide {
		h = max(h+guideHead, 3*guideButton+2*guideGap)
	} else {
		h += guideButton + 4
	}
	most := max(r.H*guideShare, r.H-r.W*sheetH/sheetW)
	return min(h+2*look.pad, most)
}

// stripRoom is the height of charts and log below the drawing: none in a lesson, whose card stands there.
func (d *Desk) stripRoom(v *View, strip float32) float32 {
	if v.Guide.On {
		return 0
	}
	return strip
}

// follow puts the part of a step that has just begun into the panel.
func (d *Desk) follow(v *View) {
	g := &v.Guide
	if g.Old || v.Screen != AtBench || d.guided.step == g.Step && d.guided.title == v.Story.Title {
		return
	}
	d.guided.step, d.guided.title, d.guided.lead = g.Step, v.Story.Title, leadFrames
	switch {
	case g.Done || g.Sheet:
	case g.Look != sim.NoPart:
		d.Select(shownPart(g.Look))
	default:
		d.Tab = g.Tab
	}
}

// leadTo marks a control whose act the step asks for, and scrolls the panel to it when the step has just begun.
func (s *stack) leadTo(a sim.Action, r ui.Rect) {
	g, ask := &s.v.Guide, &s.v.Guide.Ask
	if !g.On || !g.Asks || a.Do != ask.Do || ask.On != sim.NoPart && a.On != ask.On {
		return
	}
	_, most, whole := sim.ValueRange(a.Do)
	if whole && most > 0 && a.Value != ask.Value && a.Do != sim.Label && a.Do != sim.HandOver {
		return // another choice of the same act
	}
	s.c.Fill(ui.R(r.X-guideLead-1, r.Y, guideLead, r.H), 1, s.c.Pal.Ink)
	if s.d.guided.lead > 0 {
		s.c.BringIn(r)
	}
}

// shownPart is the part of the drawing, and of the panel, on which another part is found.
func shownPart(p sim.Part) sim.Part {
	switch p {
	case sim.VacuumLine, sim.SuctionLine, sim.CollectionSet:
		return sim.ReservoirPart
	case sim.OutletLine, sim.ProductLine, sim.ProcessingSet:
		return sim.BowlPart
	case sim.WasteLine:
		return sim.WasteBag
	}
	return p
}

// guideWords are what to do, and why or what has happened.
func (d *Desk) guideWords(c *ui.Core, v *View, r ui.Rect, look guideLook) {
	g := &v.Guide
	id := ui.Name("guide words").At(g.Step)
	area := c.BeginScroll(ui.Scroll{ID: id, Rect: r, Content: d.heights[id]})
	y := area.Y
	put := func(text string, st ui.Style) {
		if text == "" {
			return
		}
		h := c.LabelHeight(text, area.W, st)
		c.Label(ui.Label{Rect: ui.R(area.X, y, area.W, h), Text: text, Style: st})
		y += h + 4
	}
	do := look.do
	switch {
	case g.Done:
		if v.Seen.Giving.GivenML > 0 {
			put(words.Say("guide.done"), do)
		} else {
			put(words.Say("guide.done_part"), do)
		}
		for _, line := range g.Summary {
			put(line, look.why)
		}
	case g.Then != "":
		do.Weight, do.Col = ui.Regular, c.Pal.Muted
		put(g.Do, do)
		put(g.Then, look.why)
	case g.Stuck != "":
		put(g.Do, do)
		st := look.why
		st.Weight = ui.SemiBold
		put(g.Stuck, st)
	default:
		put(g.Do, do)
		put(g.Why, look.why)
	}
	d.heights[id] = max(0, y-area.Y-4)
	c.EndScroll()
}

// guideAside is the number of the step and the line beside it.
func (d *Desk) guideAside(c *ui.Core, v *View, r ui.Rect) {
	g := &v.Guide
	small := ui.Style{Size: ui.SizeSmall, Weight: ui.SemiBold, Tab: true}
	at := words.Say("guide.step", g.Step, g.Of)
	if g.Done {
		at = words.Say("guide.over")
	}
	c.Text(r.CutLeft(small.Width(at)+1), at, small)
	r.CutLeft(12)
	small.Weight, small.Col = ui.Regular, c.Pal.Muted
	if g.Wait != "" && g.Then == "" { // what is watched is read from here
		small.Col = c.Pal.Ink
	}
	text := d.aside(g)
	lines := min(ui.CountLines(text, r.W, small.Size, small.Weight, small.Tab), 2)
	c.Label(ui.Label{ID: ui.Name("guide aside"), Rect: r.Place(r.W, float32(lines)*ui.LineHeight(small.Size), 0, 0.5), Text: text, Style: small})
}

// aside is the line beside the number of the step.
func (d *Desk) aside(g *Guide) string {
	switch {
	case g.Done:
		return ""
	case g.Old:
		return words.Say("guide.old")
	case g.Then != "":
		return words.Say("guide.happened")
	case g.Read:
		return words.Say("guide.stands")
	case g.Passed != "":
		return words.Line("guide.passed", g.Passed)
	}
	return words.Line("guide.waiting", g.Wait)
}

// guideButtons are the ways on and back, in a row from the right or below each other. It gives what is left of the row.
func (d *Desk) guideButtons(c *ui.Core, v *View, r ui.Rect, row bool) ui.Rect {
	g := &v.Guide
	cut := func(b ui.Button) ui.Button {
		if row {
			b.Rect = r.CutRight(wideAs(c, &b))
			r.CutRight(guideGap)
		} else {
			b.Rect = r.CutTop(guideButton)
			r.CutTop(guideGap)
		}
		return b
	}
	if g.Done {
		d.guideEnd(c, v, cut)
		return r
	}
	if g.Read || g.Old {
		if c.Button(cut(ui.Button{ID: ui.Name("guide on"), Label: words.Say("guide.on"), Key: ui.K('O'), Look: ui.LookDark})) {
			d.do(Act{Do: GuideNext})
		}
	} else if c.Button(cut(ui.Button{ID: ui.Name("guide skip"), Label: words.Say("guide.skip")})) {
		d.do(Act{Do: GuideNext})
	}
	if !g.First {
		if c.Button(cut(ui.Button{ID: ui.Name("guide back"), Label: words.Say("guide.back"), Key: ui.K('V')})) {
			d.do(Act{Do: GuideBack})
		}
	}
	if g.Hurry {
		if c.Button(cut(ui.Button{ID: ui.Name("guide fast"), Label: words.Say("guide.fast"), Key: ui.K('X'), Selected: g.Hurrying})) {
			d.do(Act{Do: GuideFast})
		}
	}
	return r
}

// guideEnd are the ways on when the lesson is over.
func (d *Desk) guideEnd(c *ui.Core, v *View, cut func(ui.Button) ui.Button) {
	if v.Seen.Ended && c.Button(cut(ui.Button{ID: ui.Name("guide result"), Label: words.Say("guide.result"), Look: ui.LookDark, Key: ui.K('O')})) {
		d.do(Act{Do: Finish})
	}
	if c.Button(cut(ui.Button{ID: ui.Name("guide home"), Label: words.Say("guide.home")})) {
		d.do(Act{Do: GoHome})
	}
}

// pointAt brackets the part that the step is about, heavier than what is selected.
func (g *scene) pointAt(p sim.Part, r ui.Rect) {
	guide := &g.v.Guide
	if !guide.On || guide.Done || guide.Look == sim.NoPart || partID(shownPart(guide.Look)) != partID(p) {
		return
	}
	r = r.Inset(-5)
	g.corners(r, g.c.Pal.Ink, guideBracket)
	x, y := r.X+r.W/2, r.Y-3
	g.c.BeginPath()
	g.c.To(x-8, y-11)
	g.c.To(x+8, y-11)
	g.c.To(x, y)
	g.c.Polygon(g.c.Pal.Ink)
}
