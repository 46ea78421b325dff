// The bursts as numbers: pulses and their times from the envelope of the samples, harmonics from their spectrum. The bounds
// are those of IEC 60601-1-8, from memory: the standard was not at hand.

package sound_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/dsp/fourier"

	"rouleau/cmd/rouleau-desk/sound"
	"rouleau/sim"
)

var priorities = []sim.Priority{sim.LowPriority, sim.MediumPriority, sim.HighPriority}

// envelope is the loudness over one period of the fundamental, by sample.
func envelope(samples []int16, period int) []float64 {
	out := make([]float64, len(samples)-period)
	sum := 0.0
	for i, s := range samples {
		sum += float64(s) * float64(s)
		if i >= period {
			sum -= float64(samples[i-period]) * float64(samples[i-period])
			out[i-period] = math.Sqrt(max(sum, 0) / float64(period))
		}
	}
	return out
}

type pulse struct{ from10, from90, to90, to10 float64 } // seconds

// pulses finds where the envelope goes through 10 and 90 % of its greatest.
func pulses(samples []int16, period int) []pulse {
	env := envelope(samples, period)
	top := 0.0
	for _, v := range env {
		top = max(top, v)
	}
	var out []pulse
	var p pulse
	for i := 1; i < len(env); i++ {
		at := (float64(i) + float64(period)/2) / sound.Rate
		cross := func(share float64) (up, down bool) {
			return env[i-1] < share*top && env[i] >= share*top, env[i-1] >= share*top && env[i] < share*top
		}
		up10, down10 := cross(0.1)
		up90, down90 := cross(0.9)
		switch {
		case up10:
			p = pulse{from10: at}
		case up90 && p.from90 == 0:
			p.from90 = at
		case down90:
			p.to90 = at
		case down10:
			p.to10 = at
			out = append(out, p)
		}
	}
	return out
}

func period(p sim.Priority) int {
	return int(math.Round(sound.Rate / sound.PatternOf(p).FundamentalHz))
}

func TestPulsesOfABurst(t *testing.T) {
	const x0, x1, y0, y1 = 0.050, 0.125, 0.125, 0.250 // s, pulse spacings; from memory
	for _, c := range []struct {
		priority sim.Priority
		pulses   int
		td0, td1 float64 // s, effective duration; from memory
	}{{sim.LowPriority, 2, 0.125, 0.250}, {sim.MediumPriority, 3, 0.125, 0.250}, {sim.HighPriority, 10, 0.075, 0.200}} {
		got := pulses(sound.Burst(c.priority), period(c.priority))
		if len(got) != c.pulses {
			t.Errorf("priority %d has %d pulses, want %d", c.priority, len(got), c.pulses)
			continue
		}
		x := 0.0
		for i, p := range got {
			td := p.to90 - p.from90
			if td < c.td0 || td > c.td1 {
				t.Errorf("priority %d, pulse %d lasts %.3f s, want %.3f to %.3f", c.priority, i, td, c.td0, c.td1)
			}
			// Rise 10 to 20 % of the duration, from memory.
			if rise := p.from90 - p.from10; rise < 0.1*td || rise > 0.2*td {
				t.Errorf("priority %d, pulse %d rises in %.4f s of %.3f", c.priority, i, rise, td)
			}
			if i == 0 {
				continue
			}
			gap := p.from90 - got[i-1].to90
			// The fall of one and the rise of the next fit into the gap, from memory: tf ≤ ts − tr.
			if fall := got[i-1].to10 - got[i-1].to90; fall > gap-(p.from90-p.from10) {
				t.Errorf("priority %d: pulses %d and %d run into each other", c.priority, i-1, i)
			}
			low, high := y0, y1
			if c.priority == sim.HighPriority {
				switch {
				case i == 1:
					x = gap
					low, high = x0, x1
				case i == 3 || i == 8: // between three and two: twice the spacing and a pulse
					low, high = 0.95*(2*x+td), 1.05*(2*x+td)
				case i == 5: // between the two groups of five
					low, high = 0.35, 1.30
				default:
					low, high = 0.95*x, 1.05*x
				}
			}
			if gap < low || gap > high {
				t.Errorf("priority %d: between pulses %d and %d are %.3f s, want %.3f to %.3f", c.priority, i-1, i, gap, low, high)
			}
		}
	}
}

// Interburst intervals, from memory: high 2.5 to 15 s, medium 2.5 to 30 s, low longer than 15 s or no repeat.
func TestBetweenBursts(t *testing.T) {
	for p, want := range map[sim.Priority][2]float64{sim.HighPriority: {2.5, 15}, sim.MediumPriority: {2.5, 30}, sim.LowPriority: {15, 60}} {
		if every := sound.PatternOf(p).EveryS; every < want[0] || every > want[1] {
			t.Errorf("priority %d comes again after %g s, want %g to %g", p, every, want[0], want[1])
		}
	}
}

func TestSpectrumOfAPulse(t *testing.T) {
	for _, p := range priorities {
		pattern := sound.PatternOf(p)
		samples := sound.Burst(p)
		first := pulses(samples, period(p))[0]
		// A whole number of periods from the level part of the first pulse, so that each harmonic falls on one line.
		const periods = 40
		n := periods * period(p)
		middle := int((first.from90 + first.to90) / 2 * sound.Rate)
		seq := make([]float64, n)
		for i := range seq {
			seq[i] = float64(samples[middle-n/2+i])
		}
		lines := fourier.NewFFT(n).Coefficients(nil, seq)
		db := func(k int) float64 { return 20 * math.Log10(math.Hypot(real(lines[k]), imag(lines[k]))+1e-9) }
		base := db(periods)
		if f := pattern.FundamentalHz; f < 150 || f > 1000 {
			t.Errorf("priority %d: the fundamental is %g Hz, want 150 to 1000", p, f)
		}
		near := 0
		for k := range lines {
			hz := float64(k) * sound.Rate / float64(n)
			switch level := db(k) - base; {
			case k%periods != 0 && level > -50:
				t.Errorf("priority %d: %.0f Hz is no harmonic and at %.0f dB", p, hz, level)
			case k%periods == 0 && k > periods && hz >= 300 && hz <= 4000 && math.Abs(level) <= 15:
				near++
			}
		}
		if near < 4 {
			t.Errorf("priority %d has %d harmonics from 300 to 4000 Hz within 15 dB of the fundamental, want 4", p, near)
		}
	}
}

// The more urgent is the louder, nothing is clipped, and a burst begins and ends in silence, without a click.
func TestLoudness(t *testing.T) {
	last := 0
	for _, p := range priorities {
		top, samples := 0, sound.Burst(p)
		for _, s := range samples {
			top = max(top, max(int(s), -int(s)))
		}
		if top <= last || top > math.MaxInt16/2 {
			t.Errorf("priority %d reaches %d, after %d", p, top, last)
		}
		last = top
		if a, z := samples[0], samples[len(samples)-1]; a > 3 || a < -3 || z > 3 || z < -3 {
			t.Errorf("priority %d begins at %d and ends at %d", p, a, z)
		}
		if want := sound.PatternOf(p).LengthS() * sound.Rate; math.Abs(float64(len(samples))-want) > 1 {
			t.Errorf("priority %d has %d samples, want %.0f", p, len(samples), want)
		}
	}
}
