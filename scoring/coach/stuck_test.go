// A wait that cannot come true any more is told after some seconds, with a reason that has words; one that can is left alone.

package coach

import (
	"testing"

	"rouleau/assets/words"
	"rouleau/scenarios"
	"rouleau/sim"
)

func rises(what string, to float64) scenarios.Until {
	return scenarios.Until{Reads: &scenarios.UntilReads{What: what, AtLeast: &to}}
}

func falls(what string, to float64) scenarios.Until {
	return scenarios.Until{Reads: &scenarios.UntilReads{What: what, AtMost: &to}}
}

// stuckAfter lets seconds pass before a wait, and gives what is told then.
func stuckAfter(t *testing.T, u scenarios.Until, seconds int64, set func(*sim.Seen)) string {
	t.Helper()
	g := course(scenarios.Step{Do: "Wait for it.", Until: u, Fast: true})
	s := bench()
	if set != nil {
		set(s.Seen)
	}
	for range seconds + 1 {
		g.Look(s, nil)
		s.Seen.Tick += sim.TicksPerSecond
	}
	if g.Done() {
		t.Fatalf("%+v is met", u.Reads)
	}
	c := g.Card()
	if c.Stuck != "" && g.Hurry() {
		t.Errorf("%s: the wait still hurries", c.Stuck)
	}
	if c.Stuck != "" && !words.Has("stuck."+c.Stuck) {
		t.Errorf("%s has no words", c.Stuck)
	}
	return c.Stuck
}

func TestWaitsThatCannotComeAreTold(t *testing.T) {
	for _, x := range []struct {
		until   scenarios.Until
		set     func(*sim.Seen) // what keeps it from coming
		want    string
		goes    func(*sim.Seen) // what lets it come
		comment string
	}{
		{rises("detector", 0.93), nil, "not_filling", func(v *sim.Seen) { v.Pump.Mode = sim.PumpFill }, "the pump was stopped too early"},
		{rises("detector", 0.93), func(v *sim.Seen) { v.Pump.Mode = sim.PumpWash }, "not_filling", func(v *sim.Seen) { v.Pump.Mode = sim.PumpTopUp }, "wash pressed for fill"},
		{falls("detector", 0.75), func(v *sim.Seen) { v.Pump.Detector = 0.9 }, "bowl_stands", func(v *sim.Seen) { v.Pump.Detector, v.Pump.Spinning = 0.9, true }, "all was stopped"},
		{rises("washed_ml", 495), nil, "not_washing", func(v *sim.Seen) { v.Pump.Mode = sim.PumpWash }, ""},
		{rises("effluent_red", 0.3), nil, "pump_stands", func(v *sim.Seen) { v.Pump.Mode = sim.PumpFill }, ""},
		{falls("bowl_ml", 5), func(v *sim.Seen) { v.Pump.HeldML = 100 }, "not_emptying", func(v *sim.Seen) { v.Pump.HeldML, v.Pump.Mode = 100, sim.PumpEmpty }, ""},
		{falls("bowl_ml", 5), func(v *sim.Seen) { v.Pump.HeldML, v.Pump.Mode = 100, sim.PumpWash }, "not_emptying",
			func(v *sim.Seen) { v.Pump.HeldML, v.Pump.Mode, v.Pump.AutoEmpty = 100, sim.PumpWash, true }, "it empties by itself only where that is on"},
		{falls("bowl_spins", 0), func(v *sim.Seen) { v.Pump.Spinning = true }, "bowl_turns", func(v *sim.Seen) { v.Pump.Spinning, v.Pump.Braking = true, true }, ""},
		{rises("bag_ml", 60), nil, "not_emptying", func(v *sim.Seen) { v.Pump.Mode = sim.PumpEmpty }, ""},
		{falls("bag_ml", 0), func(v *sim.Seen) { v.BagsUsed, v.Bags[0].ML = 1, 80 }, "not_drawing",
			func(v *sim.Seen) { v.BagsUsed, v.Bags[0].ML, v.Pump.Mode = 1, 80, sim.PumpDrawBack }, ""},
		{rises("taken_in_ml", 280), nil, "not_collecting", func(v *sim.Seen) { v.Route = sim.ToReservoir }, "the sucker leads elsewhere"},
		{rises("reservoir_ml", 450), func(v *sim.Seen) { v.Route, v.OperationOver = sim.ToReservoir, true }, "operation_over",
			func(v *sim.Seen) { v.Route, v.OperationOver, v.FillingMLMin = sim.ToReservoir, true, 5 }, "no more blood comes"},
		{falls("reservoir_ml", 20), func(v *sim.Seen) { v.ReservoirML = 100 }, "not_filling", func(v *sim.Seen) { v.ReservoirML, v.Pump.Mode = 100, sim.PumpFill }, ""},
		{rises("bleeding_ml_min", 80), func(v *sim.Seen) { v.OperationOver = true }, "operation_over", func(*sim.Seen) {}, ""},
		{rises("primed_ml", 190), nil, "no_drip", func(v *sim.Seen) { v.DripMLMin = 600 }, "no vacuum, or a closed clamp"},
		{rises("drip_per_100_ml", 12), nil, "no_drip", func(v *sim.Seen) { v.DripMLMin = 5 }, ""},
		{falls("anticoagulant_left_ml", 100), func(v *sim.Seen) { v.Bench.HookPack[sim.AnticoagulantHook], v.Bench.PackLeftML[0] = 0, 400 }, "no_drip",
			func(v *sim.Seen) {
				v.Bench.HookPack[sim.AnticoagulantHook], v.Bench.PackLeftML[0], v.DripMLMin = 0, 400, 5
			}, ""},
		{rises("clear_ml", 60), func(v *sim.Seen) { v.ReservoirML = 40 }, "too_little", func(v *sim.Seen) { v.ReservoirML = 400 }, ""},
		{falls("clear_ml", 0), func(v *sim.Seen) { v.ClearML = 40 }, "not_mixing", func(v *sim.Seen) { v.ClearML, v.Mixing = 40, true }, ""},
		{rises("given_ml", 60), nil, "not_giving", func(v *sim.Seen) { v.Giving.FlowMLMin = 60 }, ""},
		{rises("clinician_here", 1), nil, "not_called", func(v *sim.Seen) { v.ClinicianCalled = true }, ""},
		{rises("samples_answered", 1), nil, "no_sample", func(v *sim.Seen) { v.SampleCount = 1 }, ""},
		{scenarios.Until{Holds: "filled_not_washed"}, nil, "not_filling", func(v *sim.Seen) { v.Pump.Mode = sim.PumpFill }, ""},
		{scenarios.Until{Holds: "question_open"}, func(v *sim.Seen) { v.OperationOver = true }, "operation_over", func(*sim.Seen) {}, ""},
		{scenarios.Until{Holds: "operation_over"}, func(v *sim.Seen) { v.Ended = true }, "case_over", func(*sim.Seen) {}, ""},
		{scenarios.Until{Act: &scenarios.UntilAct{Do: "fill"}}, func(v *sim.Seen) { v.Ended = true }, "case_over", func(*sim.Seen) {}, ""},
		{rises("heart_rate", 300), nil, "", nil, "nothing is known of it"},
	} {
		if got := stuckAfter(t, x.until, stuckAfterS+1, x.set); got != x.want {
			t.Errorf("%+v (%s): told %q, want %q", x.until, x.comment, got, x.want)
		}
		if x.goes == nil {
			continue
		}
		if got := stuckAfter(t, x.until, stuckAfterS+1, x.goes); got != "" {
			t.Errorf("%+v is on its way, and is told to be stuck: %s", x.until, got)
		}
	}
}

