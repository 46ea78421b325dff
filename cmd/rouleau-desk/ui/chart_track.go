// What a chart draws from: values at even distances that only grow, kept with the lowest and the highest of ever larger
// groups. Adding a value touches one group of each size, and drawing looks at about one group a pixel, so that a day of
// seconds costs no more to draw than a minute.

package ui

import "math"

// leastGroup is the number of values in the smallest groups; each next size is twice as large.
const leastGroup = 4

// extent is the lowest and the highest value of a group, and which of them came first. Both are NaN in a gap.
type extent struct {
	lo, hi    float32
	highFirst bool
}

// Track is a row of values. NaN is a gap.
type Track struct {
	vals   []float32
	groups [][]extent // groups[k] are of leastGroup<<k values
}

// TrackOf makes a track of values.
func TrackOf(values ...float64) *Track {
	t := &Track{}
	for _, v := range values {
		t.Add(v)
	}
	return t
}

// Len is how many values there are.
func (t *Track) Len() int { return len(t.vals) }

// At is a value, NaN where there is none.
func (t *Track) At(i int) float64 {
	if i < 0 || i >= len(t.vals) {
		return math.NaN()
	}
	return float64(t.vals[i])
}

// Last is the newest value, NaN where there is none.
func (t *Track) Last() float64 { return t.At(len(t.vals) - 1) }

// Add adds a value.
func (t *Track) Add(value float64) {
	v := float32(value)
	t.vals = append(t.vals, v)
	n := len(t.vals)
	for k := 0; ; k++ {
		if k == len(t.groups) {
			if n <= leastGroup<<k>>1 && k > 0 || n < leastGroup {
				return
			}
			t.groups = append(t.groups, nil)
			t.build(k)
			return
		}
		if i := (n - 1) / (leastGroup << k); i == len(t.groups[k]) {
			t.groups[k] = append(t.groups[k], extent{v, v, false})
		} else {
			t.groups[k][i].take(v)
		}
	}
}

// build makes all groups of one size from the values.
func (t *Track) build(k int) {
	for i, v := range t.vals {
		if i%(leastGroup<<k) == 0 {
			t.groups[k] = append(t.groups[k], extent{v, v, false})
		} else {
			t.groups[k][len(t.groups[k])-1].take(v)
		}
	}
}

func (e *extent) take(v float32) {
	switch {
	case v != v:
	case e.lo != e.lo:
		*e = extent{v, v, false}
	case v > e.hi:
		e.hi, e.highFirst = v, false
	case v < e.lo:
		e.lo, e.highFirst = v, true
	}
}

// Halve keeps every second value, for a row that has grown beyond what it may take of memory.
func (t *Track) Halve() {
	kept := t.vals[:0]
	for i := 0; i < len(t.vals); i += 2 {
		kept = append(kept, t.vals[i])
	}
	t.vals = kept
	for k := range t.groups {
		t.groups[k] = t.groups[k][:0]
		t.build(k)
	}
}

// Range is the lowest and the highest of all values, NaN when there is none.
func (t *Track) Range() (lo, hi float64) {
	all := extent{float32(math.NaN()), float32(math.NaN()), false}
	if k := len(t.groups) - 1; k >= 0 {
		for _, e := range t.groups[k] {
			all.take(e.lo)
			all.take(e.hi)
		}
	} else {
		for _, v := range t.vals {
			all.take(v)
		}
	}
	return float64(all.lo), float64(all.hi)
}

// level is the size of groups that serves so many values a pixel, -1 for the values themselves.
func (t *Track) level(perPixel float64) int {
	if perPixel <= leastGroup-1 {
		return -1
	}
	k := 0
	for k+1 < len(t.groups) && float64(int(leastGroup)<<k) < perPixel {
		k++
	}
	return min(k, len(t.groups)-1)
}
