package scenarios

import (
	"slices"
	"strings"
	"testing"
)

// What every case of the library must have, beyond being without fault.

// published are the sources that were looked at when the model was designed. A case names one of them, or says that what it
// asks for is practice, an assumption or memory.
var published = []string{
	"Klein et al., Association of Anaesthetists guideline: cell salvage, Anaesthesia 2018;73:1141", "UKCSAG Technical Factsheet 2",
	"UKCSAG Technical Factsheet 3", "UKCSAG Technical Factsheet 4", "UKCSAG education workbook",
	"Haynes et al., Vox Sang 2005;88:244–248", "Waters, Lee & Karafa, Anesth Analg 2002;95:1312–1317", "Waters et al., Anesth Analg 2007;104:684–687",
	"Quality Management in Blood Salvage, Transfus Med Hemother 2004", "Seyfried & Hansen, Anaesthesist 2019;68:69–82",
	"AABB Standards for Perioperative Autologous Blood Collection and Administration, 4th ed.", "Richtlinie Hämotherapie 2017/2021",
	"James & Roche, J Cardiothorac Vasc Anesth 2004;18:581–586", "Linderkamp et al., Eur J Pediatr 1977;125:227", "Merkel et al.",
	"Lee–White test, laboratory texts", "ISO 8536-4:2020",
}

var marked = []string{"common practice", "assumption", "from memory", "custom of this invented hospital"}

func TestEveryCaseOfTheLibraryIsComplete(t *testing.T) {
	isSource := func(text string) bool {
		in := func(known string) bool { return strings.Contains(text, known) }
		return slices.ContainsFunc(published, in) || slices.ContainsFunc(marked, in)
	}
	for _, name := range Library() {
		s := opened(t, name)
		for i := range s.Criteria {
			if c := &s.Criteria[i]; !isSource(c.Source) {
				t.Errorf("%s: %s has a source that nobody has looked at and no mark: %q", name, c.Measure, c.Source)
			}
		}
		for _, text := range s.Sources {
			if !isSource(text) {
				t.Errorf("%s: a source that nobody has looked at and no mark: %q", name, text)
			}
		}
		lines := 0
		for i := range s.Events {
			if s.Events[i].Says != "" {
				lines++
			}
		}
		if lines < 3 && !s.Lesson() {
			t.Errorf("%s: only %d lines of the team", name, lines)
		}
		if one, two := s.Case(1, false), s.Case(2, false); !s.Lesson() && one.Patient == two.Patient {
			t.Errorf("%s: two seeds have the same patient", name)
		}
		if s.Story.Background == "" || len(s.Objectives) == 0 || s.Right.Why == "" {
			t.Errorf("%s lacks a story, objectives or the reason of the right answer", name)
		}
	}
}
