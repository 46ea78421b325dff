// This file holds the guided lesson: the steps that a scenario can walk a trainee through, and what each waits for.

package scenarios

import "slices"

// Step is one step of a guided lesson. In its texts {reservoir_ml} and the like stand for what the trainee could read there
// and then.
type Step struct {
	Do    string `yaml:"do" rule:"required,min=5,max=160" doc:"what to do now, one short sentence, shown large" example:"Open the collection set."`
	Why   string `yaml:"why" rule:"max=420" doc:"what the physics does with this choice and with others, in a few sentences"`
	Look  string `yaml:"look" rule:"max=40" doc:"part of the bench it is about, which is bracketed in the drawing and put into the panel" example:"reservoir"`
	Panel string `yaml:"panel" rule:"oneof=bench|team|records" doc:"page of the panel that is opened; left out: bench where look is given"`
	Time  string `yaml:"time" rule:"oneof=stands|runs" doc:"whether the clock of the case stands meanwhile; what the hands have begun is always finished; left out: stands while reading and runs otherwise"`
	Fast  bool   `yaml:"fast" doc:"the wait may be passed at ten times the pace"`
	Until Until  `yaml:"until" rule:"required" doc:"what the step waits for; exactly one of its keys is given"`
	Then  string `yaml:"then" rule:"max=300" doc:"what has just happened and what the model made of it, shown before the next step"`
}

// Until is what a step waits for; exactly one is given. A step whose wait is over when it comes is passed over.
type Until struct {
	Read  bool        `yaml:"read" doc:"true: the trainee has read it and says so"`
	Act   *UntilAct   `yaml:"act" doc:"an act on the bench"`
	Holds string      `yaml:"holds" rule:"oneof=undecided|not_primed|drip_behind|drip_far_ahead|clear_layer|agent_in_field|swabs_full|reservoir_ready|bowl_nearly_full|filled_not_washed|washed_not_emptied|not_labelled|blood_wanted|giving_unwatched|question_open|reservoir_nearly_full|pack_nearly_empty|detector_doubtful|citrate_outrun|circuit_open|pump_blood_waits|protamine_given|operation_over|part_bowl|anti_d_due|clotting_thinned|fluid_runs_short|waste_nearly_full|air_in_line|bowl_leaks|power_is_lost|patient_reacts|bag_expires_soon|reason_untold" doc:"a situation, as hints know it"`
	Reads *UntilReads `yaml:"reads" doc:"something that can be read or seen has come to a value"`
}

// UntilAct is an act that a step waits for. Settings count as they stand, other acts from when they were last asked for.
type UntilAct struct {
	Do      string   `yaml:"do" rule:"required,min=1,max=40" doc:"the act, as scripts and records name it" example:"set_drip"`
	On      string   `yaml:"on" rule:"max=40" doc:"the part it must be about; left out: any" example:"collection_set"`
	Choice  string   `yaml:"choice" rule:"max=60" doc:"the word for its value, of hang the solution in the pack; left out: any" example:"heparin_solution"`
	AtLeast *float64 `yaml:"at_least" doc:"least value that will do"`
	AtMost  *float64 `yaml:"at_most" doc:"greatest value that will do"`
}

// UntilReads is a reading that a step waits for.
type UntilReads struct {
	What    string   `yaml:"what" rule:"required,min=1,max=40" doc:"what is read, a name from the list of visible quantities" example:"reservoir_ml"`
	AtLeast *float64 `yaml:"at_least" doc:"from this value on"`
	AtMost  *float64 `yaml:"at_most" doc:"down to this value"`
}

// Stands says whether the clock of the case stands while a step waits.
func (s *Step) Stands() bool { return s.Time == "stands" || s.Time == "" && s.Until.Read }

// Lesson says whether the scenario is a guided lesson, which is for practice only.
func (f *File) Lesson() bool { return len(f.Guidance) > 0 }

// Grades says whether a part of the work is graded: a lesson may leave parts out.
func (f *File) Grades(part string) bool {
	return slices.ContainsFunc(f.Criteria, func(c Criterion) bool { return c.Part == part })
}

// Visible is something that a trainee can read or see, by the name that guidance uses.
type Visible struct {
	Name    string
	Unit    string
	Digits  int // behind the decimal point
	Meaning string
}

// Visibles are all of them in the order of the work. The package scoring/coach reads them.
var Visibles = [...]Visible{
	{"reservoir_ml", ml, 0, "in the reservoir"},
	{"clear_ml", ml, 0, "clear layer"},
	{"clear_share", "", 2, "clear layer as a share of the reservoir"},
	{"clot_ml", ml, 0, "clot on filter and in reservoir"},
	{"taken_in_ml", ml, 0, "taken into the reservoir"},
	{"filling_ml_min", mlMin, 0, "flow into the reservoir"},
	{"pool_ml", ml, 0, "pool in the wound"},
	{"swabs_ml", ml, 0, "blood in swabs"},
	{"bleeding_ml_min", mlMin, 0, "bleeding by eye"},
	{"primed_ml", ml, 0, "prime"},
	{"drip_ml", ml, 0, "anticoagulant drawn"},
	{"drops_min", "drops/min", 0, "drip"},
	{"drip_per_100_ml", ml, 0, "dripped per 100 mL, 5 min"},
	{"vacuum_mmhg", "mmHg", 0, "vacuum"},
	{"anticoagulant_left_ml", ml, 0, "anticoagulant left in its pack"},
	{"wash_left_ml", ml, 0, "wash fluid left on its hooks"},
	{"detector", "", 2, "interface detector"},
	{"bed_by_eye", "", 2, "bed of cells by eye, as a share of the bowl"},
	{"bowl_ml", ml, 0, "in the bowl"},
	{"bowl_spins", YesNo, 0, "bowl turning"},
	{"fed_ml", ml, 0, "fed to the bowl in all"},
	{"washed_ml", ml, 0, "wash"},
	{"effluent_red", "", 2, "redness of what leaves the bowl, 0 clear to 1 dark"},
	{"effluent_ml_min", mlMin, 0, "flow that leaves the bowl"},
	{"waste_ml", ml, 0, "contents of the waste bag"},
	{"bag_ml", ml, 0, "in the newest bag"},
	{"bag_air_ml", ml, 0, "air in the newest bag"},
	{"sample_hct", "", 2, "haematocrit of the newest sample"},
	{"sample_heparin_iu_ml", "IU/mL", 1, "heparin of the newest sample"},
	{"sample_protein_g_l", "g/L", 1, "protein of the newest sample's supernatant"},
	{"sample_free_hb_g_l", "g/L", 1, "free haemoglobin of the newest sample's supernatant"},
	{"sample_calcium_mmol_l", "mmol/L", 2, "ionised calcium of the newest sample"},
	{"samples_answered", "", 0, "samples that the laboratory has answered"},
	{"clinician_here", YesNo, 0, "second person here"},
	{"giving_ml_min", mlMin, 0, "flow into the patient"},
	{"given_ml", ml, 0, "washed blood given"},
	{"heart_rate", "per min", 0, "heart rate"},
	{"pressure_mmhg", "mmHg", 0, "mean arterial pressure"},
}

// VisibleNames are their names.
func VisibleNames() []string {
	names := make([]string, len(Visibles))
	for i, v := range Visibles {
		names[i] = v.Name
	}
	return names
}

// VisibleNamed finds one by its name.
func VisibleNamed(name string) (Visible, bool) {
	for _, v := range Visibles {
		if v.Name == name {
			return v, true
		}
	}
	return Visible{}, false
}
