package sim

import (
	"math"

	"rouleau/sim/guarded"
)

// The patient: blood volume, exchange with the interstitium, urine, the anaesthetist's fluids, decay of drugs.

const (
	exchangeOutPerMin   = 0.050                    // k12 [C]
	exchangeBackPerMin  = 0.012                    // k21 [C]
	urinePerMin         = 0.005                    // kr [C]
	interstitiumMLPerKg = 200.0                    // [P]
	crystalloidPerMin   = 0.1                      // [A] the anaesthetist's answer to the deficit
	crystalloidMaxMLMin = 150.0                    // [A]
	heparinHalfS        = 75 * 60.0                // [M]
	citrateHalfS        = 35 * 60.0                // [M]
	potassiumHalfS      = 5 * 60.0                 // [A]
	protamineIUPerMG    = 100.0                    // [P]
	fibrinogenFloorGL   = 1.5                      // [M] European guideline on major bleeding
	plateletFloorG9L    = 50.0                     // [M] same guideline
	bleedingRise        = 0.5                      // [A] at most
	heparinBleedsAbove  = 0.2                      // IU/mL plasma [A]
	haptoglobinGL       = 1.4                      // [S] laboratory handbooks
	plasmaMOsmPerL      = 290.0                    // [M]
	donorUnitML         = 280.0                    // [P]
	donorHct            = 0.60                     // [P]
	donorMLMin          = 60.0                     // [A] how fast donor cells run in
	gasEveryTicks       = 15 * 60 * TicksPerSecond // [A] the anaesthetist takes a blood gas this often
)

const ln2 = 0.6931471805599453

var (
	heparinKeep   = guarded.Exp(-ln2 * tickS / heparinHalfS)
	citrateKeep   = guarded.Exp(-ln2 * tickS / citrateHalfS)
	potassiumKeep = guarded.Exp(-ln2 * tickS / potassiumHalfS)
)

// Sex as the blood volume formulas know it.
type Sex uint8

// The sexes of the formulas.
const (
	Male Sex = iota
	Female
)

// NadlerML is the blood volume of an adult from height (cm) and weight (kg), mL. [S] Nadler, Hidalgo & Bloch 1962.
func NadlerML(sex Sex, heightCM, weightKg float64) float64 {
	h := heightCM / 100
	h3 := h * h * h
	if sex == Male {
		return 1000 * (float64(0.3669*h3) + float64(0.03219*weightKg) + 0.6041)
	}
	return 1000 * (float64(0.3561*h3) + float64(0.03308*weightKg) + 0.1833)
}

// childMLPerKg by age in years, interpolated between the middles of the published ranges. [S] Linderkamp et al. 1977.
var childMLPerKg = [...]struct{ years, male, female float64 }{
	{0, 81.9, 81.9}, {0.04, 84.4, 84.4}, {0.38, 76.6, 76.6}, {1.5, 86.1, 86.1}, {5, 77, 77}, {12.5, 74.4, 68.3},
}

// ChildML is the blood volume of a child by age (years) and weight (kg), mL.
func ChildML(sex Sex, years, weightKg float64) float64 {
	perKg := func(i int) float64 {
		if sex == Male {
			return childMLPerKg[i].male
		}
		return childMLPerKg[i].female
	}
	last := len(childMLPerKg) - 1
	for i := 1; i <= last; i++ {
		a, b := childMLPerKg[i-1].years, childMLPerKg[i].years
		if years <= b {
			t := (math.Max(years, a) - a) / (b - a)
			return weightKg * (perKg(i-1) + float64(t*(perKg(i)-perKg(i-1))))
		}
	}
	return weightKg * perKg(last)
}

