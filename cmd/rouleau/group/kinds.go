package group

import (
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

// name is a kind in words.
func (k kind) name() string {
	fault := otherwise[k]
	if fault == "" {
		fault = faultKeys[k.fault]
	}
	return words.Say("group.kind", words.Say("group.aspect_"+k.aspect), words.Say(fault))
}
