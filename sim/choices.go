package sim

// The small sets of choices that actions carry.

// Decision is what to do about salvage, made on the case sheet.
type Decision uint8

// The decisions.
const (
	Undecided Decision = iota
	DoNotSalvage
	CollectOnly
	SetUpToProcess
	decisionCount
)

var decisionNames = [decisionCount]string{"undecided", "do_not_salvage", "collect_only", "set_up_to_process"}

// String is the name used in files.
func (d Decision) String() string { return nameOf(decisionNames[:], uint8(d)) }

// DecisionNamed finds a decision by the name used in files.
func DecisionNamed(name string) (Decision, bool) { return named[Decision](decisionNames[:], name) }

// Destination is where the sucker's line leads.
type Destination uint8

// The destinations.
const (
	ToDiscard Destination = iota // the theatre's own suction, thrown away
	ToReservoir
)

// Request is what the trainee can ask of the team.
type Request uint8

// The requests.
const (
	LetItPool Request = iota
	SkimAsYouGo
	RinseSwabs
	HoldIrrigation
	ResumeIrrigation
	StopAgent   // stop using the agent that is in the wound now
	TellMeWhen  // say before an agent comes and when it is gone
	IsAgentGone // is the field clear of it?
	ClinicianComes
	SecondSucker    // a sucker of its own for what must be diverted
	GiveAntiD       // anti-D for an RhD-negative mother
	TestFetalBleed  // a sample that tells how much of the child's blood the mother has
	ThinnedClotting // tell that washed cells bring no plasma and no platelets
	SendForFluid    // what is still in the store
	DecideTogether  // what surgeon and anaesthetist say to collecting here
	PatientDeclines // tell that nothing is collected because the patient declines
	InfectedField   // tell that nothing is collected because the field is infected
	NoHeparin       // tell that this patient must have no heparin, in no flush either
	requestCount
)

var requestNames = [requestCount]string{"let_it_pool", "skim", "rinse_swabs", "hold_irrigation", "resume_irrigation", "stop_agent",
	"tell_me_when", "is_agent_gone", "clinician_to_bedside", "second_sucker", "give_anti_d", "test_fetal_bleed",
	"clotting_is_thinned", "send_for_fluid",
	"decide_together", "patient_declines", "infected_field", "no_heparin"}

// String is the name used in files.
func (r Request) String() string { return nameOf(requestNames[:], uint8(r)) }

// Label fields of a product bag, as bits. [S] UKCSAG Technical Factsheet 4: first and last name, hospital number, date and
// time collection began, expiry; "for autologous use only" from ISBT 128 examples.
const (
	LabelName = 1 << iota
	LabelNumber
	LabelStarted
	LabelExpiry
	LabelAutologous
	LabelVolume
	labelBits
	// LabelComplete is every field.
	LabelComplete = labelBits - 1
)

// LabelFieldCount is how many fields a label has.
const LabelFieldCount = 6

// Handover fields, as bits: what is said when a bag is handed over (common practice, structured as situation, background,
// assessment, recommendation).
const (
	HandoverVolume = 1 << iota
	HandoverHct
	HandoverWashed
	HandoverAnticoagulant
	HandoverExpiry
	HandoverProblems
	handoverBits
	// HandoverComplete is every field.
	HandoverComplete = handoverBits - 1
)

// HandoverFieldCount is how many fields a handover has.
const HandoverFieldCount = 6

// Incident is what can be declared.
type Incident uint8

// The incidents.
const (
	IncidentBreach Incident = iota // a sterile part was touched
	IncidentSpill                  // blood or product lost
	IncidentAir                    // air in the bowl or towards the patient
	IncidentWrongFluid
	IncidentContaminant // something was collected that should not have been
	IncidentClot
	IncidentReaction
	IncidentEquipment
	IncidentAnticoagulant // late or too little
	IncidentProduct       // unwashed, wrongly washed or haemolysed product was given
	incidentCount
)

var incidentNames = [incidentCount]string{"breach", "spill", "air", "wrong_fluid", "contaminant", "clot", "reaction", "equipment",
	"anticoagulant", "product"}

// String is the name used in files.
func (i Incident) String() string { return nameOf(incidentNames[:], uint8(i)) }

// TallyItem is a line of the closing tally.
type TallyItem uint8

// The lines of the tally, all in mL.
const (
	TallyCollected TallyItem = iota // everything that came through the sucker to the reservoir, anticoagulant included
	TallyAnticoagulant
	TallyIrrigation
	TallyProcessed
	TallyWash
	TallyWaste
	TallyProduct
	TallyReturned
	TallyDiscarded
	TallyItems
)

var tallyNames = [TallyItems]string{"collected", "anticoagulant", "irrigation", "processed", "wash", "waste", "product", "returned",
	"discarded"}

// String is the name used in files.
func (t TallyItem) String() string { return nameOf(tallyNames[:], uint8(t)) }

// TallyItemNamed finds a line of the tally by the name used in files.
func TallyItemNamed(name string) (TallyItem, bool) { return named[TallyItem](tallyNames[:], name) }

func nameOf(names []string, i uint8) string {
	if int(i) < len(names) {
		return names[i]
	}
	return "unknown"
}
