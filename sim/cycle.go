package sim

// The record of a bowlful, from its first feed to the bag it went to.

// Cycle is the record of one bowlful.
type Cycle struct {
	FillTick                                             int64
	StopTick                                             int64
	WashTick                                             int64
	DoneTick                                             int64
	FillMLMin                                            float64
	WashMLMin                                            float64
	FeedML                                               float64
	FeedCellsML                                          float64
	FeedHct                                              float64 // at the start of the fill
	ClearShare                                           float64 // of the reservoir, at the start of the fill
	FeedFreeHbG                                          float64
	FeedPotassium                                        float64
	FeedProteinG                                         float64
	FeedHeparinIU                                        float64
	FeedCitrate                                          float64
	BedAtStop                                            float64 // true B/V when filling stopped
	MisreadAtStop                                        float64 // by how much the detector was off then
	StoppedByItself                                      bool    // by the automatic stop
	WashML                                               float64
	WashBy                                               [solutionCount]float64 // mL by fluid, topping up included
	WasteCellsML                                         float64
	Reprocessed                                          bool
	Bag                                                  int8 // bag it went to, -1 for none
	ProductML                                            float64
	ProductCellsML                                       float64
	FreeHbG, Potassium, ProteinG, HeparinIU, CitrateMmol float64 // in the product
}

// cycle is the bowlful under way, or nil before the first.
func (s *State) cycle() *Cycle {
	if s.CycleUsed == 0 {
		return nil
	}
	return &s.Cycles[s.CycleUsed-1]
}

// recordProduct adds what leaves the bowl to the record of its cycle.
func recordProduct(cy *Cycle, out *Fluid) {
	if cy == nil {
		return
	}
	cy.ProductML += out.VolumeML()
	cy.ProductCellsML += out.CellsML
	cy.FreeHbG += out.In[FreeHb]
	cy.Potassium += out.In[Potassium]
	cy.ProteinG += out.In[Protein]
	cy.HeparinIU += out.In[Heparin]
	cy.CitrateMmol += out.In[Citrate]
}

// wrongWashShare is the share of a cycle's wash fluid that cells must not be washed with.
func (cy *Cycle) wrongWashShare() float64 {
	all, wrong := 0.0, 0.0
	for i, ml := range cy.WashBy {
		all += ml
		if !Solution(i).FitToWash() {
			wrong += ml
		}
	}
	if all <= 0 {
		return 0
	}
	return wrong / all
}

// takeBack moves the share (0–1) of what a cycle brought into its bag over to the feed of the cycle that processes it again.
func (cy *Cycle) takeBack(from *Cycle, share float64) {
	part := func(v *float64) float64 {
		d := float64(share * *v)
		*v -= d
		return d
	}
	cy.FeedML += part(&from.FeedML)
	cy.FeedCellsML += part(&from.FeedCellsML)
	cy.FeedFreeHbG += part(&from.FeedFreeHbG)
	cy.FeedPotassium += part(&from.FeedPotassium)
	cy.FeedProteinG += part(&from.FeedProteinG)
	cy.FeedHeparinIU += part(&from.FeedHeparinIU)
	cy.FeedCitrate += part(&from.FeedCitrate)
	for _, v := range [...]*float64{&from.ProductML, &from.ProductCellsML, &from.FreeHbG, &from.Potassium, &from.ProteinG, &from.HeparinIU,
		&from.CitrateMmol} {
		part(v)
	}
}
