package debrief

import (
	"slices"

	"rouleau/assets/words"
	"rouleau/sim"
)

// Decisions in deciding and preparing: what is looked for, and what its finders share.

var preparing = []aspect{
	{name: "decision", measures: []string{"decision_right", "decided_in_time", "sets_opened"}, critical: []string{"collected_after_refusal"}, find: findDecision},
	{name: "together", measures: []string{"asked_together"}, find: findTogether},
	{name: "sets", measures: []string{"sets_opened"}, critical: []string{"collected_after_refusal"}, find: findSets},
	{name: "bench", measures: slices.Concat([]string{"bench_faults_mended_share", "vacuum_tested", "spilled_ml", "anticoagulant_right", "fluids_right_share",
		"product_free_hb_g_l", "vacuum_in_range_share"}, ofCells), critical: []string{"heparin_forbidden", "wrong_wash_given", "haemolysed_given"}, find: findBench},
	{name: "vacuum_test", measures: []string{"vacuum_tested"}, find: findVacuumTest},
	{name: "loosened", measures: slices.Concat([]string{"fed_through_loose_line_ml", "spilled_ml"}, ofCells), find: findLoosened},
	{name: "anticoagulant", measures: []string{"anticoagulant_right"}, critical: []string{"heparin_forbidden"}, find: findAnticoagulant},
	{name: "fluid", measures: slices.Concat([]string{"fluids_right_share", "product_free_hb_g_l", "clot_ml", "protected_blood_share"}, ofCells),
		critical: []string{"wrong_wash_given", "haemolysed_given"}, find: findFluids},
	{name: "bowl", measures: []string{"bowl_right"}, find: findBowl},
	{name: "bench_check", measures: []string{"bench_checked_share"}, find: findBenchCheck},
	{name: "prime", measures: []string{"primed_before_blood_ml", "anticoagulant_in_range_share", "protected_blood_share", "clot_ml"}, find: findPrime},
	{name: "processing_set", measures: slices.Concat([]string{"processing_set_opened_at_ml", "bowl_right"}, ofCells), find: findProcessingSet},
	{name: "breach", measures: []string{"breaches_mended_share"}, critical: []string{"breach_used"}, find: findBreach},
}

// ofCells are measures of what comes back to the patient, on which much in preparing and collecting bears.
var ofCells = []string{"recovery_against_steady", "red_cell_recovery", "lowest_hb_against_steady", "donor_units_against_steady"}

const (
	readsSheet = 60 * sim.TicksPerSecond // after which somebody has read the case sheet and looked round [A]
	inHand     = 90 * sim.TicksPerSecond // before something is used, so that there is time to put it right [A]
)

// sucks is the first of the person's acts that led the sucker to the reservoir, -1 for none.
func (f *finding) sucks() int { return f.first(0, routesTo(sim.ToReservoir)) }

// firstSucked is when the first blood came to the sucker's line, the end where none did.
func (f *finding) firstSucked() int64 {
	for i := range f.rec.Run.Trace {
		if f.rec.Run.Trace[i].SuckedBloodML > 0 {
			return f.rec.Run.Trace[i].Tick
		}
	}
	return f.rec.lastTick
}

// last is the last of the person's acts before a tick that fits, -1 for none.
func (f *finding) last(before int64, fits func(a *sim.Action) bool) int {
	for i := len(f.acts) - 1; i >= 0; i-- {
		if f.acts[i].Tick < before && fits(&f.acts[i]) {
			return i
		}
	}
	return -1
}

// tickOf is the tick of one of the person's acts, the end where there is none.
func (f *finding) tickOf(own int) int64 {
	if own < 0 {
		return f.rec.lastTick
	}
	return f.acts[own].Tick
}

// soonBefore is some time before something, and not before the case sheet can have been read.
func soonBefore(tick int64) int64 { return max(min(readsSheet, tick/2), tick-inHand) }

// at is one of several acts of the person at another time.
func (f *finding) at(own int, tick int64) Swap {
	a := f.acts[own]
	a.Tick = max(0, tick)
	return Swap{own, a}
}

// valued is one of the person's acts with another value.
func (f *finding) valued(own int, value float64) Swap {
	a := f.acts[own]
	a.Value = value
	return Swap{own, a}
}

// seenBy is how the bench looked at the person's next act from a tick on, or at the last of all.
func (f *finding) seenBy(tick int64) *sim.Seen {
	i, _ := slices.BinarySearchFunc(f.acts, tick, func(a sim.Action, t int64) int { return int(a.Tick - t) })
	if len(f.acts) == 0 {
		return &sim.Seen{}
	}
	return &f.rec.moments[min(i, len(f.acts)-1)].seen
}

// partName is a part as people call it.
func partName(p sim.Part) string {
	if p == sim.AnticoagulantHook {
		return words.Say("decision.hook_of_anticoagulant")
	}
	return words.Say("part." + p.String())
}

func solutionName(s sim.Solution) string { return words.Say("solution." + s.String()) }
