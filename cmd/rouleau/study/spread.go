package study

import (
	"math"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// This file says what the seed does: it takes the points of a study apart into what goes with who played, with the seed, and
// with neither.

// Spread says where the points of a study come from: shares of their variance. The intervals are those of Tukey's jackknife,
// which leaves out one seed after another.
type Spread struct {
	Operator Interval `json:"operator"`
	Seed     Interval `json:"seed"`
	Rest     Interval `json:"rest"`
	Seeds    int      `json:"seeds"`
}

// SpreadOf takes points by operator and seed, a whole grid, apart into sums of squares.
func SpreadOf(grid [][]float64) Spread {
	if len(grid) == 0 || len(grid[0]) == 0 {
		return Spread{}
	}
	n := len(grid[0])
	whole := sharesOf(grid, -1)
	without := make([][3]float64, 0, n)
	for k := range n {
		if n > 2 {
			without = append(without, sharesOf(grid, k))
		}
	}
	out := Spread{Seeds: n}
	for i, to := range [...]*Interval{&out.Operator, &out.Seed, &out.Rest} {
		left := make([]float64, len(without))
		for k := range without {
			left[k] = without[k][i]
		}
		*to = jackknifed(whole[i], left, n)
	}
	return out
}

// jackknifed is a share with the interval that the shares without one seed each give it, as wide as can be without them.
func jackknifed(share float64, left []float64, n int) Interval {
	if len(left) == 0 {
		return Interval{share, 0, 1, n}
	}
	mean, sum, size := stat.Mean(left, nil), 0.0, float64(n)
	for _, v := range left {
		sum += (v - mean) * (v - mean)
	}
	half := math.Sqrt((size-1)/size*sum) * distuv.StudentsT{Mu: 0, Sigma: 1, Nu: size - 1}.Quantile(1-(1-level)/2)
	return Interval{share, max(0, share-half), min(1, share+half), n}
}

// sharesOf are the shares of who played, of the seed and of neither, with one seed left out, or none for -1.
func sharesOf(grid [][]float64, leave int) [3]float64 {
	operators, seeds, sum := float64(len(grid)), 0.0, 0.0
	columns := make([]float64, len(grid[0]))
	means := make([]float64, len(grid))
	for k := range columns {
		if k == leave {
			continue
		}
		seeds++
		for i, row := range grid {
			columns[k] += row[k]
			means[i] += row[k]
			sum += row[k]
		}
	}
	grand, total, who, seed := sum/(operators*seeds), 0.0, 0.0, 0.0
	for i, row := range grid {
		d := means[i]/seeds - grand
		who += seeds * d * d
		for k, v := range row {
			if k != leave {
				total += (v - grand) * (v - grand)
			}
		}
	}
	for k := range columns {
		if d := columns[k]/operators - grand; k != leave {
			seed += operators * d * d
		}
	}
	if total <= 0 {
		return [3]float64{}
	}
	return [3]float64{who / total, seed / total, max(0, 1-who/total-seed/total)}
}
