// Light in steps of 10 nm: how strongly haemoglobin takes it, how a white lamp spreads over it, how eyes see it, and how that
// becomes the red, green and blue of a screen.

package bench

import "math"

const (
	firstNM = 420
	stepNM  = 10
	bands   = 27 // to 680 nm
)

// spectrum is one value a band.
type spectrum [bands]float64

// Molar extinction of haemoglobin in water, per cm and mol/L of its four haems, base 10, from 420 to 680 nm: S. Prahl,
// tabulated molar extinction coefficients of haemoglobin in water, 1998, compiled from W. B. Gratzer and N. Kollias. From
// memory, to three digits at most.
var (
	oxygenated = spectrum{480e3, 246e3, 103e3, 62.8e3, 44.5e3, 33.2e3, 26.6e3, 23.7e3, 20.9e3, 20.0e3, 24.2e3, 40.0e3, 53.2e3, 43.0e3,
		32.6e3, 44.5e3, 50.1e3, 14.4e3, 3200, 1510, 942, 610, 442, 368, 320, 294, 278}
	deoxygenated = spectrum{408e3, 529e3, 413e3, 103e3, 23.4e3, 16.2e3, 14.6e3, 16.7e3, 20.9e3, 25.8e3, 31.6e3, 39.0e3, 46.6e3, 53.4e3,
		53.8e3, 45.1e3, 37.0e3, 28.3e3, 14.7e3, 9440, 6510, 5150, 4350, 3750, 3230, 2800, 2410}
)

const haemoglobinGMol = 64500.0 // molar mass; the tables' own rounding

// plasmaTint is the absorption per cm, base e, of plasma with 70 g/L of protein: bilirubin and carotene take blue. Assumption,
// from its look.
var plasmaTint = curve([]point{{420, 0.26}, {455, 0.30}, {480, 0.20}, {500, 0.09}, {520, 0.04}, {550, 0.02}, {600, 0.005}, {680, 0.003}})

// paperLight is the reflection of the paper behind: white, a little warm.
var paperLight = curve([]point{{420, 0.83}, {460, 0.85}, {540, 0.91}, {600, 0.935}, {680, 0.945}})

type point struct{ nm, value float64 }

// curve is a spectrum by straight lines between points.
func curve(points []point) (s spectrum) {
	for i := range s {
		nm := float64(firstNM + stepNM*i)
		for k := 1; k < len(points); k++ {
			a, b := points[k-1], points[k]
			if nm >= a.nm && nm <= b.nm {
				s[i] = a.value + (b.value-a.value)*(nm-a.nm)/(b.nm-a.nm)
			}
		}
	}
	return s
}

// daylight is the relative power of the standard lamp D65 (CIE), from memory, to two digits.
var daylight = curve([]point{{420, 93}, {430, 87}, {440, 105}, {450, 117}, {460, 118}, {470, 115}, {480, 116}, {490, 109}, {500, 109}, {510, 108},
	{520, 105}, {530, 108}, {540, 104}, {550, 104}, {560, 100}, {570, 96}, {580, 96}, {590, 89}, {600, 90}, {610, 90}, {620, 88}, {630, 83},
	{640, 84}, {650, 80}, {660, 80}, {670, 82}, {680, 78}})

// observer is the CIE 1931 standard observer by the lobes that C. Wyman, P.-P. Sloan and P. Shirley fitted to it (Journal of
// Computer Graphics Techniques 2013, 2(2)); digits from memory.
func observer(nm float64) (x, y, z float64) {
	lobe := func(at, below, above float64) float64 {
		t := (nm - at) * above
		if nm < at {
			t = (nm - at) * below
		}
		return math.Exp(-t * t / 2)
	}
	x = 0.362*lobe(442.0, 0.0624, 0.0374) + 1.056*lobe(599.8, 0.0264, 0.0323) - 0.065*lobe(501.1, 0.0490, 0.0382)
	y = 0.821*lobe(568.8, 0.0213, 0.0247) + 0.286*lobe(530.9, 0.0613, 0.0322)
	z = 1.217*lobe(437.0, 0.0845, 0.0278) + 0.681*lobe(459.0, 0.0385, 0.0725)
	return x, y, z
}

// toLinear turns X, Y, Z into the linear light of a screen's red, green and blue (sRGB, IEC 61966-2-1).
var toLinear = [3][3]float64{{3.2406, -1.5372, -0.4986}, {-0.9689, 1.8758, 0.0415}, {0.0557, -0.2040, 1.0570}}

// screenShare is how much each band gives to red, green and blue. What sends back all light is white: each sums to 1.
var screenShare = func() (share [3]spectrum) {
	for c := range share {
		sum := 0.0
		for i := range share[c] {
			x, y, z := observer(float64(firstNM + stepNM*i))
			share[c][i] = daylight[i] * (toLinear[c][0]*x + toLinear[c][1]*y + toLinear[c][2]*z)
			sum += share[c][i]
		}
		for i := range share[c] {
			share[c][i] /= sum
		}
	}
	return share
}()

// toScreen turns linear light into the steps of a screen (sRGB).
func toScreen(light float64) uint8 {
	light = min(max(light, 0), 1)
	v := 12.92 * light
	if light > 0.0031308 {
		v = 1.055*math.Pow(light, 1/2.4) - 0.055
	}
	return uint8(255*v + 0.5)
}
