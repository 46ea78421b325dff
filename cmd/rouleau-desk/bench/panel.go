// The one panel at the right: stop always on top, then the selected part, the team, or the records.

package bench

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

func (d *Desk) panel(c *ui.Core, v *View, r ui.Rect) {
	in := c.Panel(ui.Panel{ID: ui.Name("panel"), Rect: r}).Inset(-4)
	in.CutTop(stopHeight)
	d.stop(c, v)
	in.CutTop(6)
	d.question(c, v, &in)
	tabs := [...]ui.Option{{Label: words.Say("panel.tab_bench"), Key: ui.K('B')}, {Label: words.Say("panel.tab_team"), Key: ui.K('T')}, {Label: words.Say("panel.tab_records"), Key: ui.K('R')}}
	if i, ok := c.Choice(ui.Choice{ID: ui.Name("tabs"), Rect: in.CutTop(42), Label: words.Say("panel.tabs"), Options: tabs[:], Selected: d.Tab, Row: true}); ok && i >= 0 {
		d.Tab = i
	}
	in.CutTop(8)
	id := ui.Name("panel of").At(d.Tab)
	if d.Tab == TabPart {
		id = id.At(int(d.Part))
		title := words.Say("part." + d.Part.String())
		if d.Part >= sim.FirstBag {
			title = words.Say("part." + sim.Bag(d.bag).String())
		}
		st := ui.Style{Size: ui.SizeHead, Weight: ui.SemiBold}
		c.Label(ui.Label{Rect: in.CutTop(c.LabelHeight(title, in.W, st)), Text: title, Style: st})
		in.CutTop(4)
	}
	area := c.BeginScroll(ui.Scroll{ID: id, Rect: in, Content: d.heights[id]})
	s := stack{c: c, d: d, v: v, id: id, r: area.InsetXY(4, 4), y: area.Y + 4}
	switch d.Tab {
	case TabPart:
		d.partPanel(&s)
	case TabTeam:
		d.teamPanel(&s)
	default:
		d.recordsPanel(&s)
	}
	d.heights[id] = s.y - area.Y + 4
	c.EndScroll()
	d.guided.lead = max(0, d.guided.lead-1)
}

// stop is the stop of pump and bowl.
func (d *Desk) stop(c *ui.Core, v *View) { d.stopButton(c, v, ui.Name("stop"), stopRect(c.Size())) }

func (d *Desk) stopButton(c *ui.Core, v *View, id ui.ID, r ui.Rect) {
	stop := on(sim.StopAll, sim.NoPart, 0)
	b := ui.Button{ID: id, Rect: r, Label: words.Say("panel.stop"), Key: ui.K('S'), Look: ui.LookDark, Why: v.why(stop.Sim)}
	if c.ButtonHeight(b, b.Rect.W) > b.Rect.H {
		b.Label = words.Say("panel.stop_short")
	}
	if c.Button(b) {
		d.do(stop)
	}
}

func (d *Desk) partPanel(s *stack) {
	switch p := d.Part; {
	case p == sim.FieldPart:
		woundPanel(s)
	case p == sim.AnticoagulantHook || p == sim.DripClamp:
		anticoagulantPanel(s)
	case p == sim.ReservoirPart:
		reservoirPanel(s)
	case p == sim.OutletClamp || p == sim.PumpPart:
		pumpPanel(s)
	case p == sim.BowlPart:
		bowlPanel(s)
	case p == sim.WashHookA || p == sim.WashClampA:
		washPanel(s, sim.WashHookA, sim.WashClampA)
	case p == sim.WashHookB || p == sim.WashClampB:
		washPanel(s, sim.WashHookB, sim.WashClampB)
	case p >= sim.FirstBag || p == sim.SparePort:
		bagPanel(s)
	case p == sim.WasteBag || p == sim.WasteDrain:
		wastePanel(s)
	case p == sim.PatientPart:
		patientPanel(s)
	}
}

func (s *stack) num(x float64, digits int, unit string) string { return s.c.Num(x, digits, unit) }

