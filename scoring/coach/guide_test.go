// What each kind of step waits for, what is passed over, and when the clock stands.

package coach

import (
	"strings"
	"testing"

	"rouleau/scenarios"
	"rouleau/sim"
)

func at(x float64) *float64 { return &x }

// course makes a lesson of steps, with a heparin pack, an old one of saline and a good one.
func course(steps ...scenarios.Step) *Guide {
	g := &Guide{steps: steps, fresh: true}
	g.packs = []pack{{"heparin_solution", false}, {"saline", true}, {"saline", false}}
	return g
}

func act(do, on, choice string) scenarios.Until {
	return scenarios.Until{Act: &scenarios.UntilAct{Do: do, On: on, Choice: choice}}
}

func within(do string, least, most float64) scenarios.Until {
	return scenarios.Until{Act: &scenarios.UntilAct{Do: do, AtLeast: &least, AtMost: &most}}
}

func TestEveryKindOfWait(t *testing.T) {
	log := func(do sim.Verb, on sim.Part, value float64) []sim.Action {
		return []sim.Action{{Do: sim.Decide, Value: 1}, {Do: do, On: on, Value: value}}
	}
	type change func(v *sim.Seen)
	for _, c := range []struct {
		name  string
		until scenarios.Until
		seen  change
		acts  []sim.Action
		met   bool
	}{
		{"a situation", scenarios.Until{Holds: "operation_over"}, func(v *sim.Seen) { v.OperationOver = true }, nil, true},
		{"no such situation yet", scenarios.Until{Holds: "operation_over"}, nil, nil, false},
		{"a reading from below", scenarios.Until{Reads: &scenarios.UntilReads{What: "reservoir_ml", AtLeast: at(450)}}, func(v *sim.Seen) { v.ReservoirML = 450 }, nil, true},
		{"a reading too low", scenarios.Until{Reads: &scenarios.UntilReads{What: "reservoir_ml", AtLeast: at(450)}}, func(v *sim.Seen) { v.ReservoirML = 440 }, nil, false},
		{"a reading from above", scenarios.Until{Reads: &scenarios.UntilReads{What: "bowl_ml", AtMost: at(5)}}, nil, nil, true},
		{"a reading out of a band", scenarios.Until{Reads: &scenarios.UntilReads{What: "bowl_ml", AtLeast: at(1), AtMost: at(5)}}, func(v *sim.Seen) { v.Pump.HeldML = 9 }, nil, false},
		{"a reading that cannot be taken", scenarios.Until{Reads: &scenarios.UntilReads{What: "drip_per_100_ml", AtMost: at(5)}}, nil, nil, false},
		{"reading, which nothing ends", scenarios.Until{Read: true}, func(v *sim.Seen) { v.OperationOver = true }, nil, false},

		{"a decision", act("decide", "", "set_up_to_process"), func(v *sim.Seen) { v.Bench.Decision = sim.SetUpToProcess }, nil, true},
		{"another decision", act("decide", "", "set_up_to_process"), func(v *sim.Seen) { v.Bench.Decision = sim.CollectOnly }, nil, false},
		{"any decision", act("decide", "", ""), func(v *sim.Seen) { v.Bench.Decision = sim.CollectOnly }, nil, true},
		{"no decision", act("decide", "", ""), nil, nil, false},
		{"an anticoagulant", act("choose_anticoagulant", "", "heparin_solution"), func(v *sim.Seen) { v.Bench.Anticoagulant = sim.HeparinSolution }, nil, true},
		{"a bowl", act("choose_bowl", "", "small"), func(v *sim.Seen) { v.Bench.Bowl = sim.StandardBowl }, nil, false},
		{"an open set", act("open_set", "collection_set", ""), func(v *sim.Seen) { v.Bench.Opened[sim.CollectionSet] = true }, nil, true},
		{"the other set open", act("open_set", "collection_set", ""), func(v *sim.Seen) { v.Bench.Opened[sim.ProcessingSet] = true }, nil, false},
		{"a line", act("connect", "suction_line", ""), func(v *sim.Seen) { v.Bench.Connected[sim.SuctionLine] = true }, nil, true},
		{"a line found loose", act("connect", "suction_line", ""), func(v *sim.Seen) {
			v.Bench.Connected[sim.SuctionLine], v.Bench.FoundLoose[sim.SuctionLine] = true, true
		}, nil, false},
		{"a clamp", act("clamp", "drip_clamp", "open"), func(v *sim.Seen) { v.Bench.Open[sim.DripClamp] = true }, nil, true},
		{"a clamp the other way", act("clamp", "drip_clamp", "closed"), func(v *sim.Seen) { v.Bench.Open[sim.DripClamp] = true }, nil, false},
		{"the right pack", act("hang", "wash_hook_a", "saline"), func(v *sim.Seen) { v.Bench.HookPack[sim.WashHookA] = 2 }, nil, true},
		{"an old pack", act("hang", "wash_hook_a", "saline"), func(v *sim.Seen) { v.Bench.HookPack[sim.WashHookA] = 1 }, nil, false},
		{"a wrong pack", act("hang", "wash_hook_a", "saline"), func(v *sim.Seen) { v.Bench.HookPack[sim.WashHookA] = 0 }, nil, false},
		{"an empty hook", act("hang", "wash_hook_a", ""), nil, nil, false},
		{"a tested vacuum", act("test_vacuum", "", ""), func(v *sim.Seen) { v.Bench.VacuumTested = true }, nil, true},
		{"the sucker's way", act("route", "", "reservoir"), func(v *sim.Seen) { v.Route = sim.ToReservoir }, nil, true},
		{"a setting", within("set_drip", 130, 180), func(v *sim.Seen) { v.DropsMin = 150 }, nil, true},
		{"a setting that was right and is not any more", within("set_drip", 130, 180), func(v *sim.Seen) { v.DropsMin = 60 }, log(sim.SetDrip, 0, 150), false},
		{"a step turned on", act("auto_stop", "", "on"), func(v *sim.Seen) { v.Pump.AutoStop = true }, nil, true},

		{"an act", act("mix", "", ""), nil, log(sim.Mix, 0, 0), true},
		{"another act", act("mix", "", ""), nil, log(sim.Fill, 0, 0), false},
		{"an act on its part", act("expel_air", "bag_1", ""), nil, log(sim.ExpelAir, sim.Bag(0), 0), true},
		{"an act on another part", act("expel_air", "bag_1", ""), nil, log(sim.ExpelAir, sim.Bag(1), 0), false},
		{"an act with its choice", act("hook", "bag_1", "with_filter"), nil, log(sim.Hook, sim.Bag(0), 1), true},
		{"an act with the other choice", act("hook", "bag_1", "with_filter"), nil, log(sim.Hook, sim.Bag(0), 0), false},
		{"an act with all fields", act("label", "", "complete"), nil, log(sim.Label, sim.Bag(0), sim.LabelComplete), true},
		{"an act with a value", within("give_rate", 30, 100), nil, log(sim.GiveRate, 0, 60), true},
		{"an act with too small a value", within("give_rate", 30, 100), nil, log(sim.GiveRate, 0, 10), false},
	} {
		s := bench()
		g := course(scenarios.Step{Do: c.name, Until: c.until, Then: "It has come."})
		if c.seen != nil {
			c.seen(s.Seen)
		}
		g.Look(s, c.acts)
		if got := g.met || g.Done(); got != c.met {
			t.Errorf("%s: over %v, want %v", c.name, got, c.met)
		}
	}
}

