// This file looks for a case sheet that does not go with the patient and the course behind it: the usual slip of somebody who
// copies a case and changes one of the two.

package scenarios

import (
	"bytes"
	"fmt"
	"path"
	"slices"
	"strings"

	"rouleau/sim"
)

// copied finds a case that still has the name of the one of the library that it was made from.
func (c *checker) copied(source []byte) {
	if !slices.Contains(Library(), c.f.ID) {
		return
	}
	data, err := library.ReadFile(path.Join("library", c.f.ID+extension))
	if err != nil || bytes.Equal(withLF(data), withLF(source)) || !bytes.Contains(withLF(data), fmt.Appendf(nil, "\nversion: %d\n", c.f.Version)) {
		return
	}
	c.Fault("id", "the library has a case of this id and version with another text, so grades of the two would be mixed up",
		"an id of your own, or a greater version when this is to replace it")
}

// withLF is a text with line ends as LF.
func withLF(data []byte) []byte { return bytes.ReplaceAll(data, []byte("\r\n"), []byte("\n")) }

// mentions gives the first line that holds a word, -1 for none.
func mentions(lines []string, word string) int {
	return slices.IndexFunc(lines, func(line string) bool { return strings.Contains(strings.ToLower(line), word) })
}

// sheet compares what the trainee can read with what is so.
func (c *checker) sheet() {
	s, p := &c.f.Story, &c.f.Patient
	against := mentions(s.Contraindications, "heparin")
	told := against >= 0 || mentions(s.History, "heparin") >= 0 || mentions(s.Allergies, "heparin") >= 0
	if p.HeparinForbidden && !told {
		c.Fault("patient.heparin_forbidden", "the case sheet does not say that heparin would harm, so nobody can know",
			"a line with the word heparin in story.contraindications")
	}
	if against >= 0 && !p.HeparinForbidden {
		c.Fault(fmt.Sprintf("story.contraindications[%d]", against), "the sheet speaks against heparin, and heparin does this patient no harm",
			"heparin_forbidden: true under patient")
	}
	if len(s.Contraindications) > 0 && against < 0 && c.f.Right.RightDecision() == sim.SetUpToProcess {
		c.Fault("story.contraindications", "something speaks against collecting, and the right decision is as if nothing did",
			"another right.decision, or the line under story.history where it changes nothing")
	}
	if p.CircuitAsked && mentions(append(slices.Clone(s.Refusals), s.Consent), "connected") < 0 {
		c.Fault("patient.circuit_stays_connected", "the case sheet does not say so, and nobody can know", "the word connected in story.consent or story.refusals")
	}
	if p.RhDNegative && !c.saysRhD() {
		c.Fault("patient.rhd_negative", "the case sheet does not say so, and nobody can know", "a line with the words RhD negative in story.history")
	}
	switch refused := p.SalvageRefused || p.DonorRefused; {
	case len(s.Refusals) > 0 && !refused:
		c.Fault("story.refusals", "the sheet says that something is refused, and the patient takes everything",
			"donor_blood_refused: true or salvage_refused: true under patient")
	case len(s.Refusals) == 0 && p.SalvageRefused:
		c.Fault("patient.salvage_refused", "the case sheet does not say so, and nobody can know", "a line in story.refusals")
	case len(s.Refusals) == 0 && p.DonorRefused:
		c.Fault("patient.donor_blood_refused", "the case sheet does not say so, and nobody can know", "a line in story.refusals")
	}
}

// saysRhD tells whether the sheet names the mother's RhD group.
func (c *checker) saysRhD() bool {
	s := &c.f.Story
	return mentions(s.History, "rhd") >= 0 || strings.Contains(strings.ToLower(s.Background), "rhd")
}

// lossOff is how many times more or less than expected the phases shed where it looks like a slip [A].
const lossOff = 2

// expected compares the loss on the sheet, and the times, with the course.
func (c *checker) expected() {
	shed := c.shedML()
	if want := c.f.Story.ExpectedLossML; shed > lossOff*want || shed < want/lossOff {
		c.Fault("story.expected_loss_ml", fmt.Sprintf("the sheet expects %.0f mL, and the phases shed about %.0f mL", want, shed),
			"about what is shed, unless it is to be a surprise")
	}
	if s := c.f.Minutes * 60; !c.f.Lesson() && c.f.Right.StayUntil == nil && (s < c.f.Ends.Seconds || s > c.f.Stops.Seconds+59) {
		c.Fault("minutes", fmt.Sprintf("%d minutes do not go with an operation that ends at %s and a case that stops at %s", c.f.Minutes, c.f.Ends, c.f.Stops),
			"about the minutes until case_stops")
	}
	if allowed := c.f.Modes.TimeLimitMin * c.f.Modes.AssessmentSpeed; allowed*60 < c.f.Stops.Seconds {
		path := "modes.assessment_time_limit_min"
		if !c.Has(path) {
			path = "case_stops" // what the time left out of the file is too short for
		}
		c.Fault(path, fmt.Sprintf("an assessment is stopped after %d minutes, before the case is", c.f.Modes.TimeLimitMin),
			fmt.Sprintf("modes.assessment_time_limit_min of at least %d", (c.f.Stops.Seconds+60*c.f.Modes.AssessmentSpeed-1)/(60*c.f.Modes.AssessmentSpeed)))
	}
}
