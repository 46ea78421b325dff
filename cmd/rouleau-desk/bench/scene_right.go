// The right of the drawing: product bag, waste, patient.

package bench

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

func cos(a float32) float32 { return float32(math.Cos(float64(a))) }
func sin(a float32) float32 { return float32(math.Sin(float64(a))) }

// minutes writes a stretch of time as people say it.
func (g *scene) minutes(s float64) string {
	if s < 90 {
		return g.num(math.Floor(s), 0, "s")
	}
	return g.num(math.Floor(s/60), 0, "min")
}

// newest is the product bag on the product line, -1 for none.
func (v *View) newest() int { return v.Seen.BagsUsed - 1 }

// expiryLeftS is how long a bag may still be used, NaN for one without product.
func (v *View) expiryLeftS(i int) float64 {
	b := &v.Seen.Bags[i]
	if b.ML <= 0 {
		return math.NaN()
	}
	return v.Limits.ExpiryS - sim.Seconds(v.Seen.Tick-b.FirstTick)
}

func bits(b uint8) int {
	n := 0
	for ; b != 0; b &= b - 1 {
		n++
	}
	return n
}

func (g *scene) product() {
	v := g.v
	d, s := &v.Drawn, &v.Seen
	i := v.newest()
	liquid, flow := d.BowlMixed, d.ProductMLMin
	if d.DrawBackMLMin > 0 {
		flow = d.DrawBackMLMin
	}
	hung := i >= 0 && !s.Bags[i].Discarded
	g.wrapped = !s.Bench.Opened[sim.ProcessingSet]
	if d.DrawBackMLMin > 0 {
		g.tube(d.Bags[i], true, flow, 838, 110, 838, 92, 798, 92, 798, 190, 702, 190)
	} else {
		g.tube(liquid, hung && s.Bags[i].ML > 0, flow, 702, 190, 798, 190, 798, 92, 838, 92, 838, 110)
	}
	g.wrapped = false
	if s.Bench.FoundLoose[sim.ProductLine] || i >= 0 && !s.Bench.Connected[sim.ProductLine] {
		g.gap(798, 140, true)
	}
	share, title := 0.0, words.Say("bench.no_bag")
	var facts [5]fact
	var fill Liquid
	if hung {
		b := &s.Bags[i]
		share, fill, title = (b.ML+b.AirML)/max(v.Limits.BagML, 1), d.Bags[i], words.Say("part."+sim.Bag(i).String())
		facts = g.bagFacts(i)
	}
	g.bag(812, 112, 52, 92, share, fill, !hung)
	if hung {
		g.bagMarks(i)
	}
	g.words(sim.Bag(max(i, 0)), box{873, 74, 960, 219}, ui.AlignLeft, false, plain(title), facts[:]...)
	g.rack()
	name := words.Say("bench.product_bag")
	g.part(sim.Bag(max(i, 0)), name, 808, 102, 57, 104)
	if g.d.Part >= sim.FirstBag && g.d.bag >= s.BagsUsed {
		g.d.bag = max(i, 0)
	}
	if i >= 0 {
		g.tube(fill, false, 0, 822, 204, 822, 238)
		g.clamp(sim.SparePort, 822, 228, true, 824, 256, 66, ui.AlignCenter)
	}
}

// bagFacts are the words beside a bag.
func (g *scene) bagFacts(i int) (facts [5]fact) {
	v := g.v
	b := &v.Seen.Bags[i]
	facts[0] = weighty(g.num(b.ML, 0, "mL"))
	if b.AirML > 0 {
		facts[1] = weighty(words.Line("bench.air", g.num(b.AirML, 0, "mL")))
	}
	if left := v.expiryLeftS(i); left == left {
		clock := g.c.Clock(math.Max(left, 0))[:4]
		facts[2] = weighty(words.Line("bench.expires", clock), words.Line("bench.expires_short", clock))
		if left <= 0 {
			facts[2] = weighty(words.Say("bench.expired"))
		}
	}
	facts[3] = plain(words.Line("bench.labelled", bits(b.LabelBits), sim.LabelFieldCount))
	if v.ShowTruth && b.ML > 0 {
		facts[4] = plain(words.Line("bench.truth_hct", g.num(v.Truth.BagHct[i], 2, "")))
	}
	return facts
}

