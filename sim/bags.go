package sim

// Product bags: emptying into them, drawing back from them, their air, their open ports.

// ProductBag is one bag of washed red cells.
type ProductBag struct {
	Hung       bool
	Fluid      Fluid
	AirML      float64
	Fragments  Fluid
	Flaws      Flaws   // of what is in it now
	Reacted    bool    // the patient reacted to it
	Parted     bool    // what is in it has been apart from the patient
	AirAtGiven float64 // air in it when it began to run, mL
	FirstTick  int64   // first product came in; expiry counts from here
	LabelBits  uint8
	MixedTick  int64 // last turned over, -1 for never
	HandedBits uint8
	HandedTick int64
	Checkers   uint8 // people who checked identity
	Discarded  bool
	CameML     float64 // all that came in, less what was drawn back
	GivenML    float64
}

const (
	bagSettlesS   = 240.0 // [A] an unturned bag is no longer mixed after this
	unmixedSample = 1.15  // [A] haematocrit of a sample from an unturned bag, relative
)

// productBag is the bag on the product line, or nil.
func (s *State) productBag() *ProductBag {
	if s.BagsUsed == 0 || !s.Bags[s.BagsUsed-1].Hung || s.Bags[s.BagsUsed-1].Discarded {
		return nil
	}
	return &s.Bags[s.BagsUsed-1]
}

// pumpEmpty pushes the stopped bowl's contents through the line into the product bag, 5 mL stay behind.
func pumpEmpty(s *State, h *Happened) {
	p, b := &s.Pump, &s.Bowl
	left := b.ContentsML() - residualML
	bag := s.productBag()
	if left <= 1e-9 || bag == nil {
		finishEmpty(s, h)
		return
	}
	var out, pushed Fluid
	ml := b.drain(&out, min(left, p.EmptyMLMin/60*tickS))
	p.FlowMLMin = ml / tickS * 60
	if !p.FirstAir {
		bag.AirML += firstAirML
		p.FirstAir = true
	}
	cy := s.cycle()
	recordProduct(cy, &out)
	p.LineFlaws.add(s.flawsOf(cy, ml))
	held := p.Line.VolumeML() + ml
	through(&p.Line, &out, &pushed, productLineML)
	flaws := p.LineFlaws.take(pushed.VolumeML() / held)
	if !s.Bench.Connected[ProductLine] || s.Bench.Loose[ProductLine] {
		var lost Fluid
		move(&lost, &pushed, pushed.VolumeML()/2)
		flaws.take(0.5)
		s.Conduct.meet(IncidentSpill, s.Tick)
		moveAll(&s.Field.Floor, &lost)
	}
	bagIn(s, bag, flaws, &pushed)
	share := ml / (left + residualML)
	move(&bag.Fragments, &b.Fragments, float64(share*b.Fragments.VolumeML()))
	if b.ContentsML() <= residualML+1e-9 {
		move(&bag.Fragments, &b.Fragments, b.Fragments.VolumeML())
		finishEmpty(s, h)
	}
}

// bagIn takes product into a bag and keeps count of what must not be given.
func bagIn(s *State, bag *ProductBag, flaws Flaws, in *Fluid) {
	ml := in.VolumeML()
	if ml <= 0 {
		return
	}
	if bag.FirstTick == 0 {
		bag.FirstTick = s.Tick
	}
	bag.CameML += ml
	bag.Flaws.add(flaws)
	moveAll(&bag.Fluid, in)
}

func finishEmpty(s *State, h *Happened) {
	s.Pump.Mode = PumpIdle
	if cy := s.cycle(); cy != nil && cy.DoneTick == 0 {
		cy.DoneTick = s.Tick
		cy.Bag = int8(s.BagsUsed - 1)
		h.act(s.Tick, "bowl_emptied", cy.ProductML)
	}
}

