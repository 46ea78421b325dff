// What the lessons on anticoagulation, the bowl and washing say happens is what the model does.

package coach_test

import (
	"slices"
	"testing"

	"rouleau/scenarios"
	"rouleau/scoring/coach"
	"rouleau/sim"
)

// upTo plays a lesson to the end of the nth step that says this.
func upTo(t *testing.T, name, says string, nth int, change func(*scenarios.Scenario)) coach.Played {
	t.Helper()
	sc := *open(t, name)
	sc.Guidance = slices.Clone(sc.Guidance)
	if change != nil {
		change(&sc)
	}
	for i := range sc.Guidance {
		if sc.Guidance[i].Do != says {
			continue
		}
		if nth--; nth == 0 {
			sc.Guidance = sc.Guidance[:i+1]
			p := coach.Follow(&sc, 1)
			if !p.Done {
				t.Fatalf("%s stops at step %d: %s", name, len(p.Steps)+1, p.Why)
			}
			return p
		}
	}
	t.Fatalf("%s has no such step: %q", name, says)
	return coach.Played{}
}

// instead changes the value of the first step that asks for an act.
func instead(t *testing.T, do string, value float64) func(*scenarios.Scenario) {
	return func(sc *scenarios.Scenario) {
		i := asking(t, sc, do)
		sc.Guidance[i].Until.Act = &scenarios.UntilAct{Do: do, AtLeast: &value, AtMost: &value}
	}
}

// "Nothing else has gone wrong: only the drip stood still." Clot shows within minutes, and does not where the drip ran on.
func TestClotComesWhileTheDripClampIsClosed(t *testing.T) {
	const wait = "Wait until clot is seen. It takes some minutes of the case."
	closed := upTo(t, "lesson-anticoagulation", wait, 1, nil)
	n := len(closed.Steps)
	minutes := (closed.Steps[n-1].AtS - closed.Steps[n-2].AtS) / 60
	if minutes < 2 || minutes > 8 {
		t.Errorf("clot is seen %.1f minutes after the clamp was closed", minutes)
	}
	s := &closed.Run.State
	if f, r := s.Filter.Clot.VolumeML(), s.Reservoir.Clot.VolumeML(); f < 2 || r > 0.1 {
		t.Errorf("%.2f mL of clot on the filter, %.2f mL in the reservoir: the lesson says all of it is on the filter", f, r)
	}
	// the same minutes with the clamp left open
	ran := upTo(t, "lesson-anticoagulation", "Wait until it is back at 12 mL per 100 mL.", 1, nil)
	for ran.Run.State.Tick < s.Tick {
		ran.Run.Step()
	}
	if f := ran.Run.State.Filter.Clot.VolumeML(); f > 0.1 {
		t.Errorf("with the drip running %.2f mL of clot form as well", f)
	}
}

// "The filter holds 60 mL. At 100 mL/min blood is through it in half a minute. At 35 it stays longer": fast flow clots less.
func TestSlowBloodClotsInTheFilter(t *testing.T) {
	const wait = "Wait until clot is seen. It takes some minutes of the case."
	brisk := upTo(t, "lesson-anticoagulation", "Now the experiment: close the drip clamp.", 1, func(sc *scenarios.Scenario) {
		sc.Phases = slices.Clone(sc.Phases)
		sc.Phases[3].BleedingMLMin = sc.Phases[2].BleedingMLMin // it goes on as it was
	})
	slow := upTo(t, "lesson-anticoagulation", wait, 1, nil)
	for brisk.Run.State.Tick < slow.Run.State.Tick {
		brisk.Run.Step()
	}
	if b, s := brisk.Run.State.Filter.Clot.VolumeML(), slow.Run.State.Filter.Clot.VolumeML(); b > 0.5*s {
		t.Errorf("%.2f mL of clot in brisk bleeding, %.2f mL in slow", b, s)
	}
}

// "It never was full: it was loose." "Slower took longer and got much more into the same bowl."
func TestAFastFilledBowlIsLoose(t *testing.T) {
	const full = "Wait for the interface to reach the detector, at 0.93."
	fast := upTo(t, "lesson-the-bowl", full, 1, nil)
	slow := upTo(t, "lesson-the-bowl", full, 1, func(sc *scenarios.Scenario) {
		instead(t, "set_fill_rate", 175)(sc)
		sc.Guidance = slices.DeleteFunc(sc.Guidance, func(s scenarios.Step) bool { // nothing goes over, so nothing red is to be waited for
			return s.Until.Reads != nil && s.Until.Reads.What == "effluent_red"
		})
	})
	f, s := fast.Run.State.Bowl.CellsML, slow.Run.State.Bowl.CellsML
	if s < 1.3*f {
		t.Errorf("full at 0.93, the bowl holds %.0f mL of cells filled fast and %.0f mL filled slowly", f, s)
	}
	if lost := fast.Run.State.Waste.Bag.CellsML; lost < 1 || slow.Run.State.Waste.Bag.CellsML > 0.2 {
		t.Errorf("%.1f mL of cells in the waste filled fast, %.1f mL slowly", lost, slow.Run.State.Waste.Bag.CellsML)
	}
}

