// This file: the special values that the comments of the functions promise.

package guarded

import (
	"math"
	"testing"
)

var (
	inf     = math.Inf(1)
	nan     = math.NaN()
	negZero = math.Copysign(0, -1)
)

const (
	least       = 0x1p-1074
	leastNormal = 0x1p-1022
)

// same tells zeros apart by sign and takes one particular NaN only, as the package promises its bits.
func same(a, b float64) bool { return math.Float64bits(a) == math.Float64bits(b) }

func TestSpecialValuesOfOneArgument(t *testing.T) {
	oddNaN := math.Float64frombits(0xfff8000000000123)
	for _, c := range []struct {
		name    string
		f       func(float64) float64
		x, want float64
	}{
		{"Exp", Exp, nan, nan}, {"Exp", Exp, oddNaN, nan}, {"Exp", Exp, inf, inf}, {"Exp", Exp, -inf, 0},
		{"Exp", Exp, 0, 1}, {"Exp", Exp, negZero, 1}, {"Exp", Exp, least, 1}, {"Exp", Exp, 709.79, inf},
		{"Exp", Exp, 1e300, inf}, {"Exp", Exp, -745.14, 0}, {"Exp", Exp, -1e300, 0}, {"Exp", Exp, -745.13, least},
		{"Log", Log, nan, nan}, {"Log", Log, oddNaN, nan}, {"Log", Log, -1, nan}, {"Log", Log, -inf, nan}, {"Log", Log, -least, nan},
		{"Log", Log, 0, -inf}, {"Log", Log, negZero, -inf}, {"Log", Log, inf, inf}, {"Log", Log, 1, 0},
		{"Log", Log, least, -744.4400719213812}, {"Log", Log, math.MaxFloat64, 709.782712893384},
		{"Pow25", Pow25, nan, nan}, {"Pow25", Pow25, oddNaN, nan}, {"Pow25", Pow25, -2, nan}, {"Pow25", Pow25, -inf, nan},
		{"Pow25", Pow25, 0, 0}, {"Pow25", Pow25, negZero, 0}, {"Pow25", Pow25, inf, inf}, {"Pow25", Pow25, 1, 1},
		{"Pow25", Pow25, 4, 32}, {"Pow25", Pow25, 1e200, inf}, {"Pow25", Pow25, least, 0},
		{"Erf", Erf, nan, nan}, {"Erf", Erf, oddNaN, nan}, {"Erf", Erf, inf, 1}, {"Erf", Erf, -inf, -1},
		{"Erf", Erf, 0, 0}, {"Erf", Erf, negZero, negZero}, {"Erf", Erf, 6, 1}, {"Erf", Erf, -6, -1}, {"Erf", Erf, least, least},
		{"NormalCDF", NormalCDF, nan, nan}, {"NormalCDF", NormalCDF, oddNaN, nan}, {"NormalCDF", NormalCDF, inf, 1},
		{"NormalCDF", NormalCDF, -inf, 0}, {"NormalCDF", NormalCDF, 0, 0.5}, {"NormalCDF", NormalCDF, negZero, 0.5},
		{"NormalCDF", NormalCDF, least, 0.5}, {"NormalCDF", NormalCDF, 9, 1}, {"NormalCDF", NormalCDF, -38.6, 0}, {"NormalCDF", NormalCDF, -1e300, 0},
	} {
		if got := c.f(c.x); !same(got, c.want) {
			t.Errorf("%s(%v) = %v, want %v", c.name, c.x, got, c.want)
		}
	}
}

// For bases from 0 on the special cases are those of the standard library, bit for bit; ordinary results may differ in
// the last bit. Unlike there, -0 counts as 0.
func TestPowSpecialValues(t *testing.T) {
	bases := []float64{0, least, leastNormal / 4, 0.5, 1 - 0x1p-53, 1, 1 + 0x1p-52, 2, math.MaxFloat64, inf, nan}
	exponents := []float64{0, negZero, 1, -1, 2, -2, inf, -inf, 1e300, -1e300, 0x1p70, -0x1p70, math.MaxFloat64, least, -least, nan}
	for _, x := range bases {
		for _, y := range exponents {
			got, want := Pow(x, y), math.Pow(x, y)
			if math.IsNaN(want) {
				want = nan
			}
			ordinary := want != 0 && want != 1 && !math.IsInf(want, 0) && !math.IsNaN(want)
			if !same(got, want) && !(ordinary && ulps(got, bigOf(want)) <= 1) {
				t.Errorf("Pow(%v, %v) = %v, want %v", x, y, got, want)
			}
		}
	}
	for _, c := range []struct{ x, y, want float64 }{
		{-1, 2, nan}, {-least, 0.5, nan}, {-inf, 1, nan}, {-inf, inf, nan}, {-3, 0, 1}, {-inf, 0, 1},
		{negZero, 3, 0}, {negZero, -3, inf}, {negZero, 0.5, 0}, {10, 309, inf}, {10, -324, 0}, {2, -1074, least}, {2, -1076, 0},
		{2, 1023, 0x1p1023}, {2, 1024, inf}, {4, 0.5, 2}, {least, -0.5, 0x1p537}, {least, 0.5, 0x1p-537}, {0x1p-1060, 0.25, 0x1p-265},
	} {
		if got := Pow(c.x, c.y); !same(got, c.want) {
			t.Errorf("Pow(%v, %v) = %v, want %v", c.x, c.y, got, c.want)
		}
	}
}

// A law of the model must not jump where an approximation hands over to the next.
func TestNoStepBackWhereApproximationsMeet(t *testing.T) {
	edges := map[string]struct {
		f  func(float64) float64
		at []float64
	}{
		"Erf":       {Erf, []float64{smallEnd, middleEnd, nearEnd, erfIsOne}},
		"NormalCDF": {NormalCDF, []float64{-nearEnd * math.Sqrt2, -middleEnd * math.Sqrt2, -smallEnd * math.Sqrt2, 0, smallEnd * math.Sqrt2, middleEnd * math.Sqrt2}},
		"Exp":       {Exp, []float64{-nearZero, nearZero, math.Ln2 / 2, -math.Ln2 / 2}},
		"Log":       {Log, []float64{0.5, 1, 1.4140625, 2, leastNormal}},
	}
	for name, e := range edges {
		for _, at := range e.at {
			last := math.Inf(-1)
			for step := -200; step <= 200; step++ {
				// Steps of many units in the last place, so that only more than rounding shows.
				y := e.f(at + math.Abs(at)*float64(step)*0x1p-46)
				if y < last {
					t.Errorf("%s steps back near %v: %v after %v", name, at, y, last)
				}
				last = y
			}
		}
	}
}
