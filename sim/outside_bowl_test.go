package sim

// Sedimentation, centrifuge and washing against published values; each assertion names its source.

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
)

func TestStokesVelocity(t *testing.T) {
	// [D] the source list: a sphere of 90 fL is 5.56 µm across and sinks at 1.6 µm/s in saline at 22 °C
	near(t, "diameter of a sphere of 90 fL, cm", cellDiameter, 1e-4*math.Cbrt(6*90/math.Pi), 0.001)
	near(t, "in saline, µm/s", 1e4*StokesCMPerS(0), 1.6, 0.02)
	// [S] Rosenson et al., Clin Chem 1996;42:1189: plasma 1.5–1.7 mPa·s at room temperature, here with 70 g/L of protein
	within(t, "plasma, mPa·s", 100*waterPoise*(1+poisePerGL*70), 1.5, 1.7)
	// [S] Trudnowski & Rico, Clin Chem 1974;20:615–616: plasma 1.0205 at 37 °C and 1.031 at 4 °C
	within(t, "plasma at 22 °C, g/mL", liquidDensity+densityPerGL*70, 1.0205, 1.031)
	// [S, M] textbooks: red cells 1.081–1.125
	within(t, "red cells, g/mL", cellDensity, 1.081, 1.125)
}

func TestWestergrenAnchor(t *testing.T) {
	// design paper, section 5, [S]: at Westergren dilution (haematocrit 0.36, protein 56 g/L) the reservoir settles at the patient's
	// ESR. [Q] Miller 1983 for the range of the healthy: up to age/2 in men, (age+10)/2 in women. A reservoir so deep that
	// the clear layer of ten minutes does not slow it.
	for _, esr := range []float64{2, 10, 35, 60} {
		r := Reservoir{Blood: plainBlood(1e6, 0.36, 56, 0, 0, 0)}
		for range Ticks(600) {
			stepReservoir(&r, &Fluid{}, 0, esr, tickS, false)
		}
		near(t, "settling, mm/h", r.ClearML/reservoirAreaCM2*10*6, esr, 0.005)
	}
}

func TestRelativeCentrifugalForce(t *testing.T) {
	// [S] centrifuge handbooks: RCF = 1.118e-5·r(cm)·rpm²
	for _, kind := range []BowlKind{StandardBowl, SmallBowl, PaediatricBowl} {
		s := kind.Shape()
		for _, r := range []float64{s.InnerCM, s.OuterCM} {
			near(t, "multiples of gravity", s.RCF(r), 1.118e-5*r*s.RPM*s.RPM, 0.0005)
		}
	}
}

// travelS integrates the way of a cell of speed v at 1 g from radius a to the bed's face b.
func travelS(s BowlShape, v, a, b float64) float64 {
	return quad.Fixed(func(r float64) float64 { return 1 / (v * s.RCF(r)) }, a, b, 40, nil, 0)
}

func TestSigmaOfTheBowl(t *testing.T) {
	// [S, M] Ambler; engineering handbooks: Σ = πω²L(r2²−r1²)/(g·ln(r2/r1)); full capture at Q = v·Σ, half at 2v·Σ. First the
	// formula against cells followed on their way out (gonum quadrature) through liquid that moves along the bowl as a plug:
	// all are caught when one from the inner wall just arrives, half when one from the radius that halves the area does.
	s := StandardBowl.Shape()
	v, w := StokesCMPerS(20), s.RPM*2*math.Pi/60
	for _, bed := range []float64{0, 60, 120, 180} {
		face := s.FaceCM(bed)
		liquid := math.Pi * s.HeightCM() * (face*face - s.InnerCM*s.InnerCM)
		sigma := liquid * w * w / (981 * math.Log(face/s.InnerCM))
		full := liquid / travelS(s, v, s.InnerCM, face)
		near(t, "flow of full capture", full, v*sigma, 1e-9)
		middle := math.Sqrt((face*face + s.InnerCM*s.InnerCM) / 2)
		half := liquid / travelS(s, v, middle, face)
		within(t, "flow of half capture over v·Σ", half/(v*sigma), 1.85, 2.30) // 2 as the gap becomes thin
		// The model's surface load takes the acceleration and the area at the face instead of their means, so it is a little
		// above Σ, and the same where the gap is thin.
		load := v * s.RCF(face) * 2 * math.Pi * face * s.HeightCM()
		within(t, "surface load over v·Σ", load/(v*sigma), 1, 2*face*face*math.Log(face/s.InnerCM)/(face*face-s.InnerCM*s.InnerCM)+1e-9)
	}
	thin := s.FaceCM(199)
	sigma := math.Pi * s.HeightCM() * (thin*thin - s.InnerCM*s.InnerCM) * w * w / (981 * math.Log(thin/s.InnerCM))
	near(t, "surface load of a nearly full bowl", s.RCF(thin)*2*math.Pi*thin*s.HeightCM(), sigma, 0.005)
}

