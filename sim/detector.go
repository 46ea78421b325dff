package sim

import (
	"math"

	"rouleau/sim/guarded"
)

// The interface detector, and chance.

const (
	detectorSD      = 0.01  // [A]
	detectorTauS    = 2.0   // [A]
	detectorStop    = 0.93  // [P] the automatic stop acts when the mean of one second passes this
	detectorPerHbGL = 0.004 // [A] offset per g/L of free haemoglobin in the effluent
	detectorPerFat  = 0.5   // [A] offset per share of fat in the effluent
	detectorSpan    = TicksPerSecond
)

var (
	detectorKeep = guarded.Exp(-tickS / detectorTauS)
	detectorKick = detectorSD * math.Sqrt(1-float64(detectorKeep*detectorKeep))
)

// Detector is the optical reading of how far the bed has come.
type Detector struct {
	Offset  float64 // a fault, set by the scenario
	Misread float64 // by how much the last reading was off, noise apart
	Noise   float64
	Reading float64
	Recent  [detectorSpan]float64
	Next    int
	Filled  bool
}

// Mean is the mean reading of the last second; zero before there was one.
func (d *Detector) Mean() float64 {
	if !d.Filled {
		return 0
	}
	sum := 0.0
	for _, r := range d.Recent {
		sum += r
	}
	return sum / detectorSpan
}

// read takes one reading of the spinning bowl.
func (s *State) readDetector(c *Case) {
	b := &s.Bowl
	d := &b.Detector
	d.Noise = float64(detectorKeep*d.Noise) + float64(detectorKick*s.normal())
	truth := (b.BedML() + float64(buffyShare*b.CellsML)) / b.Shape().VolumeML
	haze := float64(detectorPerHbGL*b.Effluent.FreeHbGL) + float64(detectorPerFat*b.Effluent.FatShare)
	if times := c.Faults.DetectorHaze; times > 0 {
		haze = float64(haze * times)
	}
	d.Reading = clamp(truth+d.Noise+d.Offset+haze, 0, 1.2)
	d.Misread = d.Offset + haze
	d.Recent[d.Next] = d.Reading
	d.Next++
	if d.Next == detectorSpan {
		d.Next, d.Filled = 0, true
	}
}

// normal draws a standard normal number from the state's own chance.
func (s *State) normal() float64 {
	for {
		u1, u2 := s.Chance.Uint64(), s.Chance.Uint64()
		if a, _, ok := guarded.NormalPair(u1, u2); ok {
			return a
		}
	}
}

// uniform draws a number in [0, 1) from the state's own chance.
func (s *State) uniform() float64 { return guarded.Uniform(s.Chance.Uint64()) }
