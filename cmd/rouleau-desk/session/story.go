// From a scenario to what the screens show of it: the case sheet, packs, limits.

package session

import (
	"math"
	"strings"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/scenarios"
	"rouleau/sim"
)

func storyOf(s *scenarios.Scenario, seed uint64) bench.Story {
	patient := s.Case(seed, false).Patient
	st := bench.Story{Title: s.Title, Level: strings.ReplaceAll(s.Level, "_", " "), Minutes: s.Minutes, Seed: seed, Text: s.Story.Background, Lines: s.Lines}
	none := words.Say("sheet.none")
	list := func(items []string) string {
		if len(items) == 0 {
			return none
		}
		return strings.Join(items, "\n")
	}
	add := func(key, text string, weighty bool) {
		st.Sheet = append(st.Sheet, bench.SheetRow{Label: words.Say(key), Text: text, Weighty: weighty})
	}
	add("sheet.operation", s.Story.Operation, false)
	add("sheet.patient", words.Say("sheet.patient_row", s.Patient.Sex, patient.WeightKg, patient.BloodVolumeML/1000), false)
	add("sheet.blood", words.Say("sheet.blood_row", 100*sim.MCHCGPerML*patient.Hct, patient.Hct), false)
	add("sheet.day", s.Day.String(), false)
	add("sheet.loss", words.Say("sheet.about_ml", math.Round(s.Story.ExpectedLossML)), false)
	add("sheet.history", list(s.Story.History), false)
	add("sheet.consent", s.Story.Consent, true)
	add("sheet.refusals", list(s.Story.Refusals), len(s.Story.Refusals) > 0)
	add("sheet.contraindications", list(s.Story.Contraindications), len(s.Story.Contraindications) > 0)
	add("sheet.allergies", list(s.Story.Allergies), len(s.Story.Allergies) > 0)
	if len(s.Story.LocalPolicy) > 0 {
		add("sheet.local_policy", list(s.Story.LocalPolicy), true)
	}
	for _, r := range s.Story.Refusals {
		st.Never = append(st.Never, words.Say("bench.declines", r))
	}
	for _, a := range s.Story.Allergies {
		st.Never = append(st.Never, words.Say("bench.allergy", a))
	}
	for _, o := range s.Objectives {
		st.Objectives = append(st.Objectives, o.Text)
	}
	return st
}

func packsOf(s *scenarios.Scenario) []bench.Pack {
	c := s.Case(0, false) // packs are not drawn by the seed
	packs := make([]bench.Pack, len(c.Packs))
	for i, p := range c.Packs {
		packs[i] = bench.Pack{Solution: p.Solution, VolumeML: p.VolumeML, Expiry: p.Expiry}
	}
	return packs
}

func limitsOf(c *sim.Case) bench.Limits {
	f := &c.Faults
	return bench.Limits{ReservoirML: f.ReservoirML, WasteML: f.WasteCapacityML, BagML: f.BagCapacityML, ExpiryS: sim.Seconds(f.ExpiryTicks),
		EndS: sim.Seconds(c.EndTick)}
}
