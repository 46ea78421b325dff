package operators

import (
	"slices"

	"rouleau/scenarios"
	"rouleau/scoring/coach"
	"rouleau/sim"
)

// Steady: a competent operator that follows the same few rules in every case. Once a second it does the first thing that
// needs doing and can be done, so the order of its rules is the order of what matters.

// Steady keeps only what a person would keep in mind or on paper.
type Steady struct {
	sheet      Sheet
	habits     Habits
	rules      []habitRule
	trail      coach.Trail // kept only for rules
	looked     int64       // when it last looked up
	dripAt     int64       // when it last looked at the drip
	giveFrom   int64       // since when there has been something to give, 0 for nothing
	label      float64     // fields that it writes and says, as bits
	handOver   float64
	declared   [sim.IncidentProduct + 1]int64 // when it last told of each, 0 for never
	broken     bool                           // the processing set leaks or is soiled and must be replaced
	airSought  bool                           // the outlet line was looked at for the air there is now
	prepared   int                            // how far the bench is prepared
	rinsedAt   int64                          // when swabs were last rinsed
	swabBlood  float64                        // weighed blood in swabs before each rinse
	swabRest   float64                        // what they still weighed after it
	basin      float64                        // rinse that went to the reservoir
	rinsing    bool
	toldWhy    bool
	noted      bool
	askedClear int64
	sampled    [sim.MaxBags]bool
	watched    int64
	doubts     bool // the detector was found to err
	ended      bool
	cleared    bool
	suspect    [sim.MaxBags]bool           // bags that the patient reacted to
	do         func(sim.Action) sim.Reason // of the second going on
}

// NewSteady reads the case sheet.
func NewSteady(sheet Sheet) *Steady { return withHabits(sheet, competent(), nil) }

func withHabits(sheet Sheet, h Habits, rules []habitRule) *Steady {
	if !h.ReadsSheet {
		sheet = sheet.unread()
	}
	o := &Steady{sheet: sheet, habits: h, rules: slices.Clone(rules), rinsedAt: -1}
	o.label, _ = scenarios.ValueNamed(sim.Label, h.Label)
	o.handOver, _ = scenarios.ValueNamed(sim.HandOver, h.HandOver)
	return o
}

// What every operator has in common. The habits of steady, in library/steady.yaml: a vacuum of 100 to 150 mmHg [S] UKCSAG
// Factsheet 3, 15 to 20 mL of anticoagulant for 100 mL of blood [S] UKCSAG Factsheet 2, the rest common practice.
const (
	leastDrops        = 60 // [S] at least one a second, UKCSAG education workbook
	mostDrops         = sim.MaxDropsMin
	reachesSucker     = 0.75 // of the bleeding that it sees
	mixClearShare     = 0.04
	rinseFromML       = 150.0
	askEveryTicks     = 90 * sim.TicksPerSecond
	litreReserveML    = 60.0
	wasteRoomML       = 1200.0 // a bag with less room is changed before the next bowl
	expectedLossML    = 500.0  // [S] Association of Anaesthetists 2018: adult > 500 mL or > 10 % of blood volume
	expectedShare     = 0.10
	inFilterAndLineML = 75.0 // drawn from the pack and not yet in the reservoir's scale
)

// Act does the first thing that needs doing.
func (o *Steady) Act(v *sim.Seen, do func(sim.Action) sim.Reason) {
	if o.ended {
		return
	}
	o.keepCount(v)
	if o.byRule(v, do) || !o.attends(v) {
		return
	}
	o.do = o.unlessRuled(do)
	try := func(verb sim.Verb, on sim.Part, value float64) bool {
		return o.do(sim.Action{Do: verb, On: on, Value: value}) == ""
	}
	// acts that need no free hands come first and may be several
	o.settings(v, try)
	if v.HandsBusy {
		return
	}
	for _, rule := range [...]func(*sim.Seen, func(sim.Verb, sim.Part, float64) bool) bool{
		o.decide, o.safety, o.prepare, o.supplies, o.circuits, o.divert, o.give, o.afterBirth, o.tellOfClotting, o.process, o.swabs, o.tidy} {
		if rule(v, try) {
			return
		}
	}
}

// attends says whether it looks up in this second. While it prepares the bench it is always at it.
func (o *Steady) attends(v *sim.Seen) bool {
	if (o.prepared >= collecting || v.Bench.Decision == sim.DoNotSalvage) && v.Tick < o.looked+int64(o.habits.LooksUpEveryS)*sim.TicksPerSecond {
		return false
	}
	o.looked = v.Tick
	return true
}

// salvage says whether the sheet speaks for salvage.
func (o *Steady) salvage() bool {
	s := &o.sheet
	return !s.Refused && !s.Contraindicated && s.ExpectedLossML > s.WorthFromML()
}

