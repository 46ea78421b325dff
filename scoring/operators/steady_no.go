package operators

import "rouleau/sim"

// Steady where the right answer may be no, or another way: asking before deciding, telling why, writing it down, and staying
// as long as the team has questions.

// consults asks surgeon and anaesthetist where the custom of the hospital is to decide together.
func (o *Steady) consults(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	return o.habits.Consults && o.sheet.Together && v.Bench.Decision == sim.Undecided && !v.Together &&
		try(sim.Ask, sim.NoPart, float64(sim.DecideTogether))
}

// hesitates says whether it does not yet dare to say no.
func (o *Steady) hesitates(v *sim.Seen) bool {
	return v.Bench.Decision == sim.Undecided && !o.salvage() && v.Tick < int64(o.habits.SaysNoAfterMin*60*sim.TicksPerSecond)
}

// tellsWhy tells once what speaks against collecting, or against heparin.
func (o *Steady) tellsWhy(try func(sim.Verb, sim.Part, float64) bool) bool {
	if o.toldWhy || !o.habits.TellsWhy {
		return false
	}
	o.toldWhy = true
	switch s := &o.sheet; {
	case s.Refused:
		return try(sim.Ask, sim.NoPart, float64(sim.PatientDeclines))
	case s.Infected:
		return try(sim.Ask, sim.NoPart, float64(sim.InfectedField))
	case s.HeparinForbidden:
		return try(sim.Ask, sim.NoPart, float64(sim.NoHeparin))
	}
	return false
}

// leaves tells, writes and answers, and ends the case when nobody wants anything any more.
func (o *Steady) leaves(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	switch {
	case o.answer(v, try) || o.tellsWhy(try):
	case o.habits.Notes && !o.noted:
		o.noted = o.do(sim.Action{Do: sim.Note, Text: "Nothing collected: reason and talk as on the sheet."}) == ""
	case v.Tick >= v.StayTick:
		o.ended = try(sim.EndCase, sim.NoPart, 0)
	}
	return true
}
