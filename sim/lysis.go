package sim

import "rouleau/sim/guarded"

// Cells that break: by spinning, and when the liquid around them lacks salt.

const (
	spinLysisPerS   = 2e-4 / 60 // [A]
	fragilityMean   = 0.43      // g/dL NaCl at which half the cells have broken; begins near 0.50, complete near 0.30 [M] haematology texts
	fragilitySD     = 0.035     // [M] puts begin and completion at two and four sd
	osmoticTimeS    = 5.0       // [A]
	salineMOsmPerL  = 308.0     // [S] 0.9 % sodium chloride
	salineGPerDL    = 0.9       // [S] the same
	fragilityMargin = 0.66      // above this nothing breaks: Φ(−6.5) is 4e-11
)

// SaltGPerDL is the sodium chloride equivalent of a tonicity in mOsm/L, g/dL.
func SaltGPerDL(mOsmPerL float64) float64 { return salineGPerDL * mOsmPerL / salineMOsmPerL }

// OsmoticLysis is the share of red cells that will have broken in a liquid of x g/dL sodium chloride equivalent.
func OsmoticLysis(x float64) float64 {
	if x > fragilityMargin {
		return 0
	}
	return guarded.NormalCDF((fragilityMean - x) / fragilitySD)
}

// osmoticStep is the share of the still whole cells that break in dt seconds, when the share already of the whole
// population has broken. It is exact for a constant liquid.
func osmoticStep(mOsmPerL, already, dt float64) float64 {
	target := OsmoticLysis(SaltGPerDL(mOsmPerL))
	if target <= already || already >= 1 {
		return 0
	}
	return (target - already) * (1 - guarded.Exp(-dt/osmoticTimeS)) / (1 - already)
}

// joinedShare is the share already broken once fresh cells, of which the share b broke before they came, have joined whole
// ones with the share a.
func joinedShare(a, whole, b, fresh float64) float64 {
	stay, come := float64(whole*(1-b)), float64(fresh*(1-a))
	if fresh <= 0 || stay+come <= 0 {
		return a
	}
	return (float64(a*stay) + float64(b*come)) / (stay + come)
}

// lyseOsmotic breaks cells of a place whose share already broken is kept beside it.
func lyseOsmotic(f *Fluid, already, lysedML *float64, dt float64) {
	if f.CellsML <= 0 || f.ML <= 0 {
		return
	}
	share := osmoticStep(f.PerL(Tonicity), *already, dt)
	if share <= 0 {
		return
	}
	lyse(f, float64(share*f.CellsML), lysedML)
	*already += float64(share * (1 - *already))
}
