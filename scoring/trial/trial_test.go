package trial

import (
	"strings"
	"testing"

	"rouleau/scenarios"
)

// tried gives what is suspicious about a template with one piece of text changed.
func tried(t *testing.T, lesson bool, old, new string) (found []string) {
	t.Helper()
	text, err := scenarios.Template("tried-out", lesson)
	if err != nil || strings.Count(string(text), old) != 1 {
		t.Fatalf("%v; %q stands there %d times", err, old, strings.Count(string(text), old))
	}
	sc, faults := scenarios.Parse("tried-out.yaml", []byte(strings.Replace(string(text), old, new, 1)))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	for _, f := range Suspect(sc) {
		if f.Line < 2 || f.Source == "" {
			t.Errorf("no place: %+v", f)
		}
		found = append(found, f.Message)
	}
	return found
}

// The cases to start from can be played: steady passes, idle does not, and every criterion can be met.
func TestTemplatesArePlayable(t *testing.T) {
	for _, lesson := range []bool{false, true} {
		if found := tried(t, lesson, "level: ", "level: "); len(found) > 0 {
			t.Errorf("lesson %v: %q", lesson, found)
		}
	}
}

func TestWhatNobodyMeetsIsFound(t *testing.T) {
	for _, c := range []struct{ old, new, want string }{
		{"    least: 4.5\n    soft_below: 3\n", "    least: 30\n    soft_below: 3\n", "no operator meets this: steady, a competent one, comes to 5 bowl volumes"},
		{"    least: 0.86\n    soft_below: 0.15\n    most: 0.97\n    soft_above: 0.03\n", "    most: 0.3\n", "no operator meets this"},
	} {
		found := strings.Join(tried(t, false, c.old, c.new), "\n")
		if !strings.Contains(found, c.want) {
			t.Errorf("%s:\n%s", c.new, found)
		}
	}
}

// However long a case is, little of it is played: the longest that can be written takes no longer to look at than a few usual
// ones, which is within a second. The clock is not asked, since other work may share the machine.
func TestLongCasesAreTriedSoon(t *testing.T) {
	text, err := scenarios.Template("tried-out", false)
	if err != nil {
		t.Fatal(err)
	}
	for stops, want := range map[string]int{"1:20:00": 3, "2:40:00": 3, "3:00:00": 2, "5:45:00": 1, "13:00:00": 1} {
		long := strings.Replace(string(text), "case_stops: 1:20:00", "case_stops: "+stops, 1)
		sc, faults := scenarios.Parse("tried-out.yaml", []byte(long))
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		if n := len(seedsOf(sc)); n != want {
			t.Errorf("%s: %d seeds", stops, n)
		}
	}
	late, faults := scenarios.Parse("tried-out.yaml", []byte(strings.Replace(string(text), "case_stops: 1:20:00", "case_stops: 13:00:01", 1)))
	if late != nil || !strings.Contains(faults.Error(), "13:00:01 is too late or too long") {
		t.Errorf("a case without end is taken: %v", faults)
	}
}

// A target with most where least was meant fails those who do well.
func TestWrongWayRoundIsFound(t *testing.T) {
	text, err := scenarios.Template("tried-out", false)
	if err != nil {
		t.Fatal(err)
	}
	from, rest, _ := strings.Cut(string(text), "criteria:\n")
	_, to, _ := strings.Cut(rest, "\n# Help in practice")
	wrong := "criteria:\n"
	for _, c := range []string{"{part: deciding, points: 15, objective: decide_and_prepare, measure: decision_right, most: 0.5",
		"{part: collecting, points: 20, objective: match_the_drip, measure: swabs_rinsed, most: 0",
		"{part: processing, points: 25, objective: full_clean_bowls, measure: red_cell_recovery, most: 0.1",
		"{part: returning, points: 20, objective: safe_return, measure: watched_times, most: 0",
		"{part: communicating, points: 10, objective: speak_up, measure: questions_answered_share, most: 0.5",
		"{part: recording, points: 10, objective: keep_the_record, measure: tally_lines_written, most: 5"} {
		wrong += "  - " + c + ", note: The wrong way round., source: assumption}\n"
	}
	sc, faults := scenarios.Parse("tried-out.yaml", []byte(from+wrong+"\n# Help in practice"+to))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	found := Suspect(sc).Error()
	for _, want := range []string{"steady passes 0 of 3 runs", "comes to 9 lines and gets no point"} {
		if !strings.Contains(found, want) {
			t.Errorf("%q is not found in:\n%s", want, found)
		}
	}
}
