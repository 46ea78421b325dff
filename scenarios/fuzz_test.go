// This file feeds arbitrary files to the reader: it may refuse them, but not panic, and what it takes must play.

package scenarios

import (
	"bytes"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"rouleau/sim"
)

// seeded gives every file of ours to a fuzzing function.
func seeded(f *testing.F, add func(data []byte)) {
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
			add(data)
		}
	}
}

func FuzzParse(f *testing.F) {
	seeded(f, func(data []byte) { f.Add(data, uint64(1)) })
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

// What can be laid out at all keeps its meaning and its comments, and does not change a second time.
func FuzzLayout(f *testing.F) {
	seeded(f, func(data []byte) { f.Add(data) })
	f.Fuzz(func(t *testing.T, data []byte) {
		before, faults := Parse("fuzz.yaml", data)
		out, unlaid := Format("fuzz.yaml", data)
		if (len(faults) > 0) != (len(unlaid) > 0) {
			t.Fatalf("faults %v, and when laid out %v", faults, unlaid)
		}
		if len(faults) > 0 {
			return
		}
		after, faults := Parse("fuzz.yaml", out)
		if len(faults) > 0 || !reflect.DeepEqual(before.File, after.File) {
			t.Fatalf("it means something else, or has faults: %v", faults)
		}
		if twice, faults := Format("fuzz.yaml", out); len(faults) > 0 || !bytes.Equal(twice, out) {
			t.Fatalf("a second time it changes: %v", faults)
		}
	})
}
