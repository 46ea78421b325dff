package sim

import "testing"

// What a colleague has done before the case stands at tick 0, keeps no hands busy and is in no log.
func TestActsBeforeTheCaseStandAtItsStart(t *testing.T) {
	c := adultCase()
	c.Packs = []PackSpec{{Solution: HeparinSolution, VolumeML: 1000}}
	c.Before = []Action{{Do: Decide, Value: float64(CollectOnly)}, {Do: OpenSet, On: CollectionSet}, {Do: Connect, On: SuctionLine}, {Do: Connect, On: VacuumLine}, {Do: SetVacuum, Value: 120},
		{Do: Hang, On: AnticoagulantHook}, {Do: Clamp, On: DripClamp, Value: 1}, {Do: Prime, Value: 150}}
	s := Start(&c, 1)
	if !s.Bench.Opened[CollectionSet] || !s.Bench.Connected[VacuumLine] || s.Bench.HookPack[AnticoagulantHook] != 0 || s.Drip.PrimeLeftML != 150 {
		t.Errorf("the bench stands at %+v", s.Bench)
	}
	if s.Bench.HandsUntil > 0 || s.Tick != 0 {
		t.Errorf("it took time: hands busy until %d, tick %d", s.Bench.HandsUntil, s.Tick)
	}
	var h Happened
	for range Ticks(60) {
		Step(&c, &s, &h)
	}
	if s.Drip.PrimedML < 149 || s.Drip.PrimedML > 151 {
		t.Errorf("%.1f mL of prime have run in", s.Drip.PrimedML)
	}
}

func TestBeforeStopsAtWhatTheBenchRefuses(t *testing.T) {
	c := adultCase()
	s := Start(&c, 1)
	c.Before = []Action{{Do: Decide, Value: float64(CollectOnly)}, {Do: Route, Value: float64(ToReservoir)}, {Do: OpenSet, On: CollectionSet}}
	if done, why := Before(&c, &s); done != 1 || why != "open_the_set_first" || s.Bench.Opened[CollectionSet] {
		t.Errorf("%d acts were done, then %q", done, why)
	}
}
