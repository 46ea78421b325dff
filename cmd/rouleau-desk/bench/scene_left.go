// The left of the drawing: the wound, the sucker and where it leads, the reservoir.

package bench

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

func (g *scene) field() {
	c, v := g.c, g.v
	s := &v.Seen
	toReservoir := s.Route == sim.ToReservoir
	g.canister()
	g.suction(toReservoir)
	// the wound in section: a basin in the ground
	ground := func() {
		c.BeginPath()
		c.To(g.px(14), g.py(366))
		c.To(g.px(62), g.py(366))
		c.Curve(g.px(76), g.py(366), g.px(80), g.py(384))
		c.Curve(g.px(86), g.py(412), g.px(116), g.py(412))
		c.Curve(g.px(146), g.py(412), g.px(152), g.py(384))
		c.Curve(g.px(156), g.py(366), g.px(170), g.py(366))
		c.To(g.px(250), g.py(366))
	}
	ground()
	c.To(g.px(250), g.py(420))
	c.To(g.px(14), g.py(420))
	c.Hatch(7*g.s, 0.785, 0.8, c.Pal.Line)
	basin := g.r(78, 366, 76, 46)
	if share := float32(min(s.PoolML/300, 1)); share > 0 {
		level := basin.H * (0.12 + 0.86*share)
		c.PushClip(ui.R(basin.X, basin.Bottom()-level, basin.W, level))
		c.BeginPath()
		c.To(g.px(76), g.py(372))
		c.To(g.px(80), g.py(384))
		c.Curve(g.px(86), g.py(411), g.px(116), g.py(411))
		c.Curve(g.px(146), g.py(411), g.px(152), g.py(384))
		c.To(g.px(156), g.py(372))
		c.Polygon(v.Drawn.Pool.Colour(depthPool))
		c.PopClip()
	}
	ground()
	c.LineRound(g.pen(), c.Pal.Ink, false)
	g.swabs()
	var facts [3]fact
	if s.AgentSaid {
		facts[0] = weighty(words.Say("bench.agent"))
	}
	pool, brisk := g.num(s.PoolML, 0, "mL"), g.num(s.BriskMLMin, 0, "mL/min")
	facts[1] = plain(words.Line("bench.pool", pool, brisk), words.Line("bench.pool_short", pool, brisk))
	facts[2] = plain(words.Say("bench.no_irrigation"))
	if s.IrrigationMLMin > 0 {
		facts[2] = plain(words.Line("bench.irrigating", g.num(s.IrrigationMLMin, 0, "mL/min")))
	}
	g.words(sim.FieldPart, box{8, 424, 256, g.floor}, ui.AlignLeft, false, plain(words.Say("part.field")), facts[:]...)
	g.part(sim.FieldPart, words.Say("part.field"), 14, 332, 240, 88)
}

func (g *scene) swabs() {
	n := min(int(g.v.Seen.SwabsML/25)+1, 8)
	if g.v.Seen.SwabsML < 10 {
		n = 0
	}
	col := Liquid{Hct: 0.02}.Colour(0.04)
	for i := range n {
		r := g.r(172+float32(i%4)*17, 352-float32(i/4)*13, 22, 12)
		g.c.Fill(r, 3*g.s, col)
		g.c.Stroke(r, 3*g.s, max(1, g.s), g.c.Pal.Ink)
	}
	if n > 0 {
		key := "bench.swabs"
		if g.v.Seen.Rinsing {
			key = "bench.swabs_rinsed"
		}
		g.words(sim.FieldPart, box{166, 286, 352, 326}, ui.AlignLeft, true, fact{}, plain(words.Line(key, g.num(g.v.Seen.SwabsML, 0, "mL"))))
	}
}

// canister is the theatre's own suction, whose blood is thrown away.
func (g *scene) canister() {
	c, s := g.c, &g.v.Seen
	r := g.r(20, 150, 54, 84)
	c.Fill(r, 4*g.s, c.Pal.Well)
	if s.CanisterML > 0 {
		level := (r.H - 4) * float32(min(s.CanisterML/3000, 1))
		c.Fill(ui.R(r.X+2, r.Bottom()-2-level, r.W-4, level), 2, g.v.Drawn.Canister.Colour(depthReservoir))
	}
	c.Stroke(r, 4*g.s, g.pen(), c.Pal.Ink)
	g.words(sim.FieldPart, box{8, 20, 142, 146}, ui.AlignLeft, true, plain(words.Say("bench.theatre_suction")),
		plain(words.Line("bench.thrown_away", g.num(s.CanisterML, 0, "mL")), g.num(s.CanisterML, 0, "mL")))
}

