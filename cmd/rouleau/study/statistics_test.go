package study

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/integrate"
	"gonum.org/v1/gonum/stat"
)

func near(a, b float64) bool { return math.Abs(a-b) < 5e-4 }

// Planted groups whose areas can be counted by hand.
func TestAUC(t *testing.T) {
	for _, c := range []struct {
		name          string
		better, worse []float64
		want          float64
	}{
		{"never overlapping", []float64{3, 4}, []float64{1, 2}, 1},
		{"always below", []float64{1, 2}, []float64{3, 4}, 0},
		{"all tied", []float64{1, 1, 1}, []float64{1, 1}, 0.5},
		{"one of four pairs the other way", []float64{2, 4}, []float64{1, 3}, 0.75},
		{"a tie counts half: 3 + 1/2 of 4", []float64{2, 4}, []float64{1, 2}, 0.875},
	} {
		got := AUC(c.better, c.worse)
		if got.Value != c.want || got.Low > got.Value || got.High < got.Value || got.N != min(len(c.better), len(c.worse)) {
			t.Errorf("%s: %+v, want %g", c.name, got, c.want)
		}
	}
	if w, all := AUC(make([]float64, 200), slices.Repeat([]float64{-1}, 200)), Wilson(200, 200); w.Low != all.Low || w.Low > 0.99 {
		t.Errorf("complete separation of 200 pairs is told as certain: %+v", w)
	}
}

// gonum's own ROC curve, integrated, is the same area.
func TestAUCAgainstROC(t *testing.T) {
	var better, worse []float64
	for i := range 60 {
		better = append(better, float64((i*37)%50)+8)
		worse = append(worse, float64((i*23)%50))
	}
	values, classes := append(slices.Clone(better), worse...), make([]bool, 120)
	for i := range 60 {
		classes[i] = true
	}
	stat.SortWeightedLabeled(values, classes, nil)
	tpr, fpr, _ := stat.ROC(nil, values, classes, nil)
	if want, got := integrate.Trapezoidal(fpr, tpr), AUC(better, worse).Value; math.Abs(want-got) > 1e-12 {
		t.Errorf("%v, the curve has %v", got, want)
	}
}

// DeLong's variance of a planted pair of groups, worked by hand: better 1 3 5, worse 0 2 4. The shares below are 1/3 2/3 1,
// variance 1/9; the mirror is the same; so var = 2·(1/9)/3 and the half width is 1.96·sqrt(2/27) = 0.5334.
func TestDeLong(t *testing.T) {
	got := AUC([]float64{1, 3, 5}, []float64{0, 2, 4})
	if !near(got.Value, 2.0/3) || !near(got.Low, 2.0/3-0.5334) || got.High != 1 {
		t.Errorf("%+v", got)
	}
}

// 8 of 10: Wilson's interval is 0.4902 to 0.9433, by his formula with z = 1.96.
func TestWilson(t *testing.T) {
	if got := Wilson(8, 10); !near(got.Low, 0.4902) || !near(got.High, 0.9433) || got.N != 10 {
		t.Errorf("%+v", got)
	}
	if got := Wilson(0, 200); got.Low != 0 || !near(got.High, 0.0188) {
		t.Errorf("none of 200: %+v", got)
	}
	if got := Wilson(0, 0); got != (Interval{}) {
		t.Errorf("nothing: %+v", got)
	}
}

// Mean of 1 2 3 4 5: 3 ± 2.776·sqrt(2.5/5), Student's t with 4 degrees of freedom.
func TestMean(t *testing.T) {
	if got := Mean([]float64{1, 2, 3, 4, 5}); got.Value != 3 || !near(got.High, 3+1.9632) {
		t.Errorf("%+v", got)
	}
}

// Shares that are all alike are not told as certain, and no interval reaches beyond what there is.
func TestProportion(t *testing.T) {
	if got, want := Proportion(slices.Repeat([]float64{1}, 40)), Wilson(40, 40); got != want || got.Low > 0.95 {
		t.Errorf("all: %+v", got)
	}
	if got, want := Proportion(make([]float64, 40)), Wilson(0, 40); got != want {
		t.Errorf("none: %+v", got)
	}
	if got := Proportion([]float64{1, 1, 1, 0.2}); got.High != 1 || got.Low < 0 || got.Value != 0.8 {
		t.Errorf("%+v", got)
	}
	if got := Mean([]float64{96, 100, 100}).between(0, 100); got.High != 100 || got.Low >= 98 {
		t.Errorf("points: %+v", got)
	}
}

func TestCorrelation(t *testing.T) {
	x := []float64{1, 2, 3, 4, 5, 6}
	if got := Correlation(x, []float64{2, 4, 6, 8, 10, 12}); got == nil || !near(got.Value, 1) {
		t.Errorf("a straight line: %+v", got)
	}
	if got := Correlation(x, []float64{1, 1, 1, 1, 1, 1}); got != nil {
		t.Errorf("with what never varies: %+v", got)
	}
	// deviations -2.5 … 2.5 against 1 0 0 0 0 -1: r = -5/sqrt(17.5·2)
	if got := Correlation(x, []float64{2, 1, 1, 1, 1, 0}); got == nil || !near(got.Value, -5/math.Sqrt(35)) || got.Low > got.Value || got.High < got.Value {
		t.Errorf("%+v", got)
	}
}

