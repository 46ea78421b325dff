package scoring

import (
	"testing"

	"rouleau/scenarios"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// keepsFrom plays as another operator does and leaves out what a person might forget.
type keepsFrom struct {
	inner interface {
		Act(*sim.Seen, func(sim.Action) sim.Reason)
	}
	leavesOut func(a *sim.Action) bool
}

func (k keepsFrom) Act(v *sim.Seen, do func(sim.Action) sim.Reason) {
	k.inner.Act(v, func(a sim.Action) sim.Reason {
		if k.leavesOut(&a) {
			return ""
		}
		return do(a)
	})
}

func playLeaving(t *testing.T, name string, leavesOut func(a *sim.Action) bool) Grade {
	t.Helper()
	sc, err := scenarios.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	run := play.New(sc.Case(1, false), 1)
	run.ToEnd(keepsFrom{operators.NewSteady(operators.SheetOf(sc, &run.Case)), leavesOut})
	return Judge(sc, run, PlayYardstick(sc, 1, false))
}

func asks(r sim.Request) func(a *sim.Action) bool {
	return func(a *sim.Action) bool { return a.Do == sim.Ask && sim.Request(a.Value) == r }
}

func nothing(*sim.Action) bool { return false }

func TestAWholeNoPasses(t *testing.T) {
	for _, name := range []string{"salvage-declined", "infection-in-the-field"} {
		if g := playLeaving(t, name, nothing); !g.Passed || g.Points < 99.9 {
			t.Errorf("%s: %.1f points, %v", name, g.Points, g.Reasons)
		}
	}
}

func TestWhatIsLeftOutOfANoCostsItsPoints(t *testing.T) {
	for _, c := range []struct {
		name, measure string
		leavesOut     func(a *sim.Action) bool
	}{
		{"salvage-declined", "reason_told", asks(sim.PatientDeclines)},
		{"salvage-declined", "decision_noted", does(sim.Note)},
		{"infection-in-the-field", "reason_told", asks(sim.InfectedField)},
		{"infection-in-the-field", "decision_noted", does(sim.Note)},
		{"bench-left-by-a-colleague", "wrong_pack_told", does(sim.Declare)},
		{"heparin-forbidden-citrate-at-hand", "reason_told", asks(sim.NoHeparin)},
	} {
		if cg := criterion(t, playLeaving(t, c.name, c.leavesOut), c.measure); cg.Points != 0 {
			t.Errorf("%s: %s gives %g of %g points to one who left it out", c.name, c.measure, cg.Points, cg.Of)
		}
	}
}

func TestAShortNoteIsNone(t *testing.T) {
	sc, err := scenarios.Open("salvage-declined")
	if err != nil {
		t.Fatal(err)
	}
	for text, want := range map[string]float64{"no": 0, "He declines, told Dr.": 1} {
		run := play.New(sc.Case(1, false), 1)
		run.Do(sim.Action{Do: sim.Decide, Value: float64(sim.DoNotSalvage)})
		run.Do(sim.Action{Do: sim.Note, Text: text})
		if f := decisionNoted(&judged{sc: sc, run: run, c: &run.Case, s: &run.State}); f.value != want {
			t.Errorf("a note of %q counts %g", text, f.value)
		}
	}
}

func TestFaultsOfTheBenchMustBeMendedBeforeTheyDoHarm(t *testing.T) {
	const name = "bench-left-by-a-colleague"
	for _, c := range []struct {
		what      string
		leavesOut func(a *sim.Action) bool
		most      float64
	}{
		{"all mended", nothing, 1},
		{"clamp left open", func(a *sim.Action) bool { return a.Do == sim.Clamp && a.On == sim.OutletClamp && a.Value == 0 }, 0.67},
		{"vacuum not tested", does(sim.TestVacuum), 0.67},
		{"water left hanging", on(sim.Unhang, sim.WashHookA), 0.67},
	} {
		cg := criterion(t, playLeaving(t, name, c.leavesOut), "bench_faults_mended_share")
		if cg.Value > c.most || c.most == 1 && cg.Value < 1 {
			t.Errorf("%s: %.2f", c.what, cg.Value)
		}
	}
}

func TestDonorBloodIsNoAnswerToARequestForWashedBlood(t *testing.T) {
	sc := spine(t)
	run := play.New(sc.Case(1, false), 1)
	run.ToEnd(operators.Idle{})
	if cg := criterion(t, Judge(sc, run, PlayYardstick(sc, 1, false)), "request_to_bedside_min"); cg.Points > 0 {
		t.Errorf("one who does nothing earns %g points for %g min", cg.Points, cg.Value)
	}
}
