// This file feeds arbitrary files to the reader: it may refuse them, but not panic, and what it takes must play.

package scenarios

import (
	"os"
	"path/filepath"
	"testing"

	"rouleau/sim"
)

func FuzzParse(f *testing.F) {
	for _, pattern := range []string{"testdata/*.yaml", "testdata/*/*.yaml", "library/*.yaml"} {
		files, err := filepath.Glob(filepath.FromSlash(pattern))
		if err != nil || len(files) == 0 {
			f.Fatalf("no seeds in %s", pattern)
		}
		for _, file := range files {
			data, err := os.ReadFile(file)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(data, uint64(1))
		}
	}
	f.Fuzz(func(t *testing.T, data []byte, seed uint64) {
		s, faults := Parse("fuzz.yaml", data)
		if (s == nil) != (len(faults) > 0) {
			t.Fatalf("a scenario and faults, or neither: %v", faults)
		}
		if s == nil {
			for _, fault := range faults {
				if fault.Line < 1 || fault.Col < 1 || fault.Message == "" {
					t.Fatalf("fault %+v", fault)
				}
			}
			return
		}
		c := s.Case(seed, true)
		for _, v := range []float64{c.Patient.BloodVolumeML, c.Patient.WeightKg, c.Patient.Hct, c.Patient.TransfusionHbGDL} {
			if !(v > 0 && v < 1e6) {
				t.Fatalf("patient %+v", c.Patient)
			}
		}
		for _, e := range c.Events {
			if e.Kind == 0 || e.Line >= len(s.Lines) || e.At >= c.LastTick {
				t.Fatalf("event %+v", e)
			}
		}
		state := sim.Start(&c, seed)
		var h sim.Happened
		for range 5 * sim.TicksPerSecond {
			sim.Step(&c, &state, &h)
		}
		if v := state.Patient.Blood.VolumeML(); !(v >= 0) {
			t.Fatalf("blood volume %v", v)
		}
	})
}
