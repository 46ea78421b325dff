// This file tests the drawing of cases: the same bits for a seed, others for another, always within the file's bounds.

package scenarios

import (
	"fmt"
	"hash/fnv"
	"math"
	"os"
	"reflect"
	"testing"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/exp/rand"

	"rouleau/sim"
)

func small(t *testing.T) *Scenario {
	t.Helper()
	data, err := os.ReadFile("testdata/small.yaml")
	if err != nil {
		t.Fatal(err)
	}
	s, faults := Parse("small.yaml", data)
	if len(faults) > 0 || len(s.Warnings) > 0 {
		t.Fatalf("%v%v", faults, s.Warnings)
	}
	return s
}

var exported = cmp.Exporter(func(reflect.Type) bool { return true })

func TestDrawRepeats(t *testing.T) {
	s := opened(t, "steady-oozing-spine")
	for seed := uint64(0); seed < 20; seed++ {
		if diff := cmp.Diff(s.Case(seed, false), s.Case(seed, false), exported); diff != "" {
			t.Fatalf("seed %d:\n%s", seed, diff)
		}
		if a, b := s.Case(seed, false), s.Case(seed+1, false); a.Patient.WeightKg == b.Patient.WeightKg || a.Phases[2].BleedMLMin == b.Phases[2].BleedMLMin {
			t.Errorf("seeds %d and %d draw the same patient or bleeding", seed, seed+1)
		}
	}
	practice, assessment := s.Case(7, false), s.Case(7, true)
	if practice.Rules.Assessment || !assessment.Rules.Assessment {
		t.Error("the mode does not reach the rules")
	}
	assessment.Rules.Assessment = false
	if diff := cmp.Diff(practice, assessment, exported); diff != "" {
		t.Errorf("the mode changes the draws:\n%s", diff)
	}
}

// caseHash is a hash of every number of a case.
func caseHash(c *sim.Case) uint64 {
	h := fnv.New64a()
	var visit func(v reflect.Value)
	visit = func(v reflect.Value) {
		switch v.Kind() {
		case reflect.Float64:
			fmt.Fprintf(h, "%016x ", math.Float64bits(v.Float()))
		case reflect.Struct:
			for i := range v.NumField() {
				visit(v.Field(i))
			}
		case reflect.Slice, reflect.Array:
			for i := range v.Len() {
				visit(v.Index(i))
			}
		default:
			fmt.Fprintf(h, "%v ", v)
		}
	}
	visit(reflect.ValueOf(c).Elem())
	return h.Sum64()
}

// The bits below are our own earlier output: they may change only with the file, the format or the drawing.
func TestDrawBits(t *testing.T) {
	s := small(t)
	for seed, want := range map[uint64]struct{ weight, bleeding, all uint64 }{
		1:              {0x4054f5cd59ceface, 0x4040528d96feeb5e, 0x3bd08459ad14ea58},
		2:              {0x40546f897e8a1080, 0x403ae2186b5c5a9e, 0x31e81ca12865f110},
		math.MaxUint64: {0x405368cced6430cf, 0x403d7345d738f972, 0x42c07458314c83de},
	} {
		c := s.Case(seed, false)
		weight, bleeding, all := math.Float64bits(c.Patient.WeightKg), math.Float64bits(c.Phases[1].BleedMLMin), caseHash(&c)
		if weight != want.weight || bleeding != want.bleeding || all != want.all {
			t.Errorf("seed %d: {0x%x, 0x%x, 0x%x}", seed, weight, bleeding, all)
		}
	}
}

func TestDrawKeepsItsBounds(t *testing.T) {
	s := opened(t, "steady-oozing-spine")
	sum := 0.0
	const seeds = 400
	for seed := uint64(0); seed < seeds; seed++ {
		c := s.Case(seed, false)
		if w := c.Patient.WeightKg; w < 55 || w > 78 {
			t.Fatalf("seed %d: weight %v", seed, w)
		}
		if b := c.Phases[2].BleedMLMin; b < 28 || b > 42 {
			t.Fatalf("seed %d: bleeding %v", seed, b)
		}
		if c.Patient.CalciumMmolL != 2.35 || c.Phases[0].BleedMLMin != 0 {
			t.Fatalf("seed %d: a fixed value moved", seed)
		}
		// Nadler, Hidalgo & Bloch, Surgery 1962;51:224, at the ends of height and weight of the file.
		if v := c.Patient.BloodVolumeML; v < sim.NadlerML(sim.Female, 154, 55) || v > sim.NadlerML(sim.Female, 174, 78) {
			t.Fatalf("seed %d: blood volume %v", seed, v)
		}
		sum += c.Patient.WeightKg
	}
	if mean := sum / seeds; math.Abs(mean-66) > 4*5/math.Sqrt(seeds) { // four standard errors, sd 5 kg
		t.Errorf("neighbouring seeds draw a mean weight of %.2f kg", mean)
	}
}

