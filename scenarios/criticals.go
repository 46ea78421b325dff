// This file lists what points never make up for, which holds in every case and is not the author's to choose. What is listed
// here is defined here; scoring counts it.

package scenarios

import "rouleau/sim"

const (
	briefML      = 25.0 // given, or collected, before it was noticed: a brief slip
	briefPressS  = 5.0
	briefAirML   = 2.0
	traceML      = 0.5 // less than a reading can show
	traceClotML  = 0.05
	unfitHeparin = 5.0 // IU

	// NoIncident stands where no declaration mends a slip.
	NoIncident = sim.Incident(255)
	// PromptMin is within how long of its beginning a brief slip must be told to be mended.
	PromptMin = 10
	// ConcealedML is how much can be collected with something that must be diverted before it has to be told.
	ConcealedML = 20.0
)

// Critical is one thing that is never made up for.
type Critical struct {
	Name    string // key of the catalogue, group critical
	Unit    string
	From    float64      // more than this counts
	Brief   float64      // up to this it is a brief slip that can be mended; 0 for never
	Told    sim.Incident // by declaring this
	Meaning string
}

// Criticals are all of them, in the order in which they are looked for.
var Criticals = [...]Critical{
	{"collected_after_refusal", ml, traceML, 0, NoIncident, "collected from a patient who declined collection (`salvage_refused`)"},
	{"heparin_forbidden", "IU", unfitHeparin, 0, NoIncident, "heparin drawn into the collection of a patient who must not have any (`heparin_forbidden`)"},
	{"contaminated_given", ml, traceML, briefML, sim.IncidentProduct, "given of a product that held more of a contaminant than its `limit_per_ml`"},
	{"unwashed_given", ml, traceML, briefML, sim.IncidentProduct, "given of red cells that were hardly washed"},
	{"wrong_wash_given", ml, traceML, briefML, sim.IncidentProduct, "given of red cells washed with a fluid that is not for washing"},
	{"haemolysed_given", ml, traceML, briefML, sim.IncidentProduct, "given of a haemolysed product"},
	{"pressure_on_bag", "s", 0, briefPressS, sim.IncidentAir, "time in which the product bag was pressed while it ran in"},
	{"air_given", ml, traceML, briefAirML, sim.IncidentAir, "air that went into the patient"},
	{"not_identified", ml, traceML, 0, NoIncident, "given before two people had checked who the blood was for"},
	{"circuit_parted", ml, traceML, 0, NoIncident, "given that had been apart from a patient who takes blood back only from a circuit that stays connected (`circuit_stays_connected`)"},
	{"expired_given", ml, traceML, 0, NoIncident, "given after the product had expired (`product_life_h`)"},
	{"unlabelled_given", ml, traceML, 0, NoIncident, "given from a bag without a complete label"},
	{"anticoagulant_given", ml, traceML, 0, NoIncident, "anticoagulant solution that ran into the patient"},
	{"clot_given", ml, traceClotML, 0, NoIncident, "clot that went into the patient, which no filter held back"},
	{"breach_used", ml, 0, 0, NoIncident, "given that had passed through a set known not to be sterile"},
	{"through_reaction", ml, traceML, briefML, sim.IncidentReaction, "given once a reaction could be seen"},
	{"concealed", "incidents", 0, 0, NoIncident, "breach of sterility, air or reaction that happened in plain sight, or liquid collected with something that must be diverted (`must_divert`, over 20 mL), and was never declared"},
}

// CriticalNames are the names of all that is never made up for.
func CriticalNames() []string {
	names := make([]string, len(Criticals))
	for i, c := range Criticals {
		names[i] = c.Name
	}
	return names
}
