package sim

// One step of the spinning bowl: filling, topping up, washing or just turning.

// flowKind is what flows into the spinning bowl.
type flowKind uint8

const (
	flowNone flowKind = iota
	flowFeed
	flowTopUp // wash fluid into a bowl that is not full yet; not counted as wash
	flowWash
)

const (
	washShare     = 0.70      // [C] of the wash flow percolates the bed
	fullBed       = 0.93      // [P] the interface, where a bowl counts as full
	exchangePerS  = 0.40 / 60 // α [C], between the mobile and the immobile liquid
	fullTolerance = 1e-9
)

// spin lets dt seconds pass with all of in flowing in; what leaves goes to out, broken cells are counted in lysedML.
func (b *Bowl) spin(in, out *Fluid, kind flowKind, dt float64, lysedML *float64) {
	shape := b.Shape()
	inML := in.VolumeML()
	if b.ContentsML()+inML < seedML {
		b.pourBack(in)
		return
	}
	contents := min(shape.VolumeML, b.ContentsML()+inML)
	leaving := atLeast(0, b.ContentsML()+inML-contents) // by volume
	full := 0.0
	if inML > 0 {
		full = leaving / inML
	}
	broken := b.breaking(dt)
	kept, phi := b.bedAfter(in, kind, full, broken, contents, dt)

	// cells: those not caught pass by, those beyond the inner wall follow
	cellsIn := in.CellsML
	moveCells(out, in, cellsIn-kept)
	b.takeCells(in)
	b.breakCells(broken, lysedML)
	b.Packing = phi
	if beyond := b.CellsML - float64(phi*shape.VolumeML); contents >= shape.VolumeML-fullTolerance && beyond > 0 {
		b.loseCells(out, beyond)
	}

	// liquid: half of the inflow, the bed's own changes and the outflow, the other half
	through := 0.0
	if kind == flowWash {
		bed := atMost(1, b.BedML()/shape.VolumeML/fullBed)
		through = washShare * bed * bed
	}
	b.liquidIn(&in.Liquid, in.ML/2, through)
	b.exchange(dt)
	b.bedLiquid()
	b.takeClear(&out.Liquid, b.ContentsML()+in.ML-contents)
	b.liquidIn(&in.Liquid, in.ML, through)
}

// breaking is the volume of cells that break in dt seconds of spinning, mL.
func (b *Bowl) breaking(dt float64) float64 {
	return min(b.CellsML, float64(spinLysisPerS*dt*b.CellsML)+b.osmotic(dt))
}

// osmotic is the volume of cells that break in dt seconds for want of salt around them, mL.
func (b *Bowl) osmotic(dt float64) float64 {
	v := b.Mobile.ML + b.Immobile.ML
	if v <= 0 || b.CellsML <= 0 {
		return 0
	}
	already := b.OsmLysedML / (b.OsmLysedML + b.CellsML)
	// a bed that has just begun borrows thin liquid from a supernatant of next to nothing (takeClear): the mean of all
	// the liquid keeps that from passing for water
	salt := b.Mobile.In[Tonicity] + b.Immobile.In[Tonicity]
	mOsm := 1000 * max(salt/v, (salt+b.Clear.In[Tonicity])/(v+atLeast(0, b.Clear.ML)))
	ml := float64(osmoticStep(mOsm, already, dt) * b.CellsML)
	b.OsmLysedML += ml
	return ml
}

// bedAfter gives the incoming cells kept and the packing after dt seconds, by Heun's method on cells and packing together.
func (b *Bowl) bedAfter(in *Fluid, kind flowKind, full, broken, contents, dt float64) (kept, phi float64) {
	shape := b.Shape()
	forces := forcesOf(shape)
	q, h := in.VolumeML()/dt, in.Hct()
	ql := q
	if kind == flowFeed {
		ql = q * (1 - h)
	}
	feedProtein, bedProtein := in.PerL(Protein), b.proteinGL()
	if kind == flowFeed { // while filling, what flows through the bed is the feed's liquid
		bedProtein = feedProtein
	}
	rates := func(cells, phi float64) (kept, dphi float64) {
		bed := 0.0
		if cells > 0 {
			bed = atMost(contents, cells/atLeast(leastPacking, phi))
		}
		kept = in.CellsML
		if kept > 0 && full > 0 {
			kept *= 1 - float64(full*(1-forces.capture(q, h, feedProtein, bed)))
		}
		if cells > 0 {
			dphi = forces.packRate(ql, bedProtein, bed, phi)
		}
		return kept, dphi
	}
	start := atLeast(leastPacking, b.Packing)
	k1, p1 := rates(b.CellsML, start)
	k2, p2 := rates(atMost(shape.VolumeML, b.CellsML+k1-broken), start+float64(dt*p1))
	return (k1 + k2) / 2, start + float64(dt/2*(p1+p2))
}

func (b *Bowl) takeCells(in *Fluid) {
	b.CellsML += in.CellsML
	in.CellsML = 0
	for i := range in.Bound {
		b.Bound[i] += in.Bound[i]
		in.Bound[i] = 0
	}
}

func (b *Bowl) loseCells(out *Fluid, ml float64) {
	bed := Fluid{CellsML: b.CellsML, Bound: b.Bound}
	moveCells(out, &bed, ml)
	if b.CellsML > 0 {
		b.OsmLysedML *= bed.CellsML / b.CellsML
	}
	b.CellsML, b.Bound = bed.CellsML, bed.Bound
}

// breakCells lyses ml of the bed's cells into its mobile liquid.
func (b *Bowl) breakCells(ml float64, lysedML *float64) {
	lyseInto(&b.Mobile, &b.CellsML, &b.Bound, ml, lysedML)
}

// liquidIn lets ml of l in: the share through goes through the mobile zone, which pushes as much of its own out into the
// supernatant, and the rest straight into the supernatant.
func (b *Bowl) liquidIn(l *Liquid, ml, through float64) {
	if through <= 0 {
		moveLiquid(&b.Clear, l, ml)
		return
	}
	var in Liquid
	moveLiquid(&in, l, ml)
	ml = float64(through * in.ML)
	moveLiquid(&b.Mobile, &in, ml)
	moveLiquid(&b.Clear, &b.Mobile, ml)
	addLiquid(&b.Clear, &in)
}

// exchange evens out the mobile and the immobile liquid for dt seconds, to second order.
func (b *Bowl) exchange(dt float64) {
	vm, vi := b.Mobile.ML, b.Immobile.ML
	if vm <= 0 || vi <= 0 {
		return
	}
	x := float64(exchangePerS * dt * (1 + vi/vm))
	f := (x - float64(x*x/2)) * vm / (vm + vi) // share of the immobile amount that would leave into an empty mobile zone
	if x > 1 {
		f = vm / (vm + vi)
	}
	back := f * vi / vm
	for i := range b.Mobile.In {
		d := float64(f*b.Immobile.In[i]) - float64(back*b.Mobile.In[i])
		b.Mobile.In[i] += d
		b.Immobile.In[i] -= d
	}
}

// bedLiquid moves liquid between the bed and the supernatant until the bed's zones have the volumes its packing asks for.
func (b *Bowl) bedLiquid() {
	bed := atLeast(0, b.BedML()-b.CellsML)
	b.fitZone(&b.Mobile, float64(mobileShare*bed))
	b.fitZone(&b.Immobile, float64(immobileShare*bed))
}

func (b *Bowl) fitZone(zone *Liquid, ml float64) {
	switch d := ml - zone.ML; {
	case d > 0:
		b.takeClear(zone, d)
	case d < 0:
		moveLiquid(&b.Clear, zone, -d)
	}
}
