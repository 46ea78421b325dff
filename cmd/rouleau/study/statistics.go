// Package study makes figures, pages and tables of many runs: it plays them on all processors, keeps what is finished, and
// says what the figures show and what they do not. This file holds the statistics; gonum has the distributions.
package study

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

const level = 0.95 // of every interval

// Interval is a figure with its 95 % interval and how many runs it rests on.
type Interval struct {
	Value float64 `json:"value"`
	Low   float64 `json:"low"`
	High  float64 `json:"high"`
	N     int     `json:"n"`
}

// z is the quantile of the normal distribution that belongs to the level.
var z = distuv.UnitNormal.Quantile(1 - (1-level)/2)

// Wilson is a share with the interval of E. B. Wilson.
func Wilson(yes, n int) Interval {
	if n == 0 {
		return Interval{}
	}
	p, size := float64(yes)/float64(n), float64(n)
	centre := (p + z*z/(2*size)) / (1 + z*z/size)
	half := z / (1 + z*z/size) * math.Sqrt(p*(1-p)/size+z*z/(4*size*size))
	return Interval{p, max(0, min(p, centre-half)), min(1, max(p, centre+half)), n}
}

// Mean is a mean with the interval of Student's t.
func Mean(x []float64) Interval {
	if len(x) == 0 {
		return Interval{}
	}
	mean := stat.Mean(x, nil)
	if len(x) == 1 {
		return Interval{mean, mean, mean, 1}
	}
	n := float64(len(x))
	half := stat.StdDev(x, nil) / math.Sqrt(n) * distuv.StudentsT{Mu: 0, Sigma: 1, Nu: n - 1}.Quantile(1-(1-level)/2)
	return Interval{mean, mean - half, mean + half, len(x)}
}

// Proportion is a mean of shares, 0 to 1, with Student's interval kept between them. Where all are 0 or all are 1 that one has
// no width, and Wilson's stands in for it.
func Proportion(x []float64) Interval {
	i := Mean(x)
	if i.N > 0 && i.Low == i.High && (i.Value == 0 || i.Value == 1) {
		return Wilson(int(i.Value)*i.N, i.N)
	}
	return i.between(0, 1)
}

// between keeps an interval where the figure can be.
func (i Interval) between(low, high float64) Interval {
	i.Low, i.High = max(low, i.Low), min(high, i.High)
	return i
}

// Deviation is a standard deviation with the interval of chi squared.
func Deviation(x []float64) Interval {
	if len(x) < 2 {
		return Interval{N: len(x)}
	}
	s, free := stat.StdDev(x, nil), float64(len(x)-1)
	chi := distuv.ChiSquared{K: free}
	return Interval{s, s * math.Sqrt(free/chi.Quantile(1-(1-level)/2)), s * math.Sqrt(free/chi.Quantile((1-level)/2)), len(x)}
}

// AUC is the chance that a value of better is above one of worse, ties counted half: 1 where they never overlap, 0.5 where
// nothing tells them apart. Its interval is that of DeLong, DeLong and Clarke-Pearson; where every pair is alike that one
// has no width, and the interval of Wilson for the smaller group stands in for it.
func AUC(better, worse []float64) Interval {
	m, n := len(better), len(worse)
	if m == 0 || n == 0 {
		return Interval{}
	}
	above, below := placements(better, worse), placements(worse, better)
	auc := stat.Mean(above, nil)
	out := Interval{Value: auc, N: min(m, n)}
	spread := 0.0
	if m > 1 && n > 1 {
		spread = stat.Variance(above, nil)/float64(m) + stat.Variance(below, nil)/float64(n)
	}
	if spread <= 0 {
		w := Wilson(int(math.Round(auc*float64(out.N))), out.N)
		out.Low, out.High = w.Low, w.High
		return out
	}
	half := z * math.Sqrt(spread)
	out.Low, out.High = max(0, auc-half), min(1, auc+half)
	return out
}

// placements gives for each x the share of the others that lie below it, ties counted half.
func placements(x, others []float64) []float64 {
	sorted := slices.Clone(others)
	slices.Sort(sorted)
	out := make([]float64, len(x))
	for i, v := range x {
		below, _ := slices.BinarySearch(sorted, v)
		upTo := below
		for upTo < len(sorted) && sorted[upTo] == v {
			upTo++
		}
		out[i] = (float64(below) + float64(upTo-below)/2) / float64(len(sorted))
	}
	return out
}

// Correlation is Pearson's with the interval of Fisher's z, nil where one side never varies or there are fewer than four.
func Correlation(x, y []float64) *Interval {
	if len(x) < 4 || stat.Variance(x, nil) < 1e-18 || stat.Variance(y, nil) < 1e-18 {
		return nil
	}
	r := max(-1, min(1, stat.Correlation(x, y, nil)))
	if math.Abs(r) > 1-1e-12 {
		return &Interval{r, r, r, len(x)}
	}
	half := z / math.Sqrt(float64(len(x)-3))
	return &Interval{r, math.Tanh(math.Atanh(r) - half), math.Tanh(math.Atanh(r) + half), len(x)}
}