func startPatient(c *Case, s *State) {
	spec, p := &c.Patient, &s.Patient
	cells := float64(spec.BloodVolumeML * spec.Hct)
	plasma := spec.BloodVolumeML - cells
	l := plasma / 1000
	p.Blood = Fluid{CellsML: cells, Liquid: Liquid{ML: plasma}}
	in := &p.Blood.In
	in[Protein] = spec.PlasmaProteinGL * l
	in[Calcium] = spec.CalciumMmolL * l
	in[Potassium] = spec.PotassiumMmolL * l
	in[Tonicity] = plasmaMOsmPerL * l
	in[Heparin] = spec.HeparinIUPerML * plasma
	in[Platelets] = spec.PlateletsG9L * spec.BloodVolumeML / 1000
	in[Fibrinogen] = spec.FibrinogenGL * l
	p.InterstitialStartML = interstitiumMLPerKg * spec.WeightKg
	p.Interstitium.ML = p.InterstitialStartML
	li := p.InterstitialStartML / 1000
	// small solutes as in plasma: of the calcium only what is not bound to protein
	p.Interstitium.In[Calcium] = spec.CalciumMmolL * freeOfProtein(spec.PlasmaProteinGL) * li
	p.Interstitium.In[Potassium] = spec.PotassiumMmolL * li
	p.Interstitium.In[Tonicity] = plasmaMOsmPerL * li
	p.BleedFactor = 1
	p.LowestHbGDL = p.Blood.HbGPerDL()
	p.DonorWantedTick = -1
	p.LastGas.Tick = -1
	p.HeartRate, p.PressureMmHg = spec.HeartRate, spec.MeanPressureMmHg
}

func donorCells(units float64) Fluid {
	cells := float64(donorUnitML * donorHct * units)
	liquid := float64(donorUnitML*units) - cells
	f := Fluid{CellsML: cells, Liquid: Liquid{ML: liquid}}
	f.In[Tonicity] = plasmaMOsmPerL * liquid / 1000
	f.In[Potassium] = 20 * liquid / 1000 // [M] stored cells, second week
	return f
}

// stepPatient lets dt seconds pass in the body with infusionMLMin of crystalloid running. The exchange is taken at the
// middle of the step.
func stepPatient(p *Patient, infusion *Fluid, startML, infusionMLMin, dt float64, exchanging bool) {
	if infusionMLMin > 0 {
		move(&p.Blood, infusion, infusionMLMin/60*dt)
	}
	if !exchanging {
		return
	}
	bv := p.Blood.VolumeML()
	excess := p.Interstitium.ML - p.InterstitialStartML
	k12, k21 := exchangeOutPerMin/60, exchangeBackPerMin/60
	urine := float64(urinePerMin / 60 * max(0, bv-startML))
	j := float64(k12*(bv-startML)) - float64(k21*excess)
	j -= float64(dt / 2 * (float64(k12*(j+urine)) + float64(k21*j)))
	if j > 0 {
		filtrate(&p.Interstitium, &p.Blood.Liquid, j*dt)
	} else {
		filtrate(&p.Blood.Liquid, &p.Interstitium, -j*dt)
	}
	if urine > 0 {
		filtrate(&p.Urine.Liquid, &p.Blood.Liquid, urine*dt)
	}
}

// filtrate moves water with small solutes only: no protein, no haemoglobin, no clotting factors, no heparin, and of the
// calcium what is not bound to protein.
func filtrate(dst, src *Liquid, ml float64) {
	if ml <= 0 || src.ML <= 0 {
		return
	}
	f := min(1, ml/src.ML)
	free := freeOfProtein(src.PerL(Protein))
	for _, s := range [...]Solute{Citrate, Potassium, Tonicity} {
		d := float64(f * src.In[s])
		dst.In[s] += d
		src.In[s] -= d
	}
	d := float64(f * free * src.In[Calcium])
	dst.In[Calcium] += d
	src.In[Calcium] -= d
	dst.ML += ml
	src.ML -= ml
}

// metabolise lets one tick of decay pass: heparin, citrate, and potassium's way out of the vessels.
func metabolise(p *Patient, potassiumMmolL float64) {
	in, gone := &p.Blood.In, &p.Metabolised.In
	if h := float64(in[Heparin] * (1 - heparinKeep)); h > 0 {
		in[Heparin] -= h
		gone[Heparin] += h
	}
	if c := float64(in[Citrate] * (1 - citrateKeep)); c > 0 {
		in[Citrate] -= c
		gone[Citrate] += c
	}
	normal := potassiumMmolL * p.Blood.ML / 1000
	d := float64((in[Potassium] - normal) * (1 - potassiumKeep))
	in[Potassium] -= d
	p.Interstitium.In[Potassium] += d
}

// crystalloidMLMin is what the anaesthetist runs in for a blood volume, maintenance apart.
func crystalloidMLMin(bv, startML float64) float64 {
	return clamp(crystalloidPerMin*(startML-bv), 0, crystalloidMaxMLMin)
}
