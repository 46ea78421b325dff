// This file: uniform and normal numbers, against their definition and their distribution.

package guarded

import (
	"math"
	"math/rand/v2"
	"sort"
	"testing"
)

type stuck uint64

func (s stuck) Uint64() uint64 { return uint64(s) }

func TestUniform(t *testing.T) {
	for _, c := range []struct {
		u    uint64
		want float64
	}{
		{0, 0}, {1<<11 - 1, 0}, {1 << 11, 0x1p-53}, {1 << 63, 0.5}, {3 << 62, 0.75}, {math.MaxUint64, 1 - 0x1p-53},
	} {
		if got := Uniform(c.u); got != c.want {
			t.Errorf("Uniform(%#x) = %v, want %v", c.u, got, c.want)
		}
	}
}

func TestNormalPairIsThePolarMethod(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	const draws = 20000
	accepted := 0
	for range draws {
		u1, u2 := rng.Uint64(), rng.Uint64()
		a, b, ok := NormalPair(u1, u2)
		x, y := float64(2*Uniform(u1))-1, float64(2*Uniform(u2))-1
		s := float64(x*x) + float64(y*y)
		if ok != (s < 1) || !ok && (a != 0 || b != 0) {
			t.Fatalf("point (%v, %v): accepted %v, numbers %v %v", x, y, ok, a, b)
		}
		if !ok {
			continue
		}
		accepted++
		f := math.Sqrt(-2 * math.Log(s) / s)
		if math.Abs(a-x*f) > 1e-14*math.Abs(a) || math.Abs(b-y*f) > 1e-14*math.Abs(b) {
			t.Fatalf("point (%v, %v): %v %v, want %v %v", x, y, a, b, x*f, y*f)
		}
	}
	// π/4 of the points lie in the circle; five standard deviations of the count allowed.
	if share := float64(accepted) / draws; math.Abs(share-math.Pi/4) > 5*math.Sqrt(math.Pi/4*(1-math.Pi/4)/draws) {
		t.Errorf("share of accepted points: %v", share)
	}
	if _, _, ok := NormalPair(1<<63, 1<<63); ok {
		t.Error("the centre of the circle was accepted")
	}
	if _, _, ok := NormalPair(0, 1<<63); ok {
		t.Error("a point on the circle was accepted")
	}
}

// The sorted numbers are held against NormalCDF: the largest distance is the Kolmogorov–Smirnov statistic, whose 0.1 % point
// for large n is 1.95/√n.
func TestNormalIsNormal(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	const n = 20000
	numbers := make([]float64, n)
	var sum, squares float64
	for i := range numbers {
		numbers[i] = Normal(rng)
		sum += numbers[i]
		squares += numbers[i] * numbers[i]
	}
	sort.Float64s(numbers)
	distance := 0.0
	for i, x := range numbers {
		p := NormalCDF(x)
		distance = max(distance, p-float64(i)/n, float64(i+1)/n-p)
	}
	if distance > 1.95/math.Sqrt(n) {
		t.Errorf("largest distance from the normal distribution: %v", distance)
	}
	if mean := sum / n; math.Abs(mean) > 4/math.Sqrt(n) {
		t.Errorf("mean %v", mean)
	}
	if variance := squares / n; math.Abs(variance-1) > 4*math.Sqrt(2.0/n) {
		t.Errorf("variance %v", variance)
	}
}

func TestNormalOfAStuckSourceEnds(t *testing.T) {
	if got := Normal(stuck(0)); !same(got, nan) {
		t.Errorf("a source that never enters the circle gave %v, want NaN", got)
	}
	if a, want := Normal(stuck(3<<62)), math.Sqrt(math.Ln2); math.Abs(a-want) > 1e-14 {
		t.Errorf("the point (½, ½) gave %v, want %v", a, want)
	}
}
