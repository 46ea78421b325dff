package scoring

// The lessons of the cases of a very large loss and of trouble, each left out by itself, and what the whole of them is worth.

import (
	"testing"

	"rouleau/scenarios"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// givesOn plays as somebody else does, and stops no return.
type givesOn struct{ play.Actor }

func (o givesOn) Act(v *sim.Seen, do func(sim.Action) sim.Reason) {
	o.Actor.Act(v, func(a sim.Action) sim.Reason {
		if a.Do == sim.GiveRate && a.Value == 0 && v.Reacting {
			return "left_out"
		}
		return do(a)
	})
}

// staysPut plays as somebody else does, and stops no pump while the bowl leaks.
type staysPut struct{ play.Actor }

func (o staysPut) Act(v *sim.Seen, do func(sim.Action) sim.Reason) {
	o.Actor.Act(v, func(a sim.Action) sim.Reason {
		if a.Do == sim.StopAll && v.Alarms[sim.AlarmLeak] {
			return "left_out"
		}
		return do(a)
	})
}

func TestTheLessonsOfLongHoursAndTroubleAreGraded(t *testing.T) {
	habit := func(line string) func(operators.Sheet) play.Actor {
		return func(s operators.Sheet) play.Actor { return withHabit(t, line, s) }
	}
	without := func(r sim.Request) func(operators.Sheet) play.Actor {
		return func(s operators.Sheet) play.Actor { return asksNot{operators.NewSteady(s), []sim.Request{r}} }
	}
	for _, l := range []struct {
		scenario string
		but      func(s operators.Sheet) play.Actor
		loses    map[string]float64 // criteria with the share of their points that may be left
		critical string
	}{
		{"pelvis-loss-over-hours", without(sim.ThinnedClotting), map[string]float64{"clotting_told_after_ml": 0}, ""},
		{"pelvis-loss-over-hours", without(sim.SendForFluid), map[string]float64{"saline_left_when_sent_for_ml": 0, "recovery_against_steady": 0.7}, ""},
		{"pelvis-loss-over-hours", habit("looks_ahead: false"), map[string]float64{"saline_left_when_sent_for_ml": 0}, ""},
		{"pelvis-loss-over-hours", func(s operators.Sheet) play.Actor {
			return leavesOut{operators.NewSteady(s), sim.ChangeWaste}
		}, map[string]float64{"pump_blocked_s": 0, "recovery_against_steady": 0.9}, ""},
		{"pelvis-loss-over-hours", habit("minds_expiry: false"), map[string]float64{"given_before_expiry_share": 0.5}, "expired_given"},
		{"one-trouble-after-another", habit("checks_bench: false"), map[string]float64{"fed_through_loose_line_ml": 0}, ""},
		{"one-trouble-after-another", func(s operators.Sheet) play.Actor { return staysPut{operators.NewSteady(s)} },
			map[string]float64{"spilled_ml": 0}, ""},
		{"one-trouble-after-another", func(s operators.Sheet) play.Actor { return givesOn{operators.NewSteady(s)} },
			map[string]float64{"given_in_reaction_ml": 0}, "through_reaction"},
		{"one-trouble-after-another", habit("declares: false"), map[string]float64{"incidents_declared_share": 0}, "concealed"},
	} {
		losesOnly(t, l.scenario, 1, l.but, l.loses, l.critical)
	}
}

func opened(t *testing.T, name string) *scenarios.Scenario {
	t.Helper()
	sc, err := scenarios.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	return sc
}
