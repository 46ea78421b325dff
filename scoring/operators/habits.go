package operators

// This file holds habits: the knobs by which operators differ. All of them play by the rules of steady; what a person gets
// wrong by habit is a value here.

// Habits are how an operator works. What a file leaves out is as steady does it.
type Habits struct {
	// attention
	LooksUpEveryS int `yaml:"looks_up_every_s" rule:"min=1,max=3600,unit=s,default=1" doc:"once the bench is ready, does something only so often"`

	// deciding and preparing
	ReadsSheet         bool    `yaml:"reads_sheet" rule:"default=true" doc:"decides from the case sheet; false: sets up to process, with the first anticoagulant and the standard bowl, whatever it says"`
	Consults           bool    `yaml:"consults" rule:"default=true" doc:"asks surgeon and anaesthetist before deciding, where the custom of the hospital is so"`
	SaysNoAfterMin     float64 `yaml:"says_no_after_min" rule:"min=0,max=600,unit=min,default=0" doc:"hesitates so long before saying that nothing will be collected"`
	ChecksBench        bool    `yaml:"checks_bench" rule:"default=true" doc:"looks at hooks and lines before they are used; false: takes what hangs, and clamps as they are, for right"`
	TestsVacuum        bool    `yaml:"tests_vacuum" rule:"default=true" doc:"tests the vacuum before the first suction"`
	LooksAhead         bool    `yaml:"looks_ahead" rule:"default=true" doc:"sends for fluid and changes the waste bag before they hold up the work; false: once they do"`
	PrimeML            float64 `yaml:"prime_ml" rule:"min=0,max=500,unit=mL,default=200" doc:"anticoagulant run through the filter before the first blood"`
	OpensProcessingML  float64 `yaml:"opens_processing_ml" rule:"min=0,max=6000,unit=mL,default=450" doc:"opens the processing set when this much is in the reservoir"`
	WarnsTeam          bool    `yaml:"warns_team" rule:"default=true" doc:"asks the team to tell before an agent comes"`
	LetsBloodPool      bool    `yaml:"lets_blood_pool" rule:"default=true" doc:"asks the surgeon to let blood pool"`
	AnticoagulantFirst string  `yaml:"anticoagulant_first" rule:"oneof=heparin_solution|citrate_solution,default=heparin_solution" doc:"anticoagulant that is taken where both are at hand and nothing on the sheet speaks against it"`

	// collecting
	VacuumMmHg     float64 `yaml:"vacuum_mmhg" rule:"min=0,max=400,unit=mmHg,default=120" doc:"vacuum"`
	DripPer100ML   float64 `yaml:"drip_per_100_ml" rule:"min=0,max=100,unit=mL,default=17" doc:"anticoagulant aimed at for each 100 mL of blood"`
	FixedDropsMin  float64 `yaml:"fixed_drops_min" rule:"min=0,max=600,default=0" doc:"one drip, drops/min, whatever the bleeding; 0: the drip follows the bleeding"`
	DripEveryS     int     `yaml:"drip_every_s" rule:"min=1,max=36000,unit=s,default=1" doc:"looks at the drip only so often"`
	Diverts        bool    `yaml:"diverts" rule:"default=true" doc:"sends to the theatre's suction what must not be collected"`
	RinsesSwabs    bool    `yaml:"rinses_swabs" rule:"default=true" doc:"has swabs rinsed"`
	MixesReservoir bool    `yaml:"mixes_reservoir" rule:"default=true" doc:"mixes the reservoir before filling where a clear layer has formed"`

	// processing
	FillFromML    float64 `yaml:"fill_from_ml" rule:"min=0,max=6000,unit=mL,default=900" doc:"begins a bowl when this much is in the reservoir"`
	TopsUp        bool    `yaml:"tops_up" rule:"default=true" doc:"fills the last bowl from the product bag where it stayed part-filled and the custom of the hospital is so"`
	FillMLMin     float64 `yaml:"fill_ml_min" rule:"min=25,max=1000,unit=mL/min,default=300" doc:"rate of filling"`
	FillsTo       float64 `yaml:"fills_to" rule:"min=0.2,max=1.2,default=0.93" doc:"reading of the detector at which filling is stopped"`
	AutomaticStop bool    `yaml:"automatic_stop" rule:"default=true" doc:"has filling stopped by itself where the case allows it"`
	ByEye         bool    `yaml:"by_eye" rule:"default=true" doc:"watches what leaves the bowl, and stops filling by hand when cells go to waste"`
	WashMLMin     float64 `yaml:"wash_ml_min" rule:"min=25,max=1000,unit=mL/min,default=300" doc:"rate of washing"`
	WashBowls     float64 `yaml:"wash_bowls" rule:"min=0,max=25,default=5" doc:"wash for each bowl, in volumes of the bowl"`
	EmptyMLMin    float64 `yaml:"empty_ml_min" rule:"min=25,max=1000,unit=mL/min,default=400" doc:"rate of emptying"`

	// returning
	WaitsMin    float64 `yaml:"waits_min" rule:"min=0,max=600,unit=min,default=0" doc:"waits so long before giving what could be given"`
	ExpelsAir   bool    `yaml:"expels_air" rule:"default=true" doc:"lets the air out of a bag before it is connected"`
	MindsExpiry bool    `yaml:"minds_expiry" rule:"default=true" doc:"gives the oldest bag first, and throws away what is past its time; false: the newest first, whatever its time"`
	UsesFilter  bool    `yaml:"uses_filter" rule:"default=true" doc:"gives through a filter"`
	Checkers    int     `yaml:"checkers" rule:"min=0,max=2,default=2" doc:"people who check identity"`
	GiveMLMin   float64 `yaml:"give_ml_min" rule:"min=5,max=150,unit=mL/min,default=100" doc:"rate of giving"`
	WatchEveryS int     `yaml:"watch_every_s" rule:"min=0,max=3600,unit=s,default=60" doc:"looks at the patient so often while blood runs in; 0: never"`

	// communicating and recording
	Answers   bool   `yaml:"answers" rule:"default=true" doc:"answers what is asked"`
	HandOver  string `yaml:"hand_over" rule:"min=3,max=80,default=complete" doc:"what is said when a bag is handed over: complete, nothing, or fields joined by +"`
	Label     string `yaml:"label" rule:"min=3,max=80,default=complete" doc:"what is written on a bag: complete, nothing, or fields joined by +"`
	Samples   bool   `yaml:"samples" rule:"default=true" doc:"sends a sample of every bag to the laboratory"`
	Declares  bool   `yaml:"declares" rule:"default=true" doc:"declares what went wrong"`
	FollowsUp bool   `yaml:"follows_up" rule:"default=true" doc:"asks for what must follow the return, such as anti-D, and tells that washed cells thin out clotting"`
	TellsWhy  bool   `yaml:"tells_why" rule:"default=true" doc:"tells the team why nothing is collected, or that there must be no heparin"`
	Notes     bool   `yaml:"notes" rule:"default=true" doc:"writes down what was decided against the usual, and why"`
	Tallies   bool   `yaml:"tallies" rule:"default=true" doc:"estimates the loss at the end and writes the tally"`
}