func (o *Steady) decide(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	b := &v.Bench
	if o.consults(v, try) || o.hesitates(v) {
		return true
	}
	if b.Decision == sim.Undecided {
		if o.salvage() && o.sheet.CollectOnly {
			return try(sim.Decide, sim.NoPart, float64(sim.CollectOnly))
		}
		if o.salvage() {
			return try(sim.Decide, sim.NoPart, float64(sim.SetUpToProcess))
		}
		return try(sim.Decide, sim.NoPart, float64(sim.DoNotSalvage))
	}
	if b.Decision == sim.DoNotSalvage {
		return o.leaves(v, try)
	}
	if b.Anticoagulant == sim.NoSolution {
		return try(sim.ChooseAnticoagulant, sim.NoPart, float64(o.anticoagulant()))
	}
	if b.Bowl == sim.NoBowl {
		kind := sim.StandardBowl
		if o.sheet.WeightKg < 15 {
			kind = sim.PaediatricBowl
		} else if o.sheet.WeightKg < 40 {
			kind = sim.SmallBowl
		}
		return try(sim.ChooseBowl, sim.NoPart, float64(kind))
	}
	return o.tellsWhy(try)
}

// anticoagulant is heparin unless it is forbidden or only the other one is at hand.
func (o *Steady) anticoagulant() sim.Solution {
	first, _ := sim.SolutionNamed(o.habits.AnticoagulantFirst)
	other := sim.HeparinSolution + sim.CitrateSolution - first
	if first == sim.HeparinSolution && o.sheet.HeparinForbidden || !o.sheet.has(first) && o.sheet.has(other) {
		return other
	}
	return first
}

// settings keeps drip and vacuum where they belong.
func (o *Steady) settings(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) {
	o.stopGiving(v, try)
	if !v.Bench.Opened[sim.CollectionSet] || v.Bench.TakenDown {
		return
	}
	o.drip(v, try)
	o.stopsFilling(v, try)
}

// drip lets the drip follow the bleeding that can be seen.
func (o *Steady) drip(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) {
	if o.dripAt > 0 && v.Tick < o.dripAt+int64(o.habits.DripEveryS)*sim.TicksPerSecond {
		return
	}
	drops := min(mostDrops, max(leastDrops, float64(20*o.habits.DripPer100ML/100*reachesSucker*v.BriskMLMin)+o.calciumDrops(v)))
	switch {
	case o.habits.FixedDropsMin > 0:
		drops = o.habits.FixedDropsMin
	case v.Route != sim.ToReservoir || v.SecondInUse:
		drops = 0 // nothing is sucked through the line: the drip would only fill the reservoir
	}
	o.dripAt = max(1, v.Tick)
	if drops != v.DropsMin {
		try(sim.SetDrip, sim.NoPart, drops)
	}
}

// stopGiving stops at a reaction, which it also tells, and before a bag runs empty.
func (o *Steady) stopGiving(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) {
	g := &v.Giving
	if g.Bag < 0 || g.RateMLMin <= 0 {
		return
	}
	if v.Reacting {
		try(sim.GiveRate, sim.NoPart, 0)
		o.declare(v, sim.IncidentReaction, try)
		o.suspect[g.Bag] = true
	} else if v.Bags[g.Bag].ML <= 5 || o.pastItsTime(v, int(g.Bag)) {
		try(sim.GiveRate, sim.NoPart, 0)
	}
}

// safety sees to what cannot wait: a bag that was reacted to, a question, a breach, air.
func (o *Steady) safety(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	for k := range v.BagsUsed {
		if (o.suspect[k] || o.pastItsTime(v, k)) && !v.Bags[k].Discarded && !(int(v.Giving.Bag) == k && v.Giving.RateMLMin > 0) {
			return try(sim.DiscardIt, sim.Bag(k), 0)
		}
	}
	if o.answer(v, try) || o.trouble(v, try) {
		return true
	}
	for set := sim.CollectionSet; set <= sim.ProcessingSet; set++ {
		if v.Bench.Breached[set] && !v.Pump.Spinning && v.Pump.Mode == sim.PumpIdle {
			o.declare(v, sim.IncidentBreach, try)
			clamp(v, sim.OutletClamp, false, try)
			return try(sim.ReplaceSet, set, 0)
		}
	}
	if v.Pump.AirML >= 1 && v.Pump.Mode == sim.PumpIdle {
		return o.air(v, try)
	}
	return false
}

// divert sends to the theatre's suction what must not be collected, and comes back when the surgeon says the field is clear.
func (o *Steady) divert(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	if !v.Bench.Opened[sim.CollectionSet] || v.Bench.TakenDown {
		return false
	}
	if v.AgentSaid && o.habits.Diverts && !v.SecondSucker {
		if v.Route == sim.ToReservoir {
			return try(sim.Route, sim.NoPart, float64(sim.ToDiscard))
		}
		if v.Tick >= o.askedClear+askEveryTicks {
			o.askedClear = v.Tick
			return try(sim.Ask, sim.NoPart, float64(sim.IsAgentGone))
		}
		return false
	}
	if v.Route == sim.ToDiscard && o.prepared >= collecting {
		return try(sim.Route, sim.NoPart, float64(sim.ToReservoir))
	}
	return false
}
