package operators

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"rouleau/scenarios"
	"rouleau/scenarios/yamlread"
)

// Hints, lessons and rules name the same situations, and a struct tag cannot share a list.
func TestHintsLessonsAndRulesKnowTheSameSituations(t *testing.T) {
	lists := map[string][]string{}
	for _, of := range []reflect.Type{reflect.TypeFor[scenarios.File](), reflect.TypeFor[File]()} {
		err := yamlread.Walk(of, func(f yamlread.Field) {
			if slices.Contains(f.Rule.OneOf, "drip_behind") {
				names := slices.Clone(f.Rule.OneOf)
				slices.Sort(names)
				lists[of.String()+" "+f.Path] = names
			}
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if len(lists) < 3 {
		t.Fatalf("only %d lists of situations found", len(lists))
	}
	first := ""
	for at, names := range lists {
		if first == "" {
			first = at
		}
		if got, want := strings.Join(names, " "), strings.Join(lists[first], " "); got != want {
			t.Errorf("%s knows\n%s\nand %s\n%s", at, got, first, want)
		}
	}
}