// "At 175 mL/min a quarter of it would go over": topping up with thick cells.
func TestToppingUpFastLosesCells(t *testing.T) {
	lost := func(rate float64) float64 {
		const until = "Wait for the interface, at 0.93."
		p := upTo(t, "lesson-the-bowl", until, 2, func(sc *scenarios.Scenario) {
			for i := range sc.Guidance {
				if a := sc.Guidance[i].Until.Act; a != nil && a.Do == "set_fill_rate" && *a.AtMost < 100 {
					sc.Guidance[i].Until.Act = &scenarios.UntilAct{Do: a.Do, AtLeast: &rate, AtMost: &rate}
				}
			}
		})
		before := upTo(t, "lesson-the-bowl", "Top up from the product bag.", 1, nil)
		bag := before.Run.State.Bags[0].Fluid.CellsML - p.Run.State.Bags[0].Fluid.CellsML
		return (p.Run.State.Waste.Bag.CellsML - before.Run.State.Waste.Bag.CellsML) / bag
	}
	if slow, fast := lost(60), lost(175); slow > 0.02 || fast < 0.2 || fast > 0.35 {
		t.Errorf("%.3f of the cells from the bag go over at 60 mL/min, %.3f at 175", slow, fast)
	}
}

// "About a third is still there, in a bowl that looked clean." "The rest of the cells is in the waste bag."
func TestOneBowlVolumeLeavesAThird(t *testing.T) {
	p := upTo(t, "lesson-washing", "Wait for the laboratory.", 3, nil)
	lab := p.Run.State.Lab.Samples
	for _, x := range []struct {
		of            string
		was, one, of5 float64
	}{{"heparin", lab[0].HeparinIUPerML, lab[1].HeparinIUPerML, lab[2].HeparinIUPerML}, {"protein", lab[0].ProteinGL, lab[1].ProteinGL, lab[2].ProteinGL}} {
		if left := x.one / x.was; left < 0.25 || left > 0.42 {
			t.Errorf("%s: one bowl volume leaves %.2f", x.of, left)
		}
		if left := x.of5 / x.was; left < 0.02 || left > 0.12 {
			t.Errorf("%s: five bowl volumes leave %.2f", x.of, left)
		}
	}
	fast := upTo(t, "lesson-washing", "Watch the line to the waste.", 1, nil)
	before := upTo(t, "lesson-washing", "Wash.", 3, nil)
	if lost := fast.Run.State.Waste.Bag.CellsML - before.Run.State.Waste.Bag.CellsML; lost < 3 {
		t.Errorf("washing at 700 mL/min sends %.1f mL of cells to waste", lost)
	}
	gentle := upTo(t, "lesson-washing", "Wait until it is washed and the bowl is empty.", 1, nil)
	first := upTo(t, "lesson-washing", "Wash.", 1, nil)
	if lost := gentle.Run.State.Waste.Bag.CellsML - first.Run.State.Waste.Bag.CellsML; lost > 0.5 {
		t.Errorf("washing at 200 mL/min sends %.1f mL of cells to waste", lost)
	}
}

// What sits on the cells stays with them: of bowel content that got in, the bound share is still in the product.
func TestBoundContaminantsStay(t *testing.T) {
	p := upTo(t, "lesson-washing", "Wait until the bowl is empty.", 1, func(sc *scenarios.Scenario) {
		sc.Events = slices.Clone(sc.Events)
		for i := range sc.Events {
			if sc.Events[i].Kind == "agent_on" {
				at := *sc.Events[i].At
				at.Seconds = 60
				sc.Events[i].At = &at
			}
		}
		instead(t, "set_wash_volume", 500)(sc)
	})
	s := &p.Run.State
	bag := &s.Bags[0].Fluid
	all := s.Field.SuckedCellsML
	if all <= 0 || bag.Contaminant(0) <= 0 {
		t.Fatalf("no bowel content in the bag: %v of %v mL of cells", bag.Contaminant(0), all)
	}
	// per mL of cells, against blood that nobody washed
	raw := s.Reservoir.Blood.Contaminant(0) / s.Reservoir.Blood.CellsML
	if kept := bag.Contaminant(0) / bag.CellsML / raw; kept < 0.29 || kept > 0.4 { // the bound share of the case, and little else
		t.Errorf("five bowl volumes leave %.2f of the bowel content on each mL of cells", kept)
	}
	if heparin := bag.PerML(sim.Heparin) / s.Reservoir.Blood.PerML(sim.Heparin); heparin > 0.15 {
		t.Errorf("the same wash leaves %.2f of the heparin", heparin)
	}
}
