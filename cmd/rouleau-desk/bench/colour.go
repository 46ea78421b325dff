// The colour of a liquid, computed from what is in it: haemoglobin absorbs, red cells scatter, plasma is a little yellow.
// A layer before paper is worked out by the two-flux equations of Kubelka and Munk, which without scattering become the law
// of Beer and Lambert, there and back. All optical constants are from memory, of tables of oxyhaemoglobin, and rounded: they
// serve a picture, not a measurement.

package bench

import (
	"math"

	"rouleau/cmd/rouleau-desk/ui"
)

// Liquid is what the colour of a fluid depends on.
type Liquid struct {
	Hct       float64 // 0–1
	FreeHbGL  float64 // g/L of its liquid
	ProteinGL float64 // g/L of its liquid, for the tint of plasma
}

// absorption of one g/L of oxyhaemoglobin per cm in the bands red (580–680 nm), green (500–580) and blue (420–500), base e.
// From molar absorptions of about 2 500, 35 000 and 40 000 per cm and mol/L, over 64 500 g/mol; from memory.
var haemoglobinPerCM = [3]float64{0.09, 1.25, 1.43}

// plasmaPerCM is the absorption of plasma with 70 g/L protein: bilirubin and carotene take blue. From memory of its look.
var plasmaPerCM = [3]float64{0.004, 0.035, 0.30}

const (
	cellHaemoglobinGL = 340.0 // in red cells
	plasmaProteinGL   = 70.0
	scatterPerCM      = 31.0 // per haematocrit × (1 − haematocrit); from memory: reduced scattering of blood near 1 to 2 per mm
	waterScatter      = 1e-6
	// wallShare is the light that a clear plastic wall sends back before it meets the liquid: of the 4 % of Fresnel's equations at
	// each face, the part that is scattered towards the eye (assumption). It keeps haemolysed plasma apart from the red of an alarm.
	wallShare = 0.02
)

// paperLight is the reflection of the paper behind, by band, linear.
var paperLight = [3]float64{0.94, 0.91, 0.84}

// Depths of liquid that are looked through, cm.
const (
	depthTube      = 0.6
	depthBag       = 2.5
	depthReservoir = 4.0
	depthPool      = 1.5
	depthBowl      = 1.2
)

// bands gives absorption and scattering per cm of one band.
func (l Liquid) bands(i int) (absorb, scatter float64) {
	h := min(max(l.Hct, 0), 1)
	liquid := 1 - h
	absorb = haemoglobinPerCM[i]*(cellHaemoglobinGL*h+max(l.FreeHbGL, 0)*liquid) + plasmaPerCM[i]*liquid*max(l.ProteinGL, 0)/plasmaProteinGL
	return absorb, scatterPerCM * h * liquid
}

// reflect is what a layer of depth cm before ground sends back, 0–1: the formula of Kubelka and Munk. Absorption is not doubled
// for light that runs askew, so that without scattering the result goes over into that of clear liquids.
func reflect(absorb, scatter, depth, ground float64) float64 {
	if scatter < waterScatter {
		return ground * math.Exp(-2*absorb*depth)
	}
	a := 1 + absorb/scatter
	b := math.Sqrt(a*a - 1)
	if b < 1e-9 {
		b = 1e-9
	}
	coth := 1 / math.Tanh(b*scatter*depth)
	return (1 - ground*(a-b*coth)) / (a - ground + b*coth)
}

// Colour is the colour of depth cm of a liquid before paper.
func (l Liquid) Colour(depth float64) ui.Color {
	var out [3]uint8
	for i := range out {
		absorb, scatter := l.bands(i)
		inside := reflect(absorb, scatter, depth, paperLight[i])
		out[i] = toScreen(wallShare*paperLight[i] + (1-wallShare)*inside)
	}
	return ui.Color{R: out[0], G: out[1], B: out[2], A: 255}
}

// toScreen turns linear light into the steps of a screen (sRGB).
func toScreen(light float64) uint8 {
	light = min(max(light, 0), 1)
	v := 12.92 * light
	if light > 0.0031308 {
		v = 1.055*math.Pow(light, 1/2.4) - 0.055
	}
	return uint8(255*v + 0.5)
}

// Opacity is how little of the paper can be seen through depth cm of a liquid, 0–1, in the red where blood is clearest.
func (l Liquid) Opacity(depth float64) float64 {
	absorb, scatter := l.bands(0)
	return 1 - (reflect(absorb, scatter, depth, 1) - reflect(absorb, scatter, depth, 0))
}
