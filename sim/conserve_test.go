package sim

// Nothing appears or vanishes: volume, cells with those that broke, and every amount, summed over all places, at every tick
// of whole cases. The promise is 1e-9 of the sum. The stores are large, so the check is stricter: 1e-9 of what is outside
// them, and of the stores no more than the rounding of so many subtractions.

import (
	"math"
	"testing"
)

const (
	conserveRelative = 1e-9
	storeRounding    = 1e-12
)

// stores are the sources outside the case.
var stores = map[string]bool{"infusion": true, "irrigation": true, "rinse": true, "donor": true, "pack": true}

// keeper knows the sum at the start and compares each later state with it.
type keeper struct {
	start  Fluid
	worst  float64 // the largest share lost so far, and of what, for the log
	what   string
	failed int
}

func keep(s *State) *keeper { return &keeper{start: s.Total()} }

// check fails the test when a place holds less than nothing or a sum has moved.
func (k *keeper) check(t testing.TB, s *State) {
	if k.failed > 5 {
		return
	}
	var total, scale Fluid
	s.Places(func(name string, f *Fluid) {
		k.place(t, s.Tick, name, f)
		weight := 1.0
		if stores[name] {
			weight = storeRounding / conserveRelative
		}
		total.CellsML += f.CellsML
		total.ML += f.ML
		scale.CellsML += weight * math.Abs(f.CellsML)
		scale.ML += weight * math.Abs(f.ML)
		for i, amount := range f.In {
			total.In[i] += amount
			scale.In[i] += weight * math.Abs(amount)
		}
		for i, amount := range f.Bound {
			total.In[int(Dissolved0)+i] += amount
			scale.In[int(Dissolved0)+i] += weight * math.Abs(amount)
		}
	})
	lysed := s.Stores.LysedML // undone: each mL of cells is 0.34 g of haemoglobin and 0.1 mmol of potassium, design paper, section 1
	total.CellsML += lysed
	total.ML -= lysed
	total.In[FreeHb] -= 0.34 * lysed
	total.In[Potassium] -= 0.1 * lysed
	k.sum(t, s.Tick, "cells and broken cells", total.CellsML, k.start.CellsML, scale.CellsML)
	k.sum(t, s.Tick, "volume", total.VolumeML(), k.start.VolumeML(), scale.VolumeML())
	for i := range total.In {
		k.sum(t, s.Tick, soluteNames[i], total.In[i], k.start.In[i], scale.In[i])
	}
}

func (k *keeper) sum(t testing.TB, tick int64, what string, now, start, scale float64) {
	lost := math.Abs(now - start)
	if scale > 0 {
		if lost/scale > k.worst {
			k.worst, k.what = lost/scale, what
		}
	}
	if !(lost <= conserveRelative*scale) {
		k.failed++
		t.Errorf("tick %d: %s has moved by %.3g from %.9g, %.3g of what there is", tick, what, now-start, start, lost/scale)
	}
}

// leastHeld allows for rounding: no place may owe more than this.
const leastHeld = -1e-9

func (k *keeper) place(t testing.TB, tick int64, name string, f *Fluid) {
	if name == "syringe" { // it starts empty and owes what it has given
		return
	}
	good := f.CellsML >= leastHeld && f.ML >= leastHeld && f.CellsML < math.MaxFloat64 && f.ML < math.MaxFloat64
	for _, amount := range f.In {
		good = good && amount >= leastHeld && amount < math.MaxFloat64
	}
	for _, amount := range f.Bound {
		good = good && amount >= leastHeld && amount < math.MaxFloat64
	}
	if !good {
		k.failed++
		t.Errorf("tick %d: %s owes something or holds what is no number: %+v", tick, name, *f)
	}
}

var soluteNames = [soluteCount]string{"protein", "free haemoglobin", "heparin", "citrate", "calcium", "potassium", "tonicity", "fat",
	"platelets", "fibrinogen", "contaminant 1", "contaminant 2", "contaminant 3", "contaminant 4"}

// keeping plays a case with every tick checked.
func keeping(t testing.TB, c Case, seed uint64) *bench {
	b := newBench(t, c, seed)
	k := keep(&b.s)
	b.each = func() { k.check(t, &b.s) }
	t.Cleanup(func() { t.Logf("largest share lost: %.2g of %s", k.worst, k.what) })
	return b
}

// The check itself must be able to fail: a thousandth of a millionth more than allowed taken from one place is noticed.
func TestConservationIsNoticed(t *testing.T) {
	c := adultCase()
	for _, spoil := range []struct {
		what string
		do   func(s *State)
	}{
		{"volume", func(s *State) { s.Field.Floor.ML += 1e-4 }},
		{"cells", func(s *State) { s.Patient.Blood.CellsML -= 1e-5; s.Patient.Blood.ML += 1e-5 }},
		{"lysis not counted", func(s *State) { s.Stores.LysedML += 1e-4 }},
		{"calcium", func(s *State) { s.Patient.Interstitium.In[Calcium] += 1e-6 }},
		{"owing", func(s *State) { s.Field.Pool.ML -= 1e-3; s.Patient.Blood.ML += 1e-3 }},
		{"not a number", func(s *State) { s.Field.Pool.In[Fat] = math.NaN() }},
	} {
		s := Start(&c, 1)
		k := keep(&s)
		spoil.do(&s)
		var inner spy
		k.check(&inner, &s)
		if inner.errors == 0 {
			t.Errorf("%s: not noticed", spoil.what)
		}
	}
}

// spy is a test that only counts its failures.
type spy struct {
	testing.TB
	errors int
}

func (s *spy) Errorf(string, ...any) { s.errors++ }
func (s *spy) Helper()               {}
