package sim

// How long one tick takes, in the moments that differ. The goal of the house is a 75-minute case of 90 000 ticks in under
// 100 ms, all told.

import "testing"

// tickMoments are the moments, each with a bench that stands in it for at least half a minute.
var tickMoments = []struct {
	name  string
	bench func(t testing.TB) *bench
}{
	{"idle", func(t testing.TB) *bench {
		c := adultCase()
		for i := range c.Phases {
			c.Phases[i].BleedMLMin, c.Phases[i].IrrigationMLMin = 0, 0
		}
		return newBench(t, c, 1)
	}},
	{"collecting", func(t testing.TB) *bench { return collecting(t, 800) }},
	{"filling", func(t testing.TB) *bench {
		b := collecting(t, 1500)
		b.do(Fill, 0, 0)
		b.wait(50) // the bowl has filled and lets effluent go
		return b
	}},
	{"washing", func(t testing.TB) *bench {
		b := collecting(t, 1500)
		b.do(Fill, 0, 0)
		b.waitFor("the interface", 300, func() bool { return b.s.Bowl.FillFraction() > 0.9 || b.s.Pump.Mode == PumpIdle })
		b.do(StopPump, 0, 0)
		b.do(Wash, 0, 0)
		b.wait(10)
		return b
	}},
}

// collecting is an adult case with the sucker at work, seconds in.
func collecting(t testing.TB, atS float64) *bench {
	b := newBench(t, adultCase(), 1)
	b.play(openBench(HeparinSolution, StandardBowl))
	b.until(atS)
	return b
}

func BenchmarkStep(b *testing.B) {
	for _, m := range tickMoments {
		b.Run(m.name, func(b *testing.B) {
			at := m.bench(b)
			c, s := at.c, at.s
			h := Happened{List: make([]Occurrence, 0, 4096)}
			b.ReportAllocs()
			b.ResetTimer()
			for range b.N {
				if s.Tick > at.s.Tick+Ticks(20) { // stay in the moment
					s, h.List = at.s, h.List[:0]
				}
				Step(&c, &s, &h)
			}
		})
	}
}

// BenchmarkCase is a whole case with automatic bowls; ns/tick is its mean.
func BenchmarkCase(b *testing.B) {
	b.ReportAllocs()
	ticks := int64(0)
	for range b.N {
		at := newBench(b, adultCase(), 1)
		at.h.List = make([]Occurrence, 0, 4096)
		at.play(wholeScript())
		at.until(75 * 60)
		ticks += at.s.Tick
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(ticks), "ns/tick")
}
