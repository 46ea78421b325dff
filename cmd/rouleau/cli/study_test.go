package cli

import (
	"strings"
	"testing"
	"time"
)

// The bar grows with what is done, and the time left is that of what is left at the pace so far.
func TestProgressLine(t *testing.T) {
	half := progressLine(50, 200, 30*time.Second)
	if !strings.Contains(half, "50 of 200, about 1m30s left") || strings.Count(half, "#") != 7 || strings.Count(half, ".") != 23 {
		t.Errorf("%q", half)
	}
	last := progressLine(200, 200, 2*time.Minute)
	if !strings.Contains(last, "200 of 200, about 0s left") || strings.Count(last, "#") != 30 {
		t.Errorf("%q", last)
	}
	if longer := progressLine(1, 100000, time.Hour); len(last) < len(half) || len(longer) > 79 {
		t.Errorf("%q leaves something of %q, or is wider than a terminal: %q", last, half, longer)
	}
}
