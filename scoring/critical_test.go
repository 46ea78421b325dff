package scoring

import (
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/scenarios"
	"rouleau/scoring/operators"
	"rouleau/scoring/play"
	"rouleau/sim"
)

// spoiled is steady with one human failing: what it sees or does is bent.
type spoiled struct {
	inner play.Actor
	sees  func(v *sim.Seen)
	acts  func(v *sim.Seen, a sim.Action) (sim.Action, bool)                 // the act done instead, and whether at all
	extra func(v *sim.Seen, do func(sim.Verb, sim.Part, float64) sim.Reason) // acts beside
}

func (o *spoiled) Act(v *sim.Seen, do func(sim.Action) sim.Reason) {
	bent := *v
	if o.sees != nil {
		o.sees(&bent)
	}
	if o.extra != nil {
		o.extra(v, func(verb sim.Verb, on sim.Part, value float64) sim.Reason {
			return do(sim.Action{Do: verb, On: on, Value: value})
		})
	}
	o.inner.Act(&bent, func(a sim.Action) sim.Reason {
		if o.acts != nil {
			var ok bool
			if a, ok = o.acts(v, a); !ok {
				return ""
			}
		}
		return do(a)
	})
}

const minute = 60 * sim.TicksPerSecond

// giving says how long a bag has been running, in seconds, remembering when it began.
type giving struct{ since int64 }

func (g *giving) seconds(v *sim.Seen) float64 {
	if v.Giving.FlowMLMin <= 0 {
		return -1
	}
	if g.since == 0 {
		g.since = v.Tick
	}
	return sim.Seconds(v.Tick - g.since)
}

func squeeze(forS float64, tell bool) func() *spoiled {
	return func() *spoiled {
		var g giving
		return &spoiled{extra: func(v *sim.Seen, do func(sim.Verb, sim.Part, float64) sim.Reason) {
			switch t := g.seconds(v); {
			case t == 5:
				do(sim.Squeeze, sim.NoPart, 1)
			case t == 5+forS:
				do(sim.Squeeze, sim.NoPart, 0)
				if tell {
					do(sim.Declare, sim.NoPart, float64(sim.IncidentAir))
				}
			}
		}}
	}
}

func bags(change func(b *sim.SeenBag)) func() *spoiled {
	return func() *spoiled {
		return &spoiled{sees: func(v *sim.Seen) {
			for i := range v.BagsUsed {
				change(&v.Bags[i])
			}
		}}
	}
}

// washing sets the wash to so many mL while the operator believes in its litre.
func washing(ml float64) func() *spoiled {
	return func() *spoiled {
		return &spoiled{
			extra: func(v *sim.Seen, do func(sim.Verb, sim.Part, float64) sim.Reason) {
				if v.Tick == 0 {
					do(sim.SetWashVolume, sim.NoPart, ml)
				}
			},
			sees: func(v *sim.Seen) { v.Pump.WashML, v.Pump.WashedML = v.Pump.WashML*1000/ml, v.Pump.WashedML*1000/ml },
		}
	}
}

func plain() *spoiled { return &spoiled{} }

// each of the things that are never made up for, brought about by one failing.
var failings = []struct {
	critical string
	seed     uint64
	operator func() *spoiled
	change   func(c *sim.Case)
}{
	{"collected_after_refusal", 1, plain, func(c *sim.Case) { c.Patient.SalvageRefused = true }},
	{"heparin_forbidden", 1, plain, func(c *sim.Case) { c.Patient.HeparinForbidden = true }},
	{"not_identified", 1, bags(func(b *sim.SeenBag) { b.Checkers = 2 }), nil},
	{"unlabelled_given", 1, bags(func(b *sim.SeenBag) { b.LabelBits = sim.LabelComplete }), nil},
	{"expired_given", 1, plain, func(c *sim.Case) { c.Faults.ExpiryTicks = minute }},
	{"pressure_on_bag", 1, squeeze(20, false), nil},
	{"air_given", 1, func() *spoiled {
		o := squeeze(20, true)()
		o.acts = func(v *sim.Seen, a sim.Action) (sim.Action, bool) { return a, a.Do != sim.ExpelAir }
		o.sees = func(v *sim.Seen) {
			for i := range v.Bags {
				v.Bags[i].AirML = 0
			}
		}
		return o
	}, nil},
	{"wrong_wash_given", 1, plain, func(c *sim.Case) {
		for i := range c.Packs {
			if c.Packs[i].Solution == sim.Saline {
				c.Packs[i].Solution = sim.Glycine // a pack that says saline
			}
		}
	}},
	{"unwashed_given", 1, washing(50), nil},
	{"haemolysed_given", 1, washing(300), func(c *sim.Case) {
		for i := range c.Packs {
			if c.Packs[i].Solution == sim.Saline {
				c.Packs[i].Solution = sim.SterileWater // a pack that says saline
			}
		}
	}},
	{"contaminated_given", 1, func() *spoiled { return &spoiled{sees: func(v *sim.Seen) { v.AgentSaid = false }} }, func(c *sim.Case) {
		c.Contaminants[0].BoundShare, c.Contaminants[0].Procoagulant = 0.9, false
	}},
	{"anticoagulant_given", 1, func() *spoiled {
		return &spoiled{extra: func(v *sim.Seen, do func(sim.Verb, sim.Part, float64) sim.Reason) {
			if v.Tick == 20*minute {
				do(sim.Hook, sim.AnticoagulantHook, 1)
			}
			if v.Tick > 20*minute && v.Giving.Bag < 0 && v.Tick < 22*minute {
				do(sim.GiveRate, sim.NoPart, 50)
			}
		}}
	}, nil},
	{"breach_used", 1, func() *spoiled {
		return &spoiled{sees: func(v *sim.Seen) {
			v.Bench.Breached[sim.CollectionSet], v.Bench.Breached[sim.ProcessingSet] = false, false
		}}
	}, func(c *sim.Case) { c.Faults.TouchChance = 1 }},
	{"through_reaction", 1, func() *spoiled { return &spoiled{sees: func(v *sim.Seen) { v.Reacting = false }} }, reaction},
	{"concealed", 1, func() *spoiled {
		return &spoiled{acts: func(v *sim.Seen, a sim.Action) (sim.Action, bool) { return a, a.Do != sim.Declare }}
	}, reaction},
	{"circuit_parted", 1, func() *spoiled { // has not read that the circuit must stay connected, and hangs a bag as always
		return &spoiled{sees: func(v *sim.Seen) { v.CircuitAsked = false }}
	}, func(c *sim.Case) { c.Patient.CircuitAsked = true }},
	{"clot_given", 1, func() *spoiled {
		return &spoiled{acts: func(v *sim.Seen, a sim.Action) (sim.Action, bool) {
			switch {
			case a.Do == sim.SetDrip && v.Tick > 14*minute:
				a.Value = 4
			case a.Do == sim.Hook:
				a.Value = 0
			}
			return a, true
		}}
	}, nil},
}

