package debrief

import (
	"slices"

	"rouleau/sim"
)

// Decisions in returning: what is looked for, on what it bears, and how several are put right together.

var returning = []aspect{
	{name: "label", measures: []string{"label_complete_share"}, critical: []string{"unlabelled_given"}, find: findLabels},
	{name: "identity", measures: []string{"identity_checked_share"}, critical: []string{"not_identified"}, find: findIdentity},
	{name: "filter", measures: []string{"given_with_filter_share"}, critical: []string{"clot_given"}, find: findFilters},
	{name: "air_out", measures: []string{"air_expelled_share"}, critical: []string{"air_given"}, find: findAirOut},
	{name: "ran_empty", critical: []string{"air_given"}, find: findRanEmpty},
	{name: "squeezed", critical: []string{"pressure_on_bag", "air_given"}, find: findSqueezed},
	{name: "wrong_pack_given", critical: []string{"anticoagulant_given"}, find: findPackGiven},
	{name: "give_rate", measures: slices.Concat([]string{"give_rate_ml_min"}, ofCells), find: findGiveRate},
	{name: "watching", measures: []string{"watched_times"}, find: findWatching},
	{name: "reaction", measures: []string{"given_in_reaction_ml"}, critical: []string{"through_reaction"}, find: findReaction},
	{name: "given_late", measures: slices.Concat([]string{"request_to_bedside_min", "given_before_expiry_share"}, ofCells), critical: []string{"expired_given"}, find: findGivenLate},
	{name: "never_given", measures: slices.Concat([]string{"label_complete_share", "identity_checked_share", "given_with_filter_share", "air_expelled_share", "watched_times",
		"request_to_bedside_min"}, ofCells), find: findNeverGiven},
	{name: "expired", measures: []string{"given_before_expiry_share"}, critical: []string{"expired_given"}, find: findExpired},
	{name: "unfit_given", critical: []string{"contaminated_given", "unwashed_given", "wrong_wash_given", "haemolysed_given", "clot_given", "breach_used"}, find: findUnfitGiven},
}

// overlap says whether two decisions do the same act of the person otherwise, so that they cannot be put right together.
func overlap(all []Decision) bool {
	seen := map[int]bool{}
	for i := range all {
		for _, s := range all[i].Edit.Swap {
			if seen[s.Own] {
				return true
			}
			seen[s.Own] = true
		}
	}
	return false
}

// withRules puts one decision about all before those about each, with the rules of each in its time.
func withRules(single []Decision, text string) []Decision {
	if len(single) < 2 {
		return single
	}
	var rules []*Rule
	for i := range single {
		if r := single[i].Edit.Rule; r != nil {
			rules = append(rules, r)
		}
	}
	all := some(single, text)
	if len(rules) == 0 {
		return all
	}
	whole := &Rule{From: rules[0].From, Until: rules[0].Until, Act: func(v *sim.Seen, do func(sim.Action) sim.Reason) {
		for _, r := range rules {
			if v.Tick >= r.From && v.Tick < r.Until {
				r.Act(v, do)
			}
		}
	}}
	for _, r := range rules {
		whole.From, whole.Until = min(whole.From, r.From), max(whole.Until, r.Until)
	}
	all[0].Edit.Rule = whole
	return all
}