// pumpDrawBack brings a dilute product back into the stopped bowl.
func pumpDrawBack(s *State, h *Happened) {
	p, b := &s.Pump, &s.Bowl
	bag := &s.Bags[p.DrawBag]
	room := b.Shape().VolumeML - b.ContentsML()
	ml := min(room, p.EmptyMLMin/60*tickS)
	var in Fluid
	if before := bag.Fluid.VolumeML(); ml > 0 && before > 0 {
		ml = move(&in, &bag.Fluid, ml)
		s.drawnBack(bag, ml/before, ml/bag.CameML)
		bag.CameML -= ml
	} else {
		ml = 0
	}
	if ml <= 1e-9 || room <= 1e-9 {
		p.Mode = PumpIdle
		h.act(s.Tick, "drawn_back", b.ContentsML())
		return
	}
	p.FlowMLMin = ml / tickS * 60
	b.pourBack(&in)
}

// drawnBack takes a share of a bag's content off the books of the bag and of the cycles that filled it: it will be
// processed again. Of what came into the bag, given or not, it is the share ofCame.
func (s *State) drawnBack(bag *ProductBag, share, ofCame float64) {
	if bag.Flaws.take(share).BreachedML > 0 {
		s.Bowl.Breached = true
	}
	now := s.cycle()
	for i := range s.Cycles[:s.CycleUsed-1] {
		if cy := &s.Cycles[i]; cy.Bag == s.Pump.DrawBag {
			now.takeBack(cy, ofCame)
		}
	}
}

// pumpSendBack empties the bowl into the reservoir.
func pumpSendBack(s *State, h *Happened) {
	p, b := &s.Pump, &s.Bowl
	left := b.ContentsML() - residualML
	if left <= 1e-9 {
		p.Mode = PumpIdle
		if cy := s.cycle(); cy != nil && cy.DoneTick == 0 {
			cy.DoneTick, cy.Bag = s.Tick, -1
		}
		h.act(s.Tick, "sent_back", 0)
		return
	}
	var out Fluid
	ml := b.drain(&out, min(left, p.EmptyMLMin/60*tickS))
	p.FlowMLMin = ml / tickS * 60
	came := s.Reservoir.TakenInML
	s.Reservoir.receive(&out, out.VolumeML(), s.Reservoir.Activation)
	s.Reservoir.Breached = s.Reservoir.Breached || b.Breached
	s.Reservoir.TakenInML = came // it did not come through the sucker again
}

// leaks lets blood and product run away through what was left open or loose.
func leaks(s *State) {
	b := &s.Bench
	if b.Open[OutletClamp] && !b.Connected[OutletLine] && s.Reservoir.Blood.VolumeML() > 0 {
		var out Fluid
		s.Reservoir.draw(&out, leakOpenMLMin/60*tickS)
		moveAll(&s.Field.Floor, &out)
		s.Conduct.meet(IncidentSpill, s.Tick)
	}
	if bag := s.productBag(); bag != nil && b.Open[SparePort] && bag.Fluid.VolumeML() > 0 {
		bag.Flaws.take(leakPortMLMin / 60 * tickS / bag.Fluid.VolumeML())
		lost := move(&s.Field.Floor, &bag.Fluid, leakPortMLMin/60*tickS)
		bag.AirML += lost
		s.Conduct.meet(IncidentSpill, s.Tick)
	}
	if s.Bowl.LeakMLMin > 0 && s.Bowl.Spinning {
		s.bowlLeak()
	}
}

// bowlLeak lets a leaking bowl lose its supernatant, then its bed.
func (s *State) bowlLeak() {
	b := &s.Bowl
	ml := float64(s.Bowl.LeakMLMin / 60 * tickS)
	var out Fluid
	fromClear := min(ml, b.Clear.ML)
	b.takeClear(&out.Liquid, fromClear)
	if ml > fromClear {
		b.loseCells(&out, min(ml-fromClear, b.CellsML))
	}
	moveAll(&s.Field.Floor, &out)
	s.Conduct.meet(IncidentEquipment, s.Tick)
}
