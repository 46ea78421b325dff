package sim

// A run is its case, seed and actions and nothing else: the same bits again, from a copy too, and no memory taken per tick.

import (
	"reflect"
	"testing"
)

// wholeScript opens the bench, lets the automatic steps process, and asks for this and that on the way.
func wholeScript() script {
	s := append(openBench(HeparinSolution, StandardBowl), automaticBowls(200, 700)...)
	return append(s, script{{900, Mix, 0, 0}, {1300, Ask, 0, float64(RinseSwabs)}, {1500, Ask, 0, float64(LetItPool)},
		{2000, Sample, ReservoirPart, 0}, {2100, Mix, 0, 0}, {2600, SetDrip, 0, 100}, {3000, Sample, PatientPart, 0}}...)
}

// hashes plays a whole case and keeps the hash of every minute.
func hashes(t *testing.T, seed uint64) []uint64 {
	b := newBench(t, adultCase(), seed)
	b.c.Faults.TouchChance = 0.5
	var all []uint64
	b.each = func() {
		if b.s.Tick%Ticks(60) == 0 {
			all = append(all, b.s.Hash())
		}
	}
	b.play(wholeScript())
	b.until(lastS(b))
	return append(all, b.s.Hash())
}

func TestSameSeedSameBits(t *testing.T) {
	first, again, other := hashes(t, 7), hashes(t, 7), hashes(t, 8)
	if !reflect.DeepEqual(first, again) {
		t.Error("the same seed and actions gave other bits")
	}
	if len(first) < 80 {
		t.Errorf("only %d hashes: the case did not run", len(first))
	}
	for i := range other {
		if other[i] == first[i] {
			t.Errorf("minute %d: another seed gave the same state", i)
		}
	}
}

// A hash that misses a field proves nothing: every number of the state must change it.
func TestHashSeesEveryNumber(t *testing.T) {
	c := adultCase()
	s := Start(&c, 1)
	before, count := s.Hash(), 0
	s.Fields(func(string, uint64) { count++ })
	v := reflect.ValueOf(&s).Elem()
	changed := 0
	forEachNumber(v, func(n reflect.Value) {
		if !n.CanSet() { // unexported: the shape of a trial's bowl
			changed++
			return
		}
		old := reflect.New(n.Type()).Elem()
		old.Set(n)
		switch {
		case n.Kind() == reflect.Bool:
			n.SetBool(!n.Bool())
		case n.CanInt():
			n.SetInt(n.Int() ^ 1)
		case n.CanUint():
			n.SetUint(n.Uint() ^ 1)
		default:
			n.SetFloat(n.Float() + 1)
		}
		if s.Hash() != before {
			changed++
		}
		n.Set(old)
	})
	if changed != count {
		t.Errorf("%d of %d numbers change the hash", changed, count)
	}
}

func forEachNumber(v reflect.Value, visit func(reflect.Value)) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			forEachNumber(v.Field(i), visit)
		}
	case reflect.Array:
		for i := range v.Len() {
			forEachNumber(v.Index(i), visit)
		}
	default:
		visit(v)
	}
}

// A copy of the state goes on as the original does, and playing the one does not touch the other.
func TestCopyGoesOnTheSame(t *testing.T) {
	b := newBench(t, adultCase(), 3)
	b.play(wholeScript()[:22])
	b.until(1590) // while the first bowl is being processed
	if b.s.Bowl.CellsML < 1 {
		t.Fatal("the bowl is empty: nothing is proved about it")
	}
	snapshot := b.s
	held := snapshot.Hash()
	var ends [2]uint64
	for i := range ends {
		b.s = snapshot
		b.wait(600)
		ends[i] = b.s.Hash()
	}
	if ends[0] != ends[1] {
		t.Error("two runs from one snapshot part")
	}
	if snapshot.Hash() != held {
		t.Error("playing on has changed the snapshot")
	}
}

func TestStepTakesNoMemory(t *testing.T) {
	for _, m := range tickMoments {
		b := m.bench(t)
		b.h.List = make([]Occurrence, 0, 4096)
		s, h := b.s, Happened{List: b.h.List}
		if n := testing.AllocsPerRun(400, func() { Step(&b.c, &s, &h) }); n != 0 {
			t.Errorf("%s: %g allocations per tick", m.name, n)
		}
	}
}
