// This file holds the way a scenario is checked for what its types alone cannot say, and the checks of names and of the
// case sheet. Checks run also where values could not be read, so that all faults come at once; each keeps quiet about
// values that are faulty already.

package scenarios

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"rouleau/scenarios/yamlread"
	"rouleau/sim"
)

// checker holds what the checks of one file need.
type checker struct {
	*yamlread.Doc
	f    *File
	read yamlread.Faults // faults found while reading
}

// check adds to doc what is wrong with the meaning of a file.
func check(doc *yamlread.Doc, f *File) {
	if !doc.Has("") {
		return // refused unread
	}
	c := &checker{Doc: doc, f: f, read: doc.Faults()}
	c.ids()
	c.times()
	c.patient()
	c.right()
	c.phases()
	c.contaminants()
	c.events()
	c.bench()
	c.criteria()
	c.modes()
	c.recovery()
	c.guidance()
	c.before()
}

// sound tells whether the values of all these paths could be read, so that something may be said about them.
func (c *checker) sound(paths ...string) bool {
	for _, p := range paths {
		for _, f := range c.read {
			below, found := strings.CutPrefix(f.Path, p)
			if found && (below == "" || below[0] == '.' || below[0] == '[') {
				return false
			}
			// A key that is misspelt is reported at the mapping that holds it.
			if f.Path == above(p) && !c.Has(p) {
				return false
			}
		}
	}
	return true
}

// above is the path of the mapping that holds a key.
func above(path string) string { return path[:max(strings.LastIndexByte(path, '.'), 0)] }

// unknown reports a word that is none of those known.
func (c *checker) unknown(path, message, word string, known []string) {
	near := yamlread.Nearest(word, known)
	expected := yamlread.OneOf(known, word, near)
	if near == "" && len(known) > yamlread.MostListed {
		expected += " (rouleau schema --page lists them)"
	}
	c.FaultNear(path, message, expected, near)
}

// at makes the path of a key below an item of a list.
func at(list string, i int, key string) string { return fmt.Sprintf("%s[%d].%s", list, i, key) }

var (
	dashed     = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
	underlined = regexp.MustCompile(`^[a-z][a-z0-9]*(_[a-z0-9]+)*$`)
)

// ids checks the short names that something else refers to.
func (c *checker) ids() {
	if c.sound("id") && !dashed.MatchString(c.f.ID) {
		c.Fault("id", "the id is not a plain name", "lower-case words joined by -, such as steady-oozing-spine")
	}
	var objectives, contaminants, phases []string
	for i, o := range c.f.Objectives {
		c.plainName(at("objectives", i, "id"), o.ID)
		objectives = append(objectives, o.ID)
	}
	for i, x := range c.f.Contaminants {
		c.plainName(at("contaminants", i, "name"), x.Name)
		contaminants = append(contaminants, x.Name)
	}
	for _, p := range c.f.Phases {
		phases = append(phases, p.Name)
	}
	c.unique("objectives", "id", objectives)
	c.unique("contaminants", "name", contaminants)
	c.unique("phases", "name", phases)
}

func (c *checker) plainName(path, name string) {
	if name != "" && c.sound(path) && !underlined.MatchString(name) {
		c.Fault(path, "the name cannot be referred to", "lower-case words joined by _")
	}
}

// allPlain tells whether names can be referred to; where they cannot, only that is reported.
func allPlain(names []string) bool {
	return !slices.ContainsFunc(names, func(name string) bool { return !underlined.MatchString(name) })
}

// unique reports a name given twice in a list.
func (c *checker) unique(list, key string, names []string) {
	for i, name := range names {
		if first := slices.Index(names, name); name != "" && first < i {
			c.Fault(at(list, i, key), fmt.Sprintf("%q is there already, in line %d", name, c.At(at(list, first, key)).Line), "a name that no other entry has")
		}
	}
}

// times checks the frame of the case.
func (c *checker) times() {
	if c.sound("operation_ends", "case_stops") && c.f.Stops.Seconds < c.f.Ends.Seconds+60 {
		c.Fault("case_stops", "the case stops before there is time to finish", "at least a minute after operation_ends, which is "+c.f.Ends.String())
	}
}

