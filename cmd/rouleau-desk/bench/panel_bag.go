// The panels of the product bags and of the patient.

package bench

import (
	"math"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

func bagPanel(s *stack) {
	v, d := &s.v.Seen, s.d
	if v.BagsUsed == 0 {
		s.say(words.Say("panel.no_bag_yet"), false)
		s.act(words.Say("panel.new_bag"), on(sim.NewBag, sim.NoPart, 0))
		return
	}
	d.bag = min(d.bag, v.BagsUsed-1)
	if v.BagsUsed > 1 {
		options := make([]ui.Option, v.BagsUsed)
		for i := range options {
			options[i].Label = s.num(float64(i+1), 0, "")
		}
		if i, ok := s.c.Choice(ui.Choice{ID: ui.Name("which bag"), Rect: s.row(40), Label: words.Say("panel.which_bag"), Options: options, Selected: d.bag, Row: true}); ok && i >= 0 {
			d.Select(sim.Bag(i))
		}
	}
	b, p := &v.Bags[d.bag], sim.Bag(d.bag)
	if b.Discarded {
		s.say(words.Say("panel.discarded_bag"), true)
	}
	s.read(words.Say("panel.holds"), s.num(b.ML, 0, "mL"))
	s.read(words.Say("panel.came"), s.num(b.CameML, 0, "mL"))
	s.read(words.Say("panel.air"), s.num(b.AirML, 0, "mL"))
	s.read(words.Say("panel.bowlfuls"), s.num(float64(b.FromCycles), 0, ""))
	if left := s.v.expiryLeftS(d.bag); left == left {
		s.read(words.Say("panel.expires_in"), s.c.Clock(math.Max(left, 0)))
	}
	s.read(words.Say("panel.labelled"), words.Line("panel.of", bits(b.LabelBits), int(sim.LabelFieldCount)))
	s.read(words.Say("panel.checked_by"), words.Line("panel.people", int(b.Checkers)))
	s.results(p)
	if s.v.ShowTruth && b.ML > 0 {
		s.truth(words.Say("panel.truth_hct"), s.num(s.v.Truth.BagHct[d.bag], 2, ""))
		s.truth(words.Say("panel.truth_free_hb"), s.num(s.v.Truth.BagFreeHbGL[d.bag], 1, "g/L"))
	}
	if s.dialog(words.Say("panel.label"), sim.Action{Do: sim.Label, On: p}) {
		d.Dialog, d.bits = LabelDialog, b.LabelBits
	}
	s.act(words.Say("panel.expel_air"), on(sim.ExpelAir, p, 0))
	s.two(words.Say("panel.turn_bag"), on(sim.MixBag, p, 0), words.Say("panel.sample_bag"), on(sim.Sample, p, 0))
	if s.dialog(words.Say("panel.hand_over"), sim.Action{Do: sim.HandOver, On: p, Value: 1}) {
		d.Dialog, d.bits = HandOverDialog, b.HandedBits
	}
	s.head(words.Say("panel.identity"))
	s.act(words.Say("panel.identify_two"), on(sim.Identify, p, 2))
	s.act(words.Say("panel.identify_one"), on(sim.Identify, p, 1))
	s.head(words.Say("panel.giving_head"))
	s.circuit()
	s.hold(words.Say("panel.hook_filter"), on(sim.Hook, p, 1))
	s.hold(words.Say("panel.hook_bare"), on(sim.Hook, p, 0))
	s.hold(words.Say("panel.discard_bag"), on(sim.DiscardIt, p, 0))
	s.head(words.Say("panel.on_the_line"))
	s.act(words.Say("panel.new_bag"), on(sim.NewBag, sim.NoPart, 0))
	s.clamp(sim.SparePort)
	s.line(sim.ProductLine)
}

// dialog is a button that opens a dialog for an act, with the reason when the act is not possible at all.
func (s *stack) dialog(label string, a sim.Action) bool {
	return s.button(ui.Button{ID: s.id.With("dialog").At(int(a.Do)), Label: label + " …", Why: s.v.why(a)})
}

// results are the laboratory's answers for a part.
func (s *stack) results(p sim.Part) {
	v := &s.v.Seen
	waiting := 0
	for i := range v.Samples[:v.SampleCount] {
		sm := &v.Samples[i]
		if !sm.Told {
			waiting++
			continue
		}
		if sm.Of != p {
			continue
		}
		s.read(words.Line("panel.lab_at", s.c.Clock(math.Floor(sim.Seconds(sm.TakenTick)))), words.Line("panel.lab_hct", s.num(sm.Hct, 2, "")))
		s.read(words.Say("panel.lab_free_hb"), s.num(sm.FreeHbGL, 1, "g/L"))
		s.read(words.Say("panel.lab_potassium"), s.num(sm.PotassiumMmolL, 1, "mmol/L"))
		s.read(words.Say("panel.lab_heparin"), s.num(sm.HeparinIUPerML, 2, "IU/mL"))
	}
	if waiting > 0 {
		s.read(words.Say("panel.lab_waiting"), s.num(float64(waiting), 0, ""))
	}
}

func patientPanel(s *stack) {
	v := &s.v.Seen
	g := &v.Giving
	if v.BloodWantedTick >= 0 {
		s.say(words.Line("panel.blood_wanted", s.c.Clock(math.Floor(sim.Seconds(v.Tick-v.BloodWantedTick)))), true)
	}
	s.slide(ui.Name("give rate"), words.Say("panel.give_rate"), "mL/min", sim.GiveRate, g.RateMLMin, 5)
	s.act(words.Say("panel.stop_giving"), on(sim.GiveRate, sim.NoPart, 0), key('G'))
	s.act(words.Say("panel.unhook"), on(sim.Unhook, sim.NoPart, 0))
	s.read(words.Say("panel.flow"), s.num(g.FlowMLMin, 0, "mL/min"))
	s.read(words.Say("panel.given"), s.num(g.GivenML, 0, "mL"))
	filter := words.Say("panel.no")
	if g.Filter {
		filter = words.Say("panel.yes")
	}
	if g.Bag >= 0 {
		s.read(words.Say("panel.bag"), words.Say("part."+sim.Bag(int(g.Bag)).String()))
		s.read(words.Say("panel.filter"), filter)
	}
	if v.Gas.Tick >= 0 && v.Gas.HbGDL > 0 {
		s.read(words.Line("panel.gas_at", s.c.Clock(math.Floor(sim.Seconds(v.Gas.Tick)))), s.num(v.Gas.HbGDL, 1, "g/dL"))
		s.read(words.Say("panel.calcium"), s.num(v.Gas.IonisedCalcium, 2, "mmol/L"))
		s.read(words.Say("panel.potassium"), s.num(v.Gas.PotassiumMmolL, 1, "mmol/L"))
	}
	if s.v.ShowTruth {
		s.truth(words.Say("panel.truth_hb"), s.num(s.v.Truth.HbGDL, 1, "g/dL"))
	}
	s.results(sim.PatientPart)
	s.act(words.Say("panel.watch"), on(sim.Watch, sim.NoPart, 0))
	s.act(words.Say("panel.call"), on(sim.Ask, sim.NoPart, float64(sim.ClinicianComes)), running(v.ClinicianHere, words.Say("panel.here")))
	s.act(words.Say("panel.sample_patient"), on(sim.Sample, sim.PatientPart, 0))
	if g.Squeezing {
		s.act(words.Say("panel.squeeze_end"), on(sim.Squeeze, sim.NoPart, 0))
	} else {
		s.hold(words.Say("panel.squeeze"), on(sim.Squeeze, sim.NoPart, 1))
	}
}