// suction is the sucker's line, and the fork that says where it leads.
func (g *scene) suction(toReservoir bool) {
	v := g.v
	d := &v.Drawn
	connected := v.Seen.Bench.Connected[sim.SuctionLine]
	flow := max(d.SuckMLMin, d.DiscardMLMin)
	g.tube(d.Pool, v.Seen.CanisterML > 0, d.DiscardMLMin, 100, 250, 47, 250, 47, 226)
	g.wrapped = !v.Seen.Bench.Opened[sim.CollectionSet]
	g.tube(d.Suction, connected && v.Seen.TakenInML > 0, d.SuckMLMin, 100, 250, 136, 226, 178, 204, 300, 170, 384, 170)
	if g.wrapped = false; !connected && v.Seen.Bench.Opened[sim.CollectionSet] {
		g.gap(330, 170, false)
	}
	g.tube(d.Pool, flow > 0, flow, 116, 398, 104, 330, 100, 250)
	// the tip of the sucker
	c := g.c
	c.BeginPath()
	c.To(g.px(111), g.py(388))
	c.To(g.px(122), g.py(386))
	c.To(g.px(121), g.py(404))
	c.To(g.px(114), g.py(405))
	c.Polygon(c.Pal.Well)
	c.Line(g.pen()*0.8, c.Pal.Ink, ui.Dash{}, true)
	// the fork: a closed gate lies across the branch that is shut
	hub := g.r(90, 240, 20, 20)
	c.Disc(hub, c.Pal.Well)
	c.Circle(hub, g.pen(), c.Pal.Ink)
	m := hub.Center()
	if toReservoir {
		c.Segment(m.X, m.Y, m.X+8*g.s, m.Y-5*g.s, 2.4*g.s, c.Pal.Ink)
	} else {
		c.Segment(m.X, m.Y, m.X-9*g.s, m.Y, 2.4*g.s, c.Pal.Ink)
	}
	to := "bench.to_discard"
	if toReservoir {
		to = "bench.to_reservoir"
	}
	g.words(sim.FieldPart, box{118, 246, 352, 290}, ui.AlignLeft, false, fact{}, weighty(words.Say(to)))
}

func (g *scene) reservoir() {
	c, v := g.c, g.v
	s, d := &v.Seen, &v.Drawn
	r := g.r(362, 136, 126, 262)
	open := s.Bench.Opened[sim.CollectionSet]
	c.Fill(r, 8*g.s, c.Pal.Well)
	whole := max(v.Limits.ReservoirML, 1)
	level := func(ml float64) float32 { return r.Bottom() - 3 - (r.H-16*g.s)*float32(min(max(ml/whole, 0), 1)) }
	if s.ReservoirML > 0 {
		low := level(s.ReservoirML - s.ClearML)
		top := level(s.ReservoirML)
		c.PushClip(r.Inset(2))
		c.Fill(ui.R(r.X, top, r.W, r.Bottom()-top), 0, d.ReservoirClear.Colour(depthReservoir))
		c.Fill(ui.R(r.X, low, r.W, r.Bottom()-low), 6*g.s, d.ReservoirLow.Colour(depthReservoir))
		c.PopClip()
		c.Segment(r.X+2, top, r.Right()-2, top, 1, c.Pal.Edge)
		if s.ClearML > 0 {
			c.Segment(r.X+2, low, r.Right()-2, low, 1, c.Pal.Ink)
		}
		if s.Mixing && g.moving {
			g.swirl(r, top)
		}
	}
	g.filter(r)
	if open {
		c.Stroke(r, 8*g.s, g.pen()*1.2, c.Pal.Ink)
	} else {
		c.StrokeDash(r, 8*g.s, g.pen(), c.Pal.Edge, ui.Dash{On: 5, Off: 4})
		g.words(sim.ReservoirPart, box{366, 236, 484, 280}, ui.AlignCenter, false, fact{}, plain(words.Say("bench.wrapped")))
	}
	g.litres(r, whole, level)
	g.gauge()
	var facts [2]fact
	if s.ClearML > 0 {
		ml := g.num(s.ClearML, 0, "mL")
		facts[0] = plain(words.Line("bench.clear_on_top", ml), words.Line("bench.clear_short", ml))
	}
	switch {
	case s.Mixing:
		facts[1] = weighty(words.Say("bench.turning"))
	case s.ReservoirML < 1:
	case s.MixedTick >= 0:
		facts[1] = plain(words.Line("bench.turned", g.minutes(sim.Seconds(s.Tick-s.MixedTick))))
	default:
		facts[1] = plain(words.Say("bench.never_turned"))
	}
	g.words(sim.ReservoirPart, box{278, 411, 450, g.floor}, ui.AlignRight, false, plain(words.Line("bench.reservoir", g.num(s.ReservoirML, 0, "mL"))), facts[:]...)
	g.part(sim.ReservoirPart, words.Say("part.reservoir"), 358, 132, 132, 270)
}

