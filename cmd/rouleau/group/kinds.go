package group

import (
	"slices"

	"rouleau/assets/words"
	"rouleau/scoring/debrief"
)

// This file calls kinds of decisions what a class would call them.

var faultKeys = [...]string{debrief.LeftOut: "group.fault_left_out", debrief.Late: "group.fault_late", debrief.Wrong: "group.fault_wrong", debrief.Needless: "group.fault_needless"}

// otherwise are the faults that are said in other words with their aspect: late stands for early too, and wrong for several
// of a kind of which some were late and some left out.
var otherwise = map[kind]string{
	{"begun_early", debrief.Late}:     "group.fault_early",
	{"filled_short", debrief.Late}:    "group.fault_early",
	{"wash_broken_off", debrief.Late}: "group.fault_broken_off",
	{"watching", debrief.Late}:        "group.fault_seldom",
	{"swabs", debrief.Late}:           "group.fault_seldom",
	{"filter", debrief.Wrong}:         "group.fault_without",
	{"overfilled", debrief.Needless}:  "group.fault_filled_on",
	{"expired", debrief.Needless}:     "group.fault_after",
	{"identity", debrief.Wrong}:       "group.fault_one_person",
	{"label", debrief.Wrong}:          "group.fault_part",
	{"hand_over", debrief.Wrong}:      "group.fault_part",
	{"bench", debrief.Wrong}:          "group.fault_mixed",
	{"bench_check", debrief.Wrong}:    "group.fault_mixed",
	{"drip", debrief.Wrong}:           "group.fault_mixed",
	{"drip_flow", debrief.Wrong}:      "group.fault_mixed",
	{"declare", debrief.Wrong}:        "group.fault_mixed",
	{"misread", debrief.Wrong}:        "group.fault_detector",
	{"route", debrief.Needless}:       "group.fault_against",
}

// otherAspects stand for kinds of a part of the work that are told together, in place of one aspect; they have no fault.
var otherAspects = [...]string{debrief.Preparing: "other_preparing", debrief.Collecting: "other_collecting", debrief.Processing: "other_processing",
	debrief.Returning: "other_returning", debrief.Telling: "other_telling"}

var otherKeys = [...]string{debrief.Preparing: "group.other_preparing", debrief.Collecting: "group.other_collecting", debrief.Processing: "group.other_processing",
	debrief.Returning: "group.other_returning", debrief.Telling: "group.other_telling"}

// together says whether it stands for several kinds of a part of the work.
func (k kind) together() bool { return slices.Contains(otherAspects[:], k.aspect) }

// name is a kind in words.
func (k kind) name() string {
	if i := slices.Index(otherAspects[:], k.aspect); i >= 0 {
		return words.Say(otherKeys[i])
	}
	fault := otherwise[k]
	if fault == "" {
		fault = faultKeys[k.fault]
	}
	return words.Say("group.kind", words.Say("group.aspect_"+k.aspect), words.Say(fault))
}
