// This file tests the drawing of quantities: it repeats exactly, keeps within
// its bounds, and has the shape it claims.

package yamlread

import (
	"math"
	"testing"

	"rouleau/sim/guarded"
)

// stream is a small generator for the tests (SplitMix64, from memory).
func stream(seed uint64) func() float64 {
	return func() float64 {
		seed += 0x9e3779b97f4a7c15
		z := (seed ^ seed>>30) * 0xbf58476d1ce4e5b9
		z = (z ^ z>>27) * 0x94d049bb133111eb
		return guarded.Uniform(z ^ z>>31)
	}
}

func TestDrawShape(t *testing.T) {
	const n = 20000
	for _, c := range []struct {
		name     string
		q        Quantity
		mean, sd float64
	}{
		{"fixed", Quantity{Value: 7}, 7, 0},
		{"uniform", Quantity{Spread: Uniform, Min: 10, Max: 22}, 16, 12 / math.Sqrt(12)},
		{"choice", Quantity{Spread: Choice, Choices: []float64{3, 1, 2}}, 2, math.Sqrt(2.0 / 3)},
		{"normal, far bounds", Quantity{Spread: Normal, Mean: 20, SD: 4, Min: -20, Max: 60}, 20, 4},
		// Cut off at one standard deviation on both sides, the variance is
		// 1 - 2φ(1)/(2Φ(1)-1) of the whole: computed here from the density.
		{"normal, cut off", Quantity{Spread: Normal, Mean: 20, SD: 4, Min: 16, Max: 24}, 20,
			4 * math.Sqrt(1-2*math.Exp(-0.5)/math.Sqrt(2*math.Pi)/math.Erf(math.Sqrt(0.5)))},
	} {
		u, sum, square := stream(1), 0.0, 0.0
		for range n {
			x := c.q.Draw(u)
			if x < c.q.Low() || x > c.q.High() {
				t.Fatalf("%s: %v lies outside %v to %v", c.name, x, c.q.Low(), c.q.High())
			}
			sum += x
			square += (x - c.mean) * (x - c.mean)
		}
		mean, sd := sum/n, math.Sqrt(square/n)
		// Four standard errors of the mean, and 3 % of the deviation.
		if math.Abs(mean-c.mean) > 4*c.sd/math.Sqrt(n)+1e-12 || math.Abs(sd-c.sd) > 0.03*c.sd {
			t.Errorf("%s: mean %v, sd %v, want %v, %v", c.name, mean, sd, c.mean, c.sd)
		}
	}
}

func TestDrawRepeats(t *testing.T) {
	q := Quantity{Spread: Normal, Mean: 20, SD: 4, Min: 10, Max: 30}
	a, b, other := stream(5), stream(5), stream(6)
	same := true
	for range 100 {
		x, y, z := q.Draw(a), q.Draw(b), q.Draw(other)
		if x != y {
			t.Fatal("the same draws give another value")
		}
		same = same && x == z
	}
	if same {
		t.Error("other draws give the same values")
	}
}

func TestDrawEndsAndClamps(t *testing.T) {
	// A slit so far from the mean that no try hits it: the nearer bound is taken.
	q := Quantity{Spread: Normal, Mean: 0, SD: 1, Min: 50, Max: 51}
	calls, u := 0, stream(3)
	x := q.Draw(func() float64 { calls++; return u() })
	if x != 50 || calls != 2*64 {
		t.Errorf("got %v after %d calls", x, calls)
	}
	// A broken source that always gives the corner of the square never makes a normal number.
	if x := (Quantity{Spread: Normal, Mean: 20, SD: 4, Min: 10, Max: 30}).Draw(func() float64 { return 0 }); x != 20 {
		t.Errorf("a stuck source gives %v", x)
	}
	almost := math.Nextafter(1, 0)
	if x := (Quantity{Spread: Choice, Choices: []float64{1, 2, 3}}).Draw(func() float64 { return almost }); x != 3 {
		t.Errorf("the last choice is %v", x)
	}
	if x := (Quantity{Spread: Uniform, Min: 0.1, Max: 0.3}).Draw(func() float64 { return almost }); x > 0.3 {
		t.Errorf("uniform gives %v", x)
	}
}

func TestBitsUndoUniform(t *testing.T) {
	for _, draw := range []uint64{0, 1 << 11, 0xfffffffffffff800, 0x123456789abcd800} {
		if got := bits(guarded.Uniform(draw)); got != draw {
			t.Errorf("%#x comes back as %#x", draw, got)
		}
	}
}