func woundPanel(s *stack) {
	v := &s.v.Seen
	s.routing()
	s.read(words.Say("panel.pool"), words.Line("panel.about", s.num(v.PoolML, 0, "mL")))
	s.read(words.Say("panel.bleeding"), words.Line("panel.about", s.num(v.BriskMLMin, 0, "mL/min")))
	s.read(words.Say("panel.irrigation"), s.num(v.IrrigationMLMin, 0, "mL/min"))
	if v.IrrigationMLMin > 0 {
		s.read(words.Say("panel.irrigation_with"), words.Say("solution."+v.IrrigationFluid.String()))
	}
	s.read(words.Say("panel.irrigation_total"), s.num(v.IrrigationML, 0, "mL"))
	s.read(words.Say("panel.swabs"), s.num(v.SwabsML, 0, "mL"))
	if v.BasinML > 0 {
		s.read(words.Say("panel.basin"), s.num(v.BasinML, 0, "mL"))
	}
	s.read(words.Say("panel.discarded"), s.num(v.CanisterML, 0, "mL"))
	if v.AgentSaid {
		s.say(words.Say("panel.agent_said"), true)
	}
	if s.v.ShowTruth {
		s.truth(words.Say("panel.truth_bleeding"), s.num(s.v.Truth.BleedMLMin, 0, "mL/min"))
		s.truth(words.Say("panel.truth_shed"), s.num(s.v.Truth.ShedML, 0, "mL"))
	}
	s.head(words.Say("panel.ask"))
	s.ask(sim.LetItPool)
	s.ask(sim.SkimAsYouGo)
	s.ask(sim.RinseSwabs)
	s.ask(sim.IsAgentGone)
}

// routing says where the sucker leads, and changes it.
func (s *stack) routing() {
	options := [...]ui.Option{{Label: words.Say("panel.to_discard")}, {Label: words.Say("panel.to_reservoir"), Why: s.v.why(sim.Action{Do: sim.Route, Value: 1})}}
	s.head(words.Say("panel.sucker_leads"))
	y := s.y
	i, ok := s.choose(ui.Choice{ID: ui.Name("route"), Label: words.Say("panel.sucker_leads"), Options: options[:], Selected: int(s.v.Seen.Route)})
	s.leadTo(sim.Action{Do: sim.Route, Value: s.v.Guide.Ask.Value}, ui.R(s.r.X, y, s.r.W, s.y-6-y))
	if ok && i >= 0 {
		s.d.do(on(sim.Route, sim.NoPart, float64(i)))
	}
}

// ask is a request to the team; what they are doing as asked is shown as going on.
func (s *stack) ask(r sim.Request) {
	v := &s.v.Seen
	going := false
	switch r {
	case sim.LetItPool:
		going = v.Pooling
	case sim.SecondSucker:
		going = v.SecondSucker
	case sim.GiveAntiD:
		going = v.AntiDAsked
	case sim.TestFetalBleed:
		going = v.FetalTestAsked
	case sim.RinseSwabs:
		going = v.Rinsing
	case sim.ThinnedClotting:
		going = v.ClottingTold
	case sim.SendForFluid:
		going = v.FluidSentFor
	}
	s.act(words.Say("request."+r.String()), on(sim.Ask, sim.NoPart, float64(r)), running(going, words.Say("panel.going_on")))
}

// shelf hangs packs on a hook, or takes one down.
func (s *stack) shelf(hook sim.Part) {
	b := &s.v.Seen.Bench
	if i := b.HookPack[hook]; i >= 0 {
		p := s.v.Packs[i]
		s.read(words.Say("panel.hangs"), words.Say("solution."+p.Solution.String()))
		s.read(words.Say("panel.left"), s.num(b.PackLeftML[i], 0, "mL"))
		s.read(words.Say("panel.use_by"), p.Expiry)
		s.looked(hook)
		s.two(words.Say("panel.look_pack"), on(sim.Inspect, hook, 0), words.Say("panel.take_down"), on(sim.Unhang, hook, 0))
		return
	}
	s.head(words.Say("panel.shelf"))
	for i, p := range s.v.Packs {
		a := on(sim.Hang, hook, float64(i))
		why := s.v.May(a.Sim)
		if why == "pack_hangs_already" || why == "pack_is_empty" {
			continue
		}
		s.act(words.Line("panel.hang", words.Say("solution."+p.Solution.String())), a,
			detail(words.Line("panel.pack", s.num(b.PackLeftML[i], 0, "mL"), p.Expiry)))
	}
}

