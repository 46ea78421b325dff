package scoring

import (
	"math"

	"rouleau/scenarios"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// What a measure found, and the table of all measures.

// standing says what a measure had to go on.
type standing uint8

const (
	measured       standing = iota
	nothingToJudge          // the case gave no occasion: full points
	missing                 // the trainee gave none, though the case did: no points
)

// found is what a measure found in a run.
type found struct {
	value    float64
	standing standing
	tick     int64 // the moment it turns on, -1 for none
}

func value(v float64) found             { return found{value: v, tick: -1} }
func valueAt(v float64, t int64) found  { return found{value: v, tick: t} }
func none() found                       { return found{standing: nothingToJudge, tick: -1} }
func absent() found                     { return found{standing: missing, tick: -1} }
func yesNo(ok bool) found               { return value(map[bool]float64{true: 1}[ok]) }
func shareOf(part, whole float64) found { return value(min(1, max(0, part/whole))) }

// judged is a finished run with what measures need beside it.
type judged struct {
	sc   *scenarios.Scenario
	run  *play.Run
	yard Yardstick
	c    *sim.Case
	s    *sim.State
}

// measures are all measures by name; the names, units and meanings stand in scenarios.Measures.
var measures = map[string]func(j *judged) found{
	"decision_right":  func(j *judged) found { return yesNo(j.s.Bench.Decision == j.sc.Right.RightDecision()) },
	"decided_in_time": decidedInTime, "asked_together": askedTogether, "sets_opened": setsOpened, "reason_told": reasonTold, "decision_noted": decisionNoted,
	"bench_faults_mended_share": benchFaultsMended, "wrong_pack_told": wrongPackTold,

	"anticoagulant_right": anticoagulantRight, "bowl_right": bowlRight, "bench_checked_share": benchChecked,
	"fluids_right_share": fluidsRight, "vacuum_tested": vacuumTested, "primed_before_blood_ml": primedBeforeBlood, "processing_set_opened_at_ml": openedAt,
	"spilled_ml":            spilled,
	"breaches_mended_share": breachesMended,

	"anticoagulant_in_range_share": anticoagulantInRange, "anticoagulant_per_100ml": anticoagulantPer100,
	"blood_without_drip_ml": bloodWithoutDrip, "reservoir_peak_share": reservoirPeak, "thinnest_product_hct": thinnestProduct, "give_rate_ml_min": giveRate,
	"second_sucker_asked": secondSuckerAsked, "anti_d_asked": antiDAsked, "fetal_test_asked": fetalTestAsked,
	"vacuum_in_range_share": vacuumInRange, "agent_collected_ml": agentCollected, "clot_ml": clot,
	"worst_clear_layer_share": worstClearLayer, "swabs_rinsed": swabsRinsed, "suction_lysis_share": suctionLysis,

	"fill_stop_fraction": fillStop, "part_bowls_justified_share": partBowlsJustified, "wash_bowl_volumes": washVolumes,
	"wash_rate_ml_min": func(j *judged) found { return highestRate(j, func(cy *sim.Cycle) float64 { return cy.WashMLMin }) },
	"fill_rate_ml_min": func(j *judged) found { return highestRate(j, func(cy *sim.Cycle) float64 { return cy.FillMLMin }) },
	"product_hct":      productHct, "product_free_hb_g_l": productFreeHb, "anticoagulant_removal": anticoagulantRemoval,
	"protein_removal": func(j *judged) found {
		return removal(j, func(y *sim.Cycle) (float64, float64) { return y.FeedProteinG, y.ProteinG })
	},
	"potassium_removal": func(j *judged) found {
		return removal(j, func(y *sim.Cycle) (float64, float64) { return y.FeedPotassium, y.Potassium })
	},
	"free_hb_removal": func(j *judged) found {
		return removal(j, func(y *sim.Cycle) (float64, float64) { return y.FeedFreeHbG, y.FreeHbG })
	},
	"residual_heparin_iu_ml": residualHeparin, "residual_citrate_mmol_l": residualCitrate, "residual_potassium_mmol_l": residualPotassium, "residual_protein_g_l": residualProtein,
	"residual_anticoagulant_share": residualAnticoagulant, "misread_stops_by_hand_share": misreadStops, "red_cells_wasted_share": cellsWasted,
	"protected_blood_share": protectedBlood, "protected_after_protamine_share": protectedAfterProtamine, "heparin_after_protamine_iu": heparinAfterProtamine,
	"pump_blood_taken_share": pumpBloodTaken, "circuit_joined_share": circuitJoined, "circuit_partings": circuitPartings,
	"red_cell_recovery": recovery, "recovery_against_steady": recoveryAgainst,

	"lowest_hb_against_steady":   lowestHbAgainst,
	"donor_units_against_steady": donorUnitsAgainst,
	"request_to_bedside_min":     requestToBedside,
	"label_complete_share":       func(j *judged) found { return givenRightly(j, j.s.Conduct.UnlabelledGivenML) },
	"identity_checked_share":     func(j *judged) found { return givenRightly(j, j.s.Conduct.UnidentifiedGivenML) },
	"given_with_filter_share":    func(j *judged) found { return givenRightly(j, j.s.Conduct.UnfilteredGivenML) },
	"given_before_expiry_share":  func(j *judged) found { return givenRightly(j, j.s.Conduct.ExpiredGivenML) },
	"air_expelled_share":         airExpelled, "watched_times": watchedTimes,

	"clotting_told_after_ml": clottingTold, "saline_left_when_sent_for_ml": fluidSentFor, "pump_blocked_s": pumpBlocked, "fed_through_loose_line_ml": fedLoose,
	"given_in_reaction_ml": givenInReaction,

	"questions_answered_share": questionsAnswered, "handover_complete_share": handoverComplete,
	"asked_about_agent": askedAboutAgent, "warned_of_agent": warnedOfAgent,

	"loss_estimate_error": lossError, "tally_error": tallyError, "tally_lines_written": tallyLines,
	"incidents_declared_share": incidentsDeclared,
}

// firstDone is the tick of the first accepted act that fits, -1 for none.
func (j *judged) firstDone(fits func(a *sim.Action) bool) int64 { return j.nextDone(0, fits) }

// nextDone is the tick of the first accepted act from a tick on that fits, -1 for none.
func (j *judged) nextDone(from int64, fits func(a *sim.Action) bool) int64 {
	for i := range j.run.Log {
		o := &j.run.Log[i]
		if o.Kind == sim.Done && o.Tick >= from && fits(&o.Act) {
			return o.Tick
		}
	}
	return -1
}

// at is the trace at a tick.
func (j *judged) at(tick int64) play.Sample {
	if len(j.run.Trace) == 0 {
		return play.Sample{}
	}
	i := min(len(j.run.Trace)-1, max(0, int(tick/sim.TicksPerSecond)))
	return j.run.Trace[i]
}

// cycles are all bowlfuls that were begun.
func (j *judged) cycles() []sim.Cycle { return j.s.Cycles[:j.s.CycleUsed] }

func bad(v float64) bool { return math.IsNaN(v) || math.IsInf(v, 0) }
