// The middle of the drawing: pump and bowl. The bowl is cut open along its axis: a plain annulus with its true
// radii, the core between shortened by break lines as in an engineer's drawing.

package bench

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

const (
	axisX    = 680
	coreHalf = 26 // of the shortened core
	bowlHalf = 90
	bowlTop  = 216
	bowlLow  = 386
)

func (g *scene) pump() {
	c, v := g.c, g.v
	s, d := &v.Seen, &v.Drawn
	opened := s.Bench.Opened[sim.ProcessingSet]
	flow, back := d.FeedMLMin, d.OutletBackMLMin
	held := s.Pump.Cycles > 0 || flow > 0
	g.wrapped = !opened
	if back > 0 {
		g.tube(d.BowlMixed, true, back, 658, 196, 580, 196, 580, 452, 474, 452, 474, 398)
	} else {
		g.tube(d.Outlet, held, flow, 474, 398, 474, 452, 580, 452, 580, 196, 658, 196)
	}
	g.wrapped = false
	if opened && !s.Bench.Connected[sim.OutletLine] {
		g.gap(508, 452, false)
	}
	r := g.r(524, 432, 40, 40)
	c.Disc(r, c.Pal.Well)
	c.Circle(r, g.pen()*1.2, c.Pal.Ink)
	turn := float32(0)
	if s.Pump.Mode != sim.PumpIdle && g.moving {
		turn = float32(math.Mod(c.ClockMS()/1000*2.2, 2*math.Pi))
	}
	m := r.Center()
	for k := range 3 {
		a := turn + float32(k)*2.094
		x, y := m.X+10*g.s*cos(a), m.Y+10*g.s*sin(a)
		roller := ui.R(x-5*g.s, y-5*g.s, 10*g.s, 10*g.s)
		if s.Pump.Mode != sim.PumpIdle {
			c.Disc(roller, c.Pal.Ink)
		} else {
			c.Circle(roller, max(1.2, 1.4*g.s), c.Pal.Ink)
		}
	}
	g.part(sim.PumpPart, words.Say("part.pump"), 524, 432, 40, 40)
	state := plain(g.num(s.Pump.FlowMLMin, 0, "mL/min"))
	if s.Pump.NoFlow {
		state = weighty(words.Say("bench.no_flow"))
	}
	g.words(sim.PumpPart, box{478, 475, 588, g.floor}, ui.AlignCenter, false, fact{}, state)
	g.clamp(sim.OutletClamp, 474, 422, true, 497, 412, 76, ui.AlignLeft)
	if s.Pump.AirML > 1 {
		g.bubbles(580, 210, 440)
	}
}

func (g *scene) bowl() {
	c, v := g.c, g.v
	s, d := &v.Seen, &v.Drawn
	opened := s.Bench.Opened[sim.ProcessingSet]
	left, right := float32(axisX-bowlHalf), float32(axisX+bowlHalf)
	body := g.r(left, bowlTop, 2*bowlHalf, bowlLow-bowlTop)
	neck := g.r(axisX-22, 184, 44, bowlTop-184)
	c.Fill(neck, 3*g.s, c.Pal.Well)
	c.Fill(body, 3*g.s, c.Pal.Well)
	if opened && d.HeldShare > 0 {
		g.contents()
	}
	core := g.r(axisX-coreHalf, bowlTop, 2*coreHalf, bowlLow-bowlTop)
	c.Fill(core, 0, c.Pal.Ground)
	c.HatchRect(core, 8*g.s, 0.785, 0.8, c.Pal.Line)
	g.breakLines()
	for _, x := range [...]float32{axisX - coreHalf, axisX + coreHalf} {
		c.Segment(g.px(x), g.py(bowlTop), g.px(x), g.py(bowlLow), g.pen()*0.8, c.Pal.Ink)
	}
	if opened {
		c.Stroke(neck, 3*g.s, g.pen(), c.Pal.Ink)
		c.Stroke(body, 3*g.s, g.pen()*1.4, c.Pal.Ink)
	} else {
		c.StrokeDash(neck, 3*g.s, g.pen()*0.8, c.Pal.Edge, ui.Dash{On: 5, Off: 4})
		c.StrokeDash(body, 3*g.s, g.pen(), c.Pal.Edge, ui.Dash{On: 5, Off: 4})
	}
	// the axis
	c.BeginPath()
	c.To(g.px(axisX), g.py(178))
	c.To(g.px(axisX), g.py(398))
	c.Line(1, c.Pal.Edge, ui.Dash{On: 9, Off: 3}, false)
	g.rotation()
	g.bowlWords(opened)
	g.part(sim.BowlPart, words.Say("part.bowl"), left-2, bowlTop-2, right-left+4, bowlLow-bowlTop+4)
}

