package sim

// What a person at the bench can see or read: the only thing an operator may look at, and all that an assessment shows.

// Seen is the bench through the trainee's eyes. Volumes are read off scales, so they are rounded.
type Seen struct {
	Tick                  int64
	PhaseName             string
	OperationOver, Ended  bool
	HandsBusy             bool
	Bench                 SeenBench
	PoolML                float64 // by eye, to 10 mL
	BriskMLMin            float64 // bleeding by eye, the nearest of a few steps
	IrrigationMLMin       float64
	IrrigationFluid       Solution // what runs or would run now
	IrrigationML          float64  // the scrub nurse's count so far, to 50 mL
	SwabsML               float64  // weighed, to 10 mL
	CanisterML            float64  // the theatre's own suction, to 50 mL
	Pooling, Rinsing      bool
	BasinML               float64
	AgentSaid, AgentAsked bool // an agent was announced and not said to be gone; and asked since it went
	FieldClear            bool // the answer to the last question whether the field is clear
	Route                 Destination
	VacuumMmHg            float64 // the gauge: what really is there
	VacuumSetMmHg         float64
	DropsMin              float64
	DripMLMin             float64
	DripML                float64 // drawn from packs so far, prime included, to 5 mL
	PrimedML              float64
	FillingMLMin          float64 // how fast the reservoir fills, to 5 mL/min
	ReservoirML           float64 // to 10 mL
	ClearML               float64 // the layer on top, by eye, to 20 mL
	ClotML                float64 // on the filter and in the reservoir, by eye, to 5 mL
	TakenInML             float64 // all that came through the filter, by the scale, to 10 mL
	Mixing                bool
	MixedTick             int64
	Pump                  SeenPump
	Bags                  [MaxBags]SeenBag
	BagsUsed              int
	WasteML               float64 // to 50 mL
	WasteAwayML           float64 // carried away in full bags, to 50 mL
	DiscardedML           float64 // to 5 mL
	Giving                SeenGiving
	Gas                   Gas
	HeartRate             float64
	PressureMmHg          float64
	DonorUnits            int
	Reacting              bool // the monitor shows it
	Alarms                [AlarmCount]bool
	Samples               [MaxSamples]Sampled // answered ones only
	SampleCount           int                 // taken
	OpenQuestion          EventKind           // 0 for none
	OpenLine              int                 // its words, as the scenario's lines count them; -1 for none
	BloodWantedTick       int64               // -1 for not wanted
	ClinicianHere         bool
	ClinicianCalled       bool
	SecondSucker          bool // the surgeon has one for what must be diverted
	SecondInUse           bool
	RhDNegative           bool // says the sheet
	AntiDAsked            bool
	FetalTestAsked        bool
	ClottingTold          bool // that it is thinned out
	FluidSentFor          bool
	ReasonTold            bool    // the team was told why nothing is collected, or what must be kept away
	Together              bool    // surgeon and anaesthetist said what they think of collecting here
	TogetherLine          int     // with these words, as the scenario's lines count them; -1 for none
	StayTick              int64   // until when the team wants an operator who will not collect to stay
	SalineLeftML          float64 // in date and on the bench, to 100 mL
	CircuitAsked          bool    // the patient wants the circuit kept connected, says the sheet
	Heparinised           bool    // systemic heparin was given and no protamine since
	ProtamineGiven        bool
	PumpOffered           bool    // the blood of the pump is there to be taken
	PumpRuns              bool    // and runs into the reservoir
	PumpBloodML           float64 // of it taken so far, to 10 mL
	BodyFluidML           float64 // the team's count of what ran into the wound and is not blood, to 50 mL
	EstimateML            float64
	Written               [TallyItems]bool
}

// SeenBench is the bench as it looks. What is wrong inside shows only after a look.
type SeenBench struct {
	Decision      Decision
	Anticoagulant Solution
	Bowl          BowlKind
	Opened        [partCount]bool
	Connected     [partCount]bool
	Open          [partCount]bool // clamps
	Inspected     [partCount]bool
	FoundLoose    [partCount]bool
	Breached      [partCount]bool
	HookPack      [WashHookB + 1]int8
	PackLeftML    [MaxPacks]float64 // on each pack's scale, to 10 mL
	PackUsed      [MaxPacks]bool
	PackInStore   [MaxPacks]bool
	VacuumTested  bool
	Power         bool
	TakenDown     bool
}

// SeenPump is pump and bowl as they look.
type SeenPump struct {
	Mode                 PumpMode
	Spinning, Braking    bool
	FillMLMin, WashMLMin float64
	EmptyMLMin, WashML   float64
	WashedML             float64
	FlowMLMin            float64
	AutoFillML           float64
	AutoStop, AutoWash   bool
	AutoEmpty            bool
	Detector             float64 // mean of the last second, 0 when not spinning
	EffluentRed          float64 // 0 clear to 1 dark, from its cells and free haemoglobin
	EffluentMLMin        float64
	EffluentDense        float64 // 0 seen through to 1 dense, from its cells alone
	BedByEye             float64 // share of the bowl that the bed takes, seen through its wall, to 0.02
	HeldML               float64 // bowl contents, to 5 mL
	AirML                float64
	CycleOpen            bool // a bowlful is under way
	Filled, Washed       bool // its filling was stopped; its wash was begun
	Cycles               int
	NoFlow               bool
	FedML, WashUsedML    float64 // what the pump has counted in the whole case, to 10 mL
}

