package book

import "testing"

func TestWhatCouldTellWhoSomebodyIs(t *testing.T) {
	names := []string{"Jo van Example"}
	for text, want := range map[string]int{
		"calm, and asked for the second sucker in time": 0,
		"washed 1000 mL, hct 0.58, at 12:40":            0,
		"second bowl at 0:41:20, +11 points":            0,
		"patient 4711234":                               1,
		"born on 3.4.1961":                              2,
		"Mrs Miller asked":                              1,
		"as example said":                               1,
		"write to jo@department.example":                2,
		"MRN on the label was wrong":                    1,
	} {
		if got := Identifying(text, names); len(got) != want {
			t.Errorf("%q: %d warnings %q, want %d", text, len(got), got, want)
		}
	}
}
