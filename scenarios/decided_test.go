package scenarios

import (
	"os"
	"strings"
	"testing"

	"rouleau/sim"
)

func declined(t *testing.T) string {
	t.Helper()
	data, err := os.ReadFile("library/salvage-declined.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func TestWhatIsToldMustBeSo(t *testing.T) {
	for _, c := range []struct{ name, old, new, want string }{
		{"nobody declines", "  salvage_refused: true\n", "", "the patient does not decline salvage"},
		{"no harm by heparin", "tell: patient_declines", "tell: no_heparin", "heparin does this patient no harm"},
		{"stays for ever", "stay_until: 0:09:00", "stay_until: 1:00:00\n", ""},
		{"stays beyond the end", "operation_ends: 1:10:00", "operation_ends: 0:08:00", "the operation is over by then"},
	} {
		text := strings.Replace(declined(t), c.old, c.new, 1)
		if text == declined(t) {
			t.Fatalf("%s: the case has no %q", c.name, c.old)
		}
		_, faults := Parse("x.yaml", []byte(text))
		if got := faults.Error(); c.want == "" && len(faults) > 0 || !strings.Contains(got, c.want) {
			t.Errorf("%s: %s", c.name, got)
		}
	}
}

func TestPartsAreLeftOutOnlyWhereNothingIsCollected(t *testing.T) {
	s, err := Open("salvage-declined")
	if err != nil {
		t.Fatal(err)
	}
	if s.Grades("processing") || !s.Grades("recording") {
		t.Error("a case of nothing to collect grades processing, or leaves out the record")
	}
	text := strings.Replace(declined(t), "decision: do_not_salvage", "decision: collect_only", 1)
	if _, faults := Parse("x.yaml", []byte(text)); !strings.Contains(faults.Error(), "the part collecting has no criterion") {
		t.Errorf("collecting is right and not graded: %s", faults.Error())
	}
}

func TestTheAnswerOfTheCliniciansIsALine(t *testing.T) {
	s, err := Open("infection-in-the-field")
	if err != nil {
		t.Fatal(err)
	}
	c := s.Case(3, false)
	if n := c.TogetherLine; n < 1 || s.Lines[n-1] != s.Right.CliniciansSay {
		t.Errorf("line %d of %d", n, len(s.Lines))
	}
	if c.StayTick != sim.Ticks(9*60) {
		t.Errorf("the operator stays until tick %d", c.StayTick)
	}
}
