// This file: speed, and that nothing is allocated.

package guarded

import (
	"math/rand/v2"
	"testing"
)

var sink float64

func benchmark(b *testing.B, points []float64, f func(float64) float64) {
	b.ReportAllocs()
	sum, i := 0.0, 0
	for b.Loop() {
		sum += f(points[i])
		if i++; i == len(points) {
			i = 0
		}
	}
	sink = sum
}

func BenchmarkExp(b *testing.B)       { benchmark(b, spread(1000, -50, 10, false), Exp) }
func BenchmarkLog(b *testing.B)       { benchmark(b, spread(1000, 1e-6, 1e3, true), Log) }
func BenchmarkPow25(b *testing.B)     { benchmark(b, spread(1000, 1e-6, 1e3, true), Pow25) }
func BenchmarkErf(b *testing.B)       { benchmark(b, spread(1000, -6, 6, false), Erf) }
func BenchmarkNormalCDF(b *testing.B) { benchmark(b, spread(1000, -8, 8, false), NormalCDF) }

func BenchmarkPow(b *testing.B) {
	benchmark(b, spread(1000, 1e-6, 1e3, true), func(x float64) float64 { return Pow(x, 4.65) })
}

func BenchmarkNormal(b *testing.B) {
	rng := rand.New(rand.NewPCG(1, 2))
	benchmark(b, spread(1000, 0, 1, false), func(float64) float64 { return Normal(rng) })
}

func TestNothingIsAllocated(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	if n := testing.AllocsPerRun(100, func() {
		sink += Exp(1.5) + Log(3) + Pow(0.3, 4.65) + Pow25(2) + Erf(1.3) + NormalCDF(-3) + Normal(rng)
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
}
