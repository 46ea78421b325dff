package scoring

// The lessons of the cases of brisk bleeding, part-filled bowls, a child and a birth, each left out by itself.

import (
	"testing"

	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// asksNot plays as somebody else does, without some requests.
type asksNot struct {
	play.Actor
	requests []sim.Request
}

func (o asksNot) Act(v *sim.Seen, do func(sim.Action) sim.Reason) {
	o.Actor.Act(v, func(a sim.Action) sim.Reason {
		for _, r := range o.requests {
			if a.Do == sim.Ask && sim.Request(a.Value) == r {
				return "left_out"
			}
		}
		return do(a)
	})
}

func TestTheLessonsOfMoreCasesAreGraded(t *testing.T) {
	habit := func(line string) func(operators.Sheet) play.Actor {
		return func(s operators.Sheet) play.Actor { return withHabit(t, line, s) }
	}
	for _, l := range []struct {
		scenario string
		seed     uint64
		but      func(s operators.Sheet) play.Actor
		loses    map[string]float64 // criteria with the share of their points that may be left
	}{
		{"sudden-brisk-bleeding", 2, habit("fixed_drops_min: 15"), map[string]float64{"anticoagulant_in_range_share": 0, "clot_ml": 0.7}},
		{"sudden-brisk-bleeding", 2, habit("fill_from_ml: 2600"), map[string]float64{"reservoir_peak_share": 0.5, "request_to_bedside_min": 1}},
		{"hip-revision-thin-feed", 5, func(s operators.Sheet) play.Actor {
			return leavesOut{operators.NewSteady(s), sim.TopUp}
		}, map[string]float64{"thinnest_product_hct": 0.9}},
		{"hip-revision-thin-feed", 1, habit("fills_to: 0.5\n  automatic_stop: false"),
			map[string]float64{"part_bowls_justified_share": 0, "fill_stop_fraction": 0}},
		{"hip-revision-thin-feed", 1, habit("diverts: false"), map[string]float64{"agent_collected_ml": 0, "asked_about_agent": 0}},
		{"child-of-14-kg", 1, habit("reads_sheet: false"), map[string]float64{"bowl_right": 0, "give_rate_ml_min": 0}},
		{"caesarean-rhd-negative", 1, func(s operators.Sheet) play.Actor {
			return asksNot{operators.NewSteady(s), []sim.Request{sim.GiveAntiD, sim.TestFetalBleed}}
		}, map[string]float64{"anti_d_asked": 0, "fetal_test_asked": 0}},
		{"caesarean-rhd-negative", 1, func(s operators.Sheet) play.Actor {
			return asksNot{withHabit(t, "diverts: false", s), []sim.Request{sim.SecondSucker}}
		}, map[string]float64{"second_sucker_asked": 0, "agent_collected_ml": 0}},
	} {
		losesOnly(t, l.scenario, l.seed, l.but, l.loses, "")
	}
}
