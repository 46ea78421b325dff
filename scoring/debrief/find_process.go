package debrief

import (
	"slices"

	"rouleau/sim"
)

// Decisions in processing: what is looked for, and on what it bears.

var processing = []aspect{
	{name: "mixing", measures: slices.Concat([]string{"worst_clear_layer_share", "product_hct"}, ofCells), find: findMixing},
	{name: "begun_early", measures: slices.Concat(ofFilling, ofCells), find: findBegunEarly},
	{name: "begun_late", measures: slices.Concat([]string{"reservoir_peak_share", "request_to_bedside_min"}, ofCells), find: findBegunLate},
	{name: "stood", measures: slices.Concat([]string{"reservoir_peak_share", "request_to_bedside_min"}, ofCells), find: findStood},
	{name: "overfilled", measures: slices.Concat(ofFilling, []string{"red_cells_wasted_share", "request_to_bedside_min"}, ofCells), find: findOverfilled},
	{name: "filled_short", measures: slices.Concat(ofFilling, ofWashing), find: findFilledShort},
	{name: "misread", measures: slices.Concat([]string{"misread_stops_by_hand_share"}, ofFilling, ofCells), find: findMisread},
	{name: "part_bowl", measures: slices.Concat(ofFilling, ofWashing), find: findPartBowls},
	{name: "topped_up", measures: slices.Concat(ofFilling, ofWashing), find: findNotToppedUp},
	{name: "wash_volume", measures: slices.Concat([]string{"wash_bowl_volumes", "request_to_bedside_min"}, ofWashing, ofCells), critical: unfit, find: findWashVolume},
	{name: "wash_broken_off", measures: slices.Concat([]string{"wash_bowl_volumes"}, ofWashing), critical: unfit, find: findWashBrokenOff},
	{name: "unwashed", measures: slices.Concat([]string{"wash_bowl_volumes"}, ofWashing), critical: unfit, find: findUnwashed},
	{name: "wash_rate", measures: slices.Concat([]string{"wash_rate_ml_min", "product_hct", "request_to_bedside_min"}, ofWashing, ofCells),
		find: findRate("wash_rate", "wash_rate_ml_min", sim.SetWashRate, sim.Wash, func(v *sim.Seen) float64 { return v.Pump.WashMLMin })},
	{name: "fill_rate", measures: slices.Concat([]string{"fill_rate_ml_min", "product_hct", "reservoir_peak_share", "request_to_bedside_min"}, ofCells),
		find: findRate("fill_rate", "fill_rate_ml_min", sim.SetFillRate, sim.Fill, func(v *sim.Seen) float64 { return v.Pump.FillMLMin })},
	{name: "blocked", measures: slices.Concat([]string{"pump_blocked_s", "request_to_bedside_min"}, ofCells), find: findBlocked},
	{name: "wash_ran_out", measures: slices.Concat([]string{"wash_bowl_volumes", "request_to_bedside_min"}, ofWashing, ofCells), critical: unfit, find: findWashRanOut},
	{name: "leak", measures: slices.Concat([]string{"spilled_ml", "red_cells_wasted_share"}, ofFilling, ofCells), find: findLeak},
	{name: "discarded", measures: slices.Concat([]string{"red_cells_wasted_share"}, ofCells), find: findDiscarded},
	{name: "left_over", measures: slices.Concat([]string{"red_cells_wasted_share", "product_hct", "fill_stop_fraction", "wash_bowl_volumes"}, ofCells), find: findLeftOver},
	{name: "never_processed", measures: slices.Concat([]string{"product_hct", "fill_stop_fraction", "wash_bowl_volumes", "label_complete_share"}, ofCells), find: findNeverProcessed},
}

// Measures on which several decisions bear, and what points never make up for when a product was not fit to be given.
var (
	ofFilling = []string{"fill_stop_fraction", "part_bowls_justified_share", "product_hct", "thinnest_product_hct"}
	ofWashing = []string{"anticoagulant_removal", "protein_removal", "potassium_removal", "free_hb_removal", "product_free_hb_g_l", "residual_heparin_iu_ml",
		"residual_citrate_mmol_l", "residual_potassium_mmol_l", "residual_protein_g_l", "residual_anticoagulant_share", "heparin_after_protamine_iu"}
	unfit = []string{"unwashed_given", "haemolysed_given", "contaminated_given"}
)
