// This file tests the library's spine case by letting it pass with nobody acting.

package scenarios

import (
	"testing"

	"rouleau/sim"
)

func open(t *testing.T, name string) *Scenario {
	t.Helper()
	s, err := Open(name)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestTmp(t *testing.T) {
	s := open(t, "steady-oozing-spine")
	t.Log(s.Warnings)
	for seed := uint64(1); seed < 6; seed++ {
		c := s.Case(seed, false)
		state := sim.Start(&c, seed)
		var h sim.Happened
		for !state.Ended {
			sim.Step(&c, &state, &h)
		}
		exp := 0.0
		for i, p := range c.Phases {
			end := c.EndTick
			if i+1 < len(c.Phases) {
				end = c.Phases[i+1].StartTick
			} else {
				end = c.LastTick
			}
			exp += p.BleedMLMin * sim.Seconds(end-p.StartTick) / 60
		}
		t.Log(seed, c.Patient.BloodVolumeML, c.Patient.Hct*34, state.Patient.ShedML, exp, state.Patient.LowestHbGDL, state.Patient.DonorUnits, state.Patient.Blood.HbGPerDL(), state.Patient.Blood.VolumeML())
		if seed == 1 {
			for _, o := range h.List {
				if o.Line >= 0 {
					t.Log(o.Tick/20/60, o.Who, s.Lines[o.Line])
				} else if o.Kind == sim.Said {
					t.Log(o.Tick/1200, o.Who, o.Key, o.Value)
				}
			}
		}
	}
}
