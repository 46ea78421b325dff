package sim

// Limits that a value hardly ever reaches. These branch, so that the processor goes on with the value before it is known to
// keep within them; the built-in min and max make it wait, and settling and spinning are long chains of values that wait for
// each other.

// atLeast is x, or lo where x is less.
func atLeast(lo, x float64) float64 {
	if x <= lo {
		return lo
	}
	return x
}

// atMost is x, or hi where x is more.
func atMost(hi, x float64) float64 {
	if x >= hi {
		return hi
	}
	return x
}

// clamp is x within lo and hi.
func clamp(x, lo, hi float64) float64 { return atLeast(lo, atMost(hi, x)) }