// bagMarks are the air above the blood and the label on the bag.
func (g *scene) bagMarks(i int) {
	c, b := g.c, &g.v.Seen.Bags[i]
	r := g.r(812, 112, 52, 92)
	if b.AirML > 0 {
		whole := (b.ML + b.AirML) / max(g.v.Limits.BagML, 1)
		top := r.Bottom() - 2 - (r.H-4)*float32(min(whole, 1))
		h := max((r.H-4)*float32(b.AirML/max(g.v.Limits.BagML, 1)), 5*g.s)
		c.Fill(ui.R(r.X+3, top, r.W-6, h), 2, c.Pal.Well)
		c.Segment(r.X+3, top+h, r.Right()-3, top+h, 1, c.Pal.Ink)
		for k := range 3 {
			x := r.X + (10+14*float32(k))*g.s
			c.Circle(ui.R(x, top+1, 4*g.s, 4*g.s), 1, c.Pal.Edge)
		}
	}
	tag := ui.R(r.X+9*g.s, r.Y+14*g.s, r.W-18*g.s, 20*g.s)
	if b.LabelBits == 0 {
		c.StrokeDash(tag, 2, 1, c.Pal.Edge, ui.Dash{On: 3, Off: 2})
		return
	}
	c.Fill(tag, 2, c.Pal.Well)
	c.Stroke(tag, 2, 1, c.Pal.Ink)
	for k := range bits(b.LabelBits) {
		x, y := tag.X+3*g.s+float32(k%2)*tag.W/2, tag.Y+4*g.s+float32(k/2)*5.5*g.s
		c.Segment(x, y, x+tag.W/2-6*g.s, y, max(1, 1.4*g.s), c.Pal.Ink)
	}
}

func (g *scene) waste() {
	c, v := g.c, g.v
	d, s := &v.Drawn, &v.Seen
	connected := s.Bench.Connected[sim.WasteLine]
	r := g.r(742, g.floor-51, 84, 48)
	top := g.floor - 50
	g.wrapped = !s.Bench.Opened[sim.ProcessingSet]
	g.tube(d.Effluent, d.EffluentMLMin > 0, d.EffluentMLMin, 702, 206, 784, 206, 784, top)
	if !connected && s.Bench.Opened[sim.ProcessingSet] {
		g.gap(784, 330, true)
	}
	g.tube(d.Waste, s.Bench.Open[sim.WasteDrain] && s.WasteML > 0, 0, 748, g.floor-26, 690, g.floor-26)
	g.wrapped = false
	shape := func(inset float32) {
		c.BeginPath()
		c.To(r.X+inset, r.Y+inset*0.5)
		c.To(r.X+5*g.s+inset, r.Bottom()-inset)
		c.To(r.Right()-5*g.s-inset, r.Bottom()-inset)
		c.To(r.Right()-inset, r.Y+inset*0.5)
	}
	shape(0)
	c.Polygon(c.Pal.Well)
	if s.WasteML > 0 {
		h := (r.H - 3) * float32(min(s.WasteML/max(v.Limits.WasteML, 1), 1))
		c.PushClip(ui.R(r.X, r.Bottom()-h, r.W, h))
		shape(2)
		c.Polygon(d.Waste.Colour(depthReservoir))
		c.PopClip()
	}
	shape(0)
	c.LineRound(g.pen(), c.Pal.Ink, false)
	g.wasteTag(r)
	g.part(sim.WasteBag, words.Say("part.waste_bag"), 742, g.floor-51, 84, 48)
	g.clamp(sim.WasteDrain, 712, g.floor-26, false, 690, g.floor-12, 84, ui.AlignRight)
}

// wasteTag is written on the waste bag: how much it holds.
func (g *scene) wasteTag(r ui.Rect) {
	c, s := g.c, &g.v.Seen
	litres := g.num(s.WasteML/1000, 2, "")
	text := words.Line("bench.waste", litres, g.num(g.v.Limits.WasteML/1000, 0, "L"))
	short := words.Line("bench.waste_short", litres)
	st := ui.Style{Size: g.size, Tab: true, Align: ui.AlignCenter}
	w := r.W - 12*g.s
	if ui.CountLines(text, w, st.Size, st.Weight, st.Tab) > 2 {
		text = short
	}
	for st.Size > leastSize && ui.CountLines(text, w, st.Size, st.Weight, st.Tab) > 2 {
		st.Size--
	}
	h := float32(ui.CountLines(text, w, st.Size, st.Weight, st.Tab)) * g.step(st)
	tag := r.Place(w, h, 0.5, 0.5)
	c.Fill(tag.InsetXY(-1, 0), 3, c.Pal.Well)
	g.lines(text, &tag, st)
	if text == short && g.d.looked == partID(sim.WasteBag) {
		g.tipOf, g.tip = sim.WasteBag, words.Line("bench.waste", litres, g.num(g.v.Limits.WasteML/1000, 0, "L"))
	}
}
