package sim

// The sum over all places: what conservation is checked against.

// Places calls visit for every place that holds a fluid, with its name.
func (s *State) Places(visit func(name string, f *Fluid)) {
	liquid := func(name string, l *Liquid) {
		f := Fluid{Liquid: *l}
		visit(name, &f)
	}
	visit("patient", &s.Patient.Blood)
	liquid("interstitium", &s.Patient.Interstitium)
	liquid("metabolised", &s.Patient.Metabolised)
	visit("urine", &s.Patient.Urine)
	visit("pool", &s.Field.Pool)
	visit("swabs", &s.Field.Swabs)
	visit("drapes", &s.Field.Drapes)
	visit("discarded", &s.Field.Discarded)
	visit("floor", &s.Field.Floor)
	visit("basin", &s.Team.Basin)
	visit("drip line", &s.Drip.Line)
	visit("filter", &s.Filter.Content)
	visit("filter clot", &s.Filter.Clot)
	visit("reservoir", &s.Reservoir.Blood)
	visit("reservoir clot", &s.Reservoir.Clot)
	bed := Fluid{CellsML: s.Bowl.CellsML, Bound: s.Bowl.Bound, Liquid: s.Bowl.Mobile}
	visit("bed", &bed)
	liquid("bed, immobile", &s.Bowl.Immobile)
	liquid("supernatant", &s.Bowl.Clear)
	visit("bowl fragments", &s.Bowl.Fragments)
	visit("product line", &s.Pump.Line)
	visit("waste", &s.Waste.Bag)
	visit("waste carried away", &s.Waste.Removed)
	visit("giving filter", &s.Giving.Caught)
	for i := range s.Bags {
		visit("bag", &s.Bags[i].Fluid)
		visit("bag fragments", &s.Bags[i].Fragments)
	}
	for i := range s.Bench.Packs {
		visit("pack", &s.Bench.Packs[i].Fluid)
	}
	visit("infusion", &s.Stores.Infusion)
	visit("donor", &s.Stores.Donor)
	visit("plasma of others", &s.Stores.Plasma)
	visit("rinse", &s.Stores.Rinse)
	visit("syringe", &s.Stores.Syringe)
	visit("samples", &s.Stores.Samples)
	visit("body fluid", &s.Stores.BodyFluid)
	visit("pump circuit", &s.Stores.Circuit)
	for i := range s.Stores.Irrigation {
		visit("irrigation", &s.Stores.Irrigation[i])
	}
}

// Total is the sum over all places with lysis undone: volume, cells and lysed cells, and each amount less what lysis freed.
// Bound and dissolved contaminants are summed together. It is constant during a run.
func (s *State) Total() Fluid {
	var t Fluid
	s.Places(func(_ string, f *Fluid) {
		t.CellsML += f.CellsML
		t.ML += f.ML
		for i := range f.In {
			t.In[i] += f.In[i]
		}
		for i := range f.Bound {
			t.In[int(Dissolved0)+i] += f.Bound[i]
		}
	})
	lysed := s.Stores.LysedML
	t.CellsML += lysed
	t.ML -= lysed
	t.In[FreeHb] -= float64(MCHCGPerML * lysed)
	t.In[Potassium] -= float64(cellPotassiumMmolPerML * lysed)
	return t
}
