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
	if !near(got.Operator, 100.0/116) || !near(got.Seed, 16.0/116) || got.Rest > 1e-12 {
		t.Errorf("%+v", got)
	}
}
