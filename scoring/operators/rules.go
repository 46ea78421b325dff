package operators

import (
	"rouleau/scenarios"
	"rouleau/scoring/coach"
	"rouleau/sim"
)

// This file holds the rules that a file can add: when something holds or can be read, do this. They come before the habits, and
// no habit undoes what a rule did while the rule holds.

// Rule is one rule of a file.
type Rule struct {
	Holds  string                `yaml:"holds" rule:"oneof=undecided|not_primed|drip_behind|drip_far_ahead|clear_layer|agent_in_field|swabs_full|reservoir_ready|bowl_nearly_full|filled_not_washed|washed_not_emptied|not_labelled|blood_wanted|giving_unwatched|question_open|reservoir_nearly_full|pack_nearly_empty|detector_doubtful|citrate_outrun|circuit_open|pump_blood_waits|protamine_given|operation_over|part_bowl|anti_d_due|clotting_thinned|fluid_runs_short|waste_nearly_full|air_in_line|bowl_leaks|power_is_lost|patient_reacts|bag_expires_soon|reason_untold" doc:"when this situation is the case, as hints know it"`
	Reads  *scenarios.UntilReads `yaml:"reads" doc:"when this can be read; with holds: both"`
	EveryS int                   `yaml:"every_s" rule:"min=1,max=36000,unit=s,default=60" doc:"does it again only after so long; in between no habit does the same act on the same part, as long as the rule holds"`
	Do     string                `yaml:"do" rule:"required" doc:"the act" example:"set_drip"`
	On     string                `yaml:"on" doc:"the part it is about" example:"bag_1"`
	Value  *ScriptValue          `yaml:"value" doc:"how much, or the word for a choice" example:"60"`
	Note   string                `yaml:"note" rule:"max=400" doc:"why, for who reads the file; not played"`
}

// habitRule is a rule as it is played.
type habitRule struct {
	holds string
	reads *scenarios.UntilReads
	every int64
	act   sim.Action
	next  int64 // not before this tick
	keeps bool  // it has acted and has held ever since: the habits leave its act to it
}

// leftToRule is why a habit does not get its way.
const leftToRule sim.Reason = "left_to_rule"

// sameAct says whether two acts set or do the same thing. Asking and declaring are about what their value says; of all others
// the value is how, and a habit that would do it another way is held back too.
func sameAct(a, b *sim.Action) bool {
	return a.Do == b.Do && a.On == b.On && a.Item == b.Item && (a.Value == b.Value || a.Do != sim.Ask && a.Do != sim.Declare)
}

// unlessRuled is do for the habits, who keep away from what a rule has done and still wants so.
func (o *Steady) unlessRuled(do func(sim.Action) sim.Reason) func(sim.Action) sim.Reason {
	return func(a sim.Action) sim.Reason {
		for i := range o.rules {
			if r := &o.rules[i]; r.keeps && sameAct(&r.act, &a) {
				return leftToRule
			}
		}
		return do(a)
	}
}

// byRule does the first act whose rule holds and that is possible. It says whether it acted.
func (o *Steady) byRule(v *sim.Seen, do func(sim.Action) sim.Reason) bool {
	if len(o.rules) == 0 {
		return false
	}
	sight := coach.Sight{Seen: v, DripPer100: o.trail.Add(v), UnwatchedS: sim.Seconds(v.Tick - o.watched), ReservoirML: o.sheet.ReservoirML}
	acted := false
	for i := range o.rules {
		r := &o.rules[i]
		if r.holds != "" && !sight.Holds(r.holds) || r.reads != nil && !readsTo(&sight, r.reads) {
			r.keeps = false
			continue
		}
		if !acted && v.Tick >= r.next && do(r.act) == "" {
			r.next, r.keeps, acted = v.Tick+r.every, true, true
		}
	}
	return acted
}

// readsTo says whether a reading lies where a rule wants it.
func readsTo(s *coach.Sight, u *scenarios.UntilReads) bool {
	x := s.Value(u.What)
	return x == x && (u.AtLeast == nil || x >= *u.AtLeast) && (u.AtMost == nil || x <= *u.AtMost)
}

// number is 1 for yes.
func number(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}
