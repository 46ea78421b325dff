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
	lowA := min(72+g.lift-17/g.s, hooksLow-1) // above the word of the vacuum gauge
	hooks := [...]struct {
		hook, clamp sim.Part
		x, top      float32
		place       box
		align       ui.Align
	}{{sim.WashHookA, sim.WashClampA, 630, 668, box{476, 2, 602, lowA}, ui.AlignRight}, {sim.WashHookB, sim.WashClampB, 706, 692, box{736, 2, 958, 70}, ui.AlignLeft}}
	for _, h := range hooks {
		pack, flow := b.HookPack[h.hook], 0.0
		if b.Open[h.clamp] && d.WashMLMin > 0 {
			flow = d.WashMLMin / n
		}
		g.wrapped = !b.Opened[sim.ProcessingSet]
		g.tube(Liquid{}, flow > 0, flow, h.x, 86, h.x, 158, h.top, 168, h.top, 184)
		g.wrapped = false
		share, title := 0.0, plain(words.Say("bench.hook_empty"))
		var facts [2]fact
		if pack >= 0 {
			p := v.Packs[pack]
			share, title = b.PackLeftML[pack]/max(p.VolumeML, 1), g.solution(p.Solution)
			facts[0] = plain(g.num(b.PackLeftML[pack], 0, "mL"))
		}
		if h.hook == sim.WashHookA {
			facts[1] = g.washForecast()
		}
		g.bag(h.x-24, 18, 48, 68, share, Liquid{}, pack < 0)
		g.words(h.hook, h.place, h.align, false, title, facts[:]...)
		g.part(h.hook, words.Say("part."+h.hook.String()), h.x-28, 8, 56, 80)
	}
	g.clamp(sim.WashClampA, 630, 126, true, 622, 152, 84, ui.AlignRight)
	g.clamp(sim.WashClampB, 706, 126, true, 729, 126, 62, ui.AlignLeft)
}

// washForecast says whether the packs on open wash lines do for this bowlful, or for how many more.
func (g *scene) washForecast() fact {
	v := g.v
	p, left := &v.Seen.Pump, washLeft(v)
	if need := washNeeds(v); need > 0 {
		ml := g.num(10*math.Ceil(need/10), 0, "mL")
		f := plain(words.Line("bench.wash_needs", ml), words.Line("bench.wash_needs_short", ml))
		f.strong = left < need
		return f
	}
	b, hangs := &v.Seen.Bench, false
	for _, k := range [...][2]sim.Part{{sim.WashHookA, sim.WashClampA}, {sim.WashHookB, sim.WashClampB}} {
		hangs = hangs || b.HookPack[k[0]] >= 0 && b.Open[k[1]]
	}
	if !hangs || p.WashML <= 0 {
		return fact{}
	}
	if n := int(left / p.WashML); n > 0 {
		return plain(words.Line("bench.washes_left", n))
	}
	return weighty(words.Say("bench.no_wash_left"))
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