func TestCaptureAtFullAndHalf(t *testing.T) {
	// The same, through the model's own capture, for a dilute feed and the gap far from the wall: at the flow where the mean
	// cell is just caught, and at twice that, where [S, M] Ambler's argument catches half. The spread of cell speeds (σ 0.35)
	// costs 14 % at the first, for the slow cells, and next to nothing at the second.
	s := StandardBowl.Shape()
	f := forcesOf(s)
	face := s.FaceCM(0)
	fringe := (face - s.InnerCM) / (face - s.InnerCM + captureFringe)
	full := StokesCMPerS(20) * s.RCF(face) * 2 * math.Pi * face * f.height * fringe
	near(t, "caught at half the flow", f.capture(full/2, 0, 20, 0), 1, 0.015)
	near(t, "caught at the flow that just takes the mean cell", f.capture(full, 0, 20, 0), 0.861, 0.001)
	near(t, "caught at twice that flow", f.capture(2*full, 0, 20, 0), 0.5, 0.015)
	near(t, "caught at ten times that flow", f.capture(10*full, 0, 20, 0), 0.1, 1e-6)
}

func TestStirredTankWashout(t *testing.T) {
	// [D] exp(−V/V0): 36.8, 13.5 and 5.0 % are left after one, two and three volumes
	left := []float64{0.368, 0.135, 0.050}

	// the drip line and the filter, through the step they share
	var place, gone Fluid
	place = plainBlood(100, 0, 50, 0, 0, 0)
	for volume := range left {
		for range Ticks(60) {
			in := Saline.Of(100.0 / float64(Ticks(60)))
			through(&place, &in, &gone, 100)
		}
		near(t, "left in a stirred place", place.PerL(Protein)/50, left[volume], 0.006)
	}

	// the bowl without cells: all of it is the supernatant zone
	b := Bowl{Kind: StandardBowl}
	plasma := plainBlood(200, 0, 50, 0, 0, 0)
	b.pourBack(&plasma)
	var out Fluid
	var lysed float64
	for volume := range left {
		for range Ticks(40) {
			in := Saline.Of(200.0 / float64(Ticks(40)))
			b.spin(&in, &out, flowWash, tickS, &lysed)
		}
		near(t, "left in a bowl without cells", b.Clear.PerL(Protein)/50, left[volume], 0.006)
	}
}

// A bowl filled to the brim by its bed has no supernatant, and fast washing must not borrow from it.
func TestFastWashOfAFullBed(t *testing.T) {
	b := Bowl{Kind: SmallBowl}
	blood := plainBlood(100, 0.458, 40, 1, 0, 0)
	b.pourBack(&blood)
	var out Fluid
	var lysed float64
	for range Ticks(20) {
		in := Saline.Of(717.0 / 60 * tickS)
		b.spin(&in, &out, flowWash, tickS, &lysed)
		for name, z := range map[string]*Liquid{"mobile": &b.Mobile, "immobile": &b.Immobile, "supernatant": &b.Clear} {
			if z.ML < leastHeld || z.In[Protein] < leastHeld {
				t.Fatalf("%s zone holds %g mL and %g g of protein", name, z.ML, z.In[Protein])
			}
		}
	}
	near(t, "contents", b.ContentsML(), 100, 1e-9)
}
