// The anticoagulant in the drawing: pack, drip chamber, clamp, and the pill that leads to its control.

package bench

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

func (g *scene) anticoagulant() {
	c, v := g.c, g.v
	s, b := &v.Seen, &v.Seen.Bench
	pack := b.HookPack[sim.AnticoagulantHook]
	title, share := plain(words.Say("part.anticoagulant_hook"), words.Say("short.anticoagulant_hook")), 0.0
	facts := [...]fact{{}, plain(words.Say("bench.hook_empty")), {}}
	if pack >= 0 {
		p := v.Packs[pack]
		title = g.solution(p.Solution)
		share = b.PackLeftML[pack] / max(p.VolumeML, 1)
		facts[0] = weighty(words.Say("bench.not_for_infusion"))
		facts[1] = plain(g.packLeft(b.PackLeftML[pack]), g.num(b.PackLeftML[pack], 0, "mL"))
	}
	g.tube(Liquid{}, pack >= 0 && s.DripML > 0, 0, 178, 92, 178, 204)
	// the drip chamber, with a drop that falls as often as the roller lets it
	chamber := g.r(170, 106, 16, 26)
	c.Fill(chamber, 4*g.s, c.Pal.Well)
	if s.DripMLMin > 0 && s.DropsMin > 0 {
		fall := float32(0.3)
		if g.moving {
			each := 60000 / s.DropsMin
			fall = float32(int(c.ClockMS()/each*8)%8) / 8
		}
		c.Disc(ui.R(chamber.X+chamber.W/2-2*g.s, chamber.Y+4*g.s+fall*16*g.s, 4*g.s, 5*g.s), c.Pal.Ink)
	}
	c.Stroke(chamber, 4*g.s, g.pen()*0.8, c.Pal.Ink)
	g.bag(152, 18, 52, 74, share, Liquid{}, pack < 0)
	if r := v.Charts.Tracks[SignalDripPer100].Last(); r == r {
		facts[2] = plain(words.Line("bench.drip_per", g.num(r, 0, "")))
	}
	g.words(sim.AnticoagulantHook, box{218, 2, 396, 105}, ui.AlignLeft, false, title, facts[:]...)
	drops := g.num(s.DropsMin, 0, "")
	g.pill(sim.AnticoagulantHook, 212, g.py(106), 147, dripID, words.Line("bench.drops", drops), words.Line("bench.drops_short", drops))
	g.part(sim.AnticoagulantHook, title.text, 148, 8, 60, 90)
	g.clamp(sim.DripClamp, 178, 172, true, 155, 172, 79, ui.AlignRight)
}

const dropsPerML = 20 // ISO 8536-4

// packLeft is what the anticoagulant pack holds, and how long that lasts as it drips now.
func (g *scene) packLeft(ml float64) string {
	left := g.num(ml, 0, "mL")
	// not while the prime runs in, which is over in a moment
	if s := &g.v.Seen; s.DripMLMin > 0 && s.DripMLMin < 1.5*s.DropsMin/dropsPerML && ml/s.DripMLMin < 100 {
		rate := s.DripMLMin
		return words.Line("bench.left_for", left, g.num(math.Floor(ml/rate), 0, "min"))
	}
	return words.Line("bench.left", left)
}

// solution is the name of a fluid, in full and short.
func (g *scene) solution(k sim.Solution) fact {
	name := k.String()
	return plain(words.Say("solution."+name), words.Say("short."+name))
}

// pill is a value that can be changed, its top in pixels: a press takes the focus to its control in the panel.
func (g *scene) pill(p sim.Part, x, top, room float32, control ui.ID, texts ...string) {
	st := ui.Style{Weight: ui.SemiBold}
	label := fitting(room*g.s-26, st, texts...)
	r := ui.R(g.px(x), top, st.Width(label)+26, 40)
	if g.c.Button(ui.Button{ID: control.With("pill"), Rect: r, Label: label, Look: ui.LookPill}) {
		g.d.Select(p)
		g.c.Focus(control)
	}
}
