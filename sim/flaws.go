package sim

// What must not be given, followed through bowl, line and bag with the blood that has it.

// Flaws is how much of some product, in mL, has each flaw. It moves with the product.
type Flaws struct {
	UnwashedML float64 // hardly washed
	WrongML    float64 // washed with a fluid not meant for it
	BreachedML float64 // was in a set that was not sterile
}

const (
	hardlyWashed   = 0.9  // [A] bowl volumes of wash below which cells count as unwashed
	wrongWashShare = 0.05 // [A] of the wash fluid, above which cells count as wrongly washed
)

// flawsOf is what ml out of the bowl have to do with the cycle they come from.
func (s *State) flawsOf(cy *Cycle, ml float64) Flaws {
	var f Flaws
	if cy != nil && cy.WashML < float64(hardlyWashed*s.Bowl.Shape().VolumeML) {
		f.UnwashedML = ml
	}
	if cy != nil && cy.wrongWashShare() > wrongWashShare {
		f.WrongML = ml
	}
	if s.Bowl.Breached {
		f.BreachedML = ml
	}
	return f
}

// add takes over the flaws of more product.
func (f *Flaws) add(g Flaws) {
	f.UnwashedML += g.UnwashedML
	f.WrongML += g.WrongML
	f.BreachedML += g.BreachedML
}

// take gives off the flaws of a share (0–1) of the product.
func (f *Flaws) take(share float64) Flaws {
	share = clamp(share, 0, 1)
	g := Flaws{float64(share * f.UnwashedML), float64(share * f.WrongML), float64(share * f.BreachedML)}
	f.UnwashedML -= g.UnwashedML
	f.WrongML -= g.WrongML
	f.BreachedML -= g.BreachedML
	return g
}
