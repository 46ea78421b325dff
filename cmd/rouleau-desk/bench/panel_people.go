// The panels of the team and of the records.

package bench

import (
	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/sim"
)

func (d *Desk) teamPanel(s *stack) {
	v := &s.v.Seen
	s.surgeon()
	s.say(words.Say("panel.team_intro"), false)
	if v.Bench.Decision == sim.DoNotSalvage { // the rest is about a bench that is not used
		s.aboutDecision()
	}
	s.head(words.Say("panel.about_suction"))
	s.ask(sim.LetItPool)
	s.ask(sim.SkimAsYouGo)
	s.ask(sim.RinseSwabs)
	s.head(words.Say("panel.about_field"))
	s.ask(sim.HoldIrrigation)
	s.ask(sim.ResumeIrrigation)
	s.ask(sim.TellMeWhen)
	s.ask(sim.StopAgent)
	s.ask(sim.IsAgentGone)
	s.ask(sim.SecondSucker)
	s.head(words.Say("panel.about_blood"))
	s.act(words.Say("request.clinician_to_bedside"), on(sim.Ask, sim.NoPart, float64(sim.ClinicianComes)), running(v.ClinicianHere, words.Say("panel.here")))
	s.ask(sim.ThinnedClotting)
	s.head(words.Say("panel.about_supplies"))
	s.ask(sim.SendForFluid)
	if v.Bench.Decision != sim.DoNotSalvage {
		s.aboutDecision()
	}
	s.head(words.Say("panel.about_birth"))
	s.ask(sim.GiveAntiD)
	s.ask(sim.TestFetalBleed)
}

// aboutDecision asks whether to collect, and tells why not or what must be kept away.
func (s *stack) aboutDecision() {
	s.head(words.Say("panel.about_decision"))
	s.ask(sim.DecideTogether)
	s.ask(sim.PatientDeclines)
	s.ask(sim.InfectedField)
	s.ask(sim.NoHeparin)
}

// surgeon says what goes on in the wound, and what that means for what is sucked.
func (s *stack) surgeon() {
	v := &s.v.Seen
	s.head(words.Say("panel.surgeon_now"))
	if v.OperationOver {
		s.say(words.Say("top.operation_over"), true)
		return
	}
	s.say(v.PhaseName, true)
	switch {
	case v.Pooling:
		s.say(words.Say("panel.now_pools"), false)
	default:
		s.say(words.Say("panel.now_skims"), false)
	}
	if v.IrrigationMLMin > 0 {
		s.say(words.Line("panel.now_irrigates", words.Say("solution."+v.IrrigationFluid.String()), s.num(v.IrrigationMLMin, 0, "mL/min")), false)
	}
	if v.SecondInUse {
		s.say(words.Say("panel.now_second"), true)
	} else if v.AgentSaid {
		s.say(words.Say("panel.now_agent"), true)
	}
}

func (d *Desk) recordsPanel(s *stack) {
	v := &s.v.Seen
	s.head(words.Say("panel.loss_head"))
	least, most, _ := sim.ValueRange(sim.EstimateLoss)
	if ml, done := s.slider(ui.Value{ID: estimateID, Label: words.Say("panel.loss"), Unit: "mL", Value: d.estimate, Min: least, Max: min(most, 6000), Step: 50}); done {
		d.estimate = ml
	}
	if v.EstimateML >= 0 {
		s.read(words.Say("panel.last_estimate"), s.num(v.EstimateML, 0, "mL"))
	}
	s.act(words.Say("panel.tell_loss"), on(sim.EstimateLoss, sim.NoPart, d.estimate))
	s.head(words.Say("panel.tally_head"))
	written := 0
	for _, w := range v.Written {
		if w {
			written++
		}
	}
	if s.button(ui.Button{ID: ui.Name("tally"), Label: words.Say("panel.tally") + " …", Detail: words.Line("panel.of", written, int(sim.TallyItems)), Key: ui.K('Y'),
		Why: s.v.why(sim.Action{Do: sim.Reconcile})}) {
		d.Dialog = TallyDialog
	}
	s.head(words.Say("panel.declare_head"))
	for i := sim.IncidentBreach; i.String() != "unknown"; i++ {
		s.act(words.Say("incident."+i.String()), on(sim.Declare, sim.NoPart, float64(i)))
	}
	s.head(words.Say("panel.note_head"))
	text, entered := s.c.TextField(ui.TextField{ID: ui.Name("note"), Rect: s.row(40), Text: d.note, Hint: words.Say("panel.note_hint"), Most: 120})
	d.note = text
	why := ""
	if d.note == "" {
		why = words.Say("panel.note_empty")
	}
	if s.button(ui.Button{ID: ui.Name("write note"), Label: words.Say("panel.note"), Why: why}) || entered && d.note != "" {
		d.do(Act{Sim: sim.Action{Do: sim.Note, Text: d.note}})
		d.note = ""
	}
	s.head(words.Say("panel.end_head"))
	if s.button(ui.Button{ID: ui.Name("back to sheet"), Label: words.Say("panel.sheet")}) {
		d.do(Act{Do: BackToCase})
	}
	if !s.v.Assessment {
		if s.button(ui.Button{ID: ui.Name("go home"), Label: words.Say("panel.go_home"), Detail: words.Say("panel.case_kept")}) {
			d.do(Act{Do: GoHome})
		}
	}
	s.hold(words.Say("panel.take_bench_down"), on(sim.TakeDown, sim.NoPart, 0))
	s.hold(words.Say("panel.end_case"), on(sim.EndCase, sim.NoPart, 0))
}
