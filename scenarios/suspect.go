// This file looks for what is legal but suspicious in a scenario without faults.

package scenarios

import (
	"fmt"
	"slices"

	"rouleau/scenarios/yamlread"
	"rouleau/sim"
	"rouleau/sim/guarded"
)

// deadlyHbGDL is the haemoglobin below which nobody lives long [M].
const deadlyHbGDL = 3.0

// suspect adds to doc, which must be without faults, what its author may want to think about.
func suspect(doc *yamlread.Doc, f *File, source []byte) {
	c := &checker{Doc: doc, f: f}
	c.copied(source)
	c.sheet()
	c.expected()
	c.unusedObjectives()
	c.unusedContaminants()
	c.idleCriteria()
	c.targets()
	c.built()
	c.survival()
	c.supplies()
	c.late()
	c.dangers()
	c.lesson()
}

func (c *checker) unusedObjectives() {
	for i, o := range c.f.Objectives {
		shown := slices.IndexFunc(c.f.Criteria, func(cr Criterion) bool { return cr.Objective == o.ID })
		switch {
		case shown < 0:
			c.Fault(at("objectives", i, "id"), "no criterion shows this objective", "a criterion with objective: "+o.ID)
		case !slices.ContainsFunc(c.f.Criteria, func(cr Criterion) bool { return cr.Objective == o.ID && cr.Part == o.Part }):
			c.Fault(at("objectives", i, "part"), "no criterion of part "+o.Part+" shows this objective", "the part of its criteria: "+c.f.Criteria[shown].Part)
		}
	}
}

func (c *checker) unusedContaminants() {
	for i, x := range c.f.Contaminants {
		if !c.brings(x.Name) {
			c.Fault(at("contaminants", i, "name"), x.Name+" never gets into the wound", "a phase with contaminants_per_ml, or an event agent_on")
		}
	}
}

// brings tells whether a contaminant ever gets into the wound.
func (c *checker) brings(name string) bool {
	for _, p := range c.f.Phases {
		if q, ok := p.ContaminantPerML.Get(name); ok && q.High() > 0 {
			return true
		}
	}
	return slices.ContainsFunc(c.f.Events, func(e Event) bool { return e.kind() == sim.EventAgentOn && e.Agent == name })
}

// any tells whether an event of one of these kinds can happen.
func (c *checker) any(kinds ...sim.EventKind) bool {
	return slices.ContainsFunc(c.f.Events, func(e Event) bool { return slices.Contains(kinds, e.kind()) })
}

// idleCriteria finds criteria whose measure has nothing to measure in this case.
func (c *checker) idleCriteria() {
	agent := slices.ContainsFunc(c.f.Contaminants, func(x Contaminant) bool { return x.MustDivert && c.brings(x.Name) })
	for i, cr := range c.f.Criteria {
		missing := ""
		switch cr.Measure {
		case "agent_collected_ml", "asked_about_agent", "warned_of_agent":
			if !agent {
				missing = "a contaminant with must_divert that gets into the wound"
			}
		case "reason_told":
			if c.f.Right.Tell == "" {
				missing = "tell under right"
			}
		case "asked_together":
			if c.f.Right.CliniciansSay == "" {
				missing = "clinicians_say under right"
			}
		case "wrong_pack_told":
			if !c.wrongPack() {
				missing = "a wrong pack on a hook under bench"
			}
		case "bench_faults_mended_share":
			if !c.benchFaults() {
				missing = "a wrong pack on a hook, an open clamp, a loose line or vacuum_unplugged under bench"
			}
		case "second_sucker_asked":
			if !agent {
				missing = "a contaminant with must_divert that gets into the wound"
			}
		case "anti_d_asked", "fetal_test_asked":
			if !c.f.Patient.RhDNegative {
				missing = "rhd_negative: true under patient"
			}
		case "questions_answered_share":
			if !c.any(sim.EventAsk, sim.EventAskLoss) {
				missing = "an event ask or ask_loss"
			}
		case "request_to_bedside_min":
			if !c.any(sim.EventRequestBlood) {
				missing = "an event request_blood"
			}
		case "donor_units_against_steady":
			if c.f.Patient.DonorRefused {
				missing = "a patient who accepts donor blood"
			}
		case "protected_after_protamine_share", "heparin_after_protamine_iu":
			if !c.any(sim.EventProtamine) {
				missing = "an event protamine"
			}
		case "clotting_told_after_ml":
			if c.f.Patient.PlasmaThawMin.High() <= 0 {
				missing = "plasma_thaw_min under patient"
			}
		case "saline_left_when_sent_for_ml":
			if !slices.ContainsFunc(c.f.Bench.Packs, func(p Pack) bool { return p.InStore }) {
				missing = "a pack with in_store: true"
			}
		case "given_in_reaction_ml":
			if !c.any(sim.EventReaction) {
				missing = "an event reaction"
			}
		case "pump_blood_taken_share":
			if !c.any(sim.EventPumpBlood) {
				missing = "an event pump_blood"
			}
		case "circuit_joined_share", "circuit_partings":
			if !c.f.Patient.CircuitAsked {
				missing = "circuit_stays_connected: true under patient"
			}
		case "misread_stops_by_hand_share":
			if b := &c.f.Bench; !c.any(sim.EventDetectorFault) && b.DetectorOffset.High() <= 0 && b.DetectorOffset.Low() >= 0 && b.DetectorHaze.High() <= 1 {
				missing = "detector_haze over 1 or a detector_offset on the bench, or an event detector_fault"
			}
		case "residual_heparin_iu_ml":
			if len(c.f.Right.Anticoagulants) > 0 && !has(c.f.Right.Anticoagulants, sim.HeparinSolution.String()) {
				missing = "heparin_solution among the right anticoagulants"
			}
		}
		if missing != "" {
			c.Fault(at("criteria", i, "measure"), cr.Measure+" has nothing to measure in this case", missing)
		}
	}
}

