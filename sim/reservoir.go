package sim

import "rouleau/sim/guarded"

// The reservoir: cells settle, a clear layer grows on top, clot forms, the outlet draws from below.

const (
	reservoirAreaCM2  = 130.0 // [A]
	packingLimit      = 0.80  // [C] no bed of red cells is denser
	hindrance         = 4.65  // [S] Richardson & Zaki 1954
	ripeningS         = 300.0 // [C]
	stirByInflow      = 0.3   // [A]
	mixingS           = 5.0   // [A]
	mixTimeS          = 15.0  // [A]
	unmixedPenalty    = 0.5   // [A] unmixed blood misses its anticoagulant
	westergrenProtein = 56.0  // [S] plasma of 70 g/L in the dilution of the test
	westergrenLiquid  = 0.64  // [S] 1 − φ at Westergren dilution
	fragmentsFromML   = 20.0  // [A] clot beyond which a draw carries fragments
	fragmentsPerML    = 0.5 / 100
)

// Stokes velocity of a single red cell at 1 g.
const (
	cellDensity   = 1.096   // g/mL [S] textbooks, 1.095–1.10 usual
	liquidDensity = 1.0046  // [S] g/mL at 22 °C without protein
	densityPerGL  = 0.00029 // g/mL per g/L protein [S] from Trudnowski & Rico 1974
	cellDiameter  = 5.56e-4 // cm, sphere of 90 fL [D]
	waterPoise    = 0.00955 // [S] at 22 °C
	poisePerGL    = 0.0106  // relative, per g/L protein [S] from Rosenson et al. 1996
)

// StokesCMPerS is the sinking velocity of one red cell at 1 g in a liquid with protein g/L, at 22 °C, cm/s.
func StokesCMPerS(proteinGL float64) float64 {
	density := liquidDensity + float64(densityPerGL*proteinGL)
	viscosity := waterPoise * (1 + float64(poisePerGL*proteinGL))
	return (cellDensity - density) * 981 * cellDiameter * cellDiameter / (18 * viscosity)
}

// Reservoir is the vessel that shed blood is collected in.
type Reservoir struct {
	Blood      Fluid
	ClearML    float64 // Vc, the clear layer on top
	Activation float64 // A, 0–1
	Clot       Fluid
	Breached   bool  // what is in it came through a set that was not sterile
	MixUntil   int64 // being mixed until this tick
	MixedTick  int64 // last mixing ended, -1 for never
	LysedShare float64
	InMLMin    float64 // inflow now
	TakenInML  float64 // everything that came through the filter
}

// lowHct is φ, the haematocrit of the lower zone.
func (r *Reservoir) lowHct() float64 {
	low := r.Blood.VolumeML() - r.ClearML
	if low <= 0 {
		return packingLimit
	}
	return atMost(packingLimit, r.Blood.CellsML/low)
}

// OutletHct is the haematocrit that the outlet would draw now.
func (r *Reservoir) OutletHct() float64 {
	if r.Blood.VolumeML()-r.ClearML < 1 {
		return 0
	}
	return r.lowHct()
}

// receive takes in ml of what the filter passes on, with activation af.
func (r *Reservoir) receive(in *Fluid, ml, af float64) {
	if ml <= 0 {
		return
	}
	v := r.Blood.VolumeML()
	r.Activation = (float64(r.Activation*v) + float64(af*ml)) / (v + ml)
	r.ClearML *= atLeast(0, 1-stirByInflow*ml/(v+float64(ml/2)))
	move(&r.Blood, in, ml)
	r.TakenInML += ml
}

// settling gives, for the clear layer, dVc/dt (mL/s) and how that changes with Vc (1/s).
func (r *Reservoir) settling(v, esr float64, mixing bool) (rate, slope float64) {
	b := &r.Blood
	full := v - b.CellsML/packingLimit // the clear layer when all cells are packed, mL
	if low := v - r.ClearML; b.CellsML > 0 && full > r.ClearML {
		p := b.PerL(Protein)
		anchored := esr * westergrenSpeed * p
		phi := atMost(packingLimit, b.CellsML/low)
		fall := reservoirAreaCM2 * atLeast(anchored, StokesCMPerS(p)) * guarded.Pow(1-phi, hindrance)
		left := 1 - r.ClearML/full
		rate = float64(fall * left)
		slope = -fall/full - hindrance*rate*phi/((1-phi)*low)
	}
	if mixing {
		rate -= r.ClearML / mixingS
		slope -= 1 / mixingS
	}
	return rate, slope
}

// westergrenSpeed, cm/s for each mm/h of ESR and g/L of protein, makes settling at Westergren dilution equal the patient's ESR.
var westergrenSpeed = 1 / (36000 * guarded.Pow(westergrenLiquid, hindrance) * westergrenProtein)

// settle lets dt seconds pass in the reservoir with no flow.
func (r *Reservoir) settle(dt, esr float64, mixing bool) {
	v := r.Blood.VolumeML()
	if v < 1 {
		r.ClearML = 0
		return
	}
	r.ClearML = clamp(r.ClearML, 0, v)
	rate, slope := r.settling(v, esr, mixing)
	was := r.ClearML
	r.ClearML = clamp(was+float64(dt*rate*(1+float64(dt/2*slope))), 0, v)
	// of the middle of the step, so that the ripening is of second order too
	g := clottingOf(&r.Blood.Liquid, 1-float64(unmixedPenalty/2*(was+r.ClearML))/v)
	before := r.Activation
	ripened := g * dt / ripeningS
	r.Activation = clamp(before+float64(ripened*(1-before)*(1-float64(ripened/2))), 0, 1)
	a := (before + r.Activation) / 2
	clot := v * (r.Blood.PerL(Protein) / normalProteinGPerL) * a * a * a * g / clottingS * dt
	if clot > 0 {
		r.ClearML *= 1 - atMost(1, clot/v)
		move(&r.Clot, &r.Blood, clot)
	}
}

// stepReservoir is one step of dt seconds with inflow in of activation af: half the inflow, the settling, the other half.
func stepReservoir(r *Reservoir, in *Fluid, af, esr, dt float64, mixing bool) {
	r.receive(in, in.VolumeML()/2, af)
	r.settle(dt, esr, mixing)
	r.receive(in, in.VolumeML(), af)
}

// draw takes up to ml through the outlet into out: thick blood first, clear liquid when less than 1 mL of the lower zone is left.
func (r *Reservoir) draw(out *Fluid, ml float64) float64 {
	v := r.Blood.VolumeML()
	ml = min(ml, v)
	if ml <= 0 {
		return 0
	}
	if v-r.ClearML < 1 {
		moved := min(ml, r.Blood.ML)
		moveLiquid(&out.Liquid, &r.Blood.Liquid, moved)
		r.ClearML = atLeast(0, r.ClearML-moved)
		if moved < ml { // the last drops of cells
			moveCells(out, &r.Blood, ml-moved)
		}
		return ml
	}
	cells := float64(ml * r.lowHct())
	moveCells(out, &r.Blood, cells)
	moveLiquid(&out.Liquid, &r.Blood.Liquid, ml-cells)
	r.ClearML = min(r.ClearML, r.Blood.VolumeML())
	return ml
}