// filter is the dashed pocket blood passes through, with the clot that hangs in it.
func (g *scene) filter(r ui.Rect) {
	c := g.c
	pocket := ui.R(r.X+22*g.s, r.Y+6*g.s, r.W-44*g.s, 84*g.s)
	if clot := g.v.Seen.ClotML; clot > 0 {
		h := pocket.H * float32(min(0.12+clot/60, 0.9))
		box := ui.R(pocket.X+1, pocket.Bottom()-h, pocket.W-2, h)
		c.Fill(box, min(h/2, 10*g.s), Liquid{Hct: 0.9}.Colour(depthBag))
		st := ui.Style{Size: g.size, Col: c.Pal.Well, Align: ui.AlignCenter, Weight: ui.SemiBold, Tab: true}
		if h >= 16 {
			ml := g.num(clot, 0, "mL")
			c.TextAt(box.X+box.W/2, box.Bottom()-h/2+g.size*0.36, fitting(box.W-4, st, words.Line("bench.clot", ml), ml), st)
		}
	}
	c.BeginPath()
	c.To(pocket.X, pocket.Y)
	c.To(pocket.X, pocket.Bottom()-10*g.s)
	c.Curve(pocket.X, pocket.Bottom(), pocket.X+12*g.s, pocket.Bottom())
	c.To(pocket.Right()-12*g.s, pocket.Bottom())
	c.Curve(pocket.Right(), pocket.Bottom(), pocket.Right(), pocket.Bottom()-10*g.s)
	c.To(pocket.Right(), pocket.Y)
	c.Line(max(1.2, 1.5*g.s), c.Pal.Ink, ui.Dash{On: 2.5, Off: 3}, false)
}

func (g *scene) swirl(r ui.Rect, top float32) {
	turn := float32(int(g.c.ClockMS()/120)%12) * 0.52
	m := ui.Vec{X: r.X + r.W/2, Y: (top + r.Bottom()) / 2}
	g.c.BeginPath()
	g.c.Arc(m, 14*g.s, turn, turn+4.2)
	g.c.LineRound(2*g.s, g.c.Pal.Well, false)
}

// litres is the scale printed on the vessel.
func (g *scene) litres(r ui.Rect, whole float64, level func(float64) float32) {
	c := g.c
	st := ui.Style{Size: g.size, Tab: true, Col: c.Pal.Muted}
	step := 250.0
	for ml := 0.0; ml <= whole+1; ml += step {
		y := level(ml)
		l, long := 6*g.s, int(ml)%1000 == 0
		if long {
			l = 12 * g.s
		}
		c.Segment(r.Right()-l, y, r.Right()+2, y, max(1, g.s), c.Pal.Ink)
		if long {
			c.TextAt(r.Right()+12*g.s, y+g.size*0.36, g.num(ml/1000, 0, "L"), st)
		}
	}
}

// gauge is the vacuum gauge on the lid: what is really there, and a mark for what is set.
func (g *scene) gauge() {
	c, s := g.c, &g.v.Seen
	connected := s.Bench.Connected[sim.VacuumLine]
	g.tube(Liquid{}, false, 0, 448, 136, 448, 112)
	if !connected {
		g.gap(448, 124, true)
	}
	r := g.r(428, 112, 40, 40)
	r.Y -= r.H
	m := r.Center()
	c.Disc(r, c.Pal.Well)
	c.Circle(r, g.pen(), c.Pal.Ink)
	hand := func(mmHg float64, length float32) (float32, float32) {
		a := -3.93 + 4.71*float32(min(mmHg/400, 1))
		return m.X + length*cos(a), m.Y + length*sin(a)
	}
	for _, mark := range [...]float64{0, 100, 200, 300, 400} {
		x0, y0 := hand(mark, r.W/2-2)
		x1, y1 := hand(mark, r.W/2-6*g.s)
		c.Segment(x0, y0, x1, y1, 1, c.Pal.Edge)
	}
	x, y := hand(s.VacuumSetMmHg, r.W/2)
	c.Disc(ui.R(x-3, y-3, 6, 6), c.Pal.Accent)
	x, y = hand(s.VacuumMmHg, r.W/2-7*g.s)
	c.Segment(m.X, m.Y, x, y, max(2, 2.2*g.s), c.Pal.Ink)
	st := ui.Style{Size: g.size, Col: c.Pal.Muted, Align: ui.AlignCenter}
	c.TextAt(m.X, r.Y-6, words.Say("bench.vacuum"), st)
	g.pill(sim.ReservoirPart, 474, g.py(132)-40, 145, vacuumID, words.Line("bench.mmhg", g.num(s.VacuumMmHg, 0, "")))
}