// xAt is where a radius of the annulus stands right of the axis.
func (g *scene) xAt(radiusCM float64) float32 {
	d := &g.v.Drawn
	span := d.OuterCM - d.InnerCM
	if span <= 0 {
		return bowlHalf
	}
	return coreHalf + (bowlHalf-coreHalf)*float32((radiusCM-d.InnerCM)/span)
}

// faceCM is the radius of a face that encloses share of the bowl's volume against the outer wall.
func (d *Drawn) faceCM(share float64) float64 {
	o2, i2 := d.OuterCM*d.OuterCM, d.InnerCM*d.InnerCM
	return math.Sqrt(o2 - min(max(share, 0), 1)*(o2-i2))
}

const buffyCM = 0.04 // the buffy coat is drawn a little thicker than it is, to be seen

// contents are the bowl's layers: against the wall while it spins, lying on the floor when it stands.
func (g *scene) contents() {
	c, d, s := g.c, &g.v.Drawn, &g.v.Seen
	if !s.Pump.Spinning {
		h := float32(bowlLow-bowlTop-4) * float32(min(d.HeldShare, 1))
		col := d.BowlMixed.Colour(depthBowl)
		c.Fill(g.r(axisX-bowlHalf+1, bowlLow-1-h, 2*bowlHalf-2, h), 0, col)
		return
	}
	face, bed := d.faceCM(d.HeldShare), d.faceCM(d.BedShare)
	layer := func(from, to float64, col ui.Color) {
		x0, x1 := g.xAt(from), g.xAt(to)
		if x1 <= x0 {
			return
		}
		c.Fill(g.r(axisX+x0, bowlTop+1, x1-x0, bowlLow-bowlTop-2), 0, col)
		c.Fill(g.r(axisX-x1, bowlTop+1, x1-x0, bowlLow-bowlTop-2), 0, col)
	}
	layer(face, d.OuterCM, d.Supernatant.Colour(depthBowl))
	if d.BedShare > 0.005 {
		layer(max(bed-buffyCM, face), bed, Liquid{Hct: 0.02, ProteinGL: 60}.Colour(0.3))
		layer(max(bed, face), d.OuterCM, d.Bed.Colour(depthBowl))
		for _, side := range [...]float32{-1, 1} {
			x := g.px(axisX + side*g.xAt(bed))
			c.Segment(x, g.py(bowlTop+1), x, g.py(bowlLow-1), max(1, g.s), c.Pal.Ink)
		}
	}
}

// breakLines are the two zigzags that say: here the drawing is shortened.
func (g *scene) breakLines() {
	c := g.c
	for _, x := range [...]float32{axisX - 8, axisX + 8} {
		c.BeginPath()
		y := float32(bowlTop)
		for side := float32(1); y <= bowlLow; y += 16 {
			c.To(g.px(x+3*side), g.py(y))
			side = -side
		}
		c.Line(1, c.Pal.Edge, ui.Dash{}, false)
	}
}

