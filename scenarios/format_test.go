// This file tests that the words of the format are the words of the model, and that every key says what it means.

package scenarios

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"rouleau/scenarios/yamlread"
	"rouleau/sim"
)

// fields gives every key of the format by its path.
func fields(t *testing.T) (list []yamlread.Field, byPath map[string]yamlread.Field) {
	t.Helper()
	byPath = map[string]yamlread.Field{}
	if err := yamlread.Walk(reflect.TypeFor[File](), func(f yamlread.Field) {
		list = append(list, f)
		byPath[f.Path] = f
	}); err != nil {
		t.Fatal(err)
	}
	return list, byPath
}

func TestEveryKeyIsExplained(t *testing.T) {
	list, _ := fields(t)
	if len(list) < 100 {
		t.Fatalf("%d keys", len(list))
	}
	for _, f := range list {
		if len(f.Doc) < 8 {
			t.Errorf("%s is not explained: %q", f.Path, f.Doc)
		}
	}
}

func TestWordsAreThoseOfTheModel(t *testing.T) {
	_, byPath := fields(t)
	known := func(ok bool, _ any) bool { return ok }
	solution := func(w string) bool { v, ok := sim.SolutionNamed(w); return known(ok, v) && w != "none" }
	part := func(w string) bool { v, ok := sim.PartNamed(w); return known(ok, v) && w != "" }
	for path, resolves := range map[string]func(string) bool{
		"phases[].irrigation_fluid": solution,
		"bench.packs[].solution":    solution,
		"right.anticoagulants": func(w string) bool {
			v, ok := sim.SolutionNamed(w)
			return ok && v.Anticoagulant()
		},
		"right.bowls":       func(w string) bool { v, ok := sim.BowlNamed(w); return ok && v.Shape().VolumeML > 0 },
		"right.decision":    func(w string) bool { v, ok := sim.DecisionNamed(w); return ok && v != sim.Undecided },
		"events[].who":      func(w string) bool { v, ok := sim.SpeakerNamed(w); return ok && v != sim.Nobody },
		"events[].kind":     func(w string) bool { return (&Event{Kind: w}).kind() != 0 },
		"bench.packs[].on":  part,
		"bench.open_clamps": part,
		"bench.loose_lines": part,
		"objectives[].part": isPart,
		"criteria[].part":   isPart,
	} {
		f, ok := byPath[path]
		if !ok || len(f.Rule.OneOf) == 0 {
			t.Errorf("%s has no list of words", path)
		}
		for _, w := range f.Rule.OneOf {
			if !resolves(w) {
				t.Errorf("%s: the model does not know %q", path, w)
			}
		}
	}
	if got := len(byPath["events[].kind"].Rule.OneOf); got != len(kindsOf) {
		t.Errorf("%d kinds of events in the format, %d known", got, len(kindsOf))
	}
}

func isPart(w string) bool {
	return slices.ContainsFunc(Parts[:], func(p Part) bool { return p.Name == w })
}

func TestPartsAddUp(t *testing.T) {
	sum := 0.0
	for _, p := range Parts {
		sum += p.Points
	}
	if sum != 100 || len(Parts) != 6 {
		t.Errorf("%d parts with %g points", len(Parts), sum)
	}
}

func TestLimitsAreThoseOfTheModel(t *testing.T) {
	_, byPath := fields(t)
	for path, want := range map[string]string{"phases": "12", "events": "48", "bench.packs": "16", "contaminants": "4"} {
		if got := byPath[path].Rule.Max; got != want {
			t.Errorf("%s: at most %s, want %s", path, got, want)
		}
	}
	if sim.MaxPhases != 12 || sim.MaxEvents != 48 || sim.MaxPacks != 16 || sim.MaxContaminants != 4 {
		t.Error("the limits of the model have changed: change the format with them")
	}
}

func TestMeasuresAreWellFormed(t *testing.T) {
	names := MeasureNames()
	for i, m := range Measures {
		if !underlined.MatchString(m.Name) || slices.Index(names, m.Name) != i {
			t.Errorf("measure %q is not a plain name of its own", m.Name)
		}
		if m.Unit == "" || m.Meaning == "" || m.Least >= m.Most || strings.HasSuffix(m.Meaning, ".") {
			t.Errorf("measure %+v", m)
		}
	}
	if _, ok := MeasureNamed("product_hct"); !ok {
		t.Error("a measure is not found by its name")
	}
	if _, ok := MeasureNamed("beauty"); ok {
		t.Error("a measure is found that is not there")
	}
}

func TestShareOfPoints(t *testing.T) {
	at := func(x float64) *float64 { return &x }
	nan := 0.0
	nan /= nan
	for _, c := range []struct {
		cr          Criterion
		value, want float64
	}{
		{Criterion{Least: at(0.5), Most: at(0.7), SoftBelow: 0.1, SoftAbove: 0.2}, 0.5, 1},
		{Criterion{Least: at(0.5), Most: at(0.7), SoftBelow: 0.1, SoftAbove: 0.2}, 0.7, 1},
		{Criterion{Least: at(5), SoftBelow: 2}, 4, 0.5},
		{Criterion{Least: at(5), SoftBelow: 2}, 3, 0},
		{Criterion{Least: at(5), SoftBelow: 2}, 1000, 1},
		{Criterion{Most: at(10), SoftAbove: 40}, 20, 0.75},
		{Criterion{Most: at(10), SoftAbove: 40}, 60, 0},
		{Criterion{Most: at(10)}, 10.5, 0},
		{Criterion{Least: at(1)}, 0.999, 0},
		{Criterion{Least: at(1)}, nan, 0},
	} {
		if got := c.cr.Share(c.value); got != c.want {
			t.Errorf("%g earns %g, want %g", c.value, got, c.want)
		}
	}
}