// The newest act of a kind counts, and each only for one step.
func TestAnActCountsOnce(t *testing.T) {
	rate := func(least, most float64) scenarios.Step {
		return scenarios.Step{Do: "give", Until: within("give_rate", least, most)}
	}
	g := course(rate(30, 100), rate(0, 0))
	s := bench()
	acts := []sim.Action{}
	do := func(value float64) {
		acts = append(acts, sim.Action{Do: sim.GiveRate, Value: value})
		g.Look(s, acts)
	}
	g.Look(s, acts)
	if do(10); g.at != 0 {
		t.Fatal("too slow, and it counts")
	}
	if do(60); g.at != 1 {
		t.Fatalf("step %d after the right rate", g.at)
	}
	g.Look(s, acts)
	if g.at != 1 {
		t.Fatal("one act counts for two steps")
	}
	if do(0); !g.Done() {
		t.Fatal("the stop does not count")
	}
}

// A button pressed twice at the first bowl does not count for filling the second.
func TestPressedTwiceDoesNotFillTheNextBowl(t *testing.T) {
	g := course(scenarios.Step{Do: "Fill.", Until: act("fill", "", "")}, scenarios.Step{Do: "Wait.", Until: falls("bowl_ml", 5)},
		scenarios.Step{Do: "Fill.", Until: act("fill", "", "")})
	s := bench()
	p := &s.Seen.Pump
	acts := []sim.Action{{Do: sim.Fill}}
	p.Mode, p.CycleOpen, p.HeldML = sim.PumpFill, true, 50
	g.Look(s, acts)
	acts = append(acts, sim.Action{Do: sim.StopPump}, sim.Action{Do: sim.Fill})
	g.Look(s, acts)
	*p = sim.SeenPump{Washed: true} // emptied
	g.Look(s, acts)
	if g.at != 2 {
		t.Fatalf("the lesson stands at step %d", g.at+1)
	}
	p.Mode, p.CycleOpen, p.Washed = sim.PumpFill, true, false
	if g.Look(s, append(acts, sim.Action{Do: sim.Fill})); !g.Done() {
		t.Error("the second bowl is being filled, and the step does not see it")
	}
}

