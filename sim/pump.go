package sim

// The pump and what it joins: reservoir, wash fluid, bowl, product bag and waste.

const (
	looseAir        = 0.02   // [A] air that a loose line draws, share of the flow
	airStopsML      = 5.0    // [A] air in the line that stops the pump
	productLineML   = 10.0   // [A] what the line to the product bag keeps
	firstAirML      = 40.0   // [A] air that the first emptying pushes into the bag
	leakOpenMLMin   = 500.0  // [A] from an open reservoir outlet with nothing connected
	leakPortMLMin   = 120.0  // [A] from an open spare port
	pumpLeastMLMin  = 25.0   // [A]
	pumpMostMLMin   = 1000.0 // [A]
	startFillMLMin  = 300.0  // [P]
	startWashMLMin  = 300.0  // [P]
	startEmptyMLMin = 400.0  // [P]
	startWashML     = 1000.0 // [P]
)

// PumpMode is what the pump is doing.
type PumpMode uint8

// The modes.
const (
	PumpIdle PumpMode = iota
	PumpFill
	PumpWash
	PumpEmpty
	PumpDrawBack
	PumpSendBack
	PumpTopUp
)

// Pump is the pump's settings and what it does now.
type Pump struct {
	Mode       PumpMode
	FillMLMin  float64
	WashMLMin  float64
	EmptyMLMin float64
	WashML     float64 // set volume of one wash
	WashedML   float64 // of the wash going on, topping up not counted
	FlowMLMin  float64 // now, as pumped
	Line       Fluid   // line to the product bag
	LineFlaws  Flaws   // of what it holds
	FirstAir   bool    // the first emptying has happened
	DrawBag    int8    // bag being drawn back
	AutoFillML float64 // 0 off
	AutoStop   bool
	AutoWash   bool
	AutoEmpty  bool
	NoFlow     bool  // pump turns, nothing flows
	PutOffTick int64 // automatic steps wait until this tick after a stop by hand
}

// Waste is the waste bag and what was carried away before.
type Waste struct {
	Bag           Fluid
	Removed       Fluid
	CarriedAwayML float64 // in full waste bags
	DiscardedML   float64 // product and collected blood thrown away
}

// process runs pump and bowl for one tick.
func process(c *Case, s *State, h *Happened) {
	p, b := &s.Pump, &s.Bowl
	p.FlowMLMin, p.NoFlow = 0, false
	b.Effluent = Effluent{}
	leaks(s)
	if b.Kind == NoBowl || !s.Bench.Opened[ProcessingSet] {
		return
	}
	if p.Mode != PumpIdle && blocked(c, s) {
		p.NoFlow = true
		s.Conduct.BlockedTicks++
	}
	switch {
	case p.NoFlow && b.Spinning:
		turn(s, &Fluid{}, flowNone)
	case !p.NoFlow:
		pumpNow(s, h)
	}
	if b.BrakeUntil > 0 && s.Tick >= b.BrakeUntil {
		b.BrakeUntil = 0
	}
	if b.Spinning {
		s.readDetector(c)
	}
	automatic(c, s, h)
}

// blocked says whether a full bag or a closed clamp keeps the pump from moving anything.
func blocked(c *Case, s *State) bool {
	open := s.Bench.Open
	switch s.Pump.Mode {
	case PumpFill:
		return !open[OutletClamp] || s.outletLimit() <= 0 || s.Waste.Bag.VolumeML() >= c.Faults.WasteCapacityML
	case PumpTopUp:
		return s.Waste.Bag.VolumeML() >= c.Faults.WasteCapacityML
	case PumpWash:
		return !open[WashClampA] && !open[WashClampB] || s.Waste.Bag.VolumeML() >= c.Faults.WasteCapacityML
	case PumpEmpty:
		bag := s.productBag()
		return bag != nil && bag.Fluid.VolumeML()+bag.AirML >= c.Faults.BagCapacityML
	}
	return false
}

// outletLimit is what clot leaves of the reservoir's outlet now, mL/min.
func (s *State) outletLimit() float64 {
	return outletLimitMLMin(s.Filter.Clot.VolumeML() + s.Reservoir.Clot.VolumeML())
}

// pumpNow moves what the pump moves in one tick.
func pumpNow(s *State, h *Happened) {
	switch s.Pump.Mode {
	case PumpFill:
		pumpFill(s, h)
	case PumpWash:
		pumpWash(s, h)
	case PumpEmpty:
		pumpEmpty(s, h)
	case PumpDrawBack:
		pumpDrawBack(s, h)
	case PumpSendBack:
		pumpSendBack(s, h)
	case PumpTopUp:
		pumpTopUp(s, h)
	default:
		if s.Bowl.Spinning {
			turn(s, &Fluid{}, flowNone)
		} else if s.Bowl.CellsML > 0 {
			s.Bowl.breakCells(s.Bowl.osmotic(tickS), &s.Stores.LysedML)
		}
	}
}

