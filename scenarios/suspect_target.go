// This file looks for targets outside what this bench, this patient and washing at all can give. Whether a person can meet the
// others is found out by playing the case, in scoring/trial.

package scenarios

import (
	"fmt"
	"slices"
	"strings"

	"rouleau/sim"
)

// packedHct is the haematocrit that a bowl hardly ever goes beyond, since some liquid stays between packed cells [A].
const packedHct = 0.85

// targets compares each target with what is possible in this case.
func (c *checker) targets() {
	for i := range c.f.Criteria {
		cr := &c.f.Criteria[i]
		if most, why := c.reach(cr.Measure); cr.Least != nil && why != "" && *cr.Least > most {
			c.Fault(at("criteria", i, "least"), fmt.Sprintf("more than can be reached here: %s", why), fmt.Sprintf("less than %.4g", most))
		}
		removal := strings.HasSuffix(cr.Measure, "_removal")
		residual := strings.HasPrefix(cr.Measure, "residual_") || cr.Measure == "product_free_hb_g_l"
		switch {
		case removal && cr.Least != nil && *cr.Least >= 1:
			c.Fault(at("criteria", i, "least"), "washing never removes all of anything", "less than 1, such as 0.95")
		case residual && cr.Most != nil && *cr.Most <= 0:
			c.Fault(at("criteria", i, "most"), "washing always leaves something", "a number above 0")
		}
	}
	if p := &c.f.Pass; p.FloorPercent > p.MarkPercent {
		c.Fault("pass.part_floor_percent", fmt.Sprintf("with this floor in every part the mark of %g is never what decides", p.MarkPercent), "no more than mark_percent")
	}
}

// reach is the greatest value of a measure that this case can give, and why; no reason where nothing is known.
func (c *checker) reach(measure string) (most float64, why string) {
	switch measure {
	case "primed_before_blood_ml":
		most = c.inDateML(c.f.Right.Anticoagulants...)
		return most, fmt.Sprintf("the right anticoagulant in date on the bench is %.0f mL", most)
	case "processing_set_opened_at_ml":
		most = c.f.Bench.ReservoirML
		return most, fmt.Sprintf("the reservoir holds %.0f mL", most)
	case "product_hct":
		return packedHct, "packed cells keep some liquid between them"
	case "wash_bowl_volumes":
		bowl := c.leastBowlML()
		if bowl <= 0 {
			return 0, ""
		}
		saline := c.inDateML(sim.Saline.String())
		return saline / bowl, fmt.Sprintf("the saline in date is %.0f mL, and the bowl holds %.0f mL", saline, bowl)
	case "red_cell_recovery":
		if c.any(sim.EventBypass, sim.EventPumpBlood) {
			return 0, "" // blood of a pump's circuit counts as well
		}
		lost, shed := 0.0, c.shedML()
		for i := range c.f.Phases {
			p := &c.f.Phases[i]
			lost += float64(float64(middle(p.BleedingMLMin)*c.f.minutesOf(i)) * p.DrapeShare.Low())
		}
		if shed <= 0 {
			return 0, ""
		}
		return 1 - lost/shed, fmt.Sprintf("%.0f of %.0f mL shed run onto drapes and are lost", lost, shed)
	}
	return 0, ""
}

// inDateML is how much of some solutions stands on the bench and is in date.
func (c *checker) inDateML(solutions ...string) float64 {
	sum := 0.0
	for _, p := range c.f.Bench.Packs {
		if slices.Contains(solutions, p.Solution) && !p.Expires.Before(c.f.Day) {
			sum += p.VolumeML
		}
	}
	return sum
}

// leastBowlML is what the smallest right bowl holds, 0 where no bowl is right.
func (c *checker) leastBowlML() float64 {
	least := 0.0
	for _, name := range c.f.Right.Bowls {
		if b, ok := sim.BowlNamed(name); ok {
			if ml := b.Shape().VolumeML; least == 0 || ml < least {
				least = ml
			}
		}
	}
	return least
}