// SeenBag is a product bag as it looks.
type SeenBag struct {
	ML, AirML  float64 // to 5 mL, to 10 mL
	FirstTick  int64
	LabelBits  uint8
	HandedBits uint8
	Checkers   uint8
	MixedTick  int64
	Discarded  bool
	GivenML    float64
	CameML     float64 // all that came in, to 5 mL
	FromCycles int
}

// SeenGiving is the return as it looks.
type SeenGiving struct {
	Bag       int8
	RateMLMin float64
	FlowMLMin float64
	Filter    bool
	Squeezing bool
	GivenML   float64
	Joined    bool // bowl, bag and patient are one circuit
}

// View fills v from the state, as a person at the bench would read it.
func View(c *Case, s *State, v *Seen) {
	*v = Seen{Tick: s.Tick, Ended: s.Ended, OperationOver: s.Tick >= c.EndTick, HandsBusy: s.Tick < s.Bench.HandsUntil,
		BloodWantedTick: -1, RhDNegative: c.Patient.RhDNegative, CircuitAsked: c.Patient.CircuitAsked, OpenLine: -1}
	for i := range c.Phases {
		if c.Phases[i].StartTick <= s.Tick {
			v.PhaseName = c.Phases[i].Name
		}
	}
	viewBench(c, s, &v.Bench)
	viewField(c, s, v)
	viewPump(s, &v.Pump)
	viewBags(s, v)
	viewPeople(c, s, v)
	v.Alarms = s.Alarms.On
}

func viewBench(c *Case, s *State, v *SeenBench) {
	b := &s.Bench
	*v = SeenBench{Decision: b.Decision, Anticoagulant: b.Anticoagulant, Bowl: b.Bowl, Opened: b.Opened, Connected: b.Connected,
		Open: b.Open, Inspected: b.Inspected, Breached: b.Breached, HookPack: b.HookPack, VacuumTested: b.VacuumTested,
		Power: b.Power, TakenDown: b.TakenDown}
	for i := range b.Loose {
		v.FoundLoose[i] = b.foundLoose(i)
	}
	for i := range b.Packs {
		v.PackLeftML[i] = toNearest(b.Packs[i].Fluid.VolumeML(), 10)
		v.PackUsed[i] = b.Packs[i].Used
	}
	for i := range c.Packs {
		v.PackInStore[i] = s.inStore(c, i)
	}
}

func viewField(c *Case, s *State, v *Seen) {
	f, t, r := &s.Field, &s.Team, &s.Reservoir
	v.PoolML, v.BriskMLMin = toNearest(f.Pool.VolumeML(), 10), Briskness(f.BleedMLMin)
	v.IrrigationMLMin, v.IrrigationML = toNearest(f.IrrigationRateMLMin, 5), toNearest(f.IrrigationML, 50)
	v.IrrigationFluid = phaseAt(c, s.Tick).Irrigation
	v.SwabsML, v.CanisterML = toNearest(f.Swabs.VolumeML(), 10), toNearest(f.Discarded.VolumeML(), 50)
	v.Pooling, v.Rinsing, v.BasinML = t.Pooling, t.RinseUntil > 0, toNearest(t.Basin.VolumeML(), 10)
	v.AgentSaid, v.AgentAsked, v.FieldClear = t.AgentSaid, t.AgentAsked, t.FieldClear
	v.Route, v.VacuumMmHg, v.VacuumSetMmHg = t.Route, s.VacuumMmHg(c), t.VacuumMmHg
	v.DropsMin, v.DripMLMin = s.Drip.DropsMin, s.Drip.RateMLMin
	v.DripML, v.PrimedML = toNearest(s.Drip.DrippedML+s.Drip.PrimedML, 5), toNearest(s.Drip.PrimedML, 5)
	v.FillingMLMin = toNearest(r.InMLMin, 5)
	v.ReservoirML = toNearest(r.Blood.VolumeML()+r.Clot.VolumeML(), 10)
	v.ClearML = toNearest(r.ClearML, 20)
	v.ClotML = toNearest(s.Filter.Clot.VolumeML()+r.Clot.VolumeML(), 5)
	v.TakenInML = toNearest(r.TakenInML, 10)
	v.Mixing, v.MixedTick = s.Tick < r.MixUntil, r.MixedTick
}

