package cli

import (
	"rouleau/assets/words"
	"rouleau/sim"
)

// The modules: what each asks for, how it is run through the model's own step, and what it answers. Names as in
// testdata/reference.

// module is one part of the model by itself.
type module struct {
	name, doc string
	fields    []field
	check     func(in values, name func(path string) string) []string // how fields fit together; nil for nothing to check
	run       func(in values) []result
}

// result is one number of an answer.
type result struct {
	name  string
	value float64
	unit  string
	doc   string // key of the catalogue
}

// Bounds keep a case within what can be, and within a few seconds of computing.
var modules = []module{
	{
		name: "bowl", doc: "calc.bowl",
		fields: []field{
			{path: "bowl.volume", initial: standard.VolumeML, least: 20, most: 1000, unit: "mL", doc: "calc.bowl_volume"},
			{path: "bowl.outer_radius", initial: standard.OuterCM, least: 1, most: 20, unit: "cm", doc: "calc.outer_radius"},
			{path: "bowl.inner_radius", initial: standard.InnerCM, least: 0.5, most: 20, unit: "cm", doc: "calc.inner_radius"},
			{path: "bowl.rpm", initial: standard.RPM, least: 500, most: 12000, unit: "/min", doc: "calc.rpm"},
			{path: "feed.hct", required: true, least: 0, most: 0.8, doc: "calc.feed_hct"},
			{path: "feed.protein", required: true, least: 0, most: 200, unit: "g/L", doc: "calc.feed_protein"},
			{path: "fill.rate", required: true, least: 1, most: 2000, unit: "mL/min", doc: "calc.fill_rate"},
			{path: "fill.stop_fraction", initial: 0.93, least: 0.01, most: 1, doc: "calc.stop_fraction"},
			{path: "fill.feed_volume", least: 1, most: 100000, unit: "mL", doc: "calc.feed_volume"},
			{path: "wash.rate", required: true, least: 0, most: 2000, unit: "mL/min", doc: "calc.wash_rate"},
			{path: "wash.volume", required: true, least: 0, most: 100000, unit: "mL", doc: "calc.wash_volume"},
		},
		check: checkBowl, run: runBowl,
	},
	{
		name: "reservoir", doc: "calc.reservoir",
		fields: []field{
			{path: "volume", required: true, least: 1, most: 10000, unit: "mL", doc: "calc.volume"},
			{path: "hct", required: true, least: 0, most: 0.8, doc: "calc.hct"},
			{path: "protein", required: true, least: 0, most: 200, unit: "g/L", doc: "calc.protein"},
			{path: "heparin", initial: 0.0, least: 0, most: 1000, unit: "IU/mL", doc: "calc.heparin"},
			{path: "citrate", initial: 0.0, least: 0, most: 200, unit: "mmol/L", doc: "calc.citrate"},
			{path: "calcium", required: true, least: 0, most: 20, unit: "mmol/L", doc: "calc.calcium_total"},
			{path: "esr", required: true, least: 0, most: 200, unit: "mm/h", doc: "calc.esr"},
			{path: "seconds", required: true, least: 0, most: 43200, unit: "s", doc: "calc.seconds"},
			{path: "inflow_rate", initial: 0.0, least: 0, most: 2000, unit: "mL/min", doc: "calc.inflow_rate"},
			{path: "inflow_activation", initial: 0.0, least: 0, most: 1, doc: "calc.inflow_activation"},
			{path: "mix_at", kind: numbers, initial: []float64{}, least: 0, most: 43200, unit: "s", doc: "calc.mix_at"},
		},
		run: func(in values) []result {
			r := sim.TryReservoir(sim.ReservoirTrial{VolumeML: in.number("volume"), Hct: in.number("hct"), ProteinGL: in.number("protein"),
				HeparinIUPerML: in.number("heparin"), CitrateMmolL: in.number("citrate"), CalciumMmolL: in.number("calcium"),
				ESRMMPerH: in.number("esr"), Seconds: in.number("seconds"), InflowMLMin: in.number("inflow_rate"),
				InflowActivation: in.number("inflow_activation"), MixAtS: in.numbers("mix_at")})
			return []result{
				{"volume_ml", r.VolumeML, "mL", "calc.volume"},
				{"clear_layer_ml", r.ClearML, "mL", "calc.clear_layer"},
				{"outlet_hct", r.OutletHct, "", "calc.outlet_hct"},
				{"activation", r.Activation, "", "calc.activation"},
				{"clot_ml", r.ClotML, "mL", "calc.clot"},
				{"outlet_limit_ml_min", r.OutletMLMin, "mL/min", "calc.outlet_limit"},
				{"ionised_calcium", r.IonisedCalcium, "mmol/L", "calc.ionised"},
			}
		},
	},
	{
		name: "filter", doc: "calc.filter",
		fields: []field{
			{path: "blood_rate", required: true, least: 0, most: 2000, unit: "mL/min", doc: "calc.blood_rate"},
			{path: "hct", required: true, least: 0, most: 0.8, doc: "calc.hct"},
			{path: "protein", required: true, least: 0, most: 200, unit: "g/L", doc: "calc.protein"},
			{path: "calcium", required: true, least: 0, most: 20, unit: "mmol/L", doc: "calc.calcium_total"},
			{path: "drip", required: true, least: 0, most: 1000, unit: "drops/min", doc: "calc.drip"},
			{path: "agent", kind: word, required: true, choices: []string{"heparin", "citrate"}, doc: "calc.agent"},
			{path: "primed", kind: truth, required: true, doc: "calc.primed"},
			{path: "minutes", required: true, least: 0, most: 720, unit: "min", doc: "calc.minutes"},
		},
		run: func(in values) []result {
			agent := sim.HeparinSolution
			if in.word("agent") == "citrate" {
				agent = sim.CitrateSolution
			}
			r := sim.TryFilter(sim.FilterTrial{BloodMLMin: in.number("blood_rate"), Hct: in.number("hct"), ProteinGL: in.number("protein"),
				CalciumMmolL: in.number("calcium"), DropsMin: in.number("drip"), Agent: agent, Primed: in.truth("primed"),
				Minutes: in.number("minutes")})
			return []result{
				{"hct", r.Hct, "", "calc.hct"},
				{"protein", r.ProteinGL, "g/L", "calc.protein"},
				{"heparin", r.HeparinIUPerML, "IU/mL", "calc.heparin"},
				{"citrate", r.CitrateMmolL, "mmol/L", "calc.citrate"},
				{"activation", r.Activation, "", "calc.activation"},
				{"clot_ml", r.ClotML, "mL", "calc.clot"},
			}
		},
	},
	{
		name: "calcium", doc: "calc.calcium",
		fields: []field{
			{path: "calcium", required: true, least: 0, most: 50, unit: "mmol/L", doc: "calc.calcium_total"},
			{path: "citrate", required: true, least: 0, most: 500, unit: "mmol/L", doc: "calc.citrate"},
			{path: "protein", required: true, least: 0, most: 200, unit: "g/L", doc: "calc.protein"},
		},
		run: func(in values) []result {
			return []result{{"ionised_calcium", sim.IonisedCalcium(in.number("calcium"), in.number("citrate"), in.number("protein")), "mmol/L", "calc.ionised"}}
		},
	},
	{
		name: "suction", doc: "calc.suction",
		fields: []field{
			{path: "vacuum", required: true, least: 0, most: 600, unit: "mmHg", doc: "calc.vacuum"},
			{path: "air_fraction", required: true, least: 0, most: 1, doc: "calc.air_fraction"},
			{path: "hct", required: true, least: 0, most: 0.8, doc: "calc.hct"},
		},
		run: func(in values) []result {
			return []result{
				{"haemolysis_fraction", sim.SuctionLysis(in.number("vacuum"), in.number("air_fraction"), in.number("hct")), "", "calc.haemolysis"},
				{"flow_limit_ml_min", sim.SuctionLimitMLMin(in.number("vacuum")), "mL/min", "calc.flow_limit"},
			}
		},
	},
	{
		name: "blood_volume", doc: "calc.blood_volume",
		fields: []field{
			{path: "sex", kind: word, required: true, choices: []string{"male", "female"}, doc: "calc.sex"},
			{path: "height", required: true, least: 100, most: 230, unit: "cm", doc: "calc.height"},
			{path: "weight", required: true, least: 20, most: 300, unit: "kg", doc: "calc.weight"},
		},
		run: func(in values) []result {
			sex := sim.Male
			if in.word("sex") == "female" {
				sex = sim.Female
			}
			return []result{{"blood_volume_ml", sim.NadlerML(sex, in.number("height"), in.number("weight")), "mL", "calc.blood_volume_ml"}}
		},
	},
	{
		name: "patient", doc: "calc.patient",
		fields: []field{
			{path: "blood_volume", required: true, least: 200, most: 15000, unit: "mL", doc: "calc.blood_volume_ml"},
			{path: "hct", required: true, least: 0.05, most: 0.7, doc: "calc.hct"},
			{path: "minutes", required: true, least: 0, most: 720, unit: "min", doc: "calc.minutes"},
			{path: "bleed_rate", required: true, least: 0, most: 2000, unit: "mL/min", doc: "calc.bleed_rate"},
			{path: "replacement", kind: word, required: true, choices: []string{"none", "colloid", "crystalloid"}, doc: "calc.replacement"},
		},
		check: checkPatient, run: runPatient,
	},
}

