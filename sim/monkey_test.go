package sim

// A monkey at the bench: acts by chance, in whole cases made by chance. Whatever it does, nothing panics, nothing is lost or
// negative or not a number, and an act that is refused changes nothing.

import (
	"fmt"
	"testing"

	"golang.org/x/exp/rand"

	"rouleau/sim/guarded"
)

// monkey draws from a copy of the state's own chance, so that its seed is that of the run.
type monkey struct{ chance rand.PCGSource }

func (m *monkey) float() float64               { return guarded.Uniform(m.chance.Uint64()) }
func (m *monkey) below(n int) int              { return int(m.float() * float64(n)) }
func (m *monkey) between(a, b float64) float64 { return a + (b-a)*m.float() }

// eager are the acts that move blood: the monkey would hardly ever come to them by mere chance.
var eager = [...]struct {
	do  Verb
	on  []Part
	low float64
	up  float64
}{
	{Fill, nil, 0, 0}, {Wash, nil, 0, 0}, {StopPump, nil, 0, 0}, {StopAll, nil, 0, 0}, {Empty, nil, 0, 0}, {DrawBack, nil, 0, 0}, {TopUp, nil, 0, 0},
	{SendBack, nil, 0, 0}, {ClearLine, nil, 0, 0}, {NewBag, nil, 0, 0}, {Hook, []Part{Bag(0), Bag(1), Bag(2), AnticoagulantHook}, 0, 1},
	{GiveRate, nil, 0, 150}, {Squeeze, nil, 0, 1}, {Clamp, []Part{DripClamp, OutletClamp, WashClampA, WashClampB}, 1, 1},
	{Clamp, []Part{DripClamp, OutletClamp, WashClampA, WashClampB, WasteDrain, SparePort}, 0, 1}, {Route, nil, 1, 1}, {SetVacuum, nil, 50, 400},
	{SetWashVolume, nil, 50, 800}, {Connect, []Part{VacuumLine, SuctionLine, OutletLine, ProductLine}, 0, 0}, {ChangeWaste, nil, 0, 0},
	{Ask, nil, float64(RinseSwabs), float64(RinseSwabs)}, {ReplaceSet, []Part{CollectionSet, ProcessingSet}, 0, 0},
	{DiscardIt, []Part{Bag(0), Bag(1), ReservoirPart}, 0, 0}, {Mix, nil, 0, 0}, {SetDrip, nil, 0, 240},
	{Hang, []Part{AnticoagulantHook, WashHookA, WashHookB}, 0, MaxPacks - 1}, {SetFillRate, nil, 100, 900}, {SetWashRate, nil, 100, 900},
}

// act thinks of something to do, often something that cannot be done.
func (m *monkey) act() Action {
	if m.float() < 0.7 {
		e := eager[m.below(len(eager))]
		a := Action{Do: e.do}
		if len(e.on) > 0 {
			a.On = e.on[m.below(len(e.on))]
		}
		a.Value = m.between(e.low, e.up)
		if _, _, whole := ValueRange(e.do); whole {
			a.Value = float64(int(a.Value + 0.5))
		}
		return a
	}
	a := Action{Do: Verb(m.below(int(verbCount) + 1)), On: Part(m.below(int(partCount) + 1)), Item: uint8(m.below(int(TallyItems) + 1))}
	least, most, whole := ValueRange(a.Do)
	a.Value = m.between(least, most)
	if whole {
		a.Value = float64(int(a.Value))
	}
	if m.float() < 0.05 {
		a.Value = m.between(-1e6, 1e6)
	}
	return a
}

