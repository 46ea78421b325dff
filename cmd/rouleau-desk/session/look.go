// What the drawing shows of liquids and flows, taken from the state. Colours are what an eye sees through a wall, so they
// are true always; positions inside the spinning bowl come from the detector,
// unless hidden truth is shown.

package session

import (
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/sim"
)

func liquidOf(f *sim.Fluid) bench.Liquid {
	return bench.Liquid{Hct: f.Hct(), FreeHbGL: f.PerL(sim.FreeHb), ProteinGL: f.PerL(sim.Protein)}
}

// clearOf is the liquid of a fluid without its cells.
func clearOf(f *sim.Fluid) bench.Liquid {
	l := liquidOf(f)
	l.Hct = 0
	return l
}

func (s *Session) look(d *bench.Drawn) {
	st := &s.Run.State
	b, p, r := &st.Bowl, &st.Pump, &st.Reservoir
	shape := b.Shape()
	if b.Kind == sim.NoBowl {
		shape = st.Bench.Bowl.Shape()
	}
	*d = bench.Drawn{Pool: liquidOf(&st.Field.Pool), Canister: liquidOf(&st.Field.Discarded), Waste: liquidOf(&st.Waste.Bag),
		ReservoirClear: clearOf(&r.Blood), OuterCM: shape.OuterCM, InnerCM: shape.InnerCM, BowlML: shape.VolumeML, RPM: shape.RPM,
		SuckMLMin: st.Field.SuckRateMLMin, DiscardMLMin: st.Field.DiscardRateMLMin, DripMLMin: st.Drip.RateMLMin,
		EffluentMLMin: b.Effluent.RateMLMin, GiveMLMin: st.Giving.FlowMLMin}
	d.Pool.Venous = bench.ShedVenous
	d.Suction = d.Pool
	if st.Drip.RateMLMin > 0 && st.Field.SuckRateMLMin > 0 {
		d.Suction.Hct *= st.Field.SuckRateMLMin / (st.Field.SuckRateMLMin + st.Drip.RateMLMin)
	}
	if st.Field.SuckedML == 0 { // only anticoagulant has come this way
		d.Suction = bench.Liquid{}
	}
	d.ReservoirLow = d.ReservoirClear
	if low := r.Blood.VolumeML() - r.ClearML; low > 0 {
		d.ReservoirLow.Hct = min(0.8, r.Blood.CellsML/low)
	}
	d.Outlet = d.ReservoirLow
	d.Outlet.Hct = r.OutletHct()
	for i := range st.Bags[:st.BagsUsed] {
		d.Bags[i] = liquidOf(&st.Bags[i].Fluid)
	}
	s.lookBowl(d)
	flow := p.FlowMLMin
	if p.NoFlow {
		flow = 0
	}
	switch p.Mode {
	case sim.PumpFill:
		d.FeedMLMin = flow
	case sim.PumpWash:
		d.WashMLMin = flow
	case sim.PumpEmpty:
		d.ProductMLMin = flow
	case sim.PumpDrawBack, sim.PumpTopUp:
		d.DrawBackMLMin = flow
	case sim.PumpSendBack:
		d.OutletBackMLMin = flow
	}
}

// lookBowl is the inside of the bowl.
func (s *Session) lookBowl(d *bench.Drawn) {
	b := &s.Run.State.Bowl
	d.FromDetector = s.options.Assessment || !s.View.ShowTruth
	all := b.ContentsML()
	if d.BowlML <= 0 || all <= 0 {
		return
	}
	d.HeldShare = all / d.BowlML
	mobile := bench.Liquid{FreeHbGL: b.Mobile.PerL(sim.FreeHb), ProteinGL: b.Mobile.PerL(sim.Protein)}
	d.Bed = mobile
	d.Bed.Hct = b.Packing
	d.Supernatant = bench.Liquid{FreeHbGL: b.Clear.PerL(sim.FreeHb), ProteinGL: b.Clear.PerL(sim.Protein)}
	liquid := all - b.CellsML
	free := b.Mobile.In[sim.FreeHb] + b.Immobile.In[sim.FreeHb] + b.Clear.In[sim.FreeHb]
	protein := b.Mobile.In[sim.Protein] + b.Immobile.In[sim.Protein] + b.Clear.In[sim.Protein]
	d.BowlMixed = bench.Liquid{Hct: b.CellsML / all}
	if liquid > 0 {
		d.BowlMixed.FreeHbGL, d.BowlMixed.ProteinGL = 1000*free/liquid, 1000*protein/liquid
	}
	d.Effluent = bench.Liquid{Hct: b.Effluent.Hct, FreeHbGL: b.Effluent.FreeHbGL, ProteinGL: d.Supernatant.ProteinGL}
	d.BedShare = b.FillFraction()
	if d.FromDetector {
		d.BedShare = min(s.View.Seen.Pump.BedByEye, d.HeldShare) // as an eye sees it, also where the detector errs
	}
}

func (s *Session) truth(t *bench.Truth) {
	st := &s.Run.State
	r, b := &st.Reservoir, &st.Bowl
	*t = bench.Truth{ReservoirHct: r.Blood.Hct(), ReservoirLowHct: r.OutletHct(), ReservoirFreeHbGL: r.Blood.PerL(sim.FreeHb),
		FilterActivation: st.Filter.Activation, BedShare: b.FillFraction(),
		HbGDL: st.Patient.Blood.HbGPerDL(), BleedMLMin: st.Field.BleedMLMin, ShedML: st.Patient.ShedML}
	if all := b.ContentsML(); all > 0 {
		t.BowlHct = b.CellsML / all
	}
	for i := range st.Bags[:st.BagsUsed] {
		t.BagHct[i], t.BagFreeHbGL[i] = st.Bags[i].Fluid.Hct(), st.Bags[i].Fluid.PerL(sim.FreeHb)
	}
}
