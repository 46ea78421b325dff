package debrief

import (
	"slices"

	"rouleau/sim"
)

// Decisions in collecting: what is looked for, and what its finders share.

var collecting = []aspect{
	{name: "drip", measures: slices.Concat([]string{"anticoagulant_in_range_share", "anticoagulant_per_100ml", "blood_without_drip_ml", "clot_ml", "protected_blood_share",
		"protected_after_protamine_share", "heparin_after_protamine_iu", "residual_anticoagulant_share", "incidents_declared_share"}, ofCells), quiet: true, find: findDrip},
	{name: "drip_flow", measures: slices.Concat([]string{"anticoagulant_in_range_share", "anticoagulant_per_100ml", "blood_without_drip_ml", "clot_ml", "protected_blood_share",
		"protected_after_protamine_share"}, ofCells), find: findDripFlow},
	{name: "vacuum", measures: slices.Concat([]string{"vacuum_in_range_share", "suction_lysis_share", "product_free_hb_g_l"}, ofCells), find: findVacuum},
	{name: "ready", measures: slices.Concat([]string{"vacuum_in_range_share", "anticoagulant_in_range_share", "anticoagulant_per_100ml"}, ofCells), quiet: true, find: findReady},
	{name: "route", measures: slices.Concat([]string{"agent_collected_ml", "clot_ml", "asked_about_agent", "incidents_declared_share"}, ofCells), critical: []string{"contaminated_given", "concealed"}, find: findRoute},
	{name: "second_sucker", measures: []string{"second_sucker_asked", "agent_collected_ml"}, critical: []string{"contaminated_given", "concealed"}, find: findSecondSucker},
	{name: "pool", measures: []string{"suction_lysis_share", "product_free_hb_g_l"}, find: findPool},
	{name: "swabs", measures: slices.Concat([]string{"swabs_rinsed"}, ofCells), find: findSwabs},
	{name: "pump_blood", measures: slices.Concat([]string{"pump_blood_taken_share"}, ofCells), find: findPumpBlood},
	{name: "circuit", measures: []string{"circuit_joined_share"}, critical: []string{"circuit_parted"}, find: findCircuit},
}

// stretch is a time in which something was not as it should be.
type stretch struct {
	from, to int64
	kind     int // of what was the matter, 0 for nothing
	blood    float64
}

// stretches are the times in which the same was the matter, second after second; short gaps are bridged, and a stretch in which
// less blood was collected than leastML is left out.
func (f *finding) stretches(gap int64, leastML float64, matter func(i int) int) (all []stretch) {
	tr := f.rec.Run.Trace
	for i := range tr {
		k := matter(i)
		if k == 0 {
			continue
		}
		if n := len(all) - 1; n >= 0 && all[n].kind == k && tr[i].Tick-all[n].to <= gap {
			all[n].to = tr[i].Tick + sim.TicksPerSecond
		} else {
			all = append(all, stretch{from: tr[i].Tick, to: tr[i].Tick + sim.TicksPerSecond, kind: k})
		}
	}
	for i := range all {
		all[i].blood = f.rec.at(all[i].to).SuckedBloodML - f.rec.at(all[i].from).SuckedBloodML
	}
	return slices.DeleteFunc(all, func(s stretch) bool { return s.blood < leastML })
}

// within are the person's acts of a kind in a stretch.
func (f *finding) within(s *stretch, fits func(a *sim.Action) bool) (all []int) {
	for i := range f.acts {
		if a := &f.acts[i]; a.Tick >= s.from && a.Tick < s.to && fits(a) {
			all = append(all, i)
		}
	}
	return all
}

// mostBlood keeps the stretches with the most blood, in the order of time.
func mostBlood(all []stretch, most int) []stretch {
	for len(all) > most {
		least := 0
		for i := range all {
			if all[i].blood < all[least].blood {
				least = i
			}
		}
		all = slices.Delete(all, least, least+1)
	}
	return all
}