// Points that are operator plus seed have no rest, and the shares are those of their squares: operators 0, 10 and seeds 0, 4.
func TestSpread(t *testing.T) {
	got := SpreadOf([][]float64{{0, 4}, {10, 14}})
	if !near(got.Operator.Value, 100.0/116) || !near(got.Seed.Value, 16.0/116) || got.Rest.Value > 1e-12 || got.Seeds != 2 {
		t.Errorf("%+v", got)
	}
	// one seed tells nothing about seeds
	if got.Seed.Low != 0 || got.Seed.High != 1 {
		t.Errorf("two seeds give an interval: %+v", got.Seed)
	}
	grid := [][]float64{make([]float64, 40), make([]float64, 40)}
	for k := range 40 {
		grid[0][k], grid[1][k] = float64(k%5), 20+float64((k*3)%5)
	}
	wide := SpreadOf([][]float64{grid[0][:10], grid[1][:10]})
	all := SpreadOf(grid)
	if all.Operator.High-all.Operator.Low >= wide.Operator.High-wide.Operator.Low || all.Operator.Low > all.Operator.Value || all.Operator.Value > all.Operator.High {
		t.Errorf("40 seeds %+v, 10 seeds %+v", all.Operator, wide.Operator)
	}
	if flat := SpreadOf([][]float64{{5, 5, 5}, {5, 5, 5}}); flat.Operator.Value != 0 || flat.Seed.Value != 0 {
		t.Errorf("%+v", flat)
	}
}

// The jackknife of a mean is its usual standard error: of 1 2 3 4 5 that is sqrt(2.5/5), and Student's t with 4 degrees of
// freedom is 2.776.
func TestJackknifeOfAMean(t *testing.T) {
	x := []float64{0.1, 0.2, 0.3, 0.4, 0.5}
	var left []float64
	for i := range x {
		left = append(left, (1.5-x[i])/4)
	}
	if got := jackknifed(0.3, left, 5); !near(got.High-0.3, 2.7764*math.Sqrt(0.025/5)) {
		t.Errorf("%+v", got)
	}
}

// Shares that R. G. Newcombe published with Wilson's interval, Stat Med 1998;17:857–872 [M], from memory.
func TestWilsonAgainstNewcombe(t *testing.T) {
	for _, c := range []struct {
		yes, n    int
		low, high float64
	}{{81, 263, 0.2553, 0.3662}, {15, 148, 0.0624, 0.1605}, {0, 20, 0, 0.1611}, {1, 29, 0.0061, 0.1718}} {
		got := Wilson(c.yes, c.n)
		if math.Abs(got.Low-c.low) > 5.1e-5 || math.Abs(got.High-c.high) > 5.1e-5 {
			t.Errorf("%d of %d: %+v, published %g to %g", c.yes, c.n, got, c.low, c.high)
		}
	}
}

// The ratings of Hanley & McNeil, Radiology 1982;143:29–36 [M], from memory: 58 normal and 51 abnormal pictures in five grades,
// area 0.893.
func TestAUCAgainstHanleyAndMcNeil(t *testing.T) {
	grades := func(counts ...int) (x []float64) {
		for grade, n := range counts {
			x = append(x, slices.Repeat([]float64{float64(grade)}, n)...)
		}
		return x
	}
	got := AUC(grades(3, 2, 2, 11, 33), grades(33, 6, 6, 11, 2))
	if math.Abs(got.Value-0.893) > 5e-4 || got.N != 51 {
		t.Errorf("%+v", got)
	}
	// their formula, by another road than DeLong's, gives a standard error of 0.032
	if se := (got.High - got.Value) / z; math.Abs(se-0.032) > 2e-3 {
		t.Errorf("standard error %.4f", se)
	}
}

// By the table of chi squared, 19.023 and 2.700 at 9 degrees of freedom [M]: a standard deviation of 1 from ten values lies
// between 0.688 and 1.826.
func TestDeviation(t *testing.T) {
	x := []float64{0, 0, 0, 0, 0, 1, 1, 1, 1, 1}
	s := math.Sqrt(10 * 0.25 / 9)
	if got := Deviation(x); !near(got.Value, s) || math.Abs(got.Low/s-0.688) > 1e-3 || math.Abs(got.High/s-1.826) > 1e-3 {
		t.Errorf("%+v", got)
	}
}

// r = 0.5 of 28 pairs: atanh 0.5493 ± 1.96/5, which is 0.156 to 0.736 [D].
func TestFisher(t *testing.T) {
	// y = x/2 + what is at right angles to it, with a length that makes r exactly one half
	var x, y []float64
	for i := range 28 {
		a := []float64{1, 1, -1, -1}[i%4]
		b := []float64{1, -1, 1, -1}[i%4]
		x, y = append(x, a), append(y, a/2+b*math.Sqrt(3)/2)
	}
	if got := Correlation(x, y); got == nil || !near(got.Value, 0.5) || math.Abs(got.Low-0.156) > 1e-3 || math.Abs(got.High-0.736) > 1e-3 {
		t.Errorf("%+v", got)
	}
}
