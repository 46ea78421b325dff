// This file checks what is said about a decision: to whom it is told why, and how long an operator who does not collect stays.

package scenarios

import "rouleau/sim"

// decided checks that what is to be told is so, and that nobody is to stay who has work to do anyway.
func (c *checker) decided(decision sim.Decision) {
	r, p := &c.f.Right, &c.f.Patient
	switch {
	case r.Tell == sim.PatientDeclines.String() && !p.SalvageRefused:
		c.Fault("right.tell", "the patient does not decline salvage", "salvage_refused: true under patient, or another thing to tell")
	case r.Tell == sim.NoHeparin.String() && !p.HeparinForbidden:
		c.Fault("right.tell", "heparin does this patient no harm", "heparin_forbidden: true under patient, or another thing to tell")
	case r.Tell == sim.InfectedField.String() && decision == sim.SetUpToProcess:
		c.Fault("right.tell", "collecting and washing is right here, and so nothing speaks against it", "another right.decision")
	}
	if !c.sound("right.stay_until") || r.StayUntil == nil {
		return
	}
	switch {
	case decision != sim.DoNotSalvage:
		c.Fault("right.stay_until", "who collects stays until the operation is over in any case", "decision: do_not_salvage, or this key left out")
	case c.sound("operation_ends") && r.StayUntil.Seconds >= c.f.Ends.Seconds:
		c.Fault("right.stay_until", "the operation is over by then", "a time before operation_ends")
	}
}

// mayLeaveOut tells whether a part of the work can be left out of the grade: in a lesson, and where nothing is to be collected.
func (f *File) mayLeaveOut(part string) bool {
	none := part == "collecting" || part == "processing" || part == "returning"
	return f.Lesson() || none && f.Right.RightDecision() == sim.DoNotSalvage
}

// benchFaults tells whether something on the bench is wrong from the start.
func (c *checker) benchFaults() bool {
	b := &c.f.Bench
	return len(b.OpenClamps) > 0 || len(b.LooseLines) > 0 || b.VacuumUnplugged || c.wrongPack()
}

// wrongPack tells whether a pack hangs on a hook where it must not hang.
func (c *checker) wrongPack() bool {
	drawn := (&Scenario{File: *c.f}).Case(1, false)
	for i := range drawn.Packs {
		if p := &drawn.Packs[i]; p.On != sim.NoPart && drawn.WrongOn(i, p.On) {
			return true
		}
	}
	return false
}
