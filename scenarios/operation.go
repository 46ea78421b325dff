// This file holds what happens: phases with their bleeding, contaminants, events.

package scenarios

import "rouleau/scenarios/yamlread"

// Phase is a part of the operation with steady conditions.
type Phase struct {
	Name             string                          `yaml:"name" rule:"required,min=2,max=60" doc:"what the phase is called on the screen"`
	Starts           yamlread.Clock                  `yaml:"starts" rule:"required,max=12:00:00" doc:"when it begins; the first begins at 0:00:00" example:"0:15:00"`
	BleedingMLMin    yamlread.Quantity               `yaml:"bleeding_ml_min" rule:"required,min=0,max=1000,unit=mL/min" doc:"blood shed" example:"{normal: {mean: 35, sd: 4, min: 25, max: 45}}"`
	IrrigationMLMin  yamlread.Quantity               `yaml:"irrigation_ml_min" rule:"min=0,max=1000,unit=mL/min,default=0" doc:"irrigation into the wound"`
	IrrigationFluid  string                          `yaml:"irrigation_fluid" rule:"oneof=saline|balanced_crystalloid|sterile_water|glycine|glucose,default=saline" doc:"what the wound is irrigated with"`
	SwabShare        yamlread.Quantity               `yaml:"swab_share" rule:"min=0,max=0.95,default=0.28" doc:"share of the shed blood that swabs take up, 0 to 1"`
	DrapeShare       yamlread.Quantity               `yaml:"drape_share" rule:"min=0,max=0.95,default=0.05" doc:"share of the shed blood that runs onto drapes and is lost, 0 to 1"`
	ContaminantPerML yamlread.Map[yamlread.Quantity] `yaml:"contaminants_per_ml" rule:"max=4,each_min=0,each_max=1000000" doc:"amount of a contaminant, in its own unit, that comes with each mL of shed blood" example:"{cement: 2}"`
	LysedShare       yamlread.Quantity               `yaml:"lysed_share" rule:"min=0,max=0.5,default=0" doc:"share of the shed red cells that are broken already, as from old haematoma or crushed tissue, 0 to 1" example:"0.02"`
	BodyFluidMLMin   yamlread.Quantity               `yaml:"body_fluid_ml_min" rule:"min=0,max=1000,unit=mL/min,default=0" doc:"liquid of the body that is not blood and runs into the wound, such as amniotic fluid; what it carries is a contaminant" example:"20"`
	FatShare         yamlread.Quantity               `yaml:"fat_share" rule:"min=0,max=0.2,default=0" doc:"fat, mL in each mL of shed blood, 0 to 1" example:"0.002"`
}

// Contaminant is something in the wound that does not belong in a vein. Amounts are in its own unit.
type Contaminant struct {
	Name          string            `yaml:"name" rule:"required,min=2,max=40" doc:"short name that phases and events refer to, lower-case words joined by _" example:"collagen_paste"`
	Label         string            `yaml:"label" rule:"required,min=2,max=60" doc:"what people call it" example:"collagen paste"`
	Unit          string            `yaml:"unit" rule:"required,oneof=mg|g|mL|IU|million|drop" doc:"unit of its amounts"`
	BoundShare    float64           `yaml:"bound_share" rule:"required,min=0,max=1" doc:"share that stays with the red cells through washing, 0 to 1"`
	Procoagulant  bool              `yaml:"procoagulant" doc:"blood that carries it clots in the filter"`
	MustDivert    bool              `yaml:"must_divert" doc:"collecting it is wrong"`
	LimitPerML    float64           `yaml:"limit_per_ml" rule:"min=0,max=1000000" doc:"more than this in a mL of product makes the product unfit; 0 for no limit" example:"0.03"`
	HaemostatFull float64           `yaml:"haemostat_full_per_ml" rule:"min=0,max=1000000" doc:"amount in a mL of the wound pool at which it clots blood with full effect; needed where procoagulant" example:"3"`
	AgentPerML    yamlread.Quantity `yaml:"agent_per_ml" rule:"min=0,max=1000000,default=0" doc:"amount that comes with each mL of shed blood while an event has it in use" example:"{uniform: [5, 8]}"`
}

// Event is something that happens once.
type Event struct {
	Kind           string             `yaml:"kind" rule:"required,oneof=say|ask_loss|ask|request_blood|agent_on|agent_off|detector_fault|vacuum_lost|vacuum_back|power_lost|power_back|bowl_leak|reaction|heparin|protamine|touch|bypass|pump_blood|line_loosens" doc:"what happens"`
	At             *yamlread.Clock    `yaml:"at" rule:"max=13:00:00" doc:"when; together with when: not before" example:"0:30:00"`
	LaterByMin     yamlread.Quantity  `yaml:"later_by_min" rule:"min=0,max=120,unit=min,default=0" doc:"added to at, so that a seed can shift the event"`
	When           *Condition         `yaml:"when" doc:"condition to wait for instead of a time"`
	Who            string             `yaml:"who" rule:"oneof=surgeon|anaesthetist|scrub_nurse|laboratory|bench,default=bench" doc:"who says it"`
	Says           string             `yaml:"says" rule:"max=240" doc:"the words"`
	WithinMin      float64            `yaml:"within_min" rule:"min=0,max=60,unit=min" doc:"time in which an answer, or the blood, is expected"`
	RightAnswer    *bool              `yaml:"right_answer" doc:"of ask: true when yes is right"`
	Agent          string             `yaml:"agent" rule:"max=40" doc:"of agent_on and agent_off: the contaminant" example:"collagen_paste"`
	DetectorOffset *yamlread.Quantity `yaml:"detector_offset" rule:"min=-0.5,max=0.5" doc:"of detector_fault: what is added to the reading, 0 to mend it" example:"-0.1"`
	LeakMLMin      *yamlread.Quantity `yaml:"leak_ml_min" rule:"min=0.1,max=500,unit=mL/min" doc:"of bowl_leak: how fast" example:"20"`
	HeparinIU      *yamlread.Quantity `yaml:"heparin_iu" rule:"min=1,max=100000,unit=IU" doc:"of heparin: dose into the vein" example:"5000"`
	PumpML         *yamlread.Quantity `yaml:"pump_ml" rule:"min=100,max=3000,unit=mL" doc:"of bypass: what the pump's circuit holds, crystalloid at first" example:"1500"`
	Line           string             `yaml:"line" rule:"oneof=vacuum_line|suction_line|outlet_line|product_line|waste_line" doc:"of line_loosens: the line that works loose, which nobody sees until it is looked at again" example:"outlet_line"`
	ProtamineMG    *yamlread.Quantity `yaml:"protamine_mg" rule:"min=1,max=1000,unit=mg" doc:"of protamine: dose into the vein" example:"50"`
}

// Condition is what an event can wait for; exactly one is given.
type Condition struct {
	HaemoglobinBelow *yamlread.Quantity `yaml:"haemoglobin_below_g_dl" rule:"min=3,max=20,unit=g/dL" doc:"the patient's haemoglobin is below this" example:"8"`
	ShedAbove        *yamlread.Quantity `yaml:"shed_above_ml" rule:"min=0,max=50000,unit=mL" doc:"more blood than this was shed" example:"600"`
	GivenAbove       *yamlread.Quantity `yaml:"given_above_ml" rule:"min=0,max=20000,unit=mL" doc:"more washed blood than this was given" example:"200"`
	ProductAbove     *yamlread.Quantity `yaml:"product_above_ml" rule:"min=0,max=20000,unit=mL" doc:"more product than this came into bags" example:"300"`
}
