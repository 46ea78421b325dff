package operators

import "rouleau/sim"

// Steady: a competent operator that follows the same few rules in every case. Once a second it does the first thing that
// needs doing and can be done, so the order of its rules is the order of what matters.

// Steady keeps only what a person would keep in mind or on paper.
type Steady struct {
	sheet      Sheet
	prepared   int     // how far the bench is prepared
	rinsedAt   int64   // when swabs were last rinsed
	swabBlood  float64 // weighed blood in swabs before each rinse
	swabRest   float64 // what they still weighed after it
	basin      float64 // rinse that went to the reservoir
	rinsing    bool
	askedClear int64
	sampled    [sim.MaxBags]bool
	watched    int64
	lastDrops  float64
	ended      bool
	cleared    bool
	suspect    [sim.MaxBags]bool           // bags that the patient reacted to
	do         func(sim.Action) sim.Reason // of the second going on
}

// NewSteady reads the case sheet.
func NewSteady(sheet Sheet) *Steady { return &Steady{sheet: sheet, rinsedAt: -1} }

// What steady aims at.
const (
	vacuumMmHg        = 120   // [S] 100–150 mmHg, UKCSAG Factsheet 3
	primeML           = 200   // common practice
	leastDrops        = 60    // [S] at least one a second, UKCSAG education workbook
	mostDrops         = 240   // what the roller gives
	dripPer100        = 17.0  // mL per 100 mL of blood, between 15 and 20 [S] UKCSAG Factsheet 2
	reachesSucker     = 0.75  // of the bleeding that it sees
	openProcessingML  = 450.0 // in the reservoir: a bowl is coming
	fillFromML        = 900.0
	mixClearShare     = 0.04
	fillMLMin         = 300
	washMLMin         = 300
	washBowls         = 5.0 // bowl volumes
	interface_        = 0.93
	rinseFromML       = 150.0
	giveMLMin         = 100
	watchEveryTicks   = 60 * sim.TicksPerSecond
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
	try := func(verb sim.Verb, on sim.Part, value float64) bool {
		return do(sim.Action{Do: verb, On: on, Value: value}) == ""
	}
	o.do = do
	o.keepCount(v)
	// acts that need no free hands come first and may be several
	o.settings(v, try)
	if v.HandsBusy {
		return
	}
	for _, rule := range [...]func(*sim.Seen, func(sim.Verb, sim.Part, float64) bool) bool{
		o.decide, o.safety, o.prepare, o.supplies, o.divert, o.give, o.process, o.swabs, o.tidy} {
		if rule(v, try) {
			return
		}
	}
}

// salvage says whether the sheet speaks for salvage.
func (o *Steady) salvage() bool {
	s := &o.sheet
	return !s.Refused && !s.Contraindicated && (s.ExpectedLossML > expectedLossML || s.ExpectedLossML > expectedShare*s.BloodVolumeML)
}

func (o *Steady) decide(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	b := &v.Bench
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
		o.ended = try(sim.EndCase, sim.NoPart, 0)
		return true
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
	return false
}

func (o *Steady) anticoagulant() sim.Solution {
	if o.sheet.HeparinForbidden {
		return sim.CitrateSolution
	}
	return sim.HeparinSolution
}

// settings keeps drip and vacuum where they belong.
func (o *Steady) settings(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) {
	o.stopGiving(v, try)
	if !v.Bench.Opened[sim.CollectionSet] || v.Bench.TakenDown {
		return
	}
	drops := min(mostDrops, max(leastDrops, float64(20*dripPer100/100*reachesSucker*v.BriskMLMin)))
	if v.Route != sim.ToReservoir {
		drops = 0 // nothing is sucked through the line: the drip would only fill the reservoir
	}
	if drops != o.lastDrops && try(sim.SetDrip, sim.NoPart, drops) {
		o.lastDrops = drops
	}
	if p := &v.Pump; p.Mode == sim.PumpFill && p.Detector > interface_ {
		try(sim.StopPump, sim.NoPart, 0)
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
		try(sim.Declare, sim.NoPart, float64(sim.IncidentReaction))
		o.suspect[g.Bag] = true
	} else if v.Bags[g.Bag].ML <= 5 {
		try(sim.GiveRate, sim.NoPart, 0)
	}
}

// safety sees to what cannot wait: a bag that was reacted to, a question, a breach, air.
func (o *Steady) safety(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	for k := range v.BagsUsed {
		if o.suspect[k] && !v.Bags[k].Discarded {
			return try(sim.DiscardIt, sim.Bag(k), 0)
		}
	}
	switch v.OpenQuestion {
	case sim.EventAsk:
		return try(sim.Answer, sim.NoPart, 1)
	case sim.EventAskLoss:
		return try(sim.EstimateLoss, sim.NoPart, o.lossML(v))
	}
	for set := sim.CollectionSet; set <= sim.ProcessingSet; set++ {
		if v.Bench.Breached[set] && !v.Pump.Spinning && v.Pump.Mode == sim.PumpIdle {
			try(sim.Declare, sim.NoPart, float64(sim.IncidentBreach))
			clamp(v, sim.OutletClamp, false, try)
			return try(sim.ReplaceSet, set, 0)
		}
	}
	if v.Pump.AirML >= 1 && v.Pump.Mode == sim.PumpIdle {
		return try(sim.ClearLine, sim.NoPart, 0)
	}
	return false
}

// divert sends to the theatre's suction what must not be collected, and comes back when the surgeon says the field is clear.
func (o *Steady) divert(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	if !v.Bench.Opened[sim.CollectionSet] || v.Bench.TakenDown {
		return false
	}
	if v.AgentSaid {
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

// swabs has them rinsed when they hold enough.
func (o *Steady) swabs(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	if v.AgentSaid || v.Rinsing || v.Bench.TakenDown || v.Route != sim.ToReservoir {
		return false
	}
	if v.OperationOver && v.Pooling { // nothing more will come: have the rest sucked up
		return try(sim.Ask, sim.NoPart, float64(sim.SkimAsYouGo))
	}
	fresh := v.SwabsML - o.swabRest
	if fresh < rinseFromML && !(v.OperationOver && fresh > 60) {
		return false
	}
	before := v.SwabsML
	if !try(sim.Ask, sim.NoPart, float64(sim.RinseSwabs)) {
		return false
	}
	o.swabBlood += before - o.swabRest
	o.rinsing = true
	return true
}

// keepCount notes what the rinse brought, so that it is not taken for blood.
func (o *Steady) keepCount(v *sim.Seen) {
	if o.rinsing && !v.Rinsing && v.BasinML > 0 {
		o.rinsing = false
		o.basin += v.BasinML
		o.swabRest = v.SwabsML
	}
}

// lossML estimates the blood lost: what was collected and thrown away less what was added, and what the swabs weigh.
func (o *Steady) lossML(v *sim.Seen) float64 {
	liquid := v.TakenInML + inFilterAndLineML - v.DripML - o.basin + v.CanisterML + v.PoolML - v.IrrigationML
	swabs := o.swabBlood
	if !o.rinsing {
		swabs += v.SwabsML - o.swabRest
		liquid += v.BasinML // rinse that was counted as such, still to be sucked up
	}
	const drapes = 0.95 // a little is always lost to the drapes
	return max(0, float64(int64((liquid+swabs)/drapes/10+0.5))*10)
}
