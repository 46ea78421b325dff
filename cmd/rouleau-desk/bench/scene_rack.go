// Beside the bag on the line: the other bags, small, and the patient they go to.

package bench

import (
	"math"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

// The rack of the other bags, in units of the sheet.
const (
	rackLeft, rackY = 872, 224
	rackW, rackH    = 22, 34
	rackStep        = 28
	rackMost        = 3
)

func rackX(place int) float32 { return rackLeft + rackStep*float32(place) }

// racked are the bags that are neither on the line nor thrown away, the newest first, with one being given in front.
func (v *View) racked() (bags [sim.MaxBags]int, n int) {
	giving := int(v.Seen.Giving.Bag)
	put := func(i int) { bags[n], n = i, n+1 }
	if giving >= 0 && giving != v.newest() {
		put(giving)
	}
	for i := v.newest() - 1; i >= 0; i-- {
		if i != giving && !v.Seen.Bags[i].Discarded {
			put(i)
		}
	}
	return bags, n
}

// rackPlace is where a bag stands in the rack.
func (g *scene) rackPlace(bag int) int {
	bags, n := g.v.racked()
	for i := range min(n, rackMost) {
		if bags[i] == bag {
			return i
		}
	}
	return 0
}

// rack draws the other bags with their numbers. A press puts one after the other into the panel.
func (g *scene) rack() {
	c, v := g.c, g.v
	bags, n := v.racked()
	if n == 0 {
		return
	}
	st := ui.Style{Size: g.size, Weight: ui.SemiBold, Tab: true, Align: ui.AlignCenter}
	for i := range min(n, rackMost) {
		b := &v.Seen.Bags[bags[i]]
		liquid := v.Drawn.Bags[bags[i]]
		g.bag(rackX(i), rackY, rackW, rackH, b.ML/max(v.Limits.BagML, 1), liquid, false)
		tag := g.r(rackX(i)+3, rackY+4, rackW-6, 15)
		c.Fill(tag, 2, c.Pal.Well)
		c.TextAt(tag.X+tag.W/2, tag.Y+tag.H/2+g.size*0.36, g.num(float64(bags[i]+1), 0, ""), st)
	}
	for i := range min(n, rackMost) {
		if g.d.Tab == TabPart && g.d.Part == sim.Bag(bags[i]) {
			g.corners(g.r(rackX(i), rackY, rackW, rackH).Inset(-3), c.Pal.Ink, 2.4)
		}
	}
	if n > rackMost {
		st.Align, st.Weight = ui.AlignLeft, ui.Regular
		c.TextAt(g.px(rackX(rackMost)-4), g.py(rackY+rackH/2), words.Line("top.more", n-rackMost), st)
	}
	box := g.r(rackLeft-2, rackY-4, rackStep*rackMost+2, rackH+6)
	least := float32(40)
	if box.H < least {
		box.Y, box.H = box.Y-(least-box.H)/2, least
	}
	hit := c.Hit(ui.HitArea{ID: ui.Name("rack"), Rect: box, Label: words.Say("bench.other_bags")})
	if hit.Pressed {
		at := 0
		for i := range n {
			if g.d.Part >= sim.FirstBag && bags[i] == g.d.bag {
				at = (i + 1) % n
			}
		}
		g.d.Select(sim.Bag(bags[at]))
	}
	if hit.Over {
		g.corners(box.Inset(-2), c.Pal.Edge, 1.6)
	}
}

// patientFacts are what a glance at the patient must tell: what runs in, what is waited for, what must never be given.
func (g *scene) patientFacts(giving int) (facts [4]fact) {
	s := &g.v.Seen
	switch {
	case s.Giving.RateMLMin > 0 || s.Giving.Squeezing:
		facts[0] = weighty(words.Line("bench.giving", g.num(s.Giving.FlowMLMin, 0, "mL/min")))
	case giving >= 0:
		bag := words.Say("part." + sim.Bag(giving).String())
		facts[0] = weighty(words.Line("bench.connected_bag", bag), words.Line("bench.connected_short", bag))
	default:
		facts[0] = plain(words.Say("bench.not_giving"), words.Say("bench.not_giving_short"))
		facts[0].strong = true
	}
	if s.BloodWantedTick >= 0 {
		facts[1] = weighty(words.Line("bench.blood_wanted", g.minutes(math.Max(0, sim.Seconds(s.Tick-s.BloodWantedTick)))))
	}
	facts[2] = weighty(strings.Join(g.v.Story.Never, ", "))
	switch {
	case giving >= 0:
		facts[3] = plain(words.Line("bench.to_go", g.num(s.Bags[giving].ML, 0, "mL")))
	case s.Giving.GivenML > 0:
		facts[3] = plain(words.Line("bench.given", g.num(s.Giving.GivenML, 0, "mL")))
	}
	return facts
}

func (g *scene) patient() {
	c, v := g.c, g.v
	s, d := &v.Seen, &v.Drawn
	giving := int(s.Giving.Bag)
	if giving >= 0 {
		from := [2]float32{860, 204}
		if giving != v.newest() {
			from = [2]float32{rackX(g.rackPlace(giving)) + rackW/2, rackY + rackH}
		}
		g.tube(d.Bags[giving], s.Giving.GivenML > 0, d.GiveMLMin, from[0], from[1], from[0], 276, 876, 276, 876, 316)
		g.dripFilter(876, 294)
	}
	// a person on a table, from the side
	line := func() {
		c.BeginPath()
		c.To(g.px(842), g.py(336))
		c.To(g.px(846), g.py(322))
		c.Curve(g.px(862), g.py(308), g.px(890), g.py(312))
		c.Curve(g.px(914), g.py(320), g.px(950), g.py(330))
		c.To(g.px(952), g.py(336))
	}
	line()
	c.Polygon(c.Pal.Well)
	c.LineRound(g.pen(), c.Pal.Ink, true)
	head := g.r(818, 314, 22, 22)
	c.Disc(head, c.Pal.Well)
	c.Circle(head, g.pen(), c.Pal.Ink)
	c.Segment(g.px(812), g.py(339), g.px(956), g.py(339), g.pen()*1.4, c.Pal.Ink)
	facts := g.patientFacts(giving)
	g.words(sim.PatientPart, box{834, 342, 959, g.floor}, ui.AlignLeft, false, plain(words.Say("part.patient")), facts[:]...)
	g.part(sim.PatientPart, words.Say("part.patient"), 812, 284, 146, 58)
}

// dripFilter is the filter on the way to the patient, or the bare line where there is none.
func (g *scene) dripFilter(x, y float32) {
	c := g.c
	if !g.v.Seen.Giving.Filter {
		return
	}
	r := g.r(x-7, y-12, 14, 24)
	c.Fill(r, 5*g.s, c.Pal.Well)
	c.HatchRect(r.Inset(2), 4, 0, 1, c.Pal.Edge)
	c.Stroke(r, 5*g.s, g.pen()*0.8, c.Pal.Ink)
}