func TestAStuckWaitIsToldInTimeAndTakenBack(t *testing.T) {
	g := course(scenarios.Step{Do: "Wait for the interface.", Until: rises("detector", 0.93), Fast: true}, scenarios.Step{Do: "Go on.", Until: scenarios.Until{Read: true}})
	s := bench()
	pass := func(seconds int) {
		for range seconds {
			g.Look(s, nil)
			s.Seen.Tick += sim.TicksPerSecond
		}
	}
	pass(5)
	if told := g.Card().Stuck; told != "" {
		t.Errorf("told after five seconds already: %s", told)
	}
	pass(10)
	if told := g.Card().Stuck; told != "not_filling" {
		t.Errorf("after fifteen seconds %q is told", told)
	}
	s.Seen.Pump.Mode = sim.PumpFill
	pass(1)
	if told := g.Card().Stuck; told != "" || !g.Hurry() {
		t.Errorf("filling again, and still told: %q, hurries %v", told, g.Hurry())
	}
	s.Seen.Pump.Mode, s.Seen.Pump.Detector = sim.PumpIdle, 0.95
	pass(1)
	if c := g.Card(); c.N != 2 || c.Stuck != "" {
		t.Errorf("the next step shows %+v", c)
	}
}

func TestAReadingThatStandsStillIsToldAtLast(t *testing.T) {
	if told := stuckAfter(t, rises("clot_ml", 5), stillForS-10, nil); told != "" {
		t.Errorf("told too early: %s", told)
	}
	if told := stuckAfter(t, rises("clot_ml", 5), stillForS+1, nil); told != "nothing_changes" {
		t.Errorf("after a quarter of an hour without change %q is told", told)
	}
}