func viewPump(s *State, v *SeenPump) {
	p, b := &s.Pump, &s.Bowl
	*v = SeenPump{Mode: p.Mode, Spinning: b.Spinning, Braking: b.BrakeUntil > 0, FillMLMin: p.FillMLMin, WashMLMin: p.WashMLMin,
		EmptyMLMin: p.EmptyMLMin, WashML: p.WashML, WashedML: p.WashedML, FlowMLMin: p.FlowMLMin, AutoFillML: p.AutoFillML,
		AutoStop: p.AutoStop, AutoWash: p.AutoWash, AutoEmpty: p.AutoEmpty, EffluentMLMin: b.Effluent.RateMLMin,
		HeldML: toNearest(b.ContentsML(), 5), AirML: b.AirML, Cycles: s.CycleUsed, NoFlow: p.NoFlow}
	if b.Spinning {
		v.Detector = b.Detector.Mean()
	}
	v.EffluentDense = clamp(float64(b.Effluent.Hct*8), 0, 1)
	v.BedByEye = toNearest(b.FillFraction(), 0.02)
	v.EffluentRed = clamp(float64(b.Effluent.Hct*8)+float64(b.Effluent.FreeHbGL/8), 0, 1)
	truth := TallyTruth(s)
	v.FedML, v.WashUsedML = toNearest(truth[TallyProcessed], 10), toNearest(truth[TallyWash], 10)
	if cy := s.cycle(); cy != nil && cy.DoneTick == 0 {
		v.CycleOpen, v.Filled, v.Washed = true, cy.StopTick > 0, cy.WashTick > 0
	}
}

func viewBags(s *State, v *Seen) {
	v.BagsUsed, v.WasteML = s.BagsUsed, toNearest(s.Waste.Bag.VolumeML(), 50)
	v.WasteAwayML, v.DiscardedML = toNearest(s.Waste.CarriedAwayML, 50), toNearest(s.Waste.DiscardedML, 5)
	for i := range s.Bags[:s.BagsUsed] {
		b := &s.Bags[i]
		v.Bags[i] = SeenBag{ML: toNearest(b.Fluid.VolumeML(), 5), AirML: toNearest(b.AirML, 10), FirstTick: b.FirstTick,
			LabelBits: b.LabelBits, HandedBits: b.HandedBits, Checkers: b.Checkers, MixedTick: b.MixedTick, Discarded: b.Discarded,
			GivenML: toNearest(b.GivenML, 5), CameML: toNearest(b.CameML, 5)}
	}
	for i := range s.Cycles[:s.CycleUsed] {
		if k := s.Cycles[i].Bag; k >= 0 {
			v.Bags[k].FromCycles++
		}
	}
	g := &s.Giving
	v.Giving = SeenGiving{g.Bag, g.RateMLMin, g.FlowMLMin, g.Filter, g.Squeezing, toNearest(g.GivenML, 5), g.Joined}
}

func viewPeople(c *Case, s *State, v *Seen) {
	p, t := &s.Patient, &s.Team
	v.Gas, v.HeartRate, v.PressureMmHg, v.DonorUnits = p.LastGas, p.HeartRate, p.PressureMmHg, p.DonorUnits
	v.Reacting = s.Alarms.On[AlarmReaction]
	for i := range s.Lab.Samples[:s.Lab.Count] {
		if s.Lab.Samples[i].Told {
			v.Samples[i] = s.Lab.Samples[i]
		}
	}
	v.SampleCount = s.Lab.Count
	if i := t.OpenQuestion(); i >= 0 {
		v.OpenQuestion, v.OpenLine = t.Questions[i].Kind, int(t.Questions[i].Line)
	}
	if i := t.BloodWanted(); i >= 0 {
		v.BloodWantedTick = t.Questions[i].AskedTick
	}
	v.ClinicianCalled, v.ClinicianHere = t.ClinicianAt > 0, t.ClinicianAt > 0 && s.Tick >= t.ClinicianAt
	v.EstimateML = s.Conduct.EstimateML
	v.SecondSucker, v.SecondInUse, v.BodyFluidML = t.SecondSucker, t.SecondInUse, toNearest(s.Field.BodyFluidML, 50)
	v.Heparinised, v.ProtamineGiven = t.Heparinised, p.ProtamineTick > 0
	v.PumpOffered, v.PumpRuns, v.PumpBloodML = s.pumpOffered(), t.PumpRuns, toNearest(s.Field.PumpBloodML, 10)
	v.SalineLeftML = toNearest(s.salineLeftML(c), 100)
	v.ClottingTold, v.FluidSentFor = t.Clotting.ToldTick > 0, t.Fetching.Tick > 0
	v.ReasonTold = t.ReasonTold
	v.Together, v.TogetherLine, v.StayTick = t.Together, c.TogetherLine-1, min(c.StayTick, c.EndTick)
	v.AntiDAsked, v.FetalTestAsked = t.AntiDTick > 0, t.FetalTestTick > 0
	for i := range s.Tally {
		v.Written[i] = s.Tally[i].Written
	}
}

// brisk are the steps in which an eye tells bleeding, mL/min [A].
var brisk = [...]float64{0, 5, 10, 20, 35, 60, 100, 200, 400}

// Briskness is bleeding as an eye tells it: the nearest of a few steps, mL/min.
func Briskness(mlMin float64) float64 {
	best := brisk[0]
	for _, b := range brisk {
		if abs(b-mlMin) < abs(best-mlMin) {
			best = b
		}
	}
	return best
}

func toNearest(x, step float64) float64 { return step * float64(int64(x/step+0.5)) }

func abs(x float64) float64 { return max(x, -x) }
