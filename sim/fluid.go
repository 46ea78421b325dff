package sim

import "math"

// What a fluid is and how it moves. Every transfer moves a fluid between two named places: nothing appears or vanishes.

// Solute names an amount carried in the liquid part of a fluid.
type Solute uint8

// The solutes, with the unit of their amount.
const (
	Protein    Solute = iota // g
	FreeHb                   // free haemoglobin, g
	Heparin                  // IU
	Citrate                  // mmol
	Calcium                  // total calcium, mmol
	Potassium                // mmol
	Tonicity                 // osmotically active particles, mOsm
	Fat                      // mL
	Platelets                // 10^9
	Fibrinogen               // g
	Dissolved0               // the dissolved part of the first of the scenario's contaminants, in its own unit
)

const (
	// MaxContaminants is how many contaminants a scenario may name.
	MaxContaminants = 4
	soluteCount     = int(Dissolved0) + MaxContaminants
)

// Constants of red cells.
const (
	MCHCGPerML             = 0.34  // g haemoglobin per mL of red cells [S] laboratory handbooks: mean corpuscular haemoglobin concentration
	cellPotassiumMmolPerML = 0.100 // mmol potassium per mL of red cells [S] clinical biochemistry
)

// contaminants are amounts of what a scenario may bring into the wound, each in its own unit.
type contaminants = [MaxContaminants]float64

// Liquid is the cell-free part of a fluid: its volume and what is dissolved in it.
type Liquid struct {
	ML float64
	In [soluteCount]float64
}

// Fluid is red cells in a liquid. Bound contaminants ride on the cells.
type Fluid struct {
	CellsML float64
	Bound   contaminants
	Liquid
}

// VolumeML is cells plus liquid, mL.
func (f *Fluid) VolumeML() float64 { return f.CellsML + f.ML }

// Hct is the haematocrit, 0–1; zero for an empty place.
func (f *Fluid) Hct() float64 {
	if v := f.CellsML + f.ML; v > 0 {
		return f.CellsML / v
	}
	return 0
}

// HbGPerDL is the haemoglobin of the whole fluid, bound and free, g/dL.
func (f *Fluid) HbGPerDL() float64 {
	v := f.CellsML + f.ML
	if v <= 0 {
		return 0
	}
	return 100 * (float64(MCHCGPerML*f.CellsML) + f.In[FreeHb]) / v
}

// PerL is the concentration of a solute in the liquid, its unit per litre; zero for no liquid.
func (l *Liquid) PerL(s Solute) float64 {
	if l.ML <= 0 {
		return 0
	}
	return 1000 * l.In[s] / l.ML
}

// PerML is the concentration of a solute in the liquid, its unit per mL; zero for no liquid.
func (l *Liquid) PerML(s Solute) float64 {
	if l.ML <= 0 {
		return 0
	}
	return l.In[s] / l.ML
}

// Contaminant is the whole amount of contaminant i, dissolved and bound.
func (f *Fluid) Contaminant(i int) float64 { return f.In[int(Dissolved0)+i] + f.Bound[i] }

// moveLiquid moves ml of src's liquid to dst, at most all of it.
func moveLiquid(dst, src *Liquid, ml float64) {
	if ml <= 0 || src.ML <= 0 {
		return
	}
	if ml >= src.ML {
		addLiquid(dst, src)
		*src = Liquid{}
		return
	}
	moveShare(dst, src, ml/src.ML)
	dst.ML += ml
	src.ML -= ml
}

// Much of the time of a tick goes into the loops over solutes, so they take two at once. Of an odd number this would not compile.
var _ [0]int = [Dissolved0 % 2]int{}

// moveShare moves the share f (0–1) of src's solutes, but no volume, to dst.
func moveShare(dst, src *Liquid, f float64) {
	to, from := &dst.In, &src.In
	for i := 0; i < int(Dissolved0); i += 2 {
		a, b := from[i], from[i+1]
		da, db := float64(f*a), float64(f*b)
		to[i] += da
		to[i+1] += db
		from[i], from[i+1] = a-da, b-db
	}
	moveFew((*contaminants)(to[Dissolved0:]), (*contaminants)(from[Dissolved0:]), f)
}

// moveFew moves the share f (0–1) of contaminants, of which most places have none: asking all four at once is quicker.
func moveFew(to, from *contaminants, f float64) {
	if math.Float64bits(from[0])|math.Float64bits(from[1])|math.Float64bits(from[2])|math.Float64bits(from[3]) == 0 {
		return
	}
	for i, a := range from {
		d := float64(f * a)
		to[i] += d
		from[i] = a - d
	}
}

func addLiquid(dst, src *Liquid) {
	dst.ML += src.ML
	to, from := &dst.In, &src.In
	for i := 0; i < soluteCount; i += 2 {
		to[i] += from[i]
		to[i+1] += from[i+1]
	}
}

// moveCells moves ml of cells, and what is bound to them, at most all.
func moveCells(dst, src *Fluid, ml float64) {
	if ml <= 0 || src.CellsML <= 0 {
		return
	}
	f := ml / src.CellsML
	if f >= 1 {
		f, ml = 1, src.CellsML
	}
	moveFew(&dst.Bound, &src.Bound, f)
	dst.CellsML += ml
	src.CellsML -= ml
}

// move moves ml of the whole, well-mixed src to dst, at most all of it, and says how much went.
func move(dst, src *Fluid, ml float64) float64 {
	v := src.CellsML + src.ML
	if ml <= 0 || v <= 0 {
		return 0
	}
	if ml >= v {
		moveAll(dst, src)
		return v
	}
	f := ml / v
	moveFew(&dst.Bound, &src.Bound, f)
	moveShare(&dst.Liquid, &src.Liquid, f)
	cells, liquid := float64(f*src.CellsML), float64(f*src.ML)
	dst.CellsML += cells
	src.CellsML -= cells
	dst.ML += liquid
	src.ML -= liquid
	return ml
}

// moveAll empties src into dst.
func moveAll(dst, src *Fluid) {
	dst.CellsML += src.CellsML
	moveFew(&dst.Bound, &src.Bound, 1)
	addLiquid(&dst.Liquid, &src.Liquid)
	*src = Fluid{}
}

// lyse breaks ml of f's cells: their volume, haemoglobin and potassium join the liquid, and what was bound to them is set
// free. The broken volume is counted in lysedML.
func lyse(f *Fluid, ml float64, lysedML *float64) {
	lyseInto(&f.Liquid, &f.CellsML, &f.Bound, ml, lysedML)
}

// lyseInto is lyse for cells, with what is bound to them, in any liquid.
func lyseInto(l *Liquid, cellsML *float64, bound *contaminants, ml float64, lysedML *float64) {
	if ml <= 0 || *cellsML <= 0 {
		return
	}
	share := ml / *cellsML
	if share > 1 {
		share, ml = 1, *cellsML
	}
	for i := range bound {
		d := float64(share * bound[i])
		bound[i] -= d
		l.In[int(Dissolved0)+i] += d
	}
	*cellsML -= ml
	l.ML += ml
	l.In[FreeHb] += float64(MCHCGPerML * ml)
	l.In[Potassium] += float64(cellPotassiumMmolPerML * ml)
	*lysedML += ml
}
