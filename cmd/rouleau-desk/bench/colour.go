// The colour of a liquid, computed from what is in it: haemoglobin absorbs, red cells scatter, plasma is a little yellow.
// A layer before paper is worked out by the two-flux equations of Kubelka and Munk, band by band, which without scattering
// become the law of Beer and Lambert, there and back. Where the optical constants come from stands in colour_spectrum.go.

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
	Venous    float64 // share of the haemoglobin without oxygen, 0–1
}

const (
	cellHaemoglobinGL = 340.0 // in red cells; common practice
	plasmaProteinGL   = 70.0
	// scatterPerCM is per haematocrit × (1 − haematocrit). From memory: reduced scattering of blood is 10 to 20 per cm, of which the
	// two fluxes see three quarters, and half of that where absorption is not doubled: so 15 to 31.
	scatterPerCM = 18.0
	waterScatter = 1e-6
	// wallShare is the light that a clear plastic wall sends back before it meets the liquid: of the 4 % of Fresnel's equations at
	// each face, the small part that is scattered towards the eye (assumption). More would bring haemolysed plasma near the red of
	// an alarm.
	wallShare = 0.005
)

// ShedVenous is the share without oxygen of blood that is shed and sucked up: it wells up mostly from veins, which carry some
// 30 %, and takes up oxygen from the air it is sucked with. Assumption.
const ShedVenous = 0.1

// Depths of liquid that are looked through, cm.
const (
	depthTube      = 0.6
	depthBag       = 2.5
	depthReservoir = 4.0
	depthPool      = 1.5
	depthBowl      = 1.2
)

// haemoglobinGL is the haemoglobin in a litre of all of it, in cells and in solution.
func (l *Liquid) haemoglobinGL() float64 {
	return cellHaemoglobinGL*l.Hct + l.FreeHbGL*(1-l.Hct)
}

// absorbance is that of a layer in one band, in absorbance units (base 10), once through: the law of Beer and Lambert.
func (l *Liquid) absorbance(band int, depth float64) float64 {
	molar := oxygenated[band]*(1-l.Venous) + deoxygenated[band]*l.Venous
	return (molar*l.haemoglobinGL()/haemoglobinGMol + plasmaTint[band]/math.Ln10*(1-l.Hct)*l.ProteinGL/plasmaProteinGL) * depth
}

// absorbs gives absorption per cm, base e, in one band.
func (l *Liquid) absorbs(band int) float64 { return math.Ln10 * l.absorbance(band, 1) }

// scatters gives scattering per cm, alike in all bands: packed cells scatter less, as there is less between them, though their
// walls alone scatter something (a tenth; assumption).
func (l *Liquid) scatters() float64 { return scatterPerCM * l.Hct * max(1-l.Hct, 0.1) }

// sensible is the liquid with what cannot be left out.
func (l Liquid) sensible() Liquid {
	within := func(v, most float64) float64 {
		if !(v > 0) { // not a number counts as none
			return 0
		}
		return min(v, most)
	}
	return Liquid{Hct: within(l.Hct, 1), FreeHbGL: within(l.FreeHbGL, 350), ProteinGL: within(l.ProteinGL, 350), Venous: within(l.Venous, 1)}
}

// reflect is what a layer of depth cm before ground sends back, 0–1: the formula of Kubelka and Munk. Absorption is not doubled
// for light that runs askew, so that without scattering the result goes over into that of clear liquids.
func reflect(absorb, scatter, depth, ground float64) float64 {
	if scatter < waterScatter || depth <= 0 {
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
	return cachedColour(l.sensible(), depth)
}

func (l *Liquid) colour(depth float64) ui.Color {
	var light [3]float64
	scatter := l.scatters()
	for i := range bands {
		paper := paperLight[i]
		back := wallShare*paper + (1-wallShare)*reflect(l.absorbs(i), scatter, depth, paper)
		for c := range light {
			light[c] += screenShare[c][i] * back
		}
	}
	return ui.Color{R: toScreen(light[0]), G: toScreen(light[1]), B: toScreen(light[2]), A: 255}
}

// Opacity is how little of the paper can be seen through depth cm of a liquid, 0–1, in the red where blood is clearest.
func (l Liquid) Opacity(depth float64) float64 {
	l = l.sensible()
	absorb, scatter := l.absorbs(redBand), l.scatters()
	return 1 - (reflect(absorb, scatter, depth, 1) - reflect(absorb, scatter, depth, 0))
}

const redBand = (630 - firstNM) / stepNM
