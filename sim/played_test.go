package sim

// The adult case of the design paper, section 10 played by a rule: a bowl begun when the reservoir holds 150 mL of cells, filled and
// washed at 300 mL/min with 1000 mL. What differs between plays is told.

import "testing"

// manner is how the case is played.
type manner struct {
	agent       Solution // heparin when not told
	times       float64  // the bleeding, times this
	matched     bool     // the drip follows the bleeding: 17 mL per 100 mL of what reaches the pool; else one drop a second
	stopDripAtS float64  // the drip is forgotten from here on
	mixed, pool bool     // the reservoir is mixed every five minutes; the wound is left to pool
	rinsed      bool     // swabs are rinsed three times
	hold        bool     // nothing is processed, nothing is given
	give        bool     // each bag is given as it comes
	change      func(c *Case)
}

// outcome is what came of it.
type outcome struct {
	recovery, clotML, clearShare, lysed, productHct float64
	bowls                                           int
	s                                               State
}

// playAdult plays the 75 minutes and what is left to empty after them.
func playAdult(t *testing.T, m manner) outcome {
	t.Helper()
	c := adultCase()
	for i := range c.Phases {
		c.Phases[i].BleedMLMin *= max(m.times, 1)
	}
	c.Patient.DonorRefused = true
	c.Packs[0].VolumeML, c.Packs[1].VolumeML, c.Packs[3].VolumeML = 5000, 50000, 5000 // nobody has to change packs or bags
	c.Faults.WasteCapacityML, c.Faults.BagCapacityML = 1e6, 1e5
	if m.change != nil {
		m.change(&c)
	}
	b := newBench(t, c, 1)
	if m.agent == CitrateSolution {
		b.play(script{{0, Unhang, AnticoagulantHook, 0}, {6, Hang, AnticoagulantHook, 3}})
		b.wait(13)
	}
	open := openBench(max(m.agent, HeparinSolution), StandardBowl)
	for i := range open {
		open[i].atS += 20
	}
	b.play(open)
	b.play(script{{180, AutoStop, 0, 1}, {180, AutoWash, 0, 1}, {180, AutoEmpty, 0, 1}})
	if m.pool {
		b.do(Ask, 0, float64(LetItPool))
	}
	var o outcome
	for b.s.Tick < Ticks(80*60) && !b.s.Ended {
		b.wait(1)
		second := b.s.Tick / TicksPerSecond
		b.drip(m, float64(second))
		if m.mixed && second%300 == 0 && May(&b.c, &b.s, Action{Do: Mix}) == "" {
			b.do(Mix, 0, 0)
		}
		if m.rinsed && second%1400 == 0 && May(&b.c, &b.s, Action{Do: Ask, Value: float64(RinseSwabs)}) == "" {
			b.do(Ask, 0, float64(RinseSwabs))
		}
		if !m.hold {
			b.process(m)
		}
		if v := b.s.Reservoir.Blood.VolumeML(); v > 300 {
			o.clearShare = max(o.clearShare, b.s.Reservoir.ClearML/v)
		}
	}
	s := &b.s
	saved := s.Giving.GivenCells + s.Pump.Line.CellsML
	product, productCells := 0.0, 0.0
	for i := range s.Bags {
		saved += s.Bags[i].Fluid.CellsML
	}
	for i := range s.Cycles[:s.CycleUsed] {
		if cy := &s.Cycles[i]; cy.DoneTick > 0 {
			o.bowls++
			product, productCells = product+cy.ProductML, productCells+cy.ProductCellsML
		}
	}
	o.recovery, o.productHct = saved/s.Patient.ShedCellsML, share(productCells, product)
	o.clotML, o.lysed, o.s = s.Filter.Clot.VolumeML()+s.Reservoir.Clot.VolumeML(), s.Stores.LysedML, *s
	return o
}

// drip sets the drops of this second.
func (b *bench) drip(m manner, second float64) {
	drops := 60.0
	if m.matched {
		toPool := 1 - 0.28 - 0.05
		drops = max(20, 17.0/100*b.s.Field.BleedMLMin*toPool*dropsPerML)
	}
	if m.stopDripAtS > 0 && second >= m.stopDripAtS {
		drops = 0
	}
	if drops != b.s.Drip.DropsMin {
		b.do(SetDrip, 0, min(drops, MaxDropsMin))
	}
}

// process begins a bowl when there are cells enough, and gives what has come when that is wanted.
func (b *bench) process(m manner) {
	s := &b.s
	cells := s.Reservoir.Blood.CellsML
	last := s.Tick > Ticks(75*60) && cells > 40
	if (cells >= 150 || last) && May(&b.c, s, Action{Do: Fill}) == "" && !s.Bowl.Spinning {
		b.do(Fill, 0, 0)
	}
	if g := &s.Giving; m.give && g.RateMLMin > 0 && s.Bags[g.Bag].Fluid.VolumeML() < 1 {
		b.do(GiveRate, 0, 0) // before it runs air
	}
	newest := s.BagsUsed - 1
	if !m.give || s.Giving.RateMLMin > 0 || newest == MaxBags-1 || May(&b.c, s, Action{Do: NewBag}) != "" || s.Bags[newest].Fluid.VolumeML() < 100 {
		return
	}
	b.do(NewBag, 0, 0)
	b.wait(16)
	b.do(Hook, Bag(newest), 1)
	b.do(GiveRate, 0, 100)
}