// turn gives one tick's inflow to the spinning bowl and its effluent to the waste.
func turn(s *State, in *Fluid, kind flowKind) {
	b := &s.Bowl
	var out Fluid
	b.spin(in, &out, kind, tickS, &s.Stores.LysedML)
	v := out.VolumeML()
	if v > 0 {
		b.Effluent = Effluent{RateMLMin: v / tickS * 60, Hct: out.Hct(), FreeHbGL: out.PerL(FreeHb)}
		if out.ML > 0 {
			b.Effluent.FatShare = out.In[Fat] / out.ML
		}
		if cy := s.cycle(); cy != nil {
			cy.WasteCellsML += out.CellsML
		}
		s.toWaste(&out)
	}
}

// toWaste takes effluent to the waste bag, or to the floor if its drain or its line is open.
func (s *State) toWaste(out *Fluid) {
	if s.Bench.Open[WasteDrain] || !s.Bench.Connected[WasteLine] {
		moveAll(&s.Field.Floor, out)
		s.Conduct.meet(IncidentSpill, s.Tick)
		return
	}
	if s.Bench.Loose[WasteLine] {
		move(&s.Field.Floor, out, out.VolumeML()/2)
		s.Conduct.meet(IncidentSpill, s.Tick)
	}
	moveAll(&s.Waste.Bag, out)
}

// pumpFill draws from the reservoir.
func pumpFill(s *State, h *Happened) {
	p, b := &s.Pump, &s.Bowl
	rate := min(p.FillMLMin, s.outletLimit())
	var in Fluid
	want := float64(rate / 60 * tickS)
	got := s.Reservoir.draw(&in, want)
	p.FlowMLMin = rate
	if got < want {
		b.AirML += want - got
	}
	if s.Bench.Loose[OutletLine] {
		b.AirML += float64(looseAir * got)
		s.Conduct.LooseFedML += got
	}
	b.OsmLysedML += in.CellsML * s.Reservoir.LysedShare / max(1e-9, 1-s.Reservoir.LysedShare)
	b.Breached = b.Breached || s.Reservoir.Breached || s.Bench.Breached[ProcessingSet]
	fragments(s, got)
	if cy := s.cycle(); cy != nil {
		cy.FeedML += got
		cy.FillMLMin = max(cy.FillMLMin, p.FillMLMin)
		cy.FeedCellsML += in.CellsML
		cy.FeedFreeHbG += in.In[FreeHb]
		cy.FeedPotassium += in.In[Potassium]
		cy.FeedProteinG += in.In[Protein]
		cy.FeedHeparinIU += in.In[Heparin]
		cy.FeedCitrate += in.In[Citrate]
	}
	turn(s, &in, flowFeed)
	airStop(s, h)
}

// fragments carries pieces of clot with a draw of ml: half stay with the cells, half leave with the effluent.
func fragments(s *State, ml float64) {
	clot := &s.Reservoir.Clot
	if s.Filter.Clot.VolumeML()+clot.VolumeML() <= fragmentsFromML {
		return
	}
	if clot.VolumeML() <= 0 {
		clot = &s.Filter.Clot
	}
	piece := float64(fragmentsPerML * ml)
	move(&s.Bowl.Fragments, clot, float64(fragmentsKept*piece))
	var rest Fluid
	move(&rest, clot, piece-float64(fragmentsKept*piece))
	s.toWaste(&rest)
}

// pumpWash draws from the open wash lines; an open line without fluid brings air instead.
func pumpWash(s *State, h *Happened) {
	p, b := &s.Pump, &s.Bowl
	hooks := [...]struct{ hook, clamp Part }{{WashHookA, WashClampA}, {WashHookB, WashClampB}}
	open := 0.0
	for _, k := range hooks {
		if s.Bench.Open[k.clamp] {
			open++
		}
	}
	kind := flowWash
	if b.ContentsML() < b.Shape().VolumeML-0.01 {
		kind = flowTopUp
	}
	p.FlowMLMin = p.WashMLMin
	want := p.WashMLMin / 60 * tickS
	if kind == flowWash {
		want = min(want, max(0, p.WashML-p.WashedML))
	}
	var in Fluid
	cy := s.cycle()
	for _, k := range hooks {
		if !s.Bench.Open[k.clamp] {
			continue
		}
		share, got := want/open, 0.0
		if i := s.Bench.HookPack[k.hook]; i >= 0 {
			pack := &s.Bench.Packs[i]
			got = move(&in, &pack.Fluid, share)
			if got > 0 && !pack.Solution.FitToWash() {
				s.Conduct.meet(IncidentWrongFluid, s.Tick)
			}
			if cy != nil {
				cy.WashBy[pack.Solution] += got
			}
		}
		b.AirML += max(0, share-got)
	}
	got := in.VolumeML()
	turn(s, &in, kind)
	if kind == flowWash {
		p.WashedML += got
		if cy != nil {
			cy.WashML += got
			cy.WashMLMin = max(cy.WashMLMin, p.WashMLMin)
		}
		if p.WashedML >= p.WashML-1e-9 {
			p.Mode = PumpIdle
			h.act(s.Tick, "wash_done", p.WashedML)
		}
	}
	airStop(s, h)
}

// airStop stops the pump when it has drawn air.
func airStop(s *State, h *Happened) {
	if s.Bowl.AirML < airStopsML {
		return
	}
	h.act(s.Tick, "air_stopped_pump", s.Bowl.AirML)
	stopPump(s)
}
