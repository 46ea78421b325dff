// Package sound makes alarms heard: which burst of pulses each priority has, and when it is to be played. It is pure: it
// opens no device and reads no clock.
//
// The general pattern is that of IEC 60601-1-8 (bursts of pulses by priority), all digits of which are from memory here and
// in the test: the standard was not at hand. All pulses of a burst have one pitch, so that there is no melody.
package sound

import (
	"math"
	"sync"

	"rouleau/sim"
)

// Rate is how many samples a second has. They are signed, of 16 bits, in one channel.
const Rate = 48000

// Pattern is how a burst is made up. Times are in seconds.
type Pattern struct {
	FundamentalHz float64
	PulseS        float64   // effective duration of a pulse: how long it keeps to 90 % of its height or more
	RiseS         float64   // from 10 to 90 % of its height, and as long for the fall
	GapsS         []float64 // from the end of one pulse's duration to the start of the next: one fewer than pulses
	EveryS        float64   // from the end of a burst to the start of the next
	Loudness      float64   // height of the pulses, of the greatest that a sample can be
}

// pulse spacings in a burst of the standard, from memory: x 0.05 to 0.125 s between the pulses of high priority, y 0.125 to
// 0.25 s between those of the others.
const (
	spacingX = 0.10
	spacingY = 0.20
	groupGap = 0.70 // between the two groups of five; 0.35 to 1.3 s
)

// patterns by priority. High is five pulses, as three and two, and the five again; medium is three; low is two. The pitches
// are our own choice within 150 to 1000 Hz, and divide Rate.
var patterns = [...]Pattern{
	sim.LowPriority:    {320, 0.20, 0.030, []float64{spacingY}, 20, 0.25},
	sim.MediumPriority: {400, 0.20, 0.030, []float64{spacingY, spacingY}, 7, 0.30},
	sim.HighPriority: {480, 0.15, 0.0225, []float64{
		spacingX, spacingX, 2*spacingX + 0.15, spacingX, groupGap, spacingX, spacingX, 2*spacingX + 0.15, spacingX}, 4, 0.35},
}

// harmonics are the shares of the fundamental and its multiples. The standard wants at least four from 300 to 4000 Hz within
// 15 dB of the fundamental: people hear where such a sound comes from, and one that is masked leaves the others.
var harmonics = [...]float64{1, 0.8, 0.65, 0.5, 0.4, 0.3}

// The flank of a pulse is half a wave of a cosine. Of its length it spends flankEdge below 10 % and as much above 90 %.
var flankEdge = math.Acos(0.8) / math.Pi

// PatternOf gives the pattern of a priority.
func PatternOf(p sim.Priority) Pattern { return patterns[min(int(p), len(patterns)-1)] }

// flankS is the whole length of a rise.
func (p Pattern) flankS() float64 { return p.RiseS / (1 - 2*flankEdge) }

// LengthS is how long a burst takes.
func (p Pattern) LengthS() float64 {
	length := 2 * (1 - flankEdge) * p.flankS()
	for i := range len(p.GapsS) + 1 {
		length += p.PulseS
		if i < len(p.GapsS) {
			length += p.GapsS[i]
		}
	}
	return length
}

// starts gives when each pulse's effective duration begins.
func (p Pattern) starts() []float64 {
	at := (1 - flankEdge) * p.flankS()
	starts := []float64{at}
	for _, gap := range p.GapsS {
		at += p.PulseS + gap
		starts = append(starts, at)
	}
	return starts
}

// height is the envelope of a pulse, 0 to 1, at a time after its effective duration began.
func (p Pattern) height(s float64) float64 {
	flank := p.flankS()
	inside := min(s, p.PulseS-s)           // how far from the nearer end of the duration
	done := inside/flank + (1 - flankEdge) // of the flank
	switch {
	case done <= 0:
		return 0
	case done >= 1:
		return 1
	}
	return (1 - math.Cos(math.Pi*done)) / 2
}

var bursts = [len(patterns)]func() []int16{
	sync.OnceValue(patterns[0].make), sync.OnceValue(patterns[1].make), sync.OnceValue(patterns[2].make),
}

// Burst gives the samples of one burst of a priority. They are shared: not to be changed.
func Burst(p sim.Priority) []int16 { return bursts[min(int(p), len(bursts)-1)]() }

// make computes one pulse, and copies it to where each begins.
func (p Pattern) make() []int16 {
	all := 0.0
	for _, h := range harmonics {
		all += h
	}
	before := (1 - flankEdge) * p.flankS()
	pulse := make([]int16, int(math.Ceil((2*before+p.PulseS)*Rate)))
	for i := range pulse {
		s := float64(i)/Rate - before
		v := 0.0
		for k, share := range harmonics {
			v += share * math.Sin(2*math.Pi*p.FundamentalHz*float64(k+1)*s)
		}
		pulse[i] = int16(math.Round(v / all * p.height(s) * p.Loudness * math.MaxInt16))
	}
	out := make([]int16, int(math.Ceil(p.LengthS()*Rate)))
	for _, start := range p.starts() {
		copy(out[int(math.Round((start-before)*Rate)):], pulse)
	}
	return out
}