// Somebody who filled by mistake and stopped must not be left to wait for a bed that never grows, or a bowl that never stops.
func TestWhatWasBrokenOffIsNotDone(t *testing.T) {
	acts := []sim.Action{{Do: sim.Fill}, {Do: sim.Wash}, {Do: sim.Empty}, {Do: sim.StopPump}, {Do: sim.StopAll}}
	for name, c := range map[string]struct {
		do   string
		seen func(v *sim.Seen)
		done bool
	}{
		"a fill goes on":       {"fill", func(v *sim.Seen) { v.Pump.Mode = sim.PumpFill }, true},
		"a fill stopped short": {"fill", func(v *sim.Seen) { v.Pump.Detector, v.Pump.HeldML = 0.3, 60 }, false},
		"a bowl is full":       {"fill", func(v *sim.Seen) { v.Pump.Detector = 0.94 }, true},
		"a wash never begun":   {"wash", func(v *sim.Seen) {}, false},
		"a wash begun":         {"wash", func(v *sim.Seen) { v.Pump.Washed = true }, true},
		"an empty bag":         {"empty", func(v *sim.Seen) { v.BagsUsed = 1 }, false},
		"a bag filled":         {"empty", func(v *sim.Seen) { v.BagsUsed, v.Bags[0].ML = 1, 85 }, true},
		"the pump goes again":  {"stop_pump", func(v *sim.Seen) { v.Pump.Mode = sim.PumpFill }, false},
		"the bowl spins again": {"stop_all", func(v *sim.Seen) { v.Pump.Spinning = true }, false},
		"the bowl slows down":  {"stop_all", func(v *sim.Seen) { v.Pump.Spinning, v.Pump.Braking = true, true }, true},
		"the bowl has stopped": {"stop_all", func(v *sim.Seen) {}, true},
	} {
		g := course(scenarios.Step{Do: name, Until: act(c.do, "", "")})
		s := bench()
		c.seen(s.Seen)
		if g.Look(s, acts); g.Done() != c.done {
			t.Errorf("%s: done %v", name, g.Done())
		}
	}
}

