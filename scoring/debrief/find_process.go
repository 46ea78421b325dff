package debrief

import (
	"rouleau/sim"
)

// Decisions in processing.

var processing = []aspect{
	{name: "wash_volume", measures: []string{"wash_bowl_volumes", "anticoagulant_removal", "protein_removal", "potassium_removal", "free_hb_removal", "residual_heparin_iu_ml",
		"residual_citrate_mmol_l", "residual_potassium_mmol_l", "residual_protein_g_l", "residual_anticoagulant_share", "product_free_hb_g_l"},
		critical: []string{"unwashed_given", "haemolysed_given"}, find: findWashVolume},
}

const rightWashBowls = 5.0 // bowl volumes, as steady washes; common practice

// findWashVolume looks for each setting of the wash volume that washed bowls with too little.
func findWashVolume(f *finding) []Decision {
	bowl := f.rec.Run.State.Bowl.Shape().VolumeML
	if bowl <= 0 {
		return nil
	}
	want := rightWashBowls * bowl
	if cr := f.criterion("wash_bowl_volumes"); cr != nil && cr.Least != nil {
		want = max(want, *cr.Least*bowl)
	}
	var all []Decision
	for _, i := range f.every(does(sim.SetWashVolume)) {
		if a := f.acts[i]; a.Value < want-1 {
			right := a
			right.Value = want
			all = append(all, Decision{Fault: Wrong, Title: title("wash_volume", Wrong, want, a.Value), Tick: a.Tick, Done: a.Tick, Edit: Edit{Swap: []Swap{{i, right}}}})
		}
	}
	return all
}
