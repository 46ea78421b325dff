// This file holds what stands on the bench, what is wrong with it, and the rules of the modes.

package scenarios

import "rouleau/scenarios/yamlread"

// Bench is the bench before the case.
type Bench struct {
	Packs           []Pack            `yaml:"packs" rule:"max=16" doc:"packs of fluid on the shelf or hanging already"`
	Before          []Act             `yaml:"before" rule:"max=40" doc:"acts that a colleague has done before the case begins, in their order; they take no time, and a prime runs in at the start"`
	OpenClamps      []string          `yaml:"open_clamps" rule:"max=6,oneof=drip_clamp|outlet_clamp|wash_clamp_a|wash_clamp_b|waste_drain|spare_port" doc:"clamps and ports that somebody left open"`
	LooseLines      []string          `yaml:"loose_lines" rule:"max=5,oneof=vacuum_line|suction_line|outlet_line|product_line|waste_line" doc:"lines that look connected and are loose"`
	VacuumUnplugged bool              `yaml:"vacuum_unplugged" doc:"the regulator gives no vacuum until it is tested"`
	TouchChance     yamlread.Quantity `yaml:"touch_chance" rule:"min=0,max=1,default=0" doc:"chance, 0 to 1, that connecting a line touches something unsterile" example:"0.02"`
	DetectorOffset  yamlread.Quantity `yaml:"detector_offset" rule:"min=-0.5,max=0.5,default=0" doc:"what is added to the reading of the interface detector from the start" example:"-0.05"`
	DetectorHaze    yamlread.Quantity `yaml:"detector_haze" rule:"min=0.1,max=40,default=1" doc:"how many times the usual free haemoglobin and fat mislead the interface detector"`
	WasteBagML      float64           `yaml:"waste_bag_ml" rule:"min=500,max=20000,unit=mL,default=10000" doc:"what the waste bag holds"`
	ProductBagML    float64           `yaml:"product_bag_ml" rule:"min=100,max=3000,unit=mL,default=1000" doc:"what a product bag holds"`
	ReservoirML     float64           `yaml:"reservoir_ml" rule:"min=300,max=6000,unit=mL,default=3000" doc:"what the reservoir holds"`
	ProductLifeH    float64           `yaml:"product_life_h" rule:"min=0.1,max=24,unit=h,default=4" doc:"life of washed blood at room temperature"`
	StoreMin        yamlread.Quantity `yaml:"store_min" rule:"min=1,max=120,unit=min,default=20" doc:"time from sending for fluid until what is in the store comes"`
	LaboratoryMin   yamlread.Quantity `yaml:"laboratory_min" rule:"min=0.5,max=60,unit=min,default=5" doc:"time from a sample to its answer"`
}

// Pack is one pack of fluid.
type Pack struct {
	Solution string        `yaml:"solution" rule:"required,oneof=saline|balanced_crystalloid|sterile_water|glycine|glucose|heparin_solution|citrate_solution" doc:"what is in it"`
	VolumeML float64       `yaml:"volume_ml" rule:"required,min=50,max=5000,unit=mL" doc:"how much"`
	Expires  yamlread.Date `yaml:"expires" rule:"required" doc:"last day of use, as printed on it" example:"2032-11-30"`
	InStore  bool          `yaml:"in_store" doc:"it is not on the bench until somebody is sent for it"`
	On       string        `yaml:"on" rule:"oneof=anticoagulant_hook|wash_hook_a|wash_hook_b" doc:"hook where somebody hung it already; left out: it lies on the shelf"`
}

// Act is an act that was done before the case.
type Act struct {
	Do     string   `yaml:"do" rule:"required,min=1,max=40" doc:"the act, as scripts and records name it" example:"open_set"`
	On     string   `yaml:"on" rule:"max=40" doc:"the part it is about; left out: none" example:"collection_set"`
	Choice string   `yaml:"choice" rule:"max=60" doc:"the word for its value, of hang the solution in the pack" example:"heparin_solution"`
	Value  *float64 `yaml:"value" doc:"its value where that is a number" example:"200"`
}

// Automatic says which single steps the trainee may turn on.
type Automatic struct {
	StartFilling bool `yaml:"start_filling" doc:"start filling at a reservoir volume"`
	StopFilling  bool `yaml:"stop_filling" doc:"stop filling at the interface"`
	Wash         bool `yaml:"wash" doc:"wash after filling"`
	Empty        bool `yaml:"empty" doc:"empty after washing"`
}

// Modes are the rules of practice and assessment.
type Modes struct {
	PracticeSpeeds  []int `yaml:"practice_speeds" rule:"min=1,max=8,each_min=1,each_max=20,default=[1, 2, 5, 10, 20]" doc:"speeds to choose from in practice, times the real pace"`
	PracticeHints   bool  `yaml:"practice_hints" rule:"default=true" doc:"hints are offered in practice"`
	PracticeTruth   bool  `yaml:"practice_truth" rule:"default=true" doc:"hidden values can be shown in practice"`
	AssessmentSpeed int   `yaml:"assessment_speed" rule:"min=1,max=20,default=1" doc:"the one speed of an assessment, times the real pace"`
	TimeLimitMin    int   `yaml:"assessment_time_limit_min" rule:"min=1,max=720,unit=min,default=180" doc:"time on the wall after which an assessment is stopped"`
}

// Pass is what is needed to pass.
type Pass struct {
	MarkPercent  float64 `yaml:"mark_percent" rule:"min=1,max=100,unit=percent,default=75" doc:"points of the whole, of 100"`
	FloorPercent float64 `yaml:"part_floor_percent" rule:"min=0,max=100,unit=percent,default=60" doc:"least share of its points in every part"`
}
