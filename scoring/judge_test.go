package scoring

import (
	"testing"

	"rouleau/scenarios"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
)

func spine(t testing.TB) *scenarios.Scenario {
	t.Helper()
	sc, err := scenarios.Open("steady-oozing-spine")
	if err != nil {
		t.Fatal(err)
	}
	return sc
}

func played(sc *scenarios.Scenario, seed uint64, who func(operators.Sheet) play.Actor) (*play.Run, Grade) {
	run := play.New(sc.Case(seed, false), seed)
	run.ToEnd(who(operators.SheetOf(sc, &run.Case)))
	return run, Judge(sc, run, PlayYardstick(sc, seed, false))
}

func steady(s operators.Sheet) play.Actor { return operators.NewSteady(s) }

func idle(operators.Sheet) play.Actor { return operators.Idle{} }

func TestFiveSeedsOfSteadyPass(t *testing.T) {
	sc := spine(t)
	for seed := uint64(1); seed <= 5; seed++ {
		run, g := played(sc, seed, steady)
		t.Logf("seed %d: %.1f points, passed %v, reasons %v critical %v ended %v", seed, g.Points, g.Passed, g.Reasons, g.Critical, run.State.Ended)
		for _, c := range g.Criteria {
			if c.Points < c.Of {
				t.Logf("   %-30s %.4g %s (%s) %.1f/%.1f %s", c.Measure, c.Value, c.Unit, c.Target, c.Points, c.Of, c.Reason)
			}
		}
		if !g.Passed {
			t.Errorf("seed %d: steady did not pass: %v", seed, g.Reasons)
		}
	}
}

func TestDoingNothingFails(t *testing.T) {
	_, g := played(spine(t), 1, idle)
	if g.Passed {
		t.Fatal("an operator who does nothing passed")
	}
	for _, p := range g.Parts {
		if p.Reached {
			t.Errorf("%s reached its floor with %.1f points", p.Part, p.Points)
		}
	}
	if g.Points > 5 || len(g.Critical) > 0 {
		t.Errorf("%.1f points, critical %v: doing nothing earns nothing and harms nobody directly", g.Points, g.Critical)
	}
}

// What did not happen has no moment.
func TestNothingCollectedWithAnAgentHasNoMoment(t *testing.T) {
	run, g := played(spine(t), 1, steady)
	if run.State.Conduct.DivertMissedML != 0 {
		t.Fatalf("steady collected %.1f mL with an agent", run.State.Conduct.DivertMissedML)
	}
	for _, c := range g.Criteria {
		if c.Measure == "agent_collected_ml" && (c.Tick != -1 || !c.Measured || c.Points != c.Of) {
			t.Errorf("nothing was collected with an agent, and the grade is %+v", c)
		}
	}
}

func TestEveryMeasureIsComputed(t *testing.T) {
	for _, m := range scenarios.Measures {
		if measures[m.Name] == nil {
			t.Errorf("%s is listed for criteria and not computed", m.Name)
		}
	}
	if len(measures) != len(scenarios.Measures) {
		t.Errorf("%d measures are computed, %d are listed", len(measures), len(scenarios.Measures))
	}
}
