package sim

// The closed forms of the model against a general-purpose numerical reference (gonum).

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"

	"rouleau/sim/guarded"
)

func TestCapturedIsTheExpectation(t *testing.T) {
	// η = E[min(1, x·S)], S lognormal with mean 1 and log-sd 0.35: the integral over the standard normal number behind S, in
	// two pieces so that the kink lies on a border
	normal := distuv.Normal{Mu: 0, Sigma: 1}
	for _, x := range []float64{0.001, 0.05, 0.2, 0.5, 0.8, 0.95, 1, 1.05, 1.3, 2, 3, 5, 12, 19.9} {
		speed := func(z float64) float64 { return math.Exp(captureSpread*z - captureSpread*captureSpread/2) }
		kink := min(12, max(-12, (captureSpread*captureSpread/2-math.Log(x))/captureSpread))
		below := quad.Fixed(func(z float64) float64 { return x * speed(z) * normal.Prob(z) }, -12, kink, 200, nil, 0)
		above := quad.Fixed(normal.Prob, kink, 12, 200, nil, 0)
		near(t, "captured", Captured(x), below+above, 1e-9)
	}
	// and the mean of S is 1: what is caught of a hopeless load is the load itself
	s := distuv.LogNormal{Mu: -captureSpread * captureSpread / 2, Sigma: captureSpread}
	near(t, "mean speed", s.Mean(), 1, 1e-12)
	near(t, "captured of a hopeless load", Captured(1e-6), 1e-6, 1e-9)
	if Captured(20) > 1 || Captured(20.001) != 1 || Captured(0) != 0 || Captured(-1) != 0 {
		t.Error("captured leaves 0–1 at its ends")
	}
	near(t, "captured just below the shortcut", Captured(20), 1, 1e-12)
}

func TestFragilityIsTheNormalDistribution(t *testing.T) {
	d := distuv.Normal{Mu: fragilityMean, Sigma: fragilitySD}
	for x := 0.2; x < fragilityMargin; x += 0.01 {
		if want := d.Survival(x); math.Abs(OsmoticLysis(x)-want) > 1e-14 {
			t.Errorf("at %.2f g/dL: %g, want %g", x, OsmoticLysis(x), want)
		}
	}
	if left := d.Survival(fragilityMargin); left > 1e-10 {
		t.Errorf("above the margin %g of the cells would still break", left)
	}
}

func TestNormalDistribution(t *testing.T) {
	d := distuv.Normal{Mu: 0, Sigma: 1}
	for x := -8.0; x <= 8; x += 0.125 {
		near(t, "normal distribution", guarded.NormalCDF(x), d.CDF(x), 1e-12)
	}
}

// The detector's noise: normal, of sd 0.01, correlated over 2 s (design paper, section 9).
func TestDetectorNoise(t *testing.T) {
	c := adultCase()
	s := Start(&c, 11)
	s.Bowl.Kind, s.Bowl.Spinning = StandardBowl, true
	const n = 200000
	sum, squares, lagged, tail := 0.0, 0.0, 0.0, 0
	ring := make([]float64, Ticks(detectorTauS))
	for i := range n {
		s.readDetector(&Case{})
		v := s.Bowl.Detector.Noise
		sum += v
		squares += v * v
		lagged += v * ring[i%len(ring)]
		ring[i%len(ring)] = v
		if math.Abs(v) > 1.96*detectorSD {
			tail++
		}
	}
	near(t, "sd", math.Sqrt(squares/n), 0.01, 0.03)
	within(t, "mean", sum/n, -0.0006, 0.0006)
	within(t, "correlation after 2 s", lagged/squares, 0.31, 0.43) // 1/e
	within(t, "share beyond 1.96 sd", float64(tail)/n, 0.04, 0.06)
}