func TestWhatIsDoneAlreadyIsPassedOver(t *testing.T) {
	g := course(
		scenarios.Step{Do: "Read.", Until: scenarios.Until{Read: true}},
		scenarios.Step{Do: "Open the clamp.", Until: act("clamp", "drip_clamp", "open"), Then: "{reservoir_ml} are there."},
		scenarios.Step{Do: "Mix.", Until: act("mix", "", "")})
	s := bench()
	s.Seen.Bench.Open[sim.DripClamp], s.Seen.ReservoirML = true, 120
	g.Look(s, nil)
	if c := g.Card(); c.N != 1 || c.Passed != "" {
		t.Fatalf("%+v", c)
	}
	g.Next()
	g.Look(s, nil)
	if c := g.Card(); c.N != 3 || c.Passed != "120 mL are there." || c.Then != "" {
		t.Errorf("%+v", c)
	}
	g.Next() // past a wait
	g.Look(s, nil)
	if !g.Done() || g.Card().Step != nil {
		t.Error("a wait cannot be left")
	}
}

func TestTheClockStands(t *testing.T) {
	wait := scenarios.Until{Holds: "operation_over"}
	s := bench()
	g := course(scenarios.Step{Do: "read", Until: scenarios.Until{Read: true}},
		scenarios.Step{Do: "act", Until: act("mix", "", ""), Time: "stands", Then: "mixed"},
		scenarios.Step{Do: "wait", Until: wait, Fast: true})
	look := func() { g.Look(s, nil) }
	check := func(where string, stands, hurry bool) {
		t.Helper()
		if g.Stands() != stands || g.Hurry() != hurry {
			t.Errorf("%s: stands %v, hurry %v", where, g.Stands(), g.Hurry())
		}
	}
	look()
	check("reading", true, false)
	s.Seen.HandsBusy = true
	look()
	check("reading with busy hands", true, false)
	g.Next()
	look()
	check("before an act, with busy hands", false, true)
	s.Seen.HandsBusy = false
	look()
	check("before an act", true, false)
	g.Look(s, []sim.Action{{Do: sim.Mix}})
	check("reading what happened", true, false)
	g.Next()
	look()
	check("waiting", false, true)
	g.Back()
	check("reading again", true, false)
	if c := g.Card(); !c.Old || c.N != 2 {
		t.Errorf("%+v", c)
	}
	g.Next()
	check("back from reading again", false, true)
	s.Seen.OperationOver = true
	look()
	check("at the end", false, false)
	if !g.Done() {
		t.Error("the lesson is not over")
	}
}

func TestSuspectFindsStepsThatNeverEnd(t *testing.T) {
	for name, want := range map[string]string{
		"{do: fill}":                   "the bench refuses this act to somebody who does just what the lesson says (open_the_set_first)",
		"{do: set_drip, at_least: 60}": "",
	} {
		sc, faults := scenarios.Parse("lesson.yaml", []byte(lessonText(t, "act: "+name)))
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		got := Suspect(sc)
		if want == "" && len(got) == 0 {
			continue
		}
		if len(got) != 1 || got[0].Message != want || got[0].Path != "guidance[0].until" {
			t.Errorf("%s: %v", name, got)
		}
	}
	sc, faults := scenarios.Parse("lesson.yaml", []byte(lessonText(t, "reads: {what: reservoir_ml, at_least: 100}")))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if got := Suspect(sc); len(got) != 1 || got[0].Message != "this does not come within twenty minutes of the case" {
		t.Errorf("%v", got)
	}
}

// lessonText is the first bowl with a lesson of one step.
func lessonText(t *testing.T, until string) string {
	t.Helper()
	sc, err := scenarios.Open("first-bowl")
	if err != nil {
		t.Fatal(err)
	}
	head, _, ok := strings.Cut(string(sc.Source), "\nguidance:\n")
	if !ok {
		t.Fatal("the first bowl has no guidance")
	}
	head = strings.Replace(head, "\nid: first-bowl\n", "\nid: another-bowl\n", 1)
	return head + "\nguidance:\n  - {do: Only this., until: {" + until + "}}\n"
}
