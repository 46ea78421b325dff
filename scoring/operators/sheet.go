// Package operators holds players that are not people: steady, the competent one that others are measured against, those
// with one human failing each, idle, and scripts of timed acts. They see what a person at the bench sees, sim.Seen and the
// case sheet, and nothing else. This file holds the sheet.
package operators

import (
	"slices"
	"strings"

	"rouleau/scenarios"
	"rouleau/sim"
)

// Sheet is what the case sheet and the shelf say before the case, and what a person makes of words.
type Sheet struct {
	Refused          bool // the patient declines salvage
	Contraindicated  bool // something on the sheet speaks against salvage
	CollectOnly      bool // it speaks for collecting without processing
	HeparinForbidden bool // heparin-induced thrombocytopenia
	SecondSucker     bool // a custom of the hospital names one
	TopsUp           bool // another one has part-filled bowls topped up
	RhDNegative      bool // a mother who is
	Together         bool // the custom of the hospital is to decide together with surgeon and anaesthetist
	Infected         bool // what speaks against salvage is an infection
	ExpectedLossML   float64
	BloodVolumeML    float64 // from height and weight, or age
	WeightKg         float64
	Packs            []PackLabel
	BagML            float64 // what a product bag holds
	WasteML          float64 // what the waste bag holds
	LifeTicks        int64   // of washed blood at room temperature, a custom of every hospital
	ReservoirML      float64 // what the reservoir holds
	Rules            sim.Rules
	Answers          []LineAnswer // to yes-or-no questions
}

// PackLabel is what is printed on a pack.
type PackLabel struct {
	Solution sim.Solution
	VolumeML float64
	Expired  bool // its date is past
	Hung     bool // somebody hung it before the case
	InStore  bool // not on the bench yet, unless somebody was sent for it
}

// LineAnswer is what a competent person would answer to the words of one line.
type LineAnswer struct {
	Line  int
	Value float64 // 1 yes, 0 no
}

// answer is the answer to the words of a line; yes where they were never read.
func (s *Sheet) answer(line int) float64 {
	for _, a := range s.Answers {
		if a.Line == line {
			return a.Value
		}
	}
	return 1
}

// has says whether a pack of a solution that is in date stands on the bench.
func (s *Sheet) has(want sim.Solution) bool {
	return slices.ContainsFunc(s.Packs, func(p PackLabel) bool { return p.Solution == want && !p.Expired })
}

// unread is the sheet of one who has not read it: an adult who loses much, whom nothing forbids anything.
func (s Sheet) unread() Sheet {
	s.Refused, s.Contraindicated, s.CollectOnly, s.HeparinForbidden = false, false, false, false
	s.SecondSucker, s.TopsUp, s.RhDNegative, s.Together, s.Infected = false, false, false, false, false
	s.ExpectedLossML, s.WeightKg = max(s.ExpectedLossML, 2*expectedLossML), max(s.WeightKg, 70)
	return s
}

// WorthFromML is the expected loss over which salvage is worth while.
func (s *Sheet) WorthFromML() float64 { return min(expectedLossML, expectedShare*s.BloodVolumeML) }

// Idle does nothing at all.
type Idle struct{}

// Act lets the second pass.
func (Idle) Act(*sim.Seen, func(sim.Action) sim.Reason) {}

// names says whether a line of the sheet holds a word.
func names(line, word string) bool { return strings.Contains(strings.ToLower(line), word) }

// SheetOf reads a case sheet and the shelf as a trainee can:
//   - a contraindication or allergy that names heparin forbids it, as does heparin-induced illness in the history; one that
//     names citrate speaks against salvage no more than that; any other contraindication does;
//   - expected loss, weight, blood volume, packs with their dates, what bags and reservoir hold, and which steps may run by
//     themselves are printed there.
//
// A program does not understand sentences. Three things that a person reads in words are therefore taken from what stands
// behind them in the file: whether a refusal on the sheet is one of salvage, from the patient; whether collecting without
// processing is what the words call for, from right.decision; and the answer to a yes-or-no question, from its event. So no
// operator here can show whether these words are clear to people.
func SheetOf(sc *scenarios.Scenario, c *sim.Case) Sheet {
	s := Sheet{Refused: len(sc.Story.Refusals) > 0 && sc.Patient.SalvageRefused, ExpectedLossML: sc.Story.ExpectedLossML,
		CollectOnly: sc.Right.RightDecision() == sim.CollectOnly, BloodVolumeML: c.Patient.BloodVolumeML, WeightKg: c.Patient.WeightKg,
		BagML: c.Faults.BagCapacityML, WasteML: c.Faults.WasteCapacityML, LifeTicks: c.Faults.ExpiryTicks, ReservoirML: c.Faults.ReservoirML, Rules: c.Rules}
	for _, line := range sc.Story.Contraindications {
		switch heparin, citrate := names(line, "heparin"), names(line, "citrate"); {
		case heparin:
			s.HeparinForbidden = true
		case !citrate:
			s.Contraindicated = true
			s.Infected = s.Infected || names(line, "infect")
		}
	}
	for _, line := range sc.Story.Allergies {
		s.HeparinForbidden = s.HeparinForbidden || names(line, "heparin")
	}
	for _, line := range sc.Story.History {
		s.HeparinForbidden = s.HeparinForbidden || names(line, "heparin-induced")
	}
	for _, line := range sc.Story.LocalPolicy {
		s.SecondSucker = s.SecondSucker || names(line, scenarios.PolicySecondSucker)
		s.TopsUp = s.TopsUp || names(line, scenarios.PolicyToppedUp)
		s.Together = s.Together || names(line, scenarios.PolicyTogether)
	}
	for _, line := range append([]string{sc.Story.Background}, sc.Story.History...) {
		s.RhDNegative = s.RhDNegative || names(line, "rhd-negative") || names(line, "rhd negative")
	}
	for i := range c.Packs {
		p := &c.Packs[i]
		s.Packs = append(s.Packs, PackLabel{Solution: p.Solution, VolumeML: p.VolumeML, Expired: p.Expired, InStore: p.InStore, Hung: p.On != sim.NoPart})
	}
	for i := range c.Events {
		if e := &c.Events[i]; e.Kind == sim.EventAsk {
			s.Answers = append(s.Answers, LineAnswer{e.Line, e.Value})
		}
	}
	return s
}
