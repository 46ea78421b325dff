// Tests of the bars above the lanes of a chart.

package ui_test

import (
	"math"
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
)

// Words in a hatched bar stand on a ground of their own, and a bar without words is hatched throughout.
func TestHatchedBarsHaveAGroundUnderWordsAlone(t *testing.T) {
	for label, want := range map[string]int{"": 0, "wash": 1, "words that have no room in a bar as short as this one is by far": 0} {
		_, d := chartDriver(ui.Chart{To: 600, Last: 600, Now: math.NaN(), Cursor: math.NaN(), Lanes: 1,
			Series: []ui.ChartSeries{{Label: "x", Track: ui.TrackOf(5, 5), DT: 1, Max: 10, Look: ui.Paper().Series[0]}},
			Bands:  []ui.ChartBand{{From: 100, To: 200, Label: label, Fill: ui.BandHatch}}, BandNames: []string{"bowl"}})
		hatched, grounds := 0, 0
		for i := range d.List.Ops {
			switch op := &d.List.Ops[i]; {
			case op.Kind == ui.OpHatch:
				hatched++
			case op.Kind == ui.OpRect && op.Radius == 2 && op.Col == d.List.Ground:
				grounds++
			}
		}
		if hatched != 1 || grounds != want {
			t.Errorf("%q: %d bars are hatched, %d grounds, want %d", label, hatched, grounds, want)
		}
	}
}
