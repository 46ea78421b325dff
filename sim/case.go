package sim

// What does not change during a run: the patient, the phases of the operation, what happens when, what stands on the bench.

// Limits of a case and a state. Where one is full the action is refused.
const (
	MaxPhases  = 12
	MaxEvents  = 48
	MaxPacks   = 16
	MaxBags    = 8
	MaxSamples = 12
	MaxCycles  = 24
)

// Case is a scenario with every value drawn: parameters only, never written during a run.
type Case struct {
	Patient      PatientSpec
	Phases       []Phase // in order of StartTick; the first starts at 0
	Events       []EventSpec
	Contaminants []ContaminantSpec
	Packs        []PackSpec
	Faults       BenchFaults
	Before       []Action // what a colleague has done before tick 0, in order
	Rules        Rules
	TogetherLine int   // the scenario's line with which surgeon and anaesthetist answer DecideTogether, from 1; 0 for none
	StayTick     int64 // after a decision against salvage the case cannot be ended before this
	EndTick      int64 // the operation is over; the case may run on until ended
	LastTick     int64 // the case is stopped here at the latest
}

// PatientSpec is the simulated patient at the start.
type PatientSpec struct {
	BloodVolumeML    float64 // Nadler or mL/kg by age, see BloodVolume
	WeightKg         float64
	Hct              float64 // 0–1
	PlasmaProteinGL  float64
	PlateletsG9L     float64 // 10^9 per L of whole blood
	FibrinogenGL     float64 // of plasma
	ESRMMPerH        float64
	CalciumMmolL     float64 // total, of plasma
	PotassiumMmolL   float64
	HeparinIUPerML   float64 // given systemically before the start, of plasma
	MaintenanceMLMin float64 // crystalloid beside what the deficit asks for
	TransfusionHbGDL float64 // the anaesthetist orders donor cells below this haemoglobin
	PatienceTicks    int64   // how long the anaesthetist waits for washed blood before ordering
	DonorRefused     bool    // the patient declines blood of others
	HeartRate        float64 // at rest, per min
	MeanPressureMmHg float64
	HeparinForbidden bool  // heparin-induced thrombocytopenia
	SalvageRefused   bool  // the patient declines the procedure
	RhDNegative      bool  // a mother whose child may be RhD-positive
	CircuitAsked     bool  // takes own blood back only from a circuit that stays connected
	ThawTicks        int64 // from the order to plasma and platelets, 0 where the case has none
}

// Phase is a part of the operation with steady conditions.
type Phase struct {
	Name             string // for people; the window shows it
	StartTick        int64
	BleedMLMin       float64
	IrrigationMLMin  float64
	Irrigation       Solution
	SwabShare        float64                  // 0–1 of shed blood
	DrapeShare       float64                  // 0–1 of shed blood
	ContaminantPerML [MaxContaminants]float64 // unit of the contaminant per mL of shed blood
	FatMLPerML       float64
	LysedShare       float64 // 0–1 of the shed red cells that come into the wound broken, as from old haematoma or crushed tissue
	BodyFluidMLMin   float64 // that is not blood and runs into the wound, such as amniotic fluid
}

// ContaminantSpec is something in the wound that does not belong in a vein.
type ContaminantSpec struct {
	AgentPerML    float64 // per mL of shed blood while the agent is in use
	Name          string
	Unit          string
	BoundShare    float64 // 0–1 stays with red cells through washing
	Procoagulant  bool    // a topical haemostat: blood that carries it clots in the filter
	MustDivert    bool    // collecting it is wrong
	LimitPerML    float64 // more than this per mL of product makes the product unfit
	HaemostatFull float64 // concentration, unit per mL of pool, at which its clotting effect is complete
}

// PackSpec is one pack of fluid on the shelf or already hanging.
type PackSpec struct {
	Solution Solution
	VolumeML float64
	Expired  bool
	Expiry   string // as printed on the pack, yyyy-mm-dd
	On       Part   // a hook where somebody already hung it, or NoPart for the shelf
	InStore  bool   // not on the bench until somebody is sent for it
}

// BenchFaults is how the bench is left before the case.
type BenchFaults struct {
	OpenClamps      [partCount]bool
	LooseLines      [partCount]bool // connected by sight, loose in truth
	NoVacuum        bool            // the regulator is not plugged in until tested
	TouchChance     float64         // 0–1, chance that connecting a line touches something unsterile
	DetectorOffset  float64
	DetectorHaze    float64 // how many times the usual free haemoglobin and fat mislead the detector; 0 as 1
	WasteCapacityML float64
	BagCapacityML   float64
	ExpiryTicks     int64 // life of a product at room temperature
	LabTicks        int64 // time from sample to answer
	StoreTicks      int64 // time from sending for fluid until it comes
	ReservoirML     float64
}

// Rules say what the mode allows.
type Rules struct {
	Assessment bool
	AutoFill   bool // start filling at a reservoir volume
	AutoStop   bool // stop at the interface
	AutoWash   bool // wash after filling
	AutoEmpty  bool // empty after washing
}

// EventKind is what a scenario can make happen.
type EventKind uint8

// The kinds of scenario events.
const (
	EventSay           EventKind = iota + 1 // somebody says Line
	EventAskLoss                            // somebody wants the blood loss; answer with an estimate
	EventAsk                                // a question with a yes or no answer; Value 1 when yes is right
	EventRequestBlood                       // the clinician wants the washed blood
	EventAgentOn                            // contaminant Value enters the wound from now (surgeon says Line)
	EventAgentOff                           // and no longer
	EventDetectorFault                      // detector offset becomes Value
	EventVacuumLost                         // wall vacuum fails
	EventVacuumBack                         // and returns
	EventPowerLost                          // bowl and pump stop
	EventPowerBack                          // and may run again
	EventBowlLeak                           // the bowl leaks Value mL/min until stopped and replaced
	EventReaction                           // a reaction begins if blood is being given
	EventHeparin                            // systemic heparin, Value IU
	EventProtamine                          // Value mg
	EventTouch                              // a sterile connection is touched: a breach
	EventBypass                             // the patient goes on a pump whose circuit holds Value mL
	EventPumpBlood                          // what its circuit holds is offered, for Within
	EventLineLoose                          // line Value works loose, unseen
)

// Trigger says when an event fires.
type Trigger uint8

// The triggers.
const (
	AtTime        Trigger = iota // At
	WhenHbBelow                  // patient's haemoglobin below Threshold g/dL
	WhenShedAbove                // blood shed above Threshold mL
	WhenGiving                   // washed blood given above Threshold mL
	WhenProduct                  // product in bags above Threshold mL
)

// EventSpec is one thing that happens once.
type EventSpec struct {
	Kind      EventKind
	When      Trigger
	At        int64 // earliest tick
	Threshold float64
	Who       Speaker
	Line      int // index of the scenario's line of words, -1 for none
	Value     float64
	Within    int64 // ticks in which an answer is expected, 0 for none
}

// Speaker is who says something.
type Speaker uint8

// The speakers.
const (
	Nobody Speaker = iota
	Surgeon
	Anaesthetist
	ScrubNurse
	Laboratory
	Bench // the equipment itself
	speakerCount
)

var speakerNames = [speakerCount]string{"nobody", "surgeon", "anaesthetist", "scrub_nurse", "laboratory", "bench"}

// String is the name used in files.
func (s Speaker) String() string {
	if s < speakerCount {
		return speakerNames[s]
	}
	return "unknown"
}

// SpeakerNamed finds a speaker by the name used in files.
func SpeakerNamed(name string) (Speaker, bool) { return named[Speaker](speakerNames[:], name) }
