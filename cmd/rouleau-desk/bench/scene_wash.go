// The wash fluid in the drawing, above the bowl, and whether it will do.

package bench

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

func (g *scene) washHooks() {
	v := g.v
	d, b := &v.Drawn, &v.Seen.Bench
	n := 0.0
	for _, k := range [...]sim.Part{sim.WashClampA, sim.WashClampB} {
		if b.Open[k] {
			n++
		}
	}
	hooks := [...]struct {
		hook, clamp         sim.Part
		x, label, wide, top float32
		align               ui.Align
	}{{sim.WashHookA, sim.WashClampA, 636, 480, 126, 668, ui.AlignRight}, {sim.WashHookB, sim.WashClampB, 716, 746, 150, 692, ui.AlignLeft}}
	for _, h := range hooks {
		pack, flow := b.HookPack[h.hook], 0.0
		if b.Open[h.clamp] && d.WashMLMin > 0 {
			flow = d.WashMLMin / n
		}
		g.tube(Liquid{}, flow > 0, flow, h.x, 86, h.x, 158, h.top, 168, h.top, 184)
		share, title := 0.0, words.Say("bench.hook_empty")
		var lines [2]string
		if pack >= 0 {
			p := v.Packs[pack]
			share, title = b.PackLeftML[pack]/max(p.VolumeML, 1), words.Say("solution."+p.Solution.String())
			lines[0] = g.num(b.PackLeftML[pack], 0, "mL")
		}
		if h.hook == sim.WashHookA {
			lines[1] = g.washForecast()
		}
		g.bag(h.x-24, 18, 48, 68, share, Liquid{}, pack < 0)
		g.label(h.label, 14, h.wide, h.align, title, lines[0], lines[1])
		g.part(h.hook, words.Say("part."+h.hook.String()), h.x-28, 8, 56, 80)
	}
	g.clamp(sim.WashClampA, 636, 126, true, 651, 126, ui.AlignLeft)
	g.clamp(sim.WashClampB, 716, 126, true, 732, 126, ui.AlignLeft)
}

// washForecast says whether the packs on open wash lines do for this bowlful, or for how many more.
func (g *scene) washForecast() string {
	v := g.v
	p, left := &v.Seen.Pump, washLeft(v)
	if need := washNeeds(v); need > 0 {
		text := words.Say("bench.wash_needs", g.num(10*math.Ceil(need/10), 0, "mL"))
		if left < need {
			return "!" + text
		}
		return text
	}
	b, hangs := &v.Seen.Bench, false
	for _, k := range [...][2]sim.Part{{sim.WashHookA, sim.WashClampA}, {sim.WashHookB, sim.WashClampB}} {
		hangs = hangs || b.HookPack[k[0]] >= 0 && b.Open[k[1]]
	}
	if !hangs || p.WashML <= 0 {
		return ""
	}
	if n := int(left / p.WashML); n > 0 {
		return words.Say("bench.washes_left", n)
	}
	return "!" + words.Say("bench.no_wash_left")
}

// washNeeds is the wash fluid this bowlful still asks for, mL; 0 when none is under way.
func washNeeds(v *View) float64 {
	p := &v.Seen.Pump
	if !p.CycleOpen {
		return 0
	}
	return max(0, p.WashML-p.WashedML)
}

// washLeft is what the packs on open wash lines hold by their scales, mL.
func washLeft(v *View) float64 {
	b, sum := &v.Seen.Bench, 0.0
	for _, k := range [...][2]sim.Part{{sim.WashHookA, sim.WashClampA}, {sim.WashHookB, sim.WashClampB}} {
		if i := b.HookPack[k[0]]; i >= 0 && b.Open[k[1]] {
			sum += b.PackLeftML[i]
		}
	}
	return sum
}