// patient checks that the patient's numbers go together.
func (c *checker) patient() {
	p := &c.f.Patient
	if p.HeightCM == nil && c.sound("patient.age_years", "patient.height_cm") && p.AgeYears.High() >= adultYears {
		c.Fault("patient.age_years", "the height is missing: from 15 years on the blood volume follows height and weight", "height_cm beside it")
	}
	if !c.sound("patient.haematocrit_fraction", "patient.haemoglobin_g_dl") {
		return
	}
	hct, hb := p.Haematocrit, p.HaemoglobinGDL
	const forms = "haematocrit_fraction or haemoglobin_g_dl"
	switch {
	case hct == nil && hb == nil && c.sound("patient"):
		c.Fault("patient", "neither haematocrit nor haemoglobin is given", forms)
	case hct == nil || hb == nil:
	case hct.Spread != yamlread.Fixed || hb.Spread != yamlread.Fixed:
		c.Fault("patient.haemoglobin_g_dl", "with a spread, haematocrit and haemoglobin cannot both be given: they would be drawn apart", forms)
	default:
		want := float64(hbPerHct * hct.Value)
		if off := hb.Value - want; off > want/20 || off < -want/20 {
			c.Fault("patient.haemoglobin_g_dl", fmt.Sprintf("the haemoglobin does not go with a haematocrit of %g", hct.Value),
				fmt.Sprintf("about %.1f, which is 34 times the haematocrit, or only one of the two", want))
		}
	}
	if c.sound("patient.transfuse_below_g_dl", "patient.haematocrit_fraction", "patient.haemoglobin_g_dl") && p.leastHb() > 0 && p.TransfuseBelow.High() >= p.leastHb() {
		c.Fault("patient.transfuse_below_g_dl", fmt.Sprintf("donor blood would be ordered before any bleeding: haemoglobin can start at %.1f", p.leastHb()), "less than the haemoglobin at the start")
	}
}

// leastHb is the least haemoglobin that a draw can start with, g/dL; 0 where it is not known.
func (p *Patient) leastHb() float64 {
	switch {
	case p.Haematocrit != nil:
		return hbPerHct * p.Haematocrit.Low()
	case p.HaemoglobinGDL != nil:
		return p.HaemoglobinGDL.Low()
	}
	return 0
}

// right checks that the right answer can be given, and that it does not contradict the patient.
func (c *checker) right() {
	r, p := &c.f.Right, &c.f.Patient
	if r.Decision == "" || !c.sound("right.decision") {
		return
	}
	decision := r.RightDecision()
	if p.SalvageRefused && decision != sim.DoNotSalvage {
		c.Fault("right.decision", "the patient declines salvage (salvage_refused), so collecting cannot be right", "do_not_salvage")
	}
	c.decided(decision)
	if decision == sim.DoNotSalvage {
		return
	}
	if len(r.Anticoagulants) == 0 && c.sound("right.anticoagulants") {
		c.Fault("right.anticoagulants", "no anticoagulant is right, yet blood is to be collected", "heparin_solution, citrate_solution or both")
	}
	if decision == sim.SetUpToProcess && len(r.Bowls) == 0 && c.sound("right.bowls") {
		c.Fault("right.bowls", "no bowl is right, yet blood is to be processed", "standard, small, paediatric or several of them")
	}
	for i, name := range r.Anticoagulants {
		path := fmt.Sprintf("right.anticoagulants[%d]", i)
		if name == sim.HeparinSolution.String() && p.HeparinForbidden {
			c.Fault(path, "heparin would harm this patient (heparin_forbidden), so it cannot be right", sim.CitrateSolution.String())
		}
		if name != "" && c.sound("bench.packs") && !c.f.Bench.holds(name, c.f.Day) {
			c.Fault(path, "the bench has no pack of "+name+" that is in date", "a pack of it in bench.packs")
		}
	}
}

// holds tells whether a pack of a solution that is in date stands on the bench.
func (b *Bench) holds(solution string, day yamlread.Date) bool {
	return slices.ContainsFunc(b.Packs, func(p Pack) bool { return p.Solution == solution && !p.Expires.Before(day) })
}

// modes checks the rules of practice and the floor.
func (c *checker) modes() {
	speeds := c.f.Modes.PracticeSpeeds
	for i := 1; i < len(speeds) && c.sound("modes.practice_speeds"); i++ {
		if speeds[i] <= speeds[i-1] {
			c.Fault(fmt.Sprintf("modes.practice_speeds[%d]", i), fmt.Sprintf("%d does not come after %d", speeds[i], speeds[i-1]), "speeds that grow")
		}
	}
	for i, h := range c.f.Hints {
		if first := slices.IndexFunc(c.f.Hints, func(o Hint) bool { return o.When == h.When }); h.When != "" && first < i {
			c.Fault(at("hints", i, "when"), fmt.Sprintf("%s has a hint already, in line %d", h.When, c.At(at("hints", first, "when")).Line), "a situation that no other hint has")
		}
	}
}