// Body mass index outside which a number is likely to be mistyped, kg/m² [A].
const (
	leastBMI = 12.0
	mostBMI  = 60.0
)

// built looks whether height and weight can belong to one adult.
func (c *checker) built() {
	p := &c.f.Patient
	if p.HeightCM == nil || p.AgeYears.Low() < adultYears {
		return
	}
	metres := middle(*p.HeightCM) / 100
	if bmi := middle(p.WeightKg) / (metres * metres); bmi < leastBMI || bmi > mostBMI {
		c.Fault("patient.weight_kg", fmt.Sprintf("height and weight hardly belong to one adult: body mass index %.0f", bmi), "height in cm and weight in kg of one person")
	}
}

// survival compares the bleeding with what the patient lives through when nothing is given back (Bourke and Smith,
// Anesthesiology 1974;41:609: loss = volume times the logarithm of the ratio of haematocrits).
func (c *checker) survival() {
	volume, hb := c.f.Patient.typicalVolumeML(), c.f.Patient.leastHb()
	if volume <= 0 || hb <= deadlyHbGDL {
		return
	}
	shed, worst, most := 0.0, 0, 0.0
	for i := range c.f.Phases {
		ml := float64(middle(c.f.Phases[i].BleedingMLMin) * c.f.minutesOf(i))
		shed += ml
		if ml > most {
			worst, most = i, ml
		}
	}
	if lived := volume * guarded.Log(hb/deadlyHbGDL); shed > lived {
		c.Fault(at("phases", worst, "bleeding_ml_min"),
			fmt.Sprintf("about %.0f mL are shed: beyond survival unless blood is given, since haemoglobin would fall under %g g/dL", shed, deadlyHbGDL),
			fmt.Sprintf("under %.0f mL where the patient should live through an idle trainee", lived))
	}
}

// A washed bowl, common practice: five bowl volumes of saline, packed to a haematocrit of 0.6. That two thirds of what is
// shed get there is an assumption.
const (
	washPerBowl = 5.0
	washedHct   = 0.6
	caughtShare = 0.65
)

// supplies finds a bench with which the right thing cannot be done.
func (c *checker) supplies() {
	if c.f.Right.RightDecision() != sim.SetUpToProcess {
		return
	}
	salineML := 0.0
	for _, p := range c.f.Bench.Packs {
		if p.Solution == sim.Saline.String() && !p.Expires.Before(c.f.Day) {
			salineML += p.VolumeML
		}
	}
	hct := c.f.Patient.leastHb() / hbPerHct
	switch need := c.shedML() * hct * caughtShare / washedHct * washPerBowl; {
	case salineML == 0:
		c.Fault("bench.packs", "no pack of saline is in date, so nothing can be washed", "a pack of saline")
	case need > salineML:
		c.Fault("bench.packs", fmt.Sprintf("the saline in date is %.0f mL, and washing what is shed takes about %.0f mL", salineML, need), "more packs of saline")
	}
}

// shedML is the blood that the phases shed, in the middle of what can be drawn.
func (c *checker) shedML() float64 {
	shed := 0.0
	for i := range c.f.Phases {
		shed += float64(middle(c.f.Phases[i].BleedingMLMin) * c.f.minutesOf(i))
	}
	return shed
}

// late finds phases and questions that come when the operation is over.
func (c *checker) late() {
	for i := range c.f.Phases {
		if p := &c.f.Phases[i]; p.BleedingMLMin.High() > 0 && p.Starts.Seconds >= c.f.Ends.Seconds {
			c.Fault(at("phases", i, "starts"), "the patient bleeds in a phase that begins when the operation is over", "before operation_ends, or bleeding_ml_min: 0")
		}
	}
	for i := range c.f.Events {
		e := &c.f.Events[i]
		if (e.kind() == sim.EventAsk || e.kind() == sim.EventAskLoss) && e.At != nil && float64(e.At.Seconds)+float64(60*(e.LaterByMin.High()+e.WithinMin)) > float64(c.f.Stops.Seconds) {
			c.Fault(at("events", i, "within_min"), "the case can stop before the answer is due", "an earlier time, or less of it")
		}
	}
}
