// The panels of pump, bowl, wash fluid and waste.

package bench

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

// supply warns in plain words when the wash fluid on open lines will not do for the wash that is coming or under way.
func (s *stack) supply() {
	p, b := &s.v.Seen.Pump, &s.v.Seen.Bench
	need := washNeeds(s.v)
	if need <= 0 && p.CycleOpen {
		return
	}
	if need <= 0 {
		need = p.WashML
	}
	left, name, opened := washLeft(s.v), "", false
	for _, k := range [...][2]sim.Part{{sim.WashHookA, sim.WashClampA}, {sim.WashHookB, sim.WashClampB}} {
		if i := b.HookPack[k[0]]; i >= 0 && b.Open[k[1]] && !opened {
			name, opened = words.Say("solution."+s.v.Packs[i].Solution.String()), true
		}
	}
	if opened && left < need {
		s.say(words.Line("panel.wash_short", name, s.num(left, 0, "mL"), s.num(10*math.Ceil(need/10), 0, "mL")), true)
	}
}

func (s *stack) mainActs() {
	p := &s.v.Seen.Pump
	s.supply()
	wash := words.Line("panel.wash_done", s.num(p.WashedML, 0, ""), s.num(p.WashML, 0, "mL"))
	s.act(words.Say("panel.fill"), on(sim.Fill, sim.NoPart, 0), key('F'), running(p.Mode == sim.PumpFill, words.Say("panel.going_on")))
	s.act(words.Say("panel.wash"), on(sim.Wash, sim.NoPart, 0), key('W'), running(p.Mode == sim.PumpWash, wash))
	s.act(words.Say("panel.empty"), on(sim.Empty, sim.NoPart, 0), key('E'), running(p.Mode == sim.PumpEmpty, words.Say("panel.going_on")))
	s.act(words.Say("panel.stop_pump"), on(sim.StopPump, sim.NoPart, 0), key('D'))
}

func bowlPanel(s *stack) {
	v := &s.v.Seen
	p, d := &v.Pump, &s.v.Drawn
	s.set(sim.ProcessingSet)
	s.mainActs()
	if p.Detector > 0 {
		s.read(words.Say("panel.detector"), s.num(p.Detector, 2, ""))
	}
	if p.Spinning {
		s.read(words.Say("panel.bed_by_eye"), words.Line("panel.about", s.num(p.BedByEye, 2, "")))
	}
	s.read(words.Say("panel.holds"), s.num(p.HeldML, 0, "mL"))
	s.read(words.Say("panel.effluent"), effluentWord(p))
	s.read(words.Say("panel.fed"), s.num(p.FedML, 0, "mL"))
	s.read(words.Say("panel.wash_used"), s.num(p.WashUsedML, 0, "mL"))
	s.read(words.Say("panel.radii"), words.Line("panel.radii_of", s.num(d.InnerCM*10, 0, ""), s.num(d.OuterCM*10, 0, "mm")))
	if p.Spinning && d.BedShare > 0 && !d.FromDetector {
		s.read(words.Say("panel.face"), s.num(d.faceCM(d.BedShare)*10, 1, "mm"))
	}
	if s.v.ShowTruth {
		s.truth(words.Say("panel.truth_bed"), s.num(s.v.Truth.BedShare, 2, ""))
		s.truth(words.Say("panel.truth_hct"), s.num(s.v.Truth.BowlHct, 2, ""))
	}
	s.rates()
	s.automatic()
	s.head(words.Say("panel.more"))
	s.act(words.Say("panel.draw_back"), on(sim.DrawBack, sim.NoPart, 0), running(p.Mode == sim.PumpDrawBack, words.Say("panel.going_on")))
	s.act(words.Say("panel.top_up"), on(sim.TopUp, sim.NoPart, 0), running(p.Mode == sim.PumpTopUp, words.Say("panel.going_on")))
	s.act(words.Say("panel.send_back"), on(sim.SendBack, sim.NoPart, 0), running(p.Mode == sim.PumpSendBack, words.Say("panel.going_on")))
	s.act(words.Say("panel.clear_line"), on(sim.ClearLine, sim.NoPart, 0))
	s.line(sim.OutletLine)
	s.line(sim.ProductLine)
	s.line(sim.WasteLine)
}