var standard = sim.StandardBowl.Shape()

func checkBowl(in values, name func(string) string) (faults []string) {
	if in.number("bowl.inner_radius") >= in.number("bowl.outer_radius") {
		faults = append(faults, words.Say("cli.radii", name("bowl.inner_radius"), name("bowl.outer_radius")))
	}
	if in.number("wash.volume") > 0 && in.number("wash.rate") < 1 {
		faults = append(faults, words.Say("cli.wash_needs_rate", name("wash.rate"), name("wash.volume")))
	}
	return faults
}

func runBowl(in values) []result {
	r := sim.TryBowl(sim.BowlTrial{
		Shape: sim.BowlShape{VolumeML: in.number("bowl.volume"), OuterCM: in.number("bowl.outer_radius"),
			InnerCM: in.number("bowl.inner_radius"), RPM: in.number("bowl.rpm")},
		FeedHct: in.number("feed.hct"), FeedProtein: in.number("feed.protein"), FillMLMin: in.number("fill.rate"),
		StopFraction: in.number("fill.stop_fraction"), FeedML: in.number("fill.feed_volume"), WashMLMin: in.number("wash.rate"),
		WashML: in.number("wash.volume")})
	return []result{
		{"fill_time_s", r.FillTimeS, "s", "calc.fill_time"},
		{"feed_volume_ml", r.FeedML, "mL", "calc.fed"},
		{"packing_after_fill", r.PackingAfterFill, "", "calc.packing_after_fill"},
		{"fill_loss_fraction", r.FillLoss, "", "calc.fill_loss"},
		{"packing_after_wash", r.PackingAfterWash, "", "calc.packing_after_wash"},
		{"wash_loss_fraction", r.WashLoss, "", "calc.wash_loss"},
		{"product_hct", r.ProductHct, "", "calc.product_hct"},
		{"red_cell_recovery", r.Recovery, "", "calc.recovery"},
		{"solute_removal", r.SoluteRemoval, "", "calc.removal"},
		{"made_free_hb_g", r.MadeFreeHbG, "g", "calc.made_free_hb"},
		{"wash_time_s", r.WashTimeS, "s", "calc.wash_time"},
	}
}

// checkPatient keeps the patient from bleeding more than a whole blood volume that nobody replaces.
func checkPatient(in values, name func(string) string) (faults []string) {
	if in.word("replacement") != "colloid" && in.number("minutes")*in.number("bleed_rate") > 2*in.number("blood_volume") {
		faults = append(faults, words.Say("cli.bled_out", name("minutes"), name("bleed_rate"), name("blood_volume")))
	}
	return faults
}

func runPatient(in values) []result {
	r := sim.TryPatient(sim.PatientTrial{BloodVolumeML: in.number("blood_volume"), Hct: in.number("hct"), Minutes: in.number("minutes"),
		BleedMLMin: in.number("bleed_rate"), Replacement: in.word("replacement")})
	return []result{
		{"hct", r.Hct, "", "calc.hct"},
		{"blood_volume_ml", r.BloodVolumeML, "mL", "calc.blood_volume_ml"},
		{"interstitial_excess_ml", r.InterstitialExcessML, "mL", "calc.excess"},
		{"plasma_protein_g_l", r.ProteinGL, "g/L", "calc.protein"},
		{"infused_ml", r.InfusedML, "mL", "calc.infused"},
		{"urine_ml", r.UrineML, "mL", "calc.urine"},
	}
}
