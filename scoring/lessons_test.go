package scoring

// The lesson of a case must be graded: who does all the rest as steady does and leaves out just that loses its points.

import (
	"testing"

	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// leavesOut plays as somebody else does, without one act.
type leavesOut struct {
	play.Actor
	verb sim.Verb
}

func (l leavesOut) Act(v *sim.Seen, do func(sim.Action) sim.Reason) {
	l.Actor.Act(v, func(a sim.Action) sim.Reason {
		if a.Do == l.verb {
			return "left_out"
		}
		return do(a)
	})
}

// withHabit is steady with one habit of its own.
func withHabit(t *testing.T, habit string, s operators.Sheet) play.Actor {
	t.Helper()
	o, faults := operators.Parse("habit.yaml", []byte("format: 1\nname: other\nfailing: One habit differs.\nhabits:\n  "+habit+"\n"))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return o.Play(s)
}

var lessons = []struct {
	scenario string
	but      func(t *testing.T, s operators.Sheet) play.Actor
	loses    map[string]float64 // criteria with the share of their points that may be left
	critical string
}{
	{"detector-misled-by-fat", func(t *testing.T, s operators.Sheet) play.Actor { return withHabit(t, "by_eye: false", s) },
		map[string]float64{"fill_stop_fraction": 0.6, "misread_stops_by_hand_share": 0}, ""},
	{"calcium-in-the-irrigation", func(t *testing.T, s operators.Sheet) play.Actor { return withHabit(t, "fixed_drops_min: 70", s) },
		map[string]float64{"protected_blood_share": 0.3, "clot_ml": 0.7}, ""},
	{"circuit-stays-connected", func(t *testing.T, s operators.Sheet) play.Actor {
		return leavesOut{operators.NewSteady(s), sim.JoinCircuit}
	}, map[string]float64{"circuit_joined_share": 0, "circuit_partings": 0}, "circuit_parted"},
	{"heparin-pump-and-protamine", func(t *testing.T, s operators.Sheet) play.Actor {
		return leavesOut{operators.NewSteady(s), sim.TakePumpBlood}
	}, map[string]float64{"pump_blood_taken_share": 0, "recovery_against_steady": 0.95}, ""},
	{"heparin-pump-and-protamine", func(t *testing.T, s operators.Sheet) play.Actor {
		return withHabit(t, "wash_bowls: 1", s)
	}, map[string]float64{"residual_anticoagulant_share": 0.2, "heparin_after_protamine_iu": 0.3}, ""},
	{"heparin-pump-and-protamine", func(t *testing.T, s operators.Sheet) play.Actor {
		return withHabit(t, "fixed_drops_min: 15", s)
	}, map[string]float64{"protected_after_protamine_share": 0.3}, ""},
}

func TestTheLessonOfACaseIsGraded(t *testing.T) {
	for _, l := range lessons {
		losesOnly(t, l.scenario, 3, func(s operators.Sheet) play.Actor { return l.but(t, s) }, l.loses, l.critical)
	}
}

// losesOnly plays a case as somebody who leaves something out, and wants no more than a share of each named criterion's points
// left, and the critical error where there is one.
func losesOnly(t *testing.T, scenario string, seed uint64, but func(operators.Sheet) play.Actor, loses map[string]float64, critical string) {
	t.Helper()
	sc := opened(t, scenario)
	run := play.New(sc.Case(seed, true), seed)
	run.ToEnd(but(operators.SheetOf(sc, &run.Case)))
	g := Judge(sc, run, PlayYardstick(sc, seed, true))
	seen := 0
	for _, c := range g.Criteria {
		if left, ok := loses[c.Measure]; ok {
			if seen++; c.Points > left*c.Of+1e-9 {
				t.Errorf("%s: %s keeps %.1f of %.1f points at %.3g", scenario, c.Measure, c.Points, c.Of, c.Value)
			}
		}
	}
	if seen != len(loses) {
		t.Errorf("%s: %d of %d criteria are in the case", scenario, seen, len(loses))
	}
	fired := critical == ""
	for _, k := range g.Critical {
		fired = fired || k.Name == critical && !k.Mended
	}
	if !fired {
		t.Errorf("%s: %s did not fire, %v did", scenario, critical, g.Critical)
	}
}

// What is left of the anticoagulant counts whichever was chosen, against the strength of each in the reservoir.
func TestResidualOfEitherAnticoagulant(t *testing.T) {
	j := &judged{s: &sim.State{CycleUsed: 1}}
	cy := &j.s.Cycles[0]
	*cy = sim.Cycle{ProductML: 100, FeedCitrate: 10, CitrateMmol: 0.34}
	if f := residualAnticoagulant(j); f.standing != measured || f.value < 0.199 || f.value > 0.201 { // 3.4 mmol/L of 17
		t.Errorf("citrate: %+v", f)
	}
	cy.FeedHeparinIU, cy.HeparinIU = 900, 135
	if f := residualAnticoagulant(j); f.standing != measured || f.value < 0.299 || f.value > 0.301 { // 1.35 IU/mL of 4.5 is more
		t.Errorf("both: %+v", f)
	}
	*cy = sim.Cycle{ProductML: 100}
	if f := residualAnticoagulant(j); f.standing != missing {
		t.Errorf("collected with neither: %+v", f)
	}
}
