package sim

import "golang.org/x/exp/rand"

// Everything that changes during a run, as one plain value: no pointers, maps or slices, so that = is a snapshot.

// State is the bench and the patient at one tick.
type State struct {
	Tick      int64
	Ended     bool
	Chance    rand.PCGSource
	Patient   Patient
	Field     Field
	Bench     BenchState
	Drip      DripLine
	Filter    Filter
	Reservoir Reservoir
	Bowl      Bowl
	Pump      Pump
	Bags      [MaxBags]ProductBag
	Waste     Waste
	Giving    Giving
	Team      Team
	Lab       Lab
	Stores    Stores
	Alarms    AlarmState
	Conduct   Conduct
	Tally     [TallyItems]Reconciled
	Cycles    [MaxCycles]Cycle
	CycleUsed int // cycles begun
	BagsUsed  int // product bags hung so far; the newest is on the product line
}

// Patient is the simulated patient.
type Patient struct {
	Blood               Fluid  // cells and plasma
	Interstitium        Liquid // water and small solutes outside the vessels
	InterstitialStartML float64
	Metabolised         Liquid // amounts only: heparin decayed, citrate metabolised
	Urine               Fluid
	BleedFactor         float64 // what dilution and heparin do to the bleeding, 1 when nothing
	ShedML              float64 // whole blood lost so far
	ShedCellsML         float64
	LowestHbGDL         float64
	DonorUnits          int
	DonorWantedTick     int64   // when the anaesthetist began to wait for washed blood, -1 if not waiting
	DonorLeftML         float64 // of the unit running in
	LastGas             Gas
	NextGasTick         int64
	Reaction            bool // going on
	ReactionTick        int64
	Told                uint8 // signs the anaesthetist has told of, as bits
	ReactionLast        int64 // last tick at which blood was given during it
	HeartRate           float64
	PressureMmHg        float64
	OnPumpCellsML       float64 // red cells that went into a pump's circuit so far
	ProtamineTick       int64   // when protamine was given, 0 for never
}

// Gas is what the last blood gas said.
type Gas struct {
	Tick           int64 // when it was taken; -1 for never
	HbGDL, Hct     float64
	IonisedCalcium float64 // mmol/L
	PotassiumMmolL float64
}

// Field is the wound, the sucker, swabs and what runs away.
type Field struct {
	Pool                Fluid
	BloodML             float64 // part of the pool that is shed blood, mL
	Swabs               Fluid
	Drapes              Fluid
	Discarded           Fluid // the theatre's own suction
	Floor               Fluid
	LysedShare          float64 // osmotic, of the pool's cells
	SuckerIn            bool
	Agent               [MaxContaminants]bool // in use beside what the phase brings
	RinsedRestML        float64               // what the swabs still held after the last rinse
	SuckedML            float64               // liquid and cells taken by the salvage line
	SuckedBloodML       float64               // shed blood in it
	SuckedCellsML       float64               // red cells taken by the salvage line, before those that broke
	SuckedLysedML       float64               // of them broken on the way
	SuckRateMLMin       float64               // now, to the reservoir
	DiscardRateMLMin    float64               // now
	IrrigationML        float64
	IrrigationRateMLMin float64 // now
	BleedMLMin          float64 // now, whole blood
	BodyFluidML         float64 // that ran into the wound and is not blood
	PumpBloodML         float64 // taken over from a pump's circuit
}

// BenchState is what has been decided, opened, hung, clamped and connected.
type BenchState struct {
	Decision      Decision
	Anticoagulant Solution
	Bowl          BowlKind
	Opened        [partCount]bool // sets
	OpenedTick    [partCount]int64
	Breached      [partCount]bool // sets that are not sterile any more
	BreachKnown   bool
	BreachUsed    bool // blood was processed with a known breach
	Connected     [partCount]bool
	Loose         [partCount]bool
	Open          [partCount]bool // clamps
	Inspected     [partCount]bool
	Unseen        [partCount]bool // lines that have come loose since somebody last looked
	Packs         [MaxPacks]Pack
	HookPack      [WashHookB + 1]int8 // index of the pack on each hook, -1 for none
	VacuumSource  bool                // the wall gives vacuum
	VacuumPlugged bool
	VacuumTested  bool
	Power         bool
	HandsUntil    int64 // hands are busy until this tick
	TakenDown     bool
	TakenDownTick int64
}

// Pack is one pack of fluid.
type Pack struct {
	Fluid    Fluid
	Solution Solution
	Used     bool // hung at least once
}

// Stores are the sources that come from outside and the places that lead there.
type Stores struct {
	Infusion   Fluid // crystalloid for the vein
	Donor      Fluid // red cells of others
	Plasma     Fluid // plasma and platelets of others
	Rinse      Fluid // saline for swabs
	Irrigation [solutionCount]Fluid
	Syringe    Fluid // drugs given, contaminants and fat of the wound
	Samples    Fluid // taken for the laboratory
	BodyFluid  Fluid // of the body and not blood, such as amniotic fluid
	Circuit    Fluid // of the pump that a patient is or was on
	LysedML    float64
}

// Reconciled is a line of the closing tally as the trainee wrote it.
type Reconciled struct {
	Written bool
	ML      float64
}

// Start gives the state at tick 0. The seed decides all chance of the run.
func Start(c *Case, seed uint64) State {
	var s State
	s.Chance.Seed(seed)
	startPatient(c, &s)
	startBench(c, &s)
	startStores(c, &s)
	Before(c, &s)
	return s
}

// Before does at a fresh bench what a colleague has done before the case, which takes no time. It gives how many acts were
// done, and why the next of them is not possible.
func Before(c *Case, s *State) (done int, why Reason) {
	var unsaid Happened
	for i := range c.Before {
		a := c.Before[i]
		a.Auto = true // keeps no hands busy
		if why := Apply(c, s, a, &unsaid); why != "" {
			return i, why
		}
	}
	return len(c.Before), ""
}

func startStores(c *Case, s *State) {
	s.Stores.Infusion = BalancedCrystalloid.Of(60000)
	s.Stores.Rinse = Saline.Of(20000)
	for i := range s.Stores.Irrigation {
		s.Stores.Irrigation[i] = Solution(i).Of(60000)
	}
	s.Stores.Donor = donorCells(40)
	s.Stores.Plasma = donorPlasma(&c.Patient)
	s.Stores.Syringe = Fluid{}
	s.Stores.BodyFluid = bodyFluid(20000)
}
