// Every situation that the scenario format names can come, and every reading can be taken.

package coach

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"rouleau/scenarios"
	"rouleau/sim"
)

// listed are the words a key of the format allows, from its own tag.
func listed(t *testing.T, of any, name string) []string {
	t.Helper()
	f, ok := reflect.TypeOf(of).FieldByName(name)
	if !ok {
		t.Fatalf("there is no %s any more", name)
	}
	_, list, ok := strings.Cut(f.Tag.Get("rule"), "oneof=")
	if !ok {
		t.Fatal("the situations are not listed in the tag any more")
	}
	return strings.Split(list, "|")
}

func TestHintsAndLessonsKnowTheSameSituations(t *testing.T) {
	hints, lessons := listed(t, scenarios.Hint{}, "When"), listed(t, scenarios.Until{}, "Holds")
	if !reflect.DeepEqual(hints, lessons) {
		t.Errorf("hints know %v\nlessons know %v", hints, lessons)
	}
}

// bench is a bench before anything happened.
func bench() *Sight {
	s := &Sight{Seen: &sim.Seen{BloodWantedTick: -1}, DripPer100: math.NaN(), UnwatchedS: math.Inf(1), ReservoirML: 3000}
	s.Seen.Bench.HookPack = [sim.WashHookB + 1]int8{-1, -1, -1, -1}
	return s
}

func TestEverySituationCanCome(t *testing.T) {
	ways := map[string]func(s *Sight, v *sim.Seen){
		"undecided":             func(*Sight, *sim.Seen) {},
		"not_primed":            func(_ *Sight, v *sim.Seen) { v.Bench.Opened[sim.CollectionSet] = true },
		"drip_behind":           func(s *Sight, _ *sim.Seen) { s.DripPer100 = 5 },
		"drip_far_ahead":        func(s *Sight, _ *sim.Seen) { s.DripPer100 = 50 },
		"clear_layer":           func(_ *Sight, v *sim.Seen) { v.ReservoirML, v.ClearML = 500, 200 },
		"agent_in_field":        func(_ *Sight, v *sim.Seen) { v.AgentSaid, v.Route = true, sim.ToReservoir },
		"swabs_full":            func(_ *Sight, v *sim.Seen) { v.SwabsML = 300 },
		"reservoir_ready":       func(_ *Sight, v *sim.Seen) { v.ReservoirML = 1000 },
		"bowl_nearly_full":      func(_ *Sight, v *sim.Seen) { v.Pump.Mode, v.Pump.Detector = sim.PumpFill, 0.9 },
		"filled_not_washed":     func(_ *Sight, v *sim.Seen) { v.Pump.CycleOpen, v.Pump.Filled = true, true },
		"washed_not_emptied":    func(_ *Sight, v *sim.Seen) { v.Pump.CycleOpen, v.Pump.Washed = true, true },
		"not_labelled":          func(_ *Sight, v *sim.Seen) { v.BagsUsed, v.Bags[0].ML = 1, 100 },
		"blood_wanted":          func(_ *Sight, v *sim.Seen) { v.BloodWantedTick = 5 },
		"giving_unwatched":      func(_ *Sight, v *sim.Seen) { v.Giving.FlowMLMin = 50 },
		"question_open":         func(_ *Sight, v *sim.Seen) { v.OpenQuestion = sim.EventAskLoss },
		"reservoir_nearly_full": func(_ *Sight, v *sim.Seen) { v.ReservoirML = 2900 },
		"pack_nearly_empty":     func(_ *Sight, v *sim.Seen) { v.Bench.HookPack[sim.WashHookA], v.Bench.PackLeftML[0] = 0, 40 },
		"detector_doubtful": func(_ *Sight, v *sim.Seen) {
			v.Pump = sim.SeenPump{Mode: sim.PumpFill, Detector: 0.9, BedByEye: 0.74, EffluentMLMin: 200}
		},
		"citrate_outrun": func(_ *Sight, v *sim.Seen) {
			v.Bench.Anticoagulant, v.Route, v.BriskMLMin, v.DripMLMin = sim.CitrateSolution, sim.ToReservoir, 20, 5
			v.IrrigationFluid, v.IrrigationMLMin = sim.BalancedCrystalloid, 100
		},
		"part_bowl": func(_ *Sight, v *sim.Seen) {
			v.Pump.CycleOpen, v.Pump.Filled, v.Pump.Spinning, v.Pump.Detector = true, true, true, 0.5
		},
		"anti_d_due": func(_ *Sight, v *sim.Seen) {
			v.RhDNegative, v.Giving.GivenML, v.AntiDAsked = true, 200, true
		},
		"circuit_open": func(_ *Sight, v *sim.Seen) {
			v.CircuitAsked, v.Bench.Opened[sim.CollectionSet] = true, true
		},
		"pump_blood_waits": func(_ *Sight, v *sim.Seen) { v.PumpOffered = true },
		"protamine_given": func(s *Sight, v *sim.Seen) {
			v.ProtamineGiven, v.Route, s.DripPer100 = true, sim.ToReservoir, 5
		},
		"clotting_thinned":  func(_ *Sight, v *sim.Seen) { v.Giving.GivenML = 850 },
		"fluid_runs_short":  func(_ *Sight, v *sim.Seen) { v.SalineLeftML, v.Bench.PackInStore[3] = 2900, true },
		"waste_nearly_full": func(_ *Sight, v *sim.Seen) { v.Alarms[sim.AlarmWasteFull] = true },
		"air_in_line":       func(_ *Sight, v *sim.Seen) { v.Alarms[sim.AlarmAir] = true },
		"bowl_leaks":        func(_ *Sight, v *sim.Seen) { v.Alarms[sim.AlarmLeak] = true },
		"power_is_lost":     func(_ *Sight, v *sim.Seen) { v.Alarms[sim.AlarmNoPower] = true },
		"patient_reacts":    func(_ *Sight, v *sim.Seen) { v.Reacting = true },
		"bag_expires_soon":  func(_ *Sight, v *sim.Seen) { v.Alarms[sim.AlarmExpiring] = true },
		"reason_untold":     func(_ *Sight, v *sim.Seen) { v.Bench.Decision = sim.DoNotSalvage },
		"operation_over":    func(_ *Sight, v *sim.Seen) { v.OperationOver = true },
	}
	for _, when := range listed(t, scenarios.Hint{}, "When") {
		s := bench()
		if when != "undecided" && s.Holds(when) {
			t.Errorf("%s holds before anything happened", when)
		}
		if ways[when] == nil {
			t.Errorf("%s is allowed by the format and nothing here knows it", when)
			continue
		}
		ways[when](s, s.Seen)
		if !s.Holds(when) {
			t.Errorf("%s does not hold when it should", when)
		}
	}
	decided := bench()
	decided.Seen.Bench.Decision = sim.CollectOnly
	if decided.Holds("undecided") || decided.Holds("no such situation") {
		t.Error("a situation holds that does not")
	}
}

