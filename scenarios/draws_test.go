package scenarios

import (
	"strconv"
	"strings"
	"testing"

	"rouleau/scenarios/yamlread"
)

// What is told of a seed is what a case with that seed has, in every case of the library.
func TestVariesTellsWhatCasesDraw(t *testing.T) {
	for _, name := range Library() {
		sc, err := Open(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, seed := range []uint64{1, 7} {
			c := sc.Case(seed, false)
			told := map[string]float64{}
			for _, v := range sc.Varies([]uint64{seed}) {
				if v.Least != v.Most || v.Least < v.Spread.Low() || v.Most > v.Spread.High() {
					t.Errorf("%s, seed %d: %s is told as %g to %g", name, seed, v.Path, v.Least, v.Most)
				}
				told[v.Path] = v.Least
			}
			is := func(path string, want float64) {
				if got, ok := told[path]; ok && got != want {
					t.Errorf("%s, seed %d: %s is told as %g, and the case has %g", name, seed, path, got, want)
				}
			}
			is("patient.weight_kg", c.Patient.WeightKg)
			is("patient.mean_pressure_mmhg", c.Patient.MeanPressureMmHg)
			is("bench.touch_chance", c.Faults.TouchChance)
			for i := range c.Phases {
				is("phases["+strconv.Itoa(i)+"].bleeding_ml_min", c.Phases[i].BleedMLMin)
			}
			for i := range sc.Events {
				e, path := &sc.Events[i], "events["+strconv.Itoa(i)+"].later_by_min"
				if later, ok := told[path]; ok && e.At != nil && tickOf(*e.At)+ticksOfMin(later) != c.Events[i].At {
					t.Errorf("%s, seed %d: %s is told as %g min, and the event comes at tick %d", name, seed, path, later, c.Events[i].At)
				}
			}
		}
	}
}

func TestVariesNamesAndRanges(t *testing.T) {
	sc, err := Open("steady-oozing-spine")
	if err != nil {
		t.Fatal(err)
	}
	seeds := make([]uint64, 20)
	for i := range seeds {
		seeds[i] = uint64(i + 1)
	}
	all := sc.Varies(seeds)
	spreads := strings.Count(string(sc.Source), "{uniform:") + strings.Count(string(sc.Source), "{normal:")
	if len(all) != spreads {
		t.Errorf("%d quantities vary, and the file has %d spreads", len(all), spreads)
	}
	for _, v := range all {
		if v.Path == "phases[2].bleeding_ml_min" {
			if v.Unit != "mL/min" || v.Doc != "blood shed" || v.Spread.Spread != yamlread.Normal || !(v.Least < v.Most) || v.Least < 28 || v.Most > 42 {
				t.Errorf("%+v", v)
			}
			return
		}
	}
	t.Error("the bleeding of the third phase is not told")
}
