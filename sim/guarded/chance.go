// This file: chance. Turns raw draws of a 64-bit generator into uniform and normal numbers with the same bits everywhere.

package guarded

import "math"

// Source is a generator of uniform 64-bit draws, such as the one kept in the simulation's state.
type Source interface{ Uint64() uint64 }

// Uniform gives a number from 0 up to, not including, 1, from the top 53 bits of a draw; exact.
func Uniform(u uint64) float64 { return float64(float64(u>>11) * (1.0 / (1 << 53))) }

// NormalPair makes two independent standard normal numbers of two draws, by the polar method (G. Marsaglia and T. A. Bray,
// SIAM Review 1964;6:260–264, from memory). The draws name a point in a square; if it lies outside the unit circle or in its very
// centre, which happens about once in five times, ok is false and two new draws are needed.
func NormalPair(u1, u2 uint64) (a, b float64, ok bool) {
	x := float64(2*Uniform(u1)) - 1
	y := float64(2*Uniform(u2)) - 1
	s := float64(x*x) + float64(y*y)
	if s >= 1 || s == 0 {
		return 0, 0, false
	}
	f := math.Sqrt(float64(-2*Log(s)) / s)
	return float64(x * f), float64(y * f), true
}

// A working source misses the circle this often in a row less than once in 10^60 calls.
const maxMisses = 100

// Normal gives one standard normal number. It draws pairs until NormalPair accepts one and lets the second number go, so that
// nothing but the source has to be kept. A source that is stuck outside the circle gives NaN rather than an endless loop.
func Normal(src Source) float64 {
	for range maxMisses {
		u1 := src.Uint64()
		u2 := src.Uint64()
		if a, _, ok := NormalPair(u1, u2); ok {
			return a
		}
	}
	return math.NaN()
}
