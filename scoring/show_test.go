// Tests of how values are written.

package scoring

import "testing"

func TestShowTellsSmallValuesApart(t *testing.T) {
	for v, want := range map[float64]string{0.006: "0.006", 0.0005: "0.0005", 0.01: "0.01", 0.015: "0.015", 0.58: "0.58", 24.5: "24.5", 312.4: "312",
		0: "0", -0.006: "-0.006", 0.9: "0.9", 1: "1"} {
		if got := Show(v); got != want {
			t.Errorf("%g is written %s, want %s", v, got, want)
		}
	}
}