func TestDrawIsNotTheChanceOfTheRun(t *testing.T) {
	for seed := uint64(0); seed < 100; seed++ {
		var run, draws rand.PCGSource
		run.Seed(seed)
		draws.Seed(mixed(seed ^ apart))
		a := run.Uint64()
		for range 50 {
			if draws.Uint64() == a {
				t.Fatalf("seed %d: the draws meet the stream of the run", seed)
			}
		}
	}
}

func TestCaseIsComplete(t *testing.T) {
	c := small(t).Case(1, false)
	p := &c.Patient
	for name, v := range map[string]float64{"protein": p.PlasmaProteinGL, "platelets": p.PlateletsG9L, "fibrinogen": p.FibrinogenGL,
		"sedimentation": p.ESRMMPerH, "calcium": p.CalciumMmolL, "potassium": p.PotassiumMmolL, "trigger": p.TransfusionHbGDL,
		"patience": float64(p.PatienceTicks), "heart rate": p.HeartRate, "pressure": p.MeanPressureMmHg,
		"waste": c.Faults.WasteCapacityML, "bag": c.Faults.BagCapacityML, "life": float64(c.Faults.ExpiryTicks),
		"laboratory": float64(c.Faults.LabTicks), "reservoir": c.Faults.ReservoirML} {
		if v <= 0 {
			t.Errorf("%s is %v", name, v)
		}
	}
	if c.Faults.ExpiryTicks != 4*3600*sim.TicksPerSecond || c.Faults.WasteCapacityML != 10000 || c.Faults.BagCapacityML != 1000 {
		t.Errorf("defaults of the bench: %+v", c.Faults)
	}
	if c.EndTick != 20*60*sim.TicksPerSecond || c.LastTick != 30*60*sim.TicksPerSecond {
		t.Errorf("ends at %d, stops at %d", c.EndTick, c.LastTick)
	}
	want := []sim.EventSpec{
		{Kind: sim.EventAsk, At: 9600, Who: sim.Surgeon, Line: 0, Value: 1, Within: 2400},
		{Kind: sim.EventAgentOn, At: 12000, Who: sim.Surgeon, Line: 1},
		{Kind: sim.EventAgentOff, At: 14400, Who: sim.Surgeon, Line: 2},
		{Kind: sim.EventRequestBlood, When: sim.WhenShedAbove, Threshold: 400, Who: sim.Anaesthetist, Line: 3, Within: 12000},
	}
	if diff := cmp.Diff(want, c.Events); diff != "" {
		t.Error(diff)
	}
	if c.Packs[0].On != sim.AnticoagulantHook || c.Packs[1].On != sim.NoPart || c.Packs[0].Expired || c.Packs[0].Expiry != "2032-01-31" {
		t.Errorf("packs %+v", c.Packs)
	}
	if c.Phases[1].ContaminantPerML[0] != 0.01 || c.Contaminants[0].AgentPerML != 4 || c.Phases[1].SwabShare != 0.28 {
		t.Errorf("phases %+v", c.Phases)
	}
}

func TestBenchFaultsAndKindsArrive(t *testing.T) {
	s := small(t)
	yes := true
	s.Day.Year = 2040
	s.Bench.OpenClamps, s.Bench.LooseLines, s.Bench.VacuumUnplugged = []string{"spare_port", "drip_clamp"}, []string{"product_line"}, true
	s.Events = nil
	for _, k := range kindsOf {
		s.Events = append(s.Events, Event{Kind: k.name, Agent: "paste", RightAnswer: &yes, Who: "bench"})
	}
	c := s.Case(1, false)
	if !c.Faults.OpenClamps[sim.SparePort] || !c.Faults.OpenClamps[sim.DripClamp] || c.Faults.OpenClamps[sim.OutletClamp] ||
		!c.Faults.LooseLines[sim.ProductLine] || !c.Faults.NoVacuum {
		t.Errorf("%+v", c.Faults)
	}
	if !c.Packs[0].Expired {
		t.Error("a pack out of date is not expired")
	}
	for i, e := range c.Events {
		if e.Kind != sim.EventKind(i+1) || e.Who != sim.Bench || e.Line != -1 {
			t.Errorf("%s became %+v", kindsOf[i].name, e)
		}
	}
}

func TestBloodVolumeFollowsAge(t *testing.T) {
	if got, want := bloodVolumeML(sim.Male, 5, 0, 14), sim.ChildML(sim.Male, 5, 14); got != want {
		t.Errorf("child: %v, want %v", got, want)
	}
	if got, want := bloodVolumeML(sim.Male, 15, 170, 60), sim.NadlerML(sim.Male, 170, 60); got != want {
		t.Errorf("adult: %v, want %v", got, want)
	}
	s := small(t)
	s.Patient.Haematocrit = nil
	hb := s.Patient.WeightKg
	hb.Spread, hb.Value = 0, 13.6
	s.Patient.HaemoglobinGDL = &hb
	if hct := s.Case(1, false).Patient.Hct; math.Abs(hct-0.40) > 1e-12 { // 13.6 g/dL at 34 g/dL of red cells
		t.Errorf("haematocrit %v", hct)
	}
}
