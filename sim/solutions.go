package sim

// The fluids that come in packs, and what is in them.

// Solution names what a pack holds.
type Solution uint8

// The solutions a bench can hold.
const (
	NoSolution Solution = iota
	Saline
	BalancedCrystalloid
	SterileWater
	Glycine
	Glucose
	HeparinSolution
	CitrateSolution
	solutionCount
)

var solutionNames = [solutionCount]string{"none", "saline", "balanced_crystalloid", "sterile_water", "glycine", "glucose",
	"heparin_solution", "citrate_solution"}

// String is the name used in files.
func (s Solution) String() string {
	if s < solutionCount {
		return solutionNames[s]
	}
	return "unknown"
}

// SolutionNamed finds a solution by the name used in files.
func SolutionNamed(name string) (Solution, bool) { return named[Solution](solutionNames[:], name) }

// Anticoagulant says whether the solution keeps blood from clotting.
func (s Solution) Anticoagulant() bool { return s == HeparinSolution || s == CitrateSolution }

// FitToWash says whether red cells may be washed with it. Common practice: 0.9 % saline; calcium and free water do harm.
func (s Solution) FitToWash() bool { return s == Saline }

const (
	// HeparinIUPerML is the strength of the heparin solution: 30 000 IU in 1 L of saline [S] UKCSAG Technical Factsheet 2.
	HeparinIUPerML = 30.0
	// CitrateMmolPerL is the citrate of acid citrate dextrose A, from 22.0 g/L trisodium citrate dihydrate (294.10 g/mol) and
	// 8.0 g/L citric acid monohydrate (210.14 g/mol) [S] pharmacopoeia formula.
	CitrateMmolPerL = 113.0
)

// per litre: tonicity mOsm, calcium mmol, potassium mmol, heparin IU, citrate mmol.
var solutionPerL = [solutionCount]struct{ mOsm, calcium, potassium, heparin, citrate float64 }{
	Saline:              {mOsm: 308},
	BalancedCrystalloid: {mOsm: 278, calcium: 2.0, potassium: 4.5}, // [M] common formulas
	SterileWater:        {},
	Glycine:             {mOsm: 200}, // [M]
	Glucose:             {mOsm: 278}, // [M]
	HeparinSolution:     {mOsm: 308, heparin: 1000 * HeparinIUPerML},
	CitrateSolution:     {mOsm: 450, citrate: CitrateMmolPerL}, // tonicity [M]: sodium, citrate and glucose of the formula
}

// Of gives ml of the solution as a fluid.
func (s Solution) Of(ml float64) Fluid {
	var f Fluid
	if s >= solutionCount {
		return f
	}
	p, l := solutionPerL[s], ml/1000
	f.ML = ml
	f.In[Tonicity] = p.mOsm * l
	f.In[Calcium] = p.calcium * l
	f.In[Potassium] = p.potassium * l
	f.In[Heparin] = p.heparin * l
	f.In[Citrate] = p.citrate * l
	return f
}

// named finds the value whose name is at its place in names.
func named[T ~uint8](names []string, name string) (T, bool) {
	for i, n := range names {
		if n == name && n != "" {
			return T(i), true
		}
	}
	return 0, false
}
