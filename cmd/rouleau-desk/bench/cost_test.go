// What a frame of the bench costs before painting.

package bench_test

import (
	"testing"

	"rouleau/cmd/rouleau-desk/ui"
)

func BenchmarkFrame(b *testing.B) {
	x := sit(b, ui.Vec{X: 1280, Y: 800}, false)
	x.begin()
	x.until(3300)
	b.ReportAllocs()
	for b.Loop() {
		x.Idle()
	}
}
