// Package operators holds players that are not people: steady, the competent one that others are measured against, idle,
// and scripts of timed acts. They see what a person at the bench sees, sim.Seen and the case sheet, and nothing else.
package operators

import (
	"rouleau/scenarios"
	"rouleau/sim"
)

// Sheet is what the case sheet and the shelf say before the case.
type Sheet struct {
	Refused          bool // the patient declines salvage
	Contraindicated  bool // something on the sheet speaks against salvage
	CollectOnly      bool // it speaks for collecting without processing
	HeparinForbidden bool // heparin-induced thrombocytopenia
	ExpectedLossML   float64
	BloodVolumeML    float64 // from height and weight, or age
	WeightKg         float64
	Packs            []PackLabel
	BagML            float64 // what a product bag holds
	WasteML          float64 // what the waste bag holds
	Rules            sim.Rules
}

// PackLabel is what is printed on a pack.
type PackLabel struct {
	Solution sim.Solution
	VolumeML float64
	Expired  bool // its date is past
}

// Idle does nothing at all.
type Idle struct{}

// Act lets the second pass.
func (Idle) Act(*sim.Seen, func(sim.Action) sim.Reason) {}

// SheetOf reads a case sheet and the shelf. A competent person reads the sheet's words rightly, so what speaks against
// salvage is taken from the scenario's own verdict on its sheet.
func SheetOf(sc *scenarios.Scenario, c *sim.Case) Sheet {
	s := Sheet{Refused: sc.Patient.SalvageRefused, HeparinForbidden: sc.Patient.HeparinForbidden, ExpectedLossML: sc.Story.ExpectedLossML,
		CollectOnly: sc.Right.RightDecision() == sim.CollectOnly, Contraindicated: sc.Right.RightDecision() == sim.DoNotSalvage, BloodVolumeML: c.Patient.BloodVolumeML, WeightKg: c.Patient.WeightKg,
		BagML: c.Faults.BagCapacityML, WasteML: c.Faults.WasteCapacityML, Rules: c.Rules}
	for i := range c.Packs {
		p := &c.Packs[i]
		s.Packs = append(s.Packs, PackLabel{Solution: p.Solution, VolumeML: p.VolumeML, Expired: p.Expired})
	}
	return s
}