// effluentWord is what leaves the bowl as an eye tells it.
func effluentWord(p *sim.SeenPump) string {
	switch {
	case p.EffluentMLMin <= 0:
		return words.Say("panel.effluent_none")
	case p.EffluentRed < 0.03:
		return words.Say("panel.effluent_clear")
	case p.EffluentRed < 0.15:
		return words.Say("panel.effluent_pink")
	case p.EffluentDense < 0.1: // the colour of free haemoglobin; cells make it dense
		return words.Say("panel.effluent_seen_through")
	case p.EffluentRed < 0.5:
		return words.Say("panel.effluent_red")
	}
	return words.Say("panel.effluent_dark")
}

func (s *stack) rates() {
	p := &s.v.Seen.Pump
	s.slide(ui.Name("fill rate"), words.Say("panel.fill_rate"), "mL/min", sim.SetFillRate, p.FillMLMin, 25)
	s.slide(ui.Name("wash rate"), words.Say("panel.wash_rate"), "mL/min", sim.SetWashRate, p.WashMLMin, 25)
	s.slide(ui.Name("wash volume"), words.Say("panel.wash_volume"), "mL", sim.SetWashVolume, p.WashML, 50)
	s.slide(ui.Name("empty rate"), words.Say("panel.empty_rate"), "mL/min", sim.SetEmptyRate, p.EmptyMLMin, 25)
}

// automatic are the single steps that may go by themselves.
func (s *stack) automatic() {
	p := &s.v.Seen.Pump
	s.head(words.Say("panel.automatic"))
	s.slide(ui.Name("auto fill"), words.Say("panel.auto_fill"), "mL", sim.AutoFillAt, p.AutoFillML, 50)
	s.tick(words.Say("act.auto_stop"), sim.AutoStop, p.AutoStop)
	s.tick(words.Say("act.auto_wash"), sim.AutoWash, p.AutoWash)
	s.tick(words.Say("act.auto_empty"), sim.AutoEmpty, p.AutoEmpty)
}

func pumpPanel(s *stack) {
	p := &s.v.Seen.Pump
	s.mainActs()
	s.read(words.Say("panel.flow"), s.num(p.FlowMLMin, 0, "mL/min"))
	s.rates()
	s.clamp(sim.OutletClamp)
	s.line(sim.OutletLine)
	s.act(words.Say("panel.clear_line"), on(sim.ClearLine, sim.NoPart, 0))
}

func washPanel(s *stack, hook, clamp sim.Part) {
	s.supply()
	if need := washNeeds(s.v); need > 0 {
		s.read(words.Say("panel.wash_still_needs"), s.num(need, 0, "mL"))
	}
	s.read(words.Say("panel.wash_open_packs"), s.num(washLeft(s.v), 0, "mL"))
	s.clamp(clamp)
	s.shelf(hook)
}

func wastePanel(s *stack) {
	v := &s.v.Seen
	s.read(words.Say("panel.holds"), s.num(v.WasteML, 0, "mL"))
	s.read(words.Say("panel.carried_away"), s.num(v.WasteAwayML, 0, "mL"))
	s.read(words.Say("panel.product_away"), s.num(v.DiscardedML, 0, "mL"))
	s.read(words.Say("panel.room"), s.num(max(0, s.v.Limits.WasteML-v.WasteML), 0, "mL"))
	s.read(words.Say("panel.effluent"), effluentWord(&v.Pump))
	s.act(words.Say("panel.change_waste"), on(sim.ChangeWaste, sim.NoPart, 0))
	s.clamp(sim.WasteDrain)
	s.line(sim.WasteLine)
}
