package operators

import (
	"testing"

	"rouleau/scoring/play"
	"rouleau/sim"
)

func spine() sim.Case {
	ph := func(min int64, b, irr float64) sim.Phase {
		return sim.Phase{StartTick: min * 60 * sim.TicksPerSecond, BleedMLMin: b, IrrigationMLMin: irr, Irrigation: sim.Saline, SwabShare: .28, DrapeShare: .05}
	}
	const m = 60 * sim.TicksPerSecond
	return sim.Case{
		Patient: sim.PatientSpec{BloodVolumeML: 4800, WeightKg: 75, Hct: .40, PlasmaProteinGL: 70, PlateletsG9L: 250, FibrinogenGL: 3, ESRMMPerH: 15, CalciumMmolL: 2.4, PotassiumMmolL: 4.2, MaintenanceMLMin: 1.5, TransfusionHbGDL: 8, PatienceTicks: 10 * m, HeartRate: 65, MeanPressureMmHg: 80},
		Phases:  []sim.Phase{ph(0, 8, 0), ph(10, 35, 15), ph(45, 20, 15), ph(60, 20, 30), ph(65, 5, 30), ph(75, 0, 0)},
		Packs:   []sim.PackSpec{{Solution: sim.HeparinSolution, VolumeML: 1000}, {Solution: sim.Saline, VolumeML: 1000}, {Solution: sim.Saline, VolumeML: 3000}, {Solution: sim.Saline, VolumeML: 3000}},
		Faults:  sim.BenchFaults{WasteCapacityML: 10000, BagCapacityML: 1000, ExpiryTicks: 240 * m, LabTicks: 5 * m, ReservoirML: 3000},
		Events:  []sim.EventSpec{{Kind: sim.EventRequestBlood, At: 50 * m, Who: sim.Anaesthetist, Line: -1}, {Kind: sim.EventAskLoss, At: 40 * m, Line: -1, Who: sim.Anaesthetist}},
		EndTick: 75 * m, LastTick: 110 * m,
	}
}

func sheet(c sim.Case) Sheet {
	s := Sheet{ExpectedLossML: 1800, BloodVolumeML: c.Patient.BloodVolumeML, WeightKg: c.Patient.WeightKg, Rules: c.Rules, BagML: c.Faults.BagCapacityML}
	for _, p := range c.Packs {
		s.Packs = append(s.Packs, PackLabel{Solution: p.Solution, VolumeML: p.VolumeML, Expired: p.Expired})
	}
	return s
}

func TestSteadyRunsAWholeCase(t *testing.T) {
	c := spine()
	r := play.New(c, 1)
	r.ToEnd(NewSteady(sheet(c)))
	s := &r.State
	if recovered := s.Giving.GivenCells / s.Patient.ShedCellsML; recovered < 0.6 || recovered > 0.9 {
		t.Errorf("%.2f of the shed red cells came back", recovered)
	}
	if clot := s.Filter.Clot.VolumeML() + s.Reservoir.Clot.VolumeML(); clot > 5 {
		t.Errorf("%.1f mL of clot", clot)
	}
	if d := s.Conduct.EstimateML - s.Conduct.EstimateTruthML; d > 150 || d < -150 {
		t.Errorf("blood loss estimated at %.0f mL, it was %.0f", s.Conduct.EstimateML, s.Conduct.EstimateTruthML)
	}
	for i, truth := range sim.TallyTruth(s) {
		if line := s.Tally[i]; !line.Written || line.ML > truth+60 || line.ML < truth-60 {
			t.Errorf("tally line %s: %+v, truth %.0f mL", sim.TallyItem(i), line, truth)
		}
	}
	if !s.Ended || s.Tick >= c.LastTick {
		t.Errorf("not ended by hand: tick %d of %d", s.Tick, c.LastTick)
	}
}

func BenchmarkCase(b *testing.B) {
	c := spine()
	for b.Loop() {
		r := play.New(c, 1)
		r.ToEnd(NewSteady(sheet(c)))
	}
}
