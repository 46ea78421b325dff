// This file checks what a birth adds to the format: an RhD-negative mother, body fluid, customs of the hospital.

package scenarios

import (
	"strings"
	"testing"
)

func TestAMotherNobodyKnowsToBeRhDNegative(t *testing.T) {
	s := opened(t, "caesarean-rhd-negative")
	if len(s.Warnings) > 0 || len(s.Story.LocalPolicy) == 0 {
		t.Fatal(s.Warnings, s.Story.LocalPolicy)
	}
	c := s.Case(1, false)
	if !c.Patient.RhDNegative || c.Phases[2].BodyFluidMLMin < 230 || c.Phases[2].BodyFluidMLMin > 280 || c.Phases[1].BodyFluidMLMin != 0 {
		t.Errorf("drawn: RhD-negative %v, body fluid %g mL/min", c.Patient.RhDNegative, c.Phases[2].BodyFluidMLMin)
	}
	hidden, faults := Parse("hidden.yaml", []byte(strings.ReplaceAll(string(s.Source), "RhD", "Rhesus")))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if !strings.Contains(hidden.Warnings.Error(), "the case sheet does not say so, and nobody can know") {
		t.Errorf("no warning of a group that the sheet hides: %v", hidden.Warnings)
	}
	other, faults := Parse("other.yaml", []byte(strings.Replace(string(s.Source), "  rhd_negative: true\n", "", 1)))
	if len(faults) > 0 || strings.Count(other.Warnings.Error(), "has nothing to measure in this case") != 2 {
		t.Errorf("criteria about anti-D without an RhD-negative mother: %v %v", faults, other.Warnings)
	}
}
