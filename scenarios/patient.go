// This file holds the patient of a scenario and the anaesthetist's habits with blood.

package scenarios

import "rouleau/scenarios/yamlread"

// Patient is the simulated patient. Every number can be a spread that each seed draws from.
type Patient struct {
	Sex              string             `yaml:"sex" rule:"required,oneof=female|male" doc:"sex as the blood volume formulas know it"`
	AgeYears         yamlread.Quantity  `yaml:"age_years" rule:"required,min=0,max=110,unit=years" doc:"age; under 15 the blood volume follows age and weight, from 15 on height and weight"`
	HeightCM         *yamlread.Quantity `yaml:"height_cm" rule:"min=30,max=230,unit=cm" doc:"height; needed from 15 years on"`
	WeightKg         yamlread.Quantity  `yaml:"weight_kg" rule:"required,min=0.5,max=300,unit=kg" doc:"body weight"`
	Haematocrit      *yamlread.Quantity `yaml:"haematocrit_fraction" rule:"min=0.10,max=0.70,unit=fraction" doc:"haematocrit before the operation; this or the haemoglobin must be given"`
	HaemoglobinGDL   *yamlread.Quantity `yaml:"haemoglobin_g_dl" rule:"min=3,max=24,unit=g/dL" doc:"haemoglobin before the operation; this or the haematocrit must be given" example:"13.5"`
	PlasmaProteinGL  yamlread.Quantity  `yaml:"plasma_protein_g_l" rule:"min=20,max=120,unit=g/L,default=70" doc:"plasma protein"`
	PlateletsE9L     yamlread.Quantity  `yaml:"platelets_1e9_l" rule:"min=5,max=1500,unit=1e9/L,default=250" doc:"platelets, 10^9 per litre of blood"`
	FibrinogenGL     yamlread.Quantity  `yaml:"fibrinogen_g_l" rule:"min=0.2,max=10,unit=g/L,default=2.8" doc:"fibrinogen of plasma"`
	SedimentationMMH yamlread.Quantity  `yaml:"sedimentation_rate_mm_h" rule:"min=1,max=150,unit=mm/h,default=15" doc:"erythrocyte sedimentation rate, which says how fast the reservoir settles"`
	CalciumMmolL     yamlread.Quantity  `yaml:"calcium_mmol_l" rule:"min=1,max=4,unit=mmol/L,default=2.4" doc:"total calcium of plasma"`
	PotassiumMmolL   yamlread.Quantity  `yaml:"potassium_mmol_l" rule:"min=2,max=7.5,unit=mmol/L,default=4.2" doc:"potassium of plasma"`
	HeparinIUML      yamlread.Quantity  `yaml:"heparin_iu_ml" rule:"min=0,max=10,unit=IU/mL,default=0" doc:"heparin in the plasma before the case" example:"0.2"`
	HeartRate        yamlread.Quantity  `yaml:"heart_rate_per_min" rule:"min=30,max=200,unit=1/min,default=75" doc:"heart rate at rest"`
	MeanPressure     yamlread.Quantity  `yaml:"mean_pressure_mmhg" rule:"min=25,max=140,unit=mmHg,default=80" doc:"mean arterial pressure at rest"`
	MaintenanceMLMin yamlread.Quantity  `yaml:"maintenance_ml_min" rule:"min=0,max=50,unit=mL/min,default=2" doc:"crystalloid beside what the deficit asks for"`
	TransfuseBelow   yamlread.Quantity  `yaml:"transfuse_below_g_dl" rule:"min=3,max=14,unit=g/dL,default=7.5" doc:"haemoglobin below which the anaesthetist orders donor blood"`
	PatienceMin      yamlread.Quantity  `yaml:"patience_min" rule:"min=0,max=120,unit=min,default=10" doc:"how long the anaesthetist then waits for washed blood"`
	PlasmaThawMin    yamlread.Quantity  `yaml:"plasma_thaw_min" rule:"min=0,max=240,unit=min,default=0" doc:"time from the anaesthetist's order to plasma and platelets; 0 or left out: the case has none" example:"25"`
	DonorRefused     bool               `yaml:"donor_blood_refused" doc:"the patient declines the blood of others"`
	SalvageRefused   bool               `yaml:"salvage_refused" doc:"the patient declines collection and washing"`
	CircuitAsked     bool               `yaml:"circuit_stays_connected" doc:"the patient takes own blood back only from a circuit that stays connected to the body"`
	RhDNegative      bool               `yaml:"rhd_negative" doc:"a mother who is RhD-negative: red cells of the child come back to her with her own, so anti-D and a test of the fetomaternal bleed are to be asked for"`
	HeparinForbidden bool               `yaml:"heparin_forbidden" doc:"heparin would harm this patient"`
}
