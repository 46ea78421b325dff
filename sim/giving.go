package sim

// Giving washed blood back: gravity, the filter, pressure, air, and a reaction.

const (
	gravityMostMLMin = 150.0 // [A]
	squeezeMLMin     = 300.0 // [A]
	pressedAirShare  = 0.5   // [A] air leaves with pressed product at this share of its flow
	reactionFadesS   = 180.0 // [A]
	reactionShowsS   = 20.0  // [A] from onset until the monitor shows it
	unfitFreeHbGL    = 5.0   // g/L of supernatant: product counts as haemolysed [A]
	filterCatchesML  = 3.0   // [A] clot fragments that the giving filter holds back
)

// Giving is the way from a bag to the patient.
type Giving struct {
	Bag        int8 // bag connected to the patient, -1 for none
	Pack       int8 // a pack of solution connected by mistake, -1 for none
	RateMLMin  float64
	Squeezing  bool
	FlowMLMin  float64 // now
	GivenML    float64
	GivenCells float64
	AirML      float64 // given
	Caught     Fluid   // fragments in the filter
	Filter     bool
	Joined     bool // by a line that was there before the blood: bowl, bag and patient are one circuit
}

// give lets one tick of return reach the patient.
func give(c *Case, s *State) {
	g := &s.Giving
	g.FlowMLMin = 0
	if g.Bag < 0 && g.Pack < 0 {
		return
	}
	rate := min(g.RateMLMin, gravityMostMLMin)
	if g.Squeezing {
		rate = squeezeMLMin
		s.Conduct.SqueezedTicks++
		s.Conduct.meet(IncidentAir, s.Tick) // pressure on a bag is told as what it risks
	}
	if g.Filter {
		rate *= max(0.1, 1-g.Caught.VolumeML()/filterCatchesML)
	}
	if rate <= 0 {
		return
	}
	want := rate / 60 * tickS
	if g.Pack >= 0 {
		pack := &s.Bench.Packs[g.Pack]
		got := move(&s.Patient.Blood, &pack.Fluid, want)
		g.FlowMLMin = got / tickS * 60
		if pack.Solution.Anticoagulant() {
			s.Conduct.AnticoagulantGivenML += got
		}
		return
	}
	s.giveBag(c, &s.Bags[g.Bag], want)
}

// giveBag gives up to want mL from a bag, keeping count of everything that should not have been in it.
func (s *State) giveBag(c *Case, bag *ProductBag, want float64) {
	g, k := &s.Giving, &s.Conduct
	whole := bag.Fluid.VolumeML()
	air := 0.0
	if bag.GivenML == 0 && whole > 0 {
		bag.AirAtGiven = bag.AirML
	}
	if g.Squeezing {
		air = min(bag.AirML, float64(want*pressedAirShare))
		want -= air
	} else if whole <= 0 {
		air = min(bag.AirML, want)
	}
	bag.AirML -= air
	g.AirML += air
	if air > 0 {
		k.meet(IncidentAir, s.Tick)
	}
	if whole <= 0 || want <= 0 {
		return
	}
	share := min(1, want/whole)
	s.begun(bag)
	s.countGiven(c, bag, min(want, whole))
	piece := float64(share * bag.Fragments.VolumeML())
	if g.Filter {
		move(&g.Caught, &bag.Fragments, piece)
	} else {
		k.ClotGivenML += move(&s.Patient.Blood, &bag.Fragments, piece)
	}
	cells, heparin := s.Patient.Blood.CellsML, s.Patient.Blood.In[Heparin]
	got := move(&s.Patient.Blood, &bag.Fluid, want)
	g.GivenCells += s.Patient.Blood.CellsML - cells
	if s.Patient.ProtamineTick > 0 {
		k.HeparinAfterIU += s.Patient.Blood.In[Heparin] - heparin
	}
	g.GivenML += got
	bag.GivenML += got
	g.FlowMLMin = got / tickS * 60
}

// countGiven notes, before ml of a bag goes in, what is wrong with giving it.
func (s *State) countGiven(c *Case, bag *ProductBag, ml float64) {
	k := &s.Conduct
	f := &bag.Fluid
	flaws := bag.Flaws.take(ml / f.VolumeML())
	k.UnwashedGivenML += flaws.UnwashedML
	k.WrongWashGivenML += flaws.WrongML
	if s.Bench.BreachKnown {
		k.BreachedGivenML += flaws.BreachedML
	}
	haemolysed := f.PerL(FreeHb) > unfitFreeHbGL
	if haemolysed {
		k.HaemolysedGivenML += ml
	}
	if haemolysed || flaws.UnwashedML > 0 || flaws.WrongML > 0 {
		k.meet(IncidentProduct, s.Tick)
	}
	if bag.Parted && c.Patient.CircuitAsked {
		k.PartedGivenML += ml
	}
	if bag.Checkers < 2 {
		k.UnidentifiedGivenML += ml
	}
	if bag.LabelBits != LabelComplete {
		k.UnlabelledGivenML += ml
	}
	if s.Tick > bag.FirstTick+c.Faults.ExpiryTicks {
		k.ExpiredGivenML += ml
	}
	if s.Patient.Reaction && s.Tick > s.Patient.ReactionTick+Ticks(reactionShowsS) {
		k.ReactionGivenML += ml
	}
	if !s.Giving.Filter {
		k.UnfilteredGivenML += ml
	}
	v := f.VolumeML()
	for i := range c.Contaminants {
		if spec := &c.Contaminants[i]; spec.LimitPerML > 0 && f.Contaminant(i)/v > spec.LimitPerML {
			k.ContaminatedGivenML += ml
			k.meet(IncidentProduct, s.Tick)
			break
		}
	}
}

// begun sees to a bag that runs: what is asked for has come, and blood that was reacted to is reacted to again.
func (s *State) begun(bag *ProductBag) {
	for i := s.Team.BloodWanted(); i >= 0; i = s.Team.BloodWanted() {
		s.Team.Questions[i].AnsweredTick = max(1, s.Tick)
	}
	if p := &s.Patient; bag.Reacted && !p.Reaction {
		p.Reaction, p.ReactionTick, p.ReactionLast = true, s.Tick-Ticks(reactionShowsS), s.Tick
	}
}

// react lets a reaction fade once nothing is given any more.
func react(s *State) {
	p := &s.Patient
	if !p.Reaction {
		return
	}
	if s.Giving.FlowMLMin > 0 {
		p.ReactionLast = s.Tick
	} else if s.Tick > p.ReactionLast+Ticks(reactionFadesS) {
		p.Reaction = false
	}
}
