// Tests of tracks: what is kept while values are added equals what a look at all values gives.

package ui

import (
	"math"
	"math/rand/v2"
	"testing"
)

// groupOf is the extent of a group by looking at all of its values.
func groupOf(vals []float32) extent {
	e := extent{float32(math.NaN()), float32(math.NaN()), false}
	at := [2]int{-1, -1}
	for i, v := range vals {
		if v != v {
			continue
		}
		if at[0] < 0 || v < e.lo {
			e.lo, at[0] = v, i
		}
		if at[1] < 0 || v > e.hi {
			e.hi, at[1] = v, i
		}
	}
	e.highFirst = at[1] < at[0]
	return e
}

func same(a, b float32) bool { return a == b || a != a && b != b }

func check(t *testing.T, tr *Track) {
	t.Helper()
	n := tr.Len()
	for k := range tr.groups {
		size := leastGroup << k
		if want := (n + size - 1) / size; len(tr.groups[k]) != want {
			t.Fatalf("%d values make %d groups of %d, want %d", n, len(tr.groups[k]), size, want)
		}
		for i, got := range tr.groups[k] {
			want := groupOf(tr.vals[i*size : min(n, (i+1)*size)])
			if !same(got.lo, want.lo) || !same(got.hi, want.hi) || got.lo < got.hi && got.highFirst != want.highFirst {
				t.Fatalf("%d values, group %d of %d: %v, want %v", n, i, size, got, want)
			}
		}
	}
	all := groupOf(tr.vals)
	if lo, hi := tr.Range(); !same(float32(lo), all.lo) || !same(float32(hi), all.hi) {
		t.Fatalf("%d values range from %g to %g, want %v", n, lo, hi, all)
	}
}

func TestGroupsKeptEqualGroupsCounted(t *testing.T) {
	for seed := range uint64(20) {
		r := rand.New(rand.NewPCG(seed, 7))
		tr := &Track{}
		for tr.Len() < 300+int(seed)*17 {
			run := 1 + r.IntN(12)
			gap, steps := r.IntN(5) == 0, r.IntN(2) == 0
			v := r.Float64()
			for range run {
				switch {
				case gap:
					tr.Add(math.NaN())
				case steps:
					tr.Add(v)
				default:
					tr.Add(r.Float64())
				}
			}
			check(t, tr)
		}
		tr.Halve()
		check(t, tr)
		tr.Add(3)
		check(t, tr)
		if tr.Last() != 3 {
			t.Errorf("the newest is %g", tr.Last())
		}
	}
}

func TestAddingTouchesFewGroups(t *testing.T) {
	tr := &Track{}
	for range 1 << 14 {
		tr.Add(1)
	}
	if n := len(tr.groups); n > 14 {
		t.Errorf("%d sizes of groups for %d values", n, tr.Len())
	}
	if a := testing.AllocsPerRun(2000, func() { tr.Add(2) }); a > 0 {
		t.Errorf("adding a value allocates %g times", a)
	}
	if k := tr.level(3600.0 / 450); k < 0 || leastGroup<<k < 8 || leastGroup<<k > 16 {
		t.Errorf("8 values a pixel are served by level %d", k)
	}
}
