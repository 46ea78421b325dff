// This file lets the spine case of the library pass with nobody acting, and compares it with what its file promises.

package scenarios

import (
	"math"
	"testing"

	"rouleau/sim"
)

func opened(t *testing.T, name string) *Scenario {
	t.Helper()
	s, err := Open(name)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// idle is a case run to its end by nobody.
func idle(c *sim.Case, seed uint64) (sim.State, []sim.Occurrence) {
	state := sim.Start(c, seed)
	var h sim.Happened
	for !state.Ended && state.Tick <= c.LastTick {
		sim.Step(c, &state, &h)
	}
	return state, h.List
}

// promisedML is the blood that the phases of a case shed.
func promisedML(c *sim.Case) float64 {
	sum := 0.0
	for i, p := range c.Phases {
		end := c.LastTick
		if i+1 < len(c.Phases) {
			end = c.Phases[i+1].StartTick
		}
		sum += p.BleedMLMin * sim.Seconds(end-p.StartTick) / 60
	}
	return sum
}

func TestSpineWithNobodyActing(t *testing.T) {
	s := opened(t, "steady-oozing-spine")
	for seed := uint64(1); seed <= 5; seed++ {
		c := s.Case(seed, true)
		state, log := idle(&c, seed)
		if !state.Ended || state.Tick != c.LastTick || sim.Seconds(c.EndTick) != 75*60 {
			t.Fatalf("seed %d: ended %v at tick %d of %d", seed, state.Ended, state.Tick, c.LastTick)
		}
		// Bleeding rises a little where clotting is diluted, never falls.
		if want := promisedML(&c); state.Patient.ShedML < want-0.1 || state.Patient.ShedML > 1.05*want {
			t.Errorf("seed %d: shed %.1f mL, the phases say %.1f", seed, state.Patient.ShedML, want)
		}
		// The operation sheds 8, 35, 20 and 5 mL/min for 8, 32, 20 and 10 minutes: 1634 mL, each within its bounds.
		if shed := state.Patient.ShedML; shed < 0.8*1634 || shed > 1.2*1634 {
			t.Errorf("seed %d: shed %.0f mL, expected about 1634", seed, shed)
		}
		// Bourke & Smith, Anesthesiology 1974;41:609: Hb = Hb0·exp(−loss/volume) while the volume is kept. The volume is a
		// little less than that here, so the haemoglobin is a little higher, by less than 0.6 g/dL.
		hb := sim.MCHCGPerML * 100 * c.Patient.Hct * math.Exp(-state.Patient.ShedML/c.Patient.BloodVolumeML)
		if low := state.Patient.LowestHbGDL; low < hb-0.2 || low > hb+0.6 {
			t.Errorf("seed %d: lowest haemoglobin %.2f g/dL, about %.2f expected", seed, low, hb)
		}
		if state.Patient.DonorUnits == 0 {
			t.Errorf("seed %d: without washed blood the patient needs none of others", seed)
		}
		spineWords(t, s, log)
	}
}

// spineWords checks that the team speaks every line of the file, once and in order.
func spineWords(t *testing.T, s *Scenario, log []sim.Occurrence) {
	t.Helper()
	next := 0
	for _, o := range log {
		if o.Kind == sim.Said && o.Line >= 0 {
			if o.Line != next || o.Who == sim.Nobody {
				t.Errorf("line %d said by %v, line %d was next", o.Line, o.Who, next)
			}
			next++
		}
	}
	if next != len(s.Lines) {
		t.Errorf("%d of %d lines were said", next, len(s.Lines))
	}
}

func TestSpineHaemostatComesAndGoes(t *testing.T) {
	s := opened(t, "steady-oozing-spine")
	c := s.Case(3, false)
	state := sim.Start(&c, 3)
	var h sim.Happened
	perML := func(minute int64) float64 {
		for state.Tick < minute*60*sim.TicksPerSecond {
			sim.Step(&c, &state, &h)
		}
		if v := state.Field.Pool.VolumeML(); v > 0 {
			return state.Field.Pool.Contaminant(0) / v
		}
		return 0
	}
	full := c.Contaminants[0].HaemostatFull
	before, during, after := perML(35), perML(41), perML(74)
	if before != 0 || during < 0.5*full || after > 0.1*full {
		t.Errorf("haemostat in the wound: %.3g, %.3g, %.3g mg/mL; full effect at %g", before, during, after, full)
	}
}

func TestSpineAsksForBlood(t *testing.T) {
	s := opened(t, "steady-oozing-spine")
	c := s.Case(2, false)
	state, _ := idle(&c, 2)
	kinds := map[sim.EventKind]int{}
	for _, q := range state.Team.Questions[:state.Team.QuestionCount] {
		kinds[q.Kind]++
		if q.DueTick <= q.AskedTick || q.DueTick > c.LastTick || q.Line < 0 {
			t.Errorf("question %+v", q)
		}
	}
	if kinds[sim.EventAskLoss] != 2 || kinds[sim.EventAsk] != 1 || kinds[sim.EventRequestBlood] != 1 {
		t.Errorf("questions %v", kinds)
	}
}