func TestEveryReadingCanBeTaken(t *testing.T) {
	v := &sim.Seen{ReservoirML: 500, ClearML: 100, ClotML: 3, TakenInML: 510, FillingMLMin: 40, PoolML: 20, SwabsML: 30, BriskMLMin: 60,
		PrimedML: 200, DripML: 240, DropsMin: 150, VacuumMmHg: 120, WasteML: 50, ClinicianHere: true, HeartRate: 70, PressureMmHg: 80, BagsUsed: 1}
	v.Bench.HookPack = [sim.WashHookB + 1]int8{-1, 0, 1, 2}
	v.Bench.PackLeftML = [sim.MaxPacks]float64{700, 2000, 300}
	v.Pump = sim.SeenPump{Detector: 0.5, BedByEye: 0.48, HeldML: 90, Spinning: true, FedML: 120, WashedML: 10, EffluentRed: 0.25, EffluentMLMin: 200}
	v.Bags[0].ML, v.Bags[0].AirML = 85, 40
	v.Giving.FlowMLMin, v.Giving.GivenML = 60, 15
	v.SampleCount = 3 // the third is not answered yet
	v.Samples[0] = sim.Sampled{Told: true, Hct: 0.25}
	v.Samples[1] = sim.Sampled{Told: true, Hct: 0.61, HeparinIUPerML: 0.4, ProteinGL: 2.5, FreeHbGL: 0.3, IonisedCalcium: 1.1}
	s := &Sight{Seen: v, DripPer100: 17.5}
	shown := map[string]string{"reservoir_ml": "500 mL", "clear_ml": "100 mL", "clear_share": "0.20", "clot_ml": "3 mL", "taken_in_ml": "510 mL",
		"filling_ml_min": "40 mL/min", "pool_ml": "20 mL", "swabs_ml": "30 mL", "bleeding_ml_min": "60 mL/min", "primed_ml": "200 mL",
		"drip_ml": "240 mL", "drops_min": "150 drops/min", "drip_per_100_ml": "18 mL", "vacuum_mmhg": "120 mmHg", "anticoagulant_left_ml": "700 mL",
		"wash_left_ml": "2300 mL", "detector": "0.50", "bed_by_eye": "0.48", "bowl_ml": "90 mL", "bowl_spins": "yes", "fed_ml": "120 mL", "washed_ml": "10 mL",
		"effluent_red": "0.25", "effluent_ml_min": "200 mL/min", "waste_ml": "50 mL", "bag_ml": "85 mL", "bag_air_ml": "40 mL",
		"sample_hct": "0.61", "sample_heparin_iu_ml": "0.4 IU/mL", "sample_protein_g_l": "2.5 g/L", "sample_free_hb_g_l": "0.3 g/L",
		"sample_calcium_mmol_l": "1.10 mmol/L", "samples_answered": "2",
		"clinician_here": "yes", "giving_ml_min": "60 mL/min", "given_ml": "15 mL", "heart_rate": "70 per min", "pressure_mmhg": "80 mmHg"}
	for _, name := range scenarios.VisibleNames() {
		if got := s.Shown(name); got != shown[name] {
			t.Errorf("%s is shown as %q, want %q", name, got, shown[name])
		}
	}
	if got := s.Fill("It holds {reservoir_ml}, {drip_per_100_ml} for each 100 mL."); got != "It holds 500 mL, 18 mL for each 100 mL." {
		t.Errorf("filled: %q", got)
	}
	if got := (&Sight{Seen: &sim.Seen{}, DripPer100: math.NaN()}).Fill("{drip_per_100_ml}, {clinician_here}, {bag_ml}, {clear_share}"); got != "–, no, 0 mL, 0.00" {
		t.Errorf("filled at the start: %q", got)
	}
}
