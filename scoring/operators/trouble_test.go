package operators

import (
	"testing"

	"rouleau/scoring/play"
	"rouleau/sim"
)

func count(run *play.Run, fits func(a *sim.Action) bool) int {
	n := 0
	for i := range run.Actions {
		if fits(&run.Actions[i]) {
			n++
		}
	}
	return n
}

const minutes = 60 * sim.TicksPerSecond

// A leaking bowl is stopped, told of and replaced, and the case goes on to a return.
func TestSteadyMendsALeak(t *testing.T) {
	c := spine()
	c.Events = append(c.Events, sim.EventSpec{Kind: sim.EventBowlLeak, At: 40 * minutes, Value: 20, Line: -1})
	run := play.New(c, 1)
	run.ToEnd(NewSteady(sheet(c)))
	if n := count(run, func(a *sim.Action) bool { return a.Do == sim.ReplaceSet && a.On == sim.ProcessingSet }); n != 1 {
		t.Errorf("the leaking set was replaced %d times", n)
	}
	s := &run.State
	if s.Conduct.Told[sim.IncidentEquipment] == 0 || s.Conduct.FalseAlarms > 0 {
		t.Errorf("told %v, false alarms %d", s.Conduct.Told, s.Conduct.FalseAlarms)
	}
	if recovered := s.Giving.GivenCells / s.Patient.ShedCellsML; recovered < 0.45 || !s.Ended || s.Tick >= c.LastTick {
		t.Errorf("%.2f came back, ended at tick %d", recovered, s.Tick)
	}
}

// Without power everything stands; when it is back the bowlful is brought to its end.
func TestSteadyGoesOnAfterAPowerFailure(t *testing.T) {
	c := spine()
	c.Events = append(c.Events, sim.EventSpec{Kind: sim.EventPowerLost, At: 41 * minutes, Line: -1}, sim.EventSpec{Kind: sim.EventPowerBack, At: 46 * minutes, Line: -1})
	run := play.New(c, 1)
	run.ToEnd(NewSteady(sheet(c)))
	s := &run.State
	if recovered := s.Giving.GivenCells / s.Patient.ShedCellsML; recovered < 0.5 || s.Conduct.UnwashedGivenML > 0 || s.Conduct.FalseAlarms > 0 {
		t.Errorf("%.2f came back, %.1f mL of it unwashed, %d false alarms", recovered, s.Conduct.UnwashedGivenML, s.Conduct.FalseAlarms)
	}
}

// One who does not read the sheet sets up for a patient who refuses, with heparin where it is forbidden.
func TestUnreadSheet(t *testing.T) {
	o, err := Open("rule-bound")
	if err != nil {
		t.Fatal(err)
	}
	s := sheet(spine())
	s.Refused, s.HeparinForbidden, s.WeightKg = true, true, 14
	for name, who := range map[string]play.Actor{"steady": NewSteady(s), "rule-bound": o.Play(s)} {
		run := play.New(spine(), 1)
		run.ToEnd(who)
		b := &run.State.Bench
		if rule := name == "rule-bound"; rule != (b.Decision == sim.SetUpToProcess && b.Anticoagulant == sim.HeparinSolution && b.Bowl == sim.StandardBowl) {
			t.Errorf("%s: decision %v, anticoagulant %v, bowl %v", name, b.Decision, b.Anticoagulant, b.Bowl)
		}
	}
}