// rotation is an arrow round the axis whose dot turns at a slowed, visible rate while the bowl spins.
func (g *scene) rotation() {
	c, s := g.c, &g.v.Seen
	m := ui.Vec{X: g.px(axisX), Y: g.py(393)}
	const rx, ry = 34, 5.5
	c.BeginPath()
	for i := range 25 {
		a := -2.6 + float32(i)*0.217
		c.To(m.X+rx*g.s*cos(a), m.Y+ry*g.s*sin(a))
	}
	col := c.Pal.Line
	if s.Pump.Spinning {
		col = c.Pal.Ink
	}
	c.LineRound(max(1.4, 1.6*g.s), col, false)
	if !s.Pump.Spinning && !s.Pump.Braking {
		return
	}
	turn := float32(0.6)
	if g.moving {
		turn = float32(math.Mod(c.ClockMS()/1000*4, 2*math.Pi))
	}
	x, y := m.X+rx*g.s*cos(turn), m.Y+ry*g.s*sin(turn)
	r := 4 * g.s
	c.Disc(ui.R(x-r, y-r, 2*r, 2*r), c.Pal.Ink)
}

// bubbles stand in an upright line that holds air, and rise where something moves.
func (g *scene) bubbles(x, top, low float32) {
	rise := float32(0)
	if g.moving && g.v.Seen.Pump.Mode != sim.PumpIdle {
		rise = float32(math.Mod(g.c.ClockMS()/1000*24, 46))
	}
	for y := low - rise; y > top; y -= 46 {
		r := ui.R(g.px(x)-3*g.s, g.py(y)-3*g.s, 6*g.s, 6*g.s)
		g.c.Disc(r, g.c.Pal.Well)
		g.c.Circle(r, max(1, g.s), g.c.Pal.Ink)
	}
}

func (g *scene) bowlWords(opened bool) {
	v := g.v
	s, d := &v.Seen, &v.Drawn
	title := plain(words.Say("part.bowl"))
	if s.Bench.Bowl != sim.NoBowl {
		title = plain(words.Line("bench.bowl", g.num(s.Bench.Bowl.Shape().VolumeML, 0, "mL")), title.text)
	}
	place := box{596, 402, 740, g.floor - 35}
	if !opened {
		g.words(sim.BowlPart, place, ui.AlignCenter, false, title, plain(words.Say("bench.wrapped")))
		return
	}
	var facts [3]fact
	if s.Pump.AirML > 1 {
		ml := g.num(s.Pump.AirML, 0, "mL")
		facts[0] = weighty(words.Line("bench.air_in_line", ml), words.Line("bench.air", ml))
	}
	facts[1] = bowlState(v)
	switch {
	case v.ShowTruth && s.Pump.Spinning:
		facts[2] = plain(words.Line("bench.truth_bed", g.num(v.Truth.BedShare, 2, "")))
	case s.Pump.Detector > 0:
		facts[2] = plain(words.Line("bench.detector", g.num(s.Pump.Detector, 2, "")))
	case d.HeldShare > 0:
		facts[2] = plain(words.Line("bench.holds", g.num(s.Pump.HeldML, 0, "mL")))
	}
	g.words(sim.BowlPart, place, ui.AlignCenter, false, title, facts[:]...)
}

// bowlState says in words what pump and bowl do.
func bowlState(v *View) fact {
	p := &v.Seen.Pump
	key := "bench.stands"
	switch p.Mode {
	case sim.PumpFill:
		key = "bench.filling"
	case sim.PumpWash:
		key = "bench.washing"
	case sim.PumpEmpty:
		key = "bench.emptying"
	case sim.PumpTopUp:
		key = "bench.topping_up"
	case sim.PumpDrawBack:
		key = "bench.drawing_back"
	case sim.PumpSendBack:
		key = "bench.sending_back"
	default:
		if p.Spinning {
			key = "bench.spinning"
		} else if p.Braking {
			key = "bench.braking"
		}
	}
	text := words.Say(key)
	f := plain(text)
	if p.Spinning {
		f = plain(words.Line("bench.rpm", text, int(v.Drawn.RPM)), text)
	}
	f.strong = p.Mode != sim.PumpIdle
	return f
}
