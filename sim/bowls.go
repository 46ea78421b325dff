package sim

import "math"

// The generic bowls: plain annuli, all dimensions assumed [A].

// BowlKind is the size of a bowl.
type BowlKind uint8

// The bowls.
const (
	NoBowl BowlKind = iota
	StandardBowl
	SmallBowl
	PaediatricBowl
	bowlKindCount
	customBowl BowlKind = 255 // shape given beside it, in trials
)

var bowlNames = [bowlKindCount]string{"none", "standard", "small", "paediatric"}

// String is the name used in files.
func (b BowlKind) String() string { return nameOf(bowlNames[:], uint8(b)) }

// BowlNamed finds a bowl by the name used in files.
func BowlNamed(name string) (BowlKind, bool) { return named[BowlKind](bowlNames[:], name) }

// BowlShape is the geometry and speed of a bowl.
type BowlShape struct {
	VolumeML, OuterCM, InnerCM, RPM float64
}

var bowlShapes = [bowlKindCount]BowlShape{
	StandardBowl:   {VolumeML: 200, OuterCM: 6.3, InnerCM: 5.1, RPM: 5500},
	SmallBowl:      {VolumeML: 100, OuterCM: 5.5, InnerCM: 4.6, RPM: 5500},
	PaediatricBowl: {VolumeML: 60, OuterCM: 4.8, InnerCM: 4.1, RPM: 5500},
}

// Shape gives the geometry of a kind of bowl.
func (b BowlKind) Shape() BowlShape {
	if b < bowlKindCount {
		return bowlShapes[b]
	}
	return BowlShape{}
}

// HeightCM is the height of the annulus, cm.
func (s BowlShape) HeightCM() float64 {
	return s.VolumeML / (math.Pi * (float64(s.OuterCM*s.OuterCM) - float64(s.InnerCM*s.InnerCM)))
}

// RCF is the acceleration at radius r cm in multiples of gravity, ω²r/981.
func (s BowlShape) RCF(r float64) float64 {
	w := s.RPM * 2 * math.Pi / 60
	return w * w * r / 981
}

// FaceCM is the radius of the bed's face when the bed takes bedML of the annulus.
func (s BowlShape) FaceCM(bedML float64) float64 {
	r2 := float64(s.OuterCM*s.OuterCM) - bedML/(math.Pi*s.HeightCM())
	return math.Sqrt(atLeast(float64(s.InnerCM*s.InnerCM), r2))
}
