package sim

// The bowl: red cells in a bed against the outer wall, liquid in three zones.

const (
	mobileShare     = 0.60 // [C] of the bed's liquid
	immobileShare   = 1 - mobileShare
	thinSupernatant = 2.0   // [A] mL: a thinner supernatant zone still mixes as if it were this much
	seedML          = 0.5   // [A] below this the contents are simply mixed
	buffyShare      = 0.012 // [A] buffy coat per mL of cells
	leastPacking    = 0.05  // [A]
	residualML      = 5.0   // [A] stays behind when the bowl is emptied
	brakeS          = 15.0  // [A]
	fragmentsKept   = 0.5   // [A] of the clot fragments that enter, the rest leaves with the effluent
)

// Bowl is the centrifuge bowl and its contents.
type Bowl struct {
	Kind       BowlKind
	custom     BowlShape // the shape of a bowl of Kind customBowl, in trials
	CellsML    float64
	Bound      [MaxContaminants]float64
	Mobile     Liquid
	Immobile   Liquid
	Clear      Liquid  // the supernatant zone
	Packing    float64 // φ of the bed
	Spinning   bool
	BrakeUntil int64   // braking until this tick
	OsmLysedML float64 // cells of the present contents already broken by free water
	Fragments  Fluid
	AirML      float64
	Breached   bool // what is in it was in a set that was not sterile
	LeakMLMin  float64
	Detector   Detector
	Effluent   Effluent
}

// Effluent is what leaves the bowl now.
type Effluent struct {
	RateMLMin float64
	Hct       float64
	FreeHbGL  float64 // of its liquid
	FatShare  float64
}

// Shape is the bowl's geometry and speed.
func (b *Bowl) Shape() BowlShape {
	if b.Kind == customBowl {
		return b.custom
	}
	return b.Kind.Shape()
}

// ContentsML is all that is in the bowl, fragments and air not counted.
func (b *Bowl) ContentsML() float64 {
	return b.CellsML + b.Mobile.ML + b.Immobile.ML + b.Clear.ML
}

// BedML is the volume of the bed of packed cells, at most the contents.
func (b *Bowl) BedML() float64 {
	if b.CellsML <= 0 {
		return 0
	}
	return atMost(b.ContentsML(), b.CellsML/atLeast(leastPacking, b.Packing))
}

// FillFraction is B/V, the share of the bowl that the bed takes.
func (b *Bowl) FillFraction() float64 {
	if b.Kind == NoBowl {
		return 0
	}
	return b.BedML() / b.Shape().VolumeML
}

// proteinGL is the protein around the cells of the bed.
func (b *Bowl) proteinGL() float64 {
	if v := b.Mobile.ML + b.Immobile.ML; v > 0 {
		return 1000 * (b.Mobile.In[Protein] + b.Immobile.In[Protein]) / v
	}
	return b.Clear.PerL(Protein)
}

// mixContents makes the contents uniform, as stopping does.
func (b *Bowl) mixContents() {
	addLiquid(&b.Clear, &b.Mobile)
	addLiquid(&b.Clear, &b.Immobile)
	b.Mobile, b.Immobile = Liquid{}, Liquid{}
	all := b.Clear.ML
	contents := b.CellsML + all
	if contents > 0 {
		b.Packing = max(leastPacking, b.CellsML/contents)
	}
	bedLiquid := max(0, b.BedML()-b.CellsML)
	if all <= 0 || bedLiquid <= 0 {
		return
	}
	moveLiquid(&b.Immobile, &b.Clear, float64(immobileShare*bedLiquid))
	moveLiquid(&b.Mobile, &b.Clear, min(b.Clear.ML, float64(mobileShare*bedLiquid)))
}

// asFluid gathers the contents, leaving the bowl empty; pourBack is its inverse.
func (b *Bowl) asFluid() Fluid {
	f := Fluid{CellsML: b.CellsML, Bound: b.Bound}
	addLiquid(&f.Liquid, &b.Mobile)
	addLiquid(&f.Liquid, &b.Immobile)
	addLiquid(&f.Liquid, &b.Clear)
	b.CellsML, b.Bound = 0, [MaxContaminants]float64{}
	b.Mobile, b.Immobile, b.Clear = Liquid{}, Liquid{}, Liquid{}
	return f
}

func (b *Bowl) pourBack(f *Fluid) {
	b.CellsML += f.CellsML
	for i := range f.Bound {
		b.Bound[i] += f.Bound[i]
	}
	addLiquid(&b.Clear, &f.Liquid)
	*f = Fluid{}
	b.mixContents()
}

// drain lets up to ml of the stopped, mixed contents out.
func (b *Bowl) drain(out *Fluid, ml float64) float64 {
	f := b.asFluid()
	before := f.CellsML
	ml = move(out, &f, ml)
	if before > 0 {
		b.OsmLysedML *= f.CellsML / before
	}
	b.pourBack(&f)
	return ml
}

// takeClear takes ml of the supernatant zone, at its amount over max(volume, 2 mL).
func (b *Bowl) takeClear(dst *Liquid, ml float64) {
	if ml <= 0 {
		return
	}
	f := min(1, ml/max(b.Clear.ML, thinSupernatant))
	moveShare(dst, &b.Clear, f)
	dst.ML += ml
	b.Clear.ML -= ml
}