func reaction(c *sim.Case) {
	c.Events = append(c.Events, sim.EventSpec{Kind: sim.EventReaction, When: sim.WhenGiving, Threshold: 30, Line: -1})
}

func TestEachFailingIsFoundAndFailsTheRun(t *testing.T) {
	sc := spine(t)
	found := map[string]bool{}
	for _, f := range failings {
		run := play.New(sc.Case(f.seed, false), f.seed)
		sheet := operators.SheetOf(sc, &run.Case) // read before the case is changed behind it
		if f.change != nil {
			f.change(&run.Case)
			run.State = sim.Start(&run.Case, f.seed)
		}
		o := f.operator()
		o.inner = operators.NewSteady(sheet)
		run.ToEnd(o)
		g := Judge(sc, run, Yardstick{})
		named := false
		for _, c := range g.Critical {
			named = named || c.Name == f.critical && !c.Mended
			found[c.Name] = true
		}
		if !named || g.Passed {
			t.Errorf("%s: critical %v, passed %v; given %.0f mL, conduct %+v", f.critical, g.Critical, g.Passed, run.State.Giving.GivenML, run.State.Conduct)
		}
	}
	for _, name := range scenarios.CriticalNames() {
		if !found[name] {
			t.Errorf("no failing brings about %s", name)
		}
	}
}

func TestABriefSlipToldInTimeIsNotFatal(t *testing.T) {
	sc := spine(t)
	play1 := func(o *spoiled) Grade {
		run := play.New(sc.Case(1, false), 1)
		o.inner = operators.NewSteady(operators.SheetOf(sc, &run.Case))
		run.ToEnd(o)
		return Judge(sc, run, Yardstick{})
	}
	told := play1(squeeze(2, true)())
	if !told.Passed || len(told.Critical) != 1 || !told.Critical[0].Mended {
		t.Errorf("two seconds of pressure, stopped and told: passed %v, %+v", told.Passed, told.Critical)
	}
	silent := play1(squeeze(2, false)())
	if silent.Passed {
		t.Errorf("the same slip kept secret passed: %+v", silent.Critical)
	}
}

func TestAStoppedReactionIsNoFault(t *testing.T) {
	sc := spine(t)
	run := play.New(sc.Case(1, false), 1)
	reaction(&run.Case)
	run.ToEnd(operators.NewSteady(operators.SheetOf(sc, &run.Case)))
	g := Judge(sc, run, PlayYardstick(sc, 1, false))
	for _, c := range g.Critical {
		if !c.Mended {
			t.Errorf("steady stopped and told, and was still found at fault: %+v", c)
		}
	}
	if run.State.Conduct.Met[sim.IncidentReaction] == 0 {
		t.Fatal("there was no reaction to stop")
	}
}

// What the page of the format lists is what is counted, and nothing else is.
func TestEveryCriticalIsCounted(t *testing.T) {
	for _, c := range scenarios.Criticals {
		if amounts[c.Name] == nil || strings.Contains(words.Say("critical."+c.Name, 1.0), "‹") {
			t.Errorf("%s is listed and not counted, or has no words", c.Name)
		}
	}
	if len(amounts) != len(scenarios.Criticals) {
		t.Errorf("%d are counted, %d are listed", len(amounts), len(scenarios.Criticals))
	}
}
