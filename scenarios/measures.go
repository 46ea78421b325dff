// This file lists what a criterion may measure. What is listed here is defined here; scoring computes it.

package scenarios

import "slices"

// Measure is something about a run that can be judged.
type Measure struct {
	Name       string  // as criteria write it
	Unit       string  // for people; share is 0 to 1
	Least      float64 // that is possible
	Most       float64
	MoreBetter int // 1 more is better, -1 less is better, 0 a middle is best
	Meaning    string
}

const (
	// YesNo is the unit of a measure that is 0 for no and 1 for yes.
	YesNo = "yes or no"
	// Share is the unit of a share, 0 to 1.
	Share  = "share"
	share  = Share
	yes    = YesNo
	ml     = "mL"
	mlMin  = "mL/min"
	muchML = 100000.0
)

// Measures are all measures in the order of the work.
var Measures = [...]Measure{
	// deciding and preparing
	{"decision_right", yes, 0, 1, 1, "the decision was the right one for this case sheet"},
	{"decided_in_time", yes, 0, 1, 1, "the decision stood before the first blood was shed"},
	{"asked_together", yes, 0, 1, 1, "asked surgeon and anaesthetist whether to collect, before anything was opened"},
	{"sets_opened", "sets", 0, 2, -1, "sterile sets that were opened"},
	{"bench_faults_mended_share", share, 0, 1, 1, "wrong packs, open clamps, loose lines and missing vacuum, found at the start, that were put right before they did harm"},
	{"anticoagulant_right", yes, 0, 1, 1, "the anticoagulant that was used was one of the right ones"},
	{"bowl_right", yes, 0, 1, 1, "the bowl that was opened was one of the right ones"},
	{"bench_checked_share", share, 0, 1, 1, "hooks and lines that were looked at after they were hung or connected and before they were first used"},
	{"fluids_right_share", share, 0, 1, 1, "packs that were used which were in date and right for their hook"},
	{"vacuum_tested", yes, 0, 1, 1, "the vacuum was tested before the first suction to the reservoir"},
	{"primed_before_blood_ml", ml, 0, 1000, 1, "anticoagulant in the reservoir before the first blood"},
	{"processing_set_opened_at_ml", ml, 0, muchML, 0, "volume in the reservoir when the processing set was opened"},
	{"spilled_ml", ml, 0, muchML, -1, "liquid on the floor, waste that missed its bag included"},
	{"breaches_mended_share", share, 0, 1, 1, "breaches of sterility after which the set was replaced before it was used"},
	// collecting
	{"anticoagulant_in_range_share", share, 0, 1, 1, "share of the collected blood that met at least 12 mL of anticoagulant in 100 mL, prime included, and at most 25 unless the drip stood near one drop a second"},
	{"anticoagulant_per_100ml", "mL/100 mL", 0, 1000, 0, "anticoagulant in all for each 100 mL of blood collected"},
	{"blood_without_drip_ml", ml, 0, muchML, -1, "blood collected in seconds in which no anticoagulant ran, prime included"},
	{"reservoir_peak_share", share, 0, 1, -1, "how full the reservoir was at its fullest"},
	{"vacuum_in_range_share", share, 0, 1, 1, "share of the suction time to the reservoir with a vacuum of 80 to 150 mmHg"},
	{"agent_collected_ml", ml, 0, muchML, -1, "liquid collected while something that must be diverted was in the wound"},
	{"clot_ml", ml, 0, muchML, -1, "most clot in filter and reservoir at any time before taking down"},
	{"worst_clear_layer_share", share, 0, 1, -1, "clear layer as a share of the reservoir's volume at the start of a filling, the worst of all"},
	{"swabs_rinsed", "times", 0, 1000, 1, "how often swabs were rinsed"},
	{"protected_blood_share", share, 0, 1, 1, "collected blood that met enough anticoagulant in the filter not to clot, be it heparin or citrate, and whatever calcium the irrigation brought"},
	{"protected_after_protamine_share", share, 0, 1, 1, "the same, of the blood collected after protamine"},
	{"pump_blood_taken_share", share, 0, 1, 1, "blood left in a pump's circuit that was taken over to be washed"},
	{"circuit_joined_share", share, 0, 1, 1, "blood collected while bowl, bag and patient were one circuit"},
	{"circuit_partings", "times", 0, 1000, -1, "how often a joined circuit came apart"},
	{"suction_lysis_share", share, 0, 1, -1, "share of the collected red cells that broke on the way"},
	// processing
	{"fill_stop_fraction", share, 0, 1, 0, "how full of red cells the bowl was at its fullest, the bowl furthest from the interface among those meant to be full"},
	{"misread_stops_by_hand_share", share, 0, 1, 1, "fillings that were stopped by hand, of those in which the detector was off by more than 0.05"},
	{"part_bowls_justified_share", share, 0, 1, 1, "part-filled bowls for which there was not enough blood for a full one"},
	{"thinnest_product_hct", share, 0, 1, 1, "haematocrit of the thinnest bowl that went into a bag, part bowls included"},
	{"wash_bowl_volumes", "bowl volumes", 0, 1000, 1, "wash for each bowl, the least of all"},
	{"wash_rate_ml_min", mlMin, 0, 2000, -1, "rate of washing, the highest of all"},
	{"fill_rate_ml_min", mlMin, 0, 2000, -1, "rate of filling, the highest of all"},
	{"product_hct", share, 0, 1, 0, "haematocrit of the product, justified part bowls left out"},
	{"product_free_hb_g_l", "g/L", 0, 340, -1, "free haemoglobin of the product's supernatant"},
	{"anticoagulant_removal", share, 0, 1, 1, "share of the anticoagulant, heparin or citrate, that processing removed"},
	{"protein_removal", share, 0, 1, 1, "share of the plasma protein that processing removed"},
	{"potassium_removal", share, 0, 1, 1, "share of the potassium outside the cells that processing removed"},
	{"free_hb_removal", share, 0, 1, 1, "share of the free haemoglobin that processing removed"},
	{"residual_heparin_iu_ml", "IU/mL", 0, 1000, -1, "heparin left in the product"},
	{"residual_citrate_mmol_l", "mmol/L", 0, 200, -1, "citrate left in the product"},
	{"residual_anticoagulant_share", share, 0, 100, -1, "anticoagulant left in the product against its strength in the reservoir, 4.5 IU/mL of heparin or 17 mmol/L of citrate, the stronger of the two"},
	{"residual_potassium_mmol_l", "mmol/L", 0, 100, -1, "potassium left in the product's supernatant"},
	{"residual_protein_g_l", "g/L", 0, 200, -1, "protein left in the product's supernatant"},
	{"pump_blocked_s", "s", 0, muchML, -1, "time in which the pump turned and nothing flowed, against a full bag, a closed clamp or clot"},
	{"fed_through_loose_line_ml", ml, 0, muchML, -1, "fed to the bowl through a loose outlet line, which draws air"},
	{"red_cells_wasted_share", share, 0, 1, -1, "collected red cells that went to waste, onto the floor or away with what was thrown out"},
	{"red_cell_recovery", share, 0, 1, 1, "red cells given back for those shed, or left in a pump's circuit"},
	{"recovery_against_steady", "ratio", 0, 100, 1, "red cells given back, against what the operator steady gives back on the same seed"},
	// returning
	{"lowest_hb_against_steady", "g/dL", -25, 25, 1, "lowest haemoglobin of the patient, less that with the operator steady on the same seed"},
	{"donor_units_against_steady", "units", -100, 100, -1, "units of donor blood given, less those with the operator steady on the same seed"},
	{"request_to_bedside_min", "min", 0, 1000, -1, "time from the clinician's request until washed blood runs, the longest of all"},
	{"label_complete_share", share, 0, 1, 1, "washed blood given from bags whose label was complete"},
	{"identity_checked_share", share, 0, 1, 1, "washed blood given after two people had checked identity"},
	{"given_with_filter_share", share, 0, 1, 1, "washed blood given through a filter"},
	{"air_expelled_share", share, 0, 1, 1, "bags given with no air in them when they began to run"},
	{"given_before_expiry_share", share, 0, 1, 1, "washed blood given before it expired"},
	{"give_rate_ml_min", mlMin, 0, 300, -1, "rate of giving, the highest of all"},
	{"watched_times", "times", 0, 10000, 1, "how often the patient was looked at while washed blood ran in"},
	{"given_in_reaction_ml", ml, 0, muchML, -1, "washed blood given once the monitor showed a reaction"},
	{"heparin_after_protamine_iu", "IU", 0, 100000, -1, "heparin that washed blood brought the patient after protamine"},
	// communicating
	{"clotting_told_after_ml", ml, 0, muchML, -1, "washed blood that had been given when the anaesthetist was told that clotting is thinned out"},
	{"saline_left_when_sent_for_ml", ml, 0, muchML, 1, "saline in date that was left on the bench when somebody was sent for more"},
	{"questions_answered_share", share, 0, 1, 1, "questions answered in time and rightly"},
	{"reason_told", yes, 0, 1, 1, "told surgeon and anaesthetist what they must know here, before the first blood was shed"},
	{"handover_complete_share", share, 0, 1, 1, "fields said when bags were handed over"},
	{"asked_about_agent", yes, 0, 1, 1, "knew from the surgeon that the field was clear before the suction went back to the reservoir"},
	{"second_sucker_asked", yes, 0, 1, 1, "asked for a second sucker for what must be diverted, before it came"},
	{"anti_d_asked", yes, 0, 1, 1, "asked for anti-D for an RhD-negative mother who had washed blood"},
	{"fetal_test_asked", yes, 0, 1, 1, "asked for a test of the fetomaternal bleed after washed blood had run in"},
	{"warned_of_agent", yes, 0, 1, 1, "asked the team to tell before an agent comes, before it came"},
	// recording
	{"decision_noted", yes, 0, 1, 1, "wrote a note of at least three words about the decision, after it; what it says is for a person to read"},
	{"wrong_pack_told", yes, 0, 1, 1, "declared that a wrong pack hung on the bench before the case, also where it did no harm"},
	{"loss_estimate_error", share, 0, 100, -1, "last estimate of the blood loss, made near the end, off by this share of the truth at that time"},
	{"tally_error", share, 0, 100, -1, "lines of the tally, off by this share of the truth, the mean of all"},
	{"tally_lines_written", "lines", 0, 9, 1, "lines of the tally that were written"},
	{"incidents_declared_share", share, 0, 1, 1, "incidents that were declared, of those that happened and those declared without cause"},
}

// MeasureNamed finds a measure by its name.
func MeasureNamed(name string) (Measure, bool) {
	i := slices.IndexFunc(Measures[:], func(m Measure) bool { return m.Name == name })
	if i < 0 {
		return Measure{}, false
	}
	return Measures[i], true
}

// MeasureNames are the names of all measures.
func MeasureNames() []string {
	names := make([]string, len(Measures))
	for i, m := range Measures {
		names[i] = m.Name
	}
	return names
}