// someCase is an adult case with everything in it drawn by chance.
func (m *monkey) someCase() Case {
	c := adultCase()
	c.LastTick = Ticks(45 * 60)
	c.EndTick = c.LastTick - Ticks(60)
	for i := range c.Phases {
		p := &c.Phases[i]
		p.StartTick /= 2
		p.BleedMLMin = m.between(0, 200)
		p.IrrigationMLMin, p.Irrigation = m.between(0, 300), Solution(m.below(int(solutionCount)))
		p.SwabShare, p.DrapeShare = m.between(0, 0.6), m.between(0, 0.4)
		p.FatMLPerML = m.between(0, 0.05)
		p.LysedShare = m.between(0, 0.2)
		for k := range p.ContaminantPerML {
			p.ContaminantPerML[k] = max(0, m.between(-1, 1))
		}
	}
	for range MaxContaminants {
		c.Contaminants = append(c.Contaminants, ContaminantSpec{BoundShare: m.float(), Procoagulant: m.float() < 0.5, MustDivert: m.float() < 0.5,
			LimitPerML: m.float(), HaemostatFull: m.float(), AgentPerML: m.float()})
	}
	for k := EventSay; k <= EventPumpBlood; k++ {
		e := EventSpec{Kind: k, When: Trigger(m.below(int(WhenProduct) + 1)), At: Ticks(m.between(60, 2400)), Threshold: m.between(0, 20), Line: -1, Value: 1}
		switch k {
		case EventAgentOn, EventAgentOff:
			e.Value = float64(m.below(MaxContaminants))
		case EventHeparin, EventProtamine:
			e.Value = m.between(0, 20000)
		case EventBypass:
			e.Value = m.between(100, 2000)
		case EventPumpBlood:
			e.Within = Ticks(m.between(0, 900))
		case EventBowlLeak:
			e.Value = m.between(0, 100)
		}
		c.Events = append(c.Events, e)
	}
	for p := DripClamp; p <= SparePort; p++ {
		c.Faults.OpenClamps[p] = m.float() < 0.5
	}
	for p := VacuumLine; p <= WasteLine; p++ {
		c.Faults.LooseLines[p] = m.float() < 0.3
	}
	c.Faults.TouchChance = m.float()
	c.Faults.WasteCapacityML, c.Faults.BagCapacityML = m.between(500, 10000), m.between(150, 1000)
	c.Faults.ReservoirML = m.between(300, 3000)
	c.Patient.TransfusionHbGDL = m.between(5, 13)
	return c
}

func TestMonkey(t *testing.T) {
	var done [verbCount]int
	for seed := uint64(1); seed <= 6; seed++ {
		t.Run(fmt.Sprint(seed), func(t *testing.T) { letMonkeyPlay(t, seed, &done) })
	}
	for _, v := range [...]Verb{Fill, Wash, Empty, Hook, GiveRate, StopAll, ClearLine, ChangeWaste, NewBag, DrawBack, SendBack, ReplaceSet, DiscardIt} {
		if done[v] == 0 {
			t.Errorf("no monkey came to %v, so nothing is proved about it", v)
		}
	}
}

func letMonkeyPlay(t *testing.T, seed uint64, done *[verbCount]int) {
	var m monkey
	m.chance.Seed(seed)
	b := newBench(t, m.someCase(), seed)
	k := keep(&b.s)
	b.each = func() {
		if b.s.Tick%5 == 0 { // every tick of the whole cases is checked elsewhere
			k.check(t, &b.s)
		}
	}
	if seed%3 != 0 { // the others have to find out by themselves
		b.play(openBench([...]Solution{HeparinSolution, CitrateSolution}[seed%2], BowlKind(1+seed%3)))
		b.play(automaticBowls(200, 250))
	}
	m.chance = b.s.Chance
	next := b.s.Tick
	for !b.s.Ended {
		if b.s.Tick >= next {
			next += int64(m.between(1, 40))
			a := m.act()
			if (a.Do == TakeDown || a.Do == Decide) && b.s.Tick < b.c.LastTick*3/4 {
				continue // after these there is little left to play with
			}
			before := b.s
			why := Apply(&b.c, &b.s, a, &b.h)
			if why != "" && b.s != before {
				t.Fatalf("tick %d: %v is refused (%s) and has changed the state", b.s.Tick, a.Do, why)
			}
			if why == "" {
				done[a.Do]++
				k.check(t, &b.s)
			}
		}
		b.tick()
		if t.Failed() {
			dumpLast(t, b)
			return
		}
		b.h.List = keepLast(b.h.List, 40)
	}
}

// keepLast forgets all but the last n occurrences once there are many.
func keepLast(list []Occurrence, n int) []Occurrence {
	if len(list) < 50*n {
		return list
	}
	return append(list[:0], list[len(list)-n:]...)
}

// dumpLast shows what was done before a failure.
func dumpLast(t *testing.T, b *bench) {
	for _, o := range b.h.List[max(0, len(b.h.List)-40):] {
		if o.Kind == Done {
			t.Logf("%d: %v %v %g", o.Tick, o.Act.Do, o.Act.On, o.Act.Value)
		}
	}
}