func anticoagulantPanel(s *stack) {
	v := &s.v.Seen
	s.slide(dripID, words.Say("panel.drip"), words.Say("panel.drops_unit"), sim.SetDrip, v.DropsMin, 2)
	s.read(words.Say("panel.running"), s.num(v.DripMLMin, 1, "mL/min"))
	s.read(words.Say("panel.drawn"), s.num(v.DripML, 0, "mL"))
	s.read(words.Say("panel.primed"), s.num(v.PrimedML, 0, "mL"))
	s.clamp(sim.DripClamp)
	s.shelf(sim.AnticoagulantHook)
	s.head(words.Say("panel.prime_head"))
	least, most, _ := sim.ValueRange(sim.Prime)
	s.say(words.Say("panel.prime_volume"), false)
	s.y -= 4
	ml, done := s.c.Stepper(ui.Value{ID: ui.Name("prime"), Rect: s.row(40), Label: words.Say("panel.prime_volume"), Unit: "mL", Value: s.d.primeML, Min: least, Max: most, Step: 10})
	if done {
		s.d.primeML = ml
	}
	s.act(words.Say("panel.prime"), on(sim.Prime, sim.NoPart, s.d.primeML))
	s.head(words.Say("panel.not_for_infusion"))
	s.hold(words.Say("panel.hook_pack"), on(sim.Hook, sim.AnticoagulantHook, 0))
}

func reservoirPanel(s *stack) {
	v := &s.v.Seen
	s.set(sim.CollectionSet)
	s.pumpBlood()
	s.read(words.Say("panel.holds"), s.num(v.ReservoirML, 0, "mL"))
	s.read(words.Say("panel.clear"), words.Line("panel.about", s.num(v.ClearML, 0, "mL")))
	s.read(words.Say("panel.clot"), words.Line("panel.about", s.num(v.ClotML, 0, "mL")))
	s.read(words.Say("panel.taken_in"), s.num(v.TakenInML, 0, "mL"))
	s.read(words.Say("panel.filling_at"), s.num(v.FillingMLMin, 0, "mL/min"))
	if t := &s.v.Truth; s.v.ShowTruth {
		s.truth(words.Say("panel.truth_hct"), s.num(t.ReservoirHct, 2, ""))
		s.truth(words.Say("panel.truth_low_hct"), s.num(t.ReservoirLowHct, 2, ""))
		s.truth(words.Say("panel.truth_free_hb"), s.num(t.ReservoirFreeHbGL, 1, "g/L"))
		s.truth(words.Say("panel.truth_clotting"), s.num(t.FilterActivation, 2, ""))
	}
	s.slide(vacuumID, words.Say("panel.vacuum"), "mmHg", sim.SetVacuum, v.VacuumSetMmHg, 10)
	s.act(words.Say("panel.mix"), on(sim.Mix, sim.NoPart, 0), key('M'), running(v.Mixing, words.Say("panel.mixing")))
	s.act(words.Say("panel.test_vacuum"), on(sim.TestVacuum, sim.NoPart, 0))
	s.line(sim.SuctionLine)
	s.line(sim.VacuumLine)
	s.act(words.Say("panel.sample"), on(sim.Sample, sim.ReservoirPart, 0))
	s.hold(words.Say("panel.discard_reservoir"), on(sim.DiscardIt, sim.ReservoirPart, 0))
}

// set is one of the two sterile sets: opening it, looking at it, replacing it.
func (s *stack) set(p sim.Part) {
	b := &s.v.Seen.Bench
	if !b.Opened[p] {
		s.act(words.Line("panel.open_set", words.Say("part."+p.String())), on(sim.OpenSet, p, 0))
		return
	}
	if b.Breached[p] {
		s.say(words.Line("panel.breached", words.Say("part."+p.String())), true)
	}
	s.looked(p)
	name := words.Say("part." + p.String())
	s.act(words.Line("panel.look", name), on(sim.Inspect, p, 0))
	s.hold(words.Line("panel.replace_set", name), on(sim.ReplaceSet, p, 0))
}
