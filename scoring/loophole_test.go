package scoring

import (
	"testing"

	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// Ways to points, or past what points never make up for, that must not work.

func playSpoiled(t *testing.T, seed uint64, o *spoiled, change func(c *sim.Case)) (*play.Run, Grade) {
	t.Helper()
	sc := spine(t)
	run := play.New(sc.Case(seed, false), seed)
	sheet := operators.SheetOf(sc, &run.Case)
	if change != nil {
		change(&run.Case)
		run.State = sim.Start(&run.Case, seed)
	}
	o.inner = operators.NewSteady(sheet)
	run.ToEnd(o)
	return run, Judge(sc, run, PlayYardstick(sc, seed, false))
}

func criterion(t *testing.T, g Grade, measure string) CriterionGrade {
	t.Helper()
	for _, c := range g.Criteria {
		if c.Measure == measure {
			return c
		}
	}
	t.Fatalf("the case has no criterion %s", measure)
	return CriterionGrade{}
}

func hasCritical(g Grade, name string) bool {
	for _, c := range g.Critical {
		if c.Name == name && !c.Mended {
			return true
		}
	}
	return false
}

func TestDeclaringEverythingAtTheStartExcusesNothing(t *testing.T) {
	o := squeeze(4, false)()
	squeezes := o.extra
	o.extra = func(v *sim.Seen, do func(sim.Verb, sim.Part, float64) sim.Reason) {
		if v.Tick == 0 {
			for i := sim.IncidentBreach; i <= sim.IncidentProduct; i++ {
				do(sim.Declare, sim.NoPart, float64(i))
			}
		}
		squeezes(v, do)
	}
	_, g := playSpoiled(t, 1, o, nil)
	if g.Passed || !hasCritical(g, "pressure_on_bag") {
		t.Errorf("passed %v with %+v", g.Passed, g.Critical)
	}
	if c := criterion(t, g, "incidents_declared_share"); c.Points == c.Of {
		t.Error("crying wolf ten times earned full points")
	}
}

func TestForbiddenHeparinIsJudgedByThePackNotTheWord(t *testing.T) {
	forbid := func(c *sim.Case) { c.Patient.HeparinForbidden = true }
	saysCitrate := &spoiled{acts: func(v *sim.Seen, a sim.Action) (sim.Action, bool) {
		if a.Do == sim.ChooseAnticoagulant {
			a.Value = float64(sim.CitrateSolution)
		}
		return a, true
	}}
	if _, g := playSpoiled(t, 1, saysCitrate, forbid); !hasCritical(g, "heparin_forbidden") {
		t.Error("heparin ran in under the name of citrate and was not found")
	}
	saysHeparin := &spoiled{acts: func(v *sim.Seen, a sim.Action) (sim.Action, bool) { return a, true }}
	run, g := playSpoiled(t, 1, saysHeparin, func(c *sim.Case) {
		forbid(c)
		c.Packs[0].Solution = sim.CitrateSolution // what says heparin is citrate
	})
	if run.State.Drip.DrippedML < 100 || hasCritical(g, "heparin_forbidden") {
		t.Errorf("%.0f mL of citrate ran in and were taken for heparin: %+v", run.State.Drip.DrippedML, g.Critical)
	}
}

func TestNeverDivertingIsFoundOnEverySeed(t *testing.T) {
	for seed := uint64(1); seed <= 5; seed++ {
		run, g := playSpoiled(t, seed, &spoiled{sees: func(v *sim.Seen) { v.AgentSaid = false }}, nil)
		if !hasCritical(g, "contaminated_given") || g.Passed {
			t.Errorf("seed %d: passed %v, %+v", seed, g.Passed, g.Critical)
		}
		if c := criterion(t, g, "asked_about_agent"); c.Points > 0 {
			t.Errorf("seed %d: %.1f points for asking about what was never diverted", seed, c.Points)
		}
		if clot := criterion(t, g, "clot_ml"); clot.Value < 0.5 {
			t.Errorf("seed %d: %.0f mL collected with a haemostat in it left %.2f mL of clot", seed, run.State.Conduct.DivertMissedML, clot.Value)
		}
	}
}

func TestStoppingTheAgentBeforehandStopsNothing(t *testing.T) {
	o := &spoiled{extra: func(v *sim.Seen, do func(sim.Verb, sim.Part, float64) sim.Reason) {
		if v.Tick == 0 {
			do(sim.Ask, sim.NoPart, float64(sim.StopAgent))
		}
	}, sees: func(v *sim.Seen) { v.AgentSaid = false }}
	run, _ := playSpoiled(t, 1, o, nil)
	if run.State.Conduct.DivertMissedML < 50 {
		t.Errorf("only %.0f mL were collected with the agent: it never came", run.State.Conduct.DivertMissedML)
	}
}

func TestABagThatHangsUnopenedAnswersNoRequest(t *testing.T) {
	o := &spoiled{acts: func(v *sim.Seen, a sim.Action) (sim.Action, bool) { return a, a.Do != sim.GiveRate || a.Value == 0 }}
	_, g := playSpoiled(t, 1, o, nil)
	if c := criterion(t, g, "request_to_bedside_min"); c.Points > 0 {
		t.Errorf("%.1f points after %.1f min for blood that never ran", c.Points, c.Value)
	}
}

func TestBloodThatWasReactedToIsReactedToAgain(t *testing.T) {
	o := &spoiled{acts: func(v *sim.Seen, a sim.Action) (sim.Action, bool) { return a, a.Do != sim.DiscardIt }}
	resumed := false
	o.extra = func(v *sim.Seen, do func(sim.Verb, sim.Part, float64) sim.Reason) {
		if v.Giving.Bag >= 0 && v.Giving.RateMLMin == 0 && !v.Reacting && v.Giving.GivenML > 30 && !resumed {
			resumed = do(sim.GiveRate, sim.NoPart, 100) == ""
		}
	}
	run, _ := playSpoiled(t, 1, o, reaction)
	alarms := 0
	for _, l := range run.Log {
		if l.Kind == sim.Alarmed && l.Key == sim.AlarmReaction.String() {
			alarms++
		}
	}
	if !resumed || alarms < 2 || run.State.Conduct.ReactionGivenML == 0 {
		t.Errorf("resumed %v: the reaction came %d times, %.1f mL were counted", resumed, alarms, run.State.Conduct.ReactionGivenML)
	}
}

func TestRatesAreJudgedAtTheirHighest(t *testing.T) {
	o := &spoiled{extra: func(v *sim.Seen, do func(sim.Verb, sim.Part, float64) sim.Reason) {
		if v.Pump.Mode == sim.PumpWash && v.Pump.WashedML > 100 {
			do(sim.SetWashRate, sim.NoPart, 900)
		}
	}}
	_, g := playSpoiled(t, 1, o, nil)
	if c := criterion(t, g, "wash_rate_ml_min"); c.Value != 900 || c.Points == c.Of {
		t.Errorf("judged %.0f mL/min, %.1f points", c.Value, c.Points)
	}
}

func TestAnEarlyZeroIsNoEstimate(t *testing.T) {
	o := &spoiled{acts: func(v *sim.Seen, a sim.Action) (sim.Action, bool) { return a, a.Do != sim.EstimateLoss }}
	o.extra = func(v *sim.Seen, do func(sim.Verb, sim.Part, float64) sim.Reason) {
		if v.Tick == 0 {
			do(sim.EstimateLoss, sim.NoPart, 0)
		}
	}
	_, g := playSpoiled(t, 1, o, nil)
	if c := criterion(t, g, "loss_estimate_error"); c.Points > 0 {
		t.Errorf("%.1f points for saying nothing was lost before anything was", c.Points)
	}
}

func TestALateNoDoesNotUndoTheCollecting(t *testing.T) {
	refused := sim.Reason("")
	o := &spoiled{extra: func(v *sim.Seen, do func(sim.Verb, sim.Part, float64) sim.Reason) {
		if v.Tick == 30*minute {
			refused = do(sim.Decide, sim.NoPart, float64(sim.DoNotSalvage))
		}
	}}
	playSpoiled(t, 1, o, nil)
	if refused == "" {
		t.Error("deciding against salvage was accepted with the set open")
	}
}
