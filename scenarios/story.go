// This file holds what people read: the case sheet, the objectives, the right answer to it, hints.

package scenarios

import (
	"rouleau/scenarios/yamlread"
	"rouleau/sim"
)

// Story is the case sheet.
type Story struct {
	Operation         string   `yaml:"operation" rule:"required,min=3,max=300" doc:"the operation"`
	ExpectedLossML    float64  `yaml:"expected_loss_ml" rule:"required,min=0,max=20000,unit=mL" doc:"blood loss the surgeon expects" example:"1500"`
	Background        string   `yaml:"background" rule:"required,min=10,max=1200" doc:"who is operated on, why and how, in a few sentences"`
	History           []string `yaml:"history" rule:"max=12,each_min=2,each_max=200" doc:"illnesses, medicines, earlier operations"`
	Consent           string   `yaml:"consent" rule:"required,min=3,max=300" doc:"what the patient agreed to"`
	Refusals          []string `yaml:"refusals" rule:"max=6,each_min=2,each_max=200" doc:"what the patient declines" example:"[Donor blood]"`
	Contraindications []string `yaml:"contraindications" rule:"max=8,each_min=2,each_max=200" doc:"what speaks against collecting, washing or an anticoagulant" example:"[Thrombocytopenia after heparin three years ago]"`
	LocalPolicy       []string `yaml:"local_policy" rule:"max=6,each_min=5,each_max=200" doc:"customs of the hospital that bear on this case, such as a second sucker; operators act on certain words, see words of local_policy; left out: no row on the sheet" example:"[A second sucker to the discard until the child is born]"`
	Allergies         []string `yaml:"allergies" rule:"max=8,each_min=2,each_max=200" doc:"allergies; none known is an empty list" example:"[Latex (rash)]"`
}

// Words of a custom on the sheet that operators act on.
const (
	PolicySecondSucker = "second sucker"
	PolicyToppedUp     = "topped up"
	PolicyTogether     = "decide together"
)

// Policies says what operators do about these words.
var Policies = [...]struct{ Words, Meaning string }{
	{PolicySecondSucker, "they ask for a second sucker while they prepare, and leave their own where it is when something that must be diverted comes: the surgeon takes it with the second one"},
	{PolicyToppedUp, "they top up the last bowl from the product bag where it stayed part-filled"},
	{PolicyTogether, "they ask surgeon and anaesthetist whether to collect before they decide"},
}

// Objective is something the trainee should learn or show.
type Objective struct {
	ID   string `yaml:"id" rule:"required,min=2,max=40" doc:"short name that criteria refer to, lower-case words joined by _" example:"match_the_drip"`
	Part string `yaml:"part" rule:"required,oneof=deciding|collecting|processing|returning|communicating|recording" doc:"part of the work it belongs to"`
	Text string `yaml:"text" rule:"required,min=5,max=200" doc:"the objective in one sentence"`
}

// Right is the right answer to the case sheet.
type Right struct {
	Decision         string          `yaml:"decision" rule:"required,oneof=do_not_salvage|collect_only|set_up_to_process" doc:"the right decision"`
	Why              string          `yaml:"why" rule:"required,min=5,max=400" doc:"the reason, shown after the case"`
	Anticoagulants   []string        `yaml:"anticoagulants" rule:"max=2,oneof=heparin_solution|citrate_solution" doc:"anticoagulants that are right here"`
	AnticoagulantWhy string          `yaml:"anticoagulant_why" rule:"max=400" doc:"the reason, shown after the case"`
	Bowls            []string        `yaml:"bowls" rule:"max=3,oneof=standard|small|paediatric" doc:"bowls that are right here"`
	BowlWhy          string          `yaml:"bowl_why" rule:"max=400" doc:"the reason, shown after the case"`
	Tell             string          `yaml:"tell" rule:"oneof=patient_declines|infected_field|no_heparin" doc:"what surgeon and anaesthetist must be told before the first blood is shed" example:"no_heparin"`
	CliniciansSay    string          `yaml:"clinicians_say" rule:"max=240" doc:"what the surgeon answers for both when asked whether to collect here; left out: they leave it to the sheet" example:"\"There is pus. I would not have it back.\""`
	StayUntil        *yamlread.Clock `yaml:"stay_until" rule:"min=0:00:00,max=1:00:00" doc:"after a decision against salvage the case cannot be ended before this, because the team has questions; left out: at once" example:"0:08:00"`
}

// RightDecision is the right decision as the model knows it.
func (r Right) RightDecision() sim.Decision {
	d, _ := sim.DecisionNamed(r.Decision)
	return d
}

// AllowsAnticoagulant says whether an anticoagulant is right here.
func (r Right) AllowsAnticoagulant(s sim.Solution) bool { return has(r.Anticoagulants, s.String()) }

// AllowsBowl says whether a bowl is right here.
func (r Right) AllowsBowl(b sim.BowlKind) bool { return has(r.Bowls, b.String()) }

// Hint is help in practice: what a good operator would look at now, never the answer first.
type Hint struct {
	When  string   `yaml:"when" rule:"required,oneof=undecided|not_primed|drip_behind|drip_far_ahead|clear_layer|agent_in_field|swabs_full|reservoir_ready|bowl_nearly_full|filled_not_washed|washed_not_emptied|not_labelled|blood_wanted|giving_unwatched|question_open|reservoir_nearly_full|pack_nearly_empty|detector_doubtful|citrate_outrun|circuit_open|pump_blood_waits|protamine_given|operation_over|part_bowl|anti_d_due|clotting_thinned|fluid_runs_short|waste_nearly_full|air_in_line|bowl_leaks|power_is_lost|patient_reacts|bag_expires_soon|reason_untold" doc:"situation in which the hint is offered"`
	Steps []string `yaml:"steps" rule:"required,min=3,max=3,each_min=5,each_max=300" doc:"three steps: where to look, what it means, what to do"`
}
