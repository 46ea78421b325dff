package sim

// Invented cases for the tests, scripts of actions, and a player that checks every tick.

import (
	"math"
	"testing"
)

// script is what hands do, in order; each act is stamped in seconds.
type script []struct {
	atS   float64
	do    Verb
	on    Part
	value float64
}

// adultCase is the 75-minute adult case of the design paper, section 10: 4.8 L, haematocrit 0.40.
func adultCase() Case {
	minute := func(m float64) int64 { return Ticks(60 * m) }
	return Case{
		Patient: PatientSpec{BloodVolumeML: 4800, WeightKg: 75, Hct: 0.40, PlasmaProteinGL: 70, PlateletsG9L: 250, FibrinogenGL: 3,
			ESRMMPerH: 15, CalciumMmolL: 2.4, PotassiumMmolL: 4.2, MaintenanceMLMin: 2, TransfusionHbGDL: 7, PatienceTicks: minute(10),
			HeartRate: 70, MeanPressureMmHg: 80},
		Phases: []Phase{
			{Name: "opening", BleedMLMin: 8, Irrigation: Saline, SwabShare: 0.28, DrapeShare: 0.05},
			{Name: "main", StartTick: minute(10), BleedMLMin: 35, IrrigationMLMin: 15, Irrigation: Saline, SwabShare: 0.28, DrapeShare: 0.05},
			{Name: "late", StartTick: minute(45), BleedMLMin: 20, IrrigationMLMin: 15, Irrigation: Saline, SwabShare: 0.28, DrapeShare: 0.05},
			{Name: "closing", StartTick: minute(65), BleedMLMin: 5, IrrigationMLMin: 30, Irrigation: Saline, SwabShare: 0.28, DrapeShare: 0.05},
		},
		Packs: []PackSpec{
			{Solution: HeparinSolution, VolumeML: 1000, On: AnticoagulantHook},
			{Solution: Saline, VolumeML: 3000, On: WashHookA},
			{Solution: Saline, VolumeML: 3000},
			{Solution: CitrateSolution, VolumeML: 1000},
			{Solution: SterileWater, VolumeML: 1000},
			{Solution: BalancedCrystalloid, VolumeML: 1000, Expired: true},
			{Solution: HeparinSolution, VolumeML: 1000},
		},
		Faults: BenchFaults{WasteCapacityML: 10000, BagCapacityML: 1000, ExpiryTicks: minute(240), LabTicks: minute(3), ReservoirML: 3000},
		Rules:  Rules{AutoFill: true, AutoStop: true, AutoWash: true, AutoEmpty: true},
		// the operation's end and the end of the time allowed
		EndTick: minute(75), LastTick: minute(90),
	}
}

// openBench decides, opens, connects, primes 200 mL and routes the sucker to the reservoir; ready at 160 s.
func openBench(agent Solution, bowl BowlKind) script {
	return script{
		{0, Decide, 0, float64(SetUpToProcess)}, {0, ChooseAnticoagulant, 0, float64(agent)}, {0, ChooseBowl, 0, float64(bowl)},
		{0, OpenSet, CollectionSet, 0}, {46, Connect, SuctionLine, 0}, {53, Connect, VacuumLine, 0}, {60, TestVacuum, 0, 0},
		{60, SetVacuum, 0, 150}, {60, Clamp, DripClamp, 1}, {60, Prime, 0, 200}, {69, OpenSet, ProcessingSet, 0},
		{115, Connect, OutletLine, 0}, {115, SetDrip, 0, 60}, {115, Route, 0, float64(ToReservoir)},
		{130, Clamp, OutletClamp, 1}, {130, Clamp, WashClampA, 1},
	}
}

// automaticBowls has the bench process a bowlful whenever the reservoir holds fillAtML.
func automaticBowls(atS, fillAtML float64) script {
	return script{{atS, AutoFillAt, 0, fillAtML}, {atS, AutoStop, 0, 1}, {atS, AutoWash, 0, 1}, {atS, AutoEmpty, 0, 1}}
}

// bench plays a case in a test.
type bench struct {
	t        testing.TB
	c        Case
	s        State
	h        Happened
	each     func() // after every tick
	accepted [verbCount]int
}

func newBench(t testing.TB, c Case, seed uint64) *bench {
	b := &bench{t: t, c: c}
	b.s = Start(&b.c, seed)
	return b
}

// tick lets one tick pass.
func (b *bench) tick() {
	Step(&b.c, &b.s, &b.h)
	if b.each != nil {
		b.each()
	}
}

// until lets time pass up to a second of the case, or its end.
func (b *bench) until(atS float64) {
	for b.s.Tick < Ticks(atS) && !b.s.Ended {
		b.tick()
	}
}

// do acts now and fails the test when it is refused.
func (b *bench) do(v Verb, on Part, value float64) {
	b.t.Helper()
	a := Action{Do: v, On: on, Value: value}
	if why := Apply(&b.c, &b.s, a, &b.h); why != "" {
		b.t.Fatalf("%.1f s: %v on %q with %g is refused: %s", Seconds(b.s.Tick), v, on, value, why)
	}
	b.accepted[v]++
}

// play goes through a script.
func (b *bench) play(s script) {
	b.t.Helper()
	for _, step := range s {
		b.until(step.atS)
		b.do(step.do, step.on, step.value)
	}
}

// waitFor lets time pass until something holds, and fails the test when it does not within limitS.
func (b *bench) waitFor(what string, limitS float64, holds func() bool) {
	b.t.Helper()
	for last := b.s.Tick + Ticks(limitS); !holds(); {
		if b.s.Tick >= last || b.s.Ended {
			b.t.Fatalf("%.1f s: %s did not come within %g s", Seconds(b.s.Tick), what, limitS)
		}
		b.tick()
	}
}

// wait lets seconds pass.
func (b *bench) wait(seconds float64) { b.until(Seconds(b.s.Tick) + seconds) }

// happened says whether an occurrence with the key is in the log.
func (b *bench) happened(key string) bool {
	for i := range b.h.List {
		if b.h.List[i].Key == key {
			return true
		}
	}
	return false
}

// near fails the test unless got is within relative of want.
func near(t testing.TB, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Abs(want)) {
		t.Errorf("%s: %.6g, want %.6g within %.3g %%", what, got, want, 100*relative)
	}
}

// within fails the test unless got lies between least and most.
func within(t testing.TB, what string, got, least, most float64) {
	t.Helper()
	if !(got >= least && got <= most) {
		t.Errorf("%s: %.6g, want between %.6g and %.6g", what, got, least, most)
	}
}
